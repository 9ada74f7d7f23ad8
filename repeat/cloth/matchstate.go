package cloth

import (
	"slices"

	"tsugime/repeat/geom"
)

// A tie state is what has been decided on the way to a laying. With z the place
// of a panel's first corner along the cloth, moved on by its slide, panels that
// goals tie together have places in common with one phase φ:
//
//	z = sign·φ + rest   modulo the along-period
//
// A sign is −1 where a goal compares a piece that hangs upside down with one
// that doesn't: what moves the one on moves the other's pattern back.
type tieState struct {
	turn    []int8 // 1 turned half round, 0 as drawn, −1 open
	group   []int  // of the panels tied together; known where φ is 0 by decision
	sign    []geom.Length
	rest    []geom.Length
	tied    []bool    // some goal compares the panel with another
	windows [][]berth // where z may be, by the targets; nil is anywhere
	across  []shiftBound
	apart   []keepApart
	// ground is the number of the last group that was decided by a chain from the
	// cloth itself. Those come first, in their order, then groups that touch what
	// is known: any other sequence decides the same.
	ground int
}

// known is the group of panels whose z is decided.
const known = -1

// A berth is a stretch of the along-period, from From on.
type berth struct{ from, wide geom.Length }

// A keepApart forbids first·z − second·z' to be nearer than distance to one of
// the centres.
type keepApart struct {
	i, j          int
	first, second geom.Length // signs
	centres       []geom.Length
	distance      geom.Length
}

func (s tieState) clone() tieState {
	s.turn, s.group = slices.Clone(s.turn), slices.Clone(s.group)
	s.sign, s.rest = slices.Clone(s.sign), slices.Clone(s.rest)
	s.tied, s.windows = slices.Clone(s.tied), slices.Clone(s.windows)
	s.across, s.apart = slices.Clip(s.across), slices.Clip(s.apart)
	return s
}

// mod returns a brought into 0 … period.
func (q *matcher) mod(a geom.Length) geom.Length {
	if a %= q.period; a < 0 {
		a += q.period
	}
	return a
}

// near returns how far a is from the nearest repeat.
func (q *matcher) near(a geom.Length) geom.Length {
	a = q.mod(a)
	return min(a, q.period-a)
}

// tie returns what s becomes once first·z_i − second·z_j is c: nothing where
// that contradicts what is decided, two states where it leaves a choice.
func (q *matcher) tie(s tieState, i int, first geom.Length, j int, second, c geom.Length) []tieState {
	si, sj := first*s.sign[i], second*s.sign[j]
	// off is what is missing from c, but for the phases' share.
	off := q.mod(c - first*s.rest[i] + second*s.rest[j])
	gi, gj := s.group[i], s.group[j]
	switch {
	case gi == gj && (gi == known || si == sj):
		if q.near(off) > q.tolerance {
			return nil
		}
		return []tieState{s}
	case gi == gj: // 2·si·φ is off
		return q.pinned(s, gi, q.halves(q.mod(si*off)))
	case gi == known: // −sj·φ_j is off
		return q.pinned(s, gj, []geom.Length{q.mod(-sj * off)})
	case gj == known:
		return q.pinned(s, gi, []geom.Length{q.mod(si * off)})
	}
	// φ_j = sj·(si·φ_i − off)
	s = s.clone()
	for k, g := range s.group {
		if g == gj {
			s.rest[k] = q.mod(s.rest[k] - s.sign[k]*sj*off)
			s.sign[k] *= sj * si
			s.group[k] = gi
		}
	}
	return []tieState{s}
}

// halves returns the phases whose double is t, to the nanometre where t is odd
// and the tolerance allows it.
func (q *matcher) halves(t geom.Length) []geom.Length {
	var phases []geom.Length
	for _, t := range []geom.Length{t, t - q.period} {
		half := t >> 1 // downwards also below 0
		if t&1 == 0 {
			phases = append(phases, q.mod(half))
		} else if q.tolerance > 0 {
			phases = append(phases, q.mod(half), q.mod(half+1))
		}
	}
	return phases
}

// pinned returns s with the group's phase decided, once for each of the phases
// that nothing decided contradicts.
func (q *matcher) pinned(s tieState, group int, phases []geom.Length) []tieState {
	var states []tieState
	for _, phase := range phases {
		next := s.clone()
		ok := true
		for k, g := range s.group {
			if g != group {
				continue
			}
			z := q.mod(s.sign[k]*phase + s.rest[k])
			next.group[k], next.sign[k], next.rest[k] = known, 1, z
			ok = ok && q.within(s.windows[k], z)
		}
		if ok && q.keepsApart(next) {
			states = append(states, next)
		}
	}
	return states
}

// within reports whether z is in one of the windows; nil is everywhere.
func (q *matcher) within(windows []berth, z geom.Length) bool {
	return windows == nil || slices.ContainsFunc(windows, func(w berth) bool { return q.mod(z-w.from) <= w.wide })
}

// keepsApart reports whether all that has to be apart and is decided is so.
func (q *matcher) keepsApart(s tieState) bool {
	for _, a := range s.apart {
		if s.group[a.i] != s.group[a.j] || s.group[a.i] != known && a.first*s.sign[a.i] != a.second*s.sign[a.j] {
			continue
		}
		w := a.first*s.rest[a.i] - a.second*s.rest[a.j]
		for _, c := range a.centres {
			if q.near(w-c) < a.distance {
				return false
			}
		}
	}
	return true
}

// narrowed returns s with z of panel i kept in the windows; false where nothing
// is left.
func (q *matcher) narrowed(s tieState, i int, windows []berth) (tieState, bool) {
	if s.group[i] == known {
		return s, q.within(windows, s.rest[i])
	}
	if s.windows[i] != nil {
		windows = q.common(s.windows[i], windows)
	}
	if len(windows) == 0 {
		return s, false
	}
	s = s.clone()
	s.windows[i] = windows
	return s, true
}

// common returns what both sets of windows hold. Windows that go all the way
// round are cut open where they begin.
func (q *matcher) common(a, b []berth) []berth {
	var both []berth
	for _, v := range a {
		for _, w := range b {
			if k := q.mod(w.from - v.from); k <= v.wide {
				both = append(both, berth{w.from, min(v.wide-k, w.wide)})
			}
			if k := q.mod(v.from - w.from); k != 0 && k <= w.wide {
				both = append(both, berth{v.from, min(w.wide-k, v.wide)})
			}
		}
	}
	return both
}
