package stencil

import (
	"fmt"

	"tsugime/repeat/geom"
	"tsugime/repeat/pattern"
)

// Connect tells which paper falls out and which is parted into bands: in the
// plane, where the paper around the cut-outs is the body; on the cloth with one
// period; on the torus with two, where every way is a lattice vector. It is exact
// for the cut-outs as straight pieces (geom.Chord). Cut-outs nearer than
// geom.Touch count as touching, and paper thinner than that as none.
//
// Discs that touch nothing can't hold paper captive, so they are flattened only
// where something else does.
func Connect(cuts []pattern.CutOut, periods ...geom.Point) (Connectivity, error) {
	near, err := contacts(cuts, periods)
	if err != nil || len(near) == 0 && allRound(cuts) {
		return Connectivity{}, err
	}
	captors := make([]bool, len(cuts))
	for i, c := range cuts {
		captors[i] = !c.Shape.Round()
	}
	for _, c := range near {
		captors[c.i], captors[c.j] = true, true
	}
	shapes := make([][]geom.Ring, len(cuts))
	some := false
	for i, is := range captors {
		if is {
			shapes[i], some = cuts[i].Shape.Rings(geom.Chord), true
		}
	}
	if !some {
		return Connectivity{}, nil
	}
	bridges := bridges(cuts, shapes, near)
	paths, boxes, err := loose(append(shapes, bridges...), periods)
	if err != nil || len(paths.Islands)+len(paths.Bands) == 0 {
		return paths, err
	}
	// The other discs matter where they lie in what is loose.
	within := discsWithin(cuts, boxes, len(paths.Bands) > 0, periods)
	for i, c := range cuts {
		if !captors[i] && within(i) {
			shapes[i] = c.Shape.Rings(geom.Chord)
		}
	}
	paths, _, err = loose(append(shapes, bridges...), periods)
	return paths, err
}

// discsWithin returns whether a cut-out may lie in an island, by their boxes; with
// bands every one may lie in what is loose.
func discsWithin(cuts []pattern.CutOut, islands []geom.Box, bands bool, periods []geom.Point) func(i int) bool {
	if bands {
		return func(int) bool { return true }
	}
	all := boundsOf(cuts)
	var copies []geom.Box
	for _, b := range islands {
		for _, p := range shiftsOnto(b, all, periods) {
			copies = append(copies, b.Moved(p))
		}
	}
	index := geom.NewIndex(copies)
	return func(i int) bool {
		found := false
		index.Visit(cuts[i].Shape.Bounds(), func(int) bool {
			found = true
			return false
		})
		return found
	}
}

// shiftsOnto returns by which sums of the periods a box comes to meet another.
func shiftsOnto(b, onto geom.Box, periods []geom.Point) []geom.Point {
	reach := geom.BoxOf(onto.Min.Sub(b.Max), onto.Max.Sub(b.Min))
	switch len(periods) {
	case 0:
		return []geom.Point{{}}
	case 1:
		var shifts []geom.Point
		p := periods[0]
		from, to, by := reach.Min.Y, reach.Max.Y, p.Y
		if p.X.Abs() > p.Y.Abs() {
			from, to, by = reach.Min.X, reach.Max.X, p.X
		}
		if by < 0 {
			by, p = -by, p.Neg()
		}
		for k := floorDiv(from, by); k <= floorDiv(to, by); k++ {
			shifts = append(shifts, p.Times(int(k)))
		}
		return shifts
	}
	return pattern.Lattice{A: periods[0], B: periods[1]}.Places(reach)
}

// loose returns the parts of the paper that don't hold. It returns the boxes around the islands too.
func loose(shapes [][]geom.Ring, periods []geom.Point) (c Connectivity, islands []geom.Box, err error) {
	cut, err := geom.Union(shapes, periods...)
	if err != nil {
		return c, nil, fmt.Errorf("paper: %w", err)
	}
	for _, f := range cut.Loose() {
		part := Part{At: f.At, Along: f.Along, AreaMM2: f.AreaMM2}
		switch {
		case !f.Island():
			c.Bands = append(c.Bands, part)
		case f.AreaMM2 > f.RimMM/2*geom.Touch.MM():
			c.Islands = append(c.Islands, part)
			islands = append(islands, f.Box)
		}
	}
	return c, islands, nil
}
