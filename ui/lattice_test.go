package ui

import (
	"slices"
	"strings"
	"testing"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/driver/desktop"

	"tsugime/repeat/document"
	"tsugime/repeat/geom"
	"tsugime/repeat/pattern"
)

// latticed lays the small dots out as a straight lattice, seen closely.
func latticed(t *testing.T, l pattern.Lattice) (*Window, *latticeHand) {
	t.Helper()
	w := onBench(t, "small-dot")
	w.Edit("Change Lattice", func(o document.Order) (document.Order, error) { return document.SetLattice(o, l) })
	w.board.Frame(geom.BoxOf(geom.PtMM(-0.5, -0.5), geom.PtMM(2.5, 2.5)))
	return w, theDraft(w).lattice
}

// pressAt is the first button at a place of the surface.
func pressAt(at fyne.Position) *desktop.MouseEvent {
	return &desktop.MouseEvent{PointEvent: fyne.PointEvent{Position: at, AbsolutePosition: at}, Button: desktop.MouseButtonPrimary}
}

func TestAVectorIsPulledByItsHandleInOneEdit(t *testing.T) {
	w, h := latticed(t, pattern.Straight(geom.MM(1.3), geom.MM(1.7)))
	before := written(t, w.Order())
	knob := h.handle(pattern.VectorA)
	pull(w.board, knob, knob.Add(geom.PtMM(0.2, 0.31)), 9)
	l := w.Order().Unit.Lattice
	if l.Kind() != pattern.StraightKind || l.B != geom.PtMM(0, 1.7) || w.history.UndoName() != "Pull Lattice" {
		t.Fatalf("%v is %s after %q", l, l.Kind(), w.history.UndoName())
	}
	// Of the field's 356 mm nothing that divides them is as near to 1.5 mm as 237 columns.
	if want := geom.MM(356.0 / 237); (l.A.X-want).Abs() > 1 || l.A.Y != 0 {
		t.Errorf("vector a is %v, want %v across", l.A, want)
	}
	w.Undo()
	if written(t, w.Order()) != before {
		t.Error("one undo doesn't take the pull back")
	}
}

func TestAPullOfTheLatticeShowsItsLengthAndWhatHoldsIt(t *testing.T) {
	w, h := latticed(t, pattern.Straight(geom.MM(1.3), geom.MM(1.7)))
	order := written(t, w.Order())
	from := w.board.At(h.handle(pattern.VectorB))
	to := from.AddXY(0, float32(0.1*w.board.Scale()))
	w.board.MouseDown(pressAt(from))
	w.board.Dragged(&fyne.DragEvent{PointEvent: fyne.PointEvent{Position: to}, Dragged: fyne.NewDelta(0, to.Y-from.Y)})
	_, along := h.lattice().Spacing()
	var texts []string
	for _, l := range theDraft(w).scene().Labels {
		texts = append(texts, l.Text)
	}
	all := strings.Join(texts, "\n")
	for _, want := range []string{"vector b", "along " + geom.MMUnit.Format(along, 4), "101 times in the step"} {
		if !strings.Contains(all, want) {
			t.Errorf("the surface says %q, want %q in it", all, want)
		}
	}
	if w.pointer.Text != "along "+geom.MMUnit.Format(along, 4) {
		t.Errorf("below stands %q", w.pointer.Text)
	}
	if written(t, w.Order()) != order {
		t.Error("the order changed before the handle was let go")
	}
	w.typed(fyne.KeyEscape, 0)
	w.board.MouseUp(pressAt(to))
	if written(t, w.Order()) != order || h.pull != nil {
		t.Error("Escape didn't give up the pull")
	}
}

// With Shift only whole nudges hold, with Ctrl the vector leaves its kind.
func TestShiftAndCtrlLetAVectorGoFree(t *testing.T) {
	w, h := latticed(t, pattern.Straight(geom.MM(1.3), geom.MM(1.7)))
	hold := func(key fyne.KeyName) { w.board.KeyDown(&fyne.KeyEvent{Name: key}) }
	let := func(key fyne.KeyName) { w.board.KeyUp(&fyne.KeyEvent{Name: key}) }
	drag := func(key fyne.KeyName, way geom.Point) pattern.Lattice {
		from := w.board.At(h.handle(pattern.VectorA))
		to := from.AddXY(float32(way.X.MM()*w.board.Scale()), float32(way.Y.MM()*w.board.Scale()))
		w.board.MouseDown(pressAt(from))
		hold(key)
		w.board.Dragged(&fyne.DragEvent{PointEvent: fyne.PointEvent{Position: to}, Dragged: fyne.NewDelta(to.X-from.X, to.Y-from.Y)})
		w.board.MouseUp(pressAt(to))
		let(key)
		return w.Order().Unit.Lattice
	}
	if l := drag("LeftShift", geom.PtMM(0.2, 0)); l.A.X%nudge != 0 || l.A.X == geom.MM(1.3) {
		t.Errorf("with Shift vector a is %v", l.A)
	}
	if l := drag("LeftControl", geom.PtMM(0.03, 0.4)); l.A.Y == 0 || l.B != geom.PtMM(0, 1.7) {
		t.Errorf("with Ctrl the lattice is %v", l)
	}
}

