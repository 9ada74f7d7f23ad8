package ui

import (
	"fmt"
	"slices"

	"tsugime/repeat/document"
	"tsugime/repeat/geom"
	"tsugime/repeat/pattern"
	"tsugime/repeat/stencil"
)

// A tieHand is what the hand does with the ties of the sheet that is shown.
type tieHand struct {
	chosen int        // by number, from zero; none
	shift  geom.Point // the lattice vector to the copy in hand
	pull   tiePull
	ground openings // what a tie is drawn across, while it is pulled
	at     stencil.Tie
	astray bool // an end of it lies in the open
}

// A tiePull says what of a tie is being pulled.
type tiePull int

const (
	noPull tiePull = iota
	drawTie
	moveTie
	moveFrom
	moveTo
)

// design is what a tie of the sheet that is shown can cross: motifs and the
// copies that the plane group makes of them.
func (s *stencilStation) design() pattern.Unit {
	whole, h := s.w.design(), s.w.Order().Sheet.Hold
	if h.Way != stencil.Split || s.sheetNumber() == 1 || len(h.Second.Motifs) == 0 {
		return whole
	}
	u := pattern.Unit{Lattice: whole.Lattice}
	for _, m := range whole.Motifs {
		if !slices.Contains(h.Second.Motifs, m.ID) {
			u.Motifs = append(u.Motifs, m)
		}
	}
	return u
}

// ties are those of the sheet that is shown.
func (s *stencilStation) ties() []stencil.Tie {
	if s.w.Order().Sheet.Hold.Way == stencil.AsDrawn {
		return nil
	}
	return s.w.Order().Ties(s.sheetNumber() == 1)
}

// inHand is the tie that is chosen, or being drawn, where it lies on the sheet.
func (s *stencilStation) inHand() (stencil.Tie, bool) {
	h := &s.tie
	if h.pull != noPull && h.at.From != h.at.To {
		return h.at, true
	}
	ties := s.ties()
	if h.chosen < 0 || h.chosen >= len(ties) {
		h.chosen = none
		return stencil.Tie{}, false
	}
	t := ties[h.chosen]
	t.From, t.To = t.From.Add(h.shift), t.To.Add(h.shift)
	return t, true
}

// tieUnder returns the tie nearest to a place, and the copy of it that lies there.
func (s *stencilStation) tieUnder(p geom.Point, reach geom.Length) (number int, shift geom.Point, ok bool) {
	best := 0.0
	for i, t := range s.ties() {
		box := geom.BoxOf(t.From, t.To)
		near := max(t.Width/2, reach)
		window := geom.BoxOf(p.Sub(box.Max), p.Sub(box.Min)).Grown(near)
		for _, copied := range s.w.Order().Unit.Lattice.Places(window) {
			far := beside(p.Sub(copied), t.From, t.To)
			if far <= float64(near) && (!ok || far < best) {
				best, number, shift, ok = far, i, copied, true
			}
		}
	}
	return number, shift, ok
}

func (s *stencilStation) chooseTie(number int, shift geom.Point) {
	s.point.chosen = none
	s.tie.chosen, s.tie.shift = number, shift
	s.shownChoice(say("Tie %d of %d chosen.", number+1, len(s.ties())))
}

// pressTie takes the tie under the pointer, at an end or as a whole.
func (s *stencilStation) pressTie(p geom.Point, reach geom.Length) bool {
	number, shift, ok := s.tieUnder(p, reach)
	if t, held := s.inHand(); held && (p.Distance(t.From) <= reach || p.Distance(t.To) <= reach) {
		number, shift, ok = s.tie.chosen, s.tie.shift, true // its own handles come first
	}
	if !ok {
		return false
	}
	s.chooseTie(number, shift)
	t, _ := s.inHand()
	s.tie.pull = moveTie
	switch {
	case p.Distance(t.From) <= reach && p.Distance(t.From) <= p.Distance(t.To):
		s.tie.pull = moveFrom
	case p.Distance(t.To) <= reach:
		s.tie.pull = moveTo
	}
	return true
}

// dragTie shows what the tie would be; nothing is edited yet.
func (s *stencilStation) dragTie(from, by geom.Point) {
	h := &s.tie
	if h.ground.index == nil {
		h.ground = openingsOf(s.design())
	}
	t := stencil.Tie{From: snapped(from), To: snapped(from.Add(by)), Width: s.w.Order().Sheet.Hold.TieWidth}
	if h.pull != drawTie {
		t = s.ties()[h.chosen]
		t.From, t.To = t.From.Add(h.shift), t.To.Add(h.shift)
		by = snapped(by)
		if h.pull != moveTo {
			t.From = t.From.Add(by)
		}
		if h.pull != moveFrom {
			t.To = t.To.Add(by)
		}
	}
	landed, ok := h.ground.landed(t)
	h.at, h.astray = landed, !ok
	u := s.w.unit()
	s.w.pointer.SetText(say("tie %s long", u.Format(landed.From.Distance(landed.To), 2)))
	s.w.repaint()
}

// dropTie makes the pull one edit.
func (s *stencilStation) dropTie() {
	h := s.tie
	s.endPull()
	if h.at.From == h.at.To {
		return
	}
	home, back, ok := h.ground.homed(h.at)
	if !ok {
		s.w.Say(say("This strip crosses no cut-out, so it would hold nothing; draw it from paper to paper across one."))
		s.w.repaint()
		return
	}
	second, before := s.sheetNumber() == 1, s.tie
	s.tie.shift = back
	name, done := "Move Tie", false
	if h.pull == drawTie {
		s.tie.chosen, name = len(s.w.Order().Ties(second)), "Add Tie"
		done = s.w.Edit(name, func(o document.Order) (document.Order, error) { return document.AddTies(o, second, home) })
	} else {
		done = s.w.Edit(name, func(o document.Order) (document.Order, error) { return document.SetTie(o, second, h.chosen, home) })
	}
	switch {
	case !done:
		s.tie = before
	case h.astray:
		s.w.Say(say("%s. An end of it lies in the open: there was no paper near enough that way.", say(name)))
	}
}

// endPull lets go of what is pulled.
func (s *stencilStation) endPull() {
	s.tie.pull, s.tie.ground, s.tie.at, s.tie.astray = noPull, openings{}, stencil.Tie{}, false
}

// nudgeTie moves the chosen tie.
func (s *stencilStation) nudgeTie(by geom.Point) {
	i, second := s.tie.chosen, s.sheetNumber() == 1
	s.w.Edit("Nudge Tie", func(o document.Order) (document.Order, error) {
		if i >= len(o.Ties(second)) {
			return o, fmt.Errorf("there is no tie %d any more; choose another", i+1)
		}
		t := o.Ties(second)[i]
		t.From, t.To = t.From.Add(by), t.To.Add(by)
		return document.SetTie(o, second, i, t)
	})
}

// widenTie gives the chosen tie another width.
func (s *stencilStation) widenTie(o document.Order, width geom.Length) (document.Order, error) {
	i, ties := s.tie.chosen, s.ties()
	if i < 0 || i >= len(ties) {
		return o, fmt.Errorf("no tie is chosen; click one first")
	}
	t := ties[i]
	t.Width = width
	return document.SetTie(o, s.sheetNumber() == 1, i, t)
}

// removeTie takes the chosen tie away.
func (s *stencilStation) removeTie() {
	i, second := s.tie.chosen, s.sheetNumber() == 1
	s.tie.chosen = none
	s.w.Edit("Delete Tie", func(o document.Order) (document.Order, error) { return document.DeleteTies(o, second, i) })
}
