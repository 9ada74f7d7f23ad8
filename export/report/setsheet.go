package report

import (
	"fmt"

	"tsugime/export/wording"
	"tsugime/repeat"
	"tsugime/repeat/geom"
	"tsugime/repeat/pattern"
	"tsugime/repeat/stencil"
)

// A setSheet is one sheet of the set that a placement is laid with, at cut size,
// the paper's top left corner being the origin.
type setSheet struct {
	stencil.Sheet
	number int        // from 1; 0 for what all sheets of the set have in common
	of     int        // how many the set has
	holes  geom.Box   // around every hole that this sheet has
	corner geom.Point // of the paper, where the pattern's own origin is zero
}

// sheetsOf returns the sheets of the set, the first one first.
func sheetsOf(w repeat.Work) []setSheet {
	cut := w.CutSheet()
	corner := cut.Paper.Min
	set := movedSheet(cut, corner.Neg()).Set()
	sheets := make([]setSheet, len(set))
	for i, s := range set {
		sheets[i] = setSheet{s, i + 1, len(set), s.Bounds(), corner}
	}
	return sheets
}

// sheetNumber returns sheet number n of the set, or an error that says how many
// there are.
func (o Options) sheetNumber(w repeat.Work, n int) (setSheet, error) {
	set := o.sheets(w)
	if n < 1 || n > len(set) {
		return setSheet{}, fmt.Errorf("sheet %d: the order is cut as %s; name one of them", n, wording.English.Count(len(set), "sheet"))
	}
	return set[n-1], nil
}

// together returns the first sheet with the stars of all sheets of the set.
func (o Options) together(w repeat.Work) setSheet {
	first := o.sheets(w)[0]
	first.number = 0
	return first
}

// kind adds to a word which sheet of the set is meant, where there are more.
func (s setSheet) kind(word string, f figures) string {
	if s.of < 2 || s.number == 0 {
		return word
	}
	return f.say("%s, %s", word, s.name(f))
}

// name is "first sheet of two (omogata)": the trade's own words for the two
// halves of a split stand behind ours.
func (s setSheet) name(f figures) string {
	if s.number == 2 {
		return f.say("second sheet of two (keshigata)")
	}
	return f.say("first sheet of two (omogata)")
}

// note says which sheet of the set this is and what it is laid on; "" for a
// sheet that does the work alone.
func (s setSheet) note(f figures) string {
	switch {
	case s.of < 2:
		return ""
	case s.number == 2:
		return f.say("%s; lays on match star M of the first; its own star is M2", s.name(f))
	}
	return f.say("%s; prints match star M for the second; its own star is M1", s.name(f))
}

// A mark is a register hole and its name.
type mark struct {
	stencil.Star
	name string
}

// marks returns the register holes of the sheet: the feed stars, L for leading
// and T for trailing, counted from the left; then the match stars that are on
// it, M for the one that all sheets have, M1 and M2 for those of one alone.
func (s setSheet) marks() []mark {
	var all []mark
	for i, star := range s.Stars.Stars {
		all = append(all, mark{star, starNames(s.Stars)[i]})
	}
	for _, m := range s.Stars.Match {
		if s.number > 0 && !m.On(s.number) {
			continue
		}
		name := "M"
		if m.Sheet > 0 {
			name = fmt.Sprintf("M%d", m.Sheet)
		}
		all = append(all, mark{stencil.Star{
			End: stencil.Leading, At: m.At, Diameter: m.Diameter, Hidden: m.Hidden, Clear: m.Clear,
		}, name})
	}
	return all
}

// tieStrips returns the outlines of the ties on the sheet, as cut: those that go
// with a motif which it cuts.
func tieStrips(w repeat.Work, s setSheet) [][]geom.Point {
	var strips [][]geom.Point
	for _, c := range tieCopies(w, s) {
		strips = append(strips, c.strip)
	}
	return strips
}

// A tieCopy is one copy of a tie on the sheet, as cut.
type tieCopy struct {
	tie   stencil.Tie // of the unit, at finished size
	strip []geom.Point
}

func tieCopies(w repeat.Work, s setSheet) []tieCopy {
	hold := w.Order.Sheet.Hold
	ties := hold.Ties
	switch {
	case hold.Way == stencil.AsDrawn:
		ties = nil
	case s.number == 2:
		ties = hold.Second.Ties
	}
	of := map[pattern.ID][]stencil.Tie{}
	for _, t := range ties {
		of[t.Motif] = append(of[t.Motif], t)
	}
	finished := w.Sheet.Set()[max(s.number, 1)-1]
	begins := map[pattern.ID]geom.Point{}
	for _, m := range finished.Unit.Motifs {
		begins[m.ID] = beginning(m.Placed())
	}
	x, y := w.Scale.Cut()
	asCut, move := geom.Scale(x, y), s.corner.Neg()
	var strips []tieCopy
	for _, c := range finished.CutOuts {
		shift := beginning(c.Shape).Sub(begins[c.Motif])
		for _, t := range of[c.Motif] {
			strip := geom.Strip{From: t.From.Add(shift), To: t.To.Add(shift), Width: t.Width}.Ring()
			for i, p := range strip {
				strip[i] = asCut.Apply(p).Add(move)
			}
			strips = append(strips, tieCopy{t, strip})
		}
	}
	return strips
}

// beginning is the same place of every copy of a shape.
func beginning(s geom.Shape) geom.Point {
	if s.Round() {
		return s.Disc.Centre
	}
	return s.Outline[0].Start
}
