package ui

import (
	"math"
	"slices"
	"strings"
	"testing"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/driver/desktop"

	"tsugime/repeat/document"
	"tsugime/repeat/geom"
	"tsugime/repeat/pattern"
	"tsugime/repeat/pen"
)

// drawing is a window that draws on an empty square lattice of 20 mm with a group.
func drawingOn(t *testing.T, g pattern.Group) (*Window, *penHand) {
	t.Helper()
	w := onBench(t, "small-dot")
	if !w.Edit("Draft", func(o document.Order) (document.Order, error) {
		o, err := document.SetLattice(o, pattern.Straight(geom.MM(20), geom.MM(20)))
		if err != nil {
			return o, err
		}
		if o, err = document.DeleteMotifs(o, o.Unit.Motifs[0].ID); err != nil {
			return o, err
		}
		if o, err = document.SetStep(o, geom.MM(180)); err != nil {
			return o, err
		}
		return document.SetGroup(o, g)
	}) {
		t.Fatal(w.status.Text)
	}
	settle(t, w)
	w.board.Frame(geom.BoxOf(geom.PtMM(-12, -12), geom.PtMM(12, 12)))
	w.typed(fyne.KeyD, 0)
	if !drawing(w) {
		t.Fatal("D does not begin to draw")
	}
	return w, w.penHand()
}

// newest is the outline of the newest motif where it was drawn, about a place.
func newest(t *testing.T, w *Window, about geom.Point) geom.Outline {
	t.Helper()
	motifs := w.Order().Unit.Motifs
	if len(motifs) == 0 {
		t.Fatalf("there is no motif; the window says: %s", w.status.Text)
	}
	m := motifs[len(motifs)-1]
	way := w.Order().Unit.Lattice.Into(m.At.Sub(about)).Sub(m.At.Sub(about))
	return m.Placed().Outline.Moved(way)
}

// nodesOf are the nodes of the outline, the first one first, in either sense.
func nodesOf(o geom.Outline) []geom.Point { return pen.Of(o)[0].Nodes() }

func TestATriangleIsDrawnToTheNanometre(t *testing.T) {
	w, _ := drawingOn(t, pattern.P1)
	before := written(t, w.Order())
	corners := []geom.Point{geom.PtMM(1, 1), geom.PtMM(5, 1), geom.PtMM(3, 4.5)}
	for _, p := range corners {
		click(w.board, p.Add(geom.PtMM(0.03, -0.02))) // a hand is not exact
	}
	click(w.board, corners[0].Add(geom.PtMM(-0.05, 0.05)))
	got := nodesOf(newest(t, w, geom.PtMM(3, 3)))
	if !slices.Equal(got, corners) {
		t.Errorf("nodes are %v, want %v", got, corners)
	}
	after := written(t, w.Order())
	w.Undo()
	if written(t, w.Order()) != before {
		t.Error("one undo did not take the motif away")
	}
	w.Redo()
	if written(t, w.Order()) != after {
		t.Error("redo did not bring it back")
	}
}

// The petal's arcs go through places on the grid: the circle through −3,0 0,1 3,0
// has its centre at 0,−4 (worked by hand).
func TestAPetalIsDrawnByArcs(t *testing.T) {
	w, _ := drawingOn(t, pattern.P1)
	w.typed(fyne.KeyA, 0)
	for _, p := range []geom.Point{geom.PtMM(-3, 0), geom.PtMM(0, -1), geom.PtMM(3, 0), geom.PtMM(0, 1), geom.PtMM(-3, 0)} {
		click(w.board, p)
	}
	o := newest(t, w, geom.Point{})
	segments := o[0].Segments
	if len(segments) != 2 || segments[0].Kind != geom.Arc || segments[1].Kind != geom.Arc {
		t.Fatalf("the petal is %+v", o)
	}
	if !slices.Equal(nodesOf(o), []geom.Point{geom.PtMM(-3, 0), geom.PtMM(3, 0)}) {
		t.Errorf("its nodes are %v", nodesOf(o))
	}
	theta := 2 * math.Asin(3.0/5)
	if want := 25 * (theta - math.Sin(theta)); math.Abs(o.AreaMM2()-want) > 1e-6 {
		t.Errorf("it covers %v mm², want %v", o.AreaMM2(), want)
	}
}

