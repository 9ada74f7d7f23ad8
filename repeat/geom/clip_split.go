package geom

import (
	"cmp"
	"math"
	"slices"
)

// A node is a place on a contour where it meets an edge: on its curve number
// curve at the parameter t, which is below 1.
type node struct {
	at    Point
	curve int
	t     float64
}

// A stop is a place on an edge of a ring, so far along it.
type stop struct {
	at    Point
	along float64
}

// A rim is an edge of a ring from p to q and the stops between.
type rim struct {
	p, q   Point
	box    Box
	length float64
	stops  []stop
}

// A clipper holds a sound outline and rings, both split where they meet.
type clipper struct {
	o        Outline
	contours [][]curve
	nodes    [][]node
	rims     []rim
}

// joint is the gap below which a crossing is the corner beside it: the rounding
// of both.
const joint = 2 * Grid

func newClipper(o Outline, rings []Ring) *clipper {
	c := &clipper{o: o, contours: make([][]curve, len(o)), nodes: make([][]node, len(o))}
	boxes := make([]Box, len(rings))
	for i, r := range rings {
		boxes[i] = r.Bounds().Grown(joint)
		for k, q := range r {
			p := r[(k+len(r)-1)%len(r)]
			c.rims = append(c.rims, rim{p: p, q: q, box: BoxOf(p, q).Grown(joint), length: q.Sub(p).Norm()})
		}
	}
	for i := range o {
		c.contours[i] = o[i].curves(nil)
		for k := range c.contours[i] {
			hull := c.contours[i][k].hull()
			if !slices.ContainsFunc(boxes, hull.Meets) {
				continue
			}
			c.contours[i][k] = c.contours[i][k].straightened()
			for e := range c.rims {
				if hull.Meets(c.rims[e].box) {
					c.meet(i, k, &c.rims[e])
				}
			}
		}
		c.sortNodes(i)
	}
	return c
}

// straightened returns a cubic that is a line in all but name as one.
func (c curve) straightened() curve {
	if c.Kind != Cubic {
		return c
	}
	way := c.End.Sub(c.from)
	far := float64(Grid) * way.Norm()
	for _, p := range [2]Point{c.C1, c.C2} {
		d := p.Sub(c.from)
		if math.Abs(float64(way.Cross(d))) > far || way.Dot(d) < 0 || way.Dot(d) > way.Dot(way) {
			return c
		}
	}
	if way == (Point{}) {
		return c
	}
	return curve{c.from, Segment{Kind: Line, End: c.End}}
}

// meet splits curve k of contour i and the edge where they meet.
func (c *clipper) meet(i, k int, e *rim) {
	v := c.contours[i][k]
	next := (k + 1) % len(c.contours[i])
	var buffer [8]float64
	for _, t := range v.meets(e.p, e.q, buffer[:0]) {
		at := v.point(v.from, t)
		if near, _ := e.near(at, joint); !near {
			continue
		}
		n := node{at, k, t}
		switch {
		case beside(at, v.from) && t < 0.5:
			n = node{at: v.from, curve: k}
		case beside(at, v.End) && t > 0.5:
			n = node{at: v.End, curve: next}
		case beside(at, e.p):
			n.at = e.p
		case beside(at, e.q):
			n.at = e.q
		}
		c.add(i, n, e)
	}
	if near, _ := e.near(v.from, Grid); near {
		c.add(i, node{at: v.from, curve: k}, e)
	}
	if near, _ := e.near(v.End, Grid); near {
		c.add(i, node{at: v.End, curve: next}, e)
	}
	if v.Kind == Line {
		line := rim{p: v.from, q: v.End, length: v.End.Sub(v.from).Norm()}
		if near, along := line.near(e.p, Grid); near && !beside(e.p, v.from) && !beside(e.p, v.End) {
			c.add(i, node{e.p, k, along / line.length}, e)
		}
	}
}

// add notes a node on contour i and the same place as a stop of e.
func (c *clipper) add(i int, n node, e *rim) {
	c.nodes[i] = append(c.nodes[i], n)
	if n.at != e.p && n.at != e.q {
		_, along := e.near(n.at, joint)
		e.stops = append(e.stops, stop{n.at, along})
	}
}

// near reports whether at is within slack of the edge, and how far along it.
func (e rim) near(at Point, slack Length) (near bool, along float64) {
	d, way := at.Sub(e.p), e.q.Sub(e.p)
	along = float64(way.Dot(d)) / e.length
	off := float64(way.Cross(d)) / e.length
	s := float64(slack)
	return math.Abs(off) <= s && along >= -s && along <= e.length+s, along
}

// beside reports whether a split point at p is the corner q.
func beside(p, q Point) bool { return (p.X-q.X).Abs() <= joint && (p.Y-q.Y).Abs() <= joint }

// sortNodes puts the nodes of contour i in order and drops what is there twice:
// the same place, without the contour leaving it in between.
func (c *clipper) sortNodes(i int) {
	nodes := c.nodes[i]
	slices.SortFunc(nodes, func(a, b node) int {
		return cmp.Or(cmp.Compare(a.curve, b.curve), cmp.Compare(a.t, b.t))
	})
	c.nodes[i] = slices.CompactFunc(nodes, func(a, b node) bool {
		if a.at != b.at || a.curve != b.curve {
			return false
		}
		v := c.contours[i][a.curve]
		return beside(v.point(v.from, (a.t+b.t)/2), a.at)
	})
}

// A stretch is a part of an outline or of a ring between two nodes.
type stretch struct {
	from, to    Point
	segments    []Segment
	first, last Point // headings at its ends
	used        bool
}

func lineStretch(p, q Point) stretch {
	return stretch{from: p, to: q, segments: []Segment{{Kind: Line, End: q}}, first: q.Sub(p), last: q.Sub(p)}
}

// between returns the curves of contour i from its node a to its node b, each cut
// to what lies between.
func (c *clipper) between(i int, a, b node) []curve {
	curves := c.contours[i]
	if a.curve == b.curve && a.t < b.t {
		v := curves[a.curve]
		return []curve{{a.at, v.part(a.t, b.t, a.at, b.at)}}
	}
	var out []curve
	for k, t := a.curve, a.t; ; k, t = (k+1)%len(curves), 0 {
		v := curves[k]
		start := v.from
		if k == a.curve && len(out) == 0 {
			start = a.at
		}
		if k == b.curve && len(out) > 0 || k == b.curve && b.t > t {
			if b.t > 0 {
				out = append(out, curve{start, v.part(t, b.t, start, b.at)})
			}
			return out
		}
		out = append(out, curve{start, v.part(t, 1, start, v.End)})
	}
}

// stretchOf joins curves.
func stretchOf(curves []curve) stretch {
	s := stretch{from: curves[0].from, to: curves[len(curves)-1].End}
	s.segments = make([]Segment, len(curves))
	for i, v := range curves {
		s.segments[i] = v.Segment
	}
	s.first, _ = curves[0].heading()
	_, s.last = curves[len(curves)-1].heading()
	return s
}
