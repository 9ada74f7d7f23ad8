package report

import (
	"fmt"

	"tsugime/export"
	"tsugime/repeat"
	"tsugime/repeat/bench"
	"tsugime/repeat/geom"
)

// BenchPlan returns the sheet that the cutter works by: for each sheet of the set the
// passes in the order of the work, each with a box to tick, what the rack lacks, and
// what a method is not trusted with.
func BenchPlan(w repeat.Work, opt Options) (export.Book, error) {
	size, f, err := opt.settled(w)
	if err != nil {
		return export.Book{}, err
	}
	b := opt.with(w).bench(w)
	fl := newFlow(f, f.title(w), f.say("Bench plan"), benchFacts(b, f), size)
	for _, s := range b.Sheets {
		benchSheet(fl, s, len(b.Sheets), f)
	}
	fl.heading(f.say("How long"))
	fl.table(rateTable(b, f))
	fl.paragraph(f.say("Through one pile. Rates that are guessed have no source; give your own finished jobs and they are learnt from."))
	fl.heading(f.say("Take care"))
	for _, c := range cautions(f) {
		fl.point(c)
	}
	return export.Book{Title: f.title(w), Subject: f.say("Bench plan"), Pages: fl.pages()}, nil
}

func benchFacts(b repeat.Bench, f figures) string {
	first := b.Sheets[0].Plan
	return f.say("pile of %s, %s for sale; %.1f hours, %.1f days of %g hours",
		f.count(first.Pile, "sheet"), f.count(first.Saleable, "sheet"), b.Hours(), b.Days(), first.DayHours)
}

// benchSheet sets the passes of one sheet and what needs a look.
func benchSheet(fl *flow, s repeat.BenchSheet, of int, f figures) {
	head := f.say("Passes")
	if of > 1 {
		head = setSheet{number: s.Number, of: of}.kind(head, f)
	}
	fl.heading(head)
	fl.table(passTable(s, f))
	p := s.Plan
	fl.paragraph(f.say("Register holes first, then what lies within another cut-out, the finest tool first; the rim after the centre, so that the pile stays bound; beside ties and at the joint last. "+
		"A stripe's line is traced three times. %d cut-outs, %d register holes; pile of %d.", p.CutOuts, p.StarHoles, p.Pile))
	if p.PileBy != "" && p.PileMost == p.Pile {
		fl.paragraph(f.say("%s allows a pile of %d at most.", f.say(string(p.PileBy)), p.PileMost))
	}
	if list := s.Assignment.Strained(); len(list) > 0 {
		fl.heading(f.say("Tools that differ from what is drawn"))
		fl.table(strainTable(s.Assignment.Rack, list, f))
	}
	if len(s.Assignment.Missing) > 0 {
		fl.heading(f.say("Tools that the rack lacks"))
		fl.table(missingTable(s.Assignment, f))
	}
	if len(p.Exceeded) > 0 {
		fl.heading(f.say("Beyond what a method is trusted with"))
		fl.table(excessTable(p, f))
	}
}

// passTable has a row and a box to tick for each pass.
func passTable(s repeat.BenchSheet, f figures) table {
	t := table{
		columns: []column{
			{f.say("done"), export.Start}, {f.say("pass"), export.End}, {f.say("when"), export.Start}, {f.say("method"), export.Start},
			{f.say("tool"), export.Start}, {f.say("cuts"), export.End}, {f.say("lines, m"), export.End}, {f.say("times"), export.End},
			{f.say("travel, m"), export.End}, {f.say("hours"), export.End},
		},
		foot: 1,
		tick: true,
	}
	for i, p := range s.Plan.Passes {
		t.rows = append(t.rows, []string{
			"", fmt.Sprint(i + 1), f.say(stageWords[p.Stage]), f.say(string(p.Method)),
			f.toolName(s.Assignment.Rack, p.Tool, p.Size), fmt.Sprint(p.Count), metres(p.LengthMM), fmt.Sprint(p.Times),
			metres(p.TravelMM), fmt.Sprintf("%.2f", p.Hours),
		})
	}
	p := s.Plan
	t.rows = append(t.rows, []string{
		"", "", "", f.say("together"), "", fmt.Sprint(p.CutOuts + p.StarHoles), metres(p.LengthMM), "", metres(p.TravelMM), fmt.Sprintf("%.2f", p.Hours),
	})
	return t
}

