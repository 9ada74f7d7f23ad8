package report

import (
	"tsugime/export"
	"tsugime/repeat"
	"tsugime/repeat/geom"
)

// registerKey sets the sheet in small, its stars named, beside the figures that
// are asked for most.
func registerKey(fl *flow, w repeat.Work, s setSheet, f figures) {
	height := max(fl.gap(62*geom.Millimetre), 56*geom.Millimetre)
	if fl.close > 0.2 {
		height = 50 * geom.Millimetre
	}
	fl.figure(height, func(l *leaf, room geom.Box) {
		sketch := room
		sketch.Max.X = room.Min.X + room.Width()*55/100
		right := sheetSketch(l, sketch, s, f)
		x := right + geom.MM(10)
		keyFigures(l, geom.BoxOf(geom.Point{X: x, Y: room.Min.Y}, room.Max), w, s, f)
	})
}

// sheetSketch draws the sheet in proportion and returns its right edge.
func sheetSketch(l *leaf, room geom.Box, s setSheet, f figures) geom.Length {
	k := min(float64(room.Width())/float64(s.Paper.Width()), float64(room.Height())/float64(s.Paper.Height()))
	put := func(p geom.Point) geom.Point {
		d := p.Sub(s.Paper.Min)
		return room.Min.Add(geom.Point{X: d.X.Times(k), Y: d.Y.Times(k)})
	}
	paper := geom.BoxOf(put(s.Paper.Min), put(s.Paper.Max))
	field := patternField(s.Sheet)
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
	for _, star := range s.marks() {
		l.disc(accentArea, put(star.At), geom.MM(1.6))
	}
	l.texts(accentWord, insideOf(paper, small, starLabels(s, put, geom.MM(2), geom.MM(2.4)), geom.MM(4)))
	top := geom.Point{X: small.Centre().X, Y: small.Min.Y + small.Height()/4}
	l.arrow(rule, top, top.Add(geom.Point{Y: small.Height() / 2}))
	l.text(captions, captionStyle, top.Add(geom.Point{X: geom.MM(2), Y: small.Height() / 4}), export.Start, f.say("feed"))
	return paper.Max.X
}

// insideOf moves labels beside a star that would lie on the paper's edge over to the
// star's other side, so far from where they stood, and there off the joint lines at
// the ends of the field, where there is room.
func insideOf(paper, field geom.Box, labels []export.Text, over geom.Length) []export.Text {
	var moved []int
	for i := range labels {
		t := &labels[i]
		switch box := textBox(*t); {
		case box.Min.X < paper.Min.X+geom.MM(0.5):
			t.At.X, t.Anchor = t.At.X+over, export.Start
		case box.Max.X > paper.Max.X-geom.MM(0.5):
			t.At.X, t.Anchor = t.At.X-over, export.End
		default:
			continue
		}
		moved = append(moved, i)
	}
	for _, i := range moved {
		for _, y := range []geom.Length{field.Min.Y, field.Max.Y} {
			labels[i].At.Y = offLine(labels, i, y)
		}
	}
	return labels
}

// offLine returns the height of a label that stands above a level line or, where
// another label is in the way, below it: as it is, where it is off the line or no
// place is free.
func offLine(labels []export.Text, i int, line geom.Length) geom.Length {
	t := labels[i]
	if box := textBox(t); box.Min.Y >= line || box.Max.Y <= line {
		return t.At.Y
	}
	for _, y := range []geom.Length{line - t.Height/3, line + t.Height} {
		next := t
		next.At.Y = y
		free := true
		for k, other := range labels {
			free = free && (k == i || !textBox(other).Meets(textBox(next)))
		}
		if free {
			return y
		}
	}
	return t.At.Y
}

// keyFigures sets the step large, and below it what else is asked for most.
func keyFigures(l *leaf, room geom.Box, w repeat.Work, s setSheet, f figures) {
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
	entry(f.say("step as cut"), f.ruler(geom.MMUnit, 2).with(step), style{geom.MM(6.4), true})
	at.Y -= geom.MM(2)
	text, st := fit("= "+f.ruler(geom.KaneSun, 4).with(step), strongStyle, room.Width())
	at.Y += st.height
	l.text(words, st, at, export.Start, text)
	at.Y += geom.MM(4.4)
	entry(f.say("placements"), f.say("%d whole, %d to cover the bolt", len(w.Run.Placements), w.Run.Needed), strongStyle)
	for i, sheet := range s.Set() {
		caption := f.say("cut-outs")
		if s.of > 1 {
			caption = f.say("cut-outs of sheet %d", i+1)
		}
		entry(caption, f.say("%d, open area %.1f %%", len(sheet.CutOuts), sheet.OpenPct), strongStyle)
	}
	if found := foundText(w.Findings, f); found != "" {
		text, st := fit(f.say("%s: see findings.txt", found), strongStyle, room.Width())
		l.text(accentWord, st, geom.Point{X: at.X, Y: at.Y + st.height}, export.Start, text)
	}
}
