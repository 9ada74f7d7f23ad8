package ui

import (
	"image/color"
	"testing"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/canvas"
	"fyne.io/fyne/v2/test"
	"fyne.io/fyne/v2/theme"
)

// groundOfBar is the colour of the bar of stations beside the last one.
func groundOfBar(w *Window) color.Color { return w.win.Canvas().Capture().At(1300, 12) }

func sameColour(a, b color.Color) bool {
	r, g, x, _ := a.RGBA()
	s, h, y, _ := b.RGBA()
	return r == s && g == h && x == y
}

// The look is switched in the window that stands open, kept, and switched back.
func TestTheLookIsSwitchedAtOnceAndKept(t *testing.T) {
	w := onBench(t, "small-dot")
	for _, c := range []struct {
		look look
		want *palette
	}{{lamp, &byLamp}, {daylight, &byDay}, {lamp, &byLamp}, {asSystem, &byDay}} {
		w.Look(c.look)
		settle(t, w)
		if worn() != c.want || lookOf(w.app.Preferences()) != c.look {
			t.Errorf("%s: the window wears the other look, or %s is kept", c.look, lookOf(w.app.Preferences()))
		}
		if got := groundOfBar(w); !sameColour(got, c.want.card) {
			t.Errorf("%s: the bar shows %v, want %v", c.look, got, c.want.card)
		}
		if got := w.stations[w.at].scene().Areas[0].Shut; got != c.want.tannin {
			t.Errorf("%s: the paper is %v, want %v", c.look, got, c.want.tannin)
		}
	}
}

// No text of the window keeps a colour of the look before.
func TestNothingKeepsTheOtherLook(t *testing.T) {
	w := onBench(t, "leaf")
	t.Cleanup(func() { inUse.Store(&byDay) })
	w.Look(lamp)
	settle(t, w)
	for i, name := range stationNames {
		w.GoTo(i)
		for _, o := range test.LaidOutObjects(w.win.Content()) {
			c := color.Color(nil)
			switch o := o.(type) {
			case *canvas.Text:
				c = o.Color
			case *canvas.Rectangle:
				c = o.FillColor
			}
			for _, day := range []color.RGBA{byDay.ink, byDay.faint, byDay.card, byDay.field, byDay.table, byDay.rule, byDay.shield, byDay.fault} {
				if c != nil && o.Visible() && sameColour(c, day) {
					t.Errorf("%s: %T %v still has the colour %v of the day", name, o, o, day)
				}
			}
		}
	}
}

func TestTheWindowFollowsTheSystemUnlessALookIsChosen(t *testing.T) {
	w := onBench(t, "small-dot")
	asks := func(dark bool) {
		w.systemIsDark = dark
		w.follow()
	}
	asks(true)
	if worn() != &byLamp {
		t.Error("the system asks for dark windows, and this one is light")
	}
	asks(false)
	if worn() != &byDay {
		t.Error("the system asks for light windows, and this one is dark")
	}
	w.Look(daylight)
	asks(true)
	if worn() != &byDay {
		t.Error("the look that was chosen did not stay")
	}
}

// While something is drawn or a dialog waits, the look waits too: the bench would be
// made anew under the hand.
func TestALookWaitsForTheHand(t *testing.T) {
	w := onBench(t, "small-dot")
	w.showKeys()
	w.systemIsDark = true
	w.refresh()
	if worn() != &byDay {
		t.Error("the look changed under a dialog")
	}
	w.typed(fyne.KeyEscape, 0)
	w.typed(fyne.KeyD, 0) // drawing begins
	if !w.drawing() {
		t.Fatal("nothing is being drawn")
	}
	w.refresh()
	if worn() != &byDay {
		t.Error("the look changed while something was drawn")
	}
	w.typed(fyne.KeyD, 0)
	if worn() != &byLamp {
		t.Error("the look did not change when the hand was free")
	}
}

func TestWhoAsksForDarkAtTheStart(t *testing.T) {
	none := func(string) string { return "" }
	dark := func(string) string { return "dark" }
	s := saysDark{test.NewTempApp(t).Settings()}
	for _, c := range []struct {
		system string
		env    func(string) string
		want   bool
	}{{"linux", none, false}, {"linux", dark, true}, {"darwin", none, true}, {"windows", none, true}} {
		if got := darkAtStart(s, c.system, c.env); got != c.want {
			t.Errorf("%s: dark is %v, want %v", c.system, got, c.want)
		}
	}
}

// saysDark are settings of a system that asks for dark windows.
type saysDark struct{ fyne.Settings }

func (saysDark) ThemeVariant() fyne.ThemeVariant { return theme.VariantDark }
