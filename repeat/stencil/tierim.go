package stencil

import (
	"math"

	"tsugime/repeat/geom"
)

// Samples of a rim: as many as fit a tie's width apart, within these bounds.
const (
	fewSamples  = 16
	manySamples = 48
)

// A rimPlace is a place on a rim.
type rimPlace struct {
	at     geom.Point
	corner bool
}

// cornerDeg is how much a rim turns at what counts as a corner.
const cornerDeg = 40

// corner reports whether a line turns by much at a point.
func corner(b geom.Boundary, i int) bool {
	p := b.Points[i]
	from := b.Points[(i+len(b.Points)-1)%len(b.Points)]
	if i == 0 {
		from = from.Sub(b.Wrap)
	}
	in, out := placeOf(p.Sub(from)), placeOf(lineEnd(b, i).Sub(p))
	return math.Abs(math.Atan2(in.cross(out), in.dot(out))) > cornerDeg*math.Pi/180
}

// samples returns places along a line, moved back by shift, from its topmost place
// on: evenly, and its corners between.
func (m *paperMap) samples(b geom.Boundary, shift geom.Point, width geom.Length, finer int) []rimPlace {
	length := lineMM(b) * float64(geom.Millimetre)
	n := 4 * finer * min(max(int(math.Ceil(length/4/float64(width))), fewSamples/4), manySamples/4)
	if !b.Closed() {
		n = max(n, 4*finer*ribbonTies(b.Wrap, 1))
	}
	top, into := topOf(b)
	places := make([]rimPlace, 0, n)
	even := 0
	step, left := length/float64(n), into
	turn := geom.Point{}
	for k := range len(b.Points) + 1 {
		i := (top + k) % len(b.Points)
		if k > 0 && i == 0 {
			turn = b.Wrap
		}
		p, q := b.Points[i], lineEnd(b, i)
		way := placeOf(q.Sub(p))
		l := way.norm()
		isCorner := corner(b, i)
		if isCorner && left > 0 && (k > 0 && k < len(b.Points) || k == len(b.Points) && into > 0) {
			places = append(places, rimPlace{p.Add(turn).Sub(shift), true})
		}
		for ; left < l && even < n; left += step {
			at := p.Add(way.times(left / l).point())
			places = append(places, rimPlace{at.Add(turn).Sub(shift), isCorner && at == p})
			even++
		}
		left -= l
	}
	return places
}

// topOf returns the piece of a line that has its topmost place, and how far along
// it that place is: the middle of a piece that runs level.
func topOf(b geom.Boundary) (piece int, along float64) {
	for i, p := range b.Points {
		if p.Less(b.Points[piece]) {
			piece = i
		}
	}
	top := b.Points[piece]
	before := (piece + len(b.Points) - 1) % len(b.Points)
	after := lineEnd(b, piece)
	lead := top.Sub(b.Points[before])
	if before > piece {
		lead = lead.Add(b.Wrap)
	}
	rise, fall := lead.Y.Abs(), after.Y-top.Y
	switch {
	case fall <= geom.Chord && fall <= rise:
		return piece, after.Sub(top).Norm() / 2
	case rise <= geom.Chord:
		return before, lead.Norm() / 2
	}
	return piece, 0
}
