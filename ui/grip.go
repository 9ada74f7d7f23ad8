package ui

import "tsugime/repeat/geom"

// A grip is a station where things can be chosen and moved.
type grip interface {
	gripped() string     // what is chosen, as the menu names it; "" for nothing
	nudge(by geom.Point) // moves it
	remove()             // takes it away
	leave() bool         // gives up a drag, and reports whether there was one
}

func (w *Window) grip() (grip, bool) {
	if c := w.craft(); c != nil {
		return c, true
	}
	g, ok := w.stations[w.at].(grip)
	return g, ok
}

// gripped names what is chosen at the station, or what could be.
func (w *Window) gripped() string {
	if g, ok := w.grip(); ok && g.gripped() != "" {
		return g.gripped()
	}
	return "Motifs"
}

// holding reports whether something is chosen and can be moved.
func (w *Window) holding() bool {
	g, ok := w.grip()
	return ok && g.gripped() != "" && !w.board.Held()
}

func (w *Window) nudge(by geom.Point) {
	if g, ok := w.grip(); ok {
		g.nudge(by)
	}
}

func (w *Window) removeChosen() {
	if g, ok := w.grip(); ok {
		g.remove()
	}
}

// letGo ends a drag without an edit, or lets what is chosen go.
func (w *Window) letGo() {
	if g, ok := w.grip(); ok && g.leave() {
		w.repaint()
		return
	}
	w.pointing.at = thingKey{}
	w.stencilStation().letGo()
	w.choose()
	w.win.Canvas().Focus(w.board)
}

func (w *Window) stencilStation() *stencilStation { return w.stations[stencilAt].(*stencilStation) }
