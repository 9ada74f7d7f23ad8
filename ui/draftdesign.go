package ui

import (
	"math"
	"time"

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
	slow   bool           // whether the ground took longer than patternWait
}

// patternWait is how long an edit may wait for the picture of its pattern.
const patternWait = 150 * time.Millisecond

// design returns the unit of the present state with its copies.
func (s *draft) design() *design {
	now := s.w.history.Now()
	if s.made == nil || s.made.number != now.number {
		s.made = &design{number: now.number, unit: now.order.Design()}
	}
	return s.made
}

// painted is the plain pattern, ready to be painted. Where so much lies over one
// another that it isn't ready soon, it is what was painted before, until the background
// has done its work: the design has no ground until then.
func (s *draft) painted() *raster.Ground {
	d := s.design()
	if d.ground == nil {
		s.makeReady(d)
	}
	if d.ground != nil {
		s.before = d.ground
	}
	if s.before == nil {
		s.before = raster.NewGround(nil)
	}
	return s.before
}

// makeReady makes the ground of a design, one at a time: what is edited while one is
// being made is asked for again when that one is shown.
func (s *draft) makeReady(d *design) {
	if s.making {
		return
	}
	made := make(chan *raster.Ground, 1)
	go func() { made <- groundOf(d.unit.Lattice, d.unit.Motifs) }()
	select {
	case d.ground = <-made:
	case <-time.After(patternWait):
		s.making, d.slow = true, true
		go func() {
			g := <-made
			later(func() {
				s.making, d.ground = false, g
				s.w.repaint()
			})
		}()
	}
}

// waits reports whether the picture of the present pattern isn't there, or took so long
// that nothing like it can be made under the hand.
func (s *draft) waits() bool { return s.design().slow || s.design().ground == nil }

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
