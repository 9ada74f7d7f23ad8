package geom

import (
	"math"
	"sort"
)

// A view is what one walk around a ring tells.
type view struct {
	box   Box
	area2 float64
	// repeats says that a point is the same as the one before.
	repeats bool
	// convex rings turn one way only, once around, and are not thin: they surely
	// come nowhere within Snap of themselves.
	convex bool
}

// look walks around a ring of three points or more.
func look(r Ring) view {
	n := len(r)
	origin, at, way := r[0], r[n-1], r[n-1].Sub(r[n-2])
	lo, hi := origin, origin
	var area2 float64
	var repeats, left, right, back bool
	swings, across := 0, false
	for i, p := range r {
		lo = Point{min(lo.X, p.X), min(lo.Y, p.Y)}
		hi = Point{max(hi.X, p.X), max(hi.Y, p.Y)}
		next := p.Sub(at)
		turn := way.Cross(next)
		left, right = left || turn < 0, right || turn > 0
		if turn == 0 {
			repeats = repeats || p == at
			back = back || way.Dot(next) < 0
		}
		if next.X != 0 && (next.X > 0) != across || i == 0 {
			swings++ // the first of all is counted too
			across = next.X > 0
		}
		area2 += float64(at.Sub(origin).Cross(p.Sub(origin)))
		at, way = p, next
	}
	box := Box{lo, hi, true}
	thin := float64(Snap) * float64(box.Width()+box.Height()) * 8
	return view{
		box: box, area2: area2, repeats: repeats,
		convex: left != right && !back && swings <= 3 && math.Abs(area2) > thin,
	}
}

func sign(l Length) int {
	switch {
	case l > 0:
		return 1
	case l < 0:
		return -1
	}
	return 0
}

// A chain is a part of a ring that goes one way across and one way along, so it
// can't meet itself: the segments from point from to point to, counted on past
// the end of the ring.
type chain struct {
	from, to      int
	across, along int // the signs of its way; zero where it is square to an axis
	lo, hi        Point
}

// maxChains bounds the chains that are compared each with each.
const maxChains = 128

// A looker keeps its lists from ring to ring.
type looker struct{ chains []chain }

// apart reports whether r surely comes nowhere within Snap of itself. It may say
// no for a ring that does not, which costs time and nothing else.
func (l *looker) apart(r Ring) bool {
	l.chains = chainsOf(r, l.chains[:0])
	if len(l.chains) > maxChains {
		return false
	}
	for i := range l.chains {
		c := &l.chains[i]
		for j := range l.chains[:i] {
			d := &l.chains[j]
			if c.lo.X <= d.hi.X && d.lo.X <= c.hi.X && c.lo.Y <= d.hi.Y && d.lo.Y <= c.hi.Y && !chainsApart(r, c, d) {
				return false
			}
		}
	}
	return true
}

// chainsOf appends the chains of r, their boxes grown by Snap, until there are too
// many.
func chainsOf(r Ring, chains []chain) []chain {
	c := chain{}
	add := func(end int) {
		p, q := r[c.from], r[end%len(r)]
		c.to = end
		c.lo = Point{min(p.X, q.X) - Snap, min(p.Y, q.Y) - Snap}
		c.hi = Point{max(p.X, q.X) + Snap, max(p.Y, q.Y) + Snap}
		chains = append(chains, c)
	}
	for i, p := range r {
		q := r[0]
		if i+1 < len(r) {
			q = r[i+1]
		}
		dx, dy := sign(q.X-p.X), sign(q.Y-p.Y)
		if dx*c.across < 0 || dy*c.along < 0 {
			if add(i); len(chains) > maxChains {
				return chains
			}
			c = chain{from: i}
		}
		if dx != 0 {
			c.across = dx
		}
		if dy != 0 {
			c.along = dy
		}
	}
	add(len(r))
	return chains
}

// within returns the segments of c that may meet the box, by halving: along a
// chain they follow each other.
func (c *chain) within(r Ring, lo, hi Point) (from, to int) {
	n := len(r)
	// A point is before the box where the chain has still to come to it.
	before := func(p Point) bool {
		return c.across > 0 && p.X < lo.X || c.across < 0 && p.X > hi.X || c.along > 0 && p.Y < lo.Y || c.along < 0 && p.Y > hi.Y
	}
	after := func(p Point) bool {
		return c.across > 0 && p.X > hi.X || c.across < 0 && p.X < lo.X || c.along > 0 && p.Y > hi.Y || c.along < 0 && p.Y < lo.Y
	}
	// The first segment whose end is not before the box, and the first whose
	// start is after it.
	from = c.from + sort.Search(c.to-c.from, func(k int) bool { return !before(r[(c.from+k+1)%n]) })
	to = from + sort.Search(c.to-from, func(k int) bool { return after(r[(from+k)%n]) })
	return from, to
}

// chainsApart reports whether two chains come within Snap of each other only
// where they join, and don't fold there.
func chainsApart(r Ring, c, d *chain) bool {
	n := len(r)
	lo := Point{max(c.lo.X, d.lo.X), max(c.lo.Y, d.lo.Y)}
	hi := Point{min(c.hi.X, d.hi.X), min(c.hi.Y, d.hi.Y)}
	i0, i1 := c.within(r, lo, hi)
	j0, j1 := d.within(r, lo, hi)
	for i := i0; i < i1; i++ {
		p, q := r[i%n], r[(i+1)%n]
		for j := j0; j < j1; j++ {
			switch {
			case (i+1)%n == j%n:
				if folded(p, q, r[(j+1)%n]) {
					return false
				}
			case (j+1)%n == i%n:
				if folded(r[j%n], p, q) {
					return false
				}
			case nearby(p, q, r[j%n], r[(j+1)%n]):
				return false
			}
		}
	}
	return true
}

// folded reports whether the line abc comes back along itself.
func folded(a, b, c Point) bool {
	p, q := b.Sub(a), c.Sub(b)
	return p.Dot(q) < 0 && math.Abs(float64(p.Cross(q))) < float64(Snap)*math.Max(p.Norm(), q.Norm())
}

// nearby reports whether the segments ab and cd may come within Snap of each
// other.
func nearby(a, b, c, d Point) bool {
	if max(a.X, b.X)+Snap < min(c.X, d.X) || max(c.X, d.X)+Snap < min(a.X, b.X) ||
		max(a.Y, b.Y)+Snap < min(c.Y, d.Y) || max(c.Y, d.Y)+Snap < min(a.Y, b.Y) {
		return false
	}
	return straddles(a, b, c, d) && straddles(c, d, a, b)
}

// straddles reports whether c and d are not both farther than Snap on the same
// side of the line ab.
func straddles(a, b, c, d Point) bool {
	far := float64(Snap) * b.Sub(a).Norm()
	o1, o2 := float64(Orient(a, b, c)), float64(Orient(a, b, d))
	return !(o1 > far && o2 > far || o1 < -far && o2 < -far)
}
