package ui

import (
	"fmt"
	"math"
	"testing"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/driver/desktop"
	"fyne.io/fyne/v2/widget"

	"tsugime/repeat/geom"
)

// parts lists all that can be seen of an object, what widgets are made of too.
func parts(o fyne.CanvasObject, add func(fyne.CanvasObject)) {
	if !o.Visible() {
		return
	}
	add(o)
	for _, part := range partsOf(o) {
		parts(part, add)
	}
}

// Tab goes through every field, choice and button of each station, to the surface and
// back to where it began: nothing needs a mouse.
func TestTabReachesAllOfEveryStation(t *testing.T) {
	w := onBench(t, "leaf")
	for at := range w.stations {
		w.GoTo(at)
		tabThrough(t, w, stationNames[at])
	}
	w.GoTo(draftAt)
	w.turnDrawing()
	tabThrough(t, w, "drawing")
}

func tabThrough(t *testing.T, w *Window, where string) {
	t.Helper()
	canvas := w.win.Canvas()
	canvas.Focus(w.board)
	met := map[fyne.Focusable]bool{}
	for range 2000 {
		canvas.FocusNext()
		f := canvas.Focused()
		if met[f] {
			break
		}
		met[f] = true
	}
	if !met[w.board] {
		t.Errorf("%s: Tab doesn't come back to the surface", where)
	}
	wanted := 0
	parts(w.win.Content(), func(o fyne.CanvasObject) {
		f, takes := o.(fyne.Focusable)
		if d, ok := o.(fyne.Disableable); ok && d.Disabled() {
			return
		}
		if _, taps := o.(fyne.Tappable); taps && !takes {
			switch o.(type) {
			case *stationBar: // Ctrl with a digit
			case *widget.Accordion, *widget.Label:
			default:
				t.Errorf("%s: a %T can be tapped and takes no keys", where, o)
			}
		}
		if takes {
			wanted++
			if !met[f] {
				t.Errorf("%s: Tab doesn't reach a %T %s", where, o, labelled(o))
			}
		}
	})
	if wanted < 5 {
		t.Errorf("%s: only %d things take keys", where, wanted)
	}
}

func labelled(o fyne.CanvasObject) string {
	if b, ok := o.(*widget.Button); ok {
		return b.Text
	}
	return fmt.Sprint(o.Position())
}

// Every command has a key, and can be asked for by its name.
func TestEveryCommandHasAKey(t *testing.T) {
	w := onBench(t, "small-dot")
	taken := map[string]string{}
	for _, c := range commands() {
		if len(c.keys) == 0 || c.name(w) == "" {
			t.Fatalf("%q has no key", c.name(w))
		}
		for _, k := range c.keys {
			if other, ok := taken[keyName(k)]; ok {
				t.Errorf("%s does %q and %q", keyName(k), other, c.name(w))
			}
			taken[keyName(k)] = c.name(w)
		}
		if found := commandsLike(w, c.name(w)); len(found) == 0 {
			t.Errorf("%q is not found by its name", c.name(w))
		}
	}
}

func TestKeysGoFromPartToPart(t *testing.T) {
	w := onBench(t, "small-dot")
	w.GoTo(stencilAt)
	keyed(t, w, fyne.KeyH, ctrl)
	first := w.win.Canvas().Focused()
	if first == nil || first == fyne.Focusable(w.board) {
		t.Fatalf("the keys are at %T", first)
	}
	keyed(t, w, fyne.KeyK, ctrl)
	if w.win.Canvas().Focused() != fyne.Focusable(w.board) {
		t.Errorf("the keys are at %T, want the surface", w.win.Canvas().Focused())
	}
}

