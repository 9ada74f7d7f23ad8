package stencil

import (
	"math"
	"slices"

	"tsugime/repeat/geom"
)

// drawn returns the line over the places of a route and out to both edges of the
// field.
func (n *neighbourhood) drawn(at []place, field Field, clearance float64) []geom.Point {
	var way []geom.Point
	for i := 0; i+2 < len(at); i += 3 {
		m := at[i+1]
		way = append(way, n.beside(m, at[i], clearance).point(), m.point(), n.beside(m, at[i+2], clearance).point())
	}
	line := n.leftBy(way[0], field.Left, clearance)
	slices.Reverse(line)
	line = append(line, way[0])
	for i, b := range way[1:] {
		line = append(line, n.led(way[i], b, clearance)...)
	}
	return append(line, n.leftBy(way[len(way)-1], field.Right(), clearance)...)
}

// beside returns a place that has the clearance on the way from the middle of a
// web to p.
func (n *neighbourhood) beside(m, p place, clearance float64) place {
	for range 6 {
		if n.clearAt(p, clearance) >= clearance {
			return p
		}
		p = m.add(p).times(0.5)
	}
	return m
}

// Heights at which a line may leave the field, a quarter of the clearance apart.
const (
	straightOut = 128 // looked at for a straight way out
	ledOut      = 12  // looked at for one that is led around cut-outs
)

// leftBy returns a way from p out to the edge of the field at x, without p
// itself: straight, or to the nearest height where the way is clear.
func (n *neighbourhood) leftBy(p geom.Point, x geom.Length, clearance float64) []geom.Point {
	var edges []geom.Point
	for k := range straightOut {
		dy := clearance / 4 * float64((k+1)/2)
		if k%2 == 1 {
			dy = -dy
		}
		edge := place{float64(x), float64(p.Y) + dy}
		if n.clearAt(edge, clearance) < clearance {
			continue
		}
		edges = append(edges, edge.point())
		if n.passes(p, edge.point(), clearance) {
			return edges[len(edges)-1:]
		}
	}
	for _, edge := range edges[:min(ledOut, len(edges))] {
		if way := n.led(p, edge, clearance); n.allPass(p, way, clearance) {
			return way
		}
	}
	return []geom.Point{{X: x, Y: p.Y}}
}

// bent returns a way from a to b that keeps the clearance, without a itself:
// straight where that is clear, else over a middle that is pushed away from the
// nearest rims, and so on with both halves.
func (n *neighbourhood) bent(a, b geom.Point, clearance float64, depth int) []geom.Point {
	if depth == 0 || n.passes(a, b, clearance) {
		return []geom.Point{b}
	}
	m := n.pushed(geom.Point{X: (a.X + b.X) / 2, Y: (a.Y + b.Y) / 2}, clearance)
	return append(n.bent(a, m, clearance, depth-1), n.bent(m, b, clearance, depth-1)...)
}

// bends is how often a way is halved to lead it around cut-outs.
const bends = 7

// pushed moves p away from the nearest rim until it has the clearance and a
// little more, or gives up.
func (n *neighbourhood) pushed(p geom.Point, clearance float64) geom.Point {
	for range 32 {
		x, y, least := float64(p.X), float64(p.Y), math.Inf(1)
		var near rim
		n.index.Visit(boxAround(x, y, 1.2*clearance), func(k int) bool {
			if d := n.rims[k].distance(x, y); d < least {
				least, near = d, n.rims[k]
			}
			return true
		})
		if least >= 1.1*clearance {
			break
		}
		qx, qy := near.ax, near.ay
		if !near.round {
			qx, qy = near.nearest(x, y)
		}
		d := max(math.Hypot(x-qx, y-qy), 1)
		by := (1.15*clearance - least) / d
		p = place{x + (x-qx)*by, y + (y-qy)*by}.point()
	}
	return p
}

// led returns a way from a to b through a pocket, without a itself: bent about
// what is in the way, or where that fails uphill from both to the middle of the
// pocket, where the clearance is greatest.
func (n *neighbourhood) led(a, b geom.Point, clearance float64) []geom.Point {
	way := n.bent(a, b, clearance, bends)
	if n.allPass(a, way, clearance) {
		return way
	}
	up, down := n.climb(a, clearance), n.climb(b, clearance)
	over := append(up[1:], n.bent(up[len(up)-1], down[len(down)-1], clearance, bends)...)
	slices.Reverse(down)
	over = append(over, down[1:]...)
	if n.allPass(a, over, clearance) {
		return over
	}
	return way
}

func (n *neighbourhood) allPass(a geom.Point, way []geom.Point, clearance float64) bool {
	for _, b := range way {
		if !n.passes(a, b, clearance) {
			return false
		}
		a = b
	}
	return true
}

// climb goes from p uphill to where no rim is farther on any side: away from all
// rims that are nearly nearest, in steps that shrink where they gain nothing. It
// returns the way, p first.
func (n *neighbourhood) climb(p geom.Point, clearance float64) []geom.Point {
	way, at := []geom.Point{p}, placeOf(p)
	best, step := n.clearAt(at, clearance), clearance
	for range 300 {
		if step < clearance/100 {
			break
		}
		var away place
		n.index.Visit(boxAround(at.x, at.y, best+clearance/5), func(k int) bool {
			if d := n.rims[k].distance(at.x, at.y); d < best+clearance/20 {
				away = away.add(n.rims[k].away(at))
			}
			return true
		})
		l := away.norm()
		if l == 0 {
			break
		}
		next := placeOf(at.add(away.times(step / l)).point())
		if c := n.clearAt(next, clearance); c > best && n.passes(at.point(), next.point(), clearance) {
			way, at, best = append(way, next.point()), next, c
		} else {
			step *= 0.7
		}
	}
	return way
}

// clearAt returns how far the nearest rim is; it is looked for from clearance on
// outwards.
func (n *neighbourhood) clearAt(p place, clearance float64) float64 {
	for reach := 2 * clearance; ; reach *= 2 {
		least := reach
		n.index.Visit(boxAround(p.x, p.y, reach), func(k int) bool {
			least = min(least, n.rims[k].distance(p.x, p.y))
			return true
		})
		if least < reach || reach > float64(geom.Metre) {
			return least
		}
	}
}

// away is the direction from the rim to p.
func (e rim) away(p place) place {
	q := place{e.ax, e.ay}
	if !e.round {
		q.x, q.y = e.nearest(p.x, p.y)
	}
	d := p.sub(q)
	if l := d.norm(); l > 0 {
		return d.times(1 / l)
	}
	return place{}
}
