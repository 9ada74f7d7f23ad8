package ui

import (
	"tsugime/repeat/geom"
	"tsugime/repeat/stencil"
	"tsugime/ui/board"
)

// markJoint shows the joint line and its copy one step on, where it crosses
// cut-outs and, where it is drawn by hand, its points and what is wrong with it.
func (s *stencilStation) markJoint(sc *board.Scene) {
	sheet := s.w.work.Sheet
	line := sheet.Joint.Line
	hand := s.drawn()
	if len(hand) > 0 {
		line = hand
	}
	if len(line) == 0 {
		return
	}
	next := moved(line, geom.Point{Y: s.w.Order().Sheet.Step})
	shape := board.Dashes
	if len(hand) > 0 {
		shape = board.Line
	}
	sc.Marks = append(sc.Marks,
		board.Mark{Shape: shape, Points: line, Colour: worn().onPaper, Width: 2},
		board.Mark{Shape: board.Dashes, Points: next, Colour: worn().onPaper, Width: 2})
	word := "joint line"
	if len(hand) > 0 {
		word = "joint line, by hand"
	}
	above, below := geom.BoxOf(line...), geom.BoxOf(next...)
	sc.Labels = append(sc.Labels,
		board.Label{At: geom.Point{X: above.Centre().X, Y: above.Min.Y}, Text: say(word), Align: board.Above, Colour: worn().onPaper},
		board.Label{At: geom.Point{X: below.Centre().X, Y: below.Max.Y}, Text: say("joint line, one step on"), Align: board.Below, Colour: worn().onPaper})
	if s.w.Ready() {
		s.markCrossings(sc, sheet.Joint)
	}
	if len(hand) > 0 && s.sheetNumber() == 0 {
		s.markPoints(sc, hand)
	}
}

// markPoints shows the handles of a line drawn by hand.
func (s *stencilStation) markPoints(sc *board.Scene, line []geom.Point) {
	sc.Marks = append(sc.Marks, board.Mark{Shape: board.Ring, Points: line, Colour: worn().indigo, Width: 2})
	i := s.point.chosen
	if i == none {
		return
	}
	sc.Marks = append(sc.Marks, board.Mark{Shape: board.Star, Points: line[i : i+1], Colour: worn().indigo, Width: 2.5})
	sc.Labels = append(sc.Labels, board.Label{At: line[i], Align: board.Below, Colour: worn().vat, Shield: worn().shield, Bold: true,
		Text: s.clearWords(s.pointClear())})
}

// clearWords tell how far a point is from the nearest cut-out.
func (s *stencilStation) clearWords(clear geom.Length) string {
	if clear < 0 {
		return say("%s inside a cut-out", s.w.unit().Format(-clear, 2))
	}
	return say("%s clear", s.w.unit().Format(clear, 2))
}

// faultWords say what is wrong with a line drawn by hand.
var faultWords = map[stencil.JointFaultKind]string{
	stencil.CrossesCutOuts: "crosses cut-outs",
	stencil.PartsAMotif:    "parts a motif",
	stencil.MeetsItsCopy:   "meets its copy",
	stencil.CrossesItself:  "crosses itself",
	stencil.LeavesTheField: "leaves the field",
	stencil.EndsShort:      "ends short",
}

// markCrossings shows where the line runs through cut-outs, and what is wrong with
// it.
func (s *stencilStation) markCrossings(sc *board.Scene, j stencil.Joint) {
	var bars []geom.Point
	for i, c := range j.Crossings {
		if i == mostMarks {
			break
		}
		bars = append(bars, c.From, c.To)
	}
	sc.Marks = append(sc.Marks, board.Mark{Shape: board.Bar, Points: bars, Colour: worn().madder, Width: 3})
	for i, f := range j.Faults {
		if i == mostMarks {
			break
		}
		sc.Marks = append(sc.Marks, board.Mark{Shape: board.Wedge, Points: []geom.Point{f.At}, Colour: worn().madder, Width: 2})
		if i < fewLabels {
			text, ok := faultWords[f.Kind]
			if !ok {
				text = string(f.Kind)
			}
			text = say(text)
			if f.By > 0 {
				text += " " + s.w.unit().Format(f.By, 2)
			}
			sc.Labels = append(sc.Labels, board.Label{At: f.At, Text: text, Align: board.Below, Colour: worn().fault, Shield: worn().shield, Size: 11, Room: s.roomOf(i, j.Faults)})
		}
	}
}

// roomOf is how much room a fault's label has: the way to the nearest other fault.
func (s *stencilStation) roomOf(i int, faults []stencil.JointFault) geom.Length {
	var room geom.Length
	for k, f := range faults {
		if d := f.At.Distance(faults[i].At); k != i && d > 0 && (room == 0 || d < room) {
			room = d
		}
	}
	return room
}
