package ui

import (
	"math"
	"testing"
	"time"

	"fyne.io/fyne/v2"

	"tsugime/repeat/geom"
)

// By a glimpse alone a place of the scene is found on the screen, as those do who
// look at the window from outside.
func TestAGlimpseTellsWherePlacesAreOnTheScreen(t *testing.T) {
	w := onBench(t, "small-dot")
	at := w.Order().Unit.Lattice.Into(w.Order().Unit.Motifs[0].At)
	for _, zoom := range []float64{1, 1.7} {
		w.board.Zoom(zoom)
		g := w.Glimpse()
		x := float64(g.At.X) + (at.X.MM()-g.Seen.Min.X.MM())*g.Zoom
		y := float64(g.At.Y) + (at.Y.MM()-g.Seen.Min.Y.MM())*g.Zoom
		want := w.board.At(at).Add(fyne.CurrentApp().Driver().AbsolutePositionForObject(w.board))
		if math.Abs(x-float64(want.X)) > 0.1 || math.Abs(y-float64(want.Y)) > 0.1 {
			t.Errorf("zoomed by %v the motif stands at %.2f, %.2f by the glimpse; want %v", zoom, x, y, want)
		}
	}
}

func TestAGlimpseTellsWhatIsWorkedOutAndWhatIsAsked(t *testing.T) {
	w := onBench(t, "small-dot")
	if g := w.Glimpse(); g.Station != "Draft" || g.State != g.Built || g.Changed || g.Asking || g.Busy {
		t.Errorf("at rest: %+v", g)
	}
	w.chooseAll()
	theDraft(w).nudge(geom.PtMM(0.1, 0))
	if g := w.Glimpse(); g.State == g.Built || !g.Changed {
		t.Errorf("after an edit, before it is worked out: %+v", g)
	}
	settle(t, w)
	w.GoTo(boltAt)
	w.showKeys()
	if g := w.Glimpse(); g.Station != "Bolt" || g.State != g.Built || !g.Asking {
		t.Errorf("with the page of keys over the bolt: %+v", g)
	}
}

func TestWhoWatchesIsToldOfEachChangeAndOfEachPicture(t *testing.T) {
	w := onBench(t, "small-dot")
	shown, painted := 0, 0
	w.Watch(func() { shown++ }, func(took time.Duration) {
		if painted++; took <= 0 {
			t.Errorf("a picture took %v", took)
		}
	})
	w.board.Zoom(1.25)
	w.win.Canvas().Capture()
	if shown == 0 || painted != 1 {
		t.Errorf("after a zoom told of %d changes and %d pictures; want some and 1", shown, painted)
	}
}
