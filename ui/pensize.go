package ui

import (
	"fmt"

	"tsugime/repeat/geom"
)

// How many copies of a motif may lie on each other, by their boxes: to be shown as
// cut out while it is drawn, and to be a motif at all. What is larger is a slip of
// the hand, an arc through three places that are all but in line, say, and would
// take seconds to join with its copies.
const (
	mostShownOver = 40
	mostOver      = 100
)

// over is about how many copies of an outline lie over a place of it.
func (s *draft) over(o geom.Outline) float64 {
	order, box := s.w.Order(), o.Bounds()
	if box.Empty() {
		return 0
	}
	return float64(len(order.Group.Ops())) * order.Unit.Lattice.Count(box.Width(), box.Height())
}

// sized refuses an outline that is far larger than the cell.
func (s *draft) sized(o geom.Outline) error {
	n := s.over(o)
	if n <= mostOver {
		return nil
	}
	u, box := s.w.unit(), o.Bounds()
	return fmt.Errorf("it reaches %s by %s, so %.0f of its copies would lie on each other; draw it smaller, or widen the lattice",
		u.Number(box.Width(), 1), u.Format(box.Height(), 1), n)
}
