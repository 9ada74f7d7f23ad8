package ui

import (
	"slices"
	"testing"

	"fyne.io/fyne/v2"

	"tsugime/repeat/stencil"
)

func TestASplitShowsItsTwoSheets(t *testing.T) {
	w, s, _ := atStencil(t)
	plain := slices.Clone(s.shows.Options)
	w.proposeSplit()
	finish(t, w)
	if w.Order().Sheet.Hold.Way != stencil.Split || w.work.Sheet.Second == nil {
		t.Fatalf("the order is held by %q", w.Order().Sheet.Hold.Way)
	}
	if want := []string{theFirst, theSecond, theBoth, theJoint}; !slices.Equal(s.shows.Options, want) {
		t.Errorf("to be seen are %q, want %q", s.shows.Options, want)
	}
	s.toSheet(1)
	if g := s.scene().Grounds; len(g) != 1 || g[0].Ground != w.grounds.sheets[1] {
		t.Error("the second sheet is not what is shown")
	}
	var seen []string
	for range 4 {
		s.showNext()
		seen = append(seen, s.seen)
	}
	if want := []string{theBoth, theJoint, theSheet, theSecond}; !slices.Equal(seen, want) {
		t.Errorf("one after another are shown %q, want %q", seen, want)
	}
	w.Undo()
	settle(t, w)
	if !slices.Equal(s.shows.Options, plain) || s.seen != theSheet {
		t.Errorf("after the undo %q of %q is shown", s.seen, s.shows.Options)
	}
}

// off writes into the first field, that of the misplacement across.
func off(t *testing.T, s *stencilStation, text string) {
	t.Helper()
	for _, o := range s.form.rows {
		row, ok := o.(*fyne.Container)
		if !ok || len(row.Objects) != 2 {
			continue
		}
		if e, ok := row.Objects[1].(*entry); ok {
			e.SetText(text)
			e.hand()
			return
		}
	}
	t.Fatal("there is no field")
}

func TestSheetsLaidOffEachOtherShowDye(t *testing.T) {
	w, s, _ := atStencil(t)
	w.proposeSplit()
	finish(t, w)
	s.toView(theBoth)
	lap := w.Order().Sheet.Hold.Second.Lap.MM()
	for _, c := range []struct {
		text  string
		shows bool
	}{{"0 mm", false}, {"0.5 mm", true}} {
		off(t, s, c.text)
		await(t, "the cover is measured", func() bool { return s.both.known })
		if got := len(s.both.shows.Missing) > 0; got != c.shows {
			t.Errorf("off by %s with a lap of %g mm: shows dye %v, want %v", c.text, lap, got, c.shows)
		}
		if s.both.ground == nil || len(s.scene().Grounds) != 1 {
			t.Errorf("off by %s: no picture", c.text)
		}
	}
}
