package ui

import (
	"os"
	"path/filepath"
	"strings"
	"testing"
	"time"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/driver/desktop"
	"fyne.io/fyne/v2/test"
	"fyne.io/fyne/v2/widget"

	"tsugime/export/wording"
	"tsugime/repeat/geom"
	"tsugime/repeat/pattern"
)

// openWindows are the windows of the program.
func openWindows() int { return len(fyne.CurrentApp().Driver().AllWindows()) }

// asked reports whether a dialog waits in a window.
func asked(w *Window) bool { return w.win.Canvas().Overlays().Top() != nil }

// answer presses a button of the dialog that waits in a window.
func answer(t *testing.T, w *Window, name string) {
	t.Helper()
	top := w.win.Canvas().Overlays().Top()
	if top == nil {
		t.Fatalf("nothing waits for the answer %q", name)
	}
	for _, o := range test.LaidOutObjects(top) {
		if b, ok := o.(*widget.Button); ok && b.Text == name {
			test.Tap(b)
			return
		}
	}
	t.Fatalf("there is no answer %q", name)
}

// besides opens another window on the order of w.
func besides(t *testing.T, w *Window) *Window {
	t.Helper()
	w.another()
	v := w.windows[len(w.windows)-1]
	if v == w || v.openOrder != w.openOrder {
		t.Fatal("there is no other window on the order")
	}
	return v
}

func TestAnEditInOneWindowShowsInTheOther(t *testing.T) {
	w := onBench(t, "small-dot")
	v := besides(t, w)
	v.GoTo(stencilAt)
	start, id := written(t, w.Order()), w.Order().Unit.Motifs[0].ID
	w.choose(id)
	w.typed(fyne.KeyRight, 0)
	settle(t, w)
	if !v.Ready() || !v.Changed() || written(t, v.Order()) != written(t, w.Order()) || written(t, v.Order()) == start {
		t.Fatal("the other window does not show the edit")
	}
	if w.at != draftAt || v.at != stencilAt || len(v.chosen) != 0 {
		t.Errorf("the windows share the station (%d, %d) or what is chosen (%v)", w.at, v.at, v.chosen)
	}
	if got := v.work.Sheet.CutOuts; len(got) == 0 || &got[0] != &w.work.Sheet.CutOuts[0] {
		t.Error("the work was built for each window")
	}
	v.Undo()
	settle(t, w)
	if written(t, w.Order()) != start || w.Changed() || w.undoName() != "" {
		t.Error("the undo in the other window does not show here")
	}
	v.Redo()
	if w.undoName() == "" || !strings.HasPrefix(w.win.Title(), "• ") || !strings.HasPrefix(v.win.Title(), "• ") {
		t.Errorf("the titles are %q and %q", w.win.Title(), v.win.Title())
	}
	if w.SaveTo(filepath.Join(t.TempDir(), "coat")); v.Changed() || !strings.HasPrefix(v.win.Title(), "coat.tsugime") {
		t.Errorf("saved in one window the other is called %q", v.win.Title())
	}
}

// What is chosen is each window's own, and what is gone is chosen in none.
func TestWhatIsGoneIsChosenInNoWindow(t *testing.T) {
	w := onBench(t, "small-dot")
	click2 := func(w *Window, at geom.Point) {
		theDraft(w).places.SetChecked(true)
		click(w.board, at)
		theDraft(w).places.SetChecked(false)
	}
	click2(w, geom.PtMM(3.1, -2.4))
	v := besides(t, w)
	gone := w.chosen[0]
	v.choose(gone, v.Order().Unit.Motifs[0].ID)
	w.typed(fyne.KeyDelete, 0)
	if len(w.chosen) != 0 || len(v.chosen) != 1 || v.chosen[0] == gone {
		t.Errorf("chosen are %v and %v", w.chosen, v.chosen)
	}
}

func TestADragShowsInTheOtherWindowWhenItIsDropped(t *testing.T) {
	w := onBench(t, "small-dot")
	v := besides(t, w)
	start := written(t, v.Order())
	at := w.Order().Unit.Lattice.Into(w.Order().Unit.Motifs[0].At)
	p, q := w.board.At(at), w.board.At(at.Add(geom.PtMM(0.5, 0)))
	event := func(at fyne.Position) *desktop.MouseEvent {
		return &desktop.MouseEvent{PointEvent: fyne.PointEvent{Position: at}, Button: desktop.MouseButtonPrimary}
	}
	w.board.MouseDown(event(p))
	w.board.Dragged(&fyne.DragEvent{PointEvent: fyne.PointEvent{Position: q}, Dragged: fyne.NewDelta(q.X-p.X, 0)})
	if written(t, v.Order()) != start || theDraft(v).drag != nil {
		t.Error("the other window takes part in the drag")
	}
	w.board.MouseUp(event(q))
	w.board.DragEnd()
	moved := v.Order().Unit.Motifs[0].At.Sub(v.Order().Unit.Lattice.Into(at))
	if written(t, v.Order()) == start || moved.X == 0 {
		t.Error("the other window does not show what was dropped")
	}
}

