package ui

import (
	"tsugime/repeat/geom"
	"tsugime/repeat/pattern"
)

// A partKind says what of an outline is meant.
type partKind int

const (
	noPart partKind = iota
	aNode
	aHandle
	aPiece
)

// An outlinePart is a node, a handle or a piece of one of the strokes.
type outlinePart struct {
	kind   partKind
	stroke int
	node   int // or the piece
	out    bool
	t      float64    // of a piece: where it was taken
	at     geom.Point // where it was taken
}

// found returns the part that lies where one was before an edit.
func (h *shapeHand) found(part outlinePart) outlinePart {
	if part.kind == noPart {
		return part
	}
	for k, s := range h.strokes {
		for i, at := range s.Nodes() {
			if part.kind == aNode && at == part.at {
				return outlinePart{kind: aNode, stroke: k, node: i, at: at}
			}
		}
		for i, g := range s.Segments {
			if t, at := g.Nearest(s.Node(i), part.at); part.kind == aPiece && at.Distance(part.at) <= geom.Alike {
				return outlinePart{kind: aPiece, stroke: k, node: i, t: t, at: at}
			}
		}
	}
	return outlinePart{}
}

// choose makes a part the chosen one.
func (h *shapeHand) choose(part outlinePart) { h.part = part }

// under returns what lies at a place: a handle first, then a node, then a piece.
func (h *shapeHand) under(p geom.Point, reach geom.Length) outlinePart {
	best, least := outlinePart{}, float64(reach)
	try := func(part outlinePart, at geom.Point) {
		if d := at.Sub(p).Norm(); d <= least {
			best, least = part, d
			best.at = at
		}
	}
	for k, s := range h.strokes {
		for _, c := range s.Handles() {
			if h.handled(k, c.Node) {
				try(outlinePart{kind: aHandle, stroke: k, node: c.Node, out: c.Out}, c.At)
			}
		}
	}
	for k, s := range h.strokes {
		for i, at := range s.Nodes() {
			if best.kind != aHandle {
				try(outlinePart{kind: aNode, stroke: k, node: i}, at)
			}
		}
	}
	if best.kind != noPart {
		return best
	}
	for k, s := range h.strokes {
		for i, g := range s.Segments {
			t, at := g.Nearest(s.Node(i), p)
			try(outlinePart{kind: aPiece, stroke: k, node: i, t: t}, at)
		}
	}
	return best
}

// fewNodes is up to how many nodes of a stroke all handles are shown.
const fewNodes = 8

// handled reports whether the handles of a node are shown: near what is chosen, or
// all of them where they are few.
func (h *shapeHand) handled(stroke, node int) bool {
	n := len(h.strokes[stroke].Nodes())
	if n <= fewNodes {
		return true
	}
	if h.part.kind == noPart || h.part.stroke != stroke {
		return false
	}
	d := ((node-h.part.node)%n + n) % n
	return d <= 1 || d == n-1
}

// chooseNext chooses the node that follows, or with −1 the one before.
func (h *shapeHand) chooseNext(step int) {
	if len(h.strokes) == 0 {
		return
	}
	if h.part.kind == noPart {
		h.part = outlinePart{kind: aNode, at: h.strokes[0].Start}
	} else {
		k := h.part.stroke
		n := len(h.strokes[k].Nodes())
		i := h.part.node + step
		if i < 0 || i >= n {
			k = (k + step + len(h.strokes)) % len(h.strokes)
			if i = 0; step < 0 {
				i = len(h.strokes[k].Nodes()) - 1
			}
		}
		h.part = outlinePart{kind: aNode, stroke: k, node: i, at: h.strokes[k].Node(i)}
	}
	h.changed()
}

// nearestCopy returns the copy of a place that is nearest to another.
func nearestCopy(l pattern.Lattice, p, to geom.Point) geom.Point {
	return to.Add(l.Into(p.Sub(to)))
}
