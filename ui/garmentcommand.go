package ui

import "fyne.io/fyne/v2"

// garmentCommands are those of the made-up garment and of its panels on the bolt.
func garmentCommands() []command {
	chosen := func(w *Window) bool {
		return dressing(w) && w.garmentStation().panels.chosen != "" && w.garmentStation().onBolt
	}
	do := func(act func(s *garmentStation)) func(w *Window) { return func(w *Window) { act(w.garmentStation()) } }
	return []command{
		{"View", named("The Next Seam under the Loupe"), keys(key(fyne.KeyN, shift)), dressing, do(func(s *garmentStation) { s.seams.next() })},
		{"View", named("Lay Another Bolt by Chance"), keys(key(fyne.KeyB, shift)), dressing, do(func(s *garmentStation) { s.chance.another() })},
		{"View", named("Show the Worst Joint"), keys(key(fyne.KeyW, shift)), dressing, do((*garmentStation).showWorst)},
		{"View", named("Show What the Seams Hide"), keys(key(fyne.KeyH, shift)), dressing, do(func(s *garmentStation) { s.showHidden(!s.hides.Checked) })},
		{"View", named("The Panels on the Bolt"), keys(key(fyne.KeyV, shift)), dressing, do(func(s *garmentStation) { s.show(!s.onBolt) })},
		{"Edit", named("Lay the Panel Earlier"), keys(key(fyne.KeyLeft, alt)), chosen, do(func(s *garmentStation) { s.panels.step(-1) })},
		{"Edit", named("Lay the Panel Later"), keys(key(fyne.KeyRight, alt)), chosen, do(func(s *garmentStation) { s.panels.step(1) })},
		{"Edit", named("Turn the Panel"), keys(key(fyne.KeyT, alt)), chosen, do(func(s *garmentStation) { s.panels.turn() })},
	}
}
