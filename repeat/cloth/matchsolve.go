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
	s.enough = max(room.least, s.least())
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

// least returns cloth that no laying is below. Avoided stretches don't count where
// panels slide: a panel is kept off them wherever it may slide to, which is more
// than is asked for, so that nothing is proven then.
func (s *search) least() geom.Length {
	avoid := s.avoid
	if len(avoid) > 0 && slices.ContainsFunc(s.Slides, func(v Span) bool { return v.From < v.To }) {
		s.avoid, s.coarse = nil, true
	}
	used := s.lower(s.start())
	s.avoid = avoid
	return used
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
