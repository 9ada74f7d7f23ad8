package stencil

import (
	"math"

	"tsugime/repeat/geom"
)

// A hole is a disc at home in the cell.
type hole struct {
	c   place
	r   float64
	cut int32 // which of the cut-outs it is
}

// A holeGrid holds discs of like size by the part of the cell their centre is in.
type holeGrid struct {
	mesh
	holes []hole // part by part
	start []int32
	most  float64 // the largest radius
}

// like is how much larger the largest disc of a grid may be than the smallest:
// with much more, a search about a small disc would walk over many parts.
const like = 4

// holeGrids sorts discs into grids, the smallest first. reach is how far from rim
// to rim they will be sought.
func (f *frame) holeGrids(holes []hole, reach float64) []holeGrid {
	var grids []holeGrid
	for len(holes) > 0 {
		least := math.Inf(1)
		for _, h := range holes {
			least = min(least, h.r)
		}
		var now, later []hole
		for _, h := range holes {
			if h.r <= like*max(least, 1) {
				now = append(now, h)
			} else {
				later = append(later, h)
			}
		}
		grids = append(grids, f.holeGrid(now, reach))
		holes = later
	}
	return grids
}

func (f *frame) holeGrid(holes []hole, reach float64) holeGrid {
	g := holeGrid{holes: make([]hole, len(holes))}
	for _, h := range holes {
		g.most = max(g.most, h.r)
	}
	g.mesh = f.meshOf((2*g.most+reach)/2, len(holes))
	g.start = make([]int32, g.nu*g.nv+1)
	parts := make([]int32, len(holes))
	for i, h := range holes {
		parts[i] = int32(g.part(h.c))
		g.start[parts[i]+1]++
	}
	for i := 1; i < len(g.start); i++ {
		g.start[i] += g.start[i-1]
	}
	next := append([]int32(nil), g.start...)
	for i, h := range holes {
		g.holes[next[parts[i]]] = h
		next[parts[i]]++
	}
	return g
}

// about appends the discs whose rims come within radius of p, each moved to
// where it is met.
func (g *holeGrid) about(found []hole, p place, radius float64) []hole {
	w := g.within(p, radius+g.most)
	for j := w.j0; j <= w.j1; j++ {
		row, tv := wrap(j, g.nv)
		for i := w.i0; i <= w.i1; {
			// Parts that follow one another within the cell are looked through at once.
			col, tu := wrap(i, g.nu)
			last := min(g.nu-1, col+w.i1-i)
			by := g.shift(tu, tv)
			for _, h := range g.holes[g.start[row*g.nu+col]:g.start[row*g.nu+last+1]] {
				h.c.x += by.x
				h.c.y += by.y
				if m := radius + h.r; (h.c.x-p.x)*(h.c.x-p.x)+(h.c.y-p.y)*(h.c.y-p.y) < m*m {
					found = append(found, h)
				}
			}
			i += last - col + 1
		}
	}
	return found
}

// A side is a straight piece of an outline's rim; a is at home in the cell.
type side struct {
	a, b         place
	drawn        place // the way from here to where it is drawn
	cut          int32
	before, next int32 // the sides that meet it at a and at b
}

// An end tells where on a side its nearest point is.
type end int8

const (
	within end = iota
	atStart
	atEnd
)

// nearest returns the point of s nearest to p.
func (s *side) nearest(p place) (place, end) {
	d := s.b.sub(s.a)
	t, l := p.sub(s.a).dot(d), d.dot(d)
	switch {
	case t <= 0:
		return s.a, atStart
	case t >= l:
		return s.b, atEnd
	}
	return s.a.add(d.times(t / l)), within
}

// A sideGrid holds the sides of outlines by the parts they run through.
type sideGrid struct {
	mesh
	sides []side
	start []int32
	met   []meeting
}

// A meeting is side i, moved by so many periods, running through a part.
type meeting struct{ i, tu, tv int32 }

func (f *frame) sideGrid(sides []side) *sideGrid {
	if len(sides) == 0 {
		return nil
	}
	var sum float64
	for _, s := range sides {
		sum += s.b.sub(s.a).norm()
	}
	g := &sideGrid{sides: sides}
	g.mesh = f.meshOf(max(1.5*sum/float64(len(sides)), math.Sqrt(f.det/float64(2*len(sides)))), len(sides))
	g.start = make([]int32, g.nu*g.nv+1)
	g.runs(func(part int, m meeting) { g.start[part+1]++ })
	for i := 1; i < len(g.start); i++ {
		g.start[i] += g.start[i-1]
	}
	g.met = make([]meeting, g.start[len(g.start)-1])
	next := append([]int32(nil), g.start...)
	g.runs(func(part int, m meeting) {
		g.met[next[part]] = m
		next[part]++
	})
	return g
}

// runs tells each part that each side runs through, row by row.
func (g *sideGrid) runs(visit func(part int, m meeting)) {
	for i, s := range g.sides {
		ua, va := g.at(s.a)
		ub, vb := g.at(s.b)
		if va > vb {
			ua, va, ub, vb = ub, vb, ua, va
		}
		w := g.clamped(ua, ua, va, vb)
		for j := w.j0; j <= w.j1; j++ {
			lo, hi := ua, ub
			if j > w.j0 {
				lo = ua + (ub-ua)*(float64(j)/float64(g.nv)-va)/(vb-va)
			}
			if j < w.j1 {
				hi = ua + (ub-ua)*(float64(j+1)/float64(g.nv)-va)/(vb-va)
			}
			// A nanometre to spare keeps rounding from losing a part.
			spare := float64(geom.Grid) / g.tallA
			cols := g.clamped(min(lo, hi)-spare, max(lo, hi)+spare, 0, 0)
			row, tv := wrap(j, g.nv)
			for c := cols.i0; c <= cols.i1; c++ {
				col, tu := wrap(c, g.nu)
				visit(row*g.nu+col, meeting{int32(i), int32(-tu), int32(-tv)})
			}
		}
	}
}

// visit calls found with the sides in the window and by how much each is moved
// from home where it is met; one that runs through several parts comes several
// times. It stops when found returns false.
func (g *sideGrid) visit(w window, found func(i int32, by place) bool) {
	for j := w.j0; j <= w.j1; j++ {
		row, tv := wrap(j, g.nv)
		for i := w.i0; i <= w.i1; i++ {
			col, tu := wrap(i, g.nu)
			part := row*g.nu + col
			for _, m := range g.met[g.start[part]:g.start[part+1]] {
				var by place
				if du, dv := int(m.tu)+tu, int(m.tv)+tv; du != 0 || dv != 0 {
					by = g.shift(du, dv)
				}
				if !found(m.i, by) {
					return
				}
			}
		}
	}
}
