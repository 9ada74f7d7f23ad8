package report

import (
	"math"

	"tsugime/export"
	"tsugime/export/raster"
	"tsugime/repeat"
	"tsugime/repeat/geom"
	"tsugime/repeat/pattern"
)

// shapesOf returns the shapes of cut-outs.
func shapesOf(cuts []pattern.CutOut) []geom.Shape {
	shapes := make([]geom.Shape, len(cuts))
	for i, c := range cuts {
		shapes[i] = c.Shape
	}
	return shapes
}

// closeWindow returns a window of the given proportion around a place that shows
// about so many cells of the unit across, from 4 mm to 400 mm wide.
func closeWindow(u pattern.Unit, at geom.Point, cells, proportion float64) geom.Box {
	width := geom.MM(min(400, max(4, cells*math.Sqrt(u.Lattice.CellMM2()))))
	half := geom.Point{X: width / 2, Y: width.Times(proportion) / 2}
	return geom.BoxOf(at.Sub(half), at.Add(half))
}

// unitPlate shows one cell of the unit, outlined, among its neighbours, as the
// cloth is printed.
func unitPlate(w repeat.Work, pxWidth int) (*plate, error) {
	const height = 116 * geom.Millimetre
	u := w.Printed()
	p := newPlate(w, pxWidth, height, "the unit among its neighbours")
	room := p.inner()
	middle := u.Lattice.A.Add(u.Lattice.B)
	middle = geom.Point{X: middle.X / 2, Y: middle.Y / 2}
	g := glassOn(closeWindow(u, middle, 5, float64(room.Height())/float64(room.Width())), room)
	p.sample = g.k
	p.fill(g, g.window, dye(w))
	ground := raster.NewGround(shapesOf(u.CutOuts()), u.Lattice.A, u.Lattice.B)
	p.paint(g, ground, undyed, raster.Lay{Clip: g.window})
	// A cell that is longer than the window is shown as far as that reaches.
	p.over.across(g, []geom.Point{{}, u.Lattice.A, u.Lattice.A.Add(u.Lattice.B), u.Lattice.B, {}})
	f := p.f
	a, b := u.Lattice.A, u.Lattice.B
	p.about = f.say("%s lattice, A %s, %s, B %s, %s, pitch %s; %s in a cell, %.1f on a square centimetre, %.0f on a square kane sun",
		f.say(string(u.Lattice.Kind())), f.sheet.number(a.X), f.sheet.with(a.Y), f.sheet.number(b.X), f.sheet.with(b.Y),
		f.sheet.with(u.Lattice.Pitch()), f.count(len(u.Motifs), "cut-out"), u.PerCM2(), u.PerSquareSun())
	return p, nil
}

// jointPlate shows the joint between two placements in the middle of the field,
// each as its own laying, so that a wrong step shows.
func jointPlate(w repeat.Work, pxWidth int) (*plate, error) {
	const height = 116 * geom.Millimetre
	const gutter = 26 * geom.Millimetre
	s, step := w.Sheet, geom.Point{Y: w.Sheet.Spec.Step}
	p := newPlate(w, pxWidth, height, "the joint between two placements")
	room := p.inner()
	room.Max.X -= gutter
	at := geom.Point{X: s.Spec.Field.Left + s.Spec.Field.Width/2, Y: s.Spec.Step}
	next := moved(s.Joint.Line, step)
	if len(next) > 0 {
		at.Y = geom.BoxOf(next...).Centre().Y
	}
	g := glassOn(closeWindow(w.Design, at, 12, float64(room.Height())/float64(room.Width())), room)
	p.sample = g.k
	p.fill(g, g.window, dye(w))
	ground := raster.NewGround(shapesOf(s.Printed))
	p.paint(g, ground, undyed, raster.Lay{Clip: g.window}, raster.Lay{Move: step, Clip: g.window})
	p.over.across(g, next)
	f := p.f
	p.placementNames(g, room, at)
	p.about = f.say("clear on both sides %s, narrowest web over the joint %s; the step is off the lattice by %s across, %s along",
		f.fine.with(s.Joint.Clearance), f.fine.with(s.Webs.AcrossJoint.Width), f.fine.with(s.StepError.X), f.fine.with(s.StepError.Y))
	return p, nil
}

