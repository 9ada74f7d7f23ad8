package ui

import (
	"cmp"
	"math"
	"slices"

	"tsugime/repeat/geom"
	"tsugime/ui/board"
)

// A thingKind is a kind of thing that can be pointed at.
type thingKind int

// The kinds.
const (
	noThing thingKind = iota
	aMotif
	aWeb
	anIsland
	aBand
	aTongue
	aRibbon
	somePaper
	aStar
	aJointLine
	aJointPoint
	aTie
	aField
	aSheet
	aCutOut
	aPlacement
	maskedPart
	aTurn
	someWaste
	aSeam
	anAskedFor
	aClothPiece
	aPanel
)

// A thingKey tells a thing from all others of its station, in the next state too.
type thingKey struct {
	kind thingKind
	name string
	n, k int
	at   geom.Point
}

// A thing is what can be pointed at on the surface: a web, a star, a panel. Its words name
// it with its measure in one line.
type thing struct {
	key   thingKey
	words string
	// line is a place, a line, or with area the outline of what it covers.
	line   []geom.Point
	area   bool
	radius geom.Length // of a place
	choose func()      // takes it in hand; nil where it can only be shown
}

// pointable is a station whose surface has things.
type pointable interface {
	things() []thing                                     // in the order in which one goes through them
	lies(at geom.Point, reach geom.Length) (thing, bool) // what lies there of what is too much to go through
}

// box is around a thing.
func (t thing) box() geom.Box { return geom.BoxOf(t.line...).Grown(t.radius) }

// anchor is a place by which a thing is pointed at.
func (t thing) anchor() geom.Point {
	if len(t.line) < 3 || t.area {
		return geom.BoxOf(t.line...).Centre()
	}
	return t.line[len(t.line)/2]
}

// off is how far a place is from a thing; 0 in it.
func (t thing) off(p geom.Point) geom.Length {
	switch {
	case len(t.line) == 1:
		return max(p.Distance(t.line[0])-t.radius, 0)
	case t.area && geom.Ring(t.line).Winding(p) != 0:
		return 0
	}
	best := math.Inf(1)
	for i := 1; i < len(t.line); i++ {
		best = min(best, beside(p, t.line[i-1], t.line[i]))
	}
	return geom.Length(math.Round(best))
}

// rank orders what lies over each other: places lie over lines, those over areas, small
// areas over large ones.
func (t thing) rank() float64 {
	switch {
	case t.key.kind == somePaper:
		return math.Inf(1)
	case t.area:
		return 2 + math.Abs(geom.Ring(t.line).AreaMM2())
	case len(t.line) > 1:
		return 1
	}
	return 0
}

// things are those of the station that is shown, worked out once for what it shows.
func (w *Window) things() []thing {
	s, ok := w.stations[w.at].(pointable)
	if !ok || w.craft() != nil {
		return nil
	}
	shown := thingsOf{w.history.Now().number, w.built, w.at, w.stations[w.at].view(), w.shownPart(), w.unit().Name}
	if w.pointing.all == nil || w.pointing.of != shown {
		w.pointing.of, w.pointing.all = shown, s.things()
	}
	return w.pointing.all
}

// shownPart tells views apart that share what of them is seen.
func (w *Window) shownPart() string {
	if w.at == stencilAt {
		return w.stencilStation().seen
	}
	return ""
}

// A thingsOf is what a list of things belongs to.
type thingsOf struct {
	number, built, at int
	view, part, unit  string
}

// A pointing is what is pointed at in a window.
type pointing struct {
	of  thingsOf
	all []thing
	at  thingKey // of what was chosen; of no kind for none
	lay *thing   // that was chosen and is too much to go through
}

// under returns what lies at a place: the uppermost of what is within reach.
func (w *Window) under(p geom.Point, reach geom.Length) (thing, bool) {
	var found []thing
	for _, t := range w.things() {
		far := reach
		if t.area {
			far = 0
		}
		if t.box().Grown(reach).Holds(p) && t.off(p) <= far {
			found = append(found, t)
		}
	}
	if s, ok := w.stations[w.at].(pointable); ok && w.craft() == nil {
		if t, ok := s.lies(p, reach); ok {
			found = append(found, t)
		}
	}
	if len(found) == 0 {
		return thing{}, false
	}
	return slices.MinFunc(found, func(a, b thing) int { return cmp.Or(cmp.Compare(a.rank(), b.rank()), cmp.Compare(a.off(p), b.off(p))) }), true
}

// pointed is the thing that was chosen, as it is now.
func (w *Window) pointed() (thing, bool) {
	if t := w.pointing.lay; t != nil && w.pointing.at == t.key {
		return *t, true
	}
	if w.pointing.at.kind == noThing {
		return thing{}, false
	}
	for _, t := range w.things() {
		if t.key == w.pointing.at {
			return t, true
		}
	}
	return thing{}, false
}

// markPointed draws what is pointed at and can't be taken in hand, with its words.
func (w *Window) markPointed(sc *board.Scene) {
	t, ok := w.pointed()
	if !ok || t.choose != nil || w.board.Held() {
		return // what is in hand its station marks itself
	}
	m := board.Mark{Shape: board.Line, Points: t.line, Colour: worn().indigo, Width: 4}
	switch {
	case t.area:
		m.Shape, m.Width = board.Loop, 3
	case len(t.line) == 1:
		m.Shape, m.Radius, m.Width = board.Ring, t.radius+w.reach(), 3
	}
	at := t.anchor()
	if t.area {
		at = geom.Point{X: t.box().Centre().X, Y: t.box().Min.Y}
	}
	sc.Marks = append(sc.Marks, m)
	sc.Labels = slices.Insert(slices.Clone(sc.Labels), 0, board.Label{At: at, Off: [2]float32{0, -8}, Align: board.Above, Text: t.words, Colour: worn().ink, Shield: worn().shield, Bold: true, Size: 12, Keep: true})
}
