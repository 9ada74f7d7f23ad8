package report

import (
	"fmt"

	"tsugime/export"
	"tsugime/repeat"
	"tsugime/repeat/geom"
	"tsugime/repeat/stencil"
)

// registerKey sets the sheet in small, its stars named, beside the figures that
// are asked for most.
func registerKey(fl *flow, w repeat.Work, s stencil.Sheet, f figures) {
	const height = 62 * geom.Millimetre
	fl.figure(height, func(l *leaf, room geom.Box) {
		sketch := room
		sketch.Max.X = room.Min.X + room.Width()*55/100
		right := sheetSketch(l, sketch, s)
		x := right + geom.MM(10)
		keyFigures(l, geom.BoxOf(geom.Point{X: x, Y: room.Min.Y}, room.Max), w, s)
	})
}

// sheetSketch draws the sheet in proportion and returns its right edge.
func sheetSketch(l *leaf, room geom.Box, s stencil.Sheet) geom.Length {
	k := min(float64(room.Width())/float64(s.Paper.Width()), float64(room.Height())/float64(s.Paper.Height()))
	put := func(p geom.Point) geom.Point {
		d := p.Sub(s.Paper.Min)
		return room.Min.Add(geom.Point{X: d.X.Times(k), Y: d.Y.Times(k)})
	}
	paper := geom.BoxOf(put(s.Paper.Min), put(s.Paper.Max))
	field := cutField(s)
	small := geom.BoxOf(put(field.Min), put(field.Max))
	l.area(wash, corners(small)...)
	l.frame(rule, paper)
	if line := s.Joint.Line; len(line) > 1 {
		for _, by := range []geom.Point{{}, {Y: s.Spec.Step}} {
			var points []geom.Point
			for _, p := range moved(line, by) {
				points = append(points, put(p))
			}
			l.line(hairline, points...)
		}
	}
	names := starNames(s.Stars)
	for i, star := range s.Stars.Stars {
		at := put(star.At)
		l.disc(accentArea, at, geom.MM(1.6))
		label := at.Add(geom.PtMM(0, -2.2))
		if star.End == stencil.Trailing {
			label = at.Add(geom.PtMM(0, 4.3))
		}
		if starShares(s.Stars, i, geom.MM(5).Times(1/k)) {
			continue
		}
		l.text(accentWord, captionStyle, label, export.Middle, names[i])
	}
	top := geom.Point{X: small.Centre().X, Y: small.Min.Y + small.Height()/4}
	l.arrow(rule, top, top.Add(geom.Point{Y: small.Height() / 2}))
	l.text(captions, captionStyle, top.Add(geom.Point{X: geom.MM(2), Y: small.Height() / 4}), export.Start, "feed")
	return paper.Max.X
}

// starShares reports whether a star stands too near to an earlier one of its end
// to have a name of its own in a sketch.
func starShares(s stencil.StarSet, i int, room geom.Length) bool {
	for j := range i {
		a, b := s.Stars[j], s.Stars[i]
		if a.End == b.End && (a.At.X-b.At.X).Abs() < room {
			return true
		}
	}
	return false
}

// keyFigures sets the step large, and below it what else is asked for most.
func keyFigures(l *leaf, room geom.Box, w repeat.Work, s stencil.Sheet) {
	at := room.Min
	entry := func(caption, figure string, st style) {
		at.Y += captionStyle.height
		l.text(captions, captionStyle, at, export.Start, caption)
		text, st := fit(figure, st, room.Width())
		at.Y += st.height + geom.MM(1.6)
		l.text(words, st, at, export.Start, text)
		at.Y += geom.MM(3.6)
	}
	step := s.Spec.Step
	entry("step as cut", ruler{geom.MMUnit, 2}.with(step), style{geom.MM(6.4), true})
	at.Y -= geom.MM(2)
	text, st := fit("= "+ruler{geom.KaneSun, 4}.with(step), strongStyle, room.Width())
	at.Y += st.height
	l.text(words, st, at, export.Start, text)
	at.Y += geom.MM(4.4)
	entry("placements", fmt.Sprintf("%d whole, %d to cover the bolt", len(w.Run.Placements), w.Run.Needed), strongStyle)
	entry("cut-outs", fmt.Sprintf("%d, open area %.1f %%", len(s.CutOuts), w.Sheet.OpenPct), strongStyle)
	faults, warnings := worst(w.Findings)
	if faults+warnings > 0 {
		text, st := fit(fmt.Sprintf("%s, %s: see findings.txt", count(faults, "fault"), count(warnings, "warning")), strongStyle, room.Width())
		l.text(accentWord, st, geom.Point{X: at.X, Y: at.Y + st.height}, export.Start, text)
	}
}
