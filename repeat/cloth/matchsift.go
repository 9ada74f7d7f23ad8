package cloth

import "tsugime/repeat/geom"

// sift goes on with those phases of an open group, in their order, with which
// there can still be a better laying. A stretch of phases is dropped as a whole
// where no laying is better though each panel of the group lies anywhere within
// it; else its halves are sifted.
func (s *search) sift(st tieState, group int, phases []geom.Length, goOn func(tieState)) {
	if len(phases) == 0 || s.over() {
		return
	}
	if len(phases) == 1 {
		for _, n := range s.pinned(st, group, phases) {
			goOn(n)
		}
		return
	}
	if n, ok := s.between(st, group, phases[0], phases[len(phases)-1]); !ok || s.lower(n) >= s.best.used {
		return
	}
	half := len(phases) / 2
	s.sift(st, group, phases[:half], goOn)
	s.sift(st, group, phases[half:], goOn)
}

// between returns st with each panel of an open group where a phase from least
// to most can bring it; false where its windows leave nothing of that.
func (s *search) between(st tieState, group int, least, most geom.Length) (tieState, bool) {
	next, ok := st, true
	for k, g := range st.group {
		if g != group {
			continue
		}
		from := least
		if st.sign[k] < 0 {
			from = -most
		}
		if next, ok = s.narrowed(next, k, []berth{{s.mod(from + st.rest[k]), most - least}}); !ok {
			return st, false
		}
	}
	return next, true
}
