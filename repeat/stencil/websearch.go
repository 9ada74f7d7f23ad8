package stencil

import (
	"math"
	"slices"
	"sync"

	"tsugime/repeat/geom"
)

// A link is a web as it is found, from p on cut-out a, where it is drawn, to q on
// cut-out b or a copy of it.
type link struct {
	p, q  place
	width float64
	a, b  int32
	ea    int32 // the side p is on, −1 on a disc
	eb    int32
	way   place // from where b is drawn to the copy that q is on
}

func (l link) middle() place { return l.p.add(l.q).times(0.5) }

// Tolerances of the search, in nanometres and as a share of the web.
const (
	grain = float64(geom.Grid)
	// beside is how far from a web's ends, as a share of its width, a third rim
	// on its circle stands for another place. A web with a third rim there is
	// not told, as the two to that rim are narrower: the diagonals of a square
	// of discs are no webs.
	beside = 0.05
)

// A search is what one goroutine works with.
type search struct {
	*scene
	reach  float64
	holes  []hole  // about the disc that is searched from
	faced  []faced // the sides about it
	ends   []place // of the webs told from this corner
	wedge  wedge   // in which they run
	facing []facing
	found  []link
	// doubled is set where two discs lie on one another.
	doubled bool
}

// faced is a side where it is met, and its point nearest to the disc that is
// searched from.
type faced struct {
	side *side
	i    int32
	by   place
	at   place
	gap  float64
}

// links returns every web up to reach, each place once, in an order that depends
// only on the cut-outs.
func (s *scene) links(reach float64) []link {
	var tasks []func(*search)
	const stretch = 512
	for g := range s.discs {
		holes := s.discs[g].holes
		for lo := 0; lo < len(holes); lo += stretch {
			tasks = append(tasks, func(w *search) {
				for _, h := range holes[lo:min(lo+stretch, len(holes))] {
					w.fromHole(h)
				}
			})
		}
	}
	if s.sides != nil {
		for lo := 0; lo < len(s.sides.sides); lo += stretch {
			tasks = append(tasks, func(w *search) {
				for v := lo; v < min(lo+stretch, len(s.sides.sides)); v++ {
					w.fromCorner(int32(v))
				}
			})
		}
	}
	parts := make([][]link, len(tasks))
	var doubled [workers]bool
	var wait sync.WaitGroup
	for first := range workers {
		wait.Go(func() {
			w := &search{scene: s, reach: reach}
			for t := first; t < len(tasks); t += workers {
				w.found = nil
				tasks[t](w)
				parts[t] = w.found
			}
			doubled[first] = w.doubled
		})
	}
	wait.Wait()
	found := slices.Concat(parts...)
	switch {
	case s.sides != nil:
		return s.single(s.distinct(found))
	case slices.Contains(doubled[:], true):
		return s.single(found)
	}
	return found
}

// workers is how many goroutines search: more bring little on small units.
const workers = 2

// fromHole finds the webs from a disc to those after it, to its own copies ahead
// and to the sides of outlines.
func (w *search) fromHole(h hole) {
	w.gather(h)
	for k, o := range w.holes {
		d := o.c.sub(h.c)
		if o.cut < h.cut || o.cut == h.cut && !(place{}).less(d) {
			continue
		}
		l := d.norm()
		gap := l - h.r - o.r
		if gap < -grain || gap >= w.reach || l == 0 {
			w.doubled = w.doubled || l == 0
			continue
		}
		u := d.times(1 / l)
		p, q := h.c.add(u.times(h.r)), o.c.sub(u.times(o.r))
		if !w.clear(p, q, gap, k) || gap > grain && w.covers.holds(p.add(q).times(0.5)) {
			continue
		}
		w.found = append(w.found, w.discLink(h.cut, o.cut, h.r, o.r, d, l))
	}
	begin := len(w.found)
	for _, f := range w.faced {
		if f.gap < -grain || f.gap >= w.reach {
			continue
		}
		d := f.at.sub(h.c)
		p := h.c.add(d.times(h.r / d.norm()))
		l := link{p, f.at, max(f.gap, 0), h.cut, f.side.cut, -1, f.i, f.by.sub(f.side.drawn)}
		if !w.clear(p, f.at, f.gap, -1) || w.told(begin, l, h) {
			continue
		}
		if m := l.middle(); f.gap > grain && w.covers.holds(m) || f.gap <= grain && !w.pinched(m) {
			continue
		}
		w.tell(l, h)
	}
}

