package ui

import (
	"context"
	"slices"
	"strings"
	"testing"
	"time"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/driver/desktop"
	"fyne.io/fyne/v2/test"

	"tsugime/repeat/check"
	"tsugime/repeat/document"
	"tsugime/repeat/geom"
	"tsugime/repeat/stencil"
	"tsugime/ui/session"
)

// rings is two rings about one middle: the paper between them and within the inner
// one is held by nothing.
const rings = `{"format":"tsugime order","version":1,"title":"Rings","sheet":{"step_mm":180},
"unit":{"lattice":{"a_mm":[10,5],"b_mm":[0,10]},"motifs":[{"id":1,"at_mm":[3,4],"outline":{"path":"M4 0A4 4 0 0 1 -4 0A4 4 0 0 1 4 0Z M3 0A3 3 0 0 0 -3 0A3 3 0 0 0 3 0Z M2 0A2 2 0 0 1 -2 0A2 2 0 0 1 2 0Z M1.2 0A1.2 1.2 0 0 0 -1.2 0A1.2 1.2 0 0 0 1.2 0Z"}}]}}`

// atStencil lays the rings on the bench and shows the copy in the middle of the
// sheet at 20 units of the screen for a millimetre; it returns the rings' middle.
func atStencil(t *testing.T) (*Window, *stencilStation, geom.Point) {
	t.Helper()
	o, err := document.Read(strings.NewReader(rings))
	if err != nil {
		t.Fatal(err)
	}
	w := New(test.NewTempApp(t), o, "", session.In(t.TempDir(), time.Hour))
	w.win.Resize(fyne.NewSize(1440, 900))
	settle(t, w)
	w.GoTo(stencilAt)
	s := w.stencilStation()
	middle := geom.PtMM(3, 4).Add(s.home())
	w.board.Near(middle, 20)
	return w, s, middle
}

// finish waits for what goes on in the background, and for the order to be built.
func finish(t *testing.T, w *Window) {
	t.Helper()
	settleTask(t, w)
	settle(t, w)
}

// near fails where a place is not where it should be, to two hundredths.
func near(t *testing.T, what string, got, want geom.Point) {
	t.Helper()
	if got.Distance(want) > geom.MM(0.02) {
		t.Errorf("%s at %v, %v; want %v, %v", what, got.X, got.Y, want.X, want.Y)
	}
}

func TestADragAcrossACutOutAddsATie(t *testing.T) {
	w, s, middle := atStencil(t)
	start := written(t, w.Order())
	w.typed(fyne.KeyT, 0)
	// On any copy of the motif the tie is the same one of the unit. It begins in
	// paper, ends in the ring from 3 to 4 mm, and so goes on half a width beyond.
	for _, copied := range []geom.Point{{}, w.Order().Unit.Lattice.A} {
		pull(w.board, middle.Add(copied).Add(geom.PtMM(2.4, 0)), middle.Add(copied).Add(geom.PtMM(3.6, 0)), 8)
		ties := w.Order().Sheet.Hold.Ties
		if len(ties) != 1 || w.Order().Sheet.Hold.Way != stencil.WithTies || ties[0].Motif != 1 {
			t.Fatalf("held by %q with %v, want one tie of motif 1", w.Order().Sheet.Hold.Way, ties)
		}
		near(t, "the tie begins", ties[0].From, geom.PtMM(5.4, 4))
		near(t, "the tie ends", ties[0].To, geom.PtMM(7+w.Order().Sheet.Hold.TieWidth.MM()/2, 4))
		if name := w.history.UndoName(); name != "Add Tie" {
			t.Errorf("the menu would undo %q", name)
		}
		settle(t, w)
		if n := len(w.work.Sheet.Paths.Islands); n != 1 {
			t.Errorf("%d islands are left, want the inner one", n)
		}
		if hand, ok := s.inHand(); !ok || hand.From.Distance(middle.Add(copied).Add(geom.PtMM(2.4, 0))) > geom.MM(0.02) {
			t.Errorf("the new tie is not in hand where it was drawn: %v", hand)
		}
		w.Undo()
		if got := written(t, w.Order()); got != start {
			t.Errorf("one undo did not lead back: %s", got)
		}
	}
}

