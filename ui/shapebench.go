package ui

import (
	"fmt"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/widget"

	"tsugime/repeat/document"
	"tsugime/repeat/geom"
	"tsugime/repeat/pattern"
	"tsugime/repeat/pen"
)

// A shapeBench is what stands at the left while an outline is shaped.
type shapeBench struct {
	h       *shapeHand
	content fyne.CanvasObject
	what    *widget.Label
	across  *entry
	along   *entry
}

func newShapeBench(h *shapeHand) *shapeBench {
	b := &shapeBench{h: h, what: quietLabel()}
	f := &form{w: h.w}
	f.heading("Shape the outline")
	f.words("Drag a node, a handle or a piece of the line. Squares are corners, discs are smooth. Shift lets it go free, Ctrl moves a handle alone.")
	f.heading("Chosen")
	f.add(b.what)
	b.across = newEntry(func(text string) { b.set(text, true) })
	b.along = newEntry(func(text string) { b.set(text, false) })
	f.row("Across", b.across)
	f.row("Along", b.along)
	button := func(name string, do func()) fyne.CanvasObject { return widget.NewButton(say(name), do) }
	f.beside(button("Corner, Smooth", h.turnCorner), button("Delete It", h.remove))
	f.heading("The piece")
	f.beside(button("Straight", func() { h.turnPiece(lines) }), button("Arc", func() { h.turnPiece(arcs) }), button("Curve", func() { h.turnPiece(curves) }))
	f.button("Insert a Node", h.insert)
	f.heading("The line")
	f.button("Part It and Draw On", h.drawOn)
	f.button("Stop Shaping", h.finish)
	b.content = f.content()
	return b
}

// refresh shows what is chosen.
func (b *shapeBench) refresh() {
	h, u := b.h, b.h.w.unit()
	b.across.put("")
	b.along.put("")
	switch h.part.kind {
	case aNode:
		text := say("Node %d of %d, a corner.")
		if h.strokes[h.part.stroke].SmoothAt(h.part.node) {
			text = say("Node %d of %d, smooth.")
		}
		b.what.SetText(fmt.Sprintf(text, h.part.node+1, len(h.strokes[h.part.stroke].Nodes())))
		b.across.put(u.Format(h.part.at.X, 6))
		b.along.put(u.Format(h.part.at.Y, 6))
	case aPiece:
		kinds := map[geom.Kind]string{geom.Line: "A straight piece.", geom.Arc: "An arc.", geom.Cubic: "A curve."}
		b.what.SetText(say(kinds[h.strokes[h.part.stroke].Segments[h.part.node].Kind]))
	default:
		b.what.SetText(say("Nothing yet: click a node, or the line between two."))
	}
}

// set moves the chosen node to a coordinate that was written.
func (b *shapeBench) set(text string, across bool) {
	h := b.h
	if text == "" && h.part.kind != aNode {
		return
	}
	l, err := geom.ParseLength(text, h.w.unit())
	if err != nil {
		h.w.Say(sentence(err))
		b.refresh()
		return
	}
	to := h.part.at
	if across {
		to.X = l
	} else {
		to.Y = l
	}
	h.change("Move Node", aNode, func(s pen.Stroke, i int) (pen.Stroke, error) {
		h.part.at = to
		return s.MoveNode(i, to)
	})
}

// turnCorner makes a corner smooth, or a smooth node a corner.
func (h *shapeHand) turnCorner() {
	h.change("Turn Corner", aNode, func(s pen.Stroke, i int) (pen.Stroke, error) {
		if s.SmoothAt(i) {
			return s.Corner(i)
		}
		return s.Smooth(i)
	})
}

// turnPiece makes the chosen piece of another kind.
func (h *shapeHand) turnPiece(k drawKind) {
	h.change("Turn Piece", aPiece, func(s pen.Stroke, i int) (pen.Stroke, error) {
		switch k {
		case lines:
			return s.ToLine(i)
		case arcs:
			return s.ToArc(i)
		}
		return s.ToCurve(i)
	})
}

// drawOn parts the line at the chosen node and gives it to the pen, to be drawn on.
func (h *shapeHand) drawOn() {
	if h.part.kind != aNode {
		h.w.Say(say("Choose a node first: click one."))
		return
	}
	open, err := h.strokes[h.part.stroke].Part(h.part.node)
	if err != nil {
		h.w.Say(sentence(err))
		return
	}
	var rest []pen.Stroke
	for k, s := range h.strokes {
		if k != h.part.stroke {
			rest = append(rest, s)
		}
	}
	h.s.pen.resume(h.motif, open[0], rest, h.home)
}

// shapeChosen begins to shape the outline of the one chosen motif.
func (s *draft) shapeChosen() {
	if len(s.w.chosen) != 1 {
		s.w.Say(say("Choose one motif first: click it."))
		return
	}
	m, ok := s.w.Order().Motif(s.w.chosen[0])
	if !ok {
		return
	}
	if m.Shape.Round() {
		s.w.Say(say("A dot has no nodes: it stays a true circle. “Turn Dots into Outlines” gives it four arcs."))
		return
	}
	s.shape.motif, s.shape.number, s.shape.part = m.ID, 0, outlinePart{}
	s.shape.home = s.w.board.Seen().Centre() // the copy that is looked at
	s.shape.refresh()
	s.begin(s.shape)
}

// outlineDots gives the chosen dots an outline of four arcs.
func (s *draft) outlineDots() {
	ids := s.chosenDots()
	if len(ids) == 0 {
		s.w.Say(say("Choose the dots first: click one, or all with Ctrl+A."))
		return
	}
	s.w.Edit("Turn Dots into Outlines", func(o document.Order) (document.Order, error) {
		for _, id := range ids {
			m, _ := o.Motif(id)
			next, err := document.Reshape(o, id, geom.Shape{Outline: pen.OfDisc(m.Shape.Disc)})
			if err != nil {
				return o, err
			}
			o = next
		}
		return o, nil
	})
}

// chosenDots are the chosen motifs that are dots.
func (s *draft) chosenDots() []pattern.ID {
	var ids []pattern.ID
	for _, id := range s.w.chosen {
		if m, ok := s.w.Order().Motif(id); ok && m.Shape.Round() {
			ids = append(ids, id)
		}
	}
	return ids
}

// turnShaping begins to shape the chosen motif, or stops.
func (s *draft) turnShaping() {
	if s.craft == craft(s.shape) {
		s.begin(nil)
		return
	}
	s.shapeChosen()
}
