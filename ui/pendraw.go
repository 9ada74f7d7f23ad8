package ui

import (
	"tsugime/repeat/document"
	"tsugime/repeat/geom"
	"tsugime/repeat/pattern"
	"tsugime/repeat/pen"
)

// A drawKind is what the next place draws.
type drawKind int

const (
	lines drawKind = iota
	arcs
	onward
	curves
	circle
	polygon
	star
	petal
	slot
	ring
)

var drawNames = []string{
	"Lines", "Arcs through a place", "Arcs that go on smoothly", "Curves",
	"A circle", "A polygon", "A star", "A petal", "A slot", "A ring",
}

// whole reports whether a kind is a shape at once.
func (k drawKind) whole() bool { return k >= circle }

// put sets the next place: the wreath's centre, a whole shape, or the next node.
func (d *penHand) put(at geom.Point) {
	switch {
	case d.wantsCentre():
		d.wreath.Centre, d.centred = at, true
	case d.panel.draws.whole():
		d.putWhole(at)
		return
	case !d.begun:
		d.stroke, d.begun, d.out = pen.Begin(at), true, at
	case d.panel.draws == arcs && !d.bends:
		d.middle, d.bends = at, true
	default:
		d.next(at)
		return
	}
	d.changed()
}

// next draws the piece to a place.
func (d *penHand) next(at geom.Point) {
	g, err := d.piece(at)
	if err != nil {
		d.w.Say(sentence(err))
		return
	}
	d.add(g)
}

// piece is the segment that would lead to a place.
func (d *penHand) piece(at geom.Point) (geom.Segment, error) {
	end := d.stroke.End()
	switch d.panel.draws {
	case arcs:
		if d.bends {
			return pen.ArcThrough(end, d.middle, at)
		}
	case onward:
		if n := len(d.stroke.Segments); n > 0 {
			_, heading := d.stroke.Segments[n-1].Headings(d.stroke.Node(n - 1))
			return pen.ArcOn(end, heading, at)
		}
	case curves:
		return pen.CurveTo(end, d.out, at, at), nil
	}
	return pen.LineTo(at), nil
}

// add draws a piece; one that comes back to the start closes the line.
func (d *penHand) add(g geom.Segment) {
	next, err := d.stroke.Add(g)
	if err != nil {
		d.w.Say(sentence(err))
		return
	}
	d.stroke, d.out, d.bends = next, g.End, false
	if g.End == next.Start {
		d.close()
		return
	}
	if d.closedAround() {
		d.w.Say(say("The copies close the line all around: Return puts the motif."))
	}
	d.changed()
}

// putCurve sets a node of a curve with a handle pulled out of it.
func (d *penHand) putCurve(at, handle geom.Point) {
	if !d.begun {
		d.stroke, d.begun, d.out = pen.Begin(at), true, handle
		d.changed()
		return
	}
	d.add(pen.CurveTo(d.stroke.End(), d.out, pen.Opposite(at, handle), at))
	if d.begun {
		d.out = handle
		d.changed()
	}
}

// closedAround reports whether an open line and its own copies are closed.
func (d *penHand) closedAround() bool {
	if d.wreath.Plain() {
		return false
	}
	for _, s := range d.wreath.Whole(d.stroke) {
		if !s.Closed {
			return false
		}
	}
	return true
}

// finish closes the line and makes it a motif.
func (d *penHand) finish() {
	if !d.begun {
		d.w.Say(say("Nothing is drawn yet: click where the line begins, or write its place."))
		return
	}
	d.close()
}

// close makes the line a motif, with its own copies.
func (d *penHand) close() {
	whole, err := d.closed(d.stroke)
	if err != nil {
		d.w.Say(sentence(err))
		d.changed()
		return
	}
	d.commit("Draw Motif", whole)
}

// closed returns a line and its own copies, closed: by themselves where they meet
// all around, else the line straight to its start.
func (d *penHand) closed(s pen.Stroke) ([]pen.Stroke, error) {
	if d.wreath.Plain() {
		c, err := s.Close()
		return []pen.Stroke{c}, err
	}
	whole := d.wreath.Whole(s)
	for i := range whole {
		var err error
		if whole[i], err = whole[i].Close(); err != nil {
			return nil, err
		}
	}
	return whole, nil
}

// commit makes closed lines a motif of the unit, as one edit.
func (d *penHand) commit(name string, whole []pen.Stroke) {
	o, mends, err := pen.Outline(append(whole, d.rest...)...)
	if err == nil {
		err = d.s.sized(o)
	}
	if err != nil {
		d.w.Say(sentence(err))
		d.changed()
		return
	}
	if d.motif != 0 {
		d.redraw(geom.Shape{Outline: o.Moved(d.home.Neg())})
		return
	}
	centre := snapped(o.Bounds().Centre())
	if !d.wreath.Plain() {
		centre = d.wreath.Centre
	}
	d.place(name, geom.Shape{Outline: o.Moved(centre.Neg())}, centre)
	for _, m := range mends {
		if m.Flaw == geom.Crossed {
			d.w.Say(say("%s. The line crossed itself: it was parted there, and covers what it covered.", say(name)))
		}
	}
}

// place adds a motif where it was drawn, as the copy that lies in the cell.
func (d *penHand) place(name string, shape geom.Shape, at geom.Point) {
	before, line := d.w.chosen, *d
	d.drop()
	d.w.chosen = []pattern.ID{d.w.Order().NextID}
	if !d.w.Edit(name, func(o document.Order) (document.Order, error) {
		return document.AddMotif(o, pattern.Motif{Shape: shape, At: o.Unit.Lattice.Into(at)})
	}) {
		d.w.chosen = before
		d.stroke, d.begun, d.out = line.stroke, line.begun, line.out
	}
}

// redraw gives the motif that is drawn anew its outline.
func (d *penHand) redraw(shape geom.Shape) {
	motif := d.motif
	d.drop()
	if !d.w.Edit("Draw Motif Anew", func(o document.Order) (document.Order, error) { return document.Reshape(o, motif, shape) }) {
		return
	}
	d.w.choose(motif)
	d.s.shapeChosen()
}
