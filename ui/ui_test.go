package ui

import (
	"bytes"
	"image/png"
	"os"
	"path/filepath"
	"reflect"
	"testing"
	"time"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/driver/desktop"
	"fyne.io/fyne/v2/test"

	"tsugime/export/report"
	"tsugime/repeat/document"
	"tsugime/repeat/geom"
	"tsugime/repeat/pattern"
	"tsugime/ui/board"
	"tsugime/ui/session"
)

// onBench lays a starter on the bench of a window without a display.
func onBench(t *testing.T, starter string) *Window {
	t.Helper()
	a := test.NewTempApp(t)
	a.Preferences().SetString(languageKey, "en") // whatever the system speaks
	a.Preferences().SetBool(stepsKey, true)
	o, err := ReadStarter(starter)
	if err != nil {
		t.Fatal(err)
	}
	w := New(a, o, "", session.In(t.TempDir(), time.Hour))
	w.win.Resize(fyne.NewSize(1440, 900))
	settle(t, w)
	return w
}

// posted is what work in the background wants done by the window.
var posted = make(chan func(), 4096)

func TestMain(m *testing.M) {
	later = func(f func()) { posted <- f }
	os.Exit(m.Run())
}

// await does what is posted until something holds.
func await(t testing.TB, what string, holds func() bool) {
	t.Helper()
	late := time.After(2 * time.Minute)
	for !holds() {
		select {
		case f := <-posted:
			f()
		case <-late:
			t.Fatalf("%s: not within two minutes", what)
		}
	}
}

// settle waits until the newest order has been built and shown, its pattern too.
func settle(t testing.TB, w *Window) {
	t.Helper()
	await(t, "the order is built and shown", func() bool {
		if w.fault != nil {
			t.Fatal(w.fault)
		}
		return w.Ready() && !w.stations[draftAt].(*draft).making
	})
}

// settleTask waits until the work in the background has ended.
func settleTask(t testing.TB, w *Window) {
	t.Helper()
	await(t, "the work in the background ends", func() bool {
		select {
		case <-w.task:
			return true
		default:
			return false
		}
	})
}

func written(t *testing.T, o document.Order) string {
	t.Helper()
	var b bytes.Buffer
	if err := document.Write(&b, o); err != nil {
		t.Fatal(err)
	}
	return b.String()
}

// pull presses at one place of the scene, moves in steps and lets go at another.
func pull(b *board.Board, from, to geom.Point, steps int) {
	p, q := b.At(from), b.At(to)
	event := func(at fyne.Position) *desktop.MouseEvent {
		return &desktop.MouseEvent{PointEvent: fyne.PointEvent{Position: at, AbsolutePosition: at}, Button: desktop.MouseButtonPrimary}
	}
	b.MouseDown(event(p))
	last := p
	for i := 1; i <= steps; i++ {
		t := float32(i) / float32(steps)
		at := fyne.NewPos(p.X+(q.X-p.X)*t, p.Y+(q.Y-p.Y)*t)
		b.Dragged(&fyne.DragEvent{PointEvent: fyne.PointEvent{Position: at, AbsolutePosition: at}, Dragged: fyne.NewDelta(at.X-last.X, at.Y-last.Y)})
		last = at
	}
	b.MouseUp(event(q))
	b.DragEnd()
}

func click(b *board.Board, at geom.Point) { pull(b, at, at, 0) }

func theDraft(w *Window) *draft { return w.stations[draftAt].(*draft) }

func TestADragIsOneEdit(t *testing.T) {
	w := onBench(t, "small-dot")
	start := w.Order()
	at := start.Unit.Lattice.Into(start.Unit.Motifs[0].At)
	pull(w.board, at, at.Add(geom.PtMM(0.5, 0.25)), 12)
	moved := w.Order().Unit.Motifs[0].At.Sub(start.Unit.Motifs[0].At)
	if d := moved.Distance(geom.PtMM(0.5, 0.25)); d > geom.MM(0.02) {
		t.Errorf("the motif moved by %v, %v; want 0.5, 0.25", moved.X, moved.Y)
	}
	if name := w.history.UndoName(); name != "Move Motif" {
		t.Errorf("the menu would undo %q", name)
	}
	w.Undo()
	if got := written(t, w.Order()); got != written(t, start) || w.history.UndoName() != "" {
		t.Errorf("one undo did not lead back: next would be undone %q", w.history.UndoName())
	}
}

