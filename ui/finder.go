package ui

import (
	"strings"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/dialog"
	"fyne.io/fyne/v2/layout"
	"fyne.io/fyne/v2/widget"
)

// A finder is a field that lists the commands of the table as they are asked for
// by a few letters. Up and Down go through the list, Enter does the one that is
// marked, Escape leaves.
type finder struct {
	widget.Entry
	w      *Window
	found  []command
	marked int
	list   *widget.List
	leave  func()
}

// findCommand opens the finder.
func (w *Window) findCommand() {
	f := &finder{w: w}
	f.ExtendBaseWidget(f)
	f.PlaceHolder = say("A word of the command")
	f.list = widget.NewList(func() int { return len(f.found) }, f.blank, f.fill)
	f.list.OnSelected = func(i widget.ListItemID) { f.marked = i }
	f.OnChanged = func(string) { f.look() }
	f.OnSubmitted = func(string) { f.do() }
	strut := container.NewGridWrap(fyne.NewSize(620, 380), f.list)
	d := dialog.NewCustomWithoutButtons(say("Find a Command"), container.NewBorder(f, nil, nil, nil, strut), w.win)
	d.SetButtons([]fyne.CanvasObject{
		widget.NewButton(say("Cancel"), d.Hide),
		&widget.Button{Text: say("Do It"), Importance: widget.HighImportance, OnTapped: f.do},
	})
	f.leave = d.Hide
	d.Show()
	f.look()
	w.win.Canvas().Focus(f)
}

// look lists what goes with the letters in the field.
func (f *finder) look() {
	f.found = commandsLike(f.w, f.Text)
	f.list.UnselectAll()
	f.marked = 0
	if len(f.found) > 0 {
		f.list.Select(0)
		f.list.ScrollToTop()
	}
	f.list.Refresh()
}

// do leaves and does the marked command; one that can't be done now stays listed
// and says so.
func (f *finder) do() {
	if f.marked >= len(f.found) {
		return
	}
	c := f.found[f.marked]
	if c.when != nil && !c.when(f.w) {
		f.w.Say(say("%s: this can't be done here and now.", c.name(f.w)))
		return
	}
	f.leave()
	f.w.win.Canvas().Focus(f.w.board)
	f.w.run(c)
}

// TypedKey moves the mark by the arrows; the rest is the field's.
func (f *finder) TypedKey(e *fyne.KeyEvent) {
	switch e.Name {
	case fyne.KeyDown:
		f.list.Select(min(f.marked+1, max(len(f.found)-1, 0)))
	case fyne.KeyUp:
		f.list.Select(max(f.marked-1, 0))
	case fyne.KeyEscape:
		f.leave()
	default:
		f.Entry.TypedKey(e)
	}
}

func (f *finder) blank() fyne.CanvasObject {
	keys := quietLabel()
	keys.Wrapping = fyne.TextWrapOff
	return container.NewHBox(widget.NewLabel(""), layout.NewSpacer(), keys)
}

func (f *finder) fill(i widget.ListItemID, o fyne.CanvasObject) {
	row, c := o.(*fyne.Container).Objects, f.found[i]
	name, keys := row[0].(*widget.Label), row[2].(*widget.Label)
	name.Importance = widget.MediumImportance
	if c.when != nil && !c.when(f.w) {
		name.Importance = widget.LowImportance
	}
	name.SetText(say(c.menu) + "  ›  " + c.name(f.w))
	keys.SetText(strings.Join(keyNames(c), "  ·  "))
}

// commandsLike returns the commands that hold every word of the text, those that
// begin with it first; all of them for no text.
func commandsLike(w *Window, text string) []command {
	words := strings.Fields(strings.ToLower(text))
	var first, rest []command
	for _, c := range commands() {
		name := strings.ToLower(c.name(w))
		full := strings.ToLower(say(c.menu)) + " " + name
		if !holdsAll(full, words) {
			continue
		}
		if len(words) > 0 && strings.HasPrefix(name, words[0]) {
			first = append(first, c)
		} else {
			rest = append(rest, c)
		}
	}
	return append(first, rest...)
}

func holdsAll(text string, words []string) bool {
	for _, word := range words {
		if !strings.Contains(text, word) {
			return false
		}
	}
	return true
}