func TestADropIsDrawnByPullingHandles(t *testing.T) {
	w, _ := drawingOn(t, pattern.P1)
	w.typed(fyne.KeyC, 0)
	click(w.board, geom.PtMM(0, -4))
	pull(w.board, geom.PtMM(0, 2), geom.PtMM(-2, 2), 6)
	click(w.board, geom.PtMM(0, -4))
	o := newest(t, w, geom.PtMM(0, -1))
	s := pen.Of(o)[0]
	if !slices.Equal(s.Nodes(), []geom.Point{geom.PtMM(0, -4), geom.PtMM(0, 2)}) || !s.SmoothAt(1) {
		t.Fatalf("the drop is %+v", s)
	}
	handles := s.Handles()
	var at []geom.Point
	for _, h := range handles {
		if h.Node == 1 {
			at = append(at, h.At)
		}
	}
	if !slices.Equal(at, []geom.Point{geom.PtMM(2, 2), geom.PtMM(-2, 2)}) {
		t.Errorf("its handles are at %v", at)
	}
}

func TestPlacesCanBeWrittenWithoutAPointer(t *testing.T) {
	w, d := drawingOn(t, pattern.P1)
	for _, text := range []string{"1.25, 0.5", "by 3, 0", "2 at 90", "1,25; 2,5"} {
		w.typed(fyne.KeyP, 0)
		if w.win.Canvas().Focused() != fyne.Focusable(d.panel.place) {
			t.Fatal("P does not lead to the field")
		}
		d.panel.place.SetText(text)
		d.panel.place.OnSubmitted(text)
	}
	d.panel.place.OnSubmitted("") // Return in the empty field
	want := []geom.Point{geom.PtMM(1.25, 0.5), geom.PtMM(4.25, 0.5), geom.PtMM(4.25, 2.5), geom.PtMM(1.25, 2.5)}
	if got := nodesOf(newest(t, w, geom.PtMM(2.75, 1.5))); !slices.Equal(got, want) {
		t.Errorf("nodes are %v, want %v", got, want)
	}
}

func TestALineThatEnclosesNothingIsNotPut(t *testing.T) {
	w, d := drawingOn(t, pattern.P1)
	number := w.history.Now().number
	w.typed(fyne.KeyReturn, 0)
	click(w.board, geom.PtMM(1, 1))
	click(w.board, geom.PtMM(4, 1))
	w.typed(fyne.KeyReturn, 0)
	if w.history.Now().number != number || !strings.Contains(w.status.Text, "nothing") || !d.begun {
		t.Errorf("the window says %q", w.status.Text)
	}
	w.undo()
	w.undo()
	if d.begun || w.history.Now().number != number {
		t.Error("undo did not take the places back, or took an edit")
	}
}

func TestEscapeDropsTheLineThenStopsDrawing(t *testing.T) {
	w, d := drawingOn(t, pattern.P1)
	click(w.board, geom.PtMM(1, 1))
	click(w.board, geom.PtMM(4, 1))
	w.typed(fyne.KeyEscape, 0)
	if d.begun || !drawing(w) {
		t.Fatal("the line was not dropped, or drawing has stopped")
	}
	w.typed(fyne.KeyEscape, 0)
	if drawing(w) {
		t.Error("drawing goes on")
	}
}

// Half a petal, drawn once, becomes a flower of six about the motif's own centre.
func TestAPartOfAFlowerIsDrawnAndTheRestFollows(t *testing.T) {
	w, d := drawingOn(t, pattern.P1)
	d.panel.setTurns("6")
	w.typed(fyne.KeyM, 0)
	click(w.board, geom.PtMM(1, 2)) // the centre
	if !d.centred || d.begun {
		t.Fatal("the first click did not set the centre")
	}
	w.typed(fyne.KeyA, 0)
	click(w.board, geom.PtMM(1, 1))
	click(w.board, geom.PtMM(1.8, -1))
	click(w.board, geom.PtMM(1, -3))
	if strokes, shape := d.drawn(); len(strokes) == 0 || len(shape.Outline) == 0 {
		t.Error("the flower is not shown while it is drawn")
	}
	w.typed(fyne.KeyReturn, 0)
	o := newest(t, w, geom.PtMM(1, 2))
	if len(o) != 6 {
		t.Fatalf("the flower has %d petals: %s", len(o), w.status.Text)
	}
	m := w.Order().Unit.Motifs[0]
	if m.At != geom.PtMM(1, 2) {
		t.Errorf("it stands at %v, %v, not at its centre", m.At.X, m.At.Y)
	}
	for i, c := range o {
		if a := (geom.Outline{c}).AreaMM2(); math.Abs(a-geom.Outline{o[0]}.AreaMM2()) > 1e-5 {
			t.Errorf("petal %d covers %v", i+1, a)
		}
	}
}