func TestOnlyTheLastWindowOfAnOrderAsks(t *testing.T) {
	w := onBench(t, "small-dot")
	v := besides(t, w)
	w.choose(w.Order().Unit.Motifs[0].ID)
	w.typed(fyne.KeyRight, 0)
	before := openWindows()
	w.close()
	if asked(w) || asked(v) || openWindows() != before-1 || len(v.windows) != 1 {
		t.Fatalf("closing one of two asked or did nothing: %d windows, %d of the order", openWindows(), len(v.windows))
	}
	v.close()
	if !asked(v) || openWindows() != before-1 {
		t.Fatal("closing the last one did not ask")
	}
	answer(t, v, "Close without Saving")
	if openWindows() != before-2 || len(v.orders) != 0 {
		t.Errorf("%d windows and %d orders are left", openWindows(), len(v.orders))
	}
}

func TestQuittingAsksForEachOrderOnce(t *testing.T) {
	w := onBench(t, "small-dot")
	v := besides(t, w)
	w.choose(w.Order().Unit.Motifs[0].ID)
	w.typed(fyne.KeyRight, 0)
	o, err := ReadStarter("leaf")
	if err != nil {
		t.Fatal(err)
	}
	v.lay(o, "", false)
	if w.openOrder == v.openOrder || len(w.orders) != 2 || w.Order().Title == v.Order().Title {
		t.Fatal("another order in one window took the other window along")
	}
	besides(t, v)
	before := openWindows()
	w.quit()
	if answer(t, w, "Cancel"); openWindows() != before {
		t.Fatal("a cancelled quit has closed something")
	}
	w.quit()
	answer(t, w, "Close without Saving")
	if openWindows() != before-1 || !asked(v) {
		t.Fatal("the second order was not asked about")
	}
	answer(t, v, "Close without Saving")
	if openWindows() != before-3 || len(w.orders) != 0 {
		t.Errorf("%d windows are left", openWindows())
	}
}

func TestAFileThatIsOpenIsNotOpenedTwice(t *testing.T) {
	w, path := onFile(t)
	w.another()
	v := w.windows[1]
	o, err := ReadStarter("small-dot")
	if err != nil {
		t.Fatal(err)
	}
	v.lay(o, "", true)
	link := filepath.Join(t.TempDir(), "other-name.tsugime")
	if err := os.Symlink(path, link); err != nil {
		t.Fatal(err)
	}
	for _, name := range []string{path, link} {
		v.openAsking(name)
		if v.path != "" || len(w.orders) != 2 || !strings.Contains(w.status.Text, "open already") {
			t.Fatalf("%s: %d orders are open; the window that has it says %q", name, len(w.orders), w.status.Text)
		}
	}
	if v.SaveTo(path); !asked(v) || v.path != "" {
		t.Error("two orders could be saved into one file")
	}
	v.win.Canvas().Overlays().Top().Hide()
	w.shut()
	if v.openAsking(path); v.path != path {
		t.Error("a file whose window is closed can't be opened")
	}
}

func TestTheLanguageReachesEveryWindow(t *testing.T) {
	w := onBench(t, "small-dot")
	v := besides(t, w)
	t.Cleanup(func() { speak(wording.English) })
	w.Speak(wording.Japanese)
	if name := v.win.MainMenu().Items[0].Label; name != "誂え" {
		t.Errorf("the other window's first menu is %q", name)
	}
	theDraft(v).begin(theDraft(v).pen)
	for _, c := range languageCommands() {
		if c.when(w) {
			t.Errorf("%s can be chosen while the other window is drawn in", c.name(w))
		}
	}
}

// Chosen motifs follow an undo in the window it was asked in, as the history has them.
func TestTheHistoryBringsBackWhatWasChosenInTheWindowThatAsks(t *testing.T) {
	w := onBench(t, "small-dot")
	v := besides(t, w)
	id := w.Order().Unit.Motifs[0].ID
	w.choose(id)
	w.typed(fyne.KeyRight, 0)
	w.choose()
	v.Undo()
	v.Redo()
	if len(w.chosen) != 0 || len(v.chosen) != 1 || v.chosen[0] != pattern.ID(id) {
		t.Errorf("chosen are %v and %v", w.chosen, v.chosen)
	}
}

// A file that was written elsewhere is asked about once for all windows.
func TestAFileWrittenElsewhereIsAskedAboutOnce(t *testing.T) {
	w, path := onFile(t)
	v := besides(t, w)
	writeOther(t, path, w.Order(), "from elsewhere")
	w.lookAtFiles()
	if !asked(w) || asked(v) {
		t.Fatal("the changed file was not asked about in one window")
	}
	answer(t, w, "Read It Again")
	if v.Order().Title != "from elsewhere" || v.Changed() {
		t.Error("the other window does not show what was read again")
	}
	w.lookAtFiles()
	if v.lookAtDisk(); asked(v) {
		t.Error("it was asked about again")
	}
}

// quitting the program, whoever does it, keeps what isn't saved.
func TestWhatIsNotSavedWhenTheProgramIsStoppedIsKept(t *testing.T) {
	w := onBench(t, "small-dot")
	w.choose(w.Order().Unit.Motifs[0].ID)
	w.typed(fyne.KeyRight, 0)
	w.end()
	left := w.store.Left()
	if len(left) != 1 || written(t, left[0].Order) != written(t, w.Order()) {
		t.Fatalf("%d states are left", len(left))
	}
	if age := time.Since(left[0].Time); age > time.Minute || age < 0 {
		t.Errorf("it was kept %v ago", age)
	}
}
