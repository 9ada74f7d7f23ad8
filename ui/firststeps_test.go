package ui

import (
	"strings"
	"testing"
	"time"

	"fyne.io/fyne/v2/test"

	"tsugime/export/wording"
	"tsugime/repeat/geom"
	"tsugime/ui/session"
)

// newcomer opens a window where nobody has worked before.
func newcomer(t *testing.T) *Window {
	t.Helper()
	a := test.NewTempApp(t)
	a.Preferences().SetString(languageKey, "en")
	o, err := ReadStarter("small-dot")
	if err != nil {
		t.Fatal(err)
	}
	w := New(a, o, "", session.In(t.TempDir(), time.Hour))
	settle(t, w)
	return w
}

// The first steps are gone by doing them, each shown in words of both languages, and
// never come again by themselves.
func TestTheFirstStepsAreGoneByDoingThem(t *testing.T) {
	w := newcomer(t)
	t.Cleanup(func() { speak(wording.English) })
	tells := func(title string) {
		t.Helper()
		if !w.lead.strip.Visible() || !strings.Contains(w.lead.title.Text, title) {
			t.Fatalf("the strip tells %q (seen: %v), want %q", w.lead.title.Text, w.lead.strip.Visible(), title)
		}
	}
	tells("1 of 3")
	w.GoTo(stencilAt)
	tells("1 of 3")
	test.Tap(w.lead.there)
	if w.at != draftAt {
		t.Error("the strip does not lead to the station of its step")
	}
	at := w.Order().Unit.Lattice.Into(w.Order().Unit.Motifs[0].At)
	pull(w.board, at, at.Add(geom.PtMM(0.2, 0.1)), 5)
	tells("2 of 3")
	w.Speak(wording.Japanese)
	tells("三つの二つめ")
	w.Speak(wording.English)
	test.Tap(w.lead.there)
	tells("3 of 3")
	w.GoTo(sheetsAt)
	tells("From a dot")
	if w.lead.there.Visible() {
		t.Error("the last words lead on")
	}
	test.Tap(w.lead.leave)
	if w.lead.strip.Visible() {
		t.Error("the strip stays when it is done")
	}
	next := w.window(w.open(w.Order(), "", true), draftAt)
	next.takeFirstSteps()
	if next.lead.strip.Visible() {
		t.Error("the steps come again by themselves")
	}
	w.takeSteps()
	tells("1 of 3")
}

func TestTheFirstStepsCanBeLeft(t *testing.T) {
	w := newcomer(t)
	before := w.board.Size().Height
	test.Tap(w.lead.leave)
	if w.lead.strip.Visible() || !w.app.Preferences().Bool(stepsKey) {
		t.Error("the steps were left and stay")
	}
	if after := w.board.Size().Height; after <= before {
		t.Errorf("the surface is %.0f high, as it was under the strip: %.0f", after, before)
	}
}