// Under p4 the copies of a line are shown before it is a motif.
func TestThePlaneGroupsCopiesAreShownWhileDrawing(t *testing.T) {
	w, d := drawingOn(t, pattern.P4)
	click(w.board, geom.PtMM(2, 1))
	click(w.board, geom.PtMM(5, 1))
	click(w.board, geom.PtMM(5, 4))
	light, strong := 0, 0
	for _, m := range d.s.scene().Marks {
		if m.Colour == worn().indigo && m.Width == 0.9 {
			light++
		}
		if m.Colour == worn().indigo && m.Width == 2.2 {
			strong++
		}
	}
	if strong != 1 || light < 3 {
		t.Errorf("%d lines and %d copies are shown, want 1 and at least 3", strong, light)
	}
	if laid := d.laid(); len(laid) != 2 {
		t.Error("what would be cut out is not shown")
	}
}

func TestPlacesSnapToMirrorsLatticeAndOtherMotifs(t *testing.T) {
	w, d := drawingOn(t, pattern.P4MM)
	d.panel.setGrid("0")
	if at := d.snap(geom.PtMM(3.03, 3.01)); !at.On(onMirror) || at.At.X != at.At.Y {
		t.Errorf("beside the diagonal: %+v", at)
	}
	if at := d.snap(geom.PtMM(0.05, 0.04)); !at.On(onTurn) && !at.On(onLattice) || at.At != (geom.Point{}) {
		t.Errorf("beside the origin: %+v", at)
	}
	w.Edit("Place", func(o document.Order) (document.Order, error) {
		return document.AddMotif(o, pattern.Motif{Shape: geom.DiscShape(geom.Point{}, geom.MM(2)), At: geom.PtMM(6, 2.3)})
	})
	if at := d.snap(geom.PtMM(6.02, 2.33)); !at.On(onCentre) || at.At != geom.PtMM(6, 2.3) {
		t.Errorf("beside the middle of a dot: %+v", at)
	}
	// Its copy at −y, x.
	if at := d.snap(geom.PtMM(-2.28, 6.02)); !at.On(onCentre) || at.At != geom.PtMM(-2.3, 6) {
		t.Errorf("beside the middle of its copy: %+v", at)
	}
	at := d.snap(geom.PtMM(6.72, 3.03))
	if off := at.At.Sub(geom.PtMM(6, 2.3)).Norm() - 1e6; !at.On(onEdge) || math.Abs(off) > 2 {
		t.Errorf("beside its edge: %+v, %.0f nm off", at, off)
	}
	w.board.KeyDown(&fyne.KeyEvent{Name: desktop.KeyShiftLeft})
	if at := d.snap(geom.PtMM(6.02, 2.33)); len(at.Names) > 0 || at.At != geom.PtMM(6.02, 2.33) {
		t.Errorf("with Shift held: %+v", at)
	}
	w.board.KeyUp(&fyne.KeyEvent{Name: desktop.KeyShiftLeft})
	if at := d.snap(geom.PtMM(6.02, 2.33)); !at.On(onCentre) {
		t.Error("Shift let go still releases the snap")
	}
}

func TestWholeShapesByDragAndByNumbers(t *testing.T) {
	for _, c := range []struct {
		kind drawKind
		area float64 // by the formulas of plane geometry, across 6 mm, 6 corners, half inside
	}{
		{circle, math.Pi * 9}, {polygon, 3 * 9 * math.Sqrt(3) / 2}, {star, 6 * 3 * 1.5 * 0.5}, {ring, math.Pi * (9 - 2.25)},
	} {
		w, d := drawingOn(t, pattern.P1)
		d.panel.kinds.SetSelectedIndex(int(c.kind))
		pull(w.board, geom.PtMM(1, 1), geom.PtMM(1, -2), 5)
		d.panel.across.put("6 mm")
		d.panel.turn.put("0")
		d.panel.place.OnSubmitted("-5, 4")
		motifs := w.Order().Unit.Motifs
		if len(motifs) != 2 {
			t.Fatalf("%s: %d motifs; the window says %s", drawNames[c.kind], len(motifs), w.status.Text)
		}
		for _, m := range motifs {
			if a := m.Shape.AreaMM2(); math.Abs(a-c.area) > 1e-4 {
				t.Errorf("%s covers %v mm², want %v", drawNames[c.kind], a, c.area)
			}
			if m.Shape.Round() != (c.kind == circle) {
				t.Errorf("%s: a circle is a disc, and nothing else", drawNames[c.kind])
			}
		}
		if motifs[0].At != geom.PtMM(1, 1) || motifs[1].At != geom.PtMM(-5, 4) {
			t.Errorf("%s stand at %v and %v", drawNames[c.kind], motifs[0].At, motifs[1].At)
		}
	}
}