// gather collects what can take part in a web of the disc h or block it: both
// lie within reach of h.
func (w *search) gather(h hole) {
	w.holes, w.faced = w.holes[:0], w.faced[:0]
	for g := range w.discs {
		w.holes = w.discs[g].about(w.holes, h.c, h.r+w.reach+2*grain)
	}
	if w.sides == nil {
		return
	}
	far := h.r + w.reach + 2*grain
	w.sides.visit(w.sides.within(h.c, far), func(i int32, by place) bool {
		s := &w.sides.sides[i]
		at, _ := s.nearest(h.c.sub(by))
		at = at.add(by)
		if gap := at.sub(h.c).norm() - h.r; gap < w.reach+2*grain {
			w.faced = append(w.faced, faced{s, i, by, at, gap})
		}
		return true
	})
}

// clear reports whether the circle over p, q holds nothing of what is gathered.
// partner is the disc at q.
func (w *search) clear(p, q place, gap float64, partner int) bool {
	c := circleOver(p, q, gap)
	for k := range w.holes {
		if k != partner && c.meetsHole(w.holes[k]) {
			return false
		}
	}
	for _, f := range w.faced {
		if c.meetsSide(f.side, f.by) {
			return false
		}
	}
	return true
}

// tell adds a web at the place where its disc is drawn.
func (w *search) tell(l link, h hole) {
	by := w.centre(h.cut).sub(h.c)
	l.p, l.q, l.way = l.p.add(by), l.q.add(by), l.way.add(by)
	w.found = append(w.found, l)
}

// centre returns where a disc is drawn.
func (s *scene) centre(cut int32) place { return placeOf(s.cuts[cut].Shape.Disc.Centre) }

// told reports whether the webs of h from begin on have one that ends where l
// does: two sides end in one corner.
func (w *search) told(begin int, l link, h hole) bool {
	by := w.centre(h.cut).sub(h.c)
	for _, o := range w.found[begin:] {
		if o.q.near(l.q.add(by), grain) {
			return true
		}
	}
	return false
}

// A circle is drawn over a web, from p to q about m.
type circle struct {
	m, p, q place
	half    float64
}

func circleOver(p, q place, width float64) circle {
	return circle{p.add(q).times(0.5), p, q, max(width, 0) / 2}
}

// meetsHole reports whether a disc comes into the circle.
func (c circle) meetsHole(o hole) bool {
	dx, dy := o.c.x-c.m.x, o.c.y-c.m.y
	l2, out := dx*dx+dy*dy, o.r+c.half+grain
	if l2 >= out*out {
		return false
	}
	l := math.Sqrt(l2)
	if l == 0 || l-o.r < c.half-grain {
		return true
	}
	return c.meets(c.m.add(place{dx, dy}.times((l - o.r) / l)))
}

// meetsSide reports whether a side moved by so much comes into the circle.
func (c circle) meetsSide(s *side, by place) bool {
	x, _ := s.nearest(c.m.sub(by))
	return c.meets(x.add(by))
}

// meets reports whether a place of a rim lies in the circle, or on it and beside
// its ends.
func (c circle) meets(x place) bool {
	d := x.sub(c.m)
	l2, out, in := d.dot(d), c.half+grain, c.half-grain
	if l2 >= out*out {
		return false
	}
	if in > 0 && l2 < in*in {
		return true
	}
	by := max(2*beside*c.half, 2*grain)
	return !x.near(c.p, by) && !x.near(c.q, by)
}
