package ui

import (
	"os"
	"runtime"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/driver/desktop"
	"fyne.io/fyne/v2/theme"
)

// lookKey is where the preferences keep the look.
const lookKey = "look"

// A look is what the person asked the window to look like.
type look string

// The looks; the preferences keep these words.
const (
	asSystem look = "as-system"
	daylight look = "by-day"
	lamp     look = "by-lamp"
)

// lookOf is the look that was chosen last; before any was, the window looks as the
// system does.
func lookOf(p fyne.Preferences) look {
	switch l := look(p.String(lookKey)); l {
	case daylight, lamp:
		return l
	}
	return asSystem
}

// palette is what a look means while the system asks for dark windows or doesn't.
func (l look) palette(systemIsDark bool) *palette {
	if l == lamp || l == asSystem && systemIsDark {
		return &byLamp
	}
	return &byDay
}

// darkTheme is what Fyne's variable FYNE_THEME says for dark windows.
const darkTheme = "dark"

// darkAtStart reports whether the system asks for dark windows as a window opens.
// Elsewhere than on macOS and Windows Fyne says dark until the system has answered,
// so there only what was asked for by Fyne's own variable is believed.
func darkAtStart(s fyne.Settings, system string, env func(string) string) bool {
	if system == "darwin" || system == "windows" {
		return s.ThemeVariant() == theme.VariantDark
	}
	return env("FYNE_THEME") == darkTheme
}

// dressFirst puts on the look of the first window, and follows the system from then on.
func (s *workshop) dressFirst() {
	set := s.app.Settings()
	s.systemIsDark = darkAtStart(set, runtime.GOOS, os.Getenv)
	s.wear(lookOf(s.app.Preferences()).palette(s.systemIsDark))
	set.AddListener(func(set fyne.Settings) {
		if !s.dressing {
			s.systemIsDark = set.ThemeVariant() == theme.VariantDark
			s.follow()
		}
	})
}

// wear puts a palette on Fyne's parts and on what is made from now on.
func (s *workshop) wear(p *palette) {
	s.dressing = true
	inUse.Store(p)
	s.dressed = p
	s.app.Settings().SetTheme(Theme{p})
	s.dressing = false
}

// follow puts on the look that is asked for, as soon as no dialog is open and nothing
// is being drawn in any window: each bench is made anew.
func (s *workshop) follow() {
	p := lookOf(s.app.Preferences()).palette(s.systemIsDark)
	if p == s.dressed || s.drawing() || s.asking() {
		return
	}
	s.wear(p)
	s.each(func(w *Window) {
		w.board.Wear(p.frame())
		w.refurnish()
	})
}

// asking reports whether a dialog is open in any window.
func (s *workshop) asking() bool {
	open := false
	s.each(func(w *Window) { open = open || w.win.Canvas().Overlays().Top() != nil })
	return open
}

// Look shows every window in a look, at once and whenever one opens again.
func (w *Window) Look(l look) {
	w.app.Preferences().SetString(lookKey, string(l))
	w.follow()
	w.each(func(w *Window) { w.win.SetMainMenu(w.mainMenu()) })
}

// lookCommands let the look be chosen.
func lookCommands() []command {
	var table []command
	for _, l := range []struct {
		look look
		name string
		key  *desktop.CustomShortcut
	}{
		{asSystem, "Look as the System Does", key(fyne.KeyY, ctrl|shift)},
		{daylight, "Look: by Day", key(fyne.KeyL, ctrl|shift)},
		{lamp, "Look: by Lamp Light", key(fyne.KeyD, ctrl|shift)},
	} {
		free := func(w *Window) bool { return lookOf(w.app.Preferences()) != l.look && !w.drawing() }
		table = append(table, command{"View", named(l.name), keys(l.key), free, func(w *Window) { w.Look(l.look) }})
	}
	return table
}