func TestAPetalIsPulledFromTipToTip(t *testing.T) {
	w, d := drawingOn(t, pattern.P1)
	d.panel.kinds.SetSelectedIndex(int(petal))
	pull(w.board, geom.PtMM(1, 1), geom.PtMM(5, 3), 5)
	if got := nodesOf(newest(t, w, geom.PtMM(3, 2))); !slices.Equal(got, []geom.Point{geom.PtMM(1, 1), geom.PtMM(5, 3)}) {
		t.Errorf("its points are %v", got)
	}
}

// shapingOn is a window that shapes the outline of path data, standing at a place.
func shapingOn(t *testing.T, path string, at geom.Point, g pattern.Group) (*Window, *shapeHand) {
	t.Helper()
	w, d := drawingOn(t, g)
	o, err := geom.ParsePathData(path)
	if err != nil {
		t.Fatal(err)
	}
	d.leave()
	w.chosen = []pattern.ID{w.Order().NextID}
	if !w.Edit("Place", func(order document.Order) (document.Order, error) {
		return document.AddMotif(order, pattern.Motif{Shape: geom.Shape{Outline: o}, At: at})
	}) {
		t.Fatal(w.status.Text)
	}
	w.typed(fyne.KeyO, 0)
	if !shaping(w) {
		t.Fatalf("O does not begin to shape: %s", w.status.Text)
	}
	return w, theDraft(w).shape
}

func TestANodeIsDraggedAsOneEdit(t *testing.T) {
	w, _ := shapingOn(t, "M-3 -2H3V2H-3Z", geom.PtMM(1, 1), pattern.P1)
	before := written(t, w.Order())
	pull(w.board, geom.PtMM(4, 3), geom.PtMM(5.02, 4.48), 7)
	want := []geom.Point{geom.PtMM(-2, -1), geom.PtMM(4, -1), geom.PtMM(5, 4.5), geom.PtMM(-2, 3)}
	if got := nodesOf(newest(t, w, geom.PtMM(1, 1))); !slices.Equal(got, want) {
		t.Errorf("nodes are %v, want %v", got, want)
	}
	if w.history.UndoName() != "Move Node" {
		t.Errorf("undo would take back %q", w.history.UndoName())
	}
	w.Undo()
	if written(t, w.Order()) != before || !shaping(w) {
		t.Error("one undo did not lead back, or ended the shaping")
	}
}

func TestANodeStandsWhereItsNumbersSay(t *testing.T) {
	w, h := shapingOn(t, "M-3 -2H3V2H-3Z", geom.PtMM(1, 1), pattern.P1)
	w.typed(fyne.KeyPeriod, 0)
	w.typed(fyne.KeyPeriod, 0)
	if h.panel.across.Text != "4 mm" || h.panel.along.Text != "-1 mm" {
		t.Fatalf("the fields show %q and %q", h.panel.across.Text, h.panel.along.Text)
	}
	h.panel.across.SetText("1/4 in")
	h.panel.across.hand()
	h.panel.along.SetText("-1,234567")
	h.panel.along.hand()
	if got, want := nodesOf(newest(t, w, geom.PtMM(1, 1)))[1], geom.PtMM(6.35, -1.234567); got != want {
		t.Errorf("the node is at %v, want %v", got, want)
	}
	w.typed(fyne.KeyRight, fyne.KeyModifierShift)
	if got, want := nodesOf(newest(t, w, geom.PtMM(1, 1)))[1], geom.PtMM(6.45, -1.234567); got != want {
		t.Errorf("nudged ten times the node is at %v, want %v", got, want)
	}
}

