package main

import (
	"context"
	"fmt"
	"slices"
	"strings"

	"tsugime/repeat"
	"tsugime/repeat/bench"
	"tsugime/repeat/check"
	"tsugime/repeat/geom"
	"tsugime/repeat/pattern"
	"tsugime/repeat/stencil"
)

type starJSON struct {
	Kind string `json:"kind"`
	End  string `json:"end"`
	X    mm     `json:"x_mm"`
	Y    mm     `json:"y_mm"`
	D    mm     `json:"d_mm"`
}

type underJSON struct {
	Kind      string  `json:"kind"`
	Period    mm      `json:"period_mm"`
	Direction rounded `json:"direction_deg"`
	Contrast  rounded `json:"contrast_pct"`
	SeenTimes rounded `json:"seen_times"`
}

type measuresJSON struct {
	CutOuts        int         `json:"cut_outs"`
	CutOutsPerCM2  rounded     `json:"cut_outs_per_cm2"`
	PerSquareSun   rounded     `json:"cut_outs_per_square_kane_sun"`
	OpenAreaPct    rounded     `json:"open_area_pct"`
	NarrowestWeb   *mm         `json:"narrowest_web_mm"`
	WebLimit       mm          `json:"web_limit_mm"`
	WebsBelowLimit int         `json:"webs_below_limit"`
	WebAcrossJoint *mm         `json:"web_across_joint_mm"`
	Islands        int         `json:"islands"`
	Bands          int         `json:"bands"`
	PlaneGroup     string      `json:"plane_group"`
	Ground         *groundJSON `json:"ground"`
	Under          []underJSON `json:"under_patterns"`
	Step           mm          `json:"step_mm"`
	StepError      mm          `json:"step_error_mm"`
	JointClearance mm          `json:"joint_clearance_mm"`
	JointLength    mm          `json:"joint_length_mm"`
	JointWidest    mm          `json:"joint_widest_mm"`
	JointCrossed   mm          `json:"joint_crossed_mm"`
	Hold           holdJSON    `json:"hold"`
	Stars          []starJSON  `json:"stars"`
	StarBaseline   mm          `json:"star_baseline_mm"`
	StarMisfit     mm          `json:"star_turned_misfit_mm"`
}

type findingJSON struct {
	Code     string `json:"code"`
	Severity string `json:"severity"`
	Domain   string `json:"domain"`
	At       [2]mm  `json:"at_mm"`
	Text     string `json:"text"`
	Remedy   string `json:"remedy"`
}

type checkJSON struct {
	Schema   int           `json:"schema"`
	Measures measuresJSON  `json:"measures"`
	Findings []findingJSON `json:"findings"`
}

func runCheck(ctx context.Context, p program, c command, args []string) error {
	flags := newFlags(c)
	asJSON := flags.Bool("json", false, "")
	failOn, rackFile := flags.String("fail-on", string(check.Fault), ""), flags.String("rack", "", "")
	words, err := p.parse(c, flags, args, 1, 1)
	if err != nil {
		return err
	}
	if err := oneOf("fail-on", *failOn, "note", "warning", "fault", "never"); err != nil {
		return err
	}
	rack, err := p.rackNamed(*rackFile)
	if err != nil {
		return err
	}
	w, err := p.build(ctx, words[0])
	if err != nil {
		return err
	}
	if *rackFile != "" {
		w.Findings = slices.Concat(w.Findings, benchFindings(w.Bench(rack, bench.Rates{})))
	}
	if *asJSON {
		err = p.printJSON(checkDocument(w))
	} else {
		_, err = fmt.Fprint(p.out, checkText(w))
	}
	if err != nil {
		return err
	}
	worst := check.Worst(w.Findings)
	if *failOn != "never" && worst.Rank() >= check.Severity(*failOn).Rank() {
		return errFindings
	}
	return nil
}

