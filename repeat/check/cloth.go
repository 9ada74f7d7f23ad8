package check

import (
	"errors"
	"fmt"
	"strings"

	"tsugime/repeat/cloth"
	"tsugime/repeat/geom"
)

func remainder(m Measures, _ Limits) []Finding {
	r := m.Run
	if len(r.Placements) == 0 || r.Remainder == 0 {
		return nil
	}
	last := r.Placements[len(r.Placements)-1]
	part := "print a part of one more placement"
	if r.Partial.Printed > 0 {
		part = fmt.Sprintf("lay one more in part and cover %s of its sheet", mm(r.Partial.Masked))
	}
	return []Finding{{
		Code: "bolt-remainder", Severity: Note, Domain: OnCloth, At: geom.Point{Y: last.Y + r.Step},
		Text: fmt.Sprintf("After %d placements %s of cloth are left, %.0f %% of a step.",
			len(r.Placements), mm(r.Remainder), percent(r.Remainder, r.Step)),
		Remedy: "Keep it for the waste of both ends, or " + part + ".",
	}}
}

func turnedPlacements(m Measures, _ Limits) []Finding {
	n := 0
	var first cloth.Placement
	for _, p := range m.Run.Placements {
		if p.Face == cloth.Turn {
			if n == 0 {
				first = p
			}
			n++
		}
	}
	if n == 0 {
		return nil
	}
	return []Finding{{
		Code: "bolt-turn", Severity: Note, Domain: OnCloth, At: geom.Point{Y: first.Y},
		Text:   fmt.Sprintf("%s into the turn of the board, from placement %d at %s.", plural(n, "placement reaches", "placements reach"), first.N+1, mm(first.Y)),
		Remedy: turnRemedy(m),
	}}
}

// turnRemedy says what to do about the turn, by what lies over it.
func turnRemedy(m Measures) string {
	c := cloth.ClearTurn(m.Run, m.Dressed)
	switch {
	case len(m.Dressed.Panels) > 0 && len(c.Over) == 0:
		return "No panel lies there: leave it as it is."
	case c.Lacks > 0:
		return fmt.Sprintf("It lies in the %s. Tell the tailor of the place; on a bolt that gives %s more finished cloth it could be laid beside every panel.",
			strings.Join(c.Over, " and the "), mm(c.Lacks))
	case !c.Found:
		return "Tell the tailor of the place, or shift the start so that it falls between two panels."
	case len(c.Before) == 0:
		return fmt.Sprintf("It lies in the %s. Start at %s: then no panel lies there, for %s more cloth.", strings.Join(c.Over, " and the "), mm(c.Start), mm(c.Extra))
	}
	return fmt.Sprintf("It lies in the %s. Start at %s and leave %s more before the %s: then no panel lies there, for %s more cloth.",
		strings.Join(c.Over, " and the "), mm(c.Start), mm(c.Gap), strings.Join(c.Before, " and the "), mm(c.Extra))
}

// garmentUnlaid tells why no garment could be laid on the bolt at all.
func garmentUnlaid(m Measures, _ Limits) []Finding {
	if m.Unlaid == nil {
		return nil
	}
	f := Finding{
		Code: "garment-unlaid", Severity: Fault, Domain: OnCloth,
		Text:   "The garment can't be cut from this bolt: " + strings.TrimPrefix(m.Unlaid.Error(), "garment: ") + ".",
		Remedy: "Change the height or the width of the bolt.",
	}
	var misfit *cloth.Misfit
	if errors.As(m.Unlaid, &misfit) {
		f.Text = "The garment can't be cut from this bolt: " + misfit.Text + "."
		f.Remedy = strings.ToUpper(misfit.Remedy[:1]) + misfit.Remedy[1:] + "."
	}
	return []Finding{f}
}

// garmentNarrowed tells of sizes that the cloth has less room for than wanted.
func garmentNarrowed(m Measures, _ Limits) []Finding {
	var all []Finding
	for _, n := range m.Dressed.Narrowed {
		all = append(all, Finding{
			Code: "garment-narrowed", Severity: Warning, Domain: OnCloth,
			Text:   fmt.Sprintf("%s: %s are wanted, the cloth has room for %s.", n.Title, mm(n.Wanted), mm(n.Length)),
			Remedy: "Use wider cloth, or smaller allowances at the selvedges, or cut for smaller sizes.",
		})
	}
	return all
}

func boltShort(m Measures, _ Limits) []Finding {
	finished := m.Dressed.Length
	if m.Dressed.Used <= finished || len(m.Dressed.Panels) == 0 {
		return nil
	}
	return []Finding{{
		Code: "bolt-short", Severity: Fault, Domain: OnCloth, At: geom.Point{Y: finished},
		Text: fmt.Sprintf("The garment needs %s of finished cloth; from the first placement on the bolt gives %s, %s too little.",
			mm(m.Dressed.Used), mm(finished), mm(m.Dressed.Used-finished)),
		Remedy: "Order a longer bolt, cut for a smaller height, or give up a matched seam.",
	}}
}

func backCentre(m Measures, l Limits) []Finding {
	for _, s := range m.Dressed.Seams {
		if s.Name != cloth.BackCentre || s.PhaseAlong.Abs() <= l.SeamPhase && s.PhaseAcross.Abs() <= l.SeamPhase {
			continue
		}
		along := s.PhaseAlong.Abs() > l.SeamPhase
		f := Finding{
			Code: "back-centre-phase", Severity: Warning, Domain: OnCloth,
			Text: fmt.Sprintf("At the back centre the pattern is off by %s along and %s across.",
				mm(s.PhaseAlong), mm(s.PhaseAcross)),
			Remedy: "Fit the pattern to the width between the seams, so that it runs on across.",
		}
		if along {
			f.Remedy = "Ask for the back centre to be matched: it costs less than a step of cloth."
		}
		for _, w := range m.Dressed.Matches {
			if w.Name == s.Name && !along && w.Why.Reason == cloth.OffAcross {
				f.Remedy = widthRemedy(w)
			}
		}
		f.At = seamPlace(m.Dressed, s.Name)
		return []Finding{f}
	}
	return nil
}
