package stencil

import (
	"math"
	"slices"

	"tsugime/repeat/geom"
	"tsugime/repeat/pattern"
)

// A banks is the lines around openings, each seen from the paper beside it.
type banks struct {
	*sideGrid
	lines []geom.Boundary
	first []int // the sides of line i are first[i] … first[i+1]
}

// banksOf lays the lines of the openings, and those of lone discs near them.
func banksOf(o openings, l pattern.Lattice) (*banks, error) {
	b := &banks{lines: slices.Clone(o.region.Boundaries)}
	boxes := make([]geom.Box, 0, len(b.lines)+len(o.lone))
	for _, line := range b.lines {
		boxes = append(boxes, line.Bounds().Grown(RibbonWidth))
	}
	for _, d := range o.lone {
		boxes = append(boxes, d.Bounds())
	}
	near := make([]bool, len(o.lone))
	n := len(b.lines)
	err := geom.Pairs(boxes, func(i, j int, _ geom.Point) {
		if i < n && j >= n {
			near[j-n] = true
		}
	}, l.A, l.B)
	if err != nil {
		return nil, err
	}
	for i, d := range o.lone {
		if near[i] {
			b.lines = append(b.lines, geom.Boundary{Points: d.Ring(geom.Chord)})
		}
	}
	f := frameAround(nil, []geom.Point{l.A, l.B})
	var sides []side
	for i, line := range b.lines {
		b.first = append(b.first, len(sides))
		for k, p := range line.Points {
			a, e := placeOf(p), placeOf(lineEnd(line, k))
			if home := f.home(a); a != e {
				sides = append(sides, side{a: home, b: e.add(home.sub(a)), drawn: a.sub(home), cut: int32(i)})
			}
		}
	}
	b.first = append(b.first, len(sides))
	b.sideGrid = f.sideGrid(sides)
	return b, nil
}

// A reachOver is a stretch of a side over which the paper across ends on one line.
type reachOver struct {
	from, to float64 // along the line, in nanometres
	d0, d1   float64 // how far it is across at from and at to
	line     int32
	shift    place // from where that line is drawn to the copy met, both lines being drawn
	side     int32
	u0       float64 // where from lies on the side
}

// across returns the stretches of line i up to reach across, in order along it,
// and how long the line is.
func (b *banks) across(i int, reach float64) (all []reachOver, length float64) {
	var views []view
	for v := b.first[i]; v < b.first[i+1]; v++ {
		views = b.views(views[:0], int32(v), reach)
		for _, r := range nearest(views) {
			r.side, r.u0 = int32(v), r.from
			r.from, r.to = r.from+length, r.to+length
			all = append(all, r)
		}
		length += b.sides[v].b.sub(b.sides[v].a).norm()
	}
	return all, length
}

// A view is a side seen square from another, the part of it over from … to.
type view struct{ reachOver }

// at returns how far across the view is over u.
func (w view) at(u float64) float64 {
	if w.to == w.from {
		return math.Min(w.d0, w.d1)
	}
	return w.d0 + (w.d1-w.d0)*(u-w.from)/(w.to-w.from)
}

// views appends the sides seen square across paper from side v, up to reach.
func (b *banks) views(views []view, v int32, reach float64) []view {
	s := &b.sides[v]
	d := s.b.sub(s.a)
	l := d.norm()
	u := d.times(1 / l)
	out := place{u.y, -u.x} // paper is to the left, y being down
	far := []place{s.a.add(out.times(reach)), s.b.add(out.times(reach)), s.b}
	lo, hi := s.a, s.a
	for _, p := range far {
		lo, hi = place{min(lo.x, p.x), min(lo.y, p.y)}, place{max(hi.x, p.x), max(hi.y, p.y)}
	}
	begin := len(views)
	b.visit(b.over(lo, hi), func(i int32, by place) bool {
		o := &b.sides[i]
		if i == v && by == (place{}) {
			return true
		}
		p, q := o.a.add(by).sub(s.a), o.b.add(by).sub(s.a)
		w := view{reachOver{from: p.dot(u), to: q.dot(u), d0: p.dot(out), d1: q.dot(out), line: o.cut, shift: by.sub(o.drawn).add(s.drawn)}}
		if w.from > w.to {
			w.from, w.to, w.d0, w.d1 = w.to, w.from, w.d1, w.d0
		}
		if w.to-w.from <= grain || w.to <= 0 || w.from >= l {
			return true
		}
		d0, d1 := w.at(max(w.from, 0)), w.at(min(w.to, l))
		w.from, w.to, w.d0, w.d1 = max(w.from, 0), min(w.to, l), d0, d1
		if max(d0, d1) > 2*grain && min(d0, d1) < reach && min(d0, d1) > -2*grain && !slices.Contains(views[begin:], w) {
			views = append(views, w)
		}
		return true
	})
	return views
}

// nearest returns what is seen first of the views of one side, in order along it.
func nearest(views []view) []reachOver {
	var cuts []float64
	for _, w := range views {
		cuts = append(cuts, w.from, w.to)
	}
	slices.Sort(cuts)
	var all []reachOver
	for k := 1; k < len(cuts); k++ {
		from, to := cuts[k-1], cuts[k]
		if to-from <= grain {
			continue
		}
		m, best, least := (from+to)/2, -1, math.Inf(1)
		for i, w := range views {
			if w.from <= from && to <= w.to && w.at(m) < least {
				best, least = i, w.at(m)
			}
		}
		if best < 0 {
			continue
		}
		r := views[best].reachOver
		r.from, r.to, r.d0, r.d1 = from, to, views[best].at(from), views[best].at(to)
		all = append(all, r)
	}
	return all
}
