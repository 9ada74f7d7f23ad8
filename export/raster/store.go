package raster

import (
	"math"
	"slices"

	"tsugime/repeat/geom"
)

// A store keeps shapes so that those near a place are found together: discs in
// bins of their centres, outlines in an index of their boxes.
type store struct {
	box    rect // around everything; empty where there is nothing
	discs  []disc
	reach  float64 // the largest radius
	bins   rect    // where centres lie
	nx, ny int
	size   float64 // of a bin
	start  []int32 // the discs of bin b are discs[start[b]:start[b+1]]

	curves []curve
	index  *geom.Index
	cost   float64 // of painting everything once, in discs
}

func newStore(discs []disc, curves []curve) *store {
	inf := math.Inf(1)
	s := &store{box: rect{inf, inf, -inf, -inf}, curves: curves, cost: float64(len(discs))}
	for _, d := range discs {
		s.box = s.box.with(rect{d.x - d.r, d.y - d.r, d.x + d.r, d.y + d.r})
		s.reach = max(s.reach, d.r)
	}
	boxes := make([]geom.Box, len(curves))
	for i, c := range curves {
		boxes[i] = c.shape.box.Moved(c.move)
		s.box = s.box.with(rectOf(boxes[i]))
		s.cost += float64(c.shape.pieces)
	}
	s.index = geom.NewIndex(boxes)
	s.sort(discs)
	return s
}

func (r rect) with(o rect) rect {
	return rect{math.Min(r.x0, o.x0), math.Min(r.y0, o.y0), math.Max(r.x1, o.x1), math.Max(r.y1, o.y1)}
}

// sort puts the discs into bins, row by row, about two to a bin. Within a bin
// they keep the order they came in.
func (s *store) sort(discs []disc) {
	if len(discs) == 0 {
		return
	}
	b := rect{math.Inf(1), math.Inf(1), math.Inf(-1), math.Inf(-1)}
	for _, d := range discs {
		b = b.with(rect{d.x, d.y, d.x, d.y})
	}
	w, h := b.x1-b.x0, b.y1-b.y0
	n := float64(len(discs))
	s.size = math.Max(math.Max(math.Sqrt(2*w*h/n), 2*math.Max(w, h)/n), 1e-6)
	s.bins, s.nx, s.ny = b, int(w/s.size)+1, int(h/s.size)+1
	s.start = make([]int32, s.nx*s.ny+1)
	bin := func(d disc) int {
		return min(int((d.y-b.y0)/s.size), s.ny-1)*s.nx + min(int((d.x-b.x0)/s.size), s.nx-1)
	}
	for _, d := range discs {
		s.start[bin(d)+1]++
	}
	for i := 1; i < len(s.start); i++ {
		s.start[i] += s.start[i-1]
	}
	next := slices.Clone(s.start)
	s.discs = make([]disc, len(discs))
	for _, d := range discs {
		c := bin(d)
		s.discs[next[c]] = d
		next[c]++
	}
}

// near calls do with runs of discs that hold all that meet w.
func (s *store) near(w rect, do func(run []disc)) {
	x0, x1 := w.x0-s.reach, w.x1+s.reach
	y0, y1 := w.y0-s.reach, w.y1+s.reach
	if len(s.discs) == 0 || x0 > s.bins.x1 || x1 < s.bins.x0 || y0 > s.bins.y1 || y1 < s.bins.y0 {
		return
	}
	if x0 <= s.bins.x0 && x1 >= s.bins.x1 && y0 <= s.bins.y0 && y1 >= s.bins.y1 {
		do(s.discs)
		return
	}
	bin := func(v, from float64, n int) int { return int(min(max((v-from)/s.size, 0), float64(n-1))) }
	i0, i1 := bin(x0, s.bins.x0, s.nx), bin(x1, s.bins.x0, s.nx)
	for j := bin(y0, s.bins.y0, s.ny); j <= bin(y1, s.bins.y0, s.ny); j++ {
		do(s.discs[s.start[j*s.nx+i0]:s.start[j*s.nx+i1+1]])
	}
}

// curvesIn calls do with each outline whose box meets w.
func (s *store) curvesIn(w rect, do func(c curve)) {
	if len(s.curves) == 0 {
		return
	}
	far := func(v float64) geom.Length {
		return geom.MM(math.Min(math.Max(v, -1e8), 1e8))
	}
	box := geom.BoxOf(geom.Point{X: far(w.x0) - 1, Y: far(w.y0) - 1}, geom.Point{X: far(w.x1) + 1, Y: far(w.y1) + 1})
	s.index.Visit(box, func(i int) bool {
		do(s.curves[i])
		return true
	})
}
