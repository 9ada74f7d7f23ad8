package ui

import (
	"slices"
	"strings"

	"tsugime/repeat/check"
	"tsugime/repeat/geom"
	"tsugime/repeat/stencil"
)

// none is no choice.
const none = -1

// views are what can be shown of the sheet, or of the two of a split.
func (s *stencilStation) views() []string {
	if s.w.Order().Sheet.Hold.Way == stencil.Split {
		return []string{theSheet, theSecond, theBoth, theJoint}
	}
	return []string{theSheet, theJoint}
}

// viewName is a view as it is written.
func (s *stencilStation) viewName(view string) string {
	if view == theSheet && s.w.Order().Sheet.Hold.Way == stencil.Split {
		return say(theFirst)
	}
	return say(view)
}

// offerViews lists the views that there are; one that is gone gives way to the
// sheet.
func (s *stencilStation) offerViews() {
	views := s.views()
	if !slices.Contains(views, s.seen) {
		s.seen = theSheet
		s.letGo()
	}
	var names []string
	for _, v := range views {
		names = append(names, s.viewName(v))
	}
	if slices.Equal(names, s.shows.Options) && s.shows.Selected == s.viewName(s.seen) {
		return
	}
	s.shows.OnChanged = nil
	s.shows.Options = names
	s.shows.SetSelected(s.viewName(s.seen))
	s.shows.Refresh()
	s.shows.OnChanged = s.show
	s.content.Refresh()
}

// show shows another view, by its written name.
func (s *stencilStation) show(name string) {
	for _, v := range s.views() {
		if s.viewName(v) == name {
			s.seen = v
		}
	}
	s.letGo()
	if s.seen == theBoth {
		s.layBoth()
	}
	s.w.refresh()
}

// showNext goes through the views.
func (s *stencilStation) showNext() {
	views := s.views()
	next := views[(slices.Index(views, s.seen)+1)%len(views)]
	s.shows.SetSelected(s.viewName(next))
}

// toSheet shows one sheet of the set.
func (s *stencilStation) toSheet(n int) {
	view := theSheet
	if n == 1 {
		view = theSecond
	}
	s.shows.SetSelected(s.viewName(view))
}

// onSheet reports whether a sheet is shown, so that ties can be taken.
func (s *stencilStation) onSheet() bool { return s.seen == theSheet || s.seen == theSecond }

// sheetNumber is which sheet of the set is shown.
func (s *stencilStation) sheetNumber() int {
	if s.seen == theSecond && len(s.views()) > 2 {
		return 1
	}
	return 0
}

// sheet is the sheet that is shown, as it was measured.
func (s *stencilStation) sheet() stencil.Sheet {
	if second := s.w.work.Sheet.Second; second != nil && s.sheetNumber() == 1 {
		return *second
	}
	return s.w.work.Sheet
}

// home is the lattice vector to the copy of the unit that is marked: the one in
// hand, or one in the middle of the field.
func (s *stencilStation) home() geom.Point {
	if s.tie.chosen != none {
		return s.tie.shift
	}
	o := s.w.Order()
	l, f := o.Unit.Lattice, o.Sheet.Field
	_, _, rest := l.Nearest(geom.Point{X: f.Left + f.Width/2, Y: o.Sheet.Step / 2})
	return geom.Point{X: f.Left + f.Width/2, Y: o.Sheet.Step / 2}.Sub(rest)
}

// ofHolding reports whether a finding is about what holds the paper.
func ofHolding(f check.Finding) bool {
	switch f.Code {
	case "island", "band", "tongue", "ribbon", "web-thin":
		return true
	}
	return strings.HasPrefix(f.Code, "tie-") || strings.HasPrefix(f.Code, "split-")
}

// sheetOf is the sheet of the set on which a finding of the unit lies: the first
// one unless only the second has something at its place.
func (s *stencilStation) sheetOf(f check.Finding) int {
	for n, sheet := range s.w.work.Sheet.Set() {
		if slices.Contains(placesOf(sheet), f.At) {
			return n
		}
	}
	return 0
}

// placesOf are the places of a sheet that findings of the unit may name.
func placesOf(sheet stencil.Sheet) []geom.Point {
	var places []geom.Point
	for _, p := range slices.Concat(sheet.Paths.Islands, sheet.Paths.Bands) {
		places = append(places, p.At)
	}
	for _, web := range sheet.Webs.Below {
		places = append(places, geom.BoxOf(web.P, web.Q).Centre())
	}
	for _, t := range sheet.Ties.Ties {
		places = append(places, geom.BoxOf(t.Tie.From, t.Tie.To).Centre())
	}
	for _, p := range sheet.Ties.Islands {
		places = append(places, p.At)
	}
	return places
}
