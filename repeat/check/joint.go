package check

import (
	"fmt"
	"math"
	"strings"

	"tsugime/repeat/geom"
	"tsugime/repeat/stencil"
)

func stepFault(m Measures, _ Limits) []Finding {
	e := m.Sheet.StepError
	size := e.Distance(geom.Point{})
	if size <= stepSlack {
		return nil
	}
	return []Finding{{
		Code: "joint-step", Severity: Fault, Domain: OnCloth,
		At: geom.Point{X: m.Sheet.Spec.Field.Left + m.Sheet.Spec.Field.Width/2, Y: m.Sheet.Spec.Step},
		Text: fmt.Sprintf("The step %s is no multiple of the pattern: each joint is off by %s (%s across, %s along).",
			mm(m.Sheet.Spec.Step), mm(size), mm(e.X), mm(e.Y)),
		Remedy: fmt.Sprintf("Fit the pattern to the step, or set the step to %s.", mm(m.Sheet.Spec.Step-e.Y)),
	}}
}

func jointCrosses(m Measures, _ Limits) []Finding {
	j := m.Sheet.Joint
	if len(m.Sheet.CutOuts) == 0 || j.Clearance > 0 || len(j.Line) == 0 {
		return nil
	}
	at := halfway(j.Line)
	if len(j.Crossings) > 0 {
		at = middle(j.Crossings[0].From, j.Crossings[0].To)
	}
	f := Finding{
		Code: "joint-crosses", Severity: Warning, Domain: OnSheet, At: at,
		Text:   fmt.Sprintf("No joint line runs through paper alone: this one crosses %s of cut-outs.", mm(j.Crossed)),
		Remedy: "Lap the two placements where the line crosses, or leave a web there.",
	}
	if j.ByHand {
		f.Text = fmt.Sprintf("The joint line drawn by hand crosses %s of cut-outs.", mm(j.Crossed))
		f.Remedy = "Lead it through the webs, or let the line be chosen."
	}
	return []Finding{f}
}

// jointByHand reports what is wrong with a line drawn by hand besides crossing
// cut-outs, which jointCrosses tells.
func jointByHand(m Measures, _ Limits) []Finding {
	says := map[stencil.JointFaultKind]string{
		stencil.PartsAMotif:    "parts a motif: pieces of it lie on both sides",
		stencil.MeetsItsCopy:   "meets its copy one step on, so that placements lap there",
		stencil.CrossesItself:  "crosses itself",
		stencil.LeavesTheField: "leaves the field by %s",
		stencil.EndsShort:      "ends %s short of the field's edge",
	}
	var found []Finding
	for _, fault := range m.Sheet.Joint.Faults {
		text, ok := says[fault.Kind]
		if !ok {
			continue
		}
		if strings.Contains(text, "%s") {
			text = fmt.Sprintf(text, mm(fault.By))
		}
		found = append(found, Finding{
			Code: "joint-hand", Severity: Warning, Domain: OnSheet, At: fault.At,
			Text:   "The joint line drawn by hand " + text + ".",
			Remedy: "Move its points, or let the line be chosen.",
		})
	}
	return found
}

// halfway is the middle of the line's middle piece.
func halfway(line []geom.Point) geom.Point {
	i := (len(line) - 1) / 2
	return middle(line[i], line[min(i+1, len(line)-1)])
}

// jointThin compares the strip of paper along the joint with the web limit: the
// line leaves its clearance on each side.
func jointThin(m Measures, _ Limits) []Finding {
	j := m.Sheet.Joint
	if j.Clearance <= 0 || 2*j.Clearance >= m.Sheet.Webs.Limit || len(j.Line) == 0 {
		return nil
	}
	return []Finding{{
		Code: "joint-thin", Severity: Warning, Domain: OnSheet, At: halfway(j.Line),
		Text:   fmt.Sprintf("The joint line passes cut-outs at %s; the paste of two placements may meet there.", mm(j.Clearance)),
		Remedy: "Widen the webs that the line runs through.",
	}}
}

func fieldFits(m Measures, _ Limits) []Finding {
	f := m.Sheet.Spec.Field
	width, _ := m.Run.Bolt.FinishedSize()
	if f.Left >= 0 && f.Right() <= width {
		return nil
	}
	return []Finding{{
		Code: "field-wide", Severity: Fault, Domain: OnCloth, At: geom.Point{X: min(max(f.Left, 0), width)},
		Text:   fmt.Sprintf("The cut field reaches from %s to %s, beyond the selvedges of a finished width of %s.", mm(f.Left), mm(f.Right()), mm(width)),
		Remedy: "Make the field narrower or move it, or order a wider bolt.",
	}}
}

