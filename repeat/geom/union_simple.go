package geom

import "math"

// simple reports whether r surely comes nowhere within Snap of itself. It may
// say no for a ring that does not, which costs time and nothing else.
func simple(r Ring) bool { return convex(r) || apart(r) }

// convex reports whether r turns one way only, once around, and is not thin.
func convex(r Ring) bool {
	n := len(r)
	at, way := r[n-1], r[n-1].Sub(r[n-2])
	sense, swings, across := int64(0), 0, 0
	for _, p := range r {
		next := p.Sub(at)
		turn := way.Cross(next)
		if turn == 0 && way.Dot(next) < 0 || turn > 0 && sense < 0 || turn < 0 && sense > 0 {
			return false
		}
		if turn != 0 {
			sense = turn
		}
		if s := sign(next.X); s != 0 && s != across {
			swings++ // the first of all is counted too
			across = s
		}
		at, way = p, next
	}
	if sense == 0 || swings > 3 {
		return false
	}
	b := around(r)
	thin := float64(Snap) * float64(b.Width()+b.Height()) * 8
	return math.Abs(r.Area2()) > thin
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
	from, to int
	box      Box
}

// maxChains bounds the chains that are compared each with each.
const maxChains = 128

// apart compares the chains of r.
func apart(r Ring) bool {
	chains := chainsOf(r)
	if len(chains) > maxChains {
		return false
	}
	for i, c := range chains {
		for _, d := range chains[:i] {
			if shared := c.box.Intersect(d.box); !shared.Empty() && !chainsApart(r, c, d, shared) {
				return false
			}
		}
	}
	return true
}

// chainsOf parts r into chains, their boxes grown by Snap.
func chainsOf(r Ring) []chain {
	n := len(r)
	var chains []chain
	var across, along int
	c := chain{}
	for i := range n {
		p, q := r[i], r[(i+1)%n]
		dx, dy := sign(q.X-p.X), sign(q.Y-p.Y)
		if dx*across < 0 || dy*along < 0 {
			chains = append(chains, c)
			c, across, along = chain{from: i}, 0, 0
		}
		if dx != 0 {
			across = dx
		}
		if dy != 0 {
			along = dy
		}
		c.to = i + 1
	}
	chains = append(chains, c)
	for i, c := range chains {
		chains[i].box = BoxOf(r[c.from], r[c.to%n]).Grown(Snap)
	}
	return chains
}

// chainsApart reports whether two chains come within Snap of each other only
// where they join, and don't fold there.
func chainsApart(r Ring, c, d chain, shared Box) bool {
	n := len(r)
	var near []int
	for j := d.from; j < d.to; j++ {
		if !outside(r[j%n], r[(j+1)%n], shared) {
			near = append(near, j)
		}
	}
	for i := c.from; i < c.to && len(near) > 0; i++ {
		p, q := r[i%n], r[(i+1)%n]
		if outside(p, q, shared) {
			continue
		}
		for _, j := range near {
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