func TestADragThatIsGivenUpLeavesTheOrder(t *testing.T) {
	w := onBench(t, "small-dot")
	s, at := theDraft(w), w.Order().Unit.Lattice.Into(w.Order().Unit.Motifs[0].At)
	p := w.board.At(at)
	w.board.MouseDown(&desktop.MouseEvent{PointEvent: fyne.PointEvent{Position: p}, Button: desktop.MouseButtonPrimary})
	w.board.Dragged(&fyne.DragEvent{PointEvent: fyne.PointEvent{Position: p.AddXY(30, 10)}, Dragged: fyne.NewDelta(30, 10)})
	if s.drag == nil {
		t.Fatal("nothing is being dragged")
	}
	w.typed(fyne.KeyEscape, 0)
	w.board.MouseUp(&desktop.MouseEvent{PointEvent: fyne.PointEvent{Position: p.AddXY(30, 10)}, Button: desktop.MouseButtonPrimary})
	if w.Changed() || s.drag != nil {
		t.Error("Escape did not give up the drag")
	}
}

// Every edit of the window, one after another; then undone to the start.
func TestUndoToTheStartEqualsTheStart(t *testing.T) {
	w := onBench(t, "leaf")
	start := written(t, w.Order())
	s := theDraft(w)
	s.places.SetChecked(true)
	click(w.board, geom.PtMM(0.3, 0.2))
	s.path.SetText("M0 0 H1 V1 H0 Z")
	click(w.board, geom.PtMM(1.3, 2.2))
	s.places.SetChecked(false)
	w.typed(fyne.KeyRight, 0)
	w.typed(fyne.KeyDown, fyne.KeyModifierShift)
	w.typed(fyne.KeyDelete, 0)
	w.Edit("Change Step", func(o document.Order) (document.Order, error) { return document.SetStep(o, geom.MM(150)) })
	settle(t, w)
	w.mendFirst()
	edits := 0
	for ; w.history.UndoName() != ""; edits++ {
		w.Undo()
	}
	if edits < 7 {
		t.Errorf("only %d edits were made", edits)
	}
	if got := written(t, w.Order()); got != start {
		t.Errorf("after %d undos the order is\n%s\nwant\n%s", edits, got, start)
	}
	for range edits {
		w.Redo()
	}
	if w.history.RedoName() != "" || !w.Changed() {
		t.Error("redo did not lead to the end")
	}
}

func TestAClickPlacesTheCopyInTheCell(t *testing.T) {
	w := onBench(t, "small-dot")
	s := theDraft(w)
	s.places.SetChecked(true)
	s.diameter.put("0.3 mm")
	at := geom.PtMM(3.1, -2.4)
	click(w.board, at)
	motifs := w.Order().Unit.Motifs
	last := motifs[len(motifs)-1]
	if last.Shape.Disc.Diameter != geom.MM(0.3) {
		t.Errorf("placed a dot of %v mm, want 0.3", last.Shape.Disc.Diameter)
	}
	l := w.Order().Unit.Lattice
	if off := l.Into(last.At.Sub(at)); off.Norm() > float64(geom.MM(0.02)) {
		t.Errorf("the motif is no copy of the place that was clicked: off by %v, %v", off.X, off.Y)
	}
	if !reflect.DeepEqual(w.chosen, []pattern.ID{last.ID}) {
		t.Errorf("chosen is %v, want the new motif %d", w.chosen, last.ID)
	}
}

func TestCopiesFollowInTheSameFrame(t *testing.T) {
	w := onBench(t, "small-dot")
	o := w.Order()
	at := o.Unit.Lattice.Into(o.Unit.Motifs[0].At)
	copied := at.Add(o.Unit.Lattice.A)
	pixel := func(p geom.Point) uint32 {
		q := w.board.At(p).Add(fyne.CurrentApp().Driver().AbsolutePositionForObject(w.board))
		r, g, b, _ := w.win.Canvas().Capture().At(int(q.X), int(q.Y)).RGBA()
		return r + g + b
	}
	to := geom.PtMM(0.7, 0)
	dark, bright := pixel(copied.Add(to)), pixel(copied)
	if dark >= bright {
		t.Fatalf("a hole of %d is not brighter than paper of %d", bright, dark)
	}
	p := w.board.At(at)
	w.board.MouseDown(&desktop.MouseEvent{PointEvent: fyne.PointEvent{Position: p}, Button: desktop.MouseButtonPrimary})
	q := w.board.At(at.Add(to))
	w.board.Dragged(&fyne.DragEvent{PointEvent: fyne.PointEvent{Position: q}, Dragged: fyne.NewDelta(q.X-p.X, 0)})
	if got := pixel(copied.Add(to)); got != bright || w.Changed() {
		t.Errorf("during the drag the copy's new place shows %d, want %d; changed: %v", got, bright, w.Changed())
	}
}

func TestNoTwoCommandsShareAKey(t *testing.T) {
	w := onBench(t, "small-dot")
	taken := map[string]string{}
	for _, c := range commands() {
		if c.name(w) == "" || len(c.keys) == 0 || !contains(menus, c.menu) {
			t.Errorf("command %q in menu %q has no name, key or place", c.name(w), c.menu)
		}
		for _, k := range c.keys {
			if other, ok := taken[keyName(k)]; ok {
				t.Errorf("%s belongs to %q and %q", keyName(k), other, c.name(w))
			}
			taken[keyName(k)] = c.name(w)
		}
	}
}

