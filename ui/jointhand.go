package ui

import (
	"math"
	"slices"

	"tsugime/repeat/document"
	"tsugime/repeat/geom"
)

// A pointHand is what the hand does with a joint line that is drawn by hand.
type pointHand struct {
	chosen int // a point of the line; none
	pulled bool
	by     geom.Point
	ground openings // what the line must keep clear of, while a point is chosen
	of     int      // number of the state that ground belongs to
}

// drawn is the line drawn by hand as it would be with what is pulled.
func (s *stencilStation) drawn() []geom.Point {
	line := slices.Clone(s.w.Order().Sheet.Joint.Line)
	if s.point.chosen >= len(line) {
		s.point.chosen = none
	}
	if i := s.point.chosen; i != none && s.point.pulled {
		line[i] = s.held(i, line, line[i].Add(s.point.by))
	}
	return line
}

// held keeps the two ends of the line on the edges of the field.
func (s *stencilStation) held(i int, line []geom.Point, p geom.Point) geom.Point {
	f := s.w.Order().Sheet.Field
	left, right := f.Left, f.Right()
	if line[0].X > line[len(line)-1].X {
		left, right = right, left
	}
	switch i {
	case 0:
		p.X = left
	case len(line) - 1:
		p.X = right
	}
	return p
}

// pointUnder returns the point of the line drawn by hand that is nearest to p.
func (s *stencilStation) pointUnder(p geom.Point, reach geom.Length) (int, bool) {
	best := none
	if s.sheetNumber() == 1 {
		return best, false
	}
	line := s.w.Order().Sheet.Joint.Line
	for i, q := range line {
		if d := p.Distance(q); d <= reach && (best == none || d < p.Distance(line[best])) {
			best = i
		}
	}
	return best, best != none
}

func (s *stencilStation) choosePoint(i int) {
	s.tie.chosen = none
	s.point.chosen = i
	s.shownChoice(say("Point %d of %d of the joint line chosen: %s.",
		i+1, len(s.w.Order().Sheet.Joint.Line), s.clearWords(s.pointClear())))
}

// clearReach is how far a cut-out is looked for about a point of the line.
const clearReach = 20 * geom.Millimetre

// pointClear is how far the chosen point is from the nearest cut-out; negative
// within one.
func (s *stencilStation) pointClear() geom.Length {
	line := s.drawn()
	if s.point.chosen == none {
		return 0
	}
	if now := s.w.history.Now().number; s.point.of != now || s.point.ground.index == nil {
		s.point.ground, s.point.of = openingsOf(s.w.Order().Unit), now
	}
	return s.point.ground.clear(line[s.point.chosen], s.w.Order().Sheet.Field, clearReach)
}

func (s *stencilStation) dragPoint(by geom.Point) {
	s.point.pulled, s.point.by = true, snapped(by)
	s.w.pointer.SetText(say("joint point, %s", s.clearWords(s.pointClear())))
	s.w.repaint()
}

func (s *stencilStation) dropPoint() {
	line := s.drawn()
	s.point.pulled = false
	s.setLine("Move Joint Point", line)
}

// nudgePoint moves the chosen point.
func (s *stencilStation) nudgePoint(by geom.Point) {
	line := s.drawn()
	if i := s.point.chosen; i != none {
		line[i] = s.held(i, line, line[i].Add(by))
		s.setLine("Nudge Joint Point", line)
	}
}

// removePoint takes the chosen point away; the two ends stay.
func (s *stencilStation) removePoint() {
	line, i := s.drawn(), s.point.chosen
	if i <= 0 || i >= len(line)-1 {
		s.w.Say(say("The ends of the joint line stay; delete a point between them."))
		return
	}
	s.point.chosen = none
	s.setLine("Delete Joint Point", slices.Delete(line, i, i+1))
}

// addPoint puts a point into the line drawn by hand where it passes p, and reports
// whether it does.
func (s *stencilStation) addPoint(p geom.Point, reach geom.Length) bool {
	line := s.drawn()
	best, at := math.Inf(1), none
	for i := 0; i+1 < len(line); i++ {
		if d := beside(p, line[i], line[i+1]); d <= float64(reach) && d < best {
			best, at = d, i
		}
	}
	if at == none || s.sheetNumber() == 1 {
		return false
	}
	s.point.chosen = at + 1
	s.setLine("Add Joint Point", slices.Insert(line, at+1, snapped(p)))
	return true
}

func (s *stencilStation) setLine(name string, line []geom.Point) {
	s.w.Edit(name, func(o document.Order) (document.Order, error) {
		j := o.Sheet.Joint
		j.Line = line
		return document.SetJoint(o, j)
	})
}

// pointMeasures are those of the chosen point.
func (s *stencilStation) pointMeasures() []measure {
	line := s.drawn()
	if s.point.chosen == none || len(line) == 0 {
		return nil
	}
	u, p := s.w.unit(), line[s.point.chosen]
	return []measure{
		{"joint point", say("%d of %d", s.point.chosen+1, len(line))},
		{"its place", u.Number(p.X, 2) + ", " + u.Format(p.Y, 2)},
		{"clear of holes by", u.Format(s.pointClear(), 3)},
	}
}
