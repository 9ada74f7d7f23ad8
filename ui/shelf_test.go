package ui

import (
	"image/color"
	"math"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/storage"

	"tsugime/repeat/document"
	"tsugime/repeat/geom"
)

const twoOutlines = `<svg xmlns="http://www.w3.org/2000/svg" width="40mm" height="20mm" viewBox="0 0 40 20">
<circle cx="10" cy="10" r="4" fill="none" stroke="black" stroke-width="2"/><circle cx="30" cy="10" r="1.5"/><text>name</text></svg>`

// broughtOn reads an SVG file for a window, as its dialog would show it.
func broughtOn(t *testing.T, w *Window, file string) *brought {
	t.Helper()
	d, along, err := readOutlines([]byte(file), geom.Unit{})
	if err != nil {
		t.Fatal(err)
	}
	return newBrought(w, "drop", d, along)
}

func TestOutlinesLandOnTheShelfAndInHand(t *testing.T) {
	w := onBench(t, "leaf")
	start := written(t, w.Order())
	broughtOn(t, w, twoOutlines).keep()
	o, s := w.Order(), theDraft(w)
	if len(o.Shelf) != 2 || o.Shelf[0].Name != "drop" || o.Shelf[1].Name != "drop 2" || w.history.UndoName() != "Bring In Outlines" {
		t.Fatalf("the shelf holds %d by %q", len(o.Shelf), w.history.UndoName())
	}
	if s.shelf.taken != "drop" || !s.places.Checked || len(s.shelf.tiles.Objects) != 2 {
		t.Errorf("in hand is %q, %d tiles are shown", s.shelf.taken, len(s.shelf.tiles.Objects))
	}
	click(w.board, geom.PtMM(3, 2))
	m := w.Order().Unit.Motifs[len(w.Order().Unit.Motifs)-1]
	if got := m.Shape.AreaMM2(); math.Abs(got-16*math.Pi) > 1e-4 {
		t.Errorf("a click placed %.4f mm²", got)
	}
	w.Undo()
	w.Undo()
	if got := written(t, w.Order()); got != start || s.shelf.taken != "" || len(s.shelf.tiles.Objects) != 0 {
		t.Errorf("undone, %q is in hand and %d tiles are shown", s.shelf.taken, len(s.shelf.tiles.Objects))
	}
}

func TestOutlinesAreScaledAndJoinedBeforeTheyAreKept(t *testing.T) {
	w := onBench(t, "leaf")
	b := broughtOn(t, w, twoOutlines)
	b.each.SetSelected(b.each.Options[0])
	b.width.SetText("5.3 cm")
	b.keep()
	shelf := w.Order().Shelf
	if len(shelf) != 1 {
		t.Fatalf("%d shapes on the shelf", len(shelf))
	}
	if got := shelf[0].Shape.Bounds().Width(); (got - geom.MM(53)).Abs() > 2 {
		t.Errorf("it is %s mm wide", got)
	}
	b.lines.SetChecked(true)
	if b.d.Pieces[1].Shape.Disc.Diameter != geom.MM(8) || b.width.Text != "25.5 mm" {
		t.Errorf("cut along its strokes it has %v, %s across", b.d.Pieces[1].Shape, b.width.Text)
	}
	b.width.SetText("wide")
	b.keep()
	if len(w.Order().Shelf) != 1 || !strings.Contains(w.status.Text, "no width") {
		t.Errorf("%d shapes after nonsense; the window says %q", len(w.Order().Shelf), w.status.Text)
	}
}

func TestAFileOfOutlinesIsReadAndShownOrRefused(t *testing.T) {
	w := onBench(t, "leaf")
	path := filepath.Join(t.TempDir(), "drop.svg")
	for text, says := range map[string]string{twoOutlines: "", "<svg>": "the XML is broken", "<svg xmlns='http://www.w3.org/2000/svg'><text/></svg>": "can be cut"} {
		if err := os.WriteFile(path, []byte(text), 0o644); err != nil {
			t.Fatal(err)
		}
		w.Say("")
		w.BringIn(path)
		settleTask(t, w)
		top := w.win.Canvas().Overlays().Top()
		if (top != nil) != (says == "") || !strings.Contains(w.status.Text, says) {
			t.Errorf("%.30q: dialog %v, the window says %q", text, top != nil, w.status.Text)
		}
		if top != nil {
			top.Hide()
			w.win.Canvas().Overlays().Remove(top)
		}
	}
	dxf := "0\nSECTION\n2\nENTITIES\n0\nCIRCLE\n10\n2\n20\n1\n40\n.5\n0\nENDSEC\n0\nEOF\n"
	if err := os.WriteFile(path, []byte(dxf), 0o644); err != nil {
		t.Fatal(err)
	}
	w.dropped(fyne.Position{}, []fyne.URI{storage.NewFileURI(path)})
	settleTask(t, w)
	if w.win.Canvas().Overlays().Top() == nil {
		t.Error("a file without a unit was not asked about")
	}
	if w.Changed() {
		t.Error("reading alone has changed the order")
	}
}