func TestTheViewIsMovedByKeysAndZoomedToThePointer(t *testing.T) {
	w := onBench(t, "small-dot")
	seen, scale := w.board.Seen(), w.board.Scale()
	for _, c := range []struct {
		key  fyne.KeyName
		x, y float64
	}{{fyne.KeyRight, 1, 0}, {fyne.KeyDown, 0, 1}, {fyne.KeyLeft, -1, 0}, {fyne.KeyUp, 0, -1}} {
		before := w.board.Seen()
		keyed(t, w, c.key, ctrl)
		moved := w.board.Seen().Min.Sub(before.Min)
		if want := geom.PtMM(c.x*panPx/scale, c.y*panPx/scale); moved.Distance(want) > geom.Micrometre {
			t.Errorf("Ctrl+%s moved the view by %v, want %v", c.key, moved, want)
		}
	}
	if w.board.Seen().Min.Distance(seen.Min) > geom.Micrometre {
		t.Error("there and back isn't where it began")
	}
	at := w.board.At(geom.PtMM(1, 2))
	w.board.MouseMoved(&desktop.MouseEvent{PointEvent: fyne.PointEvent{Position: at}})
	keyed(t, w, fyne.KeyEqual, ctrl)
	if now := w.board.At(geom.PtMM(1, 2)); math.Hypot(float64(now.X-at.X), float64(now.Y-at.Y)) > 0.01 || w.board.Scale() <= scale {
		t.Errorf("what was under the pointer went from %v to %v", at, now)
	}
	w.board.MouseOut()
	middle := w.board.Seen().Centre()
	keyed(t, w, fyne.KeyMinus, ctrl)
	if w.board.Seen().Centre().Distance(middle) > geom.Micrometre {
		t.Error("with the pointer elsewhere the middle doesn't stay")
	}
}

// Rulers, measures and fields count in every unit; what was chosen holds in the next window.
func TestLengthsAreShownInEveryUnit(t *testing.T) {
	w := onBench(t, "small-dot")
	step := w.Order().Sheet.Step
	for _, want := range []geom.Unit{geom.CMUnit, geom.InchUnit, geom.KaneSun, geom.KujiraSun, geom.MMUnit} {
		w.typed(fyne.KeyU, 0)
		if w.unit().Name != want.Name || w.board.Unit.Name != want.Name {
			t.Fatalf("U counts in %s, the rulers in %s; want %s", w.unit().Name, w.board.Unit.Name, want.Name)
		}
		found := false
		for _, m := range theDraft(w).measures() {
			found = found || m.value == w.unit().Format(w.Order().Unit.Lattice.Pitch(), 4)
		}
		if !found {
			t.Errorf("the pitch isn't measured in %s", want.Name)
		}
		// A tenth of a thousandth of a millimetre is still told, in a field too.
		shown, err := geom.ParseLength(fieldText(w, "Step"), w.unit())
		if err != nil || (shown-step).Abs() > geom.Micrometre {
			t.Errorf("in %s the step is shown as %q", want.Name, fieldText(w, "Step"))
		}
		if w.Order().Sheet.Step != step || w.Changed() {
			t.Error("the order changed")
		}
	}
}

// fieldText is what stands in the field of the draft's bench beside a name.
func fieldText(w *Window, name string) string {
	text, beside := "", false
	parts(w.left.Content, func(o fyne.CanvasObject) {
		if l, ok := o.(*widget.Label); ok && l.Text == name {
			beside = true
		}
		if e, ok := o.(*entry); ok && beside {
			text, beside = e.Text, false
		}
	})
	return text
}

// A number without a unit is in the unit that is shown, in fields that are no part of the
// order too; one with a unit is in its own.
func TestABareNumberIsInTheUnitThatIsShown(t *testing.T) {
	w := onBench(t, "small-dot")
	w.typed(fyne.KeyU, 0) // cm
	s := theDraft(w)
	for text, want := range map[string]geom.Length{"0.07": geom.MM(0.7), "0.6 mm": geom.MM(0.6), "1/40 in": geom.MM(0.635)} {
		w.chooseAll()
		s.diameter.SetText(text)
		s.resize()
		if got := w.Order().Unit.Motifs[0].Shape.Disc.Diameter; got != want {
			t.Errorf("%q makes a dot of %v, want %v", text, got, want)
		}
	}
}
