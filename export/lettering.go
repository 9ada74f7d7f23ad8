package export

import "tsugime/repeat/geom"

// Lettering returns t as outlines at its place, turned and anchored: what each
// writer draws, so that words stand in the same place in every file. Latin
// letters are set in one face and Japanese ones in another; a letter that neither
// has becomes an upright frame; a text without height or letters has no outline.
// Letters are set at their own widths, unkerned.
func Lettering(t Text) geom.Outline {
	if t.Height <= 0 {
		return nil
	}
	scale := float64(t.Height) / float64(drawnEm)
	place := geom.Rotate(t.TurnDeg).Then(geom.Translate(t.At))
	var outline geom.Outline
	x := float64(t.offset())
	for _, r := range t.Text {
		l := letterOf(r, t.Bold)
		m := geom.Scale(scale, scale).Then(geom.Affine{A: 1, D: 1, E: x}).Then(place)
		outline = append(outline, l.outline.Mapped(m)...)
		x += scale * float64(l.advance)
	}
	return outline
}

// TextWidth returns how far a line of text runs at that letter height, from its
// start to where the next letter would stand.
func TextWidth(text string, height geom.Length, bold bool) geom.Length {
	var sum geom.Length
	for _, r := range text {
		sum += letterOf(r, bold).advance
	}
	return sum.Times(float64(height) / float64(drawnEm))
}

// Lacking returns the letters of a text that no face has a shape for, each once,
// in the order of the text.
func Lacking(text string) []rune {
	var lacking []rune
	seen := map[rune]bool{}
	for _, r := range text {
		if !seen[r] && fountOf(r, false) == nil {
			lacking = append(lacking, r)
		}
		seen[r] = true
	}
	return lacking
}

// Width returns how far t runs along its baseline.
func (t Text) Width() geom.Length { return TextWidth(t.Text, t.Height, t.Bold) }

// Begin returns where the first letter of t starts: At, moved back along the
// baseline as the anchor says.
func (t Text) Begin() geom.Point { return t.on(geom.Point{X: t.offset()}) }

// on returns a place on the paper of one that is counted from At along the
// baseline and down from it.
func (t Text) on(p geom.Point) geom.Point {
	return geom.Rotate(t.TurnDeg).Then(geom.Translate(t.At)).Apply(p)
}

// offset is the way along the baseline from At to the first letter.
func (t Text) offset() geom.Length {
	switch t.Anchor {
	case Middle:
		return -t.Width() / 2
	case End:
		return -t.Width()
	}
	return 0
}
