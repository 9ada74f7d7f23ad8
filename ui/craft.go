package ui

import (
	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"

	"tsugime/ui/board"
)

// A craft is work at the draft that has the hand, the bench and the keys for itself
// while it goes on: drawing a motif, shaping an outline.
type craft interface {
	board.Hand
	grip
	bench() fyne.CanvasObject
	refresh()             // shows the present order
	laid() []board.Laid   // the pattern as it is with what is in work
	show(sc *board.Scene) // adds the marks of what is in work
	takesBack() string    // what the last thing was that undo takes back, "" for none
	takeBack()            // undoes it
	finish()              // makes the work an edit
	measures() []measure  // of what is in work
}

// craft is the one that goes on, nil for none.
func (w *Window) craft() craft {
	if w.at != draftAt {
		return nil
	}
	return w.stations[draftAt].(*draft).craft
}

// hand is what the surface tells what the pointer does.
func (w *Window) hand(s station) board.Hand {
	if c := w.craft(); c != nil {
		return c
	}
	return pointer{s, w}
}

// showBench shows the bench of the station, or of the craft that goes on.
func (w *Window) showBench() {
	bench := w.stations[w.at].bench()
	if c := w.craft(); c != nil {
		bench = c.bench()
	}
	w.left.Content = container.NewPadded(bench)
	w.left.Refresh()
}

// begin gives the hand to a craft, or with nil back to the draft.
func (s *draft) begin(c craft) {
	s.craft, s.drag = c, nil
	s.w.board.Release()
	s.w.pointer.SetText("")
	s.w.showBench()
	s.w.win.SetMainMenu(s.w.mainMenu())
	s.w.refresh()
	s.w.win.Canvas().Focus(s.w.board)
}

// takingBack reports what undo takes back of the craft that goes on.
func (w *Window) takingBack() string {
	if c := w.craft(); c != nil {
		return c.takesBack()
	}
	return ""
}

// undoName is what Undo takes back now: the last thing of the craft that goes on, or
// the last edit.
func (w *Window) undoName() string {
	if name := w.takingBack(); name != "" {
		return name
	}
	return w.history.UndoName()
}

func (w *Window) undo() {
	if w.takingBack() != "" {
		w.craft().takeBack()
		return
	}
	w.Undo()
}
