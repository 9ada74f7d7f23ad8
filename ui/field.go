package ui

import (
	"strconv"
	"strings"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/canvas"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/layout"
	"fyne.io/fyne/v2/widget"

	"tsugime/repeat/document"
	"tsugime/repeat/geom"
)

// An entry is a line to write in that gives its text on Return and when it is
// left.
type entry struct {
	widget.Entry
	give  func(text string)
	given string
}

func newEntry(give func(text string)) *entry {
	e := &entry{give: give}
	e.ExtendBaseWidget(e)
	e.OnSubmitted = func(string) { e.hand() }
	return e
}

func (e *entry) hand() {
	if e.Text != e.given {
		e.given = e.Text
		e.give(e.Text)
	}
}

// FocusLost gives what was written.
func (e *entry) FocusLost() {
	e.Entry.FocusLost()
	e.hand()
}

// put shows a text that is no edit.
func (e *entry) put(text string) {
	e.given = text
	if e.Text != text {
		e.SetText(text)
	}
}

// A form is the fields of a bench, each with how to show the present order.
type form struct {
	w       *Window
	rows    []fyne.CanvasObject
	showing []func(o document.Order)
}

func (f *form) refresh() {
	for _, show := range f.showing {
		show(f.w.Order())
	}
}

func (f *form) content() fyne.CanvasObject {
	return container.New(layout.NewCustomPaddedVBoxLayout(3), f.rows...)
}

// A pair lays a name at the left and what is set at the right.
type pair struct{}

// nameShare is how much of a row the name gets.
const nameShare = 0.56

// Layout is called by Fyne.
func (pair) Layout(o []fyne.CanvasObject, size fyne.Size) {
	name := size.Width * nameShare
	o[0].Move(fyne.NewPos(0, 0))
	o[0].Resize(fyne.NewSize(name, size.Height))
	o[1].Move(fyne.NewPos(name, 0))
	o[1].Resize(fyne.NewSize(size.Width-name, size.Height))
}

// MinSize is called by Fyne.
func (pair) MinSize(o []fyne.CanvasObject) fyne.Size {
	a, b := o[0].MinSize(), o[1].MinSize()
	return fyne.NewSize(a.Width+b.Width, max(a.Height, b.Height))
}

// heading begins a group.
func (f *form) heading(text string) {
	t := canvas.NewText(say(text), worn().ink)
	t.TextStyle.Bold, t.TextSize = true, 14
	if len(f.rows) > 0 {
		gap := canvas.NewRectangle(worn().card)
		gap.SetMinSize(fyne.NewSize(1, 6))
		f.rows = append(f.rows, gap)
	}
	f.rows = append(f.rows, t)
}

// words explains something in a quiet voice.
func (f *form) words(text string) {
	l := widget.NewLabel(say(text))
	l.Wrapping = fyne.TextWrapWord
	l.Importance = widget.LowImportance
	f.rows = append(f.rows, l)
}

// row puts a name before something to set.
func (f *form) row(name string, o fyne.CanvasObject) {
	label := widget.NewLabel(say(name))
	label.Truncation = fyne.TextTruncateEllipsis
	f.rows = append(f.rows, container.New(pair{}, label, o))
}

// button does something now.
func (f *form) button(name string, do func()) { f.add(widget.NewButton(say(name), do)) }

func (f *form) add(o fyne.CanvasObject) { f.rows = append(f.rows, o) }

// length is a field for a length, shown in the unit that was chosen or else in mm or, where
// the order asks for sun, in sun of the family; any unit can be written.
func (f *form) length(name, edit string, family geom.Unit, get func(document.Order) geom.Length, set func(document.Order, geom.Length) (document.Order, error)) *entry {
	unit := func() geom.Unit {
		if u, ok := f.w.chosenUnit(); ok {
			return u
		}
		if f.w.unit() == geom.MMUnit {
			return geom.MMUnit
		}
		return family
	}
	var e *entry
	e = newEntry(func(text string) {
		l, err := geom.ParseLength(text, unit())
		if err != nil {
			f.w.Say(sentence(err))
			e.put(unit().Format(get(f.w.Order()), 6))
			return
		}
		f.w.Edit(edit, func(o document.Order) (document.Order, error) { return set(o, l) })
	})
	f.row(name, e)
	f.showing = append(f.showing, func(o document.Order) { e.put(unit().Format(get(o), 4)) })
	return e
}

// folded is a group that is opened by its name: fields that are seldom changed.
func (f *form) folded(name string, fields func(f *form)) {
	inner := &form{w: f.w}
	fields(inner)
	f.add(widget.NewAccordion(widget.NewAccordionItem(say(name), inner.content())))
	f.showing = append(f.showing, inner.showing...)
}

// text is a field for words.
func (f *form) text(name, edit string, get func(document.Order) string, set func(document.Order, string) (document.Order, error)) {
	e := newEntry(func(text string) {
		f.w.Edit(edit, func(o document.Order) (document.Order, error) { return set(o, text) })
	})
	f.add(widget.NewLabel(say(name)))
	f.add(e)
	f.showing = append(f.showing, func(o document.Order) { e.put(get(o)) })
}

// number is a field for a count or a share, with a unit behind it.
func (f *form) number(name, edit, unit string, get func(document.Order) float64, set func(document.Order, float64) (document.Order, error)) {
	show := func(o document.Order) string {
		return strings.TrimSpace(strconv.FormatFloat(get(o), 'g', 6, 64) + " " + say(unit))
	}
	var e *entry
	e = newEntry(func(text string) {
		text = strings.ReplaceAll(strings.TrimSpace(strings.TrimSuffix(strings.TrimSpace(text), say(unit))), ",", ".")
		v, err := strconv.ParseFloat(text, 64)
		if err != nil {
			f.w.Say(say("%q is no number.", text))
			e.put(show(f.w.Order()))
			return
		}
		f.w.Edit(edit, func(o document.Order) (document.Order, error) { return set(o, v) })
	})
	f.row(name, e)
	f.showing = append(f.showing, func(o document.Order) { e.put(show(o)) })
}

// allSaid returns texts in the language of the person.
func allSaid(texts []string) []string {
	said := make([]string, len(texts))
	for i, text := range texts {
		said[i] = say(text)
	}
	return said
}

// newSelect is a list to pick one of, in the language of the person.
func newSelect(options []string, picked func(string)) *widget.Select {
	s := widget.NewSelect(options, picked)
	s.PlaceHolder = say("pick one")
	return s
}

// choice is one of a few words, by their English text.
func (f *form) choice(name, edit string, options []string, get func(document.Order) string, set func(document.Order, string) (document.Order, error)) {
	s := newSelect(allSaid(options), nil)
	f.row(name, s)
	f.showing = append(f.showing, func(o document.Order) {
		s.OnChanged = nil
		s.SetSelected(say(get(o)))
		s.OnChanged = func(string) {
			if v := options[s.SelectedIndex()]; v != get(f.w.Order()) {
				f.w.Edit(edit, func(o document.Order) (document.Order, error) { return set(o, v) })
			}
		}
	})
}

// tick is yes or no.
func (f *form) tick(name, edit string, get func(document.Order) bool, set func(document.Order, bool) (document.Order, error)) {
	c := widget.NewCheck(say(name), nil)
	f.add(c)
	f.showing = append(f.showing, func(o document.Order) {
		c.OnChanged = nil
		c.SetChecked(get(o))
		c.OnChanged = func(v bool) {
			f.w.Edit(edit, func(o document.Order) (document.Order, error) { return set(o, v) })
		}
	})
}