func contains(names []string, name string) bool {
	for _, n := range names {
		if n == name {
			return true
		}
	}
	return false
}

func TestAKeyDoesNothingWhileItsCommandCannot(t *testing.T) {
	w := onBench(t, "small-dot")
	for _, c := range commands() {
		if c.when != nil && !c.when(w) {
			w.run(c)
		}
	}
	if w.Changed() || w.history.UndoName() != "" {
		t.Errorf("a command that could not be done was done: %q", w.history.UndoName())
	}
}

func TestADialogKeepsTheKeysAndEscapeClosesIt(t *testing.T) {
	w := onBench(t, "small-dot")
	w.choose(w.Order().Unit.Motifs[0].ID)
	w.showKeys()
	w.typed(fyne.KeyRight, 0)
	if w.Changed() {
		t.Error("a nudge went through a dialog")
	}
	w.typed(fyne.KeyEscape, 0)
	if w.win.Canvas().Overlays().Top() != nil {
		t.Error("Escape did not close the dialog")
	}
	w.typed(fyne.KeyRight, 0)
	if !w.Changed() {
		t.Error("no nudge after the dialog")
	}
}

func TestTheJobFolderIsWrittenInTheBackground(t *testing.T) {
	w := onBench(t, "leaf")
	folder := filepath.Join(t.TempDir(), "job")
	w.WriteJob(folder)
	await(t, "the job folder is written", func() bool { return w.win.Canvas().Overlays().Top() == nil })
	for _, name := range report.Names(w.work) {
		if info, err := os.Stat(filepath.Join(folder, name)); err != nil || info.Size() == 0 {
			t.Errorf("%s: %v; the window says: %s", name, err, w.status.Text)
		}
	}
}

func TestEveryStationShowsItsPicture(t *testing.T) {
	w := onBench(t, "small-dot")
	folder := filepath.Join("..", "out", "window")
	if err := os.MkdirAll(folder, 0o755); err != nil {
		t.Fatal(err)
	}
	for i, name := range stationNames {
		w.GoTo(i)
		if len(w.stations[i].measures()) < 5 {
			t.Errorf("%s measures too little: %v", name, w.stations[i].measures())
		}
		sc := w.stations[i].scene()
		if sc.Extent.Empty() || len(sc.Grounds) == 0 || len(sc.Areas) == 0 {
			t.Errorf("%s shows nothing", name)
		}
		f, err := os.Create(filepath.Join(folder, "headless-"+name+".png"))
		if err != nil {
			t.Fatal(err)
		}
		if err := png.Encode(f, w.win.Canvas().Capture()); err != nil {
			t.Fatal(err)
		}
		if err := f.Close(); err != nil {
			t.Fatal(err)
		}
	}
}

func TestWhatIsSavedIsReadBack(t *testing.T) {
	w := onBench(t, "small-dot")
	w.choose(w.Order().Unit.Motifs[0].ID)
	w.typed(fyne.KeyRight, fyne.KeyModifierShift)
	if !w.Changed() {
		t.Fatal("a nudge changed nothing")
	}
	path := filepath.Join(t.TempDir(), "coat")
	if !w.SaveTo(path) || w.Changed() {
		t.Fatal("not saved")
	}
	o, err := ReadFile(path + extension)
	if err != nil {
		t.Fatal(err)
	}
	if got, want := written(t, o), written(t, w.Order()); got != want {
		t.Errorf("read back\n%s\nwant\n%s", got, want)
	}
	w.Undo()
	if !w.Changed() {
		t.Error("an undo behind the save does not count as a change")
	}
	w.Redo()
	if w.Changed() {
		t.Error("back at the saved state the order counts as changed")
	}
}

func TestAFieldReadsAnyUnitAndRefusesNonsense(t *testing.T) {
	w := onBench(t, "small-dot")
	w.GoTo(stencilAt)
	f := w.stations[stencilAt].(*stencilStation).form
	var step *entry
	for _, o := range f.rows {
		if row, ok := o.(*fyne.Container); ok && len(row.Objects) == 2 {
			if e, ok := row.Objects[1].(*entry); ok && e.Text == "181.8182 mm" {
				step = e
			}
		}
	}
	if step == nil {
		t.Fatal("the field of the step was not found")
	}
	step.SetText("5 kane sun")
	step.hand()
	if got, want := w.Order().Sheet.Step, geom.MM(5000.0/33); (got - want).Abs() > 1 {
		t.Errorf("the step is %v mm, want %v", got, want)
	}
	before := w.Order().Sheet.Step
	step.SetText("five sun")
	step.hand()
	if w.Order().Sheet.Step != before || step.Text == "five sun" {
		t.Errorf("nonsense was taken for a length, or left standing: %q", step.Text)
	}
}
