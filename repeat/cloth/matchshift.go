package cloth

import (
	"slices"

	"tsugime/repeat/geom"
)

// A shiftBound keeps at + first·shift_i + second·shift_j within ±within. Shifts
// are the panels' own; j is −1 where only one panel counts.
type shiftBound struct {
	i, j          int
	first, second geom.Length // signs
	at, within    geom.Length
}

// shiftSystem decides bounds on sums and differences of two shifts: each shift
// stands twice, as itself and as its negative, and bounds are ways between them
// (Miné's octagons; whole numbers after Lahiri and Musuvathi).
type shiftSystem struct {
	way [][]geom.Length
}

// far is no bound at all; two of them don't overflow.
const far = geom.Length(1) << 60

// shiftable reports whether shifts exist that keep all the bounds.
func (q *matcher) shiftable(bounds []shiftBound) bool {
	if !q.anyShift {
		for _, b := range bounds {
			if b.at.Abs() > b.within {
				return false
			}
		}
		return true
	}
	// Panels that no bound speaks of can always be shifted.
	var panels []LaidPanel
	place := make([]int, len(q.panels))
	among := func(i int) int {
		if i >= 0 && place[i] == 0 {
			panels = append(panels, q.panels[i])
			place[i] = len(panels)
		}
		if i < 0 {
			return i
		}
		return place[i] - 1
	}
	few := slices.Clone(bounds)
	for k, b := range few {
		few[k].i, few[k].j = among(b.i), among(b.j)
	}
	_, ok := newShiftSystem(panels, few, nil)
	return ok
}

// newShiftSystem returns the closed system of the bounds and of each panel's own
// limits, with some shifts given; false where nothing keeps them all.
func newShiftSystem(panels []LaidPanel, bounds []shiftBound, given map[int]geom.Length) (shiftSystem, bool) {
	n := 2 * len(panels)
	s := shiftSystem{way: make([][]geom.Length, n)}
	all := slices.Repeat([]geom.Length{far}, n*n)
	for i := range s.way {
		s.way[i] = all[i*n : (i+1)*n]
		s.way[i][i] = 0
	}
	for i, p := range panels {
		least, most := p.ShiftLeast, p.ShiftMost
		if v, ok := given[i]; ok {
			least, most = v, v
		}
		s.bound(i, 1, i, 1, 2*most)
		s.bound(i, -1, i, -1, -2*least)
	}
	for _, b := range bounds {
		switch {
		case b.j < 0:
			s.bound(b.i, b.first, b.i, b.first, 2*(b.within-b.at))
			s.bound(b.i, -b.first, b.i, -b.first, 2*(b.within+b.at))
		case b.i == b.j && b.first == -b.second:
			if b.at.Abs() > b.within {
				return s, false
			}
		case b.i == b.j: // twice one shift is bounded
			s.bound(b.i, b.first, b.i, b.first, b.within-b.at)
			s.bound(b.i, -b.first, b.i, -b.first, b.within+b.at)
		default:
			s.bound(b.i, b.first, b.j, b.second, b.within-b.at)
			s.bound(b.i, -b.first, b.j, -b.second, b.within+b.at)
		}
	}
	return s, s.close()
}

// node returns the number of a shift taken with a sign.
func node(i int, sign geom.Length) int {
	if sign < 0 {
		return 2*i + 1
	}
	return 2 * i
}

// bound keeps a·shift_i + b·shift_j at most c.
func (s shiftSystem) bound(i int, a geom.Length, j int, b, c geom.Length) {
	u, v := node(j, -b), node(i, a)
	s.way[u][v] = min(s.way[u][v], c)
	u, v = node(i, -a), node(j, b)
	s.way[u][v] = min(s.way[u][v], c)
}

// close follows all ways and reports whether whole shifts keep the bounds.
func (s shiftSystem) close() bool {
	n := len(s.way)
	s.follow()
	for i := 0; i < n; i++ {
		if w := s.way[i][i^1]; w < far {
			s.way[i][i^1] = w >> 1 << 1
		}
	}
	for i := range n {
		for j := range n {
			if a, b := s.way[i][i^1], s.way[j^1][j]; a < far && b < far {
				s.way[i][j] = min(s.way[i][j], a/2+b/2)
			}
		}
	}
	for i := range n {
		if s.way[i][i] < 0 || s.way[i][i^1] < far && s.way[i^1][i] < far && s.way[i][i^1]+s.way[i^1][i] < 0 {
			return false
		}
	}
	return true
}

// follow shortens every way by what lies between (Floyd and Warshall).
func (s shiftSystem) follow() {
	for k := range s.way {
		for i := range s.way {
			if s.way[i][k] >= far {
				continue
			}
			for j := range s.way {
				if s.way[k][j] < far {
					s.way[i][j] = min(s.way[i][j], s.way[i][k]+s.way[k][j])
				}
			}
		}
	}
}

// limits returns between what the shift of panel i may be.
func (s shiftSystem) limits(i int) (least, most geom.Length) {
	return -(s.way[2*i][2*i+1] / 2), s.way[2*i+1][2*i] / 2
}

// shifts returns shifts that keep the bounds: those that leave the worst seam as
// little off across as can be, and of these, panel by panel, the smallest.
func (q *matcher) shifts(bounds []shiftBound) []geom.Length {
	tight := func(by geom.Length) []shiftBound {
		next := slices.Clone(bounds)
		for i := range next {
			next[i].within = max(0, next[i].within-by)
		}
		return next
	}
	widest := geom.Length(0)
	for _, b := range bounds {
		widest = max(widest, b.within)
	}
	lo, hi := geom.Length(0), widest // lo is feasible
	for lo < hi {
		mid := (lo + hi + 1) / 2
		if _, ok := newShiftSystem(q.panels, tight(mid), nil); ok {
			lo = mid
		} else {
			hi = mid - 1
		}
	}
	bounds = tight(lo)
	given := map[int]geom.Length{}
	shifts := make([]geom.Length, len(q.panels))
	for i := range q.panels {
		s, _ := newShiftSystem(q.panels, bounds, given)
		least, most := s.limits(i)
		shifts[i] = min(max(0, least), most)
		given[i] = shifts[i]
	}
	return shifts
}
