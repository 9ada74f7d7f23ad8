package raster

import (
	"slices"

	"tsugime/repeat/geom"
)

// Where cut-outs lie over one another the paper is cut once. So each place is
// given to the first cut-out that holds it, first by where its box begins, then
// by its number, an order that is the same in every repeat. A cut-out that meets
// earlier ones is painted as all of them together less the earlier ones alone;
// both are unions of a few shapes, worked out here, once for every zoom.

// unionChord is how near straight pieces stay to a curve that goes into a union:
// 0.0015 of a pixel at 15 px/mm, a level at 40 px/mm.
const unionChord = 100 * geom.Nanometre

// A crowd is shapes and where to find them.
type crowd struct {
	shapes  []geom.Shape
	boxes   []geom.Box
	index   *geom.Index
	all     rect
	periods []geom.Point
}

func newCrowd(shapes []geom.Shape, periods []geom.Point) *crowd {
	c := &crowd{shapes: shapes, periods: periods, boxes: make([]geom.Box, len(shapes))}
	var all geom.Box
	for i, s := range shapes {
		c.boxes[i] = s.Bounds()
		all = all.Union(c.boxes[i])
	}
	c.index, c.all = geom.NewIndex(c.boxes), rectOf(all)
	return c
}

// before returns the earlier shapes that shape i meets, copies among them.
func (c *crowd) before(i int) []geom.Shape {
	var found []geom.Shape
	box, at := c.boxes[i], c.boxes[i].Min
	copies(c.all, c.periods, rectOf(box.Grown(1)), func(d geom.Point) {
		c.index.Visit(box.Moved(d.Neg()), func(j int) bool {
			from := c.boxes[j].Min.Add(d)
			if from.Less(at) || from == at && j < i {
				if s := c.shapes[j].Moved(d); meet(s, c.shapes[i]) {
					found = append(found, s)
				}
			}
			return true
		})
	})
	return found
}

// meet reports whether two shapes lie over one another; outlines that touch may
// be counted too.
func meet(a, b geom.Shape) bool {
	if a.Round() && b.Round() {
		d := a.Disc.Centre.Sub(b.Disc.Centre)
		return 2*d.Norm() < float64(a.Disc.Diameter+b.Disc.Diameter)
	}
	ra, rb := a.Rings(geom.Chord), b.Rings(geom.Chord)
	for _, r := range ra {
		for _, q := range rb {
			if crossing(r, q) {
				return true
			}
		}
	}
	return inside(rb, ra) || inside(ra, rb)
}

// inside reports whether a ring of inner begins in outer.
func inside(inner, outer []geom.Ring) bool {
	for _, r := range inner {
		if len(r) > 0 && winding(outer, r[0]) != 0 {
			return true
		}
	}
	return false
}

func winding(rings []geom.Ring, p geom.Point) int {
	n := 0
	for _, r := range rings {
		n += r.Winding(p)
	}
	return n
}

// crossing reports whether two rings have a point in common.
func crossing(r, q geom.Ring) bool {
	box := r.Bounds().Intersect(q.Bounds())
	if box.Empty() {
		return false
	}
	for i, a := range r {
		b := r[(i+1)%len(r)]
		if !geom.BoxOf(a, b).Meets(box) {
			continue
		}
		for j, c := range q {
			if cut2(a, b, c, q[(j+1)%len(q)]) {
				return true
			}
		}
	}
	return false
}

// cut2 reports whether the pieces a–b and c–d have a point in common.
func cut2(a, b, c, d geom.Point) bool {
	if max(a.X, b.X) < min(c.X, d.X) || max(c.X, d.X) < min(a.X, b.X) ||
		max(a.Y, b.Y) < min(c.Y, d.Y) || max(c.Y, d.Y) < min(a.Y, b.Y) {
		return false
	}
	s0, s1 := geom.Orient(a, b, c), geom.Orient(a, b, d)
	t0, t1 := geom.Orient(c, d, a), geom.Orient(c, d, b)
	return !(s0 > 0 && s1 > 0 || s0 < 0 && s1 < 0 || t0 > 0 && t1 > 0 || t0 < 0 && t1 < 0)
}

// plain reports whether the signed areas of an outline's contours add up to what
// it covers: none crosses itself or another, and going in, rims and holes turn
// in turn.
func plain(o geom.Outline) bool {
	rings := o.Rings(geom.Chord)
	turn := 0
	for i, r := range rings {
		if crossesItself(r) {
			return false
		}
		for _, q := range rings[:i] {
			if crossing(r, q) {
				return false
			}
		}
		if len(r) < 3 {
			continue
		}
		// Just inside a ring the outline winds once or, in a hole, not at all.
		around := winding(slices.Concat(rings[:i], rings[i+1:]), r[0])
		own := 1
		if r.Area2() < 0 {
			own = -1
		}
		if around == 0 && turn == 0 {
			turn = own
		}
		if !(around == 0 && own == turn || around != 0 && around+own == 0) {
			return false
		}
	}
	return true
}

// crossesItself reports whether pieces of r that are not neighbours meet.
func crossesItself(r geom.Ring) bool {
	if convex(r) {
		return false
	}
	n := len(r)
	for i := range n {
		for j := i + 2; j < n; j++ {
			if (j+1)%n != i && cut2(r[i], r[i+1], r[j], r[(j+1)%n]) {
				return true
			}
		}
	}
	return false
}

// convex reports whether r turns one way all along, and once around.
func convex(r geom.Ring) bool {
	n := len(r)
	var turn, ups int
	for i, b := range r {
		a, c := r[(i+n-1)%n], r[(i+1)%n]
		o := geom.Orient(a, b, c)
		if o > 0 && turn < 0 || o < 0 && turn > 0 {
			return false
		}
		if o > 0 {
			turn = 1
		} else if o < 0 {
			turn = -1
		}
		if a.Less(b) != b.Less(c) {
			ups++
		}
	}
	return ups == 2
}

// part returns what shape i adds to those before it, as rings in millimetres;
// ok is false where the shape can stay as it is.
func (c *crowd) part(i int) (o *outline, ok bool) {
	s := c.shapes[i]
	before := c.before(i)
	if len(before) == 0 && (s.Round() || plain(s.Outline)) {
		return nil, false
	}
	var rings [][]geom.Ring
	for _, b := range before {
		rings = append(rings, b.Rings(unionChord))
	}
	less, err := geom.Union(rings)
	if err != nil {
		return nil, false
	}
	all, err := geom.Union(append(rings, s.Rings(unionChord)))
	if err != nil {
		return nil, false
	}
	return difference(all.Boundaries, less.Boundaries), true
}

// difference returns an outline that has the area of a less that of b, which lies
// in a. Lines of both are left out.
func difference(a, b []geom.Boundary) *outline {
	o := &outline{sign: 1}
	same := func(x, y geom.Boundary) bool { return slices.Equal(x.Points, y.Points) }
	var rings [][]vec
	add := func(from, but []geom.Boundary, back bool) {
		for _, l := range from {
			if slices.ContainsFunc(but, func(m geom.Boundary) bool { return same(l, m) }) {
				continue
			}
			ring := make([]vec, len(l.Points))
			for k, p := range l.Points {
				ring[k] = vec{p.X.MM(), p.Y.MM()}
			}
			if back {
				slices.Reverse(ring)
			}
			rings = append(rings, ring)
			o.box = o.box.Union(l.Points.Bounds())
			o.pieces += len(ring)
		}
	}
	add(a, b, false)
	add(b, a, true)
	for level := range o.flat {
		o.flat[level].Store(&rings)
	}
	return o
}
