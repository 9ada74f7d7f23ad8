package ui

import (
	"slices"

	"tsugime/repeat/geom"
	"tsugime/repeat/stencil"
)

// What the surface can show at the last station.
const (
	thePages       = "Pages of the transfer"
	theBench       = "The bench"
	theSecondBench = "The bench, second sheet"
)

func (s *sheetsStation) views() []string {
	if s.w.Order().Sheet.Hold.Way == stencil.Split {
		return []string{thePages, theBench, theSecondBench}
	}
	return []string{thePages, theBench}
}

// offerViews lists the views that there are.
func (s *sheetsStation) offerViews() {
	views := s.views()
	if !slices.Contains(views, s.seen) {
		s.seen = theBench
	}
	var names []string
	for _, v := range views {
		names = append(names, say(v))
	}
	s.shows.OnChanged = nil
	if !slices.Equal(names, s.shows.Options) || s.shows.Selected != say(s.seen) {
		s.shows.Options = names
		s.shows.SetSelected(say(s.seen))
		s.shows.Refresh()
	}
	s.shows.OnChanged = s.show
}

// show shows another view, by its written name.
func (s *sheetsStation) show(name string) {
	for _, v := range s.views() {
		if say(v) == name {
			s.seen = v
		}
	}
	number := 0
	if s.seen == theSecondBench {
		number = 1
	}
	if number != s.plan.number {
		s.plan.number, s.plan.walk = number, wholeSheet
		s.plan.list.fill()
	}
	s.w.win.SetMainMenu(s.w.mainMenu())
	s.w.refresh()
}

func (s *sheetsStation) showNext() {
	views := s.views()
	s.shows.SetSelected(say(views[(slices.Index(views, s.seen)+1)%len(views)]))
}

// benchShown reports whether the bench is shown.
func (s *sheetsStation) benchShown() bool { return s.seen != thePages }

// toBench shows the bench of one sheet, from any station.
func (s *sheetsStation) toBench(sheet int) {
	if s.w.at != sheetsAt {
		s.w.GoTo(sheetsAt)
	}
	s.offerViews()
	s.shows.SetSelected(say([]string{theBench, theSecondBench}[min(sheet, len(s.views())-2)]))
}

// Tap goes to a cut of the bench.
func (s *sheetsStation) Tap(at geom.Point, reach geom.Length, _ bool) {
	if s.benchShown() {
		s.plan.tap(at, reach)
	}
}
