package stencil

import (
	"math"
	"slices"
)

// fromCorner finds the webs that begin at the corner where side v begins. Of two
// outlines' straight pieces that face each other one end at least is a corner,
// so nothing is missed. A corner can only be the end of a web that runs off
// between the normals of its two sides.
func (w *search) fromCorner(v int32) {
	if w.buried != nil && w.buried[v] {
		return
	}
	s := &w.sides.sides[v]
	in := &w.sides.sides[s.before]
	before, after := in.b.sub(in.a), s.b.sub(s.a)
	slackBefore, slackAfter := 1e-9*before.norm(), 1e-9*after.norm()
	w.wedge, w.facing = wedgeAt(w.wedge, s.a, before, after, w.reach), w.facing[:0]
	w.sides.visitWedge(w.wedge, func(i int32, by place) bool {
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
		w.facing = append(w.facing, facing{q, l, i, by})
		return true
	})
	nearestFirst(w.facing)
	w.ends = w.ends[:0]
	for k, f := range w.facing {
		if slices.ContainsFunc(w.ends, func(e place) bool { return e.near(f.q, grain) }) || w.shaded(s.a, w.facing[:k], f) {
			continue
		}
		o := &w.sides.sides[f.i]
		if lk := (link{s.a, f.q, f.l, s.cut, o.cut, v, f.i, f.by.sub(o.drawn)}); w.open(&lk) {
			w.found, w.ends = append(w.found, lk.ordered(s.drawn)), append(w.ends, f.q)
		}
	}
}

// shaded reports whether something nearer that faces the corner at p comes into
// the circle over the web to f: the quick answer of open for rims that run on
// behind one another.
func (w *search) shaded(p place, nearer []facing, f facing) bool {
	if f.l <= grain {
		return false
	}
	c := circleOver(p, f.q, f.l)
	for _, n := range nearer {
		if c.meets(n.q) {
			return true
		}
	}
	return false
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
