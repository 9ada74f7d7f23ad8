package ui

import (
	"fmt"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/canvas"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/layout"
	"fyne.io/fyne/v2/widget"

	"tsugime/repeat/check"
	"tsugime/repeat/document"
)

// An inspector is the panel at the right: what was measured at a station, and
// what was found there.
type inspector struct {
	w       *Window
	content *fyne.Container
}

func newInspector(w *Window) *inspector { return &inspector{w, container.NewVBox()} }

// show fills the panel for a station.
func (n *inspector) show(s station) {
	ledgers := container.New(layout.NewCustomPaddedVBoxLayout(-9))
	for _, m := range s.measures() {
		if m.name == "" {
			ledgers.Add(sentenceLabel(m.value))
			continue
		}
		name := widget.NewLabel(say(m.name))
		name.Importance = widget.LowImportance
		value := widget.NewLabel(m.value)
		value.Alignment = fyne.TextAlignTrailing
		ledgers.Add(container.New(&ledger{}, name, value))
	}
	rows := []fyne.CanvasObject{head("Measured"), ledgers, widget.NewSeparator(), head("Found")}
	count := 0
	for _, severity := range []check.Severity{check.Fault, check.Warning, check.Note} {
		for _, f := range n.w.work.Findings {
			if f.Severity == severity && s.owns(f) {
				rows = append(rows, n.card(s, f))
				count++
			}
		}
	}
	if count == 0 {
		quiet := widget.NewLabel(say("Nothing here needs a look."))
		quiet.Importance = widget.LowImportance
		rows = append(rows, quiet)
	}
	n.content.Objects = rows
	n.content.Refresh()
}

// sentenceLabel is words of any length.
func sentenceLabel(text string) fyne.CanvasObject {
	l := widget.NewLabel(text)
	l.Wrapping = fyne.TextWrapWord
	return l
}

func head(text string) fyne.CanvasObject {
	t := canvas.NewText(say(text), ink)
	t.TextStyle.Bold, t.TextSize = true, 14
	return container.NewPadded(t)
}

// card is a finding: its shape and word, what is wrong, what to do, and the
// remedy as a command where there is one.
func (n *inspector) card(s station, f check.Finding) fyne.CanvasObject {
	word := canvas.NewText(severityShape(f.Severity)+" "+say(string(f.Severity)), tone(f.Severity))
	word.TextStyle.Bold, word.TextSize = true, 13
	text := widget.NewLabel(f.Text)
	text.Wrapping = fyne.TextWrapWord
	remedy := widget.NewLabel(f.Remedy)
	remedy.Wrapping, remedy.Importance = fyne.TextWrapWord, widget.LowImportance
	buttons := container.NewHBox(small("Show the Place", func() { s.look(f) }))
	if r, ok := remedies[f.Code]; ok {
		buttons.Add(small(r.name, func() { n.w.Edit(r.name, r.edit) }))
	}
	edge := canvas.NewRectangle(tone(f.Severity))
	edge.SetMinSize(fyne.NewSize(3, 1))
	ground := canvas.NewRectangle(field)
	ground.CornerRadius = 3
	title := container.New(layout.NewCustomPaddedLayout(7, 0, 9, 0), word)
	body := container.New(layout.NewCustomPaddedVBoxLayout(-7), title, text, remedy, buttons)
	return container.NewStack(ground, container.NewBorder(nil, nil, edge, nil, body))
}

func small(name string, do func()) *widget.Button {
	b := widget.NewButton(say(name), do)
	b.Importance = widget.LowImportance
	return b
}

// A remedy is what can be done about a finding in one edit.
type remedy struct {
	name string
	edit func(document.Order) (document.Order, error)
}

// remedies are the findings that one edit can mend.
var remedies = map[string]remedy{
	"joint-step": {"Fit to the Step", func(o document.Order) (document.Order, error) {
		fits, err := o.Unit.Fits(o.Sheet.Step, 0)
		if err != nil {
			return o, err
		}
		if len(fits) == 0 {
			return o, fmt.Errorf("fit: no lattice vector lies near the step; change the pitch or the step")
		}
		return document.ApplyFit(o, fits[0])
	}},
	"star-turned": {"Three Stars an End", func(o document.Order) (document.Order, error) {
		stars := o.Sheet.Stars
		stars.PerEnd, stars.At = 3, nil
		return document.SetStars(o, stars)
	}},
	"back-centre-phase": {"Match the Back Centre", func(o document.Order) (document.Order, error) {
		g := o.Garment
		g.MatchBackCentre = true
		return document.SetGarment(o, g)
	}},
}

// A ledger lays a name at the left and its value at the right, the value as wide
// as the name leaves it.
type ledger struct{}

// Layout is called by Fyne.
func (l *ledger) Layout(o []fyne.CanvasObject, size fyne.Size) {
	name := o[0].MinSize().Width
	o[0].Resize(fyne.NewSize(name, size.Height))
	o[0].Move(fyne.NewPos(0, 0))
	o[1].Resize(fyne.NewSize(max(size.Width-name, 40), size.Height))
	o[1].Move(fyne.NewPos(name, 0))
}

// MinSize is called by Fyne.
func (l *ledger) MinSize(o []fyne.CanvasObject) fyne.Size {
	a, b := o[0].MinSize(), o[1].MinSize()
	return fyne.NewSize(a.Width+max(b.Width, 40), max(a.Height, b.Height))
}

// firstMend is the first finding of the station that one edit can mend.
func (w *Window) firstMend() (remedy, bool) {
	for _, f := range w.work.Findings {
		if r, ok := remedies[f.Code]; ok && w.stations[w.at].owns(f) {
			return r, true
		}
	}
	return remedy{}, false
}

func (w *Window) mendable() bool {
	_, ok := w.firstMend()
	return ok && w.Ready()
}

func (w *Window) mendFirst() {
	if r, ok := w.firstMend(); ok {
		w.Edit(r.name, r.edit)
	}
}
