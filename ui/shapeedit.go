package ui

import (
	"slices"

	"tsugime/repeat/document"
	"tsugime/repeat/geom"
	"tsugime/repeat/pen"
)

// moved returns the stroke with what is in hand at a place. With Ctrl held a handle
// goes alone.
func (h *shapeHand) moved(to geom.Point) (pen.Stroke, error) {
	s := h.strokes[h.pull.stroke]
	switch h.pull.kind {
	case aNode:
		return s.MoveNode(h.pull.node, to)
	case aHandle:
		return s.MoveHandle(pen.Handle{Node: h.pull.node, Out: h.pull.out, At: to}, h.w.board.Holds(ctrl))
	}
	return s.MoveSegment(h.pull.node, h.pull.t, to)
}

// edit makes strokes the outline of the motif.
func (h *shapeHand) edit(name string, strokes []pen.Stroke) bool {
	o, mends, err := pen.Outline(strokes...)
	if err == nil {
		err = h.s.sized(o)
	}
	if err != nil {
		h.w.Say(sentence(err))
		h.w.repaint()
		return false
	}
	if !h.w.Edit(name, func(order document.Order) (document.Order, error) {
		return document.Reshape(order, h.motif, geom.Shape{Outline: o.Moved(h.home.Neg())})
	}) {
		return false
	}
	if slices.ContainsFunc(mends, func(m geom.Mend) bool { return m.Flaw == geom.Crossed }) {
		h.w.Say(say("%s. The line crossed itself: it was parted there, and covers what it covered.", say(name)))
	}
	return true
}

// change edits the stroke that holds what is chosen: a node, or a piece, for which
// a chosen node stands too: the one that it begins.
func (h *shapeHand) change(name string, kind partKind, do func(s pen.Stroke, i int) (pen.Stroke, error)) {
	if h.part.kind != kind && (kind != aPiece || h.part.kind != aNode) {
		h.w.Say(say(map[partKind]string{aNode: "Choose a node first: click one.", aPiece: "Choose a piece first: click the line between two nodes."}[kind]))
		return
	}
	next, err := do(h.strokes[h.part.stroke], h.part.node)
	if err != nil {
		h.w.Say(sentence(err))
		return
	}
	strokes := slices.Clone(h.strokes)
	strokes[h.part.stroke] = next
	h.edit(name, strokes)
}

func (h *shapeHand) nudge(by geom.Point) {
	to := h.part.at.Add(by)
	h.change("Nudge Node", aNode, func(s pen.Stroke, i int) (pen.Stroke, error) {
		h.part.at = to
		return s.MoveNode(i, to)
	})
}

func (h *shapeHand) remove() {
	h.change("Delete Node", aNode, func(s pen.Stroke, i int) (pen.Stroke, error) { return s.DeleteNode(i) })
}

// insert puts a node where the piece was clicked, and chooses it.
func (h *shapeHand) insert() {
	t := h.part.t
	if h.part.kind == aNode {
		t = 0.5
	}
	h.change("Insert Node", aPiece, func(s pen.Stroke, i int) (pen.Stroke, error) {
		next, err := s.InsertNode(i, t)
		if err == nil {
			h.part = outlinePart{kind: aNode, stroke: h.part.stroke, at: next.Node(i + 1)}
		}
		return next, err
	})
}