func TestAStripAcrossPaperAloneIsNoTie(t *testing.T) {
	w, s, middle := atStencil(t)
	s.draws.SetChecked(true)
	pull(w.board, middle.Add(geom.PtMM(2.3, 0)), middle.Add(geom.PtMM(2.7, 0)), 4)
	if w.Changed() || !strings.Contains(w.status.Text, "crosses no cut-out") {
		t.Errorf("changed %v; the window says %q", w.Changed(), w.status.Text)
	}
}

func TestATieIsMovedAtItsMiddleAndItsEnds(t *testing.T) {
	w, s, middle := atStencil(t)
	tie := stencil.Tie{Motif: 1, From: geom.PtMM(5.4, 4), To: geom.PtMM(7.6, 4), Width: geom.MM(0.8)}
	w.Edit("Add Tie", func(o document.Order) (document.Order, error) { return document.AddTies(o, false, tie) })
	settle(t, w)
	one := func() stencil.Tie { return w.Order().Sheet.Hold.Ties[0] }
	on := func(x, y float64) geom.Point { return middle.Add(geom.PtMM(x-3, y-4)) }

	pull(w.board, on(6.4, 4), on(6.4, 4.3), 6)
	near(t, "moved, it begins", one().From, geom.PtMM(5.4, 4.3))
	near(t, "moved, it ends", one().To, geom.PtMM(7.6, 4.3))
	pull(w.board, on(7.6, 4.3), on(7.7, 4), 6)
	near(t, "its end pulled, it begins", one().From, geom.PtMM(5.4, 4.3))
	near(t, "its end pulled, it ends", one().To, geom.PtMM(7.7, 4))
	pull(w.board, on(5.4, 4.3), on(5.3, 4), 6)
	near(t, "its beginning pulled, it begins", one().From, geom.PtMM(5.3, 4))
	w.typed(fyne.KeyDown, 0)
	near(t, "nudged, it ends", one().To, geom.PtMM(7.7, 4.01))
	if rows := s.holdMeasures(); !slices.ContainsFunc(rows, func(m measure) bool { return m.name == "tie" && m.value == "1 of 1" }) {
		t.Errorf("the chosen tie is not among the measures: %v", rows)
	}
	w.Edit("Change Tie", func(o document.Order) (document.Order, error) { return s.widenTie(o, geom.MM(0.6)) })
	if one().Width != geom.MM(0.6) {
		t.Errorf("widened, it is %v mm wide", one().Width)
	}
	w.typed(fyne.KeyDelete, 0)
	if n := len(w.Order().Sheet.Hold.Ties); n != 0 || w.holding() {
		t.Errorf("deleted, there are %d ties; still chosen: %v", n, w.holding())
	}
	edits := 0
	for ; w.history.UndoName() != ""; edits++ {
		w.Undo()
	}
	if edits != 7 || w.Order().Sheet.Hold.Way != stencil.AsDrawn {
		t.Errorf("%d edits, held by %q at the start", edits, w.Order().Sheet.Hold.Way)
	}
}

func TestATieThatIsGivenUpIsNotDrawn(t *testing.T) {
	w, s, middle := atStencil(t)
	s.draws.SetChecked(true)
	p := w.board.At(middle.Add(geom.PtMM(2.4, 0)))
	event := func(p fyne.Position) *desktop.MouseEvent {
		return &desktop.MouseEvent{PointEvent: fyne.PointEvent{Position: p}, Button: desktop.MouseButtonPrimary}
	}
	w.board.MouseDown(event(p))
	w.board.Dragged(&fyne.DragEvent{PointEvent: fyne.PointEvent{Position: p.AddXY(30, 0)}, Dragged: fyne.NewDelta(30, 0)})
	if _, ok := s.inHand(); !ok {
		t.Fatal("nothing is being drawn")
	}
	w.typed(fyne.KeyEscape, 0)
	w.board.MouseUp(event(p.AddXY(30, 0)))
	if _, ok := s.inHand(); ok || w.Changed() {
		t.Errorf("Escape did not give up the tie; changed %v", w.Changed())
	}
}

