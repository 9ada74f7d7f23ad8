package report

import (
	"errors"
	"image/color"

	"tsugime/export"
	"tsugime/export/raster"
	"tsugime/repeat"
	"tsugime/repeat/geom"
)

// setOff is how far the second sheet is laid off on the picture of the set.
const setOff = 200 * geom.Micrometre

// overlaid tints what the second sheet opens, so that its lap over the first is
// seen.
var overlaid = color.RGBA{0xe3, 0xb8, 0x8a, 0xff}

var errNoSet = errors.New("the order is cut as one sheet; hold it by two to see them together")

// setPlate shows a place where the second sheet opens what the first ties: in
// place on the left, laid off the worst way on the right.
func setPlate(w repeat.Work, pxWidth int) (*plate, error) {
	const height = 92 * geom.Millimetre
	const gap = 6 * geom.Millimetre
	if w.Sheet.Second == nil {
		return nil, errNoSet
	}
	off, err := worstSlip(w, setOff)
	if err != nil {
		return nil, err
	}
	p := newPlate(w, pxWidth, height, "the second sheet over the first")
	room := p.inner()
	room.Min.Y += geom.MM(5)
	f := p.f
	half := (room.Width() - gap) / 2
	views := []struct {
		by      geom.Point
		caption string
	}{
		{geom.Point{}, f.say("in place")},
		{off.by, f.say("second sheet off by %s, %s", f.fine.with(setOff), f.say(off.way()))},
	}
	for i, v := range views {
		view := room
		view.Min.X = room.Min.X + (half+gap)*geom.Length(i)
		view.Max.X = view.Min.X + half
		g := glassOn(setWindow(w, float64(view.Height())/float64(view.Width())), view)
		p.sample = g.k
		p.fill(g, g.window, dye(w))
		p.paint(g, groundOf(w, 0), undyed, raster.Lay{Clip: g.window})
		p.paint(g, groundOf(w, 1), overlaid, raster.Lay{Move: v.by, Clip: g.window})
		p.over.text(words, captionStyle, geom.Point{X: view.Min.X, Y: view.Min.Y - geom.MM(2)}, export.Start, v.caption)
	}
	p.about = f.say("light: first sheet, tinted: second; laid off so, %.3f mm² on a square centimetre stay uncovered, %.3f mm² open beside the design",
		off.uncovered, off.beside)
	return p, nil
}

// groundOf makes the pattern of one sheet of the set ready to be painted.
func groundOf(w repeat.Work, i int) *raster.Ground {
	u := w.Sheet.Set()[i].Unit
	return raster.NewGround(shapesOf(u.CutOuts()), u.Lattice.A, u.Lattice.B)
}

// setWindow returns a window about the first tie, or else about a motif that only
// the second sheet cuts, in which a slip can be seen.
func setWindow(w repeat.Work, proportion float64) geom.Box {
	hold := w.Order.Sheet.Hold
	width := 8 * geom.Millimetre
	var at geom.Point
	switch second := w.Sheet.Second.Unit.Motifs; {
	case len(hold.Ties) > 0:
		t := hold.Ties[0]
		at = geom.Point{X: (t.From.X + t.To.X) / 2, Y: (t.From.Y + t.To.Y) / 2}
		width = min(max(width/2, 10*t.Width), 3*width/2)
	case len(second) > 0:
		box := second[0].Placed().Bounds()
		at, width = box.Centre(), min(max(width, box.Width()*3/2), 3*width)
	}
	half := geom.Point{X: width / 2, Y: width.Times(proportion) / 2}
	return geom.BoxOf(at.Sub(half), at.Add(half))
}
