package ui

import (
	"cmp"
	"slices"

	"tsugime/export/raster"
	"tsugime/repeat/geom"
	"tsugime/repeat/pattern"
	"tsugime/ui/board"
)

// draftReach is how far around the cell the whole view shows, in cells.
const draftReach = 1.6

func (s *draft) view() string { return "draft" }

func (s *draft) scene() board.Scene {
	o := s.w.Order()
	l := o.Unit.Lattice
	cell := []geom.Point{{}, l.A, l.A.Add(l.B), l.B}
	around := geom.BoxOf(cell...)
	sc := board.Scene{
		Desk: tannin, Areas: []board.Area{{Shut: tannin, Open: light}}, Grounds: s.laid(), Pitch: s.w.pitch(),
		Extent: around.Grown(max(around.Width(), around.Height()).Times(draftReach)),
		Marks: []board.Mark{
			{Shape: board.Loop, Points: cell, Colour: cellLine, Width: 2},
			{Shape: board.Ring, Points: []geom.Point{{}}, Colour: cellLine},
		},
		Labels: []board.Label{{At: lowest(cell), Text: say("unit"), Align: board.Below, Colour: cellLine, Shield: shield, Bold: true, Size: 11,
			Room: around.Width() / 2}},
	}
	s.markChosen(&sc)
	if s.w.Ready() && s.drag == nil {
		markPaper(&sc, s.w, 0, geom.Point{})
	}
	if len(o.Unit.Motifs) == 0 {
		sc.Labels = append(sc.Labels, board.Label{At: sc.Extent.Centre(), Align: board.Middle, Colour: ink, Shield: shield, Size: 14,
			Text: say("Choose “A click places a motif”, then click on the paper.")})
	}
	return sc
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
	if s.drag != nil {
		return []board.Laid{lay(s.drag.stays, geom.Point{}), lay(s.drag.moves, s.drag.by)}
	}
	all, _ := s.parted(nil)
	return []board.Laid{lay(all, geom.Point{})}
}

// parted returns the plain pattern without the chosen motifs, and them alone.
func (s *draft) parted(chosen []pattern.ID) (stays, moves *raster.Ground) {
	u := s.w.Order().Unit
	var rest, taken []geom.Shape
	for _, c := range u.CutOuts() {
		if slices.Contains(chosen, c.Motif) {
			taken = append(taken, c.Shape)
		} else {
			rest = append(rest, c.Shape)
		}
	}
	a, b := u.Lattice.A, u.Lattice.B
	return raster.NewGround(rest, a, b), raster.NewGround(taken, a, b)
}

// markChosen frames the chosen motifs, where a drag has brought them.
func (s *draft) markChosen(sc *board.Scene) {
	for i, id := range s.w.chosen {
		m, ok := s.w.Order().Motif(id)
		if !ok || i == mostMarks {
			continue
		}
		if s.drag != nil {
			m.At = m.At.Add(s.drag.by)
		}
		box := m.Placed().Bounds()
		sc.Marks = append(sc.Marks, board.Mark{
			Shape: board.Loop, Points: corners(box.Grown(box.Width() / 8)), Colour: indigo, Width: 2.5,
		})
	}
}
