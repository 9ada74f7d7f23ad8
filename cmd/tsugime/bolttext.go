package main

import (
	"fmt"
	"strings"

	"tsugime/repeat"
	"tsugime/repeat/cloth"
)

func boltText(w repeat.Work, by chance) string {
	var b strings.Builder
	r := w.Run
	fmt.Fprintf(&b, "%s\n\n%d placements of %s on a bolt of %s; %s left over.\n", w.Order.Title,
		len(r.Placements), long(r.Step), long(r.Bolt.Length), long(r.Remainder))
	if p := r.Partial; p.Printed > 0 {
		fmt.Fprintf(&b, "To cover the end, lay placement %d in part: %s of it, with %s masked.\n", p.N+1, long(p.Printed), long(p.Masked))
	}
	if n := r.Count(); n != len(r.Placements) {
		fmt.Fprintf(&b, "%s, %s, %s: %d printings in all.\n", counted(max(r.Board.Cloths, 1), "cloth"),
			counted(max(r.Register.Sheets, 1), "sheet"), sidesText(r.Bolt), n)
	}
	if len(r.Stretches) > 1 {
		stretchText(&b, r)
	}
	fmt.Fprintf(&b, "Laid %s: the end walks %s across and %s along; the worst joint is off by %s (standard deviations).\n\n",
		r.Drift.Way, long(r.Drift.EndX), long(r.Drift.EndY), long(r.Drift.WorstJoint))
	if by.bolts.Bolts > 0 {
		driftText(&b, w, by.bolts)
	}
	overlayText(&b, w, by)
	gainText(&b, r)
	b.WriteString("    n        y mm  face    walk across   along mm\n")
	for _, l := range r.Placements {
		fmt.Fprintf(&b, "%5d %11.3f  %-5s %12.3f %10.3f%s\n", l.N+1, l.Y.MM(), l.Face, l.WalkX.MM(), l.WalkY.MM(), howLaid(l))
	}
	return b.String()
}

func sidesText(b cloth.Bolt) string {
	if b.Sides == cloth.BothSides {
		return "both sides"
	}
	return "one side"
}

// howLaid says what is not plain about a placement.
func howLaid(l cloth.Placement) string {
	switch {
	case l.Mirrored:
		return "  mirrored"
	case l.Between:
		return fmt.Sprintf("  laid as %d, between two", l.LaidAs+1)
	case l.LaidAs != l.N:
		return fmt.Sprintf("  laid as %d", l.LaidAs+1)
	}
	return ""
}

func stretchText(b *strings.Builder, r cloth.Run) {
	b.WriteString("\n   go  cloth     from mm       to mm  placements  on A  in turn  on B\n")
	for _, s := range r.Stretches {
		d := stretchDocument(r, s)
		fmt.Fprintf(b, "%5d %6d %11.1f %11.1f %11d %5d %8d %5d\n", s.Go+1, s.Cloth+1, s.Cover.From.MM(), s.Cover.To.MM(), s.Count, d.FaceA, d.InTurn, d.FaceB)
	}
	b.WriteString("\n")
}

// driftText sets the closed form beside what many bolts came to, and what of it
// the eye sees.
func driftText(b *strings.Builder, w repeat.Work, sim cloth.Simulated) {
	d := w.Run.Drift
	fmt.Fprintf(b, "                              by formula   %d bolts laid by chance (seed %d)\n", sim.Bolts, sim.Seed)
	row := func(name, formula, laid string) { fmt.Fprintf(b, "  %-26s %11s   %11s\n", name, formula, laid) }
	row("walk across, mm", fmt.Sprintf("± %.3f", d.EndX.MM()), fmt.Sprintf("± %.3f", sim.SpreadX.MM()))
	row("walk along, mm", fmt.Sprintf("± %.3f", (d.EndY-d.ShareY).Abs().MM()), fmt.Sprintf("± %.3f", sim.SpreadY.MM()))
	row("pitch and growth along, mm", fmt.Sprintf("%+.3f", d.ShareY.MM()), fmt.Sprintf("%+.3f", sim.MeanY.MM()))
	row("worst joint, mm", fmt.Sprintf("%.3f", d.WorstJoint.MM()), fmt.Sprintf("%.3f", sim.WorstJoint.MM()))
	row("all joints within "+long(d.Tolerance), fmt.Sprintf("%.1f %%", d.WithinPct), fmt.Sprintf("%.1f %%", sim.WithinPct))
	b.WriteString("\n")
	for _, e := range eyes(w) {
		fmt.Fprintf(b, "From %s any good eye parts %.3f mm, an expert on crisp lines %.3f mm: the worst joint is %s.\n",
			long(e.Distance), e.Plain.MM(), e.Crisp.MM(), strings.ReplaceAll(string(e.Sees(d.WorstJoint)), "-", " "))
	}
	b.WriteString("\n")
}

// overlayText tells how prints fall on each other, and what folds and backs take.
func overlayText(b *strings.Builder, w repeat.Work, by chance) {
	said := false
	tell := func(what string, o cloth.Overlay, laid cloth.Overlaid) {
		if o.Prints == 0 {
			return
		}
		said = true
		fmt.Fprintf(b, "%s: each of %d prints misses by %s along and %s across, the worst by %s; all within %s: %.1f %%.\n"+
			"  By chance, %d bolts: the worst by %s, all within: %.1f %%.\n",
			what, o.Prints, long(o.Along), long(o.Across), long(o.Worst), long(o.Tolerance), o.WithinPct, laid.Bolts, long(laid.Worst), laid.WithinPct)
	}
	tell("Later sheets on the first", w.Run.Set, by.set)
	tell("Back on the front", w.Run.Back, by.back)
	if r := w.Reverse; r != nil {
		how := "The sheet prints the back as it lies."
		if r.NeedsTurning(w.Order.Limits.Misfit) {
			how = "For the back the sheet is turned over about its long axis, each star on its own mark."
		}
		fmt.Fprintln(b, how)
		said = true
	}
	if f := w.Fold; f != nil {
		said = true
		switch {
		case !f.Found:
			fmt.Fprintf(b, "Folded: the pattern (%s) has no mirror across the bolt; every fold shows.\n", f.Group)
		default:
			fmt.Fprintf(b, "Folded: the nearest mirror of the pattern (%s) lies %s from the fold, with a glide of %s.\n", f.Group, long(f.Off.Abs()), long(f.Glide))
		}
		if f.Over > 0 {
			fmt.Fprintf(b, "%s of the sheet over the folds, by up to %s.\n", counted(f.Over, "cut-out"), long(f.Reach))
		}
	}
	if said {
		b.WriteString("\n")
	}
}

func gainText(b *strings.Builder, r cloth.Run) {
	gains := cloth.Gains(r)
	if len(gains) == 0 {
		return
	}
	b.WriteString("What helps, the most first               worst joint mm       walk at the end mm     gain mm\n")
	for _, g := range gains {
		fmt.Fprintf(b, "  %-38s %7.3f to %7.3f   %8.3f to %8.3f  %8.3f\n", g.Text(),
			g.JointBefore.MM(), g.JointAfter.MM(), g.EndBefore.MM(), g.EndAfter.MM(), g.Total().MM())
	}
	b.WriteString("\n")
}
