package ui

import (
	"path/filepath"
	"testing"
	"time"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/test"
	"fyne.io/fyne/v2/widget"

	"tsugime/repeat/document"
	"tsugime/ui/session"
)

// onFile lays an order that has a file on the bench.
func onFile(t *testing.T) (*Window, string) {
	t.Helper()
	w := onBench(t, "leaf")
	path := filepath.Join(t.TempDir(), "leaf.tsugime")
	if !w.SaveTo(path) {
		t.Fatal("not saved")
	}
	return w, path
}

// writeOther writes the order with another title, as another program would.
func writeOther(t *testing.T, path string, o document.Order, title string) {
	t.Helper()
	o.Title = title
	before := stampOf(path)
	for stampOf(path) == before {
		if err := writeFile(path, o); err != nil {
			t.Fatal(err)
		}
		time.Sleep(5 * time.Millisecond) // until the file system's clock has moved
	}
}

func TestAFileWrittenElsewhereIsNoticed(t *testing.T) {
	w, path := onFile(t)
	if w.lookAtDisk(); w.win.Canvas().Overlays().Top() != nil {
		t.Fatal("an unchanged file was asked about")
	}
	writeOther(t, path, w.Order(), "from elsewhere")
	if w.lookAtDisk(); w.win.Canvas().Overlays().Top() == nil {
		t.Fatal("the changed file was not asked about")
	}
	w.win.Canvas().Overlays().Top().Hide()
	w.readAgain()
	if w.Order().Title != "from elsewhere" || w.Changed() {
		t.Errorf("read again: title %q, changed %v", w.Order().Title, w.Changed())
	}
	w.Undo()
	if w.Order().Title == "from elsewhere" || !w.Changed() {
		t.Error("reading again can't be undone")
	}
}

func TestTheSameOrderWrittenElsewhereIsNotAskedAbout(t *testing.T) {
	w, path := onFile(t)
	writeOther(t, path, w.Order(), w.Order().Title)
	if w.lookAtDisk(); w.win.Canvas().Overlays().Top() != nil {
		t.Error("a file that holds the same order was asked about")
	}
}

func TestSavingDoesNotWriteOverAnotherState(t *testing.T) {
	w, path := onFile(t)
	writeOther(t, path, w.Order(), "from elsewhere")
	w.Save()
	if o, err := ReadFile(path); err != nil || o.Title != "from elsewhere" {
		t.Fatalf("the file now holds %q (%v)", o.Title, err)
	}
	if w.win.Canvas().Overlays().Top() == nil {
		t.Error("saving over another state was not asked about")
	}
	// Asked once, saving again is an answer.
	w.win.Canvas().Overlays().Top().Hide()
	w.Save()
	if o, _ := ReadFile(path); o.Title == "from elsewhere" {
		t.Error("the second saving did not save")
	}
}

func TestAKeptStateIsOfferedWithItsPattern(t *testing.T) {
	w := onBench(t, "small-dot")
	kept, err := ReadStarter("leaf")
	if err != nil {
		t.Fatal(err)
	}
	w.Recover(session.Kept{Order: kept, Time: time.Date(2026, 3, 4, 5, 6, 0, 0, time.UTC)})
	top := w.win.Canvas().Overlays().Top()
	if top == nil {
		t.Fatal("nothing was offered")
	}
	for _, o := range test.LaidOutObjects(top) {
		if b, ok := o.(interface{ Tapped(*fyne.PointEvent) }); ok && textOf(o) == "Take It Up" {
			b.Tapped(&fyne.PointEvent{})
			break
		}
	}
	if w.Order().Title != kept.Title || !w.Changed() {
		t.Errorf("taken up %q, changed %v", w.Order().Title, w.Changed())
	}
}

// textOf is what stands on a button; nothing else has a text here.
func textOf(o fyne.CanvasObject) string {
	if b, ok := o.(*widget.Button); ok {
		return b.Text
	}
	return ""
}

// What an ended run left is still there when the next one looks for it, and once it is
// taken up it is kept again.
func TestWhatWasKeptOutlivesTheNextStart(t *testing.T) {
	folder := t.TempDir()
	left, err := ReadStarter("leaf")
	if err != nil {
		t.Fatal(err)
	}
	store := session.In(folder, 0)
	store.Keep("leaf.tsugime", left, true)
	isKept := func(title string) func() bool {
		return func() bool { k, ok := store.Kept(); return ok && k.Order.Title == title }
	}
	soon(t, "the state is kept", isKept(left.Title))
	o, err := ReadStarter("small-dot")
	if err != nil {
		t.Fatal(err)
	}
	w := New(test.NewTempApp(t), o, "", session.In(folder, 0))
	settle(t, w)
	if !isKept(left.Title)() {
		t.Fatal("opening a window has forgotten what was kept")
	}
	left.Title = "taken up"
	w.lay(left, "", false)
	settle(t, w)
	if soon(t, "what was taken up is kept", isKept("taken up")); !w.Changed() {
		t.Error("what was taken up counts as saved")
	}
	w.lay(left, "", true)
	if _, ok := store.Kept(); ok {
		t.Error("a saved order is kept")
	}
}

// soon waits until what is written in the background is on the disk.
func soon(t *testing.T, what string, holds func() bool) {
	t.Helper()
	for end := time.Now().Add(time.Minute); !holds(); time.Sleep(2 * time.Millisecond) {
		if time.Now().After(end) {
			t.Fatalf("%s: not within a minute", what)
		}
	}
}
