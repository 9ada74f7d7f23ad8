package check

import (
	"fmt"

	"tsugime/repeat/geom"
	"tsugime/repeat/stencil"
)

// ties reports those that don't lead from paper to paper across a cut-out, the
// ones that hold nothing and the ones that end in the open apart.
func ties(m Measures, _ Limits) []Finding {
	return eachSheet(m, func(s stencil.Sheet, on string) []Finding {
		var idle, open, astray []geom.Point
		for _, t := range s.Ties.Ties {
			at := middle(t.Tie.From, t.Tie.To)
			switch {
			case t.Idle():
				idle = append(idle, at)
			case !t.Bridges():
				open = append(open, at)
			case !t.CrossesMotif:
				astray = append(astray, at)
			}
		}
		var found []Finding
		add := func(code string, severity Severity, at []geom.Point, text, remedy string) {
			if len(at) > 0 {
				found = append(found, Finding{
					Code: code, Severity: severity, Domain: OnUnit, At: at[0],
					Text: fmt.Sprintf(text, plural(len(at), "tie", "ties")+on), Remedy: remedy,
				})
			}
		}
		add("tie-open", Fault, open, "%s: an end lies in a cut-out, so that it holds nothing and tears.",
			"Move the tie until both ends lie in paper, or take it away.")
		add("tie-idle", Warning, idle, "%s: no cut-out is crossed.", "Take it away, or move it across the cut-out that it should hold.")
		add("tie-astray", Note, astray, "%s: the motif that it goes with is not crossed; moved, it would move the tie away.",
			"Draw the tie anew on the motif that it crosses.")
		return found
	})
}

// hinges reports islands that too few ties hold, so that they swing.
func hinges(m Measures, _ Limits) []Finding {
	most := m.Sheet.Spec.Hold.PerIsland
	return eachSheet(m, func(s stencil.Sheet, on string) []Finding {
		n := 0
		var first stencil.HeldPart
		for _, p := range s.Ties.Islands {
			if len(p.Ties) > 0 && p.Hinges(most) { // held by none it falls out, which is told already
				if n++; n == 1 {
					first = p
				}
			}
		}
		if n == 0 {
			return nil
		}
		return []Finding{{
			Code: "tie-hinge", Severity: Warning, Domain: OnUnit, At: first.At,
			Text: fmt.Sprintf("%s%s held by fewer ties than %d; the first, of %.2f mm², swings on %s.",
				plural(n, "island is", "islands are"), on, most, first.AreaMM2, plural(len(first.Ties), "tie", "ties")),
			Remedy: "Add a tie on the other side of it.",
		}}
	})
}
