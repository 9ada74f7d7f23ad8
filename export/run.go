package export

import "tsugime/repeat/geom"

// A Run is letters of one face that follow each other in a text: what a writer
// needs that embeds the face instead of drawing outlines.
type Run struct {
	Face   Face
	Text   string
	Glyphs []uint16    // of the face, one for each letter; none for NoFace
	At     geom.Point  // where the first letter starts, on the baseline
	Em     geom.Length // at which the face is set
	Stroke geom.Length // drawn around the letters to make them bold; zero for none
}

// Runs parts a text into runs. Set one by one they give what Lettering draws: the
// run of a NoFace is what Lettering draws of a text of its own.
func Runs(t Text) []Run {
	if t.Height <= 0 {
		return nil
	}
	scale := float64(t.Height) / float64(drawnEm)
	var runs []Run
	x := float64(t.offset())
	for _, r := range t.Text {
		next, rise := Run{Face: NoFace, Em: t.Height}, geom.Length(0)
		if f := fountOf(r, t.Bold); f != nil {
			next = Run{Face: f.face, Em: t.Height.Times(f.size), Stroke: t.Height.Times(f.stroke), Glyphs: []uint16{f.glyph(r)}}
			rise = t.Height.Times(f.rise)
		}
		if n := len(runs) - 1; n >= 0 && runs[n].Face == next.Face {
			runs[n].Text += string(r)
			runs[n].Glyphs = append(runs[n].Glyphs, next.Glyphs...)
		} else {
			next.Text, next.At = string(r), t.on(geom.Point{X: geom.Nanometre.Times(x), Y: -rise})
			runs = append(runs, next)
		}
		x += scale * float64(letterOf(r, t.Bold).advance)
	}
	return runs
}
