package cloth

import "tsugime/repeat/geom"

// A Stretch is a stretch of cloth as it lies on the board at one time.
type Stretch struct {
	Go    int  // which time the board is laid, from 0
	Cloth int  // which cloth, from 0
	Cover Span // the stretch, on its own cloth
	// On is how far along both faces, from the board's near end, the cloth's
	// start lies or would lie: a place y of the cloth is at On + y. It is
	// negative where a later laying begins with the middle of a bolt.
	On           geom.Length
	First, Count int    // which placements of the cloth it holds, and how many
	Turns        []Span // the unprintable stretches, on its own cloth
	Overhang     geom.Length
}

// stretches returns how the cloths of a run lie on the board, time after time.
// Several cloths lie end to end, as many at a time as make the times alike; a
// single cloth of several layings is shared out by whole placements, each time
// from the board's start.
func (r Run) stretches() []Stretch {
	cloths, times := max(r.Board.Cloths, 1), max(r.Board.Layings, 1)
	count := len(r.Placements)
	var all []Stretch
	if cloths > 1 {
		each := (cloths + times - 1) / times
		for c := range cloths {
			on := r.Bolt.Length * geom.Length(c%each)
			all = append(all, r.stretch(Stretch{Go: c / each, Cloth: c, On: on, Count: count, Cover: Span{0, r.Bolt.Length}}))
		}
		return all
	}
	each := max((count+times-1)/times, 1)
	for first := 0; first == 0 || first < count; first += each {
		l := Stretch{Go: first / each, First: first, Count: min(each, count-first), Cover: Span{0, r.Bolt.Length}}
		if first > 0 {
			l.Cover.From = r.placed(first)
			l.On = r.Board.Start - l.Cover.From
		}
		if first+each < count {
			l.Cover.To = r.placed(first + each)
		}
		all = append(all, r.stretch(l))
	}
	return all
}

// stretch fills in what the board does to a stretch.
func (r Run) stretch(l Stretch) Stretch {
	if r.Bolt.Folded {
		return l
	}
	for _, t := range r.Board.folds(l.On + l.Cover.To) {
		t = Span{max(t.From-l.On, l.Cover.From), min(t.To-l.On, l.Cover.To)}
		if t.From <= t.To {
			l.Turns = append(l.Turns, t)
		}
	}
	l.Overhang = max(0, l.On+l.Cover.To-geom.Length(r.Board.faces())*r.Board.Length)
	return l
}

// placed returns where placement n begins on its cloth.
func (r Run) placed(n int) geom.Length { return r.Board.Start + geom.Length(n)*r.Step }

// Face returns where a placement of a stretch falls on the board.
func (r Run) Face(l Stretch, n int) Face {
	if r.Bolt.Folded {
		return FaceA
	}
	return r.Board.face(l.On+r.placed(n), r.Step)
}

// Of returns the stretch that holds placement n of a cloth, and whether one does.
func (r Run) Of(cloth, n int) (Stretch, bool) {
	for _, l := range r.Stretches {
		if l.Cloth == cloth && n >= l.First && n < l.First+l.Count {
			return l, true
		}
	}
	return Stretch{}, false
}

// Count returns how often the stencil is laid on all cloths: whole placements
// times the sheets of the set, twice over for both sides.
func (r Run) Count() int {
	n := len(r.Placements) * max(r.Board.Cloths, 1) * max(r.Register.Sheets, 1)
	if r.Bolt.Sides == BothSides {
		n *= 2
	}
	return n
}
