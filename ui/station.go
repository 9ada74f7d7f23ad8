package ui

import (
	"fyne.io/fyne/v2"

	"tsugime/repeat/check"
	"tsugime/repeat/geom"
	"tsugime/ui/board"
)

// A station is one place of the work: what stands on its bench, what the surface
// shows, what was measured there.
type station interface {
	board.Hand
	name() string
	bench() fyne.CanvasObject // the panel at the left, made once
	refresh()                 // shows the present order on it
	view() string             // scenes of one view share the part that is seen
	scene() board.Scene
	measures() []measure
	owns(f check.Finding) bool // whether a finding is shown here
	look(f check.Finding)      // shows its place
}

// An adviser is a station that offers what can be done, beside what was found.
type adviser interface{ advice() []fyne.CanvasObject }

// A measure is a line of figures at the right. One without a name is words, one
// without a value names those that follow.
type measure struct{ name, value string }

// stationNames stand in the order of the work.
var stationNames = []string{"Draft", "Stencil", "Bolt", "Garment", "Sheets"}

// Where each station stands in the line.
const (
	draftAt = iota
	stencilAt
	boltAt
	garmentAt
	sheetsAt
)

// An onlooker is a hand that takes nothing and tells where it points.
type onlooker struct {
	w     *Window
	place func(p geom.Point) string // nil for across and along
}

// Press is part of board.Hand.
func (onlooker) Press(geom.Point, geom.Length, bool) bool { return false }

// Drag is part of board.Hand.
func (onlooker) Drag(geom.Point) {}

// Drop is part of board.Hand.
func (onlooker) Drop(geom.Point) {}

// Tap is part of board.Hand.
func (onlooker) Tap(geom.Point, geom.Length, bool) {}

// Hover tells the place below the surface.
func (h onlooker) Hover(p geom.Point) {
	if h.place != nil {
		h.w.pointer.SetText(h.place(p))
		return
	}
	u := h.w.unit()
	h.w.pointer.SetText(say("across %s    along %s", u.Format(p.X, 2), u.Format(p.Y, 2)))
}

// severityShape is the shape that tells a severity without its colour.
func severityShape(s check.Severity) string {
	switch s {
	case check.Fault:
		return "■"
	case check.Warning:
		return "▲"
	}
	return "○"
}
