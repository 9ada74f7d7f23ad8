package ui

import (
	"math"
	"reflect"
	"slices"
	"testing"

	"fyne.io/fyne/v2"

	"tsugime/repeat/document"
	"tsugime/repeat/geom"
	"tsugime/repeat/pattern"
)

// dotsOn is a window with dots of 1 mm at places, on a straight lattice of 20 mm.
func dotsOn(t *testing.T, g pattern.Group, at ...geom.Point) (*Window, []pattern.ID) {
	t.Helper()
	w, d := drawingOn(t, g)
	d.leave()
	var ids []pattern.ID
	if !w.Edit("Place", func(o document.Order) (document.Order, error) {
		var dots []pattern.Motif
		for i, p := range at {
			ids = append(ids, o.NextID+pattern.ID(i))
			dots = append(dots, pattern.Motif{Shape: geom.DiscShape(geom.Point{}, geom.MM(1)), At: p})
		}
		return document.AddMotifs(o, dots...)
	}) {
		t.Fatal(w.status.Text)
	}
	w.choose()
	return w, ids
}

func stands(w *Window, id pattern.ID) geom.Point {
	m, _ := w.Order().Motif(id)
	return m.At
}

func TestAFrameChoosesWhatStandsInIt(t *testing.T) {
	w, ids := dotsOn(t, pattern.P1, geom.PtMM(2, 2), geom.PtMM(4, 3), geom.PtMM(8, 8))
	seen := w.board.Seen()
	pull(w.board, geom.PtMM(1, 1), geom.PtMM(5, 5), 6)
	if !slices.Equal(w.chosen, ids[:2]) {
		t.Errorf("chosen are %v, want %v", w.chosen, ids[:2])
	}
	if w.board.Seen() != seen || w.history.UndoName() != "Place" {
		t.Error("the frame moved the view, or edited")
	}
	// A copy chooses its motif: 8, 8 stands at −12, −12 + 20 too.
	pull(w.board, geom.PtMM(-11, -11), geom.PtMM(-13, -13), 6)
	if !slices.Equal(w.chosen, ids[2:]) {
		t.Errorf("by its copy chosen is %v, want %v", w.chosen, ids[2:])
	}
	click(w.board, geom.PtMM(0, 6))
	if len(w.chosen) != 0 {
		t.Error("a click on nothing let nothing go")
	}
}

func TestAllOfAKindAreChosen(t *testing.T) {
	w, ids := dotsOn(t, pattern.P1, geom.PtMM(2, 2), geom.PtMM(4, 3), geom.PtMM(8, 8))
	w.Edit("Size", func(o document.Order) (document.Order, error) { return document.ResizeDiscs(o, geom.MM(2), ids[1]) })
	w.choose(ids[0])
	w.chooseAlike()
	if !slices.Equal(w.chosen, []pattern.ID{ids[0], ids[2]}) {
		t.Errorf("chosen are %v", w.chosen)
	}
}

func TestDotsAreLaidInARowAndSpreadOverTheJoint(t *testing.T) {
	w, ids := dotsOn(t, pattern.P1, geom.PtMM(-7, 2), geom.PtMM(0, 3.5), geom.PtMM(6, 1))
	w.choose(ids...)
	inLine(pattern.Row)(w)
	spread(pattern.Row)(w)
	third := geom.Length(math.Round(20e6 / 3))
	for i, want := range []geom.Point{geom.PtMM(-7, 2), {X: geom.MM(-7) + third, Y: geom.MM(2)}, {X: geom.MM(-7) + 2*third, Y: geom.MM(2)}} {
		if off := stands(w, ids[i]).Sub(want).Norm(); off > 1.5 {
			t.Errorf("dot %d stands at %v, want %v", i+1, stands(w, ids[i]), want)
		}
	}
	if w.history.UndoName() != "Spread Evenly" {
		t.Errorf("undo would take back %q", w.history.UndoName())
	}
}

func TestDuplicatesAreChosenAndStandBeside(t *testing.T) {
	w, ids := dotsOn(t, pattern.P1, geom.PtMM(2, 2), geom.PtMM(4, 3))
	w.choose(ids...)
	w.duplicate()
	if len(w.chosen) != 2 || slices.Contains(w.chosen, ids[0]) || len(w.Order().Unit.Motifs) != 4 {
		t.Fatalf("chosen are %v", w.chosen)
	}
	way := stands(w, w.chosen[0]).Sub(stands(w, ids[0]))
	if way.X <= geom.MM(1) || way.Y != 0 || stands(w, w.chosen[1]).Sub(stands(w, ids[1])) != way {
		t.Errorf("the copies stand %v beside", way)
	}
	w.Undo()
	if len(w.Order().Unit.Motifs) != 2 {
		t.Error("one undo did not take both copies away")
	}
}

