package ui

import (
	"reflect"
	"slices"
	"strings"
	"testing"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/driver/desktop"

	"tsugime/repeat/document"
	"tsugime/repeat/geom"
	"tsugime/repeat/pattern"
	"tsugime/ui/board"
)

// turned is a small dot off every element of p4 on a square lattice of 10 mm.
func turned(t *testing.T, g pattern.Group) *Window {
	t.Helper()
	w := onBench(t, "small-dot")
	w.Edit("Draft", func(o document.Order) (document.Order, error) {
		o, err := document.DeleteMotifs(o, o.Unit.Motifs[0].ID)
		if err != nil {
			return o, err
		}
		if o, err = document.SetLattice(o, pattern.Straight(geom.MM(10), geom.MM(10))); err != nil {
			return o, err
		}
		return document.AddMotif(o, pattern.Motif{Shape: geom.DiscShape(geom.Point{}, geom.MM(1)), At: geom.PtMM(3, 1)})
	})
	w.board.Whole()
	y := &theDraft(w).symmetry
	y.groups.SetSelectedIndex(slices.Index(pattern.Groups(), g))
	if w.Order().Group != g {
		t.Fatalf("the group is %s; the window says: %s", w.Order().Group, w.status.Text)
	}
	settle(t, w)
	return w
}

// The copy at −y, x of the dot at 3, 1 stands at −1, 3. When it goes right by
// 0.5, the dot goes by 0, −0.5: a quarter turn back (worked by hand).
func TestDraggingACopyMovesTheDrawnMotif(t *testing.T) {
	w := turned(t, pattern.P4)
	o := w.Order()
	id := o.Unit.Motifs[0].ID
	from := geom.PtMM(-1, 3)
	pull(w.board, from, from.Add(geom.PtMM(0.5, 0)), 8)
	m, _ := w.Order().Motif(id)
	if off := m.At.Distance(geom.PtMM(3, 0.5)); off > geom.MM(0.02) {
		t.Errorf("the drawn motif came to %v, %v; want 3, 0.5", m.At.X, m.At.Y)
	}
	if w.history.UndoName() != "Move Motif" || !reflect.DeepEqual(w.chosen, []pattern.ID{id}) {
		t.Errorf("the edit is %q, chosen is %v", w.history.UndoName(), w.chosen)
	}
	w.Undo()
	if got := written(t, w.Order()); got != written(t, o) {
		t.Error("one undo did not lead back")
	}
}

func TestEveryCopyFollowsTheDraggedOneInTheSameFrame(t *testing.T) {
	w := turned(t, pattern.P4)
	s, l := theDraft(w), w.Order().Unit.Lattice
	p, q := w.board.At(geom.PtMM(-1, 3)), w.board.At(geom.PtMM(0, 3))
	w.board.MouseDown(&desktop.MouseEvent{PointEvent: fyne.PointEvent{Position: p}, Button: desktop.MouseButtonPrimary})
	w.board.Dragged(&fyne.DragEvent{PointEvent: fyne.PointEvent{Position: q}, Dragged: fyne.NewDelta(q.X-p.X, q.Y-p.Y)})
	if s.drag == nil || w.history.UndoName() == "Move Motif" {
		t.Fatal("no drag goes on, or it is an edit already")
	}
	for _, want := range []geom.Point{geom.PtMM(3, 0), geom.PtMM(0, 3), geom.PtMM(-3, 0), geom.PtMM(0, -3)} {
		if !slices.ContainsFunc(s.drag.group, func(m pattern.Motif) bool {
			_, _, off := l.Nearest(m.At.Sub(want))
			return off.Norm() < float64(geom.MM(0.02))
		}) {
			t.Errorf("during the drag no copy stands at %v, %v", want.X, want.Y)
		}
	}
	strong, light := 0, 0
	for _, m := range s.scene().Marks {
		switch {
		case m.Colour == worn().indigo && m.Width == 2.5:
			strong++
		case m.Colour == worn().indigo && m.Width == 1:
			light++
		}
	}
	if strong != 1 || light < 4 {
		t.Errorf("%d motifs are framed strongly and %d lightly; want 1 and at least 4", strong, light)
	}
}

func TestAClickOnACopyChoosesItsMotif(t *testing.T) {
	w := turned(t, pattern.P4MM)
	click(w.board, geom.PtMM(1, 3))
	if id := w.Order().Unit.Motifs[0].ID; !reflect.DeepEqual(w.chosen, []pattern.ID{id}) {
		t.Errorf("chosen is %v, want %d", w.chosen, id)
	}
	if !strings.Contains(w.status.Text, "copy") {
		t.Errorf("the window does not say that it was a copy: %q", w.status.Text)
	}
}