// stageWords says when a pass is cut.
var stageWords = map[bench.Stage]string{
	bench.Stars: "register holes", bench.Inner: "what is enclosed", bench.Centre: "centre of the field", bench.Rim: "rim of the field",
	bench.Last: "ties and joint edge",
}

func metres(mm float64) string { return fmt.Sprintf("%.2f", mm/1000) }

func strainTable(r bench.Rack, list []bench.Strained, f figures) table {
	t := table{columns: []column{
		{f.say("tool"), export.Start}, {f.head("as drawn", f.fine), export.End}, {f.head("off by", f.fine), export.End},
		{"%", export.End}, {f.say("cuts"), export.End},
	}}
	for _, x := range list {
		t.rows = append(t.rows, []string{
			f.toolName(r, x.Tool, 0), f.fine.number(x.Size), f.fine.signedNumber(x.Strain.By), fmt.Sprintf("%.1f", x.Strain.Pct), fmt.Sprint(x.Count),
		})
	}
	return t
}

// signedNumber writes a length with its sign and without its unit.
func (r ruler) signedNumber(l geom.Length) string {
	if l > 0 {
		return "+" + r.number(l)
	}
	return r.number(l)
}

func missingTable(a bench.Assignment, f figures) table {
	t := table{columns: []column{
		{f.say("to be made"), export.Start}, {f.head("size", f.fine), export.End}, {f.say("cuts"), export.End},
		{f.say("nearest"), export.Start}, {f.say("off by, %"), export.End},
	}}
	for _, m := range a.Missing {
		nearest, off := "", ""
		if _, ok := a.Rack.Tool(m.Nearest); ok {
			nearest = f.toolName(a.Rack, m.Nearest, 0)
			if m.Kind != bench.Punch {
				off = fmt.Sprintf("%+.1f", m.Strain.Pct)
			}
		}
		size := ""
		if m.Size > 0 {
			size = f.fine.number(m.Size)
		}
		t.rows = append(t.rows, []string{f.say(kindWords[m.Kind]), size, fmt.Sprint(m.Count), nearest, off})
	}
	return t
}

// kindWords says what a tool is.
var kindWords = map[bench.Kind]string{
	bench.Awl: "awl or round punch", bench.Punch: "shaped punch", bench.Knife: "knife", bench.Pair: "pair of stripe blades",
}

func excessTable(p bench.Plan, f figures) table {
	t := table{columns: []column{
		{f.say("method"), export.Start}, {f.say("what"), export.Start}, {f.say("is"), export.End}, {f.say("trusted with"), export.End},
		{f.say("by"), export.Start},
	}}
	for _, e := range p.Exceeded {
		source := f.say("the program's recommendation")
		if e.Own {
			source = f.say("the rack's own limit")
		}
		what := f.say("smallest cut-out")
		is, most := f.fine.apart(e.Got, e.Limit.Hole)
		switch e.What {
		case bench.WebWidth:
			what = f.say("narrowest web")
			is, most = f.fine.apart(e.Got, e.Limit.Web)
		case bench.PileSize:
			what, is, most = f.say("sheets in the pile"), fmt.Sprint(e.Pile), fmt.Sprint(e.Limit.Pile)
		}
		t.rows = append(t.rows, []string{f.say(string(e.Method)), what, is, most, source})
	}
	return t
}

// rateTable has the rates of the methods that are used.
func rateTable(b repeat.Bench, f figures) table {
	t := table{columns: []column{
		{f.say("method"), export.Start}, {f.say("minutes a cut"), export.End}, {f.say("minutes a metre"), export.End},
		{f.say("from"), export.Start},
	}}
	for _, m := range bench.Methods() {
		if !usesMethod(b, m) {
			continue
		}
		r := b.Rates.Rate(m)
		from := f.say("guessed")
		if r.Jobs > 0 {
			from = f.say("%s, which scatter by %.0f %%", f.count(r.Jobs, "finished job"), 100*r.Scatter)
		}
		t.rows = append(t.rows, []string{f.say(string(m)), fmt.Sprintf("%.3f", r.CutMin), fmt.Sprintf("%.1f", 1000*r.MMMin), from})
	}
	return t
}

func usesMethod(b repeat.Bench, m bench.Method) bool {
	for _, s := range b.Sheets {
		for _, p := range s.Plan.Passes {
			if p.Method == m {
				return true
			}
		}
	}
	return false
}