func TestNodesAreInsertedTurnedAndDeletedByKeys(t *testing.T) {
	w, h := shapingOn(t, "M-3 -2H3V2H-3Z", geom.PtMM(1, 1), pattern.P1)
	click(w.board, geom.PtMM(2, -1)) // the upper side
	if h.part.kind != aPiece {
		t.Fatal("a click on the line did not choose the piece")
	}
	w.typed(fyne.KeyI, 0)
	if got := nodesOf(newest(t, w, geom.PtMM(1, 1))); len(got) != 5 || h.part.kind != aNode {
		t.Fatalf("no node was inserted: %v", got)
	}
	w.nudge(geom.PtMM(0, -2))
	w.typed(fyne.KeyB, 0)
	s := pen.Of(newest(t, w, geom.PtMM(1, 1)))[0]
	if !s.SmoothAt(1) || s.Segments[0].Kind != geom.Cubic {
		t.Fatalf("the node is not smooth: %+v; %s", s, w.status.Text)
	}
	handle := s.Segments[1].C1
	pull(w.board, handle, handle.Add(geom.PtMM(0.5, 1)), 5)
	if s = pen.Of(newest(t, w, geom.PtMM(1, 1)))[0]; !s.SmoothAt(1) || s.Segments[1].C1 == handle {
		t.Errorf("the handle was not moved, or made a corner: %+v", s)
	}
	if w.history.UndoName() != "Move Handle" {
		t.Errorf("undo would take back %q", w.history.UndoName())
	}
	w.removeChosen()
	if got := nodesOf(newest(t, w, geom.PtMM(1, 1))); len(got) != 4 {
		t.Errorf("the node was not deleted: %v", got)
	}
}

func TestAPartedLineIsDrawnOn(t *testing.T) {
	w, h := shapingOn(t, "M-3 -2H3V2H-3Z", geom.PtMM(1, 1), pattern.P1)
	id := h.motif
	click(w.board, geom.PtMM(4, 3))
	w.typed(fyne.KeyX, 0)
	d := w.penHand()
	if !drawing(w) || !d.begun || d.stroke.Start != geom.PtMM(4, 3) {
		t.Fatalf("the pen has %+v", d.stroke)
	}
	d.takeBack() // the side that came to the node
	click(w.board, geom.PtMM(6, 0))
	w.typed(fyne.KeyReturn, 0)
	m, _ := w.Order().Motif(id)
	if len(w.Order().Unit.Motifs) != 1 || len(m.Shape.Outline) != 1 {
		t.Fatal("it is no more one motif")
	}
	want := []geom.Point{geom.PtMM(4, 3), geom.PtMM(-2, 3), geom.PtMM(-2, -1), geom.PtMM(4, -1), geom.PtMM(6, 0)}
	if got := nodesOf(newest(t, w, geom.PtMM(1, 1))); !slices.Equal(got, want) {
		t.Errorf("nodes are %v, want %v", got, want)
	}
	if !shaping(w) {
		t.Error("the motif is not on the bench again")
	}
}

// A turned copy is shaped as it looks: what is dragged on the sheet is where it is let go.
func TestATurnedMotifIsShapedAsItStands(t *testing.T) {
	w, h := shapingOn(t, "M-3 -2H3V2H-3Z", geom.PtMM(1, 1), pattern.P1)
	h.leave()
	w.Edit("Turn", func(o document.Order) (document.Order, error) { return document.TurnMotif(o, h.motif, 90) })
	w.typed(fyne.KeyO, 0)
	pull(w.board, geom.PtMM(3, 4), geom.PtMM(4, 5), 5)
	got := nodesOf(newest(t, w, geom.PtMM(1, 1)))
	if !slices.Contains(got, geom.PtMM(4, 5)) || slices.Contains(got, geom.PtMM(3, 4)) || len(got) != 4 {
		t.Errorf("nodes are %v", got)
	}
}

func TestADotIsAnOutlineOnlyWhenAsked(t *testing.T) {
	w := onBench(t, "small-dot")
	id := w.Order().Unit.Motifs[0].ID
	w.choose(id)
	w.typed(fyne.KeyO, 0)
	if m, _ := w.Order().Motif(id); shaping(w) || !m.Shape.Round() {
		t.Fatal("a dot was turned into an outline unasked")
	}
	before, _ := w.Order().Motif(id)
	w.typed(fyne.KeyO, fyne.KeyModifierShift)
	m, _ := w.Order().Motif(id)
	if m.Shape.Round() || math.Abs(m.Shape.AreaMM2()-before.Shape.AreaMM2()) > 1e-6 {
		t.Errorf("it covers %v mm², as a dot %v", m.Shape.AreaMM2(), before.Shape.AreaMM2())
	}
}

// An arc whose three places are all but in line on the wrong side would be decimetres wide.
func TestAMotifFarLargerThanTheCellIsRefused(t *testing.T) {
	w, d := drawingOn(t, pattern.P1)
	number := w.history.Now().number
	w.typed(fyne.KeyA, 0)
	for _, text := range []string{"0, 0", "9, 0.2", "4, 0"} {
		d.panel.write(text)
	}
	w.typed(fyne.KeyReturn, 0)
	if w.history.Now().number != number || !d.begun || !strings.Contains(w.status.Text, "copies") {
		t.Errorf("the window says %q", w.status.Text)
	}
}
