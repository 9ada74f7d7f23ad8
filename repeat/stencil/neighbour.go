package stencil

import (
	"math"

	"tsugime/repeat/geom"
	"tsugime/repeat/pattern"
)

// A rim is a piece of a cut-out's edge: the whole circle of a disc, or one
// straight piece of an outline. Places are in nanometres, as float64: exact
// below 9 km.
type rim struct {
	round          bool
	ax, ay, bx, by float64 // a straight piece from a to b; a circle's centre is a
	r              float64 // of a circle
	item           int     // which of the neighbourhood's items it belongs to
}

// An item is a cut-out of the neighbourhood: one of those given, or a copy of
// one by a whole number of periods.
type item struct {
	owner int // index among the cut-outs given
	shift geom.Point
	box   geom.Box
}

// A neighbourhood is cut-outs together with as many of their copies as can lie
// within reach of them.
type neighbourhood struct {
	cuts  []pattern.CutOut
	items []item // the first len(cuts) are the cut-outs themselves
	rims  []rim
	first []int // the rims of item i are rims[first[i]:first[i+1]]
	index *geom.Index
}

// around gathers the neighbourhood of the cut-outs: with no period they stand
// alone, with one they repeat along it, with two on the torus.
func around(cuts []pattern.CutOut, reach geom.Length, periods ...geom.Point) *neighbourhood {
	n := &neighbourhood{cuts: cuts}
	var all geom.Box
	for i, c := range cuts {
		box := c.Shape.Bounds()
		all = all.Union(box)
		n.items = append(n.items, item{owner: i, box: box})
	}
	window := all.Grown(reach)
	for i := range cuts {
		box := n.items[i].box
		near := geom.BoxOf(window.Min.Sub(box.Max), window.Max.Sub(box.Min))
		for _, p := range copies(near, periods) {
			if p != (geom.Point{}) {
				n.items = append(n.items, item{owner: i, shift: p, box: box.Moved(p)})
			}
		}
	}
	n.addRims()
	return n
}

// copies returns the sums of periods that lie in the window.
func copies(window geom.Box, periods []geom.Point) []geom.Point {
	switch len(periods) {
	case 0:
		return nil
	case 1:
		p := periods[0]
		reach := math.Max(window.Min.Norm(), window.Max.Norm()) + window.Max.Sub(window.Min).Norm()
		k := int(reach/p.Norm()) + 1
		var at []geom.Point
		for i := -k; i <= k; i++ {
			if q := p.Times(i); window.Holds(q) {
				at = append(at, q)
			}
		}
		return at
	}
	return pattern.Lattice{A: periods[0], B: periods[1]}.Places(window)
}

func (n *neighbourhood) addRims() {
	flat := make([][]geom.Ring, len(n.cuts))
	for i, c := range n.cuts {
		if !c.Shape.Round() {
			flat[i] = c.Shape.Rings(geom.Chord)
		}
	}
	var boxes []geom.Box
	n.first = make([]int, 1, len(n.items)+1)
	for i, it := range n.items {
		if s := n.cuts[it.owner].Shape; s.Round() {
			c := s.Disc.Centre.Add(it.shift)
			n.rims = append(n.rims, rim{round: true, ax: float64(c.X), ay: float64(c.Y), r: float64(s.Disc.Diameter) / 2, item: i})
			boxes = append(boxes, it.box)
		}
		for _, ring := range flat[it.owner] {
			for k, b := range ring {
				a := ring[(k+len(ring)-1)%len(ring)].Add(it.shift)
				b = b.Add(it.shift)
				n.rims = append(n.rims, rim{ax: float64(a.X), ay: float64(a.Y), bx: float64(b.X), by: float64(b.Y), item: i})
				boxes = append(boxes, geom.BoxOf(a, b))
			}
		}
		n.first = append(n.first, len(n.rims))
	}
	n.index = geom.NewIndex(boxes)
}

// A gap is the shortest way between two rims: from p to q, width nanometres
// long. Where circles overlap the width is negative.
type gap struct {
	px, py, qx, qy float64
	width          float64
}

