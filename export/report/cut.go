package report

import (
	"fmt"
	"slices"

	"tsugime/export"
	"tsugime/repeat"
	"tsugime/repeat/geom"
	"tsugime/repeat/stencil"
)

// CutDrawings returns the cut-ready drawing of every sheet of the set, the first
// one first: the stencil at cut size, its origin at the paper's top left corner,
// what is cut in one layer for each method and tool, the stars, and guides that
// are not cut. Methods and tools are those of the options' rack.
func CutDrawings(w repeat.Work, opt Options) []export.Drawing {
	opt = opt.with(w)
	var drawings []export.Drawing
	for _, s := range opt.sheets(w) {
		drawings = append(drawings, cutDrawing(w, s, opt))
	}
	return drawings
}

func cutDrawing(w repeat.Work, s setSheet, opt Options) export.Drawing {
	groups := cutGroups(s, opt.benchOf(w, s))
	return sheetDrawing(w, s, groups, cutWords(w, s, groups, opt.figures()), opt.figures())
}

// sheetDrawing puts what is cut, its guides and its words on the paper.
func sheetDrawing(w repeat.Work, s setSheet, groups []cutGroup, words export.Layer, f figures) export.Drawing {
	d := export.Drawing{
		Title: s.kind(f.title(w), f),
		Width: s.Paper.Width(), Height: s.Paper.Height(),
	}
	d.Layers = append(d.Layers, paperEdge(s.Sheet))
	for _, g := range groups {
		d.Layers = append(d.Layers, g.layer)
	}
	d.Layers = append(d.Layers, jointLines(s.Sheet), starHoles(s), words)
	return d
}

// withTies adds a layer that outlines the ties, which are paper and not cut.
func withTies(d export.Drawing, w repeat.Work, s setSheet) export.Drawing {
	layer := export.Layer{Name: "ties", Pen: export.Pen{Colour: export.Mark, Stroke: geom.MM(0.08)}}
	for _, strip := range tieStrips(w, s) {
		layer.Lines = append(layer.Lines, export.Line{Points: strip, Closed: true})
	}
	if len(layer.Lines) > 0 {
		d.Layers = append(d.Layers, layer)
	}
	return d
}

// movedSheet returns the sheet with all that is on it elsewhere; of a split the
// second one too.
func movedSheet(s stencil.Sheet, move geom.Point) stencil.Sheet {
	s.Paper = s.Paper.Moved(move)
	s.Spec.Field.Left += move.X
	cuts := slices.Clone(s.CutOuts)
	for i := range cuts {
		cuts[i].Shape = cuts[i].Shape.Moved(move)
	}
	s.CutOuts = cuts
	s.Joint.Line = moved(s.Joint.Line, move)
	stars := slices.Clone(s.Stars.Stars)
	for i := range stars {
		stars[i].At = stars[i].At.Add(move)
	}
	match := slices.Clone(s.Stars.Match)
	for i := range match {
		match[i].At = match[i].At.Add(move)
	}
	s.Stars.Stars, s.Stars.Match = stars, match
	if s.Second != nil {
		second := movedSheet(*s.Second, move)
		s.Second = &second
	}
	return s
}

func moved(line []geom.Point, by geom.Point) []geom.Point {
	out := make([]geom.Point, len(line))
	for i, p := range line {
		out[i] = p.Add(by)
	}
	return out
}

func paperEdge(s stencil.Sheet) export.Layer {
	return export.Layer{
		Name:  "paper-edge",
		Pen:   export.Pen{Colour: export.Grey, Stroke: geom.MM(0.2)},
		Lines: []export.Line{{Points: corners(s.Paper), Closed: true}},
	}
}

// jointLines are the joint line and its copy one step on.
func jointLines(s stencil.Sheet) export.Layer {
	layer := export.Layer{
		Name: "joint-line",
		Pen:  export.Pen{Colour: export.Mark, Stroke: geom.MM(0.1), Dash: []geom.Length{geom.MM(2), geom.MM(1)}},
	}
	if len(s.Joint.Line) > 1 {
		next := moved(s.Joint.Line, geom.Point{Y: s.Spec.Step})
		layer.Lines = []export.Line{{Points: s.Joint.Line}, {Points: next}}
	}
	return layer
}

func starHoles(s setSheet) export.Layer {
	layer := export.Layer{Name: "stars", Pen: export.Pen{Colour: export.Mark, Filled: true}}
	for _, star := range s.marks() {
		layer.Discs = append(layer.Discs, geom.Disc{Centre: star.At, Diameter: star.Diameter})
	}
	return layer
}

// starNames names the feed stars of a sheet: L for leading, T for trailing, counted
// from the left.
func starNames(s stencil.StarSet) []string {
	names := make([]string, len(s.Stars))
	count := map[stencil.End]int{}
	for i, star := range s.Stars {
		letter := "L"
		if star.End == stencil.Trailing {
			letter = "T"
		}
		count[star.End]++
		names[i] = fmt.Sprintf("%s%d", letter, count[star.End])
	}
	return names
}
