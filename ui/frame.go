package ui

import (
	"slices"

	"tsugime/repeat/geom"
	"tsugime/repeat/pattern"
	"tsugime/ui/board"
)

// A chooseFrame is a frame that is being pulled about motifs to choose them.
type chooseFrame struct {
	from, to geom.Point
	more     bool // adds to what is chosen
}

func (c *chooseFrame) box() geom.Box { return geom.BoxOf(c.from, c.to) }

// pullFrame shows the frame.
func (s *draft) pullFrame(by geom.Point) {
	s.frame.to = s.frame.from.Add(by)
	u, box := s.w.unit(), s.frame.box()
	s.w.pointer.SetText(u.Number(box.Width(), 2) + " × " + u.Format(box.Height(), 2))
	s.w.repaint()
}

// dropFrame chooses the drawn motifs that have a copy with its place in the frame.
func (s *draft) dropFrame() {
	box, more := s.frame.box(), s.frame.more
	s.frame = nil
	o := s.w.Order()
	in := map[pattern.ID]bool{}
	for _, m := range s.design().unit.Motifs {
		if len(o.Unit.Lattice.Places(box.Moved(m.At.Neg()))) > 0 {
			id, _ := drawnFrom(o, m.ID)
			in[id] = true
		}
	}
	var ids []pattern.ID
	if more {
		ids = slices.Clone(s.w.chosen)
	}
	for _, m := range o.Unit.Motifs {
		if in[m.ID] && !slices.Contains(ids, m.ID) {
			ids = append(ids, m.ID)
		}
	}
	s.w.choose(ids...)
	s.w.Say(say("%d motifs chosen.", len(ids)))
}

// markFrame draws the frame that is pulled.
func (s *draft) markFrame(sc *board.Scene) {
	if s.frame == nil {
		return
	}
	c := corners(s.frame.box())
	sc.Marks = append(sc.Marks, board.Mark{Shape: board.Dashes, Points: append(slices.Clone(c), c[0]), Colour: worn().indigo, Width: 1.5})
}
