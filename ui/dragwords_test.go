package ui

import (
	"strings"
	"testing"

	"fyne.io/fyne/v2"

	"tsugime/repeat/geom"
	"tsugime/repeat/pattern"
)

// midway presses at one place of the scene and moves to another without letting go.
func midway(w *Window, from, to geom.Point) {
	p, q := w.board.At(from), w.board.At(to)
	w.board.MouseDown(pressAt(p))
	w.board.Dragged(&fyne.DragEvent{PointEvent: fyne.PointEvent{Position: q}, Dragged: fyne.NewDelta(q.X-p.X, q.Y-p.Y)})
}

// Beside the pointer stand how far the motif has come, in the unit of the window, and
// what holds it: the lattice, a line of the symmetry, another motif.
func TestADragShowsItsDistanceAndWhatHoldsIt(t *testing.T) {
	for _, c := range []struct {
		group    pattern.Group
		from, to geom.Point
		holds    string
	}{
		{pattern.P1, geom.PtMM(-7, 2.2), geom.PtMM(0.04, 0.03), onLattice},
		{pattern.P1, geom.PtMM(-7, 2.2), geom.PtMM(5.05, -6.32), onCentre},
		{pattern.P2, geom.PtMM(-7, 2.2), geom.PtMM(0.04, 0.03), onTurn},
		{pattern.PM, geom.PtMM(-7, 2.2), geom.PtMM(0.06, 4.4), onMirror},
		{pattern.P1, geom.PtMM(-7, 2.2), geom.PtMM(-3.3, 2.25), "level"},
	} {
		w, _ := dotsOn(t, c.group, c.from, geom.PtMM(5, -6.3))
		before := written(t, w.Order())
		for range len(units()) {
			w.typed(fyne.KeyU, 0)
			midway(w, c.from, c.to)
			s := theDraft(w)
			scene := s.scene()
			words := scene.Labels[len(scene.Labels)-1]
			way := w.unit().Format(s.stands.Distance(s.drag.at.At), 3)
			if !strings.HasPrefix(words.Text, way+"  ") || !strings.Contains(words.Text, say(c.holds)) {
				t.Errorf("%s, to %v: beside the pointer stands %q, want %q and %q", c.group, c.to, words.Text, way, c.holds)
			}
			if off := w.board.At(words.At).Subtract(w.board.At(s.drag.at.At)); off.X < 0 || off.X > 40 || off.Y > 0 || off.Y < -40 {
				t.Errorf("the words stand %v from the place", off)
			}
			w.typed(fyne.KeyEscape, 0)
		}
		if written(t, w.Order()) != before {
			t.Errorf("%s: a drag that was given up changed the order", c.group)
		}
	}
}
