package ui

import (
	"slices"

	"tsugime/export/raster"
	"tsugime/repeat/geom"
	"tsugime/repeat/pattern"
)

// A drag is motifs on their way: what stays and what moves are painted apart, so
// that every copy follows in the same frame however many there are.
type drag struct {
	stays, moves *raster.Ground
	by           geom.Point      // the way of what is in hand
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
	d.stays, d.moves = groundOf(o.Unit.Lattice, rest), groundOf(o.Unit.Lattice, taken)
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
	d.moves = groundOf(o.Unit.Lattice, d.group)
}

// shift is how far the moving ground is laid from where it was made.
func (d *drag) shift() geom.Point {
	if d.group != nil {
		return geom.Point{}
	}
	return d.by
}
