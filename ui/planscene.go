package ui

import (
	"fmt"
	"strconv"

	"tsugime/repeat/bench"
	"tsugime/repeat/geom"
	"tsugime/ui/board"
)

// scene is the sheet at cut size with its holes in the colour and weave of their
// method; those of other passes than the one that is walked are faded.
func (b *benchPlan) scene() board.Scene {
	if b.planner.plan.key.built == 0 {
		return waiting(b.w)
	}
	s := b.sheet()
	sc := board.Scene{
		Desk: worn().table, Extent: s.Sheet.Paper,
		Areas: []board.Area{{Box: s.Sheet.Paper, Shut: worn().white, Open: worn().white}},
		Marks: []board.Mark{{Shape: board.Loop, Points: corners(s.Sheet.Paper), Colour: worn().outline, Width: 1.5}},
	}
	for _, line := range [][]geom.Point{s.Sheet.Joint.Line, moved(s.Sheet.Joint.Line, geom.Point{Y: s.Sheet.Spec.Step})} {
		sc.Marks = append(sc.Marks, board.Mark{Shape: board.Dashes, Points: line, Colour: worn().indigo, Width: 1})
	}
	for i, p := range s.Plan.Passes {
		colour := worn().methods[p.Method]
		if b.walk.pass != none && b.walk.pass != i {
			colour = faded(colour, worn().white)
		}
		sc.Tints = append(sc.Tints, board.Tint{Ground: b.planner.plan.passes[b.number][i].ground, Colour: colour, Weave: methodInks[p.Method].weave})
	}
	b.markWalk(&sc)
	return sc
}

// tap goes to the cut under the pointer, or lets the pass go where there is none.
func (b *benchPlan) tap(at geom.Point, reach geom.Length) {
	if b.planner.plan.key.built == 0 {
		return
	}
	s := b.sheet()
	for i, p := range s.Plan.Passes {
		for n, k := range p.Order {
			var box geom.Box
			if p.Stage == bench.Stars {
				box = geom.BoxOf(b.planner.plan.passes[b.number][i].places[n]).Grown(s.Assignment.Star.Size / 2)
			} else {
				box = s.Sheet.CutOuts[k].Shape.Bounds()
			}
			if box.Grown(reach / 3).Holds(at) {
				b.goTo(workStep{i, n}, false)
				return
			}
		}
	}
	b.goTo(wholeSheet, false)
}

// measures are those of the whole work, then of the pass and the cut.
func (b *benchPlan) measures() []measure {
	if b.planner.plan.key.built == 0 {
		return []measure{{"", say("measuring…")}}
	}
	var rows []measure
	if !b.planner.fresh() {
		rows = append(rows, measure{"", say("measuring…")})
	}
	all, s := b.planner.plan.bench, b.sheet()
	p := s.Plan
	if len(all.Sheets) > 1 {
		rows = append(rows, measure{"both sheets", hoursWords(all.Hours()) + " · " + days(all.Days())})
	}
	rows = append(rows,
		measure{"work", hoursWords(p.Hours)},
		measure{"days", say("%.1f of %g h", p.Days, p.DayHours)},
		measure{"cuts", strconv.Itoa(p.CutOuts + p.StarHoles)},
		measure{"lines", say("%.2f m", p.LengthMM/1000)},
		measure{"way between", say("%.2f m", p.TravelMM/1000)},
		measure{"pile", counted(p.Pile, "sheet", "sheets")},
		measure{"can be sold", strconv.Itoa(p.Saleable)},
		measure{"tools that the rack lacks", strconv.Itoa(len(s.Assignment.Missing))},
	)
	if b.walk.pass == none {
		return rows
	}
	return append(rows, b.passMeasures()...)
}

func (b *benchPlan) passMeasures() []measure {
	u, s := b.w.unit(), b.sheet()
	p := s.Plan.Passes[b.walk.pass]
	rows := []measure{
		{"pass", say("%d of %d", b.walk.pass+1, len(s.Plan.Passes))},
		{"when", say(stageWords[p.Stage])},
		{"method", say(string(p.Method))},
		{"tool", toolWords(s, p, u)},
		{"each line cut", timesWords(p.Times)},
		{"its work", hoursWords(p.Hours)},
		{"cut", say("%d of %d", b.walk.cut+1, p.Count)},
		{"done so far", hoursWords(b.hoursSoFar())},
	}
	places := b.planner.plan.passes[b.number][b.walk.pass].places
	if next := b.walk.cut + 1; next < len(places) {
		rows = append(rows, measure{"to the next", u.Format(places[b.walk.cut].Distance(places[next]), 2)})
	}
	if k, ok := b.cutOut(); ok {
		c := s.Assignment.Choices[k]
		rows = append(rows, measure{"its size", u.Format(c.Size, 3)})
		if c.Tool >= 0 && c.Strain.By != 0 {
			rows = append(rows, measure{"its tool is off by", fmt.Sprintf("%s, %+.1f %%", u.Format(c.Strain.By, 3), c.Strain.Pct)})
		}
	}
	return rows
}

// stageWords says when a pass is cut.
var stageWords = map[bench.Stage]string{
	bench.Stars: "register holes", bench.Inner: "what is enclosed", bench.Centre: "centre of the field", bench.Rim: "rim of the field",
	bench.Last: "ties and joint edge",
}

func timesWords(n int) string {
	if n == 1 {
		return say("once")
	}
	return say("%d times", n)
}

func hoursWords(h float64) string { return say("%.1f h", h) }

func days(d float64) string { return say("%.1f days", d) }