func checkDocument(w repeat.Work) checkJSON {
	s := w.Sheet
	m := measuresJSON{
		CutOuts: len(s.CutOuts), CutOutsPerCM2: rounded(w.Design.PerCM2()),
		PerSquareSun: rounded(w.Design.PerSquareSun()), OpenAreaPct: rounded(s.OpenPct),
		WebLimit: mm(s.Webs.Limit), WebsBelowLimit: len(s.Webs.Below),
		Islands: len(s.Paths.Islands), Bands: len(s.Paths.Bands),
		Step: mm(s.Spec.Step), StepError: mm(s.StepError.Distance(geom.Point{})),
		JointClearance: mm(s.Joint.Clearance), JointLength: mm(s.Joint.Length),
		JointWidest: mm(s.Joint.Widest), JointCrossed: mm(s.Joint.Crossed), Hold: holdDocument(w),
		Under: []underJSON{}, Stars: []starJSON{}, StarBaseline: mm(s.Stars.Baseline), StarMisfit: mm(s.Stars.TurnedMisfit),
	}
	if s.Webs.Found {
		narrowest, across := mm(s.Webs.Narrowest.Width), mm(s.Webs.AcrossJoint.Width)
		m.NarrowestWeb, m.WebAcrossJoint = &narrowest, &across
	}
	if r, err := pattern.Recognise(w.Design); err == nil {
		m.PlaneGroup = string(r.Group)
	}
	if g := w.Ground; g.Laying.Rows > 0 {
		doc := groundDocument(g.Recipe, g.Laying)
		m.Ground = &doc
	}
	for _, c := range w.Under.Found {
		m.Under = append(m.Under, underJSON{string(c.Kind), mm(c.Period), rounded(c.DirectionDeg), rounded(c.ContrastPct), rounded(c.SeenTimes)})
	}
	for _, star := range s.Stars.Stars {
		m.Stars = append(m.Stars, starJSON{"feed", string(star.End), mm(star.At.X), mm(star.At.Y), mm(star.Diameter)})
	}
	for _, star := range s.Stars.Match {
		m.Stars = append(m.Stars, starJSON{"match", string(stencil.Leading), mm(star.At.X), mm(star.At.Y), mm(star.Diameter)})
	}
	doc := checkJSON{Schema: schema, Measures: m, Findings: []findingJSON{}}
	for _, f := range w.Findings {
		doc.Findings = append(doc.Findings, findingJSON{
			f.Code, string(f.Severity), string(f.Domain), at(f.At), f.Text, f.Remedy,
		})
	}
	return doc
}

// checkText is what a person reads: the measures in a column, then the findings,
// the worst first.
func checkText(w repeat.Work) string {
	var b strings.Builder
	row := func(name, format string, args ...any) {
		fmt.Fprintf(&b, "  %-18s %s\n", name, fmt.Sprintf(format, args...))
	}
	s, u := w.Sheet, w.Design
	fmt.Fprintf(&b, "%s\n\n", w.Order.Title)
	if r, err := pattern.Recognise(u); err == nil {
		row("symmetry", "%s on a %s lattice%s", r.Group, u.Lattice.Kind(), smallerUnit(r))
	}
	if g := w.Ground; g.Laying.Rows > 0 {
		row("ground", "%s", groundText(g.Recipe, g.Laying))
	}
	row("cut-outs", "%d on the sheet, %.1f per cm² (%.0f per square kane sun)", len(s.CutOuts), u.PerCM2(), u.PerSquareSun())
	row("open area", "%.2f %%", s.OpenPct)
	if s.Webs.Found {
		row("narrowest web", "%s; %d below the limit of %s", long(s.Webs.Narrowest.Width), len(s.Webs.Below), long(s.Webs.Limit))
	}
	row("islands, bands", "%d, %d", len(s.Paths.Islands), len(s.Paths.Bands))
	holdRows(row, w)
	row("step", "%s = %s; off the pattern by %s", long(s.Spec.Step), geom.KaneSun.Format(s.Spec.Step, 4), long(s.StepError.Distance(geom.Point{})))
	row("joint line", "%s long, %s from the nearest cut-out", long(s.Joint.Length), long(s.Joint.Clearance))
	row("stars", "%d, %s apart; a wrongly laid sheet misses by %s", len(s.Stars.Stars), long(s.Stars.Baseline), long(s.Stars.TurnedMisfit))
	if len(w.Findings) == 0 {
		b.WriteString("\nNothing found that needs a look.\n")
		return b.String()
	}
	b.WriteString("\n")
	for _, severity := range []check.Severity{check.Fault, check.Warning, check.Note} {
		for _, f := range w.Findings {
			if f.Severity == severity {
				fmt.Fprintf(&b, "%-7s  %s  [%s at %s, %s mm on the %s]\n         %s\n", f.Severity, f.Text,
					f.Code, short(f.At.X), short(f.At.Y), f.Domain, f.Remedy)
			}
		}
	}
	return b.String()
}

// smallerUnit says where the unit holds its pattern several times.
func smallerUnit(r pattern.Recognised) string {
	if r.Copies < 2 {
		return ""
	}
	return fmt.Sprintf("; the unit holds %d copies of a smaller one", r.Copies)
}

// long writes a length to the micrometre with its unit, short to the hundredth
// of a millimetre without.
func long(l geom.Length) string  { return geom.MMUnit.Format(l, 3) }
func short(l geom.Length) string { return string(l.AppendMM(nil, 2)) }
