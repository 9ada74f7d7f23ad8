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
	paths, err := loose(append(shapes, bridges...), periods)
	if err != nil || len(paths.Islands)+len(paths.Bands) == 0 {
		return paths, err
	}
	for i, c := range cuts {
		if !captors[i] {
			shapes[i] = c.Shape.Rings(geom.Chord)
		}
	}
	return loose(append(shapes, bridges...), periods)
}

// loose returns the parts of the paper that don't hold.
func loose(shapes [][]geom.Ring, periods []geom.Point) (Connectivity, error) {
	cut, err := geom.Union(shapes, periods...)
	if err != nil {
		return Connectivity{}, fmt.Errorf("paper: %w", err)
	}
	var c Connectivity
	for _, f := range cut.Loose() {
		part := Part{At: f.At, Along: f.Along, AreaMM2: f.AreaMM2}
		switch {
		case !f.Island():
			c.Bands = append(c.Bands, part)
		case f.AreaMM2 > f.RimMM/2*geom.Touch.MM():
			c.Islands = append(c.Islands, part)
		}
	}
	return c, nil
}
