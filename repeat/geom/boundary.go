package geom

import "math"

// A Boundary is one line where what is cut out and what is left meet. Seen along
// the line, the cut-out lies on the side where a ring of positive area has its
// inside: to the right on the sheet, y being down.
type Boundary struct {
	// Points run from the first point to the last, without a jump at a seam.
	Points Ring
	// Wrap is the way from the first point to the copy of it that closes the
	// line: a sum of periods. It is zero for a line that closes on itself.
	Wrap Point
}

// Closed reports whether b closes on itself and does not run around the torus.
func (b Boundary) Closed() bool { return b.Wrap == Point{} }

// Area2 returns twice the signed area of a closed boundary in square nanometres:
// positive around a cut-out, negative around paper that a cut-out encloses. For a
// boundary that runs around the torus it is zero.
func (b Boundary) Area2() float64 {
	if !b.Closed() {
		return 0
	}
	return b.Points.Area2()
}

// Bounds returns the box around b, the closing piece included.
func (b Boundary) Bounds() Box {
	box := b.Points.Bounds()
	if len(b.Points) == 0 {
		return box
	}
	return box.With(b.Points[0].Add(b.Wrap))
}

// next returns the point after i.
func (b Boundary) next(i int) Point {
	if i+1 < len(b.Points) {
		return b.Points[i+1]
	}
	return b.Points[0].Add(b.Wrap)
}

// lengthMM returns how long b is, in millimetres.
func (b Boundary) lengthMM() float64 {
	var sum float64
	for i, p := range b.Points {
		sum += b.next(i).Sub(p).Norm()
	}
	return sum / float64(Millimetre)
}

// under returns the area in square nanometres between b, which runs around the
// torus, and the straight line through from in the direction of along, for one
// turn of b: the integral of the distance from that line over the way along it.
func (b Boundary) under(from, along Point) float64 {
	length := along.Norm()
	ux, uy := float64(along.X)/length, float64(along.Y)/length
	off := func(p Point) (s, t float64) {
		x, y := float64(p.X-from.X), float64(p.Y-from.Y)
		return float64(ux*x) + float64(uy*y), float64(ux*y) - float64(uy*x)
	}
	var sum float64
	for i, p := range b.Points {
		s0, t0 := off(p)
		s1, t1 := off(b.next(i))
		sum += float64((t0 + t1) * (s1 - s0))
	}
	return -sum / 2
}

// modulo returns v modulo m, in 0 … m.
func modulo(v, m float64) float64 { return v - m*math.Floor(v/m) }
