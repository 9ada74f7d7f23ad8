package report

import (
	"slices"
	"strings"

	"tsugime/export"
	"tsugime/repeat"
	"tsugime/repeat/document"
	"tsugime/repeat/geom"
)

// A look is how a transfer drawing shows what is cut.
type look struct {
	marks    string // one of document.MarkNames
	mirrored bool
	width    geom.Length // of the paper about whose middle it is mirrored
}

func (o Options) look(w repeat.Work, s setSheet) look {
	o = o.with(w)
	return look{marks: o.Marks, mirrored: o.Mirrored, width: s.Paper.Min.X + s.Paper.Max.X}
}

// kind adds to a word that the drawing is mirrored.
func (k look) kind(word string, f figures) string {
	if k.mirrored {
		return f.say("%s, mirrored", word)
	}
	return word
}

// The pen of outlines and crosses, and how far a cross reaches beyond its middle.
const (
	lookStroke = 100 * geom.Micrometre
	lookArm    = 600 * geom.Micrometre
)

// of returns the drawing as it is to be looked at. Words keep their way.
func (k look) of(d export.Drawing) export.Drawing {
	d.Layers = slices.Clone(d.Layers)
	for i, l := range d.Layers {
		if strings.HasPrefix(l.Name, "cut-") {
			l = k.marked(l)
		}
		if k.mirrored {
			l = k.mirror(l)
		}
		d.Layers[i] = l
	}
	return d
}

// marked draws what is cut as outlines, or round holes as crosses.
func (k look) marked(l export.Layer) export.Layer {
	if k.marks != document.OutlineMarks && k.marks != document.CentreMarks {
		return l
	}
	l.Pen.Filled, l.Pen.Stroke = false, lookStroke
	if k.marks == document.OutlineMarks {
		return l
	}
	lines := slices.Clone(l.Lines)
	for _, disc := range l.Discs {
		c := disc.Centre
		lines = append(lines,
			export.Line{Points: []geom.Point{{X: c.X - lookArm, Y: c.Y}, {X: c.X + lookArm, Y: c.Y}}},
			export.Line{Points: []geom.Point{{X: c.X, Y: c.Y - lookArm}, {X: c.X, Y: c.Y + lookArm}}})
	}
	l.Lines, l.Discs = lines, nil
	return l
}

// mirror turns a layer over about the middle of the paper.
func (k look) mirror(l export.Layer) export.Layer {
	l.Discs, l.Outlines = slices.Clone(l.Discs), slices.Clone(l.Outlines)
	l.Lines, l.Texts = slices.Clone(l.Lines), slices.Clone(l.Texts)
	for i := range l.Discs {
		l.Discs[i].Centre = k.put(l.Discs[i].Centre)
	}
	over := geom.Scale(-1, 1).Then(geom.Translate(geom.Point{X: k.width}))
	for i, o := range l.Outlines {
		l.Outlines[i] = geom.Shape{Outline: o}.Placed(over).Outline
	}
	for i, line := range l.Lines {
		points := slices.Clone(line.Points)
		for j := range points {
			points[j] = k.put(points[j])
		}
		l.Lines[i].Points = points
	}
	for i, text := range l.Texts {
		l.Texts[i].At = k.put(text.At)
		switch text.Anchor {
		case export.Start:
			l.Texts[i].Anchor = export.End
		case export.End:
			l.Texts[i].Anchor = export.Start
		}
	}
	return l
}

func (k look) put(p geom.Point) geom.Point { return geom.Point{X: k.width - p.X, Y: p.Y} }

// box returns where a box of the sheet lies on the drawing.
func (k look) box(b geom.Box) geom.Box {
	if !k.mirrored {
		return b
	}
	return geom.BoxOf(k.put(b.Min), k.put(b.Max))
}
