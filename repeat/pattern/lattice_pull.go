package pattern

import (
	"math"

	"tsugime/repeat/geom"
)

// A Vector is one of the two ways of a lattice.
type Vector int

// The vectors.
const (
	VectorA Vector = iota
	VectorB
)

// Of returns the vector of a lattice.
func (v Vector) Of(l Lattice) geom.Point {
	if v == VectorA {
		return l.A
	}
	return l.B
}

// Ways tells which spacings of l a pull at a vector changes: across, along or both. What
// the kind demands of the rest stays: columns upright, rows level, the part of a drop.
func (l Lattice) Ways(v Vector) (across, along bool) {
	switch l.Kind() {
	case StraightKind, HalfDropKind, BrickKind:
		return v == VectorA, v == VectorB
	case HexagonalKind:
		return true, false
	}
	return true, true
}

// Pulled returns the lattice of l's kind whose vector v ends as near to a place as the
// kind lets it, with spacings from twice MinPitch to MaxPitch. A free lattice takes the
// place as it is, and so may not pass Check.
func (l Lattice) Pulled(v Vector, to geom.Point) Lattice {
	kind := l.Kind()
	if kind == FreeKind {
		return l.Freed(v, to)
	}
	across, along := l.Spacing()
	end := v.Of(l)
	x, y := towards(to.X, end.X), towards(to.Y, end.Y)
	if kind == HexagonalKind && v == VectorB {
		// The end lies pitch/2 across and pitch·√3/2 along: the nearest pitch is the
		// place's shadow on that way.
		x = geom.Length(math.Round(float64(x)/2 + float64(y)*math.Sqrt(3)/2))
	}
	if changesAcross, changesAlong := l.Ways(v); changesAcross && changesAlong {
		across, along = x, y
	} else if changesAcross {
		across = x
	} else {
		along = y
	}
	return l.Spaced(across, along)
}

// Freed returns l with another vector v, whatever kind that makes of it.
func (l Lattice) Freed(v Vector, to geom.Point) Lattice {
	if v == VectorA {
		return Lattice{to, l.B}
	}
	return Lattice{l.A, to}
}

// Dividing returns the spacing nearest to one of l by which its repeat straight across,
// or straight along, goes a whole number of times into a length, and how many times. It
// is rounded to what the lattice can take: nanometres, of a drop by twelfths twelve of
// them. It is not ok for a free lattice, whose repeat is no number of spacings, and for a
// length shorter than the repeat.
func (l Lattice) Dividing(whole geom.Length, across bool) (spacing geom.Length, times int, ok bool) {
	kind := l.Kind()
	x, y := l.Spacing()
	one, repeat := y, l.Along()
	if across {
		one, repeat = x, Lattice{turnedOver(l.A), turnedOver(l.B)}.Along()
	}
	if kind == FreeKind || repeat > whole || one <= 0 {
		return 0, 0, false
	}
	parts := math.Round(float64(repeat) / float64(one))
	n := math.Round(float64(whole) / (float64(one) * parts))
	grain := 1.0
	if _, den, dropped := l.Drop(); dropped && across == (kind == BrickKind) {
		grain = float64(den)
	}
	return geom.Length(math.Round(float64(whole)/(n*parts*grain)) * grain), int(n), true
}

// Spaced is Respaced, from twice MinPitch to MaxPitch and with vectors that lie on the
// side where those of l do.
func (l Lattice) Spaced(across, along geom.Length) Lattice {
	within := func(s geom.Length) geom.Length { return min(max(s, 2*MinPitch), MaxPitch) }
	next := l.Respaced(within(across), within(along))
	mirror := func(x *geom.Length, old geom.Length) {
		if *x > 0 && old < 0 || *x < 0 && old > 0 {
			*x = -*x
		}
	}
	mirror(&next.A.X, l.A.X)
	mirror(&next.A.Y, l.A.Y)
	mirror(&next.B.X, l.B.X)
	mirror(&next.B.Y, l.B.Y)
	return next
}

// towards is a coordinate counted to the side on which another lies.
func towards(x, side geom.Length) geom.Length {
	if side < 0 {
		return -x
	}
	return x
}

func turnedOver(p geom.Point) geom.Point { return geom.Point{X: p.Y, Y: p.X} }