func TestTheLatticeIsTakenAndNudgedByKeys(t *testing.T) {
	w, h := latticed(t, pattern.HalfDrop(geom.MM(1.3), geom.MM(1.8)))
	w.typed(fyne.KeyK, 0)
	if !h.held || h.by != pattern.VectorA || w.gripped() != "Lattice Vector" || len(w.chosen) != 0 {
		t.Fatalf("K took %v, %q is in hand", h.held, w.gripped())
	}
	w.typed(fyne.KeyRight, 0)
	w.typed(fyne.KeyRight, fyne.KeyModifierShift)
	if got := w.Order().Unit.Lattice; got != pattern.HalfDrop(geom.MM(1.41), geom.MM(1.8)) {
		t.Errorf("nudged right once and ten times: %v", got)
	}
	name := w.history.UndoName()
	w.typed(fyne.KeyUp, 0)
	if w.history.UndoName() != name || !strings.Contains(w.status.Text, "kind of lattice") {
		t.Errorf("an arrow against the kind: %q", w.status.Text)
	}
	w.typed(fyne.KeyK, 0)
	w.typed(fyne.KeyUp, fyne.KeyModifierShift)
	if got := w.Order().Unit.Lattice; got != pattern.HalfDrop(geom.MM(1.41), geom.MM(1.7)) || !strings.Contains(w.status.Text, "along 1.7") {
		t.Errorf("vector b nudged up ten times: %v, %q", got, w.status.Text)
	}
	w.typed(fyne.KeyDelete, 0)
	if len(w.Order().Unit.Motifs) == 0 || !strings.Contains(w.status.Text, "both") {
		t.Errorf("Delete with a vector in hand: %q", w.status.Text)
	}
	w.typed(fyne.KeyK, 0)
	if h.held {
		t.Error("the third K doesn't let the lattice go")
	}
	w.typed(fyne.KeyK, 0)
	w.typed(fyne.KeyEscape, 0)
	if h.held {
		t.Error("Escape doesn't let the lattice go")
	}
}

// A handle that can't be seen is brought into view when it is taken by keys.
func TestTheViewFollowsAVectorThatIsTaken(t *testing.T) {
	w, h := latticed(t, pattern.Straight(geom.MM(1.3), geom.MM(1.7)))
	w.board.Near(geom.PtMM(100, 100), 200)
	w.typed(fyne.KeyK, 0)
	if !w.board.Seen().Holds(h.handle(pattern.VectorA)) || !w.board.Seen().Holds(h.handle(pattern.VectorB)) {
		t.Error("the handles are out of sight")
	}
}

// A square group keeps columns and rows alike, so that its copies stay copies.
func TestAPullKeepsThePlaneGroupWhereItCan(t *testing.T) {
	w, h := latticed(t, pattern.Straight(geom.MM(1.5), geom.MM(1.5)))
	if !w.Edit("Change Plane Group", func(o document.Order) (document.Order, error) { return document.SetGroup(o, pattern.P4) }) {
		t.Fatal(w.status.Text)
	}
	knob := h.handle(pattern.VectorB)
	pull(w.board, knob, knob.Add(geom.PtMM(0, 0.3)), 5)
	o := w.Order()
	if x, y := o.Unit.Lattice.Spacing(); o.Group != pattern.P4 || x != y || x == geom.MM(1.5) {
		t.Errorf("%s on %v", o.Group, o.Unit.Lattice)
	}
}

// A click on a motif's copy that lies at the end of a vector still takes the motif.
func TestAHandleLiesBesideTheCopyAtTheEndOfItsVector(t *testing.T) {
	w, h := latticed(t, pattern.Straight(geom.MM(1.3), geom.MM(1.7)))
	m := w.Order().Unit.Motifs[0]
	w.Edit("Move Motif", func(o document.Order) (document.Order, error) { return document.MoveMotif(o, m.ID, m.At.Neg()) })
	click(w.board, w.Order().Unit.Lattice.A)
	if h.held || !slices.Equal(w.chosen, []pattern.ID{m.ID}) {
		t.Errorf("a click at the end of a takes the handle %v, motifs %v", h.held, w.chosen)
	}
	click(w.board, h.handle(pattern.VectorA))
	if !h.held || len(w.chosen) != 0 {
		t.Errorf("a click on the handle takes it: %v, motifs %v", h.held, w.chosen)
	}
}

// The pattern of many motifs follows from the background; what is pulled last is shown.
func TestALargeUnitFollowsThePullOfItsLattice(t *testing.T) {
	w := onBench(t, "hemp-leaf")
	h := theDraft(w).lattice
	w.typed(fyne.KeyK, 0)
	from := w.board.At(h.handle(pattern.VectorA))
	w.board.MouseDown(pressAt(from))
	for _, x := range []float32{10, 20, 30} {
		w.board.Dragged(&fyne.DragEvent{PointEvent: fyne.PointEvent{Position: from.AddXY(x, 0)}, Dragged: fyne.NewDelta(10, 0)})
	}
	if h.shown != nil || len(w.Order().Unit.Motifs) <= mostAtOnce {
		t.Fatal("the pull waited for the pattern")
	}
	await(t, "the pattern follows the pull", func() bool { return h.shown != nil && !h.busy })
	if got := theDraft(w).scene().Grounds; len(got) != 1 || got[0].Ground != h.shown {
		t.Error("the pattern that is pulled isn't shown")
	}
	w.board.MouseUp(pressAt(from.AddXY(30, 0)))
	if w.history.UndoName() != "Pull Lattice" {
		t.Errorf("let go, %q would be undone", w.history.UndoName())
	}
}
