package ui

import (
	"path/filepath"
	"slices"
	"testing"
	"time"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/canvas"
	"fyne.io/fyne/v2/test"

	"tsugime/repeat/document"
	"tsugime/ui/session"
)

// leaveBehind keeps orders in a folder as runs do that are killed.
func leaveBehind(t *testing.T, folder string, titles ...string) {
	t.Helper()
	o, err := ReadStarter("leaf")
	if err != nil {
		t.Fatal(err)
	}
	for _, title := range titles {
		dead := session.In(folder, time.Hour)
		o.Title = title
		k := dead.Keeper()
		k.Keep(filepath.Join(folder, title+extension), o, true)
		if err := k.Flush(); err != nil {
			t.Fatal(err)
		}
		dead.End() // lets the lock go as a kill does, and leaves what is kept
	}
}

// afterACrash opens a window where runs have left states.
func afterACrash(t *testing.T, titles ...string) (*Window, string) {
	t.Helper()
	folder := t.TempDir()
	leaveBehind(t, folder, titles...)
	a := test.NewTempApp(t)
	a.Preferences().SetString(languageKey, "en")
	a.Preferences().SetBool(stepsKey, true)
	o, err := ReadStarter("small-dot")
	if err != nil {
		t.Fatal(err)
	}
	w := New(a, o, "", session.In(folder, time.Hour))
	settle(t, w)
	w.OfferLeft()
	return w, folder
}

// leftIn are the titles that a run would be offered that starts now.
func leftIn(folder string) []string {
	var titles []string
	s := session.In(folder, time.Hour)
	for _, l := range s.Left() {
		titles = append(titles, l.Order.Title)
	}
	s.End()
	slices.Sort(titles)
	return titles
}

func TestNothingIsOfferedWhereNothingWasLeft(t *testing.T) {
	w, _ := afterACrash(t)
	if asked(w) {
		t.Error("something was offered")
	}
}

func TestTheLeftStatesOfTwoRunsAreOfferedWithPictureAndTimeAndBothTakenUp(t *testing.T) {
	w, folder := afterACrash(t, "coat", "apron")
	if !asked(w) {
		t.Fatal("nothing was offered")
	}
	pictures := 0
	for _, o := range test.LaidOutObjects(w.win.Canvas().Overlays().Top()) {
		if p, ok := o.(*canvas.Image); ok && p.Image != nil && p.Size().Width >= starterSide {
			pictures++
		}
	}
	if pictures != 2 {
		t.Errorf("%d pictures are shown, want 2", pictures)
	}
	answer(t, w, "Take It Up")
	first := w.Order().Title
	answer(t, w, "Take It Up")
	if asked(w) {
		t.Error("the list stays when it is empty")
	}
	if len(w.orders) != 2 {
		t.Fatalf("%d orders are open, want 2", len(w.orders))
	}
	second := w.orders[1].Order().Title
	if got := []string{min(first, second), max(first, second)}; !slices.Equal(got, []string{"apron", "coat"}) {
		t.Errorf("taken up are %v", got)
	}
	for _, o := range w.orders {
		if !o.Changed() || o.path != filepath.Join(folder, o.Order().Title+extension) {
			t.Errorf("%q of %q, changed %v", o.Order().Title, o.path, o.Changed())
		}
	}
	w.end() // what was taken up is kept on
	if got := leftIn(folder); !slices.Equal(got, []string{"apron", "coat"}) {
		t.Errorf("after another end are left %v", got)
	}
}

func TestEscapeLosesNothingThatIsOffered(t *testing.T) {
	w, folder := afterACrash(t, "coat", "apron")
	w.typed(fyne.KeyEscape, 0)
	if asked(w) || w.Order().Title == "coat" {
		t.Fatal("Escape did not close the list")
	}
	// The next edit is kept beside them, and the menu offers them again.
	w.Edit("Change Title", func(o document.Order) (document.Order, error) { return document.SetTitle(o, "mine") })
	if err := w.keeper.Flush(); err != nil {
		t.Fatal(err)
	}
	w.showLeft()
	if answer(t, w, "Throw It Away"); !asked(w) || len(w.remains) != 1 {
		t.Fatalf("%d are left in the list", len(w.remains))
	}
	answer(t, w, "Decide Later")
	rest := w.remains[0].Order.Title
	w.end()
	want := []string{rest, "mine"}
	slices.Sort(want)
	if got := leftIn(folder); !slices.Equal(got, want) {
		t.Errorf("left are %v, want %v", got, want)
	}
}

// The state of a file that is open is laid over it as an edit.
func TestALeftStateOfAnOpenFileIsOneUndoAway(t *testing.T) {
	folder := t.TempDir()
	leaveBehind(t, folder, "coat")
	w, _ := onFile(t)
	w.store = session.In(folder, time.Hour)
	w.keeper = w.store.Keeper()
	if !w.SaveTo(filepath.Join(folder, "coat"+extension)) {
		t.Fatal("not saved")
	}
	before := w.Order().Title
	w.OfferLeft()
	answer(t, w, "Take It Up")
	if len(w.orders) != 1 || w.Order().Title != "coat" || !w.Changed() {
		t.Fatalf("%d orders; on the bench is %q, changed %v", len(w.orders), w.Order().Title, w.Changed())
	}
	if w.Undo(); w.Order().Title != before || w.Changed() {
		t.Error("taking up can't be undone")
	}
}
