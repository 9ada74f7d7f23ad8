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
	// skew is by how much a sheet may lean for a unit of stretch.
	skew = 0.1
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

// skews reports a sheet that leans when it is pulled straight, or that gives in one
// direction much more than in another.
func skews(m Measures, _ Limits) []Finding {
	return eachSheet(m, func(s stencil.Sheet, on string) []Finding {
		if !s.StiffFound {
			return nil
		}
		of := "The sheet"
		if on != "" {
			of = "The second sheet"
		}
		k := s.Stiff
		if lean := max(math.Abs(k.Across.Skew), math.Abs(k.Along.Skew)); lean > skew {
			return []Finding{{
				Code: "skew", Severity: Warning, Domain: OnUnit,
				Text:   fmt.Sprintf("%s leans when it is pulled straight: by %.2f mm for each millimetre that it stretches.", of, lean),
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
