package ui

import (
	"fmt"
	"math/rand/v2"
	"testing"

	"fyne.io/fyne/v2"

	"tsugime/repeat/document"
	"tsugime/repeat/geom"
	"tsugime/repeat/pattern"
	"tsugime/repeat/stencil"
)

// Whatever is clicked, pulled, written and keyed while drawing and shaping: the order
// stays one that can be written, and undo leads back to the start.
func TestRandomDrawingUndoesToTheStart(t *testing.T) {
	w, d := drawingOn(t, pattern.P1)
	// A narrow field: what is built in the background is not the point here.
	w.Edit("Narrow", func(o document.Order) (document.Order, error) {
		o, err := document.SetField(o, stencil.Field{Left: o.Sheet.Field.Left, Width: geom.MM(40)})
		if err != nil {
			return o, err
		}
		return document.SetStep(o, geom.MM(20))
	})
	start := written(t, w.Order())
	first := w.history.UndoName()
	random := rand.New(rand.NewPCG(41, 1))
	place := func() geom.Point { return geom.PtMM(random.Float64()*8-4, random.Float64()*8-4) }
	letters := []fyne.KeyName{fyne.KeyD, fyne.KeyO, fyne.KeyL, fyne.KeyC, fyne.KeyM, fyne.KeyI, fyne.KeyB, fyne.KeyX, fyne.KeyH,
		fyne.KeyR, fyne.KeyJ, fyne.KeyPeriod, fyne.KeyReturn, fyne.KeyReturn, fyne.KeyReturn, fyne.KeyReturn, fyne.KeyReturn, fyne.KeyDelete, fyne.KeyRight, fyne.KeyEscape}
	edits := 0
	for n := range 100 {
		before := w.history.Now().number
		switch random.IntN(8) {
		case 0, 1, 2:
			click(w.board, place())
		case 3, 4:
			pull(w.board, place(), place(), 3)
		case 5:
			d.panel.write(fmt.Sprintf("by %d, %d", random.IntN(9)-4, random.IntN(9)-4))
		default:
			var m fyne.KeyModifier
			if random.IntN(4) == 0 {
				m = fyne.KeyModifierShift
			}
			w.typed(letters[random.IntN(len(letters))], m)
		}
		if w.history.Now().number != before {
			edits++
		}
		if len(w.Order().Unit.Motifs) > 2 {
			w.Undo()
		}
		if w.craft() == nil && n%3 == 0 {
			w.typed(fyne.KeyD, 0)
		}
		if top := w.win.Canvas().Overlays().Top(); top != nil {
			t.Fatal("a dialog came up")
		}
		if err := w.Order().Check(); err != nil {
			t.Fatalf("after %d steps: %v", n, err)
		}
	}
	if edits < 7 {
		t.Errorf("only %d steps were edits", edits)
	}
	for w.history.UndoName() != first {
		w.Undo()
	}
	if written(t, w.Order()) != start {
		t.Error("undo did not lead back to the start")
	}
}
