package ui

import (
	"slices"

	"tsugime/export/raster"
	"tsugime/repeat/geom"
	"tsugime/repeat/pattern"
	"tsugime/repeat/pen"
)

// A drag is motifs on their way: what stays and what moves are painted apart, so
// that every copy follows in the same frame however many there are.
type drag struct {
	stays, moves *raster.Ground
	at           pen.Snapped     // where what is in hand has come to
	by           geom.Point      // its way
	own          geom.Point      // the way of the drawn motifs
	drawn        []pattern.Motif // the drawn motifs in hand, where they were
	group        []pattern.Motif // under a plane group: they and their copies, where they are
}

// take begins a drag of the chosen motifs.
func (s *draft) take() *drag {
	o := s.w.Order()
	d, chosen := &drag{}, s.w.chosenSet()
	var rest, taken []pattern.Motif
	for _, m := range s.design().unit.Motifs {
		if motif, _ := drawnFrom(o, m.ID); chosen[motif] {
			taken = append(taken, m)
		} else {
			rest = append(rest, m)
		}
	}
	if s.waits() { // only the frames follow
		d.stays, d.moves = s.painted(), raster.NewGround(nil)
	} else {
		d.stays, d.moves = groundOf(o.Unit.Lattice, rest), groundOf(o.Unit.Lattice, taken)
	}
	for _, m := range o.Unit.Motifs {
		if chosen[m.ID] {
			d.drawn = append(d.drawn, m)
		}
	}
	return d
}

// to moves what is in hand by a way. The drawn motifs move so that the copy in
// hand follows the pointer, and every other copy as its operation says.
func (s *draft) to(d *drag, by geom.Point) {
	o := s.w.Order()
	d.by, d.own = by, by
	if o.Group == pattern.P1 {
		return
	}
	own, err := o.Group.Carried(o.Unit.Lattice, s.op, by)
	if err != nil {
		return // the group that made the copy is no longer the order's
	}
	d.own = own
	at := slices.Clone(d.drawn)
	for i := range at {
		at[i].At = at[i].At.Add(own)
	}
	if d.group, err = o.Group.Multiply(o.Unit.Lattice, at); err != nil {
		d.group = at
	}
	if !s.waits() {
		d.moves = groundOf(o.Unit.Lattice, d.group)
	}
}

// shift is how far the moving ground is laid from where it was made.
func (d *drag) shift() geom.Point {
	if d.group != nil {
		return geom.Point{}
	}
	return d.by
}

// dragSnap returns where a motif in hand comes to: held by the lattice, the elements
// of the group, the places of other motifs, and level or upright from where it stood.
// With Shift held it is free.
func (s *draft) dragSnap(to geom.Point) pen.Snapped {
	reach := s.w.reach()
	way := to.Sub(s.stands)
	free := pen.Snapped{At: s.stands.Add(snapped(way))}
	if s.w.board.Holds(shift) {
		return free
	}
	g := s.guides(to, reach, 0, s.w.chosen...)
	g.Edges = nil
	g.Marks = slices.DeleteFunc(g.Marks, func(m pen.Mark) bool { return m.Name == onNode })
	if at := g.From(s.stands).Snap(to, reach); len(at.Names) > 0 {
		return at
	}
	return free
}