func TestChosenMotifsAreTurnedAndPlacedByNumbers(t *testing.T) {
	w, h := shapingOn(t, "M-3 -2H3V2H-3Z", geom.PtMM(1, 1), pattern.P1)
	h.leave()
	s := theDraft(w)
	s.turnBy("12.5°")
	w.typed(fyne.KeyR, 0)
	w.typed(fyne.KeyE, 0)
	if m, _ := s.onlyChosen(); m.TurnDeg != 12.5 {
		t.Errorf("turned by %v°, want 12.5", m.TurnDeg)
	}
	w.typed(fyne.KeyH, 0)
	if m, _ := s.onlyChosen(); m.TurnDeg != -12.5 || !m.Mirrored {
		t.Errorf("mirrored it is turned by %v°, mirrored: %v", m.TurnDeg, m.Mirrored)
	}
	s.moveTo("1/4 in", func(p *geom.Point) *geom.Length { return &p.X })
	if m, _ := s.onlyChosen(); m.At != geom.PtMM(6.35, 1) {
		t.Errorf("it stands at %v", m.At)
	}
	before := w.history.Now().number
	s.turnBy("a bit")
	if w.history.Now().number != before {
		t.Error("nonsense turned it")
	}
}

func TestJoinedMotifsPartAgain(t *testing.T) {
	w, ids := dotsOn(t, pattern.P1, geom.PtMM(2, 2), geom.PtMM(4, 3))
	area := w.Order().Unit.Motifs[0].Shape.AreaMM2()
	w.choose(ids...)
	w.typed(fyne.KeyJ, 0)
	if len(w.Order().Unit.Motifs) != 1 {
		t.Fatalf("%d motifs; the window says: %s", len(w.Order().Unit.Motifs), w.status.Text)
	}
	if a := w.Order().Unit.Motifs[0].Shape.AreaMM2(); math.Abs(a-2*area) > 1e-6 {
		t.Errorf("joined they cover %v mm², want %v", a, 2*area)
	}
	w.choose(ids[0])
	w.typed(fyne.KeyJ, fyne.KeyModifierShift)
	motifs := w.Order().Unit.Motifs
	if len(motifs) != 2 || len(w.chosen) != 2 {
		t.Fatalf("parted into %d motifs, %v chosen", len(motifs), w.chosen)
	}
	if !reflect.DeepEqual(motifs[1].Placed().Bounds().Centre(), geom.PtMM(4, 3)) {
		t.Errorf("the second stands about %v", motifs[1].Placed().Bounds().Centre())
	}
}

// The place is kept as it is; the plain pattern knows no edge, so the copy that has
// left on one side is in the cell again on the other.
func TestADragOverTheJointEntersOnTheOtherSide(t *testing.T) {
	w, ids := dotsOn(t, pattern.P1, geom.PtMM(9, 2))
	pull(w.board, geom.PtMM(9, 2), geom.PtMM(11.5, 2), 8)
	at := stands(w, ids[0])
	if at.Sub(geom.PtMM(11.5, 2)).Norm() > float64(geom.MM(0.05)) {
		t.Fatalf("dragged to %v", at)
	}
	l := w.Order().Unit.Lattice
	entered := l.Into(at)
	if entered.X >= 0 || entered != at.Sub(l.A) {
		t.Errorf("in the cell it stands at %v, want %v", entered, at.Sub(l.A))
	}
	// The copy there can be taken too, and dragged back.
	pull(w.board, entered, entered.Sub(geom.PtMM(2.5, 0)), 8)
	if off := l.Into(stands(w, ids[0])).Sub(geom.PtMM(9, 2)); off.Norm() > float64(geom.MM(0.1)) {
		t.Errorf("dragged back by its copy it is %v off", off)
	}
}

func TestADraggedMotifSnapsToTheLatticeAndOtherPlaces(t *testing.T) {
	w, ids := dotsOn(t, pattern.P2, geom.PtMM(-7, 2.2), geom.PtMM(5, -6.3))
	pull(w.board, geom.PtMM(-7, 2.2), geom.PtMM(0.04, 0.03), 9)
	if at := stands(w, ids[0]); at != (geom.Point{}) {
		t.Errorf("beside a half-turn point it stands at %v", at)
	}
	pull(w.board, geom.PtMM(0, 0), geom.PtMM(5.05, -3.123), 9)
	if at := stands(w, ids[0]); at == (geom.Point{}) || at.X.Abs() == at.Y.Abs() {
		t.Errorf("it was not dragged on: %v", at)
	}
	w.Undo()
	pull(w.board, geom.PtMM(0, 0), geom.PtMM(6.2, 0.05), 9)
	if at := stands(w, ids[0]); at.Y != 0 || at.X == 0 {
		t.Errorf("nearly level it stands at %v", at)
	}
}
