package ui

import (
	"math"

	"tsugime/export/raster"
	"tsugime/repeat/document"
	"tsugime/repeat/geom"
	"tsugime/repeat/pattern"
	"tsugime/repeat/pen"
	"tsugime/ui/board"
)

// A latticeHand pulls the lattice by handles beyond the ends of its two vectors, where
// no copy of a motif lies under them.
type latticeHand struct {
	s     *draft
	held  bool // a handle is in hand, for the keys too
	by    pattern.Vector
	start pattern.Lattice // as it was when a pull began
	pull  *latticePull    // nil while nothing is pulled
	shown *raster.Ground  // the pattern as it was painted last during the pull; nil before
	busy  bool            // one that takes longer is being made ready
}

// A latticePull is the lattice as a pull would leave it.
type latticePull struct {
	lattice pattern.Lattice
	order   document.Order
	fault   error    // why it can't be
	names   []string // what holds it, as it is said
}

// vectors are both, in their order.
var vectors = []pattern.Vector{pattern.VectorA, pattern.VectorB}

// vectorNames are the vectors as they are called.
var vectorNames = map[pattern.Vector]string{pattern.VectorA: "vector a", pattern.VectorB: "vector b"}

// lattice is the lattice that is shown.
func (h *latticeHand) lattice() pattern.Lattice {
	if h.pull != nil {
		return h.pull.lattice
	}
	return h.s.w.Order().Unit.Lattice
}

// beyond is the way from the end of a vector to its handle, in screen units.
func (h *latticeHand) beyond(v pattern.Vector) (x, y float64) {
	end := v.Of(h.lattice())
	long := end.Norm()
	return board.KnobPx * float64(end.X) / long, board.KnobPx * float64(end.Y) / long
}

// handle is where the handle of a vector stands at the zoom of the surface.
func (h *latticeHand) handle(v pattern.Vector) geom.Point {
	x, y := h.beyond(v)
	scale := max(h.s.w.board.Scale(), 1e-6)
	return v.Of(h.lattice()).Add(geom.PtMM(x/scale, y/scale))
}

// under returns the vector whose handle lies at a place.
func (h *latticeHand) under(at geom.Point, reach geom.Length) (pattern.Vector, bool) {
	for _, v := range vectors {
		if at.Distance(h.handle(v)) <= reach {
			return v, true
		}
	}
	return 0, false
}

// take takes a vector in hand, in the place of motifs.
func (h *latticeHand) take(v pattern.Vector) {
	h.s.w.choose()
	h.held, h.by, h.start, h.shown = true, v, h.s.w.Order().Unit.Lattice, nil
	h.s.w.win.SetMainMenu(h.s.w.mainMenu())
	h.s.w.Say(say("Lattice, %s: %s. Arrows nudge it.", say(vectorNames[v]), h.words(h.start)))
	h.s.w.repaint()
}

// takeNext takes one vector after the other by keys, then none, and shows it.
func (h *latticeHand) takeNext() {
	switch {
	case !h.held:
		h.take(pattern.VectorA)
	case h.by == pattern.VectorA:
		h.take(pattern.VectorB)
	default:
		h.release()
		h.s.w.Say("")
		h.s.w.repaint()
		return
	}
	if surface := h.s.w.board; surface.Scale() > 0 && !surface.Seen().Holds(h.handle(h.by)) {
		surface.Frame(geom.BoxOf(geom.Point{}, h.start.A, h.start.B, h.start.A.Add(h.start.B)))
	}
}

// release lets the lattice go.
func (h *latticeHand) release() {
	h.held, h.pull = false, nil
	h.s.w.win.SetMainMenu(h.s.w.mainMenu())
}

// drag shows the pattern as the pull would leave it; nothing is edited yet. With Ctrl
// the vector leaves what the kind demands, with Shift it is held by the nudge alone.
func (h *latticeHand) drag(way geom.Point) {
	end := h.by.Of(h.start).Add(way)
	o := h.s.w.Order()
	p := &latticePull{}
	if h.s.w.board.Holds(ctrl) || h.start.Kind() == pattern.FreeKind {
		p.lattice, p.names = h.freed(end)
	} else {
		p.lattice, p.names = h.spaced(o, h.start.Pulled(h.by, end))
	}
	p.order, p.fault = document.SetLattice(o, p.lattice)
	if o.Group != p.order.Group {
		p.names = append(p.names, say("its copies become motifs of their own"))
	}
	h.pull = p
	h.prepare(p)
	h.s.w.pointer.SetText(h.words(p.lattice))
	h.s.w.repaint()
}

// mostAtOnce is how many motifs are laid on a pulled lattice within a frame; more are made
// ready in the background, the newest lattice first, while the cell moves on.
const mostAtOnce = 400

