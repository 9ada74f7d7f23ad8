package ui

import (
	"tsugime/export/raster"
	"tsugime/repeat"
	"tsugime/repeat/geom"
)

// A grounds is the cut-outs of a work made ready to be painted, in the background,
// so that going to a station costs nothing.
type grounds struct {
	sheets []*raster.Ground // each sheet of the set, at finished size
	print  *raster.Ground   // what one placement leaves, at finished size
	cloth  *raster.Ground   // placement after placement, at finished size
	board  *raster.Ground   // placement after placement, as they lie on the board
}

func groundsOf(w repeat.Work) grounds {
	x, y := w.Scale.Board()
	var sheets []*raster.Ground
	for _, s := range w.Sheet.Set() {
		var cut []geom.Shape
		for _, c := range s.CutOuts {
			cut = append(cut, c.Shape)
		}
		sheets = append(sheets, raster.NewGround(cut))
	}
	var finished, laid []geom.Shape
	for _, c := range w.Sheet.Printed {
		finished = append(finished, c.Shape)
		laid = append(laid, c.Shape.Stretched(x, y))
	}
	return grounds{
		sheets: sheets,
		print:  raster.NewGround(finished),
		cloth:  raster.NewGround(finished, geom.Point{Y: w.Order.Sheet.Step}),
		board:  raster.NewGround(laid, geom.Point{Y: w.Run.Step}),
	}
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
