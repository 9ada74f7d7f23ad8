package ui

import (
	"path/filepath"
	"testing"
	"time"

	"tsugime/repeat/document"
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
