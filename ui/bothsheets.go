package ui

import (
	"strconv"

	"tsugime/export/raster"
	"tsugime/repeat/geom"
	"tsugime/repeat/stencil"
	"tsugime/ui/board"
)

// A bothSheets is the two sheets of a split laid one on the other, the second off
// by some way, as it was made ready last.
type bothSheets struct {
	ordered int // number of the work that it belongs to
	off     geom.Point
	ground  *raster.Ground // nil until it is ready
	shows   stencil.Cover  // how they cover the design then
	known   bool
}

// layBoth makes the two sheets ready to be seen together, in the background.
func (s *stencilStation) layBoth() {
	set := s.w.work.Sheet.Set()
	if len(set) < 2 || s.both.ordered == s.w.built && s.both.off == s.off {
		s.w.repaint()
		return
	}
	now := bothSheets{ordered: s.w.built, off: s.off}
	s.both = now
	design := s.w.work.Order.Unit
	show := func(what func(b *bothSheets)) {
		later(func() {
			if s.both.ordered == now.ordered && s.both.off == now.off {
				what(&s.both)
				s.w.refresh()
			}
		})
	}
	go func() {
		var shapes []geom.Shape
		for _, c := range set[0].CutOuts {
			shapes = append(shapes, c.Shape)
		}
		for _, c := range set[1].CutOuts {
			shapes = append(shapes, c.Shape.Moved(now.off))
		}
		ground := raster.NewGround(shapes)
		show(func(b *bothSheets) { b.ground = ground })
		if c, err := stencil.Covered(design, set[0].Unit, stencil.Misplaced(set[1].Unit, now.off)); err == nil {
			show(func(b *bothSheets) { b.shows, b.known = c, true })
		}
	}()
}

// bothLaid shows what one placement of both sheets leaves on the cloth.
func (s *stencilStation) bothLaid() board.Scene {
	w := s.w.work
	cloth := clothUnder(w, 1)
	sc := board.Scene{Desk: worn().table, Extent: cloth,
		Areas: []board.Area{{Box: cloth, Shut: dyed(w.Order.Cloth.Dye), Open: worn().undyed}}}
	if s.both.ground == nil || s.both.ordered != s.w.built {
		sc.Labels = append(sc.Labels, board.Label{At: cloth.Centre(), Align: board.Middle, Text: say("Measuring…"), Colour: worn().ink, Shield: worn().shield, Size: 15})
		return sc
	}
	sc.Grounds = []board.Laid{{Ground: s.both.ground, Lays: []raster.Lay{{}}}}
	for _, n := range []int{0, 1} {
		line := moved(w.Sheet.Joint.Line, geom.Point{Y: w.Sheet.Spec.Step}.Times(n))
		sc.Marks = append(sc.Marks, board.Mark{Shape: board.Dashes, Points: line, Colour: worn().quiet, Width: 1.5})
	}
	home := s.home()
	for i, patch := range s.both.shows.Missing {
		if i == fewLabels {
			break
		}
		at := patch.At.Add(home)
		sc.Marks = append(sc.Marks, board.Mark{Shape: board.Ring, Points: []geom.Point{at}, Radius: geom.MM(0.3), Colour: worn().onCloth, Width: 2})
		if i > 0 {
			continue // one word is enough, the rings are alike
		}
		sc.Labels = append(sc.Labels, board.Label{At: at, Text: say("shows dyed"), Align: board.Below, Colour: worn().fault, Shield: worn().shield, Size: 11, Room: s.w.Order().Unit.Lattice.Pitch() / 2})
	}
	return sc
}

// bothMeasures are how two sheets laid off each other cover the design.
func (s *stencilStation) bothMeasures() []measure {
	u := s.w.unit()
	rows := []measure{{"second off by", u.Number(s.off.X, 3) + ", " + u.Format(s.off.Y, 3)}}
	if !s.both.known {
		return append(rows, measure{"shows dyed", say("measuring…")})
	}
	c := s.both.shows
	return append(rows,
		measure{"shows dyed, a unit", patches(c.MissingMM2, len(c.Missing))},
		measure{"white beyond the design", patches(c.ExtraMM2, len(c.Extra))})
}

func patches(area float64, n int) string {
	if n == 0 {
		return say("nothing")
	}
	return strconv.FormatFloat(area, 'f', 3, 64) + " mm² (" + strconv.Itoa(n) + ")"
}
