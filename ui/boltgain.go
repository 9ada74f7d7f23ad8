package ui

import (
	"slices"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/layout"
	"fyne.io/fyne/v2/widget"

	"tsugime/repeat/check"
	"tsugime/repeat/cloth"
	"tsugime/repeat/document"
	"tsugime/repeat/geom"
)

// advice is what each remedy against drift gains, the most first.
func (s *boltStation) advice() []fyne.CanvasObject {
	if !s.w.Ready() {
		return nil
	}
	rows := []fyne.CanvasObject{inRows([]fyne.CanvasObject{small("Lay Ten Thousand Bolts", s.w.layManyBolts)})}
	gains := slices.DeleteFunc(cloth.Gains(s.w.work.Run), func(g cloth.Gain) bool { return g.Total() < worthIt })
	if len(gains) == 0 {
		return rows
	}
	rows = append(rows, widget.NewSeparator(), head("What Helps"))
	list := container.New(layout.NewCustomPaddedVBoxLayout(0))
	for _, g := range gains {
		value := widget.NewLabel(s.w.unit().Format(g.Total(), 2))
		value.Alignment = fyne.TextAlignTrailing
		list.Add(container.New(&ledger{}, s.offer(g), value))
	}
	words := widget.NewLabel(say("By how much the worst joint and the walk at the end get better together."))
	words.Wrapping, words.Importance = fyne.TextWrapWord, widget.LowImportance
	return append(rows, list, words)
}

// worthIt is the least gain that is listed.
const worthIt = 10 * geom.Micrometre

// offer is a remedy as a button where it is an edit of the order, else as words.
func (s *boltStation) offer(g cloth.Gain) fyne.CanvasObject {
	if document.Takeable(g.Remedy) {
		return widget.NewButton(say(gainName(g)), func() { s.w.takeRemedy(g) })
	}
	l := widget.NewLabel(say(gainName(g)))
	if g.Remedy == cloth.LongerBaseline {
		l.SetText(l.Text + " " + s.w.unit().Format(g.Baseline, 0))
	}
	return l
}

// gainName is a remedy in a few words: a command where it can be taken.
func gainName(g cloth.Gain) string {
	switch g.Remedy {
	case cloth.UseEdgeLine:
		return "Lay to an Edge Line"
	case cloth.UseMarkedLine:
		return "Lay to a Marked Line"
	case cloth.LayEveryOther:
		return "Lay Every Other First"
	case cloth.DampSheet:
		return "Keep the Sheet Damp"
	case cloth.LongerBaseline:
		return "stars apart by"
	case cloth.LongerStep:
		return "a sheet of two steps"
	case cloth.CarefulStars:
		return "stars half as far off"
	case cloth.TrueStep:
		return "the step cut true"
	}
	return g.Text()
}

// takeRemedy has the bolt laid by a remedy, as one edit.
func (w *Window) takeRemedy(g cloth.Gain) {
	w.Edit(gainName(g), func(o document.Order) (document.Order, error) { return document.TakeRemedy(o, g.Remedy) })
}

// bestEdit is the remedy that is an edit, is worth it and gains most, by a measure.
func (w *Window) bestEdit(by func(cloth.Gain) geom.Length) (cloth.Gain, bool) {
	var edits []cloth.Gain
	for _, g := range cloth.Gains(w.work.Run) {
		if document.Takeable(g.Remedy) && by(g) >= worthIt {
			edits = append(edits, g)
		}
	}
	return cloth.Best(edits, by)
}

// driftRemedies are what mends a finding about drift.
func (w *Window) driftRemedies(f check.Finding) []remedy {
	by := cloth.Gain.Joint
	switch f.Code {
	case "drift-joint":
	case "drift-walk":
		by = cloth.Gain.End
	default:
		return nil
	}
	g, ok := w.bestEdit(by)
	if !ok {
		return nil
	}
	return []remedy{{named(gainName(g)), nil, func(w *Window) { w.takeRemedy(g) }}}
}
