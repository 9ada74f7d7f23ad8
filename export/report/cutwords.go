package report

import (
	"tsugime/export"
	"tsugime/repeat"
	"tsugime/repeat/geom"
	"tsugime/repeat/stencil"
)

// cutWords are the names of the stars and, in the wider margin of the paper,
// what the drawing is. Words that find no room are left out: they never lie on
// what is cut.
func cutWords(w repeat.Work, s setSheet, groups []cutGroup, f figures) export.Layer {
	layer := starWords(s)
	field := s.cutField()
	top := geom.BoxOf(s.Paper.Min, geom.Point{X: s.Paper.Max.X, Y: field.Min.Y - 2*labelOff})
	bottom := geom.BoxOf(geom.Point{X: s.Paper.Min.X, Y: field.Max.Y + 2*labelOff}, s.Paper.Max)
	room := bottom
	if field.Min.Y-s.Paper.Min.Y > s.Paper.Max.Y-field.Max.Y {
		room = top
	}
	room = room.Grown(-5 * geom.Millimetre)
	if room.Empty() {
		return layer
	}
	y := room.Min.Y
	for i, text := range append(cutNotes(w, s, f), legend(groups, f)...) {
		s := bodyStyle
		if i == 0 {
			s = headStyle
		}
		text, s = fit(text, s, room.Width())
		if y += s.leading(); y > room.Max.Y {
			break
		}
		layer.Texts = append(layer.Texts, export.Text{
			At: geom.Point{X: room.Min.X, Y: y}, Height: s.height, Text: text, Bold: s.bold,
		})
	}
	return layer
}

// starWords are the names of the stars alone.
func starWords(s setSheet) export.Layer {
	return export.Layer{
		Name: "words", Pen: export.Pen{Colour: export.Black},
		Texts: starLabels(s, asDrawn, labelOff, captionStyle.height),
	}
}

func cutNotes(w repeat.Work, s setSheet, f figures) []string {
	x, y := w.Scale.Cut()
	notes := []string{f.title(w)}
	if note := s.note(f); note != "" {
		notes = append(notes, note)
	}
	return append(notes,
		f.say("paper %s × %s, step as cut %s",
			f.sheet.plain(s.Paper.Width()), f.sheet.plain(s.Paper.Height()), f.sheet.with(s.Spec.Step)),
		f.say("cut size: %.4f × finished size across, %.4f × along; round holes keep their tool's diameter", x, y),
		f.say("printing side up, as the dyer sees it on the cloth; leading stars L at the top, trailing stars T below"),
	)
}

// legend tells what each layer of the drawing is cut with, as many layers to a line
// as stay readable.
func legend(groups []cutGroup, f figures) []string {
	const perLine = 3
	var lines []string
	for i, g := range groups {
		text := f.say("%s: %s, %s, %d", g.layer.Name, f.say(string(g.method)), f.toolName(g.rack, g.tool, g.size), g.count)
		if i%perLine == 0 {
			lines = append(lines, text)
		} else {
			lines[len(lines)-1] += f.say("; ") + text
		}
	}
	return lines
}

// cutField returns the box around everything that is cut, the joint line and its
// copy with it.
func (s setSheet) cutField() geom.Box { return patternField(s.Sheet).Union(s.holes) }

// patternField returns the box of the joint lines, which hold the pattern between
// them and reach from edge to edge; without a pattern it is the paper's middle.
func patternField(s stencil.Sheet) geom.Box {
	if len(s.Joint.Line) == 0 {
		return geom.BoxOf(s.Paper.Centre())
	}
	return geom.BoxOf(s.Joint.Line...).Union(geom.BoxOf(moved(s.Joint.Line, geom.Point{Y: s.Spec.Step})...))
}