func TestWritingTheCopiesOutKeepsThePattern(t *testing.T) {
	w := turned(t, pattern.P4MM)
	before := w.Order().Design()
	theDraft(w).symmetry.writeOut()
	o := w.Order()
	if o.Group != pattern.P1 || len(o.Unit.Motifs) != 8 {
		t.Fatalf("written out as %s with %d motifs, want p1 with the 8 general positions of p4mm", o.Group, len(o.Unit.Motifs))
	}
	for i, m := range o.Unit.Motifs {
		if m.At != before.Motifs[i].At {
			t.Errorf("motif %d went from %v to %v", i, before.Motifs[i].At, m.At)
		}
	}
	edit := w.history.UndoName()
	theDraft(w).symmetry.writeOut()
	if w.history.UndoName() != edit || w.Order().NextID != o.NextID {
		t.Error("with no copies something was written out")
	}
}

func TestAGroupThatTheLatticeCannotCarryIsExplained(t *testing.T) {
	w := turned(t, pattern.P4)
	y := &theDraft(w).symmetry
	y.groups.SetSelectedIndex(slices.Index(pattern.Groups(), pattern.P6))
	if w.Order().Group != pattern.P4 || !strings.HasPrefix(y.groups.Selected, "p4 ") {
		t.Errorf("the order has %s and the list shows %q, want p4", w.Order().Group, y.groups.Selected)
	}
	if !strings.Contains(w.status.Text, "hexagonal") {
		t.Errorf("the window says %q, not which lattice it needs", w.status.Text)
	}
}

// p4 has two fourfold points and one twofold place in the cell (International
// Tables A, plane group 10), and no mirrors; p4mm has mirrors and glides too.
func TestSymmetryIsShownAndHidden(t *testing.T) {
	w := turned(t, pattern.P4MM)
	s := theDraft(w)
	count := func(shape board.Shape) int {
		n := 0
		for _, m := range s.scene().Marks {
			if m.Shape == shape && m.Colour == worn().onPaper {
				n++
			}
		}
		return n
	}
	lines, dashes, points := count(board.Line), count(board.Dashes), count(board.Loop)
	if lines < 5 || dashes < 2 || points < 9 {
		t.Errorf("shown are %d mirrors, %d glides and %d rotation points", lines, dashes, points)
	}
	w.typed(fyne.KeyS, 0)
	if count(board.Line)+count(board.Dashes)+count(board.Loop) != 0 || count(board.Hatch) != 0 {
		t.Error("S did not hide the symmetry")
	}
	w.typed(fyne.KeyS, 0)
	if count(board.Line) != lines {
		t.Error("S did not show it again")
	}
}

func TestTheFinishedPatternsGroupIsMeasured(t *testing.T) {
	w := turned(t, pattern.P4GM)
	rows := theDraft(w).measures()
	if !slices.Contains(rows, measure{"has the group", "p4gm"}) || !slices.Contains(rows, measure{"of them drawn", "1"}) {
		t.Errorf("measured is %v", rows)
	}
	theDraft(w).symmetry.writeOut()
	settle(t, w)
	if rows := theDraft(w).measures(); !slices.Contains(rows, measure{"has the group", "p4gm"}) {
		t.Errorf("written out, measured is %v", rows)
	}
}

func TestEveryKindOfTheListLaysItsLattice(t *testing.T) {
	l := pattern.Straight(geom.MM(12), geom.MM(12))
	for _, name := range kindNames() {
		got := laidAs(name, l)
		if err := got.Check(); err != nil {
			t.Errorf("%s: %v", name, err)
		}
		if name != string(pattern.FreeKind) && kindOf(got) != name {
			t.Errorf("%s is laid as %s", name, kindOf(got))
		}
	}
	if got := laidAs("drop by 1/3", l); got.A != geom.PtMM(12, 4) {
		t.Errorf("a drop by a third goes %v, %v across; want 12, 4", got.A.X, got.A.Y)
	}
}

// The leaf of the starter was drawn far from the cell.
func TestTheFrameOfAChosenMotifIsInTheWholeView(t *testing.T) {
	w := onBench(t, "leaf")
	w.chooseAll()
	sc := theDraft(w).scene()
	frames := 0
	for _, m := range sc.Marks {
		if m.Colour != worn().indigo {
			continue
		}
		frames++
		if box := geom.BoxOf(m.Points...); !sc.Extent.HoldsBox(box) {
			t.Errorf("a frame about %v, %v is out of the view", box.Centre().X, box.Centre().Y)
		}
	}
	if want := len(w.Order().Unit.Motifs); frames != want {
		t.Errorf("%d motifs are framed, want %d", frames, want)
	}
}
