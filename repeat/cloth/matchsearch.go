package cloth

import (
	"cmp"
	"slices"

	"tsugime/repeat/geom"
)

// An answer is the best laying found for some goals.
type answer struct {
	found  bool
	exact  bool
	used   geom.Length
	bound  geom.Length // no laying is below
	packed packed
	state  tieState
}

// A search looks for the least cloth that reaches some goals.
type search struct {
	*matcher
	goals  []goal
	avoid  []Span
	best   answer
	enough geom.Length // nothing can be below
	tried  map[string]bool
}

// solve returns the least cloth with which all the goals, by number, are
// reached, and whether they can be. What was found for other goals bounds it.
func (q *matcher) solve(goals []int) (answer, bool) {
	room := q.room(goals)
	if room.settled() {
		return room.most, room.most.found
	}
	s := search{matcher: q, tried: map[string]bool{}}
	for _, i := range goals {
		if g := q.goals[i]; g.seam == nil && g.target == nil {
			s.avoid = apartSpans(q.Avoid)
		} else {
			s.goals = append(s.goals, g)
		}
	}
	q.work, q.coarse, q.thinned, q.unshiftable = 0, false, false, false
	s.best.used = q.limit + 1
	s.enough = max(room.least, s.lower(q.start()))
	s.lookFor(room)
	if q.thinned && q.unshiftable && !q.coarse && !(s.best.found && s.best.used <= s.enough) {
		// What was passed over might have been the better.
		if s.best.found {
			room.most = s.best
		}
		s.best.found, q.thinned, q.every = false, false, true
		s.work = max(s.work, maxMatchWork*15/16)
		s.lookFor(room)
		q.every = false
	}
	if !s.best.found {
		s.best.used = q.limit + 1
		if room.most.found {
			s.best = room.most
		}
	}
	s.best.bound = s.enough
	s.best.exact = !q.coarse && !(q.thinned && q.unshiftable) && len(q.panels) <= exactPanels
	if s.best.exact || s.best.used <= s.enough {
		s.best.exact, s.best.bound = true, s.best.used
	}
	q.asked = append(q.asked, asked{slices.Clone(goals), s.best})
	return s.best, s.best.found
}

// lookFor looks for less cloth than the room's most. Little cloth is looked for
// first: the less there is to find, the sooner a way is dropped. Where patience
// ends before anything is found, any cloth is looked for a while.
func (s *search) lookFor(room room) {
	start, limit := s.start(), s.limit
	if room.most.found {
		limit = room.most.used - 1
	}
	for more := geom.Length(1); s.enough <= limit && !s.best.found && !s.spent(); more *= 4 {
		s.best.used = min(limit, s.enough+more-1) + 1
		clear(s.tried)
		last := s.best.used > limit
		s.decide(start, 0)
		if last {
			return
		}
		more = max(more, min(s.period, geom.Metre)/64)
	}
	if !s.best.found && !room.most.found && s.enough <= limit {
		s.best.used, s.work = limit+1, maxMatchWork*3/4
		clear(s.tried)
		s.decide(start, 0)
	}
}

// apartSpans returns the stretches in their order, those that touch as one.
func apartSpans(spans []Span) []Span {
	spans = slices.Clone(spans)
	slices.SortFunc(spans, func(a, b Span) int { return cmp.Or(cmp.Compare(a.From, b.From), cmp.Compare(a.To, b.To)) })
	var apart []Span
	for _, s := range spans {
		if n := len(apart); n > 0 && s.From < apart[n-1].To {
			apart[n-1].To = max(apart[n-1].To, s.To)
		} else {
			apart = append(apart, s)
		}
	}
	return apart
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
	st.windows = make([][]berth, len(st.windows))
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

// lower returns cloth that no laying with st is below.
func (s *search) lower(st tieState) geom.Length {
	if len(s.panels) > exactPanels {
		return s.pack.end(s.pack.columns())
	}
	used, _ := s.fill(st)
	return used
}

// fill packs the panels as far as st has decided, those that it hasn't freely.
func (s *search) fill(st tieState) (geom.Length, []allowed) {
	a := s.allowed(st)
	s.work += overhead
	if s.KeepOrder {
		_, used := s.pack.inOrder(numbers(len(a)), a, s.avoid)
		s.work += len(a)
		return min(used, s.best.used), a
	}
	used, work := s.pack.fill(a, s.avoid, s.best.used)
	s.work += work
	return used, a
}

func numbers(n int) []int {
	all := make([]int, n)
	for i := range all {
		all[i] = i
	}
	return all
}

// finish packs the panels once all is decided, and keeps what is better.
func (s *search) finish(st tieState) {
	var d packed
	switch {
	case s.KeepOrder:
		a := s.allowed(st)
		var used geom.Length
		d, used = s.pack.inOrder(numbers(len(a)), a, s.avoid)
		s.work += overhead
		if used >= s.best.used {
			return
		}
		s.best.used = used
	case len(s.panels) > exactPanels:
		a := s.allowed(st)
		var used geom.Length
		d, used = s.pack.beam(a, s.avoid)
		s.work += len(a) * len(a) * len(a) * beamWidth
		if used >= s.best.used {
			return
		}
		s.best.used = used
	default:
		used, _ := s.fill(st)
		if used >= s.best.used {
			return
		}
		s.best.used = used
		d = s.pack.last(used)
	}
	s.best.found, s.best.packed, s.best.state = true, d, st
}

// allowed returns where st lets each panel lie.
func (s *search) allowed(st tieState) []allowed {
	list := make([]allowed, len(s.panels))
	for i := range list {
		list[i].turn = st.turn[i]
		slide := s.pack.slides[i][max(st.turn[i], 0)]
		room := slide.To - slide.From
		switch {
		case st.group[i] == known:
			list[i].windows = []berth{{s.mod(st.rest[i] - slide.To), min(room, s.period-1)}}
		case st.windows[i] != nil:
			for _, w := range st.windows[i] {
				list[i].windows = append(list[i].windows, berth{s.mod(w.from - slide.To), min(w.wide+room, s.period-1)})
			}
		}
	}
	return list
}
