package ui

import (
	"os"
	"strings"
	"sync"
	"sync/atomic"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/driver/desktop"

	"tsugime/export/wording"
)

// languageKey is where the preferences keep the language.
const languageKey = "language"

// spoken is the language that the windows of the program speak; nil for English.
// Work in the background words its results too.
var spoken atomic.Pointer[wording.Language]

func speaks() wording.Language {
	if l := spoken.Load(); l != nil {
		return *l
	}
	return wording.English
}

// say returns a text of the window in the language of the person, its places
// filled. Every word that is shown passes here or through told; the English text
// is its own key.
func say(text string, places ...any) string {
	if len(places) == 0 && !speaks().Knows(text) {
		return told(text)
	}
	return speaks().Say(text, places...)
}

// told returns what was worded in English elsewhere, where no language is known: a
// finding, an error, the title of a starter.
func told(text string) string { return speaks().Retell(text) }

// counted writes a number with what is counted: the words for one, and for many.
func counted(n int, one, many string) string {
	if n == 1 {
		return say("1 " + one)
	}
	return say("%d "+many, n)
}

// languageOf is the language that was chosen last, or else the system's.
func languageOf(p fyne.Preferences) wording.Language {
	if l, err := wording.Named(p.String(languageKey)); err == nil && p.String(languageKey) != "" {
		return l
	}
	return ofSystem()
}

// ofSystem is the system's language as the program was started with it.
var ofSystem = sync.OnceValue(func() wording.Language { return systemLanguage(os.Getenv) })

// systemLanguage is what the locale asks for: POSIX 1-2017, 8.2, where LC_ALL wins
// over LC_MESSAGES and that over LANG; GNU's LANGUAGE wins over a locale that isn't
// C. A language that the window lacks is English.
func systemLanguage(env func(string) string) wording.Language {
	locale := ""
	for _, name := range []string{"LC_ALL", "LC_MESSAGES", "LANG"} {
		if locale = env(name); locale != "" {
			break
		}
	}
	if bare, _, _ := strings.Cut(locale, "."); bare != "" && bare != "C" && bare != "POSIX" && env("LANGUAGE") != "" {
		locale = env("LANGUAGE")
	}
	first, _, _ := strings.Cut(locale, ":")
	if tag, _, _ := strings.Cut(strings.ToLower(first)+"_", "_"); strings.TrimSuffix(tag, ".utf-8") == string(wording.Japanese) {
		return wording.Japanese
	}
	return wording.English
}

// speak lets the windows speak a language from now on, Fyne's own dialogs too.
func speak(l wording.Language) {
	spoken.Store(&l)
	sayInDialogs()
}

// languageName is a language as those who speak it call it.
var languageName = map[wording.Language]string{wording.English: "English", wording.Japanese: "日本語"}

// languageKeys choose a language.
var languageKeys = map[wording.Language][]*desktop.CustomShortcut{
	wording.English:  keys(key(fyne.KeyE, ctrl|alt)),
	wording.Japanese: keys(key(fyne.KeyJ, ctrl|alt)),
}

// languageCommands let the language be chosen, while nothing is being drawn: its
// bench would be made anew.
func languageCommands() []command {
	var table []command
	for _, l := range wording.Languages() {
		free := func(w *Window) bool { return speaks() != l && !w.drawing() }
		table = append(table, command{"View", func(*Window) string { return languageName[l] }, languageKeys[l], free, func(w *Window) { w.Speak(l) }})
	}
	return table
}

// Speak shows every window in a language, at once and whenever one opens again.
func (w *Window) Speak(l wording.Language) {
	w.app.Preferences().SetString(languageKey, string(l))
	speak(l)
	w.each(func(w *Window) {
		w.refurnish()
		w.Say("")
	})
}

// refurnish makes all that stands in the window anew.
func (w *Window) refurnish() {
	w.furnish()
	w.title()
	w.GoTo(w.at)
}
