package ui

import (
	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/canvas"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/layout"
	"fyne.io/fyne/v2/widget"
)

// stepsKey is where the preferences keep that the first steps were gone or left.
const stepsKey = "first-steps"

// A firstStep is something to do at a station, and when it is done.
type firstStep struct {
	at    int // the station
	title string
	words string
	done  func(w *Window, began int) bool
}

// firstSteps lead from a dot to the sheets: the work itself teaches them.
var firstSteps = []firstStep{
	{draftAt, "1 of 3 · Draft", "Take a dot with the pointer and move it, or click on it and press an arrow key: every copy follows, over the joint too. Undo takes it back.",
		func(w *Window, began int) bool { return w.history.Now().number > began }},
	{garmentAt, "2 of 3 · Garment", "See the pattern over the whole width of a garment: where the placements join, and what meets at its seams.",
		func(w *Window, _ int) bool { return w.at == garmentAt }},
	{sheetsAt, "3 of 3 · Sheets", "Here are the sheets for binding and transfer, at true scale. Print them, or write the whole job folder.",
		func(w *Window, _ int) bool { return w.at == sheetsAt }},
	{sheetsAt, "From a dot to the sheets", "That is the whole way. The line of stations counts what was found at each; Help has these steps again, and every command by its name.",
		func(*Window, int) bool { return false }},
}

// A lead is the strip that tells the first steps one after another, over the surface
// and out of the hand's way.
type lead struct {
	step  int // the one that is told; -1 for none
	began int // the number of the state when the steps began

	strip *fyne.Container
	title *canvas.Text
	words *widget.Label
	there *widget.Button
	leave *widget.Button
}

// furnishLead makes the strip, in the language of the person.
func (w *Window) furnishLead() fyne.CanvasObject {
	l := &w.lead
	l.title, l.words = canvas.NewText("", worn().vat), widget.NewLabel("")
	l.title.TextStyle.Bold = true
	l.words.Wrapping = fyne.TextWrapWord
	l.there = widget.NewButton(say("Go There"), func() { w.GoTo(firstSteps[max(l.step, 0)].at) })
	l.leave = widget.NewButton(say("Leave the Steps"), w.leaveSteps)
	title := container.New(layout.NewCustomPaddedLayout(0, 0, 34, 0), container.NewCenter(l.title))
	hands := container.NewCenter(container.NewHBox(l.there, l.leave))
	l.strip = container.NewVBox(container.NewBorder(nil, nil, title, hands, l.words), widget.NewSeparator())
	w.tellStep()
	return l.strip
}

// takeSteps begins with the first step.
func (w *Window) takeSteps() {
	w.lead.step, w.lead.began = 0, w.history.Now().number
	w.GoTo(draftAt)
	w.tellStep()
}

// takeFirstSteps begins with them where they were never gone nor left.
func (w *Window) takeFirstSteps() {
	if w.app.Preferences().Bool(stepsKey) || w.path != "" {
		return
	}
	w.lead.step, w.lead.began = 0, w.history.Now().number
	w.tellStep()
}

// leaveSteps ends them for good; Help has them again.
func (w *Window) leaveSteps() {
	w.lead.step = -1
	w.app.Preferences().SetBool(stepsKey, true)
	w.tellStep()
	w.win.Canvas().Focus(w.board)
}

// step goes on to the next step where the one that is told is done.
func (w *Window) step() {
	l := &w.lead
	if l.step < 0 || !firstSteps[l.step].done(w, l.began) {
		return
	}
	if l.step++; l.step == len(firstSteps)-1 {
		w.app.Preferences().SetBool(stepsKey, true)
	}
	w.tellStep()
}

// tellStep shows the step in the strip, or none.
func (w *Window) tellStep() {
	l := &w.lead
	if all := w.win.Content(); all != nil && l.strip.Visible() != (l.step >= 0) {
		defer all.Refresh() // what is around the strip takes its room, or gives it
	}
	if l.step < 0 {
		l.strip.Hide()
		return
	}
	s := firstSteps[l.step]
	l.title.Text = say(s.title)
	l.title.Refresh()
	l.words.SetText(say(s.words))
	if l.step == len(firstSteps)-1 {
		l.there.Hide()
		l.leave.SetText(say("Done"))
	}
	l.strip.Show()
}
