package stencil

import (
	"cmp"
	"math"
	"slices"

	"tsugime/repeat/geom"
)

// distinct drops what tells the same narrow place again. Straight or parallel
// rims that run side by side are equally far apart all along, and each of their
// corners tells a web.
func (s *scene) distinct(found []link) []link {
	// Along a pair of rims, in the order of their pieces.
	slices.SortFunc(found, func(l, o link) int {
		return cmp.Or(cmp.Compare(l.a, o.a), cmp.Compare(l.b, o.b), cmp.Compare(l.ea, o.ea), cmp.Compare(l.eb, o.eb), narrower(l, o))
	})
	drop := make([]bool, len(found))
	for lo := 0; lo < len(found); {
		hi := lo + 1
		for hi < len(found) && found[hi].a == found[lo].a && found[hi].b == found[lo].b {
			hi++
		}
		s.corridors(found[lo:hi], drop[lo:hi])
		lo = hi
	}
	kept := found[:0]
	for i, l := range found {
		if !drop[i] {
			kept = append(kept, l)
		}
	}
	return kept
}

// aheadWebs is how many webs on along a rim one is compared with: a corridor's webs
// come from either rim by turns.
const aheadWebs = 6

// corridors marks all but the narrowest of each run of webs between two
// cut-outs that lie along the same corridor.
func (s *scene) corridors(webs []link, drop []bool) {
	n := len(webs)
	if n < 2 {
		return
	}
	runs := newSets(n)
	for i := range webs {
		for k := 1; k <= min(aheadWebs, n-1); k++ {
			if j := (i + k) % n; runs.find(i) != runs.find(j) && s.sameCorridor(webs[i], webs[j]) {
				runs.join(i, j)
			}
		}
	}
	best := map[int]int{}
	for i, l := range webs {
		r := runs.find(i)
		if b, ok := best[r]; !ok || narrower(l, webs[b]) < 0 {
			best[r] = i
		}
	}
	for i := range webs {
		drop[i] = best[runs.find(i)] != i
	}
}

// sameCorridor reports whether two webs are equally wide and the paper half way
// between them is as wide too.
func (s *scene) sameCorridor(l, o link) bool {
	touch := float64(geom.Touch)
	if math.Abs(l.width-o.width) > touch {
		return false
	}
	m, d := l.middle(), o.middle().sub(l.middle())
	u, v := d.cross(s.b)/s.det, s.a.cross(d)/s.det
	if s.wrapA {
		d = d.sub(s.shift(int(math.Round(u)), 0))
	}
	if s.wrapB {
		d = d.sub(s.shift(0, int(math.Round(v))))
	}
	if d.norm() <= 2*grain {
		return true
	}
	half := m.add(d.times(0.5))
	w := max(l.width, o.width) / 2
	return !s.roomy(half, w+touch) && s.roomy(half, w-touch) && (w <= touch || !s.covers.holds(half))
}

// roomy reports whether no rim comes within radius of p.
func (s *scene) roomy(p place, radius float64) bool {
	if radius <= 0 {
		return true
	}
	free := true
	s.sides.visit(s.sides.within(p, radius+grain), func(i int32, by place) bool {
		x, _ := s.sides.sides[i].nearest(p.sub(by))
		free = !x.add(by).near(p, radius)
		return free
	})
	for g := range s.discs {
		free = free && len(s.discs[g].about(nil, p, radius)) == 0
	}
	return free
}

// single drops webs that lie on one another: those of cut-outs that are drawn
// twice in one place.
func (s *scene) single(found []link) []link {
	type spot struct {
		x, y, width int64
	}
	seen := make(map[spot]bool, len(found))
	kept := found[:0]
	for _, l := range found {
		m := s.home(l.middle())
		k := spot{int64(math.Round(m.x)), int64(math.Round(m.y)), int64(math.Round(l.width))}
		if !seen[k] {
			seen[k] = true
			kept = append(kept, l)
		}
	}
	return kept
}
