package ui

import (
	"os"
	"path/filepath"
	"testing"
	"time"

	"fyne.io/fyne/v2"

	"tsugime/export/report"
)

// writes reports whether files are being written.
func writes(w *Window) bool { return w.writes.stop.Load() != nil }

func TestLeavingWhileTheJobFolderIsWrittenLeavesNothingHalf(t *testing.T) {
	w := onBench(t, "small-dot")
	for _, pause := range []time.Duration{0, 20 * time.Millisecond, 150 * time.Millisecond} {
		folder := filepath.Join(t.TempDir(), "job")
		w.writes.left.Store(false)
		w.WriteJob(folder)
		time.Sleep(pause)
		if !w.Rest(time.Minute) || writes(w) {
			t.Fatal("the writing went on")
		}
		whole := map[string]bool{}
		for _, name := range report.Names(w.work) {
			whole[name] = true
		}
		entries, err := os.ReadDir(folder)
		if err != nil && !os.IsNotExist(err) {
			t.Fatal(err)
		}
		for _, e := range entries {
			if !whole[e.Name()] {
				t.Errorf("left after %v, the folder holds %s", pause, e.Name())
			}
		}
		if len(entries) != 0 && len(entries) != len(whole) {
			t.Errorf("left after %v, the folder holds %d files of %d", pause, len(entries), len(whole))
		}
	}
}

func TestWhileFilesAreWrittenTheWindowCanBeShut(t *testing.T) {
	w := onBench(t, "small-dot")
	shut := false
	w.win.SetOnClosed(func() { shut = true })
	leave := func() {
		for _, c := range commands() {
			if c.leaves() {
				w.run(c)
				return
			}
		}
	}
	w.showKeys()
	leave()
	if shut {
		t.Error("with the page of keys over it the window was shut")
	}
	w.win.Canvas().Overlays().Top().Hide()
	w.WriteJob(filepath.Join(t.TempDir(), "job"))
	if !writes(w) {
		t.Fatal("nothing is being written")
	}
	leave()
	if !shut {
		t.Error("while the job folder was written the window could not be shut")
	}
	if !w.Rest(time.Minute) {
		t.Error("the writing went on")
	}
}

func TestOnlyClosingAndQuittingShutTheWindow(t *testing.T) {
	w := onBench(t, "small-dot")
	for _, c := range commands() {
		want := false
		for _, k := range c.keys {
			want = want || *k == *key(fyne.KeyW, ctrl) || *k == *key(fyne.KeyQ, ctrl)
		}
		if c.leaves() != want {
			t.Errorf("%s leaves: %v", c.name(w), c.leaves())
		}
	}
}
