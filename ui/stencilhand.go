package ui

import "tsugime/repeat/geom"

// Press takes a point of the joint line or a tie, or begins a new tie.
func (s *stencilStation) Press(at geom.Point, reach geom.Length, more bool) bool {
	s.endPull()
	s.point.pulled = false
	if more || s.w.built == 0 || !s.onSheet() {
		return false
	}
	s.pressed = at
	if s.draws.Checked {
		s.tie.chosen, s.point.chosen = none, none
		s.tie.pull = drawTie
		return true
	}
	if i, ok := s.pointUnder(at, reach); ok {
		s.choosePoint(i)
		return true
	}
	return s.pressTie(at, reach)
}

// Drag shows what would be; nothing is edited yet.
func (s *stencilStation) Drag(by geom.Point) {
	switch {
	case s.tie.pull != noPull:
		s.dragTie(s.pressed, by)
	case s.point.chosen != none:
		s.dragPoint(by)
	}
}

// Drop makes the whole drag one edit.
func (s *stencilStation) Drop(by geom.Point) {
	switch {
	case s.tie.pull != noPull:
		s.dragTie(s.pressed, by)
		s.dropTie()
	case s.point.pulled:
		s.dropPoint()
	}
}

// Tap chooses the tie or the point there; with Shift it adds a point to the line.
func (s *stencilStation) Tap(at geom.Point, reach geom.Length, more bool) {
	s.endPull()
	if s.w.built == 0 || !s.onSheet() {
		return
	}
	if more {
		s.addPoint(at, reach)
		return
	}
	if i, ok := s.pointUnder(at, reach); ok {
		s.choosePoint(i)
		return
	}
	if number, shift, ok := s.tieUnder(at, reach); ok {
		s.chooseTie(number, shift)
		return
	}
	s.letGo()
	s.shownChoice("")
}

// shownChoice shows what was chosen everywhere.
func (s *stencilStation) shownChoice(words string) {
	s.w.Say(words)
	s.form.refresh()
	s.w.win.SetMainMenu(s.w.mainMenu())
	s.w.repaint()
	s.w.right.show(s)
}

// letGo lets everything go that is chosen here.
func (s *stencilStation) letGo() {
	s.endPull()
	s.tie.chosen, s.point.chosen, s.point.pulled = none, none, false
}

// chooseNext goes through the ties, or through the points of the joint line where
// one is chosen or no tie is.
func (s *stencilStation) chooseNext() {
	ties, line := len(s.ties()), s.drawn()
	switch {
	case !s.onSheet():
		return
	case len(line) > 0 && s.sheetNumber() == 0 && (s.point.chosen != none || ties == 0):
		s.choosePoint((s.point.chosen + 1) % len(line))
	case ties > 0:
		s.chooseTie((s.tie.chosen+1)%ties, s.home())
	}
}

func (s *stencilStation) gripped() string {
	switch {
	case s.tie.chosen != none:
		return "Tie"
	case s.point.chosen != none:
		return "Joint Point"
	}
	return ""
}

func (s *stencilStation) nudge(by geom.Point) {
	if s.tie.chosen != none {
		s.nudgeTie(by)
		return
	}
	s.nudgePoint(by)
}

func (s *stencilStation) remove() {
	if s.tie.chosen != none {
		s.removeTie()
		return
	}
	s.removePoint()
}

func (s *stencilStation) leave() bool {
	if s.tie.pull == noPull && !s.point.pulled {
		return false
	}
	s.endPull()
	s.point.pulled = false
	s.w.board.Release()
	return true
}