func TestAnIslandIsMendedByTiesFromItsFinding(t *testing.T) {
	w, _, _ := atStencil(t)
	var names []string
	for _, f := range w.work.Findings {
		if f.Code == "island" {
			for _, r := range w.remediesOf(f) {
				names = append(names, r.name(w))
			}
			break
		}
	}
	if want := []string{"Propose Ties", "Part into Two Sheets"}; !slices.Equal(names, want) {
		t.Fatalf("the remedies of an island are %q, want %q", names, want)
	}
	w.mendFirst()
	finish(t, w)
	if n := len(w.work.Sheet.Paths.Islands); n != 0 || len(w.Order().Sheet.Hold.Ties) < 2 {
		t.Errorf("%d islands are left with %d ties", n, len(w.Order().Sheet.Hold.Ties))
	}
	if w.history.UndoName() != "Propose Ties" {
		t.Errorf("the menu would undo %q", w.history.UndoName())
	}
	if check.Worst(w.work.Findings) == check.Fault && slices.ContainsFunc(w.work.Findings, func(f check.Finding) bool { return f.Code == "island" }) {
		t.Error("the finding is still there")
	}
}

func TestAProposalForAnOrderThatHasChangedIsDropped(t *testing.T) {
	w, _, _ := atStencil(t)
	before := w.history.Now()
	w.Edit("Change Step", func(o document.Order) (document.Order, error) { return document.SetStep(o, geom.MM(170)) })
	w.proposed("Propose Ties", before, before.order, nil)
	if w.history.UndoName() != "Change Step" || w.Order().Sheet.Step != geom.MM(170) {
		t.Errorf("a proposal for an older order was taken over: %q", w.history.UndoName())
	}
}

func TestWorkInTheBackgroundCanBeStopped(t *testing.T) {
	w, _, _ := atStencil(t)
	begun := make(chan struct{})
	w.propose("Propose Ties", func(ctx context.Context, o document.Order) (document.Order, []stencil.Unheld, error) {
		close(begun)
		<-ctx.Done()
		return o, nil, ctx.Err()
	})
	<-begun
	w.stop()
	finish(t, w)
	if w.Changed() || !strings.Contains(w.status.Text, "Stopped") {
		t.Errorf("changed %v; the window says %q", w.Changed(), w.status.Text)
	}
}

func TestIdleTiesAreTakenAwayTogether(t *testing.T) {
	w, _, _ := atStencil(t)
	idle := stencil.Tie{Motif: 1, From: geom.PtMM(5.2, 4), To: geom.PtMM(5.8, 4), Width: geom.MM(0.3)}
	open := stencil.Tie{Motif: 1, From: geom.PtMM(5.4, 4), To: geom.PtMM(6.5, 4), Width: geom.MM(0.3)}
	good := stencil.Tie{Motif: 1, From: geom.PtMM(3, 6.5), To: geom.PtMM(3, 8.5), Width: geom.MM(0.8)}
	w.Edit("Add Ties", func(o document.Order) (document.Order, error) { return document.AddTies(o, false, idle, open, good) })
	settle(t, w)
	if !idling(w) {
		t.Fatal("no idle tie is seen")
	}
	w.takeIdleTies()
	if got := w.Order().Sheet.Hold.Ties; len(got) != 1 || got[0] != good {
		t.Errorf("left are %v, want %v alone", got, good)
	}
}

func TestPaperThatHoldsIsNotTied(t *testing.T) {
	w := onBench(t, "leaf")
	w.GoTo(stencilAt)
	for _, propose := range []func(){w.proposeTies, w.proposeSplit} {
		propose()
		finish(t, w)
		if w.Changed() || !strings.Contains(w.status.Text, "The paper holds") {
			t.Errorf("changed %v; the window says %q", w.Changed(), w.status.Text)
		}
	}
}