// between returns the shortest way from e to f.
func between(e, f rim) gap {
	switch {
	case e.round && f.round:
		dx, dy := f.ax-e.ax, f.ay-e.ay
		d := math.Hypot(dx, dy)
		if d == 0 {
			return gap{e.ax, e.ay, e.ax, e.ay, -e.r - f.r}
		}
		ux, uy := dx/d, dy/d
		return gap{e.ax + ux*e.r, e.ay + uy*e.r, f.ax - ux*f.r, f.ay - uy*f.r, d - e.r - f.r}
	case e.round:
		qx, qy := f.nearest(e.ax, e.ay)
		dx, dy := qx-e.ax, qy-e.ay
		d := math.Hypot(dx, dy)
		if d == 0 {
			return gap{qx, qy, qx, qy, -e.r}
		}
		return gap{e.ax + dx/d*e.r, e.ay + dy/d*e.r, qx, qy, d - e.r}
	case f.round:
		g := between(f, e)
		return gap{g.qx, g.qy, g.px, g.py, g.width}
	}
	return pieces(e, f)
}

// pieces returns the shortest way between two straight pieces: one of its ends
// is an end of a piece, unless they cross.
func pieces(e, f rim) gap {
	if crossing(e, f) {
		return gap{e.ax, e.ay, e.ax, e.ay, 0}
	}
	best := gap{width: math.Inf(1)}
	try := func(px, py, qx, qy float64) {
		if d := math.Hypot(qx-px, qy-py); d < best.width {
			best = gap{px, py, qx, qy, d}
		}
	}
	x, y := f.nearest(e.ax, e.ay)
	try(e.ax, e.ay, x, y)
	x, y = f.nearest(e.bx, e.by)
	try(e.bx, e.by, x, y)
	x, y = e.nearest(f.ax, f.ay)
	try(x, y, f.ax, f.ay)
	x, y = e.nearest(f.bx, f.by)
	try(x, y, f.bx, f.by)
	return best
}

// crossing reports whether two straight pieces have a point in common that is an
// end of neither.
func crossing(e, f rim) bool {
	side := func(r rim, x, y float64) float64 {
		return float64((r.bx-r.ax)*(y-r.ay)) - float64((r.by-r.ay)*(x-r.ax))
	}
	return side(e, f.ax, f.ay)*side(e, f.bx, f.by) < 0 && side(f, e.ax, e.ay)*side(f, e.bx, e.by) < 0
}

// nearest returns the point of a straight piece nearest to x, y.
func (e rim) nearest(x, y float64) (float64, float64) {
	dx, dy := e.bx-e.ax, e.by-e.ay
	t := dx*(x-e.ax) + dy*(y-e.ay)
	l := dx*dx + dy*dy
	switch {
	case t <= 0 || l == 0:
		return e.ax, e.ay
	case t >= l:
		return e.bx, e.by
	}
	t /= l
	return e.ax + t*dx, e.ay + t*dy
}

// distance returns how far x, y is from the rim; within a disc it is negative.
func (e rim) distance(x, y float64) float64 {
	if e.round {
		return math.Hypot(x-e.ax, y-e.ay) - e.r
	}
	qx, qy := e.nearest(x, y)
	return math.Hypot(x-qx, y-qy)
}

// boxAround returns the box of reach nanometres around a point.
func boxAround(x, y, reach float64) geom.Box {
	c := geom.Point{X: geom.Length(math.Round(x)), Y: geom.Length(math.Round(y))}
	return geom.BoxOf(c).Grown(geom.Length(math.Ceil(reach)))
}

// outlineIndex finds the items that are outlines, or returns nil where all are
// discs.
func (n *neighbourhood) outlineIndex() *geom.Index {
	boxes, any := make([]geom.Box, len(n.items)), false
	for i, it := range n.items {
		if !n.cuts[it.owner].Shape.Round() {
			boxes[i], any = it.box, true
		}
	}
	if !any {
		return nil
	}
	return geom.NewIndex(boxes)
}

// paper reports whether a place lies in no outline of the neighbourhood.
func (n *neighbourhood) paper(x, y float64, outlines *geom.Index) bool {
	p := geom.Point{X: geom.Length(math.Round(x)), Y: geom.Length(math.Round(y))}
	clear := true
	outlines.Visit(geom.BoxOf(p), func(i int) bool {
		it := n.items[i]
		s := n.cuts[it.owner].Shape
		clear = s.Round() || !s.Contains(p.Sub(it.shift))
		return clear
	})
	return clear
}
