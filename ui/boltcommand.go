package ui

import (
	"fyne.io/fyne/v2"

	"tsugime/repeat/cloth"
	"tsugime/repeat/document"
)

// boltCommands are what is done at the bolt.
func boltCommands() []command {
	return []command{
		{"Edit", named("Clear the Turn of the Board"), keys(key(fyne.KeyF, alt)), bolting, (*Window).clearTurn},
		{"Edit", named("Take What Helps Most Against Drift"), keys(key(fyne.KeyG, alt)), bolting, (*Window).takeBest},
		{"Edit", named("Lay Ten Thousand Bolts by Chance"), keys(key(fyne.KeyB, alt)), bolting, (*Window).layManyBolts},
	}
}

// bolting reports whether the bolt is shown.
func bolting(w *Window) bool { return w.at == boltAt }

func (w *Window) boltStation() *boltStation { return w.stations[boltAt].(*boltStation) }

// clearTurn lays the cloth so that no panel lies over the turn of the board.
func (w *Window) clearTurn() {
	if !w.Ready() {
		w.Say(say("Still measuring; ask again in a moment."))
		return
	}
	c, now := cloth.ClearTurn(w.work.Run, w.work.Dressed), w.work.Dressed
	w.Edit("Clear the Turn", func(o document.Order) (document.Order, error) { return document.ClearTurn(o, c, now) })
}

// takeBest takes the remedy against drift that is an edit and gains most.
func (w *Window) takeBest() {
	if !w.Ready() {
		w.Say(say("Still measuring; ask again in a moment."))
		return
	}
	g, ok := w.bestEdit(cloth.Gain.Total)
	if !ok {
		w.Say(say("Nothing that is an edit of the order helps against drift."))
		return
	}
	w.takeRemedy(g)
}
