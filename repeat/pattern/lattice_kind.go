package pattern

import (
	"math"

	"tsugime/repeat/geom"
)

// A Kind names how a lattice is laid out. It follows from the two vectors.
type Kind string

// The kinds of lattices.
const (
	StraightKind  Kind = "straight"  // columns and rows
	HalfDropKind  Kind = "half-drop" // each column a part of the height lower
	BrickKind     Kind = "brick"     // each row a part of the width along
	DiagonalKind  Kind = "diagonal"  // both vectors lean alike, left and right
	HexagonalKind Kind = "hexagonal" // six nearest places, 60° apart
	FreeKind      Kind = "free"      // any two vectors
)

// Kinds lists the kinds, the plainest first.
func Kinds() []Kind {
	return []Kind{StraightKind, HalfDropKind, BrickKind, DiagonalKind, HexagonalKind, FreeKind}
}

// MaxParts is the finest drop that is told from a free lattice: twelfths.
const MaxParts = 12

// Straight returns columns across apart and rows along apart.
func Straight(across, along geom.Length) Lattice {
	return Lattice{geom.Point{X: across}, geom.Point{Y: along}}
}

// HalfDrop returns columns across apart, each half of along lower than the one
// before. An odd along loses a nanometre.
func HalfDrop(across, along geom.Length) Lattice { return HalfDropBy(across, along, 1, 2) }

// HalfDropBy returns columns across apart, each num/den of along lower than the
// one before, so that column den is level with column 0 again. Along loses the
// nanometres that don't go into den parts.
func HalfDropBy(across, along geom.Length, num, den int) Lattice {
	part := along / geom.Length(max(den, 1))
	return Lattice{geom.Point{X: across, Y: part * geom.Length(num)}, geom.Point{Y: part * geom.Length(max(den, 1))}}
}

// Brick returns rows along apart, each half of across further than the one
// before. An odd across loses a nanometre.
func Brick(across, along geom.Length) Lattice { return BrickBy(across, along, 1, 2) }

// BrickBy returns rows along apart, each num/den of across further than the one
// before. Across loses the nanometres that don't go into den parts.
func BrickBy(across, along geom.Length, num, den int) Lattice {
	part := across / geom.Length(max(den, 1))
	return Lattice{geom.Point{X: part * geom.Length(max(den, 1))}, geom.Point{X: part * geom.Length(num), Y: along}}
}

// Diagonal returns a rhombus: places at every other crossing of columns across
// apart and rows along apart. With across = along = pitch/√2 it is the ground of
// dots at 45°.
func Diagonal(across, along geom.Length) Lattice {
	return Lattice{geom.Point{X: across, Y: along}, geom.Point{X: across, Y: -along}}
}

// Hexagonal returns the lattice on the grid nearest to six neighbours at pitch,
// 60° apart: rows pitch·√3/2 apart, each half a pitch further. No such lattice
// is exact on whole nanometres; offNM is how many nanometres its rows are nearer
// (negative) or farther than they should be, at most a half. An odd pitch loses
// a nanometre.
func Hexagonal(pitch geom.Length) (l Lattice, offNM float64) {
	pitch = pitch / 2 * 2
	rows := float64(pitch) * math.Sqrt(3) / 2
	l = Lattice{geom.Point{X: pitch}, geom.Point{X: pitch / 2, Y: geom.Length(math.Round(rows))}}
	return l, math.Round(rows) - rows
}

// Laid returns the lattice of a kind whose columns are across apart and whose
// rows are along apart. A hexagonal one follows from across alone; for a free
// lattice it is the straight one to start from.
func Laid(kind Kind, across, along geom.Length) Lattice {
	switch kind {
	case HalfDropKind:
		return HalfDrop(across, along)
	case BrickKind:
		return Brick(across, along)
	case DiagonalKind:
		return Diagonal(across, along)
	case HexagonalKind:
		l, _ := Hexagonal(across)
		return l
	}
	return Straight(across, along)
}

// Kind returns how l is laid out.
func (l Lattice) Kind() Kind {
	upright := l.B.X == 0
	level := l.A.Y == 0
	if hexagonal, _ := Hexagonal(l.A.X); level && l == hexagonal {
		return HexagonalKind
	}
	_, _, dropped := l.Drop()
	switch {
	case upright && level:
		return StraightKind
	case upright && dropped:
		return HalfDropKind
	case level && dropped:
		return BrickKind
	case l.A.X == l.B.X && l.A.Y == -l.B.Y:
		return DiagonalKind
	}
	return FreeKind
}

// Drop returns by which part num/den, in lowest terms, each column of a
// half-drop is lower or each row of a brick is further along. It is not ok where
// l is neither, or where den would be above MaxParts.
func (l Lattice) Drop() (num, den int, ok bool) {
	var part, whole geom.Length
	switch {
	case l.B.X == 0 && l.A.Y != 0:
		part, whole = l.A.Y, l.B.Y
	case l.A.Y == 0 && l.B.X != 0:
		part, whole = l.B.X, l.A.X
	}
	if part <= 0 || part >= whole {
		return 0, 0, false
	}
	g := gcd(int(part), int(whole))
	num, den = int(part)/g, int(whole)/g
	return num, den, den <= MaxParts
}

// Spacing returns the distance between neighbouring columns and rows: what Laid
// takes for l's kind. For a free lattice it is the first vector's reach across
// and the second's along.
func (l Lattice) Spacing() (across, along geom.Length) { return l.spacingAs(l.Kind()) }

func (l Lattice) spacingAs(kind Kind) (across, along geom.Length) {
	if kind == DiagonalKind {
		return l.A.X.Abs(), l.A.Y.Abs()
	}
	return l.A.X.Abs(), l.B.Y.Abs()
}

// Respaced returns a lattice of the same kind and drop on another spacing; a
// free one is stretched.
func (l Lattice) Respaced(across, along geom.Length) Lattice {
	num, den, _ := l.Drop()
	switch kind := l.Kind(); kind {
	case HalfDropKind:
		return HalfDropBy(across, along, num, den)
	case BrickKind:
		return BrickBy(across, along, num, den)
	case FreeKind:
		a, b := l.Spacing()
		m := geom.Scale(float64(across)/float64(max(a, 1)), float64(along)/float64(max(b, 1)))
		return Lattice{A: m.Apply(l.A), B: m.Apply(l.B)}
	default:
		return Laid(kind, across, along)
	}
}
