package check

import (
	"fmt"
	"math"

	"tsugime/repeat/geom"
	"tsugime/repeat/stencil"
)

// What paper may do before it needs a look: our recommendation, no source.
const (
	// tongueRatio is the reach over neck from which a tongue lifts.
	tongueRatio = 4.0
	// isotropy is the least share of its stiffness in one direction that a sheet may
	// have in another.
	isotropy = 0.5
	// handPull is how hard a sheet is drawn straight on the board, in newtons for
	// each metre of its edge: some 35 N on the edge of a kimono's width.
	handPull = 100.0
)

// tongues reports paper that hangs on too narrow a neck.
func tongues(m Measures, _ Limits) []Finding {
	return eachSheet(m, func(s stencil.Sheet, on string) []Finding {
		n := 0
		for _, t := range s.Tongues { // the readiest to lift first
			if t.Ratio > tongueRatio {
				n++
			}
		}
		if n == 0 {
			return nil
		}
		t := s.Tongues[0]
		return []Finding{{
			Code: "tongue", Severity: Warning, Domain: OnUnit, At: middle(t.Neck.P, t.Neck.Q),
			Text: fmt.Sprintf("%s%s on one side only and may lift; the first reaches %s from a neck of %s.",
				plural(n, "tongue hangs", "tongues hang"), on, mm(t.Reach), mm(t.Neck.Width)),
			Remedy: "Hold the tip with a tie, make the tongue shorter, or widen its neck.",
		}}
	})
}

// ribbons reports strips of paper that the spatula moves by more than a joint may
// be off.
func ribbons(m Measures, l Limits) []Finding {
	return eachSheet(m, func(s stencil.Sheet, on string) []Finding {
		how := stencil.HoldRibbons(s.Ribbons, s.Unit.Lattice, l.Joint)
		if how == "" {
			return nil
		}
		n, every := 0, geom.Length(math.MaxInt64)
		for _, r := range s.Ribbons { // the one that moves most first
			if r.Deflection > l.Joint {
				n, every = n+1, min(every, r.HeldEvery(l.Joint))
			}
		}
		every -= every % (100 * geom.Micrometre)
		r := s.Ribbons[0]
		remedy := map[stencil.RibbonHold]string{
			stencil.ByTies:   "Lay a tie across the slits at the middle of each ribbon, or make the slits shorter.",
			stencil.ByThread: fmt.Sprintf("Lay in a thread every %s, or ties as close.", mm(every)),
			stencil.ByGauze:  fmt.Sprintf("Stick gauze over the whole field; without it they need a thread or a tie every %s.", mm(every)),
		}[how]
		return []Finding{{
			Code: "ribbon", Severity: Warning, Domain: OnUnit, At: r.At,
			Text: fmt.Sprintf("%s%s; the first, %s long and %s wide, moves by up to %s, the limit is %s.",
				plural(n, "ribbon of paper gives", "ribbons of paper give"), on, mm(r.Span), mm(r.Width), mm(r.Deflection), mm(l.Joint)),
			Remedy: remedy,
		}}
	})
}

// skews reports a sheet that leans by more than a joint may be off when a hand
// draws it straight, or that gives in one direction much more than in another.
func skews(m Measures, l Limits) []Finding {
	return eachSheet(m, func(s stencil.Sheet, on string) []Finding {
		if !s.StiffFound {
			return nil
		}
		of := "The sheet"
		if on != "" {
			of = "The second sheet"
		}
		k := s.Stiff
		if lean := leanOf(s); lean > l.Joint {
			return []Finding{{
				Code: "skew", Severity: Warning, Domain: OnUnit,
				Text: fmt.Sprintf("%s leans by %s from end to end when a hand draws it straight (%.0f N for each metre of its edge); the limit is %s.",
					of, mm(lean), handPull, mm(l.Joint)),
				Remedy: "Hold it with gauze, or lay ties across the way in which it gives.",
			}}
		}
		if k.Isotropy < isotropy {
			return []Finding{{
				Code: "skew", Severity: Note, Domain: OnUnit,
				Text:   fmt.Sprintf("%s has in one direction, %.0f° from across, only %.0f %% of its greatest stiffness.", of, k.SoftDeg, 100*k.Isotropy),
				Remedy: "Take care not to pull it that way, or hold it with gauze.",
			}}
		}
		return nil
	})
}

// leanOf returns how far one end of the cut field moves sideways against the other
// under handPull, by the worse of the two directions; nothing where the paper
// carries nothing, which is told as bands.
func leanOf(s stencil.Sheet) geom.Length {
	lean := func(p stencil.Pull, length geom.Length) geom.Length {
		if p.Modulus == 0 || s.Spec.Paper.Thickness <= 0 {
			return 0
		}
		return length.Times(math.Abs(p.Skew) * p.Stretch(handPull, s.Spec.Paper.Thickness))
	}
	return max(lean(s.Stiff.Along, s.Spec.Step), lean(s.Stiff.Across, s.Spec.Field.Width))
}
