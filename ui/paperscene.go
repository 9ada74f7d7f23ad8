package ui

import (
	"slices"

	"tsugime/repeat/check"
	"tsugime/repeat/geom"
	"tsugime/repeat/stencil"
	"tsugime/ui/board"
)

// How many places of one kind are marked, and how many of them in words.
const (
	mostMarks = 400
	fewLabels = 12
)

// markPaper shows the thin webs, the islands and the bands of the plain pattern on
// one sheet of the set, moved by a lattice vector.
func markPaper(sc *board.Scene, w *Window, n int, home geom.Point) {
	var bars, bands []geom.Point
	set := w.work.Sheet.Set()
	sheet, pitch := set[min(n, len(set)-1)], w.Order().Unit.Lattice.Pitch()
	for i, web := range sheet.Webs.Below {
		if i == mostMarks {
			break
		}
		p, q := web.P.Add(home), web.Q.Add(home)
		bars = append(bars, p, q)
		if i < fewLabels {
			sc.Labels = append(sc.Labels, board.Label{At: p, Align: board.Above, Colour: worn().fault, Shield: worn().shield,
				Text: say("web %s", w.unit().Format(web.Width, 3)), Room: pitch})
		}
	}
	outlined(sc, w.grounds.islands[min(n, len(set)-1)], home)
	for i, p := range sheet.Paths.Bands {
		if i == mostMarks {
			break
		}
		at := p.At.Add(home)
		bands = append(bands, at)
		if i < fewLabels {
			sc.Labels = append(sc.Labels, board.Label{At: at, Align: board.Below, Colour: worn().fault, Shield: worn().shield, Text: say("band"), Room: pitch})
		}
	}
	markHanging(sc, w, sheet, home)
	sc.Marks = append(sc.Marks,
		board.Mark{Shape: board.Bar, Points: bars, Colour: worn().madder, Width: 2},
		board.Mark{Shape: board.Wedge, Points: bands, Colour: worn().madder, Width: 2})
}

// outlined hatches islands in their outlines and names them.
func outlined(sc *board.Scene, islands []geom.Ring, home geom.Point) {
	for i, ring := range islands {
		if i == mostMarks {
			break
		}
		line := moved(slices.Clone(ring), home)
		sc.Marks = append(sc.Marks,
			board.Mark{Shape: board.Hatch, Points: line, Colour: worn().madder, Width: 1.5},
			board.Mark{Shape: board.Loop, Points: line, Colour: worn().madder, Width: 1.5})
		if i < fewLabels {
			box := ring.Bounds().Moved(home)
			sc.Labels = append(sc.Labels, board.Label{At: box.Centre(), Align: board.Middle, Colour: worn().fault, Shield: worn().shield, Text: say("island"), Room: box.Width()})
		}
	}
}

// markHanging shows paper that is held, but badly: the tongue that a finding names,
// from its neck to its tip, and the ribbons that give more than a joint may be off.
func markHanging(sc *board.Scene, w *Window, sheet stencil.Sheet, home geom.Point) {
	ochre, pitch := worn().ochre, w.Order().Unit.Lattice.Pitch()
	word := func(at geom.Point, text string) {
		sc.Labels = append(sc.Labels, board.Label{At: at, Align: board.Below, Colour: worn().warning, Shield: worn().shield, Text: text, Room: pitch})
	}
	for _, t := range sheet.Tongues {
		neck := geom.BoxOf(t.Neck.P, t.Neck.Q).Centre()
		if !slices.ContainsFunc(w.work.Findings, func(f check.Finding) bool { return f.Code == "tongue" && f.At == neck }) {
			continue
		}
		tip := t.At.Add(home)
		sc.Marks = append(sc.Marks,
			board.Mark{Shape: board.Bar, Points: []geom.Point{t.Neck.P.Add(home), t.Neck.Q.Add(home)}, Colour: ochre, Width: 2},
			board.Mark{Shape: board.Dashes, Points: []geom.Point{neck.Add(home), tip}, Colour: ochre, Width: 2},
			board.Mark{Shape: board.Wedge, Points: []geom.Point{tip}, Colour: ochre, Width: 2})
		word(tip, say("tongue %s", w.unit().Format(t.Reach, 1)))
		break
	}
	limit := w.work.Order.Limits.Joint
	for i, r := range sheet.Ribbons {
		if r.Deflection <= limit || i == mostMarks {
			break // the one that gives most comes first
		}
		at := r.At.Add(home)
		sc.Marks = append(sc.Marks, board.Mark{Shape: board.Cross, Points: []geom.Point{at}, Colour: ochre, Width: 2.5})
		if i < fewLabels {
			word(at, say("ribbon gives %s", w.unit().Format(r.Deflection, 2)))
		}
	}
}
