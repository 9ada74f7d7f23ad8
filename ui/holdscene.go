package ui

import (
	"image/color"
	"strconv"

	"tsugime/repeat/geom"
	"tsugime/repeat/stencil"
	"tsugime/ui/board"
)

// markTies shows the ties of the sheet that is shown, in the copy of the unit that
// is at hand, told apart by shape: one that holds nothing is crossed out, an end
// in the open is ringed, the chosen one has handles.
func (s *stencilStation) markTies(sc *board.Scene) {
	n, home := s.sheetNumber(), s.home()
	ties, sheet := s.w.Order().Ties(n == 1), s.sheet()
	if s.w.Order().Sheet.Hold.Way == stencil.AsDrawn {
		ties = nil
	}
	measured := sheet.Ties.Ties
	if !s.w.Ready() || len(measured) != len(ties) {
		measured = nil
	}
	for i, t := range ties {
		if i == mostMarks {
			break
		}
		t.From, t.To = t.From.Add(home), t.To.Add(home)
		if i == s.tie.chosen {
			continue // drawn last, over the others
		}
		line, word := worn().cellLine, worn().vat
		if measured != nil && !measured[i].Bridges() {
			line, word = worn().madder, worn().fault
			s.markIdle(sc, t, measured[i])
		}
		markTie(sc, t, line, 1.5)
		if len(ties) <= 10*fewLabels {
			numberTie(sc, t, strconv.Itoa(i+1), word)
		}
	}
	if t, ok := s.inHand(); ok {
		s.markInHand(sc, t)
	}
}

// markTie draws the strip of one tie.
func markTie(sc *board.Scene, t stencil.Tie, c color.RGBA, width float32) {
	sc.Marks = append(sc.Marks, board.Mark{Shape: board.Strip, Points: []geom.Point{t.From, t.To}, Radius: t.Width / 2, Colour: c, Width: width})
}

// numberTie writes a tie's number beyond its end.
func numberTie(sc *board.Scene, t stencil.Tie, text string, c color.RGBA) {
	way := t.To.Sub(t.From)
	l := max(way.Norm(), 1)
	out := geom.Point{X: t.Width.Times(float64(way.X) / l), Y: t.Width.Times(float64(way.Y) / l)}
	sc.Labels = append(sc.Labels, board.Label{
		At: t.To.Add(out), Text: text, Align: board.Middle, Colour: c, Shield: worn().shield, Size: 11, Bold: true, Room: t.From.Distance(t.To) / 2,
	})
}

// markIdle shows why a tie holds nothing.
func (s *stencilStation) markIdle(sc *board.Scene, t stencil.Tie, m stencil.TieMeasure) {
	middle, word := geom.BoxOf(t.From, t.To).Centre(), "open tie"
	if m.Idle() {
		word = "idle tie"
		sc.Marks = append(sc.Marks, board.Mark{Shape: board.Cross, Points: []geom.Point{middle}, Colour: worn().madder, Width: 2})
	}
	var open []geom.Point
	if !m.FromPaper {
		open = append(open, t.From)
	}
	if !m.ToPaper {
		open = append(open, t.To)
	}
	sc.Marks = append(sc.Marks, board.Mark{Shape: board.Ring, Points: open, Colour: worn().madder, Width: 2})
	right := t.From
	if t.To.X > right.X {
		right = t.To
	}
	sc.Labels = append(sc.Labels, board.Label{
		At: right.Add(geom.Point{X: t.Width}), Text: say(word), Align: board.After, Colour: worn().fault, Shield: worn().shield, Size: 11, Room: 3 * t.From.Distance(t.To),
	})
}

// markInHand shows the chosen tie with its handles, or one that is being drawn,
// with its length.
func (s *stencilStation) markInHand(sc *board.Scene, t stencil.Tie) {
	markTie(sc, t, worn().indigo, 2.5)
	sc.Marks = append(sc.Marks, board.Mark{Shape: board.Ring, Points: []geom.Point{t.From, t.To}, Colour: worn().indigo, Width: 3})
	text := s.w.unit().Format(t.From.Distance(t.To), 2)
	if s.tie.chosen != none {
		text = strconv.Itoa(s.tie.chosen+1) + " · " + text
	}
	if s.tie.astray {
		text += " · " + say("ends in the open")
	}
	low := lowest([]geom.Point{t.From, t.To})
	sc.Labels = append(sc.Labels, board.Label{
		At: low.Add(geom.Point{Y: t.Width}), Text: text, Align: board.Below, Colour: worn().vat, Shield: worn().shield, Bold: true,
	})
}

// markUnheld shows what a proposal could not hold.
func (s *stencilStation) markUnheld(sc *board.Scene) {
	home := s.home()
	for i, u := range s.unheld {
		if i == mostMarks {
			break
		}
		at := u.At.Add(home)
		sc.Marks = append(sc.Marks, board.Mark{Shape: board.Wedge, Points: []geom.Point{at}, Colour: worn().madder, Width: 2.5})
		if i < fewLabels {
			sc.Labels = append(sc.Labels, board.Label{At: at, Text: say("not held"), Align: board.Below, Colour: worn().fault, Shield: worn().shield, Size: 11, Room: s.w.Order().Unit.Lattice.Pitch()})
		}
	}
}
