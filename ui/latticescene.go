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
		text, bold, width := say("vector %s", vectorNames[v]), h.held && h.by == v, float32(3)
		if bold {
			text = strings.Join(append([]string{text, h.words(h.lattice())}, h.holding()...), "  ·  ")
			width = 7
			sc.Marks = append(sc.Marks, board.Mark{Shape: board.Line, Points: []geom.Point{{}, end}, Colour: worn().indigo, Width: 3})
		}
		x, y := h.beyond(v)
		sc.Marks = append(sc.Marks, board.Mark{Shape: board.Knob, Points: []geom.Point{{}, end}, Colour: worn().indigo, Width: width})
		sc.Labels = append(sc.Labels, board.Label{
			At: end, Off: [2]float32{float32(x) + 12, float32(y)}, Text: text, Align: board.After, Colour: worn().vat, Shield: worn().shield, Size: 11, Bold: bold,
		})
	}
}

// holding is what holds the vector that is pulled, or why it can't be so.
func (h *latticeHand) holding() []string {
	switch {
	case h.pull == nil:
		return nil
	case h.pull.fault != nil:
		return []string{sentence(h.pull.fault)}
	}
	return h.pull.names
}
