package report

import (
	"tsugime/export"
	"tsugime/repeat/geom"
	"tsugime/repeat/stencil"
)

// labelOff is how far a star's name stands from the cut field.
const labelOff = 4 * geom.Millimetre

// starLabels names the stars where put draws them: outside what is cut, beside
// it for stars at its sides, above and below it for the others. A name that
// would lie on an earlier one moves down beneath it, or is left out where it would
// no longer stand by its star. off and height are as drawn.
func starLabels(s setSheet, put func(geom.Point) geom.Point, off, height geom.Length) []export.Text {
	field := s.cutField()
	field = geom.BoxOf(put(field.Min), put(field.Max))
	var labels []export.Text
	var taken []geom.Box
	for _, star := range s.marks() {
		label := export.Text{At: put(star.At), Height: height, Text: star.name, Anchor: export.Middle}
		capital := label.Height.Times(0.7)
		switch near := 2 * geom.Millimetre; {
		case star.At.X < s.Spec.Field.Left+near:
			label.At = geom.Point{X: field.Min.X - off, Y: label.At.Y + capital/2}
			label.Anchor = export.End
		case star.At.X > s.Spec.Field.Right()-near:
			label.At = geom.Point{X: field.Max.X + off, Y: label.At.Y + capital/2}
			label.Anchor = export.Start
		case star.End == stencil.Leading:
			label.At.Y = field.Min.Y - off
		default:
			label.At.Y = field.Max.Y + off + capital
		}
		if at, ok := beneath(label, taken); ok {
			label.At = at
			labels, taken = append(labels, label), append(taken, textBox(label))
		}
	}
	return labels
}

// beneath returns the place of a label that lies on none of those taken: its own,
// or one up to a letter's height lower.
func beneath(label export.Text, taken []geom.Box) (geom.Point, bool) {
	lowest := label.At.Y + label.Height
	for i := 0; i < len(taken); i++ {
		if box := textBox(label); taken[i].Meets(box) {
			label.At.Y += taken[i].Max.Y - box.Min.Y + label.Height/10
			i = -1 // it may lie on another one now
		}
	}
	return label.At, label.At.Y <= lowest
}

// textBox returns the box of a level text: from its start to its end, from below
// the baseline to the top of a capital.
func textBox(t export.Text) geom.Box {
	from := t.Begin()
	return geom.BoxOf(
		geom.Point{X: from.X, Y: from.Y - t.Height.Times(0.75)},
		geom.Point{X: from.X + t.Width(), Y: from.Y + t.Height.Times(0.22)},
	)
}

// asDrawn leaves a place of the sheet where it is.
func asDrawn(p geom.Point) geom.Point { return p }
