package ui

import "fyne.io/fyne/v2"

// holdCommands are those of the stencil: what holds the paper, and the joint line.
func holdCommands() []command {
	draw := func(w *Window) string {
		if w.stencilStation().draws.Checked {
			return say("A Drag No Longer Draws a Tie")
		}
		return say("A Drag Draws a Tie")
	}
	joint := func(w *Window) string {
		if byHand(w.Order()) {
			return say("Let the Joint Line Be Chosen")
		}
		return say("Draw the Joint Line by Hand")
	}
	return []command{
		{"Edit", draw, keys(key(fyne.KeyT, 0)), stencilling, func(w *Window) {
			s := w.stencilStation()
			s.draws.SetChecked(!s.draws.Checked)
		}},
		{"Edit", named("Choose the Next Tie or Point"), keys(key(fyne.KeyN, 0)), stencilling, func(w *Window) { w.stencilStation().chooseNext() }},
		{"Edit", named("Propose Ties"), keys(key(fyne.KeyT, ctrl)), stencilling, (*Window).proposeTies},
		{"Edit", named("Propose a Split"), keys(key(fyne.KeyT, ctrl|shift)), stencilling, (*Window).proposeSplit},
		{"Edit", named("Take the Idle Ties Away"), keys(key(fyne.KeyI, ctrl)), idling, (*Window).takeIdleTies},
		{"Edit", joint, keys(key(fyne.KeyJ, ctrl)), stencilling, (*Window).turnJoint},
	}
}

// stencilling reports whether the stencil is shown, where the paper is held.
func stencilling(w *Window) bool { return w.at == stencilAt }

// idling reports whether there are ties that hold nothing.
func idling(w *Window) bool {
	if !stencilling(w) || !w.Ready() {
		return false
	}
	for _, sheet := range w.work.Sheet.Set() {
		for _, t := range sheet.Ties.Ties {
			if !t.Bridges() {
				return true
			}
		}
	}
	return false
}
