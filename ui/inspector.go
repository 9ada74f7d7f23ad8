package ui

import (
	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/canvas"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/layout"
	"fyne.io/fyne/v2/widget"

	"tsugime/repeat/check"
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
		if m.value == "" {
			group := canvas.NewText(say(m.name), worn().faint)
			group.TextStyle.Bold, group.TextSize = true, 12.5
			ledgers.Add(container.New(layout.NewCustomPaddedLayout(14, 8, 8, 0), group))
			continue
		}
		name := widget.NewLabel(say(m.name))
		name.Importance = widget.LowImportance
		value := widget.NewLabel(m.value)
		value.Alignment = fyne.TextAlignTrailing
		ledgers.Add(container.New(&ledger{}, name, value))
	}
	rows := []fyne.CanvasObject{head("Measured"), ledgers}
	if a, ok := s.(adviser); ok {
		rows = append(rows, a.advice()...)
	}
	rows = append(rows, widget.NewSeparator(), head("Found"))
	count := 0
	for _, severity := range []check.Severity{check.Fault, check.Warning, check.Note} {
		for _, f := range n.w.findings() {
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
	t := canvas.NewText(say(text), worn().ink)
	t.TextStyle.Bold, t.TextSize = true, 14
	return container.NewPadded(t)
}

// card is a finding: its shape and word, what is wrong, what to do, and the
// remedy as a command where there is one.
func (n *inspector) card(s station, f check.Finding) fyne.CanvasObject {
	word := canvas.NewText(severityShape(f.Severity)+" "+say(string(f.Severity)), worn().tone(f.Severity))
	word.TextStyle.Bold, word.TextSize = true, 13
	text := widget.NewLabel(told(f.Text))
	text.Wrapping = fyne.TextWrapWord
	remedy := widget.NewLabel(told(f.Remedy))
	remedy.Wrapping, remedy.Importance = fyne.TextWrapWord, widget.LowImportance
	buttons := []fyne.CanvasObject{small("Show the Place", func() { s.look(f) })}
	for _, r := range n.w.remediesOf(f) {
		buttons = append(buttons, small(r.name(n.w), func() { r.do(n.w) }))
	}
	edge := canvas.NewRectangle(worn().tone(f.Severity))
	edge.SetMinSize(fyne.NewSize(3, 1))
	ground := canvas.NewRectangle(worn().field)
	ground.CornerRadius = 3
	title := container.New(layout.NewCustomPaddedLayout(7, 0, 9, 0), word)
	body := container.New(layout.NewCustomPaddedVBoxLayout(-7), title, text, remedy, inRows(buttons))
	return container.NewStack(ground, container.NewBorder(nil, nil, edge, nil, body))
}

// cardWidth is how wide the buttons of a card may stand side by side.
const cardWidth = 276

// inRows lays buttons side by side, in as many rows as they need.
func inRows(buttons []fyne.CanvasObject) fyne.CanvasObject {
	rows := container.New(layout.NewCustomPaddedVBoxLayout(-4))
	var row *fyne.Container
	for _, b := range buttons {
		if row == nil || row.MinSize().Width+b.MinSize().Width > cardWidth {
			row = container.New(layout.NewCustomPaddedHBoxLayout(0))
			rows.Add(row)
		}
		row.Add(b)
	}
	return rows
}

func small(name string, do func()) *widget.Button {
	b := widget.NewButton(say(name), do)
	b.Importance = widget.LowImportance
	return b
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
