package ui

import (
	"slices"
	"strconv"

	"fyne.io/fyne/v2"

	"tsugime/export/raster"
	"tsugime/repeat/geom"
	"tsugime/repeat/pattern"
	"tsugime/repeat/pen"
)

// A shapeHand shapes the outline of a motif: its nodes, handles and pieces.
type shapeHand struct {
	s     *draft
	w     *Window
	panel *shapeBench

	motif   pattern.ID
	number  int          // of the state that strokes belong to
	strokes []pen.Stroke // where the copy in the cell stands
	home    geom.Point   // its place
	part    outlinePart  // that is chosen
	pull    outlinePart  // in hand
	drawn   []pen.Stroke // as the pull would leave them; nil for no pull
	at      pen.Snapped
	rest    *raster.Ground // the pattern without the motif, while it is pulled
	restOf  int            // the number of its state
}

func newShapeHand(s *draft) *shapeHand {
	h := &shapeHand{s: s, w: s.w}
	h.panel = newShapeBench(h)
	return h
}

func (h *shapeHand) bench() fyne.CanvasObject { return h.panel.content }

// refresh takes the outline of the present state; where the motif is gone or has
// none, shaping ends.
func (h *shapeHand) refresh() {
	now := h.w.history.Now()
	if h.number != now.number {
		m, ok := now.order.Motif(h.motif)
		if !ok || m.Shape.Round() {
			h.s.begin(nil)
			return
		}
		h.number = now.number
		h.home = nearestCopy(now.order.Unit.Lattice, m.At, h.home)
		m.At = h.home
		h.strokes, h.drawn = pen.Of(m.Placed().Outline), nil
		h.choose(h.found(h.part))
	}
	h.panel.refresh()
}

// Press takes what is there.
func (h *shapeHand) Press(p geom.Point, reach geom.Length, _ bool) bool {
	h.drawn, h.pull = nil, h.under(p, reach)
	if h.pull.kind == noPart {
		return false
	}
	if h.pull.kind != aHandle {
		h.choose(h.pull)
	} else {
		h.choose(outlinePart{kind: aNode, stroke: h.pull.stroke, node: h.pull.node, at: h.strokes[h.pull.stroke].Node(h.pull.node)})
	}
	h.changed()
	return true
}

// Tap chooses, or lets go.
func (h *shapeHand) Tap(p geom.Point, reach geom.Length, _ bool) {
	if h.under(p, reach).kind == noPart {
		h.choose(outlinePart{})
		h.changed()
	}
}

// snap returns where a part comes to; the motif's own copies don't hold it. With
// Shift held it is free.
func (h *shapeHand) snap(p geom.Point) pen.Snapped {
	pb := h.s.pen.panel
	if !pb.snaps.Checked || h.w.board.Holds(shift) {
		return pen.Guides{Fine: 10 * geom.Micrometre}.Snap(p, 0)
	}
	reach := h.w.reach()
	g := h.s.guides(p, reach, pb.grid, h.motif)
	g.Marks = append(g.Marks, pen.Mark{At: h.home, Name: onCentre})
	n := len(h.strokes[h.pull.stroke].Nodes())
	for k, s := range h.strokes {
		for i, at := range s.Nodes() {
			own := k == h.pull.stroke && i == h.pull.node
			if own && h.pull.kind == aNode {
				continue
			}
			g.Marks = append(g.Marks, pen.Mark{At: at, Name: onNode})
			beside := k == h.pull.stroke && ((i+1)%n == h.pull.node || i == (h.pull.node+1)%n)
			if own || beside && h.pull.kind == aNode {
				g = g.From(at)
			}
		}
	}
	return g.Snap(p, reach)
}

// Drag shows what the outline would be; nothing is edited yet.
func (h *shapeHand) Drag(by geom.Point) {
	h.at = h.snap(h.pull.at.Add(by))
	next, err := h.moved(h.at.At)
	if err != nil {
		h.w.Say(sentence(err))
		return
	}
	h.drawn = slices.Clone(h.strokes)
	h.drawn[h.pull.stroke] = next
	u := h.w.unit()
	h.w.pointer.SetText(leadWords(u, h.pull.at, h.at.At) + "    " + u.Number(h.at.At.X, 3) + ", " + u.Format(h.at.At.Y, 3))
	h.w.repaint()
}

// Drop makes the pull one edit.
func (h *shapeHand) Drop(by geom.Point) {
	if h.drawn == nil {
		return
	}
	drawn, names := h.drawn, map[partKind]string{aNode: "Move Node", aHandle: "Move Handle", aPiece: "Move Piece"}
	if h.part.kind == aNode && h.pull.kind == aNode || h.part.kind == aPiece {
		h.part.at = h.at.At
	}
	h.drawn = nil
	h.edit(names[h.pull.kind], drawn)
}

// Hover is part of board.Hand.
func (h *shapeHand) Hover(p geom.Point) {
	u := h.w.unit()
	h.w.pointer.SetText(u.Number(p.X, 2) + ", " + u.Format(p.Y, 2))
}

// changed shows what is chosen.
func (h *shapeHand) changed() {
	h.w.win.SetMainMenu(h.w.mainMenu())
	h.panel.refresh()
	h.w.right.show(h.s)
	h.w.repaint()
}

func (h *shapeHand) gripped() string {
	if h.part.kind == aNode {
		return "Node"
	}
	return ""
}

// leave gives up a pull, lets what is chosen go, or ends the shaping.
func (h *shapeHand) leave() bool {
	h.w.board.Release()
	switch {
	case h.drawn != nil:
		h.drawn = nil
	case h.part.kind != noPart:
		h.choose(outlinePart{})
		h.changed()
	default:
		h.s.begin(nil)
	}
	return true
}

func (h *shapeHand) takesBack() string { return "" }
func (h *shapeHand) takeBack()         {}
func (h *shapeHand) finish()           { h.s.begin(nil) }

func (h *shapeHand) measures() []measure {
	u := h.w.unit()
	nodes := 0
	for _, s := range h.strokes {
		nodes += len(s.Nodes())
	}
	rows := []measure{{"motif", strconv.Itoa(int(h.motif))}, {"nodes", strconv.Itoa(nodes)}}
	if len(h.strokes) > 1 {
		rows = append(rows, measure{"contours", strconv.Itoa(len(h.strokes))})
	}
	if o, _, err := pen.Outline(h.strokes...); err == nil {
		box := o.Bounds()
		rows = append(rows, measure{"across", u.Format(box.Width(), 3)}, measure{"along", u.Format(box.Height(), 3)},
			measure{"cut area", strconv.FormatFloat(o.AreaMM2(), 'f', 3, 64) + " mm²"})
	}
	return rows
}