func TestAChosenMotifIsKeptAsItStands(t *testing.T) {
	w := onBench(t, "leaf")
	s := theDraft(w)
	id := w.Order().Unit.Motifs[0].ID
	w.choose(id)
	w.Edit("Turn Motif", func(o document.Order) (document.Order, error) { return document.TurnMotif(o, id, 30) })
	start := written(t, w.Order())
	w.choose(id)
	doNamed(t, w, "Put the Chosen Motifs on the Shelf")
	m, _ := w.Order().Motif(id)
	m.At = geom.Point{}
	kept := w.Order().Shelf[0].Shape
	if kept.Bounds() != m.Placed().Bounds() {
		t.Errorf("on the shelf it lies in %v, in the unit in %v", kept.Bounds(), m.Placed().Bounds())
	}
	doNamed(t, w, "Take the Next Shape of the Shelf")
	before := len(w.Order().Unit.Motifs)
	doNamed(t, w, "Place It in the Middle")
	if got := w.Order().Unit.Motifs; len(got) != before+1 || got[before].Shape.Bounds() != kept.Bounds() {
		t.Errorf("%d motifs, the last %v", len(got), got[len(got)-1].Shape.Bounds())
	}
	doNamed(t, w, "Name the Shape of the Shelf")
	if w.win.Canvas().Focused() != fyne.Focusable(s.shelf.name) {
		t.Error("the name can't be written")
	}
	s.shelf.name.SetText("lance")
	s.shelf.name.hand()
	if w.Order().Shelf[0].Name != "lance" || s.shelf.taken != "lance" || s.shelf.shown[0].Name != "lance" {
		t.Errorf("it is called %q, in hand %q", w.Order().Shelf[0].Name, s.shelf.taken)
	}
	doNamed(t, w, "Take the Shape off the Shelf")
	if len(w.Order().Shelf) != 0 || s.places.Checked {
		t.Errorf("%d shapes are left", len(w.Order().Shelf))
	}
	for range 4 {
		w.Undo()
	}
	if got := written(t, w.Order()); got != start {
		t.Errorf("undone it is\n%s", got)
	}
}

// doNamed does the command of that name, if it can be done now.
func doNamed(t *testing.T, w *Window, name string) {
	t.Helper()
	for _, c := range commands() {
		if c.name(w) == name {
			if c.when != nil && !c.when(w) {
				t.Fatalf("%s can't be done now", name)
			}
			c.do(w)
			return
		}
	}
	t.Fatalf("there is no command %s", name)
}

func TestEscapePutsTheShapeBack(t *testing.T) {
	w := onBench(t, "leaf")
	s := theDraft(w)
	broughtOn(t, w, twoOutlines).keep()
	s.Hover(geom.PtMM(4, 4))
	marks := len(s.scene().Marks)
	w.typed(fyne.KeyEscape, 0)
	if s.shelf.taken != "" || s.places.Checked || len(s.scene().Marks) != marks-2 {
		t.Errorf("in hand is %q; %d marks, before %d", s.shelf.taken, len(s.scene().Marks), marks)
	}
	s.shelf.take("drop 2")
	s.path.SetText("M0 0H1V1Z")
	if shape, err := s.next(); err != nil || shape.Round() {
		t.Errorf("what was written last is not what a click places: %v %v", shape, err)
	}
	s.path.SetText("")
	s.shelf.takeNext(1)
	if shape, _ := s.next(); shape.Round() {
		t.Errorf("the first of the shelf is a ring, not %v", shape)
	}
}

// A square fills eight tenths of its picture each way.
func TestAPictureShowsTheShape(t *testing.T) {
	o, err := geom.ParsePathData("M3 4H5V6H3Z")
	if err != nil {
		t.Fatal(err)
	}
	img := shapePicture(geom.Shape{Outline: o}, 100)
	open := 0
	for y := range 100 {
		for x := range 100 {
			if img.At(x, y) == color.Color(worn().light) {
				open++
			}
		}
	}
	if open != 80*80 {
		t.Errorf("%d pixels are open, want 6400", open)
	}
}
