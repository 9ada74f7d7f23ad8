package check

import (
	"fmt"
	"slices"

	"tsugime/repeat/cloth"
	"tsugime/repeat/geom"
)

// drift tells where joints open by more than they may.
func drift(m Measures, l Limits) []Finding {
	d := m.Run.Drift
	if d.WorstJoint <= l.Joint || len(m.Run.Placements) < 2 {
		return nil
	}
	last := m.Run.Placements[len(m.Run.Placements)-1]
	f := Finding{
		Code: "drift-joint", Severity: Note, Domain: OnCloth, At: geom.Point{Y: last.Y},
		Text: fmt.Sprintf("With this register the worst joint of the bolt is expected to be off by %s, more than %s%s; the end walks %s across and %s along.",
			mm(d.WorstJoint), mm(l.Joint), seen(d.WorstJoint, l.Look), mm(d.EndX), mm(d.EndY)),
		Remedy: "Lay to an edge line or a marked line, set the stars farther apart, or lay more carefully.",
	}
	gains := cloth.Gains(m.Run)
	g, ok := cloth.Best(gains, cloth.Gain.Joint)
	if ok && g.Joint() < d.WorstJoint/20 { // hardly worth the trouble
		g, ok = cloth.Best(slices.DeleteFunc(gains, func(g cloth.Gain) bool { return g.Remedy != cloth.CarefulStars }), cloth.Gain.Joint)
	}
	if ok {
		f.Remedy = fmt.Sprintf("Best for the joints: %s; the worst is then off by %s, %s less.", g.Text(), mm(g.JointAfter), mm(g.Joint()))
	}
	return []Finding{f}
}

// seen says whether an offset is seen from a distance.
func seen(offset, distance geom.Length) string {
	switch cloth.EyeAt(distance).Sees(offset) {
	case cloth.PlainlySeen:
		return ", plainly seen from " + mm(distance)
	case cloth.SeenByExpert:
		return ", seen by an expert on crisp lines from " + mm(distance)
	}
	return ", though not seen from " + mm(distance)
}

// walkOff tells where the placements leave the cloth that is free beside them.
func walkOff(m Measures, _ Limits) []Finding {
	r, f := m.Run, m.Sheet.Spec.Field
	free := min(f.Left-usable(r.Bolt).From, usable(r.Bolt).To-f.Right())
	if free < 0 || r.Drift.EndX <= free {
		return nil
	}
	at := r.Placements[len(r.Placements)-1]
	for _, p := range r.Placements {
		if p.WalkX > free {
			at = p
			break
		}
	}
	found := Finding{
		Code: "drift-walk", Severity: Warning, Domain: OnCloth, At: geom.Point{Y: at.Y},
		Text: fmt.Sprintf("By the end the placements walk %s across, as a standard deviation; beside the field %s are free, which placement %d uses up.",
			mm(r.Drift.EndX), mm(free), at.N+1),
		Remedy: "Lay to an edge line.",
	}
	if g, ok := cloth.Best(cloth.Gains(r), cloth.Gain.End); ok {
		found.Remedy = fmt.Sprintf("Best against the walk: %s; the end then walks %s, %s less.", g.Text(), mm(g.EndAfter), mm(g.End()))
	}
	return []Finding{found}
}

// dries tells what a sheet does that doesn't keep its length through the job.
func dries(m Measures, l Limits) []Finding {
	r := m.Run
	g, n := r.Register.Growth, len(r.Placements)
	if g == (cloth.Growth{}) || n == 0 {
		return nil
	}
	last := r.Placements[n-1]
	f := Finding{Code: "sheet-dries", Severity: Note, Domain: OnCloth, At: geom.Point{Y: last.Y}}
	from, to := g.At(0, n), g.At(n-1, n)
	if r.Drift.Way == cloth.MarkedLine || r.Drift.Way == cloth.FoldLine {
		lap := r.Step.Times(max(from, to, -from, -to))
		if lap <= l.Joint {
			return nil
		}
		f.Text = fmt.Sprintf("The sheet's length goes from %+.2f %% to %+.2f %%: joints lap or gap by up to %s from that alone.", 100*from, 100*to, mm(lap))
	} else {
		walk := r.Drift.ShareY - geom.Length(n)*r.Register.PitchError
		if walk.Abs() <= l.SeamPhase {
			return nil
		}
		f.Text = fmt.Sprintf("The sheet's length goes from %+.2f %% to %+.2f %%: the pattern walks %s along by the end from that alone.", 100*from, 100*to, mm(walk))
	}
	f.Remedy = "Keep the sheet at one damp all through the job, and cut its step for that."
	return []Finding{f}
}

// setMisses tells where later sheets of a set miss the first.
func setMisses(m Measures, l Limits) []Finding {
	s := m.Run.Set
	if s.Worst <= l.Misfit {
		return nil
	}
	return []Finding{{
		Code: "set-misfit", Severity: misfit(s.Worst, l), Domain: OnCloth,
		Text: fmt.Sprintf("Of %d prints laid on the first sheet's, the worst is expected to miss by %s, more than %s; one misses by %s along and %s across.",
			s.Prints, mm(s.Worst), mm(l.Misfit), mm(s.Along), mm(s.Across)),
		Remedy: "Set the stars farther apart, lay them more carefully, or draw the sheets with a wider lap.",
	}}
}

// misfit is how much a miss that is beyond the limit matters.
func misfit(worst geom.Length, l Limits) Severity {
	if worst > l.MostMisfit {
		return Warning
	}
	return Note
}
