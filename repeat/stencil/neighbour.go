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
	item           int     // which of the cut-outs it belongs to
}

// A neighbourhood is cut-outs that stand as they are, with their rims where they
// can be found by place.
type neighbourhood struct {
	cuts  []pattern.CutOut
	boxes []geom.Box
	rims  []rim
	first []int // the rims of cut-out i are rims[first[i]:first[i+1]]
	index *geom.Index
}

// around gathers the neighbourhood of the cut-outs.
func around(cuts []pattern.CutOut) *neighbourhood {
	n := &neighbourhood{cuts: cuts, boxes: make([]geom.Box, len(cuts))}
	for i, c := range cuts {
		n.boxes[i] = c.Shape.Bounds()
	}
	n.addRims()
	return n
}

func (n *neighbourhood) addRims() {
	var boxes []geom.Box
	n.first = make([]int, 1, len(n.cuts)+1)
	for i, c := range n.cuts {
		if s := c.Shape; s.Round() {
			at := s.Disc.Centre
			n.rims = append(n.rims, rim{round: true, ax: float64(at.X), ay: float64(at.Y), r: float64(s.Disc.Diameter) / 2, item: i})
			boxes = append(boxes, n.boxes[i])
		} else {
			for _, ring := range s.Outline.Rings(geom.Chord) {
				for k, b := range ring {
					a := ring[(k+len(ring)-1)%len(ring)]
					n.rims = append(n.rims, rim{ax: float64(a.X), ay: float64(a.Y), bx: float64(b.X), by: float64(b.Y), item: i})
					boxes = append(boxes, geom.BoxOf(a, b))
				}
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

// outlineIndex finds the cut-outs that are outlines, or returns nil where all are
// discs.
func (n *neighbourhood) outlineIndex() *geom.Index {
	boxes, any := make([]geom.Box, len(n.cuts)), false
	for i, c := range n.cuts {
		if !c.Shape.Round() {
			boxes[i], any = n.boxes[i], true
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
		s := n.cuts[i].Shape
		clear = s.Round() || !s.Contains(p)
		return clear
	})
	return clear
}
