package ui

import (
	"strings"
	"testing"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/test"
)

// finding opens the finder and returns it.
func finding(t *testing.T, w *Window) *finder {
	t.Helper()
	w.findCommand()
	f, ok := w.win.Canvas().Focused().(*finder)
	if !ok {
		t.Fatal("the finder is not written in")
	}
	return f
}

func TestEveryCommandIsFoundByItsName(t *testing.T) {
	w := onBench(t, "small-dot")
	all := commandsLike(w, "")
	if len(all) != len(commands()) {
		t.Fatalf("no letters list %d of %d commands", len(all), len(commands()))
	}
	for _, c := range all {
		name := c.name(w)
		found := false
		for _, like := range commandsLike(w, name) {
			found = found || like.name(w) == name
		}
		if !found {
			t.Errorf("%q is not found by its name", name)
		}
	}
	if n := len(commandsLike(w, "zzz qqq")); n != 0 {
		t.Errorf("letters of no command list %d", n)
	}
}

func TestAFoundCommandIsDoneByEnter(t *testing.T) {
	w := onBench(t, "small-dot")
	f := finding(t, w)
	test.Type(f, "to bolt")
	if len(f.found) != 1 {
		t.Fatalf("%q lists %d commands, not one", f.Text, len(f.found))
	}
	f.TypedKey(&fyne.KeyEvent{Name: fyne.KeyReturn})
	if w.at != boltAt {
		t.Errorf("the station is %s, not the bolt", stationNames[w.at])
	}
	if w.win.Canvas().Overlays().Top() != nil {
		t.Error("the finder still lies over the window")
	}
}

func TestWhatCantBeDoneNowSaysSo(t *testing.T) {
	w := onBench(t, "small-dot")
	f := finding(t, w)
	test.Type(f, "undo")
	f.do()
	if !strings.Contains(w.status.Text, "can't be done") {
		t.Errorf("the line below says %q", w.status.Text)
	}
	f.TypedKey(&fyne.KeyEvent{Name: fyne.KeyEscape})
	if w.win.Canvas().Overlays().Top() != nil {
		t.Error("Escape did not leave the finder")
	}
}

func TestArrowsGoThroughTheFoundCommands(t *testing.T) {
	w := onBench(t, "small-dot")
	f := finding(t, w)
	for range 3 {
		f.TypedKey(&fyne.KeyEvent{Name: fyne.KeyDown})
	}
	f.TypedKey(&fyne.KeyEvent{Name: fyne.KeyUp})
	if f.marked != 2 {
		t.Errorf("three down and one up marks %d, not 2", f.marked)
	}
	for range len(f.found) + 5 {
		f.TypedKey(&fyne.KeyEvent{Name: fyne.KeyDown})
	}
	if f.marked != len(f.found)-1 {
		t.Errorf("the mark went to %d of %d", f.marked, len(f.found))
	}
}
