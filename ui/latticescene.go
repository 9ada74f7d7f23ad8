package ui

import (
	"strings"

	"tsugime/repeat/geom"
	"tsugime/ui/board"
)

// mark draws the handles: a line out of the end of each vector to a square with the
// vector's letter, the one in hand larger and with its length.
func (h *latticeHand) mark(sc *board.Scene) {
	for _, v := range vectors {
		end := v.Of(h.lattice())
		text, bold, width, colour := say(vectorNames[v]), h.held && h.by == v, float32(3), worn().cellLine
		if bold {
			text, width = text+"  ·  "+h.words(h.lattice()), 7
			colour = worn().indigo
			sc.Marks = append(sc.Marks, board.Mark{Shape: board.Line, Points: []geom.Point{{}, end}, Colour: worn().indigo, Width: 3})
		}
		x, y := h.beyond(v)
		label := func(text string, below float32) {
			sc.Labels = append(sc.Labels, board.Label{
				At: end, Off: [2]float32{float32(x) + 12, float32(y) + below}, Text: text, Align: board.After, Colour: worn().vat, Shield: worn().shield, Size: 11, Bold: bold,
			})
		}
		sc.Marks = append(sc.Marks, board.Mark{Shape: board.Knob, Points: []geom.Point{{}, end}, Colour: colour, Width: width})
		label(text, 0)
		if bold && h.pull != nil {
			label(strings.Join(h.holding(), "  ·  "), 20)
		}
	}
}

// holding is what holds the vector that is pulled, or why it can't be so.
func (h *latticeHand) holding() []string {
	switch {
	case h.pull.fault != nil:
		return []string{sentence(h.pull.fault)}
	case len(h.pull.names) == 0:
		return []string{say("held by nothing")}
	}
	return h.pull.names
}