// paperMargin is the border that every side of the paper keeps around cut-outs
// and stars: from the smallest borders of old stencils, 25 mm, less a star's
// room (museum measurements; the limit is our choice).
const paperMargin = 15 * geom.Millimetre

func paperFits(m Measures, _ Limits) []Finding {
	holes := m.Sheet.Bounds()
	if m.Sheet.Paper.HoldsBox(holes.Grown(paperMargin)) {
		return nil
	}
	width, height := holes.Width()+2*paperMargin, holes.Height()+2*paperMargin
	return []Finding{{
		Code: "paper-small", Severity: Fault, Domain: OnSheet, At: m.Sheet.Paper.Min,
		Text: fmt.Sprintf("The paper of %s by %s is too small: cut-outs and stars with a border of %s need %s by %s.",
			mm(m.Sheet.Paper.Width()), mm(m.Sheet.Paper.Height()), mm(paperMargin), mm(width), mm(height)),
		Remedy: "Take a larger sheet, a shorter step or a narrower field.",
	}}
}

func starsClear(m Measures, l Limits) []Finding {
	var found []Finding
	for _, s := range m.Sheet.Stars.Stars {
		if s.Clear >= l.StarClear || s.Clear <= -s.Diameter {
			continue
		}
		found = append(found, Finding{
			Code: "star-near", Severity: Warning, Domain: OnSheet, At: s.At,
			Text:   fmt.Sprintf("The %s star is %s from the nearest cut-out; %s is wanted.", s.End, mm(s.Clear), mm(l.StarClear)),
			Remedy: "Move the star into a wider web or the margin, or into a hole of its size.",
		})
	}
	return found
}

func starsHidden(m Measures, _ Limits) []Finding {
	n := 0
	var at geom.Point
	for _, s := range m.Sheet.Stars.Stars {
		if !s.Hidden && s.End == stencil.Leading {
			n, at = n+1, s.At
		}
	}
	if n == 0 {
		return nil
	}
	return []Finding{{
		Code: "star-open", Severity: Note, Domain: OnSheet, At: at,
		Text:   fmt.Sprintf("%s where the seam doesn't cover the print: a dot will show at every joint.", plural(n, "star stands", "stars stand")),
		Remedy: "Move it nearer to the selvedge, or into a hole of its size.",
	}}
}

func starBaseline(m Measures, l Limits) []Finding {
	s := m.Sheet.Stars
	if s.Baseline >= l.Baseline || len(s.Stars) == 0 {
		return nil
	}
	turn := m.Run.Drift.EndX
	return []Finding{{
		Code: "star-baseline", Severity: Warning, Domain: OnSheet, At: s.Stars[0].At,
		Text: fmt.Sprintf("The outer stars are %s apart; under %s a small miss turns the sheet (sideways walk at the bolt's end: %s).",
			mm(s.Baseline), mm(l.Baseline), mm(turn)),
		Remedy: "Set the outer stars farther apart, near the two selvedges.",
	}}
}

func starsTurned(m Measures, l Limits) []Finding {
	s := m.Sheet.Stars
	if s.TurnedMisfit >= l.TurnedMisfit || len(s.Stars) == 0 {
		return nil
	}
	text := fmt.Sprintf("The stars also fit within %s when the sheet is laid wrongly; %s is wanted.", mm(s.TurnedMisfit), mm(l.TurnedMisfit))
	if s.TurnedMisfit == 0 {
		text = "The stars fit just as well when the sheet is laid turned or mirrored."
	}
	return []Finding{{
		Code: "star-turned", Severity: Warning, Domain: OnSheet, At: s.Stars[0].At,
		Text:   text,
		Remedy: "Add a third star out of the middle, at another height.",
	}}
}

func noPlacement(m Measures, _ Limits) []Finding {
	if len(m.Run.Placements) > 0 {
		return nil
	}
	return []Finding{{
		Code: "bolt-no-placement", Severity: Fault, Domain: OnCloth,
		Text:   fmt.Sprintf("Not one placement of %s fits on the bolt of %s.", mm(m.Run.Step), mm(m.Run.Bolt.Length)),
		Remedy: "Set a shorter step, a longer bolt or an earlier start.",
	}}
}

func percent(part, whole geom.Length) float64 {
	if whole == 0 {
		return math.Inf(1)
	}
	return 100 * float64(part) / float64(whole)
}
