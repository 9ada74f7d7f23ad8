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
	s.toView(views[(slices.Index(views, s.seen)+1)%len(views)])
}

// toView shows one of the views.
func (s *stencilStation) toView(view string) { s.shows.SetSelected(s.viewName(view)) }

// toSheet shows one sheet of the set.
func (s *stencilStation) toSheet(n int) { s.toView([]string{theSheet, theSecond}[n]) }

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
// hand, or one in the middle of the field between the joint line and its copy.
func (s *stencilStation) home() geom.Point {
	if s.tie.chosen != none {
		return s.tie.shift
	}
	o := s.w.Order()
	l := o.Unit.Lattice
	middle := heightAt(s.w.work.Sheet.Joint.Line, o.Sheet.Field.Left+o.Sheet.Field.Width/2)
	middle.Y += o.Sheet.Step / 2
	cell := geom.BoxOf(geom.Point{}, l.A, l.B, l.A.Add(l.B)).Centre()
	_, _, rest := l.Nearest(middle.Sub(cell))
	return middle.Sub(cell).Sub(rest)
}

// heightAt returns the place of a line, drawn from left to right, at x; at height
// 0 where it doesn't come there.
func heightAt(line []geom.Point, x geom.Length) geom.Point {
	at := geom.Point{X: x}
	for i := 0; i+1 < len(line); i++ {
		if a, b := line[i], line[i+1]; a.X <= x && x <= b.X && b.X > a.X {
			at.Y = a.Y + (b.Y - a.Y).Times(float64(x-a.X)/float64(b.X-a.X))
		}
	}
	return at
}

// ofHolding reports whether a finding is about what holds the paper.
func ofHolding(f check.Finding) bool {
	switch f.Code {
	case "island", "band", "tongue", "ribbon", "skew", "web-thin":
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
	for _, t := range sheet.Tongues {
		places = append(places, geom.BoxOf(t.Neck.P, t.Neck.Q).Centre())
	}
	for _, r := range sheet.Ribbons {
		places = append(places, r.At)
	}
	return places
}