// across draws those pieces of a line that a glass shows, white beside the accent
// so that they show on any dye.
func (l *leaf) across(g glass, line []geom.Point) {
	for i := 1; i < len(line); i++ {
		a, b, ok := clipped(line[i-1], line[i], g.window)
		if ok {
			l.line(halo, g.put(a), g.put(b))
			l.line(accentLine, g.put(a), g.put(b))
		}
	}
}

// placementNames says beside a close-up which placement is which.
func (p *plate) placementNames(g glass, room geom.Box, at geom.Point) {
	y := g.put(at).Y
	x := room.Max.X + geom.MM(3)
	p.over.arrow(rule, geom.Point{X: x, Y: y - geom.MM(3)}, geom.Point{X: x, Y: room.Min.Y + geom.MM(2)})
	p.over.arrow(rule, geom.Point{X: x, Y: y + geom.MM(3)}, geom.Point{X: x, Y: room.Max.Y - geom.MM(2)})
	x += geom.MM(3)
	p.over.text(words, captionStyle, geom.Point{X: x, Y: (y + room.Min.Y) / 2}, export.Start, p.f.say("placement n"))
	p.over.text(words, captionStyle, geom.Point{X: x, Y: (y + room.Max.Y) / 2}, export.Start, p.f.say("placement n + 1"))
	p.over.text(accentWord, captionStyle, geom.Point{X: x, Y: y + geom.MM(1)}, export.Start, p.f.say("joint"))
}

// clipped returns the part of a straight piece that lies in a box (the
// Liang–Barsky rule, 1984), and whether there is one.
func clipped(a, b geom.Point, box geom.Box) (geom.Point, geom.Point, bool) {
	t0, t1 := 0.0, 1.0
	cut := func(d, room geom.Length) bool {
		if d == 0 {
			return room >= 0
		}
		t := float64(room) / float64(d)
		if d < 0 {
			t0 = max(t0, t)
		} else {
			t1 = min(t1, t)
		}
		return t0 <= t1
	}
	d := b.Sub(a)
	if !cut(-d.X, a.X-box.Min.X) || !cut(d.X, box.Max.X-a.X) || !cut(-d.Y, a.Y-box.Min.Y) || !cut(d.Y, box.Max.Y-a.Y) {
		return a, b, false
	}
	on := func(t float64) geom.Point { return a.Add(geom.Point{X: d.X.Times(t), Y: d.Y.Times(t)}) }
	return on(t0), on(t1), true
}

// sheetPlate shows the stencil, of a split its first sheet.
func sheetPlate(w repeat.Work, pxWidth int) (*plate, error) {
	return cutPlate(sheetsOf(w)[0], w, pxWidth)
}

// secondPlate shows the second sheet of a split.
func secondPlate(w repeat.Work, pxWidth int) (*plate, error) {
	if w.Sheet.Second == nil {
		return nil, errNoSet
	}
	return cutPlate(sheetsOf(w)[1], w, pxWidth)
}

// cutPlate shows a sheet as it is cut: tannin-brown paper, light through its
// holes.
func cutPlate(s setSheet, w repeat.Work, pxWidth int) (*plate, error) {
	room := plateWidth - 2*plateMargin
	p := newPlate(w, pxWidth, room.Times(float64(s.Paper.Height())/float64(s.Paper.Width())), plateName(s))
	g := glassOn(s.Paper, p.inner())
	p.sample = g.k
	p.fill(g, s.Paper, tannin)
	shapes := shapesOf(s.CutOuts)
	for _, star := range s.marks() {
		shapes = append(shapes, geom.DiscShape(star.At, star.Diameter))
	}
	p.paint(g, raster.NewGround(shapes), shine, raster.Lay{Clip: s.Paper})
	p.over.across(g, s.Joint.Line)
	p.over.across(g, moved(s.Joint.Line, geom.Point{Y: s.Spec.Step}))
	p.over.texts(words, starLabels(s, g.put, geom.MM(1.6), captionStyle.height))
	f := p.f
	p.about = f.say("paper %s × %s, step as cut %s, %s, open area of the pattern %.1f %%",
		f.sheet.plain(s.Paper.Width()), f.sheet.plain(s.Paper.Height()), f.sheet.with(s.Spec.Step), f.count(len(s.CutOuts), "cut-out"), s.OpenPct)
	return p, nil
}

func plateName(s setSheet) string {
	switch {
	case s.of < 2:
		return "the sheet as it is cut"
	case s.number == 2:
		return "the second sheet as it is cut"
	}
	return "the first sheet as it is cut"
}
