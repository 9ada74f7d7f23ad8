package report

import (
	"fmt"

	"tsugime/export"
	"tsugime/repeat"
	"tsugime/repeat/geom"
	"tsugime/repeat/stencil"
)

// labelOff is how far a star's name stands from the cut field.
const labelOff = 4 * geom.Millimetre

// cutWords are the names of the stars and, in the wider margin of the paper,
// what the drawing is. Words that find no room are left out: they never lie on
// what is cut.
func cutWords(w repeat.Work, s stencil.Sheet, f figures) export.Layer {
	layer := export.Layer{Name: "words", Pen: export.Pen{Colour: export.Black}}
	field := cutField(s)
	layer.Texts = append(layer.Texts, starLabels(s, field)...)
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
	for i, text := range cutNotes(w, s, f) {
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

func cutNotes(w repeat.Work, s stencil.Sheet, f figures) []string {
	x, y := w.Scale.Cut()
	return []string{
		title(w),
		fmt.Sprintf("paper %s × %s, step as cut %s",
			f.sheet.number(s.Paper.Width()), f.sheet.with(s.Paper.Height()), f.sheet.with(s.Spec.Step)),
		fmt.Sprintf("cut size: %.4f × finished size across, %.4f × along; round holes keep their tool's diameter", x, y),
		"printing side up, as the dyer sees it on the cloth; leading stars L at the top, trailing stars T below",
	}
}

func starLabels(s stencil.Sheet, field geom.Box) []export.Text {
	var labels []export.Text
	taken := map[stencil.End]geom.Length{}
	for i, star := range s.Stars.Stars {
		label := export.Text{
			At: geom.Point{X: star.At.X, Y: field.Min.Y - labelOff}, Height: captionStyle.height,
			Text: starNames(s.Stars)[i], Anchor: export.Middle,
		}
		if star.End == stencil.Trailing {
			label.At.Y = field.Max.Y + labelOff + label.Height.Times(0.7)
		}
		// Stars that stand close together share the name of the first.
		if at, ok := taken[star.End]; ok && star.At.X-at < captionStyle.width("L0")+geom.Millimetre {
			continue
		}
		taken[star.End] = star.At.X
		labels = append(labels, label)
	}
	return labels
}

// cutField returns the box around everything that is cut, the joint line and its
// copy with it.
func cutField(s stencil.Sheet) geom.Box {
	b := s.Bounds().Union(geom.BoxOf(s.Joint.Line...))
	if len(s.Joint.Line) > 0 {
		b = b.Union(geom.BoxOf(moved(s.Joint.Line, geom.Point{Y: s.Spec.Step})...))
	}
	if b.Empty() {
		return geom.BoxOf(s.Paper.Centre())
	}
	return b
}
