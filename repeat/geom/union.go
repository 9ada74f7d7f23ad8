package geom

import "fmt"

// A Region is what a union covers.
type Region struct {
	// Boundaries are its lines, in an order that depends on the shapes only.
	Boundaries []Boundary
	t          torus
	covered    bool // everywhere, where there is no boundary
}

// Union returns what the shapes cover together. A place is in a shape where the
// shape's rings wind around it a number of times that is not zero, so a ring that
// turns the other way cuts a hole, and in the union where it is in any shape.
//
// Without periods the shapes lie in the plane. With one period everything repeats
// by it, as on the cloth; with two it repeats by both, as the plain pattern does,
// and shapes may reach over the seams, around the torus and over themselves. The
// periods may be any two that differ in direction.
//
// Where lines cross, the crossing goes to the nearest point of the grid (snap
// rounding); every other decision is exact. The result moves with the shapes to
// the bit and is the same for every pair of periods that make the same lattice.
// No ring may be wider or higher than MaxSpan/2.
func Union(shapes [][]Ring, periods ...Point) (Region, error) {
	solids, err := solidsOf(shapes)
	if err != nil {
		return Region{}, err
	}
	return combined(solids, len(solids), func(cover layer) bool { return cover > 0 }, periods)
}

// Without returns what a covers and b does not, each taken together as in Union.
func Without(a, b [][]Ring, periods ...Point) (Region, error) {
	solids, err := solidsOf(a)
	if err != nil {
		return Region{}, err
	}
	taken, err := solidsOf(b)
	if err != nil {
		return Region{}, fmt.Errorf("taken away: %w", err)
	}
	onlyFirst := func(cover layer) bool { return 0 < cover && cover < secondLayer }
	return combined(append(solids, taken...), len(solids), onlyFirst, periods)
}

// fewShapes is the number of shapes that are not worth a part of their own.
const fewShapes = 256

// solidsOf returns the solids of all shapes in order.
func solidsOf(shapes [][]Ring) ([]solid, error) {
	type part struct {
		solids []solid
		err    error
	}
	parts := inParts(len(shapes), fewShapes, func(from, to int) (p part) {
		p.solids = make([]solid, 0, to-from)
		var look looker
		for i := from; i < to; i++ {
			if p.solids, p.err = look.appendSolids(p.solids, shapes[i]); p.err != nil {
				p.err = fmt.Errorf("shape %d: %w", i, p.err)
				break
			}
		}
		return p
	})
	all := parts[0].solids
	for i, p := range parts {
		if p.err != nil {
			return nil, p.err
		}
		if i > 0 {
			all = append(all, p.solids...)
		}
	}
	return all, nil
}

// combined returns what is inside by its cover; the first so many solids are the
// first layer, the others the second.
func combined(solids []solid, first int, inside func(cover layer) bool, periods []Point) (Region, error) {
	t, err := newTorus(aroundAll(solids), periods)
	if err != nil {
		return Region{}, err
	}
	r := Region{t: t}
	if len(solids) == 0 {
		return r, nil
	}
	a := meeting(t, solids)
	a.first = first
	r.Boundaries = make([]Boundary, 0, first)
	for i, s := range solids[:first] {
		if !a.in[i] {
			r.Boundaries = append(r.Boundaries, Boundary{Points: s.ring})
		}
	}
	met, covered, err := a.boundaries(inside)
	r.Boundaries, r.covered = append(r.Boundaries, met...), covered
	return r, err
}

// Full reports whether r covers everything, so that it has no boundary.
func (r Region) Full() bool { return r.covered && len(r.Boundaries) == 0 }

// AreaMM2 returns the area of r in square millimetres: with two periods that in
// one cell, with one period that of one repeat.
func (r Region) AreaMM2() float64 {
	const mm2 = float64(Millimetre * Millimetre)
	if r.Full() {
		return r.t.area() / mm2
	}
	var area float64
	along := r.along()
	for _, b := range r.Boundaries {
		if b.Closed() {
			area += b.Area2() / 2
		} else {
			area += b.under(r.Boundaries[0].Points[0], along)
		}
	}
	if r.t.rank == 2 && len(r.Boundaries) > 0 {
		// Which copy of a line bounds which is open; whole cells drop out.
		area = modulo(area, r.t.area())
	}
	return area / mm2
}

// along returns the way of the boundaries that run around the torus; they are all
// in line. Without any it is zero.
func (r Region) along() Point {
	for _, b := range r.Boundaries {
		if w := b.Wrap; w != (Point{}) {
			if w.Less(Point{}) {
				return w.Neg()
			}
			return w
		}
	}
	return Point{}
}