// prepare makes the pattern ready as a pull would leave it.
func (h *latticeHand) prepare(p *latticePull) {
	if p.fault != nil || h.busy {
		return
	}
	if len(p.order.Unit.Motifs) <= mostAtOnce {
		design := p.order.Design()
		h.shown = groundOf(design.Lattice, design.Motifs)
		return
	}
	h.busy = true
	go func() {
		design := p.order.Design()
		ground := groundOf(design.Lattice, design.Motifs)
		later(func() {
			h.busy = false
			if h.pull == nil {
				return
			}
			h.shown = ground
			if h.pull != p {
				h.prepare(h.pull)
			}
			h.s.w.repaint()
		})
	}()
}

// freed is the lattice with the vector at a place, level, upright or aslant where that
// is near.
func (h *latticeHand) freed(end geom.Point) (pattern.Lattice, []string) {
	reach := h.s.w.reach()
	if h.s.w.board.Holds(shift) {
		reach = 0
	}
	at := pen.Guides{Fine: nudge}.From(geom.Point{}).Snap(end, reach)
	at.At = snapped(at.At)
	var names []string
	if by := held(at); by != "" {
		names = append(names, by)
	}
	return h.start.Freed(h.by, at.At), names
}

// spaced puts the spacings that a pull changed on what divides the step and the field,
// where that is near, or on whole nudges.
func (h *latticeHand) spaced(o document.Order, l pattern.Lattice) (pattern.Lattice, []string) {
	across, along := l.Spacing()
	reach := h.s.w.reach()
	if h.s.w.board.Holds(shift) {
		reach = -1
	}
	var names []string
	hold := func(spacing *geom.Length, whole geom.Length, isAcross bool, words string) {
		near, times, ok := l.Dividing(whole, isAcross)
		if ok && (near-*spacing).Abs() <= reach {
			*spacing, names = near, append(names, say(words, times))
			return
		}
		*spacing = geom.Length(math.Round(float64(*spacing)/float64(nudge))) * nudge
	}
	changesAcross, changesAlong := l.Ways(h.by)
	if changesAcross {
		hold(&across, o.Sheet.Field.Width, true, "%d times in the field")
	}
	if changesAlong {
		hold(&along, o.Sheet.Step, false, "%d times in the step")
	}
	return h.squared(o, l.Spaced(across, along), changesAcross), names
}

// squared keeps columns and rows alike where the plane group asks for that.
func (h *latticeHand) squared(o document.Order, l pattern.Lattice, byAcross bool) pattern.Lattice {
	if o.Group.Allows(l) == nil {
		return l
	}
	side, along := l.Spacing()
	if !byAcross {
		side = along
	}
	if square := l.Spaced(side, side); o.Group.Allows(square) == nil {
		return square
	}
	return l
}

// drop makes the whole pull one edit.
func (h *latticeHand) drop() {
	p := h.pull
	h.pull = nil
	if p == nil {
		return
	}
	if p.lattice == h.s.w.Order().Unit.Lattice {
		h.s.w.repaint()
		return
	}
	h.set("Pull Lattice", p.lattice)
}

// nudge moves the end of the vector, as far as the kind lets it.
func (h *latticeHand) nudge(by geom.Point) {
	l := h.s.w.Order().Unit.Lattice
	next := l.Pulled(h.by, h.by.Of(l).Add(by))
	if next == l {
		h.s.w.Say(say("This kind of lattice keeps the vector as it is that way; with the free kind it turns."))
		return
	}
	h.set("Nudge Lattice", h.squared(h.s.w.Order(), next, by.X != 0))
}

func (h *latticeHand) set(name string, l pattern.Lattice) {
	if h.s.w.Edit(name, func(o document.Order) (document.Order, error) { return document.SetLattice(o, l) }) {
		h.start = l
		h.s.w.Say(say("%s.", say(name)) + " " + h.words(l) + ".")
	}
}

// words tell the length of the vector that is in hand and what of the spacing is its own.
func (h *latticeHand) words(l pattern.Lattice) string {
	u := h.s.w.unit()
	across, along := l.Spacing()
	changesAcross, changesAlong := l.Ways(h.by)
	end := h.by.Of(l)
	switch length := u.Format(end.Distance(geom.Point{}), 4); {
	case l.Kind() == pattern.FreeKind:
		return leadWords(u, geom.Point{}, end)
	case changesAcross && changesAlong:
		return length + "  ·  " + say("across %s", u.Format(across, 4)) + "  ·  " + say("along %s", u.Format(along, 4))
	case changesAcross:
		return say("across %s", u.Format(across, 4))
	default:
		return say("along %s", u.Format(along, 4))
	}
}
