package board

import "image/color"

// A Look is what the surface's own parts wear: the rulers, the frames of loupe and
// inset, and the inset's words.
type Look struct{ Paper, Ink, Rim color.RGBA }

// Wear shows the surface's own parts in a look.
func (b *Board) Wear(l Look) {
	b.look = l
	b.dress()
	b.refresh()
}

// dress gives the parts that keep their colours those of the look.
func (b *Board) dress() {
	b.loupe.frame.StrokeColor = b.look.Ink
	i := b.inlay
	i.frame.StrokeColor, i.back.FillColor, i.back.StrokeColor = b.look.Ink, b.look.Paper, b.look.Rim
	for _, t := range i.words {
		t.Color = b.look.Ink
	}
	for _, o := range append(i.objects(), b.loupe.frame) {
		o.Refresh()
	}
}
