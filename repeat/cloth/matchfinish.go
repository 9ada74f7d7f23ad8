package cloth

import "tsugime/repeat/geom"

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
