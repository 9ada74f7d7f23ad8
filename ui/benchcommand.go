package ui

import "fyne.io/fyne/v2"

// manyCuts is how many cuts a long step goes.
const manyCuts = 100

// benchCommands are those of the bench: the walk, the rack and the rates.
func benchCommands() []command {
	walking := func(w *Window) bool { b := w.shownBench(); return b != nil && len(b.passes()) > 0 }
	pass := func(by int) func(w *Window) { return func(w *Window) { w.shownBench().stepPass(by) } }
	cut := func(by int) func(w *Window) { return func(w *Window) { w.shownBench().stepCut(by) } }
	return []command{
		{"Bench", named("Show the Bench"), keys(key(fyne.Key6, ctrl)), nil, func(w *Window) { w.sheetsStation().toBench(0) }},
		{"Bench", named("Next Pass"), keys(key(fyne.KeyPageDown, 0)), walking, pass(1)},
		{"Bench", named("Pass Before"), keys(key(fyne.KeyPageUp, 0)), walking, pass(-1)},
		{"Bench", named("Next Cut"), keys(key(fyne.KeyPeriod, ctrl)), walking, cut(1)},
		{"Bench", named("Cut Before"), keys(key(fyne.KeyComma, ctrl)), walking, cut(-1)},
		{"Bench", named("A Hundred Cuts On"), keys(key(fyne.KeyPeriod, ctrl|shift)), walking, cut(manyCuts)},
		{"Bench", named("A Hundred Cuts Back"), keys(key(fyne.KeyComma, ctrl|shift)), walking, cut(-manyCuts)},
		{"Bench", named("The Rack…"), keys(key(fyne.KeyR, ctrl|shift)), nil, (*Window).openRack},
		{"Bench", named("Bring In a Rack…"), keys(key(fyne.KeyB, ctrl|shift)), nil, (*Window).chooseRack},
		{"Bench", named("Write Out the Rack…"), keys(key(fyne.KeyO, ctrl|shift)), nil, (*Window).askRackName},
		{"Bench", named("Bring In Finished Jobs…"), keys(key(fyne.KeyJ, ctrl|shift)), nil, (*Window).chooseJobs},
	}
}

func (w *Window) sheetsStation() *sheetsStation { return w.stations[sheetsAt].(*sheetsStation) }
