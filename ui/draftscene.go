package ui

import (
	"cmp"
	"slices"

	"tsugime/export/raster"
	"tsugime/repeat/geom"
	"tsugime/repeat/pattern"
	"tsugime/ui/board"
)

// What the whole view shows: how far around the cell, in cells, and of a large
// cell how much, in pitches of its holes.
const (
	draftReach = 1.6
	draftMost  = 18
)

func (s *draft) view() string { return "draft" }

func (s *draft) scene() board.Scene {
	o := s.w.Order()
	l := s.lattice.lattice()
	cell := []geom.Point{{}, l.A, l.A.Add(l.B), l.B}
	around := s.upper(geom.BoxOf(cell...))
	name := board.Label{At: cell[2], Text: " " + say("unit"), Align: board.After, Colour: worn().vat, Shield: worn().shield, Bold: true, Size: 11,
		Room: around.Width() / 2}
	if !around.Holds(name.At) {
		name.At, name.Align = geom.Point{}, board.Above
	}
	sc := board.Scene{
		Desk: worn().tannin, Areas: []board.Area{{Shut: worn().tannin, Open: worn().light}}, Grounds: s.laid(),
		Extent: around.Grown(max(around.Width(), around.Height()).Times(draftReach)),
		Marks: []board.Mark{
			{Shape: board.Loop, Points: cell, Colour: worn().cellLine, Width: 2},
			{Shape: board.Ring, Points: []geom.Point{{}}, Colour: worn().cellLine},
		},
		Labels: []board.Label{name},
	}
	if s.craft != nil {
		s.w.markGrid(&sc, s.pen.panel.grid)
	}
	if s.lattice.pull == nil {
		s.markSymmetry(&sc)
	}
	if s.craft != nil {
		s.craft.show(&sc)
		return sc
	}
	s.lattice.mark(&sc)
	if s.lattice.pull != nil {
		return sc
	}
	s.markChosen(&sc)
	s.markFrame(&sc)
	s.shelf.mark(&sc)
	if s.drag != nil {
		s.markPlace(&sc, s.drag.at, leadWords(s.w.unit(), s.stands, s.drag.at.At))
	}
	if s.w.Ready() && s.drag == nil {
		markPaper(&sc, s.w, 0, geom.Point{})
	}
	if s.drag == nil && s.design().ground == nil {
		sc.Labels = append(sc.Labels, board.Label{At: sc.Extent.Centre(), Align: board.Middle, Colour: worn().ink, Shield: worn().shield, Size: 14,
			Text: say("So much lies over one another here that the picture takes a while.")})
	}
	if len(o.Unit.Motifs) == 0 {
		sc.Labels = append(sc.Labels, board.Label{At: sc.Extent.Centre(), Align: board.Middle, Colour: worn().ink, Shield: worn().shield, Size: 14,
			Text: say("Choose “A click places a motif”, then click on the paper.")})
	}
	return sc
}

// upper returns the upper left part of a cell's box in which its holes can be told
// apart, when it is shown with what is around it.
func (s *draft) upper(box geom.Box) geom.Box {
	most := min(s.w.pitch(), s.w.Order().Unit.Lattice.Pitch()).Times(draftMost)
	size := geom.Point{X: min(box.Width(), most), Y: min(box.Height(), most)}
	return geom.BoxOf(box.Min, box.Min.Add(size))
}

// lowest returns the lowest of some points.
func lowest(points []geom.Point) geom.Point {
	return slices.MaxFunc(points, func(a, b geom.Point) int { return cmp.Compare(a.Y, b.Y) })
}

// laid is the plain pattern; during a drag in two parts.
func (s *draft) laid() []board.Laid {
	lay := func(g *raster.Ground, by geom.Point) board.Laid {
		return board.Laid{Ground: g, Lays: []raster.Lay{{Move: by}}}
	}
	if s.craft != nil {
		return s.craft.laid()
	}
	if s.lattice.pull != nil && s.lattice.shown != nil {
		return []board.Laid{lay(s.lattice.shown, geom.Point{})}
	}
	if s.drag != nil {
		return []board.Laid{lay(s.drag.stays, geom.Point{}), lay(s.drag.moves, s.drag.shift())}
	}
	return []board.Laid{lay(s.painted(), geom.Point{})}
}

// markChosen frames the chosen motifs, where a drag has brought them, and lightly
// what the plane group makes of them in and around the cell.
func (s *draft) markChosen(sc *board.Scene) {
	if len(s.w.chosen) == 0 {
		return
	}
	o, motifs, by := s.w.Order(), s.design().unit.Motifs, geom.Point{}
	if s.drag != nil {
		by = s.drag.shift()
		if s.drag.group != nil {
			motifs = s.drag.group
		}
	}
	var copies, drawn []board.Mark
	chosen := s.w.chosenSet()
	for _, m := range motifs {
		motif, op := drawnFrom(o, m.ID)
		if !chosen[motif] || len(drawn) >= mostMarks && o.Group == pattern.P1 {
			continue
		}
		m.At = m.At.Add(by)
		box := m.Placed().Bounds()
		box = box.Grown(box.Width() / 8)
		if op == 0 && len(drawn) < mostMarks {
			drawn = append(drawn, framed(box.Moved(s.homeward(motif)), 2.5))
		}
		if o.Group != pattern.P1 && len(copies) < mostMarks {
			copies = append(copies, s.framedCopies(box)...)
		}
	}
	sc.Marks = append(append(sc.Marks, copies...), drawn...)
}

// homeward is the way from where a motif was drawn to its copy in the cell, which
// can be far; a drag doesn't change it.
func (s *draft) homeward(id pattern.ID) geom.Point {
	o := s.w.Order()
	m, _ := o.Motif(id)
	return o.Unit.Lattice.Into(m.At).Sub(m.At)
}

// framedCopies frames the copies of a box that stand in the cell or near it.
func (s *draft) framedCopies(box geom.Box) []board.Mark {
	l := s.w.Order().Unit.Lattice
	around := s.upper(geom.BoxOf(geom.Point{}, l.A, l.A.Add(l.B), l.B))
	around = around.Grown(max(around.Width(), around.Height()) / 2).Moved(box.Centre().Neg())
	var marks []board.Mark
	for _, shift := range l.Places(around) {
		marks = append(marks, framed(box.Moved(shift), 1))
	}
	return marks
}

// framed is a frame about a box.
func framed(box geom.Box, width float32) board.Mark {
	return board.Mark{Shape: board.Loop, Points: corners(box), Colour: worn().indigo, Width: width}
}
