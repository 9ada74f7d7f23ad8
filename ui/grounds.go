package ui

import (
	"context"
	"slices"
	"sync"

	"tsugime/export/raster"
	"tsugime/repeat"
	"tsugime/repeat/cloth"
	"tsugime/repeat/geom"
	"tsugime/repeat/pattern"
	"tsugime/repeat/stencil"
)

// A grounds is the cut-outs of a work made ready to be painted, in the background,
// so that going to a station costs nothing.
type grounds struct {
	sheets []*raster.Ground // each sheet of the set, at finished size
	print  *raster.Ground   // what one placement leaves, at finished size
	image  *raster.Ground   // what one placement leaves that a folded cloth mirrors; nil where it isn't folded
	reach  geom.Box         // of print
	board  *raster.Ground   // placement after placement, as they lie on the board
	back   *raster.Ground   // board, as it is seen on the back of a cloth of both sides; nil on one side
	// islands are the outlines of the paper that falls out of each sheet of the set.
	islands [][]geom.Ring
	has     pattern.Recognised // the symmetry of the finished pattern; no group where there is none to tell
}

// groundsOf makes them; its error is the context's.
func groundsOf(ctx context.Context, w repeat.Work) (grounds, error) {
	x, y := w.Scale.Board()
	var finished, laid []geom.Shape
	var reach geom.Box
	for _, c := range w.Sheet.Printed {
		finished = append(finished, c.Shape)
		reach = reach.Union(c.Shape.Bounds())
		laid = append(laid, c.Shape.Stretched(x, y))
	}
	set := w.Sheet.Set()
	g := grounds{
		sheets: make([]*raster.Ground, len(set)),
		reach:  reach,

		has: symmetryOf(w.Order.Design()),
	}
	var together sync.WaitGroup // they are made ready side by side
	ready := func(to **raster.Ground, shapes []geom.Shape, periods ...geom.Point) {
		together.Go(func() { *to, _ = raster.MakeReady(ctx, shapes, periods...) })
	}
	for i, s := range set {
		g.islands = append(g.islands, islandsOf(s))
		var cut []geom.Shape
		for _, c := range s.CutOuts {
			cut = append(cut, c.Shape)
		}
		ready(&g.sheets[i], cut)
	}
	if len(set) > 1 {
		ready(&g.print, finished)
	}
	period := w.Run.Step
	if w.Run.Bolt.Folded { // every other section is the image of the one before
		ready(&g.image, mirroredAt(finished, w.Order.Sheet.Step))
		laid = slices.Concat(laid, mirroredAt(laid, 2*period))
		period *= 2
	}
	if w.Run.Bolt.Sides == cloth.BothSides { // turned over about its long axis
		over := geom.Scale(-1, 1).Then(geom.Translate(geom.Point{X: w.Run.Bolt.Width}))
		turned := make([]geom.Shape, len(laid))
		for i, s := range laid {
			turned[i] = s.Placed(over)
		}
		ready(&g.back, turned, geom.Point{Y: period})
	}
	ready(&g.board, laid, geom.Point{Y: period})
	together.Wait()
	if err := ctx.Err(); err != nil {
		return grounds{}, err
	}
	if len(set) == 1 { // which prints what it cuts
		g.print = g.sheets[0]
	}
	return g, nil
}

// mirroredAt returns shapes mirrored along the bolt: what lies at nought goes to y.
func mirroredAt(shapes []geom.Shape, y geom.Length) []geom.Shape {
	image := geom.Scale(1, -1).Then(geom.Translate(geom.Point{Y: y}))
	mirrored := make([]geom.Shape, len(shapes))
	for i, s := range shapes {
		mirrored[i] = s.Placed(image)
	}
	return mirrored
}

// islandsOf returns the outlines of the islands that a sheet has: the lines around
// paper that cut-outs enclose, where they were found.
func islandsOf(s stencil.Sheet) []geom.Ring {
	if len(s.Paths.Islands) == 0 {
		return nil
	}
	var shapes [][]geom.Ring
	for _, c := range s.Unit.CutOuts() {
		shapes = append(shapes, c.Shape.Rings(geom.Chord))
	}
	cut, err := geom.Union(shapes, s.Unit.Lattice.A, s.Unit.Lattice.B)
	if err != nil {
		return nil // the islands were found, so that this can't happen
	}
	at := map[geom.Point]bool{}
	for _, p := range s.Paths.Islands {
		at[p.At] = true
	}
	var rings []geom.Ring
	for _, b := range cut.Boundaries {
		if b.Closed() && b.Area2() < 0 && slices.ContainsFunc(b.Points, func(p geom.Point) bool { return at[p] }) {
			rings = append(rings, b.Points)
		}
	}
	return rings
}

func moved(line []geom.Point, by geom.Point) []geom.Point {
	out := make([]geom.Point, len(line))
	for i, p := range line {
		out[i] = p.Add(by)
	}
	return out
}

func corners(b geom.Box) []geom.Point {
	return []geom.Point{b.Min, {X: b.Max.X, Y: b.Min.Y}, b.Max, {X: b.Min.X, Y: b.Max.Y}}
}
