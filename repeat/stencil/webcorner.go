package stencil

import "math"

// fromCorner finds the webs that begin at the corner where side v begins. Of two
// outlines' straight pieces that face each other one end at least is a corner,
// so nothing is missed. A corner can only be the end of a web that runs off
// between the normals of its two sides.
func (w *search) fromCorner(v int32) {
	s := &w.sides.sides[v]
	in := &w.sides.sides[s.before]
	before, after := in.b.sub(in.a), s.b.sub(s.a)
	slackBefore, slackAfter := 1e-9*before.norm(), 1e-9*after.norm()
	lo, hi := cone(s.a, before, after, w.reach)
	w.ends = w.ends[:0]
	w.sides.visit(w.sides.over(lo, hi), func(i int32, by place) bool {
		o := &w.sides.sides[i]
		q, at := o.nearest(s.a.sub(by))
		q = q.add(by)
		d := q.sub(s.a)
		l2 := d.dot(d)
		if l2 >= w.reach*w.reach || l2 <= grain*grain && (i == v || i == s.before) {
			return true
		}
		l := math.Sqrt(l2)
		if d.dot(before) < -l*slackBefore || d.dot(after) > l*slackAfter || !first(v, i, o.next, at, d) {
			return true
		}
		for _, e := range w.ends {
			if e.near(q, grain) {
				return true
			}
		}
		if lk := (link{s.a, q, l, s.cut, o.cut, v, i, by.sub(o.drawn)}); w.open(&lk) {
			w.found, w.ends = append(w.found, lk.ordered(s.drawn)), append(w.ends, q)
		}
		return true
	})
}

// first reports whether the corner v is the one to tell of a web that ends on
// side i: between two corners the earlier one tells, of a corner and its copies
// the one that looks ahead, which is along d.
func first(v, i, next int32, at end, d place) bool {
	switch at {
	case within:
		return true
	case atEnd:
		i = next
	}
	return i > v || i == v && place{}.less(d)
}

// ordered returns l moved so that its first cut-out, the one that comes first, is
// where it is drawn.
func (l link) ordered(drawn place) link {
	l.way = l.way.add(drawn)
	if l.a > l.b || l.a == l.b && l.ea > l.eb {
		l.p, l.q, l.a, l.b, l.ea, l.eb = l.q, l.p, l.b, l.a, l.eb, l.ea
		drawn, l.way = drawn.sub(l.way), l.way.times(-1)
	}
	l.p, l.q = l.p.add(drawn), l.q.add(drawn)
	return l
}

// open reports whether the circle over l holds no rim and lies over paper, or
// where the ends are one, whether they touch in this point only.
func (w *search) open(l *link) bool {
	if l.width <= grain {
		l.width = 0
		return w.pinched(l.p)
	}
	c := circleOver(l.p, l.q, l.width)
	free := true
	w.sides.visit(w.sides.within(c.m, c.half+2*grain), func(i int32, by place) bool {
		free = !c.meetsSide(&w.sides.sides[i], by)
		return free
	})
	for g := range w.discs {
		if !free {
			return false
		}
		w.holes = w.discs[g].about(w.holes[:0], c.m, c.half+2*grain)
		for _, h := range w.holes {
			free = free && !c.meetsHole(h)
		}
	}
	return free && !w.covers.holds(c.m)
}

// cone returns a rectangle around the directions in which a corner's webs run,
// reach long: from one side's normal to the other's, on the side where the
// corner sticks out.
func cone(at, before, after place, reach float64) (lo, hi place) {
	far := reach + 2*grain
	n1, n2 := place{-before.y, before.x}.times(1/before.norm()), place{-after.y, after.x}.times(1/after.norm())
	cos := n1.dot(n2)
	if cos <= 0 {
		return place{at.x - far, at.y - far}, place{at.x + far, at.y + far}
	}
	// The line between tips that far out touches the arc between the normals.
	far *= 1 / math.Sqrt((1+cos)/2)
	tips := []place{n1.times(far), n2.times(far)}
	switch turn := before.cross(after); {
	case turn > 0:
		tips = []place{n1.times(-far), n2.times(-far)}
	case turn == 0:
		tips = append(tips, n1.times(-far))
	}
	lo, hi = at, at
	for _, t := range tips {
		p := at.add(t)
		lo, hi = place{min(lo.x, p.x), min(lo.y, p.y)}, place{max(hi.x, p.x), max(hi.y, p.y)}
	}
	return place{lo.x - 2*grain, lo.y - 2*grain}, place{hi.x + 2*grain, hi.y + 2*grain}
}
