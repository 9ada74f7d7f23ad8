package ui

import (
	"slices"

	"fyne.io/fyne/v2"

	"tsugime/repeat/document"
	"tsugime/repeat/geom"
	"tsugime/repeat/pattern"
)

// under returns the drawn motif of what lies at a place, the operation that makes
// what lies there, and where that stands: the last of the unit first.
func (s *draft) under(at geom.Point, reach geom.Length) (id pattern.ID, op int, stands geom.Point, ok bool) {
	u := s.design().unit
	for i := len(u.Motifs) - 1; i >= 0; i-- {
		m := u.Motifs[i]
		m.At = geom.Point{}
		shape := m.Placed()
		_, _, rest := u.Lattice.Nearest(at.Sub(u.Motifs[i].At))
		if shape.Contains(rest) || geom.Length(rest.Norm()) < reach/2 {
			id, op = drawnFrom(s.w.Order(), m.ID)
			return id, op, at.Sub(rest), true
		}
	}
	return 0, 0, at, false
}

// Tap chooses the motif there or, when a click places, puts a new one there.
func (s *draft) Tap(at geom.Point, reach geom.Length, more bool) {
	if s.places.Checked {
		s.put(at)
		return
	}
	if v, ok := s.lattice.under(at, reach); ok && !more {
		s.lattice.take(v)
		return
	}
	s.lattice.release()
	id, op, _, ok := s.under(at, reach)
	switch {
	case !ok && !more:
		s.w.choose()
	case ok && !more:
		s.w.choose(id)
		s.w.Say(s.describe(id, op))
	case ok && slices.Contains(s.w.chosen, id):
		s.w.choose(slices.DeleteFunc(slices.Clone(s.w.chosen), func(c pattern.ID) bool { return c == id })...)
	case ok:
		s.w.choose(append(slices.Clone(s.w.chosen), id)...)
	}
}

// put places the next motif, as the copy that lies in the cell.
func (s *draft) put(at geom.Point) {
	shape, err := s.next()
	if err != nil {
		s.w.Say(sentence(err))
		return
	}
	before := s.w.chosen
	s.w.chosen = []pattern.ID{s.w.Order().NextID}
	if !s.w.Edit("Place Motif", func(o document.Order) (document.Order, error) {
		return document.AddMotif(o, pattern.Motif{Shape: shape, At: o.Unit.Lattice.Into(snapped(at))})
	}) {
		s.w.chosen = before
	}
}

// snapped puts a place on the hundredth of a millimetre.
func snapped(p geom.Point) geom.Point {
	const step = 10 * geom.Micrometre
	return geom.Point{X: (p.X + step/2) / step * step, Y: (p.Y + step/2) / step * step}
}

// describe tells what a motif is, and whether it was chosen by a copy.
func (s *draft) describe(id pattern.ID, op int) string {
	m, _ := s.w.Order().Motif(id)
	return s.w.motifWords(m, op)
}

// motifWords tell what a motif is, and whether it is seen as a copy.
func (w *Window) motifWords(m pattern.Motif, op int) string {
	at := w.unit().Number(m.At.X, 3) + ", " + w.unit().Format(m.At.Y, 3)
	text := say("Motif %d: an outline at %s.", int(m.ID), at)
	if m.Shape.Round() {
		text = say("Motif %d: a dot of %s at %s.", int(m.ID), w.unit().Format(m.Shape.Disc.Diameter, 3), at)
	}
	if op != 0 {
		text += " " + say("This is a copy of it: drag either, and all follow.")
	}
	return text
}

// Hover tells the place, and shows there what is in hand from the shelf.
func (s *draft) Hover(at geom.Point) {
	s.onlooker.Hover(at)
	s.shelf.hover(at)
}

// Press takes the motif there; with a motif among the chosen ones, all of them. Where
// there is none, or with more, a frame is pulled.
func (s *draft) Press(at geom.Point, reach geom.Length, more bool) bool {
	s.frame, s.pulls = nil, false
	if s.places.Checked {
		return false
	}
	if v, ok := s.lattice.under(at, reach); ok && !more {
		s.lattice.take(v)
		s.pulls = true
		return true
	}
	id, op, stands, ok := s.under(at, reach)
	if !ok || more {
		s.frame = &chooseFrame{at, at, more}
		return true
	}
	s.op, s.stands = op, stands
	if !slices.Contains(s.w.chosen, id) {
		s.w.choose(id)
	}
	return true
}

// Drag shows what the order would be; nothing is edited yet.
func (s *draft) Drag(by geom.Point) {
	switch {
	case s.frame != nil:
		s.pullFrame(by)
		return
	case s.pulls:
		s.lattice.drag(by)
		return
	}
	if s.drag == nil {
		s.drag = s.take()
	}
	s.drag.at = s.dragSnap(s.stands.Add(by))
	s.to(s.drag, s.drag.at.At.Sub(s.stands))
	u := s.w.unit()
	s.w.pointer.SetText(say("moved by %s, %s", u.Format(s.drag.by.X, 3), u.Format(s.drag.by.Y, 3)))
	s.w.repaint()
}

// Drop makes the whole drag one edit.
func (s *draft) Drop(geom.Point) {
	switch {
	case s.frame != nil:
		s.dropFrame()
		return
	case s.pulls:
		s.pulls = false
		s.lattice.drop()
		return
	}
	if s.drag == nil {
		return
	}
	own := s.drag.own
	s.drag = nil
	s.w.move("Move Motif", own)
}

// leave gives up a drag.
func (s *draft) leave() bool {
	if s.frame != nil && s.w.board.Held() {
		s.frame = nil
		s.w.board.Release()
		return true
	}
	if s.lattice.pull != nil {
		s.lattice.pull, s.pulls = nil, false
		s.w.board.Release()
		return true
	}
	if s.drag == nil && s.lattice.held {
		s.lattice.release()
		return true
	}
	if s.drag == nil && s.shelf.taken != "" {
		s.shelf.take("")
		return true
	}
	if s.drag == nil {
		return false
	}
	s.drag = nil
	s.w.board.Release()
	return true
}

func (s *draft) gripped() string {
	if s.lattice.held {
		return "Lattice Vector"
	}
	if len(s.w.chosen) == 0 {
		return ""
	}
	return "Motifs"
}

func (s *draft) nudge(by geom.Point) {
	if s.lattice.held {
		s.lattice.nudge(by)
		return
	}
	s.w.move("Nudge Motif", by)
}

func (s *draft) remove() {
	if s.lattice.held {
		s.w.Say(say("A lattice needs both of its vectors."))
		return
	}
	s.w.Edit("Delete Motif", func(o document.Order) (document.Order, error) { return document.DeleteMotifs(o, s.w.chosen...) })
}

// move moves the chosen motifs by one edit.
func (w *Window) move(name string, by geom.Point) {
	if len(w.chosen) == 0 {
		return
	}
	w.Edit(name, func(o document.Order) (document.Order, error) { return document.MoveMotifs(o, by, w.chosen...) })
}

// nudge is how far an arrow key moves the chosen motifs.
const nudge = 10 * geom.Micrometre

func (w *Window) chooseAll() {
	if e, writing := w.win.Canvas().Focused().(*entry); writing {
		e.TypedShortcut(&fyne.ShortcutSelectAll{})
		return
	}
	var all []pattern.ID
	for _, m := range w.Order().Unit.Motifs {
		all = append(all, m.ID)
	}
	w.choose(all...)
	w.Say(say("%d motifs chosen.", len(all)))
}
