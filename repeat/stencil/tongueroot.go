package stencil

import "math"

// sharp is the cosine of the turn from which a rim has a corner for Tongues: 45°,
// more than any straight piece of a curve turns.
const sharp = math.Sqrt2 / 2

// roots returns the ways across paper from the sharp corners of the coast, each to
// where a side comes nearest: paper that grows narrower from its root on has no
// web, and its root begins where the opening beside it ends.
func (c *coast) roots(reach float64) []link {
	var all []link
	g := c.scene.sides
	for v := range g.sides {
		s := &g.sides[v]
		in := &g.sides[s.before]
		before, after := in.b.sub(in.a), s.b.sub(s.a)
		if before.cross(after) <= 0 || before.dot(after) > sharp*before.norm()*after.norm() || !c.closed && v == 0 {
			continue
		}
		seen := map[int32]bool{}
		g.visit(g.within(s.a, reach), func(i int32, by place) bool {
			if seen[i] || int(i) == v || i == s.before {
				return true
			}
			seen[i] = true
			q, _ := g.sides[i].nearest(s.a)
			d := q.sub(s.a)
			l := d.norm()
			if l <= grain || l >= reach || before.cross(d) > 0 && after.cross(d) > 0 || g.crosses(s.a, q) {
				return true
			}
			all = append(all, link{p: s.a, q: q, width: l, ea: int32(v), eb: i})
			return true
		})
	}
	return all
}

// crosses reports whether a side crosses the way from p to q between its ends.
func (g *sideGrid) crosses(p, q place) bool {
	d := q.sub(p)
	l := d.norm()
	lo := place{math.Min(p.x, q.x), math.Min(p.y, q.y)}
	hi := place{math.Max(p.x, q.x), math.Max(p.y, q.y)}
	met := false
	g.visit(g.over(lo, hi), func(i int32, by place) bool {
		s := &g.sides[i]
		a, along := s.a.add(by).sub(p), s.b.sub(s.a)
		turn := d.cross(along)
		if turn == 0 {
			return true
		}
		t, k := a.cross(along)/turn*l, a.cross(d)/turn
		met = t > 2*grain && t < l-2*grain && k >= 0 && k <= 1
		return !met
	})
	return met
}
