package cloth

import (
	"cmp"
	"slices"

	"tsugime/repeat/geom"
)

// A search looks for the least cloth that reaches some goals.
type search struct {
	*matcher
	goals  []goal
	avoid  []Span
	best   answer
	enough geom.Length // nothing can be below
	tried  map[string]bool
}

// spent reports whether no patience is left.
func (s *search) spent() bool {
	if s.work <= maxMatchWork {
		return false
	}
	s.coarse = true
	return true
}

// over reports whether there is nothing more to find, or no patience left.
func (s *search) over() bool { return s.best.found && s.best.used <= s.enough || s.spent() }

// decide goes on with goal k in every way that can still be better.
func (s *search) decide(st tieState, k int) {
	if s.over() {
		return
	}
	if k == len(s.goals) {
		s.settle(st)
		return
	}
	var next []tieState
	for _, o := range s.options(s.goals[k], st) {
		next = append(next, o.states...)
	}
	if many := len(s.panels) > exactPanels; many && len(next) > beamOptions {
		next = next[:beamOptions]
	}
	if len(next) == 1 {
		s.decide(next[0], k+1)
		return
	}
	known := map[string]geom.Length{}
	s.inTurn(next, func(n tieState) geom.Length {
		key := stateKey(n)
		if _, ok := known[key]; !ok {
			known[key] = s.bound(n, s.goals[k])
		}
		return known[key]
	}, func(n tieState) { s.decide(n, k+1) })
}

// inTurn goes on with each of the states that can still be better, those with the
// lowest bound first.
func (s *search) inTurn(states []tieState, bound func(tieState) geom.Length, goOn func(tieState)) {
	bounds := make([]geom.Length, len(states))
	order := numbers(len(states))
	for i, n := range states {
		if bounds[i] = bound(n); s.over() {
			return
		}
	}
	slices.SortStableFunc(order, func(a, b int) int { return cmp.Compare(bounds[a], bounds[b]) })
	for _, i := range order {
		if bounds[i] < s.best.used {
			goOn(states[i])
		}
	}
}

// bound returns cloth that no laying with st is below, or as much as the best,
// by setting all panels free but those that g has just tied, and those from the
// cloth's own start.
func (s *search) bound(st tieState, g goal) geom.Length {
	if len(s.panels) > exactPanels {
		return s.enough
	}
	if g.seam == nil || g.aim == Apart || st.group[g.seam.First] == known || slices.Contains(st.sign, -1) || s.Slides != nil {
		return s.lower(st)
	}
	st.windows, st.apart = make([][]berth, len(st.windows)), nil
	avoid := s.avoid
	s.avoid = nil
	defer func() { s.avoid = avoid }()
	best, group := s.best.used, st.group[g.seam.First]
	ground, via := s.phases(st, group, true)
	for _, phases := range [][]geom.Length{ground, via} {
		s.sift(st, group, phases, func(n tieState) { s.best.used = s.lower(n) })
	}
	least := s.best.used
	s.best.used = best
	return least
}

// settle decides the phases of the groups of panels that are still open, one
// group after another in any order, and packs the panels.
func (s *search) settle(st tieState) {
	if s.over() {
		return
	}
	// Shifts across don't count any more.
	key := stateKey(st)
	if s.tried[key] {
		return
	}
	s.tried[key] = true
	open := s.open(st)
	if len(open) == 0 {
		s.finish(st)
		return
	}
	goOn := s.finish
	if len(open) > 1 {
		goOn = func(n tieState) {
			if !s.tried[stateKey(n)] && s.lower(n) < s.best.used {
				s.settle(n)
			}
		}
	}
	for _, group := range open {
		ground, via := s.phases(st, group, false)
		if group >= st.ground {
			grounded := st
			grounded.ground = group
			s.sift(grounded, group, ground, goOn)
		}
		touching := st
		touching.ground = len(s.panels)
		s.sift(touching, group, via, goOn)
	}
}

// stateKey tells states of one search apart by what is decided along.
func stateKey(st tieState) string {
	key := make([]byte, 0, 12*len(st.group))
	word := func(v int64) {
		for range 8 {
			key = append(key, byte(v))
			v >>= 8
		}
	}
	word(int64(st.ground))
	for i, g := range st.group {
		key = append(key, byte(g), byte(st.turn[i]), byte(st.sign[i]))
		word(int64(st.rest[i]))
		// With shifts a target is reached at one of several columns, each of which
		// leaves another window.
		word(int64(len(st.windows[i])))
		for _, w := range st.windows[i] {
			word(int64(w.from))
			word(int64(w.wide))
		}
	}
	return string(key)
}

// open lists the groups of tied panels whose phase is not decided.
func (s *search) open(st tieState) []int {
	var groups []int
	for i, g := range st.group {
		if g != known && (st.tied[i] || len(st.windows[i]) > 0 && s.anyUntied(st, i)) && !slices.Contains(groups, g) {
			groups = append(groups, g)
		}
	}
	return groups
}

// anyUntied reports whether panel i shares its group, so that its windows bind
// other panels too.
func (s *search) anyUntied(st tieState, i int) bool {
	for k, g := range st.group {
		if k != i && g == st.group[i] {
			return true
		}
	}
	return false
}
