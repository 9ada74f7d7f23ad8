package ui

import (
	"regexp"
	"strings"
	"testing"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/canvas"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/test"
	"fyne.io/fyne/v2/widget"

	"tsugime/export/wording"
)

// shownTexts lists every text of a window: its menus, its widgets and what lies over
// them, and the labels of the scene that is shown.
func shownTexts(w *Window) []string {
	var all []string
	for _, menu := range w.win.MainMenu().Items {
		all = append(all, menu.Label)
		for _, item := range menu.Items {
			all = append(all, item.Label)
		}
	}
	var walk func(o fyne.CanvasObject)
	walk = func(o fyne.CanvasObject) {
		switch o := o.(type) {
		case *canvas.Text:
			all = append(all, o.Text)
		case *widget.Select:
			all = append(all, o.PlaceHolder)
			all = append(all, o.Options...)
		case *entry:
			all = append(all, o.PlaceHolder)
			return // what is in it is the person's own
		case *fyne.Container:
			for _, part := range o.Objects {
				walk(part)
			}
			return
		case *container.Scroll:
			walk(o.Content)
			return
		case *widget.RichText:
			all = append(all, o.String())
			return
		case *widget.Label:
			all = append(all, o.Text)
			return
		}
		if whole, ok := o.(fyne.Widget); ok {
			for _, part := range test.WidgetRenderer(whole).Objects() {
				walk(part)
			}
		}
	}
	walk(w.win.Content())
	for _, over := range w.win.Canvas().Overlays().List() {
		walk(over)
	}
	for _, l := range w.stations[w.at].scene().Labels {
		all = append(all, l.Text)
	}
	return all
}

// Words of Latin letters that stand in Japanese too: units, keys, names of files,
// codes of plane groups, and what is written the same in every language.
var latin = regexp.MustCompile(`\b(mm|cm|m|in|sun|bu|shaku|kane|kujira|rin|Ctrl|Alt|Shift|Delete|Escape|Return|Tsugime|English|mm²|cm²|by|at|` +
	`[ABLMTJN]\d?|[acp]\d?[gm]*\d?[gm]*|csv|pdf|svg|dxf|png|txt|plt|F\d+|BackSpace|KP_Enter|Insert|Left|Right|Up|Down)\b|[a-z0-9]+(-[a-z0-9]+)*\.[a-z0-9]+|A\d|B\d`)

// english returns what of a text is still English.
func english(text string) string {
	return strings.Join(regexp.MustCompile(`[A-Za-z]{2,}`).FindAllString(latin.ReplaceAllString(text, ""), -1), " ")
}

func TestEveryStationSpeaksJapanese(t *testing.T) {
	for _, starter := range []string{"small-dot", "leaf"} {
		w := onBench(t, starter)
		t.Cleanup(func() { speak(wording.English) })
		w.Speak(wording.Japanese)
		settle(t, w)
		for i := range w.stations {
			w.GoTo(i)
			seen := map[string]bool{}
			for _, text := range shownTexts(w) {
				if rest := english(text); rest != "" && !seen[text] && text != w.Order().Title && text != w.Order().Note && !strings.HasPrefix(text, "  cut.svg") {
					seen[text] = true
					t.Errorf("%s, %s: %q is still English: %s", starter, stationNames[i], text, rest)
				}
			}
		}
	}
}

func TestEveryDialogSpeaksJapanese(t *testing.T) {
	w := onBench(t, "small-dot")
	t.Cleanup(func() { speak(wording.English) })
	w.Speak(wording.Japanese)
	settle(t, w)
	// Dialogs that list files or keys show those under their own names.
	for name, open := range map[string]func(){
		"starters": w.chooseStarter, "commands": w.findCommand, "unit": func() { w.askUnit("x.svg") },
		"changes": func() { w.saved = 0; w.askThen("Close", func() {}); w.saved = 1 },
	} {
		open()
		top := w.win.Canvas().Overlays().Top()
		if top == nil {
			t.Errorf("%s: no dialog came", name)
			continue
		}
		seen := map[string]bool{}
		for _, text := range shownTexts(w) {
			if rest := english(text); rest != "" && !seen[text] && text != w.Order().Title {
				seen[text] = true
				t.Errorf("%s: %q is still English: %s", name, text, rest)
			}
		}
		top.Hide()
		w.win.Canvas().Overlays().Remove(top)
	}
}

// The language is switched in the window that stands open, and back.
func TestTheLanguageIsSwitchedAtOnce(t *testing.T) {
	w := onBench(t, "small-dot")
	t.Cleanup(func() { speak(wording.English) })
	before := strings.Join(shownTexts(w), "\n")
	order := written(t, w.Order())
	w.GoTo(stencilAt)
	w.Speak(wording.Japanese)
	if w.at != stencilAt || w.win.MainMenu().Items[0].Label != "誂え" {
		t.Errorf("at station %d the first menu is %q", w.at, w.win.MainMenu().Items[0].Label)
	}
	if got := w.app.Preferences().String(languageKey); got != "ja" {
		t.Errorf("the preferences keep %q", got)
	}
	w.Speak(wording.English)
	w.GoTo(draftAt)
	for _, text := range shownTexts(w) {
		if english(text) != "" && !strings.Contains(before, text) {
			t.Errorf("there and back the window reads %q, which it did not", text)
		}
	}
	if written(t, w.Order()) != order || w.Changed() {
		t.Error("the language has changed the order")
	}
}
