package main

import (
	"context"
	"fmt"
	"strings"

	"tsugime/repeat"
	"tsugime/repeat/bench"
	"tsugime/repeat/check"
)

func runBench(ctx context.Context, p program, c command, args []string) error {
	flags := newFlags(c)
	asJSON, rackFile, jobsFile := flags.Bool("json", false, ""), flags.String("rack", "", ""), flags.String("jobs", "", "")
	day := flags.Float64("day", 8, "")
	words, err := p.parse(c, flags, args, 1, 1)
	if err != nil {
		return err
	}
	rack, rates, err := p.benchFlags(*rackFile, *jobsFile, *day)
	if err != nil {
		return err
	}
	w, err := p.build(ctx, words[0])
	if err != nil {
		return err
	}
	b := w.Bench(rack, rates)
	if *asJSON {
		return p.printJSON(benchDocument(b))
	}
	_, err = fmt.Fprint(p.out, benchText(w, b))
	return err
}

// benchFindings are what the bench finds on all sheets of the set.
func benchFindings(b repeat.Bench) []check.Finding {
	var found []check.Finding
	for _, s := range b.Sheets {
		on := ""
		if len(b.Sheets) > 1 {
			on = " on the " + [2]string{"first", "second"}[s.Number-1] + " sheet"
		}
		found = append(found, check.Bench(s.Assignment, s.Plan, on)...)
	}
	return found
}

// benchText is what a person reads: for each sheet the passes in the order of the
// work, then what needs a look.
func benchText(w repeat.Work, b repeat.Bench) string {
	var t strings.Builder
	fmt.Fprintf(&t, "%s\n", w.Order.Title)
	for _, s := range b.Sheets {
		sheetText(&t, s, len(b.Sheets))
	}
	if len(b.Sheets) > 1 {
		fmt.Fprintf(&t, "\nBoth sheets: %.1f hours, %.1f days of %g hours.\n", b.Hours(), b.Days(), b.Sheets[0].Plan.DayHours)
	}
	t.WriteString("\n")
	for _, m := range bench.Methods() {
		if r := b.Rates.Rate(m); r.Jobs > 0 {
			fmt.Fprintf(&t, "Rate of %s learnt from %d jobs, which scatter by %.0f %%.\n", m, r.Jobs, 100*r.Scatter)
		} else if uses(b, m) {
			fmt.Fprintf(&t, "Rate of %s guessed; give your finished jobs with --jobs.\n", m)
		}
	}
	for _, f := range benchFindings(b) {
		fmt.Fprintf(&t, "%-7s  %s  [%s]\n         %s\n", f.Severity, f.Text, f.Code, f.Remedy)
	}
	return t.String()
}

func uses(b repeat.Bench, m bench.Method) bool {
	for _, s := range b.Sheets {
		for _, p := range s.Plan.Passes {
			if p.Method == m {
				return true
			}
		}
	}
	return false
}

func sheetText(t *strings.Builder, s repeat.BenchSheet, of int) {
	p := s.Plan
	t.WriteString("\n")
	if of > 1 {
		fmt.Fprintf(t, "Sheet %d of %d: ", s.Number, of)
	}
	fmt.Fprintf(t, "%d cut-outs and %d stars, a pile of %d of which %d can be sold; %.1f hours, %.1f days of %g hours.\n\n",
		p.CutOuts, p.StarHoles, p.Pile, p.Saleable, p.Hours, p.Days, p.DayHours)
	t.WriteString("    stage     method      tool                 count    lines mm  times   travel mm   hours\n")
	for i, pass := range p.Passes {
		fmt.Fprintf(t, "%3d %-9s %-10s  %-18s %8d %11.1f %6d %11.1f %7.2f\n", i+1, pass.Stage, pass.Method,
			toolText(s.Assignment.Rack, pass), pass.Count, pass.LengthMM, pass.Times, pass.TravelMM, pass.Hours)
	}
}

// toolText names the tool of a pass.
func toolText(r bench.Rack, p bench.Pass) string {
	if t, ok := r.Tool(p.Tool); ok {
		if t.Kind == bench.Punch {
			return t.Number
		}
		return t.Number + ", " + long(t.Size)
	}
	if p.Size > 0 {
		return "none, of " + long(p.Size)
	}
	return "none"
}
