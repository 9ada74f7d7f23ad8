package geom

import (
	"cmp"
	"slices"
)

// An edge joins two vertices of the arrangement; pieces that coincide are one
// edge. turns is how often rings run along it, less how often they run against,
// counted by layer.
type edge struct {
	u, v  int32
	way   Point // from u to v
	turns layer
	run   int32 // as in piece; negative where the edge goes against the run
}

// A half is one direction of an edge: 2e runs with edge e, 2e+1 against it.
type half = int32

// edges is the arrangement as a graph: its vertices, and the halves that leave
// each of them by rising angle, x to y.
type edges struct {
	all   []edge
	runs  []run
	at    []Point // vertices, where a piece first came by
	start []int32
	out   []half  // those that leave v: out[start[v]:start[v+1]]
	where []int32 // the place of each half in out
}

// newEdges joins the snapped pieces to a graph.
func newEdges(t torus, pieces []piece, runs []run, of func(ring int32) layer) *edges {
	g := &edges{runs: runs}
	ids := newPlaces(2 * len(pieces))
	id := func(p Point) int32 {
		i, fresh := ids.id(t.canon(p))
		if fresh {
			g.at = append(g.at, p)
		}
		return i
	}
	all := make([]edge, 0, len(pieces))
	for _, s := range pieces {
		e := edge{id(s.a), id(s.b), s.b.Sub(s.a), of(s.ring), s.run}
		if e.u > e.v || e.u == e.v && e.way.Less(Point{}) {
			e = edge{e.v, e.u, e.way.Neg(), -e.turns, -e.run}
		}
		all = append(all, e)
	}
	g.all = merged(all, len(g.at))
	g.sort()
	return g
}

// merged makes one edge of those that coincide and drops those along which rings
// run as often one way as the other.
func merged(all []edge, vertices int) []edge {
	all = sorted(all, vertices, func(e *edge) int32 { return e.u }, func(e, f edge) int {
		switch {
		case e.v != f.v:
			return cmp.Compare(e.v, f.v)
		case e.way.X != f.way.X:
			return cmp.Compare(e.way.X, f.way.X)
		case e.way.Y != f.way.Y:
			return cmp.Compare(e.way.Y, f.way.Y)
		}
		return cmp.Compare(e.run, f.run)
	})
	kept := all[:0]
	for i := 0; i < len(all); {
		e, j := all[i], i+1
		for e.run == 0 && j < len(all) && all[j].run == 0 && all[j].u == e.u && all[j].v == e.v && all[j].way == e.way {
			e.turns += all[j].turns
			j++
		}
		if e.turns != 0 {
			kept = append(kept, e)
		}
		i = j
	}
	return kept
}

// sort orders the halves about each vertex.
func (g *edges) sort() {
	g.start = make([]int32, len(g.at)+1)
	halves := half(2 * len(g.all))
	for h := range halves {
		g.start[g.origin(h)+1]++
	}
	for v := range g.at {
		g.start[v+1] += g.start[v]
	}
	next := slices.Clone(g.start)
	g.out = make([]half, halves)
	for h := range halves {
		at := &next[g.origin(h)]
		g.out[*at] = h
		*at++
	}
	g.where = make([]int32, halves)
	for v := range g.at {
		leaving := g.out[g.start[v]:g.start[v+1]]
		if len(leaving) > 2 { // one or two are in order around a vertex as they come
			slices.SortFunc(leaving, func(h, k half) int {
				return cmp.Or(byAngle(g.heading(h), g.heading(k)), cmp.Compare(h, k))
			})
		}
		for i, h := range leaving {
			g.where[h] = g.start[v] + int32(i)
		}
	}
}

// byAngle compares the angles of two ways, from 0 at x over y, exactly.
func byAngle(p, q Point) int {
	upper := func(p Point) int {
		if p.Y > 0 || p.Y == 0 && p.X > 0 {
			return 0
		}
		return 1
	}
	if c := upper(p) - upper(q); c != 0 {
		return c
	}
	return cmp.Compare(0, p.Cross(q))
}

func (g *edges) origin(h half) int32 {
	if h&1 == 0 {
		return g.all[h>>1].u
	}
	return g.all[h>>1].v
}

// way returns how far h goes.
func (g *edges) way(h half) Point {
	if h&1 == 0 {
		return g.all[h>>1].way
	}
	return g.all[h>>1].way.Neg()
}

// turns returns how often rings run along h.
func (g *edges) turns(h half) layer {
	if h&1 == 0 {
		return g.all[h>>1].turns
	}
	return -g.all[h>>1].turns
}

// run returns the run that h stands for, if any, and whether h goes with it.
func (g *edges) run(h half) (r run, with, ok bool) {
	k := g.all[h>>1].run
	if k == 0 {
		return run{}, false, false
	}
	with = (k > 0) == (h&1 == 0)
	return g.runs[max(k, -k)-1], with, true
}

// heading returns the way in which h leaves its vertex.
func (g *edges) heading(h half) Point {
	r, with, ok := g.run(h)
	switch {
	case !ok:
		return g.way(h)
	case with:
		return r.at(r.from + 1).Sub(r.at(r.from))
	}
	return r.at(r.to - 1).Sub(r.at(r.to))
}

// before and after return the neighbours of h about its vertex by falling and by
// rising angle.
func (g *edges) before(h half) half {
	v, i := g.origin(h), g.where[h]
	if i == g.start[v] {
		i = g.start[v+1]
	}
	return g.out[i-1]
}

func (g *edges) after(h half) half {
	v, i := g.origin(h), g.where[h]+1
	if i == g.start[v+1] {
		i = g.start[v]
	}
	return g.out[i]
}

// above returns the half at v next before the way straight up and a bit to the
// right: the place that winding looks at lies just after it.
func (g *edges) above(v int32) half {
	up := Point{Y: -1}
	best := half(-1)
	var bestBelow bool
	for _, h := range g.out[g.start[v]:g.start[v+1]] {
		below := byAngle(g.heading(h), up) <= 0
		if best < 0 || below && !bestBelow ||
			below == bestBelow && byAngle(g.heading(h), g.heading(best)) > 0 {
			best, bestBelow = h, below
		}
	}
	return best
}

// places gives equal points equal numbers, counting up from zero.
type places struct {
	table  []int32 // index+1, open addressing
	points []Point
}

func newPlaces(most int) *places {
	size := 16
	for size < 2*most {
		size *= 2
	}
	return &places{table: make([]int32, size)}
}

// id returns the number of p and whether it is a new one.
func (s *places) id(p Point) (int32, bool) {
	mask := uint64(len(s.table) - 1)
	k := uint64(p.X)*0x9E3779B97F4A7C15 ^ uint64(p.Y)*0xC2B2AE3D27D4EB4F
	k ^= k >> 29
	k *= 0xBF58476D1CE4E5B9
	for i := (k ^ k>>32) & mask; ; i = (i + 1) & mask {
		switch at := s.table[i]; {
		case at == 0:
			s.points = append(s.points, p)
			s.table[i] = int32(len(s.points))
			return int32(len(s.points)) - 1, true
		case s.points[at-1] == p:
			return at - 1, false
		}
	}
}
