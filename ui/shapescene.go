package ui

import (
	"tsugime/export/raster"
	"tsugime/repeat/geom"
	"tsugime/repeat/pattern"
	"tsugime/repeat/pen"
	"tsugime/ui/board"
)

// now are the strokes as they are, or as the pull would leave them.
func (h *shapeHand) now() []pen.Stroke {
	if h.drawn != nil {
		return h.drawn
	}
	return h.strokes
}

// laid is the pattern with the outline as it is; while something is pulled the rest
// and what is pulled are painted apart.
func (h *shapeHand) laid() []board.Laid {
	at := []raster.Lay{{}}
	if h.drawn == nil {
		return []board.Laid{{Ground: h.s.painted(), Lays: at}}
	}
	l := h.w.Order().Unit.Lattice
	if h.rest == nil || h.restOf != h.number {
		var rest []pattern.Motif
		for _, m := range h.s.design().unit.Motifs {
			if id, _ := drawnFrom(h.w.Order(), m.ID); id != h.motif {
				rest = append(rest, m)
			}
		}
		h.rest, h.restOf = groundOf(l, rest), h.number
	}
	laid := []board.Laid{{Ground: h.rest, Lays: at}}
	if o, _, err := pen.Outline(h.drawn...); err == nil && h.s.over(o) <= mostShownOver {
		laid = append(laid, board.Laid{Ground: groundOf(l, h.s.multiplied(geom.Shape{Outline: o})), Lays: at})
	}
	return laid
}

// show marks the line, its nodes by shape, and the handles near what is chosen.
func (h *shapeHand) show(sc *board.Scene) {
	strokes := h.now()
	h.s.markStrokes(sc, strokes, h.w.board.Seen())
	var corners, smooth []geom.Point
	for k, s := range strokes {
		for i, at := range s.Nodes() {
			if s.SmoothAt(i) {
				smooth = append(smooth, at)
			} else {
				corners = append(corners, at)
			}
		}
		for _, c := range s.Handles() {
			if h.handled(k, c.Node) {
				sc.Marks = append(sc.Marks, handleMark(s.Node(c.Node), c.At)...)
			}
		}
	}
	sc.Marks = append(sc.Marks, board.Mark{Shape: board.Peg, Points: corners, Colour: worn().indigo}, board.Mark{Shape: board.Bead, Points: smooth, Colour: worn().indigo})
	switch s := h.part; {
	case s.kind == aNode && s.stroke < len(strokes) && s.node < len(strokes[s.stroke].Nodes()):
		sc.Marks = append(sc.Marks, board.Mark{Shape: board.Star, Radius: h.w.reach(), Points: []geom.Point{strokes[s.stroke].Node(s.node)}, Colour: worn().indigo, Width: 2})
	case s.kind == aPiece && s.stroke < len(strokes) && s.node < len(strokes[s.stroke].Segments):
		k := strokes[s.stroke]
		piece := pen.Stroke{Start: k.Node(s.node), Segments: k.Segments[s.node : s.node+1]}
		sc.Marks = append(sc.Marks, board.Mark{Shape: board.Line, Points: piece.Points(max(h.w.reach()/(4*snapPx), geom.Grid)), Colour: worn().indigo, Width: 4},
			board.Mark{Shape: board.Cross, Points: []geom.Point{k.Segments[s.node].At(piece.Start, s.t)}, Colour: worn().indigo, Width: 2})
	}
	if h.drawn != nil {
		h.s.markPlace(sc, h.at, leadWords(h.w.unit(), h.pull.at, h.at.At))
	}
}
