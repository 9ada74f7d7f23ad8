package ui

import (
	"math"

	"tsugime/repeat/geom"
	"tsugime/repeat/pen"
)

// figure is a whole shape about the origin, by its measures. Across is the diameter
// of round ones and the length of petals and slots.
type figure struct {
	kind    drawKind
	across  geom.Length
	turnDeg float64
	corners int
	share   float64 // inner radius or width, of the whole
}

func (f figure) shape() (geom.Shape, error) {
	var o geom.Outline
	var err error
	switch f.kind {
	case circle:
		return geom.DiscShape(geom.Point{}, f.across), nil
	case polygon:
		o, err = pen.Polygon(f.corners, f.across/2, f.turnDeg)
	case star:
		o, err = pen.Star(f.corners, f.across/2, f.share, f.turnDeg)
	case petal:
		o, err = pen.Petal(f.across, f.share, f.turnDeg)
	case slot:
		o, err = pen.Slot(f.across, f.share, f.turnDeg)
	default:
		o, err = pen.Ring(f.across/2, f.share)
	}
	return geom.Shape{Outline: o}, err
}

// long reports whether a shape is pulled from end to end, not from its middle.
func (k drawKind) long() bool { return k == petal || k == slot }

// pulled returns the shape pulled from one place to another, and where it stands.
func (f figure) pulled(from, to geom.Point) (geom.Shape, geom.Point, figure, error) {
	way := to.Sub(from)
	deg := math.Atan2(float64(way.Y), float64(way.X)) * 180 / math.Pi
	f.across, f.turnDeg = 2*from.Distance(to), deg+90
	if !f.kind.long() {
		s, err := f.shape()
		return s, from, f, err
	}
	f.across, f.turnDeg = from.Distance(to), deg
	middle := from.Add(geom.Point{X: way.X / 2, Y: way.Y / 2})
	if f.kind == petal {
		f.turnDeg = deg - 90
		o, err := pen.PetalBetween(from, to, f.share)
		return geom.Shape{Outline: o.Moved(middle.Neg())}, middle, f, err
	}
	s, err := f.shape()
	return s, middle, f, err
}

// putWhole places the shape of the fields at a place.
func (d *penHand) putWhole(at geom.Point) {
	f, err := d.panel.figure()
	if err != nil {
		d.w.Say(sentence(err))
		return
	}
	shape, err := f.shape()
	d.putShape(shape, at, err)
}

// putPulled places the shape that was pulled, and keeps its measures in the fields.
func (d *penHand) putPulled(from, to geom.Point) {
	f, err := d.panel.figure()
	if err != nil {
		d.w.Say(sentence(err))
		return
	}
	shape, at, f, err := f.pulled(from, to)
	if err == nil {
		d.panel.keep(f)
	}
	d.putShape(shape, at, err)
}

// putShape makes a shape a motif, with its own copies where it has any.
func (d *penHand) putShape(shape geom.Shape, at geom.Point, err error) {
	if err != nil {
		d.w.Say(sentence(err))
		return
	}
	if d.wreath.Plain() || shape.Round() && d.wreath.Centre == at {
		o := shape.Outline
		if shape.Round() {
			o = pen.OfDisc(shape.Disc)
		}
		if err := d.s.sized(o); err != nil {
			d.w.Say(sentence(err))
			return
		}
		d.place("Draw Motif", shape, at)
		return
	}
	d.commit("Draw Motif", d.wreathed(shape.Moved(at)))
}

// wreathed returns the contours of a shape with their own copies.
func (d *penHand) wreathed(shape geom.Shape) []pen.Stroke {
	o := shape.Outline
	if shape.Round() {
		o = pen.OfDisc(shape.Disc)
	}
	var whole []pen.Stroke
	for _, s := range pen.Of(o) {
		whole = append(whole, d.wreath.Whole(s)...)
	}
	return whole
}
