package ui

import (
	"strconv"

	"tsugime/export/raster"
	"tsugime/repeat/geom"
	"tsugime/repeat/stencil"
	"tsugime/ui/board"
)

func (s *stencilStation) view() string {
	if s.three {
		return "joint"
	}
	return "sheet"
}

func (s *stencilStation) scene() board.Scene {
	switch {
	case s.w.built == 0:
		return waiting(s.w)
	case s.three:
		return s.threePlacements()
	}
	sheet := s.w.work.Sheet
	sc := board.Scene{
		Desk: table, Extent: sheet.Paper,
		Areas:   []board.Area{{Box: sheet.Paper, Shut: tannin, Open: light}},
		Grounds: []board.Laid{{Ground: s.w.grounds.sheets[0], Lays: []raster.Lay{{}}}}, Pitch: s.w.pitch(),
	}
	next := moved(sheet.Joint.Line, geom.Point{Y: sheet.Spec.Step})
	sc.Marks = append(sc.Marks,
		board.Mark{Shape: board.Loop, Points: corners(sheet.Paper), Colour: ink, Width: 1.5},
		board.Mark{Shape: board.Dashes, Points: sheet.Joint.Line, Colour: onPaper, Width: 2},
		board.Mark{Shape: board.Dashes, Points: next, Colour: onPaper, Width: 2})
	label := func(line []geom.Point, text string, align board.Align) {
		if len(line) > 0 {
			sc.Labels = append(sc.Labels, board.Label{At: line[len(line)/2], Text: say(text), Align: align, Colour: onPaper})
		}
	}
	label(sheet.Joint.Line, "joint line", board.Above)
	label(next, "joint line, one step on", board.Below)
	s.markStars(&sc)
	markPaper(&sc, s.w, s.w.Order().Unit.Lattice)
	return sc
}

// markStars rings and names the stars.
func (s *stencilStation) markStars(sc *board.Scene) {
	stars, field := s.w.work.Sheet.Stars.Stars, s.w.work.Sheet.Spec.Field
	middle := field.Left + field.Width/2
	for i, star := range stars {
		name, align, space := "L"+strconv.Itoa(i+1), board.Before, "      "
		if star.End == stencil.Trailing {
			name = "T" + strconv.Itoa(i+1-len(stars)/2)
		}
		text := name + space
		if star.At.X > middle {
			align, text = board.After, space+name
		}
		mark := board.Mark{Shape: board.Star, Points: []geom.Point{star.At}, Radius: star.Diameter / 2, Colour: onPaper, Width: 1.5}
		sc.Marks = append(sc.Marks, mark)
		sc.Labels = append(sc.Labels, board.Label{At: star.At, Text: text, Align: align, Colour: onPaper, Size: 11})
	}
}

// threePlacements shows the sheet laid thrice on the cloth, each off the one
// before by the chosen misplacement.
func (s *stencilStation) threePlacements() board.Scene {
	w := s.w.work
	step := geom.Point{Y: w.Sheet.Spec.Step}
	width, _ := w.Run.Bolt.FinishedSize()
	cloth := geom.BoxOf(geom.Point{Y: -step.Y / 4}, geom.Point{X: width, Y: 3*step.Y + step.Y/4})
	sc := board.Scene{Desk: table, Extent: cloth, Pitch: s.w.pitch(), Areas: []board.Area{{Box: cloth, Shut: dyed(w.Order.Cloth.Dye), Open: undyed}}}
	var lays []raster.Lay
	for n := range 3 {
		move := step.Add(s.off).Times(n)
		lays = append(lays, raster.Lay{Move: move})
		line := moved(w.Sheet.Joint.Line, move)
		sc.Marks = append(sc.Marks, board.Mark{Shape: board.Dashes, Points: line, Colour: onCloth, Width: 1.5})
		sc.Labels = append(sc.Labels, board.Label{
			At: geom.Point{X: 0, Y: move.Y + step.Y/2}, Align: board.Before, Colour: ink, Text: say("placement") + " " + strconv.Itoa(n) + "  ",
		})
	}
	sc.Grounds = []board.Laid{{Ground: s.w.grounds.print, Lays: lays}}
	return sc
}

// waiting is the scene before anything has been built.
func waiting(w *Window) board.Scene {
	text := say("Measuring…")
	if w.fault != nil {
		text = sentence(w.fault)
	}
	box := geom.BoxOf(geom.Point{}, geom.PtMM(400, 300))
	return board.Scene{Desk: table, Extent: box, Plain: true, Labels: []board.Label{{At: box.Centre(), Align: board.Middle, Text: text, Colour: ink, Size: 15}}}
}
