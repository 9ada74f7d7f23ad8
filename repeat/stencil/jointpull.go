package stencil

import (
	"math"

	"tsugime/repeat/geom"
)

// tightened pulls a line that keeps the clearance tight between cut-outs grown
// by it: points that are not needed go, the others move to where the line is
// shorter. The ends slide along the edges of the field.
func (n *neighbourhood) tightened(line []geom.Point, clearance float64) []geom.Point {
	line = n.pulled(line, clearance)
	settled := map[turnOf]bool{}
	const sweeps = 12
	for range sweeps {
		before := lengthOf(line)
		line = n.swept(line, clearance, settled)
		if lengthOf(line) > before*(1-1e-4) {
			break
		}
	}
	return line
}

// A turnOf is a corner of a line with its two neighbours.
type turnOf struct{ a, p, b geom.Point }

// swept moves each point once and drops those that are not needed. Corners that
// did not move between the same neighbours are settled.
func (n *neighbourhood) swept(line []geom.Point, clearance float64, settled map[turnOf]bool) []geom.Point {
	out := []geom.Point{n.slid(line[0], line[1], clearance)}
	for i := 1; i < len(line)-1; i++ {
		now := turnOf{out[len(out)-1], line[i], line[i+1]}
		if settled[now] {
			out = append(out, now.p)
			continue
		}
		if n.passes(now.a, now.b, clearance) {
			continue
		}
		p := n.shortened(now.a, now.p, now.b, clearance)
		if p == now.p {
			settled[now] = true
		}
		out = append(out, p)
	}
	return append(out, n.slid(line[len(line)-1], out[len(out)-1], clearance))
}

// slid moves an end of the line along the edge of the field towards the height
// of its neighbour.
func (n *neighbourhood) slid(end, next geom.Point, clearance float64) geom.Point {
	return furthest(end, geom.Point{X: end.X, Y: next.Y}, func(p geom.Point) bool { return n.passes(p, next, clearance) })
}

// shortened moves p so that the way from a over p to b gets shorter: towards the
// straight line between them, then in ever smaller steps in eight directions.
func (n *neighbourhood) shortened(a, p, b geom.Point, clearance float64) geom.Point {
	ok := func(p geom.Point) bool { return n.passes(a, p, clearance) && n.passes(p, b, clearance) }
	direct := rim{ax: float64(a.X), ay: float64(a.Y), bx: float64(b.X), by: float64(b.Y)}
	x, y := direct.nearest(float64(p.X), float64(p.Y))
	best := furthest(p, place{x, y}.point(), ok)
	long := func(p geom.Point) float64 { return p.Sub(a).Norm() + b.Sub(p).Norm() }
	length := long(best)
	for step := clearance; step > clearance/20; step /= 2 {
		for k := range 8 {
			sin, cos := math.Sincos(float64(k) * math.Pi / 4)
			q := placeOf(best).add(place{cos * step, sin * step}).point()
			if l := long(q); l < length-step*1e-3 && ok(q) {
				best, length = q, l
			}
		}
	}
	return best
}

// furthest returns the point furthest from p towards q that is allowed, as
// halving finds it. p itself is.
func furthest(p, q geom.Point, allowed func(geom.Point) bool) geom.Point {
	if allowed(q) {
		return q
	}
	for range 6 {
		m := geom.Point{X: (p.X + q.X) / 2, Y: (p.Y + q.Y) / 2}
		if allowed(m) {
			p = m
		} else {
			q = m
		}
	}
	return p
}

func lengthOf(line []geom.Point) float64 {
	var sum float64
	for i, b := range line[1:] {
		sum += b.Sub(line[i]).Norm()
	}
	return sum
}
