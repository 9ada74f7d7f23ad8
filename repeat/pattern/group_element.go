package pattern

import (
	"cmp"
	"slices"

	"tsugime/repeat/geom"
)

// A RotationPoint is a place about which the pattern comes back after 1/Order of
// a turn: 2, 3, 4 or 6, the highest that the place has.
type RotationPoint struct {
	At    geom.Point
	Order int
}

// A MirrorLine runs through At along Along, without end. Where Glide is not zero
// the mirror image is moved by it along the line.
type MirrorLine struct {
	At, Along, Glide geom.Point
}

// Elements are the symmetry elements of one conventional cell, each once.
type Elements struct {
	Points  []RotationPoint
	Mirrors []MirrorLine // Glide is zero
	Glides  []MirrorLine
}

// spot is a place in the conventional cell, in 24ths.
type spot [2]int

// Elements returns the rotation points, mirrors and glides of g on l, for
// showing and snapping. Places are rounded to the grid.
func (g Group) Elements(l Lattice) (Elements, error) {
	e, f, err := g.on(l)
	if err != nil {
		return Elements{}, err
	}
	order := map[spot]int{}
	lines := map[[2]spot]spot{} // place and direction to the shortest glide
	for _, o := range e.ops[1:] {
		for n := range 25 {
			shift := spot{o.T[0] + parts*(n%5-2), o.T[1] + parts*(n/5-2)}
			if o.det() < 0 {
				o.line(shift, lines)
			} else if at, ok := o.centre(shift); ok {
				order[at] = max(order[at], o.order())
			}
		}
	}
	at := func(s spot) geom.Point { return f.point(float64(s[0])/parts, float64(s[1])/parts) }
	var out Elements
	for _, s := range sortedSpots(order) {
		out.Points = append(out.Points, RotationPoint{at(s), order[s]})
	}
	for _, key := range sortedLines(lines) {
		m := MirrorLine{at(key[0]), at(key[1]), at(lines[key])}
		if lines[key] == (spot{}) {
			out.Mirrors = append(out.Mirrors, m)
		} else {
			out.Glides = append(out.Glides, m)
		}
	}
	return out, nil
}

// centre returns the place that a turn with this shift leaves, in the cell:
// (1 − M)·p = shift.
func (o Op) centre(shift spot) (spot, bool) {
	a, b, c, d := 1-o.M[0][0], -o.M[0][1], -o.M[1][0], 1-o.M[1][1]
	det := a*d - b*c
	if det == 0 {
		return spot{}, false // a shift alone
	}
	return spot{wrapped((d*shift[0] - b*shift[1]) / det), wrapped((a*shift[1] - c*shift[0]) / det)}, true
}

// line enters the line of a mirror or glide with this shift, as its first place
// in the cell and its direction, with its shortest glide.
func (o Op) line(shift spot, lines map[[2]spot]spot) {
	m := o.M
	at := spot{((1-m[0][0])*shift[0] - m[0][1]*shift[1]) / 4, (-m[1][0]*shift[0] + (1-m[1][1])*shift[1]) / 4}
	glide := spot{((1+m[0][0])*shift[0] + m[0][1]*shift[1]) / 2, (m[1][0]*shift[0] + (1+m[1][1])*shift[1]) / 2}
	along := o.axis()
	// The same line again, moved by whole cells, passes the cell elsewhere: all
	// its places there that are whole 24ths, the first one names it.
	first := spot{parts, parts}
	for k := range parts {
		p := spot{wrapped(at[0] + k*along[0]), wrapped(at[1] + k*along[1])}
		if slices.Compare(p[:], first[:]) < 0 {
			first = p
		}
	}
	key := [2]spot{first, {along[0] * parts, along[1] * parts}}
	if was, ok := lines[key]; !ok || shorter(glide, was) {
		lines[key] = glide
	}
}

// axis returns the shortest whole vector that a mirror leaves as it is.
func (o Op) axis() spot {
	a := spot{1 + o.M[0][0], o.M[1][0]}
	if a == (spot{}) {
		a = spot{o.M[0][1], 1 + o.M[1][1]}
	}
	g := gcd(a[0], a[1])
	if a = (spot{a[0] / g, a[1] / g}); a[0] < 0 || a[0] == 0 && a[1] < 0 {
		a = spot{-a[0], -a[1]}
	}
	return a
}

func shorter(a, b spot) bool {
	size := func(s spot) int { return s[0]*s[0] + s[1]*s[1] }
	return cmp.Or(cmp.Compare(size(a), size(b)), slices.Compare(b[:], a[:])) < 0
}

func sortedSpots(order map[spot]int) []spot {
	out := make([]spot, 0, len(order))
	for s := range order {
		out = append(out, s)
	}
	slices.SortFunc(out, func(a, b spot) int { return slices.Compare(a[:], b[:]) })
	return out
}

func sortedLines(lines map[[2]spot]spot) [][2]spot {
	out := make([][2]spot, 0, len(lines))
	for k := range lines {
		out = append(out, k)
	}
	slices.SortFunc(out, func(a, b [2]spot) int {
		return cmp.Or(slices.Compare(a[1][:], b[1][:]), slices.Compare(a[0][:], b[0][:]))
	})
	return out
}
