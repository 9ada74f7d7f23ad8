package ui

import (
	"math"

	"tsugime/export/raster"
	"tsugime/repeat/document"
	"tsugime/repeat/geom"
	"tsugime/repeat/pattern"
)

// A design is the unit of one state with the copies that its plane group makes,
// worked out once however often it is shown or asked.
type design struct {
	number int // of the state
	unit   pattern.Unit
	ground *raster.Ground // nil until it is painted
}

// design returns the unit of the present state with its copies.
func (s *draft) design() *design {
	now := s.w.history.Now()
	if s.made == nil || s.made.number != now.number {
		s.made = &design{number: now.number, unit: now.order.Design()}
	}
	return s.made
}

// painted is the plain pattern, ready to be painted.
func (d *design) painted() *raster.Ground {
	if d.ground == nil {
		d.ground = groundOf(d.unit.Lattice, d.unit.Motifs)
	}
	return d.ground
}

// groundOf makes motifs ready to be painted as a plain pattern.
func groundOf(l pattern.Lattice, motifs []pattern.Motif) *raster.Ground {
	var shapes []geom.Shape
	for _, c := range (pattern.Unit{Lattice: l, Motifs: motifs}).CutOuts() {
		shapes = append(shapes, c.Shape)
	}
	return raster.NewGround(shapes, l.A, l.B)
}

// drawnFrom returns the motif that is drawn for what has an ID in the order's
// design, and the operation that makes it: 0 for the motif itself.
func drawnFrom(o document.Order, id pattern.ID) (motif pattern.ID, op int) {
	if o.Group == pattern.P1 {
		return id, 0
	}
	return id.Drawn()
}

// design is the present unit with its copies, wherever motifs are shown.
func (w *Window) design() pattern.Unit { return w.stations[draftAt].(*draft).design().unit }

// holePitch is about the way from hole to hole: the side of a square that holds one.
func holePitch(u pattern.Unit) geom.Length {
	return geom.MM(math.Sqrt(u.Lattice.CellMM2() / float64(max(len(u.Motifs), 1))))
}

// chosenSet is the chosen motifs, to be asked often.
func (w *Window) chosenSet() map[pattern.ID]bool {
	set := make(map[pattern.ID]bool, len(w.chosen))
	for _, id := range w.chosen {
		set[id] = true
	}
	return set
}
