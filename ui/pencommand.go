package ui

import (
	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/driver/desktop"
)

// penCommands are those of drawing a motif.
func penCommands() []command {
	table := []command{
		{"Draw", drawName, keys(key(fyne.KeyD, 0)), drafting, (*Window).turnDrawing},
		{"Draw", named("Write the Next Place"), keys(key(fyne.KeyP, 0)), drawing, func(w *Window) { w.win.Canvas().Focus(w.penHand().panel.place) }},
		{"Draw", named("Finish"), keys(key(fyne.KeyReturn, 0), key(fyne.KeyEnter, 0)), crafting, func(w *Window) { w.craft().finish() }},
		{"Draw", named("Let the Motif Mirror Itself"), keys(key(fyne.KeyM, 0)), drawing, func(w *Window) {
			m := w.penHand().panel.mirror
			m.SetChecked(!m.Checked)
		}},
		{"Draw", named("Let Places Snap"), keys(key(fyne.KeyG, 0)), drawing, func(w *Window) {
			s := w.penHand().panel.snaps
			s.SetChecked(!s.Checked)
		}},
	}
	for _, k := range []struct {
		key  *desktop.CustomShortcut
		kind drawKind
	}{
		{key(fyne.KeyL, 0), lines}, {key(fyne.KeyA, 0), arcs}, {key(fyne.KeyA, shift), onward}, {key(fyne.KeyC, 0), curves},
		{key(fyne.KeyC, shift), circle}, {key(fyne.KeyP, shift), polygon}, {key(fyne.KeyS, shift), star},
		{key(fyne.KeyL, shift), petal}, {key(fyne.KeyT, shift), slot}, {key(fyne.KeyR, shift), ring},
	} {
		table = append(table, command{"Draw", func(*Window) string { return say("Draw") + ": " + say(drawNames[k.kind]) }, keys(k.key), drawing,
			func(w *Window) { w.penHand().panel.kinds.SetSelectedIndex(int(k.kind)) }})
	}
	return table
}

// drafting and the rest say when a command can be done.
func drawing(w *Window) bool  { return w.craft() == craft(w.penHand()) }
func crafting(w *Window) bool { return w.craft() != nil }

func (w *Window) penHand() *penHand { return w.stations[draftAt].(*draft).pen }

func drawName(w *Window) string {
	if drawing(w) {
		return say("Stop Drawing")
	}
	return say("Draw a Motif")
}

// turnDrawing begins to draw, or stops.
func (w *Window) turnDrawing() {
	d := w.penHand()
	if drawing(w) {
		d.drop()
		d.s.begin(nil)
		return
	}
	d.s.begin(d)
}
