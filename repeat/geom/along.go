package geom

import "math"

// At returns the point of s, which starts at a, at the parameter t in 0…1, put on
// the grid. At 0 it is a, at 1 the end.
func (s Segment) At(a Point, t float64) Point { return s.point(a, t) }

// Split returns the two parts of s, which starts at a, before and after the
// parameter t in 0…1. Together they run as s does, but for the grid: an arc stays
// an arc on its circle, a cubic a cubic.
func (s Segment) Split(a Point, t float64) (first, second Segment) {
	c := curve{a, s}
	at := s.point(a, t)
	return c.part(0, t, a, at), c.part(t, 1, at, s.End)
}

// Headings returns the directions in which s, which starts at a, runs at its start
// and at its end; their lengths mean nothing. They are zero where s stays at a.
func (s Segment) Headings(a Point) (first, last Point) {
	if s.straight(a) {
		return s.End.Sub(a), s.End.Sub(a)
	}
	return curve{a, s}.heading()
}

// Nearest returns the parameter and the place, put on the grid, where s, which
// starts at a, comes nearest to p. A cubic is looked at in even pieces within Chord
// and its nearest piece then searched, so of two places that are equally near
// within Chord either may be found.
func (s Segment) Nearest(a, p Point) (t float64, at Point) {
	c := curve{a, s}
	if s.straight(a) {
		c.Segment = Segment{Kind: Line, End: s.End}
	}
	n := c.flatCount()
	if c.Kind == Cubic {
		n = max(n, 8) // a flat cubic may still run unevenly
	}
	off := func(t float64) float64 {
		x, y := c.at(a, t)
		return math.Hypot(x-float64(p.X), y-float64(p.Y))
	}
	best, least := 0.0, math.Inf(1)
	for i := range n {
		from, to := float64(i)/float64(n), float64(i+1)/float64(n)
		ax, ay := c.at(a, from)
		bx, by := c.at(a, to)
		dx, dy := bx-ax, by-ay
		share := 0.0
		if l2 := dx*dx + dy*dy; l2 > 0 {
			share = min(max(((float64(p.X)-ax)*dx+(float64(p.Y)-ay)*dy)/l2, 0), 1)
		}
		if t := from + share*(to-from); off(t) < least {
			best, least = t, off(t)
		}
	}
	if c.Kind != Line {
		best = narrowed(off, max(best-1/float64(n), 0), min(best+1/float64(n), 1))
	}
	for _, end := range [2]float64{0, 1} {
		if off(end) <= off(best) {
			best = end
		}
	}
	return best, c.point(a, best)
}

// narrowed returns where between from and to a function that falls and then rises
// is least, by thirds until they are finer than any curve on the grid.
func narrowed(f func(t float64) float64, from, to float64) float64 {
	for range 80 {
		third := (to - from) / 3
		if f(from+third) <= f(to-third) {
			to -= third
		} else {
			from += third
		}
	}
	return (from + to) / 2
}
