package ui

import (
	"testing"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/driver/desktop"

	"tsugime/repeat/document"
	"tsugime/repeat/geom"
	"tsugime/repeat/pattern"
	"tsugime/repeat/repeattest"
)

// The draft while half a petal of a flower is drawn under p4mm: the line, its own
// copies and those of the group, what would be cut, the place under the pointer.
func TestTheDraftWhileAMotifIsDrawn(t *testing.T) {
	w, d := drawingOn(t, pattern.P4MM)
	w.Edit("Place", func(o document.Order) (document.Order, error) {
		return document.AddMotif(o, pattern.Motif{Shape: geom.DiscShape(geom.Point{}, geom.MM(1.2)), At: geom.PtMM(10, 0)})
	})
	settle(t, w)
	d.panel.setTurns("5")
	d.panel.mirror.SetChecked(true)
	w.typed(fyne.KeyA, 0)
	for _, p := range []geom.Point{geom.PtMM(3, 6), geom.PtMM(3, 5), geom.PtMM(3.8, 3.5)} {
		click(w.board, p)
	}
	over := w.board.At(geom.PtMM(3.02, 1.97))
	w.board.MouseMoved(&desktop.MouseEvent{PointEvent: fyne.PointEvent{Position: over}})
	repeattest.GoldenPNG(t, "draft-drawing.png", w.win.Canvas().Capture())
}

// The draft while an outline is shaped, with a node chosen and its handles shown.
func TestTheDraftWhileAnOutlineIsShaped(t *testing.T) {
	w, _ := shapingOn(t, "M-5 0C-5 -4 -1 -5 2 -5A5 5 0 0 1 5 2L1 4C-2 4 -5 3 -5 0Z", geom.PtMM(1, 1), pattern.P2)
	settle(t, w)
	w.typed(fyne.KeyPeriod, 0)
	w.typed(fyne.KeyPeriod, 0)
	repeattest.GoldenPNG(t, "draft-shaping.png", w.win.Canvas().Capture())
}
