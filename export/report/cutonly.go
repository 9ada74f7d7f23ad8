package report

import (
	"tsugime/export"
	"tsugime/repeat"
	"tsugime/repeat/geom"
)

// CutOnly returns of each sheet of the set what a machine cuts and nothing else: the
// register holes first, then a layer for each method and tool in the order of the
// work. With a blade that trails or goes past its start, the layers hold the ways of
// its holder instead of the rims.
func CutOnly(w repeat.Work, opt Options) []export.Drawing {
	opt = opt.with(w)
	var drawings []export.Drawing
	for _, s := range opt.sheets(w) {
		drawings = append(drawings, cutOnly(w, s, opt))
	}
	return drawings
}

func cutOnly(w repeat.Work, s setSheet, opt Options) export.Drawing {
	d := export.Drawing{
		Title: s.kind(opt.figures().title(w), opt.figures()),
		Width: s.Paper.Width(), Height: s.Paper.Height(),
		Layers: []export.Layer{starHoles(s)},
	}
	for _, g := range cutGroups(s, opt.benchOf(w, s)) {
		d.Layers = append(d.Layers, g.layer)
	}
	if opt.Blade.Offset == 0 && opt.Blade.Overcut == 0 {
		return d
	}
	for i := range d.Layers {
		d.Layers[i] = opt.bladeWays(d.Layers[i])
	}
	return d
}

// bladeWays puts the ways of a blade's holder in the place of the rims.
func (o Options) bladeWays(l export.Layer) export.Layer {
	ways := export.Layer{Name: l.Name, Pen: export.Pen{Colour: l.Pen.Colour, Stroke: geom.MM(0.05)}}
	add := func(s geom.Shape) {
		for _, way := range o.Blade.Paths(s) {
			ways.Lines = append(ways.Lines, export.Line{Points: way})
		}
	}
	for _, disc := range l.Discs {
		add(geom.Shape{Disc: disc})
	}
	for _, outline := range l.Outlines {
		add(geom.Shape{Outline: outline})
	}
	return ways
}
