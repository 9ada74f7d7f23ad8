package ui

import (
	"strconv"

	"tsugime/export/raster"
	"tsugime/repeat"
	"tsugime/repeat/geom"
	"tsugime/repeat/stencil"
	"tsugime/ui/board"
)

func (s *stencilStation) view() string {
	if s.seen == theJoint {
		return "joint"
	}
	return "sheet" // the two of a split, and both together, share the part that is seen
}

func (s *stencilStation) scene() board.Scene {
	switch {
	case s.w.built == 0 || s.sheetNumber() == 1 && s.w.work.Sheet.Second == nil:
		return waiting(s.w)
	case s.seen == theJoint:
		return s.threePlacements()
	case s.seen == theBoth:
		return s.bothLaid()
	}
	n := s.sheetNumber()
	sheet := s.sheet()
	sc := board.Scene{
		Desk: worn().table, Extent: sheet.Paper,
		Areas:   []board.Area{{Box: sheet.Paper, Shut: worn().tannin, Open: worn().light}},
		Grounds: []board.Laid{{Ground: s.w.grounds.sheets[n], Lays: []raster.Lay{{}}}},
		Marks:   []board.Mark{{Shape: board.Loop, Points: corners(sheet.Paper), Colour: worn().outline, Width: 1.5}},
	}
	s.markJoint(&sc)
	s.markStars(&sc, n)
	markPaper(&sc, s.w, n, s.home())
	s.markUnheld(&sc)
	s.markTies(&sc)
	return sc
}

// markStars rings and names the stars of sheet n of the set.
func (s *stencilStation) markStars(sc *board.Scene, n int) {
	set, field := s.w.work.Sheet.Stars, s.w.work.Sheet.Spec.Field
	middle := field.Left + field.Width/2
	name := func(at geom.Point, name string) {
		const space = "      "
		text, align := name+space, board.Before
		if at.X > middle {
			align, text = board.After, space+name
		}
		sc.Labels = append(sc.Labels, board.Label{At: at, Text: text, Align: align, Colour: worn().onPaper, Size: 11})
	}
	for i, star := range set.Stars {
		text := "L" + strconv.Itoa(i+1)
		if star.End == stencil.Trailing {
			text = "T" + strconv.Itoa(i+1-len(set.Stars)/2)
		}
		sc.Marks = append(sc.Marks, board.Mark{Shape: board.Star, Points: []geom.Point{star.At}, Radius: star.Diameter / 2, Colour: worn().onPaper, Width: 1.5})
		name(star.At, text)
	}
	for _, star := range set.Match {
		if !star.On(n + 1) {
			continue
		}
		text := "M"
		if star.Sheet > 0 {
			text += strconv.Itoa(star.Sheet)
		}
		sc.Marks = append(sc.Marks,
			board.Mark{Shape: board.Ring, Points: []geom.Point{star.At}, Radius: star.Diameter / 2, Colour: worn().onPaper, Width: 1.5},
			board.Mark{Shape: board.Cross, Points: []geom.Point{star.At}, Colour: worn().onPaper, Width: 1.5})
		name(star.At, text)
	}
}

// threePlacements shows the sheet laid thrice on the cloth, each off the one
// before by the chosen misplacement.
func (s *stencilStation) threePlacements() board.Scene {
	w := s.w.work
	step := geom.Point{Y: w.Sheet.Spec.Step}
	cloth := clothUnder(w, 3)
	sc := board.Scene{Desk: worn().table, Extent: cloth, Areas: []board.Area{{Box: cloth, Shut: dyed(w.Order.Cloth.Dye), Open: worn().undyed}}}
	var lays []raster.Lay
	for n := range 3 {
		move := step.Add(s.off).Times(n)
		lays = append(lays, raster.Lay{Move: move})
		line := moved(w.Sheet.Joint.Line, move)
		sc.Marks = append(sc.Marks, board.Mark{Shape: board.Dashes, Points: line, Colour: worn().onCloth, Width: 1.5})
		sc.Labels = append(sc.Labels, board.Label{
			At: geom.Point{X: 0, Y: move.Y + step.Y/2}, Align: board.Before, Colour: worn().ink, Text: say("placement %d", n) + "  ",
		})
	}
	sc.Grounds = []board.Laid{{Ground: s.w.grounds.print, Lays: lays}}
	return sc
}

// clothUnder is the piece of cloth that some placements lie on, and a quarter of a
// step around.
func clothUnder(w repeat.Work, placements int) geom.Box {
	step := w.Sheet.Spec.Step
	width, _ := w.Run.Bolt.FinishedSize()
	box := geom.BoxOf(geom.Point{}, geom.Point{X: width})
	if line := geom.BoxOf(w.Sheet.Joint.Line...); len(w.Sheet.Joint.Line) > 0 && line.Height() > step/4 {
		box = geom.BoxOf(geom.Point{Y: line.Min.Y}, geom.Point{X: width, Y: line.Max.Y})
	}
	return geom.BoxOf(box.Min.Sub(geom.Point{Y: step / 4}), box.Max.Add(geom.Point{Y: step.Times(float64(placements)) + step/4}))
}

// waiting is the scene before anything has been built.
func waiting(w *Window) board.Scene {
	text := say("Measuring…")
	if w.fault != nil {
		text = sentence(w.fault)
	}
	box := geom.BoxOf(geom.Point{}, geom.PtMM(400, 300))
	return board.Scene{Desk: worn().table, Extent: box, Plain: true, Labels: []board.Label{{At: box.Centre(), Align: board.Middle, Text: text, Colour: worn().ink, Size: 15}}}
}
