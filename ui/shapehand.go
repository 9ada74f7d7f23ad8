package ui

import (
	"slices"
	"strconv"

	"fyne.io/fyne/v2"

	"tsugime/export/raster"
	"tsugime/repeat/document"
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

// nearestCopy returns the copy of a place that is nearest to another.
func nearestCopy(l pattern.Lattice, p, to geom.Point) geom.Point {
	return to.Add(l.Into(p.Sub(to)))
}
