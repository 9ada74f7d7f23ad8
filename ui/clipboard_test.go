package ui

import (
	"slices"
	"strings"
	"testing"
	"time"

	"fyne.io/fyne/v2"

	"tsugime/repeat/document"
	"tsugime/repeat/geom"
	"tsugime/repeat/pattern"
	"tsugime/ui/session"
)

// keyed does the command of a key, as Fyne sends those with Ctrl.
func keyed(t *testing.T, w *Window, name fyne.KeyName, m fyne.KeyModifier) {
	t.Helper()
	for _, c := range commands() {
		for _, k := range c.keys {
			if k.KeyName == name && k.Modifier == m {
				w.run(c)
				return
			}
		}
	}
	t.Fatalf("no command has the key %v %s", m, name)
}

func TestMotifsAreCopiedIntoAnotherWindow(t *testing.T) {
	w := onBench(t, "leaf")
	from := w.Order()
	w.chooseAll()
	keyed(t, w, fyne.KeyC, ctrl)
	if text := w.app.Clipboard().Content(); !strings.Contains(text, `"format": "tsugime order"`) {
		t.Fatalf("the clipboard has %.60q", text)
	}
	o, err := ReadStarter("small-dot")
	if err != nil {
		t.Fatal(err)
	}
	other := New(w.app, o, "", session.In(t.TempDir(), time.Hour))
	settle(t, other)
	keyed(t, other, fyne.KeyV, ctrl)
	got := other.Order().Unit.Motifs[len(o.Unit.Motifs):]
	if len(got) != len(from.Unit.Motifs) || len(other.chosen) != len(got) || other.history.UndoName() != "Paste Motifs" {
		t.Fatalf("%d of %d motifs came over, %d are chosen", len(got), len(from.Unit.Motifs), len(other.chosen))
	}
	for i, m := range got {
		if m.At != from.Unit.Motifs[i].At || m.Shape.Round() != from.Unit.Motifs[i].Shape.Round() {
			t.Errorf("motif %d stands at %v, stood at %v", m.ID, m.At, from.Unit.Motifs[i].At)
		}
	}
	other.Undo()
	if written(t, other.Order()) != written(t, o) {
		t.Error("one undo doesn't take the pasted motifs away")
	}
}

// Pasted where they were copied they lie beside their own like, each time further on.
func TestMotifsArePastedBesideTheirLike(t *testing.T) {
	w := onBench(t, "small-dot")
	w.Edit("Change Lattice", func(o document.Order) (document.Order, error) {
		return document.SetLattice(o, pattern.Straight(geom.MM(10), geom.MM(10)))
	})
	w.chooseAll()
	keyed(t, w, fyne.KeyC, ctrl)
	keyed(t, w, fyne.KeyV, ctrl)
	keyed(t, w, fyne.KeyV, ctrl)
	l := w.Order().Unit.Lattice
	var places []geom.Point
	for _, m := range w.Order().Unit.Motifs {
		places = append(places, l.Into(m.At))
	}
	slices.SortFunc(places, func(a, b geom.Point) int { return int(a.X - b.X) })
	if len(places) != 3 || len(slices.Compact(places)) != 3 {
		t.Errorf("the motifs stand at %v", places)
	}
}

func TestMotifsAreCutInOneEdit(t *testing.T) {
	w := onBench(t, "leaf")
	before := written(t, w.Order())
	w.choose(w.Order().Unit.Motifs[0].ID)
	keyed(t, w, fyne.KeyX, ctrl)
	if n := len(w.Order().Unit.Motifs); n != 2 || w.history.UndoName() != "Cut Motifs" {
		t.Errorf("%d motifs are left after %q", n, w.history.UndoName())
	}
	w.Undo()
	if written(t, w.Order()) != before {
		t.Error("one undo doesn't bring them back")
	}
}

// In a field the keys are the field's own, and what is no order is told.
func TestAFieldHasItsOwnClipboardKeys(t *testing.T) {
	w := onBench(t, "small-dot")
	e := theDraft(w).path
	e.SetText("M0 0 H3 V1 Z")
	w.win.Canvas().Focus(e)
	before := written(t, w.Order())
	keyed(t, w, fyne.KeyA, ctrl)
	keyed(t, w, fyne.KeyC, ctrl)
	if got := w.app.Clipboard().Content(); got != "M0 0 H3 V1 Z" {
		t.Errorf("the field copied %q", got)
	}
	keyed(t, w, fyne.KeyX, ctrl)
	keyed(t, w, fyne.KeyV, ctrl)
	keyed(t, w, fyne.KeyV, ctrl)
	if e.Text != "M0 0 H3 V1 ZM0 0 H3 V1 Z" || written(t, w.Order()) != before {
		t.Errorf("the field has %q", e.Text)
	}
	e.SetText("")
	w.win.Canvas().Focus(w.board)
	keyed(t, w, fyne.KeyV, ctrl)
	if written(t, w.Order()) != before || !strings.Contains(w.status.Text, "no motifs on the clipboard") {
		t.Errorf("words were pasted as motifs: %q", w.status.Text)
	}
}
