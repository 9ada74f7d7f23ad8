package ui

import (
	"slices"
	"testing"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/driver/desktop"

	"tsugime/repeat/geom"
)

// byHandAt draws the joint line by hand and looks at one of its points.
func byHandAt(t *testing.T) (*Window, *stencilStation, int) {
	t.Helper()
	w, s, _ := atStencil(t)
	w.turnJoint()
	settle(t, w)
	line := w.Order().Sheet.Joint.Line
	if len(line) < 5 || !w.work.Sheet.Joint.ByHand {
		t.Fatalf("the line drawn by hand has %d points; by hand: %v", len(line), w.work.Sheet.Joint.ByHand)
	}
	i := len(line) / 2
	w.board.Near(line[i], 20)
	return w, s, i
}

func TestAPointOfTheJointLineIsDragged(t *testing.T) {
	w, s, i := byHandAt(t)
	start := w.Order().Sheet.Joint.Line
	to := start[i].Add(geom.PtMM(0.4, -0.6))
	pull(w.board, start[i], to, 8)
	line := w.Order().Sheet.Joint.Line
	near(t, "the point", line[i], to)
	if w.history.UndoName() != "Move Joint Point" || s.gripped() != "Joint Point" {
		t.Errorf("the menu would undo %q; chosen is %q", w.history.UndoName(), s.gripped())
	}
	w.typed(fyne.KeyUp, 0)
	near(t, "nudged, the point", w.Order().Sheet.Joint.Line[i], to.Add(geom.PtMM(0, -0.01)))
	w.Undo()
	w.Undo()
	if !slices.Equal(w.Order().Sheet.Joint.Line, start) {
		t.Error("two undos did not lead back")
	}
}

func TestTheEndsOfTheJointLineStayOnTheField(t *testing.T) {
	w, s, _ := byHandAt(t)
	end := w.Order().Sheet.Joint.Line[0]
	w.board.Near(end, 20)
	pull(w.board, end, end.Add(geom.PtMM(2, 1)), 6)
	near(t, "the end", w.Order().Sheet.Joint.Line[0], end.Add(geom.PtMM(0, 1)))
	before := len(w.Order().Sheet.Joint.Line)
	s.choosePoint(0)
	w.typed(fyne.KeyDelete, 0)
	if n := len(w.Order().Sheet.Joint.Line); n != before {
		t.Errorf("an end was deleted: %d points of %d", n, before)
	}
}

func TestPointsAreAddedAndDeleted(t *testing.T) {
	w, s, i := byHandAt(t)
	start := w.Order().Sheet.Joint.Line
	middle := geom.BoxOf(start[i], start[i+1]).Centre()
	p := w.board.At(middle)
	event := &desktop.MouseEvent{PointEvent: fyne.PointEvent{Position: p}, Button: desktop.MouseButtonPrimary, Modifier: fyne.KeyModifierShift}
	w.board.MouseDown(event)
	w.board.MouseUp(event)
	line := w.Order().Sheet.Joint.Line
	if len(line) != len(start)+1 || s.point.chosen != i+1 {
		t.Fatalf("%d points, chosen %d; want %d and %d", len(line), s.point.chosen, len(start)+1, i+1)
	}
	near(t, "the new point", line[i+1], middle)
	w.typed(fyne.KeyDelete, 0)
	if !slices.Equal(w.Order().Sheet.Joint.Line, start) {
		t.Error("adding and deleting a point did not lead back")
	}
	w.turnJoint()
	settle(t, w)
	if byHand(w.Order()) || w.work.Sheet.Joint.ByHand || s.gripped() != "" {
		t.Error("the line is still drawn by hand")
	}
}

// A point in the middle of a ring of 1 mm lies half a millimetre deep in it.
func TestTheClearanceAtAPointIsShown(t *testing.T) {
	w, s, i := byHandAt(t)
	line := w.Order().Sheet.Joint.Line
	ring := geom.PtMM(3, 4).Add(s.home())
	s.choosePoint(i)
	for _, c := range []struct {
		away float64 // from the rings' middle
		want float64
	}{{3.5, -0.5}, {2.5, 0.5}, {1.6, -0.4}, {0, 1.2}} {
		s.point.pulled, s.point.by = true, ring.Add(geom.PtMM(c.away, 0)).Sub(line[i])
		if got := s.pointClear(); (got - geom.MM(c.want)).Abs() > geom.Chord+geom.Micrometre {
			t.Errorf("%g mm from the middle the clearance is %v mm, want %g", c.away, got, c.want)
		}
	}
}

func TestTheJointLineIsChosenFromWhatThereIs(t *testing.T) {
	w, s, _ := atStencil(t)
	s.curve.Tapped(&fyne.PointEvent{})
	finish(t, w)
	if len(s.curve.Options) < 3 || s.curve.of != jointOfOrder(w.Order()) {
		t.Fatalf("to choose from there is %q", s.curve.Options)
	}
	s.curve.SetSelectedIndex(0)
	settle(t, w)
	if got := w.Order().Sheet.Joint.Share; got != s.curve.choices[0].Share {
		t.Errorf("the line keeps a share of %g, want %g", got, s.curve.choices[0].Share)
	}
	if got, want := w.work.Sheet.Joint.Clearance, s.curve.choices[0].Clearance; (got - want).Abs() > geom.Micrometre {
		t.Errorf("the line has a clearance of %v, the list says %v", got, want)
	}
	if s.curve.SelectedIndex() != 0 {
		t.Errorf("the list shows choice %d", s.curve.SelectedIndex())
	}
}
