package ui

import (
	"slices"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/driver/desktop"

	"tsugime/repeat/pattern"
)

// penCommands are those of drawing a motif.
func penCommands() []command {
	table := []command{
		{"Draw", named("Place a Motif by Each Click"), keys(key(fyne.KeyW, 0)), placing, func(w *Window) {
			c := w.stations[draftAt].(*draft).places
			c.SetChecked(!c.Checked)
		}},
		{"Draw", named("Take the Lattice by a Vector"), keys(key(fyne.KeyK, 0)), placing, func(w *Window) { w.stations[draftAt].(*draft).lattice.takeNext() }},
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
		table = append(table, command{"Draw", func(*Window) string { return say("Draw: %s", say(drawNames[k.kind])) }, keys(k.key), drawing,
			func(w *Window) { w.penHand().panel.kinds.SetSelectedIndex(int(k.kind)) }})
	}
	return slices.Concat(table, shapeCommands(), arrangeCommands())
}

// arrangeCommands lay out the chosen motifs.
func arrangeCommands() []command {
	return []command{
		{"Edit", named("Choose All of Its Kind"), keys(key(fyne.KeyA, ctrl|shift)), drafting, (*Window).chooseAlike},
		{"Edit", named("Duplicate"), keys(key(fyne.KeyD, ctrl)), arranging, (*Window).duplicate},
		{"Edit", named("Turn by 15°"), keys(key(fyne.KeyR, 0)), arranging, func(w *Window) { w.turnChosen(15) }},
		{"Edit", named("Turn Back by 15°"), keys(key(fyne.KeyE, 0)), arranging, func(w *Window) { w.turnChosen(-15) }},
		{"Edit", named("Mirror"), keys(key(fyne.KeyH, 0)), arranging, (*Window).mirrorChosen},
		{"Edit", named("Lay in a Row"), keys(key(fyne.KeyR, alt)), arranging, inLine(pattern.Row)},
		{"Edit", named("Lay in a Column"), keys(key(fyne.KeyK, alt)), arranging, inLine(pattern.Column)},
		{"Edit", named("Spread Evenly Across"), keys(key(fyne.KeyR, alt|shift)), arranging, spread(pattern.Row)},
		{"Edit", named("Spread Evenly Along"), keys(key(fyne.KeyK, alt|shift)), arranging, spread(pattern.Column)},
		{"Edit", named("Join the Motifs into One"), keys(key(fyne.KeyJ, 0)), arranging, (*Window).joinMotifs},
		{"Edit", named("Part the Motif into Its Pieces"), keys(key(fyne.KeyJ, shift)), arranging, (*Window).partMotif},
	}
}

// arranging reports whether motifs are chosen that can be laid out.
func arranging(w *Window) bool { return drafting(w) && w.craft() == nil && len(w.chosen) > 0 }

// shapeCommands are those of shaping an outline.
func shapeCommands() []command {
	do := func(f func(h *shapeHand)) func(w *Window) {
		return func(w *Window) { f(w.stations[draftAt].(*draft).shape) }
	}
	return []command{
		{"Draw", named("Shape the Chosen Motif's Outline"), keys(key(fyne.KeyO, 0)), drafting, func(w *Window) { w.stations[draftAt].(*draft).turnShaping() }},
		{"Draw", named("Turn Dots into Outlines"), keys(key(fyne.KeyO, shift)), drafting, func(w *Window) { w.stations[draftAt].(*draft).outlineDots() }},
		{"Draw", named("The Next Node"), keys(key(fyne.KeyPeriod, 0)), shaping, do(func(h *shapeHand) { h.chooseNext(1) })},
		{"Draw", named("The Node Before"), keys(key(fyne.KeyComma, 0)), shaping, do(func(h *shapeHand) { h.chooseNext(-1) })},
		{"Draw", named("Insert a Node"), keys(key(fyne.KeyI, 0)), shaping, do((*shapeHand).insert)},
		{"Draw", named("Corner or Smooth"), keys(key(fyne.KeyB, 0)), shaping, do((*shapeHand).turnCorner)},
		{"Draw", named("Make the Piece Straight"), keys(key(fyne.KeyL, alt)), shaping, do(func(h *shapeHand) { h.turnPiece(lines) })},
		{"Draw", named("Make the Piece an Arc"), keys(key(fyne.KeyA, alt)), shaping, do(func(h *shapeHand) { h.turnPiece(arcs) })},
		{"Draw", named("Make the Piece a Curve"), keys(key(fyne.KeyC, alt)), shaping, do(func(h *shapeHand) { h.turnPiece(curves) })},
		{"Draw", named("Part the Line and Draw On"), keys(key(fyne.KeyX, 0)), shaping, do((*shapeHand).drawOn)},
	}
}

func shaping(w *Window) bool {
	_, ok := w.craft().(*shapeHand)
	return ok
}

// drafting and the rest say when a command can be done.
func drawing(w *Window) bool  { return w.craft() == craft(w.penHand()) }
func crafting(w *Window) bool { return w.craft() != nil }

// placing reports whether a click could place a motif.
func placing(w *Window) bool { return drafting(w) && w.craft() == nil }

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
	switch {
	case drawing(w) && d.begun:
		w.Say(say("The line is not done: Return puts the motif, Escape drops the line."))
		return
	case drawing(w):
		d.s.begin(nil)
		return
	}
	d.s.begin(d)
}
