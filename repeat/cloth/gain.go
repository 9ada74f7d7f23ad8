package cloth

import (
	"cmp"
	"fmt"
	"math"
	"slices"

	"tsugime/repeat/geom"
)

// A Remedy names what can be done against drift.
type Remedy string

// The remedies.
const (
	LongerBaseline Remedy = "longer-baseline" // stars as far apart as the sheet and the cloth allow
	UseEdgeLine    Remedy = "edge-line"
	UseMarkedLine  Remedy = "marked-line"
	LongerStep     Remedy = "longer-step"   // a sheet of two steps: half the placements
	CarefulStars   Remedy = "careful-stars" // half the star error
	TrueStep       Remedy = "true-step"     // the pitch error measured and cut away
	DampSheet      Remedy = "damp-sheet"    // kept as wet as at the start
	LayEveryOther  Remedy = "every-other"
)

// A Gain is what a remedy brings: the worst joint that is expected and how far
// the last placement walks, before and after.
type Gain struct {
	Remedy                  Remedy
	JointBefore, JointAfter geom.Length
	EndBefore, EndAfter     geom.Length // across and along together, as one distance
	// Baseline and Step are what it takes: of LongerBaseline and LongerStep.
	Baseline, Step geom.Length
}

// Joint returns by how much the worst joint gets better, End by how much the walk
// at the end does, and Total both together.
func (g Gain) Joint() geom.Length { return g.JointBefore - g.JointAfter }

// End returns by how much the walk at the end gets better.
func (g Gain) End() geom.Length { return g.EndBefore - g.EndAfter }

// Total returns both gains together.
func (g Gain) Total() geom.Length { return g.Joint() + g.End() }

// Text says what is to be done, as the middle of a sentence.
func (g Gain) Text() string {
	switch g.Remedy {
	case LongerBaseline:
		return fmt.Sprintf("set the outer stars %s apart", geom.MMUnit.Format(g.Baseline, 1))
	case UseEdgeLine:
		return "lay to an edge line"
	case UseMarkedLine:
		return "lay to a marked line"
	case LongerStep:
		return fmt.Sprintf("cut a sheet of two steps, %s", geom.MMUnit.Format(g.Step, 1))
	case CarefulStars:
		return "lay each star half as far off"
	case TrueStep:
		return "measure the step and cut its error away"
	case DampSheet:
		return "keep the sheet as damp as at the start"
	case LayEveryOther:
		return "lay every other placement first"
	}
	return string(g.Remedy)
}

// Best returns the gain that is greatest by a measure, such as Gain.Joint, and
// whether there is one. Laying more carefully is no plan: it is named only where
// nothing else helps.
func Best(gains []Gain, by func(Gain) geom.Length) (Gain, bool) {
	var best Gain
	found := false
	for _, g := range gains {
		careful := found && best.Remedy == CarefulStars
		if by(g) <= 0 || found && g.Remedy == CarefulStars {
			continue
		}
		if !found || careful || by(g) > by(best) {
			best, found = g, true
		}
	}
	return best, found
}

// LongestStep is the longest step that LongerStep offers: the longest that a
// sheet of the trade is moved by, but for poured dye, is about 400 mm.
const LongestStep = 400 * geom.Millimetre

// Gains returns what each remedy that is open to a run would bring, by the closed
// forms of Drift, the greatest total first. Those that bring nothing, or make
// more worse than better, are left out.
func Gains(r Run) []Gain {
	n := len(r.Placements)
	if r.Register.Baseline == 0 || n < 2 {
		return nil
	}
	var gains []Gain
	add := func(remedy Remedy, reg Register, step geom.Length, n int) {
		if reg.check(step) != nil {
			return
		}
		d := reg.drift(step, n)
		g := Gain{
			Remedy: remedy, JointBefore: r.Drift.WorstJoint, JointAfter: d.WorstJoint,
			EndBefore: r.Drift.End(), EndAfter: d.End(), Baseline: reg.Baseline, Step: step,
		}
		if g.Total() >= geom.Micrometre {
			gains = append(gains, g)
		}
	}
	for _, c := range r.changes() {
		add(c.remedy, c.reg, r.Step, n)
	}
	if step := 2 * r.Step; step <= LongestStep && !r.Bolt.Folded {
		add(LongerStep, r.Register, step, n/2)
	}
	slices.SortStableFunc(gains, func(a, b Gain) int { return cmp.Compare(b.Total(), a.Total()) })
	return gains
}

// A change is a register with a remedy taken.
type change struct {
	remedy Remedy
	reg    Register
}

// changes returns the remedies that leave the step as it is.
func (r Run) changes() []change {
	var all []change
	take := func(remedy Remedy, open bool, edit func(*Register)) {
		if open {
			reg := r.Register
			edit(&reg)
			all = append(all, change{remedy, reg})
		}
	}
	reg := r.Register
	free := !r.Bolt.Folded
	take(LongerBaseline, reg.Longest > reg.Baseline, func(c *Register) { c.Baseline = reg.Longest })
	take(UseEdgeLine, free && reg.Way != EdgeLine, func(c *Register) { c.Way = EdgeLine })
	take(UseMarkedLine, free && reg.Way != MarkedLine, func(c *Register) { c.Way = MarkedLine })
	take(CarefulStars, true, func(c *Register) { c.StarError, c.StarErrorAcross = reg.StarError/2, reg.StarErrorAcross/2 })
	take(TrueStep, reg.PitchError != 0, func(c *Register) { c.PitchError = 0 })
	take(DampSheet, reg.Growth.End != reg.Growth.Start, func(c *Register) { c.Growth.End = reg.Growth.Start })
	take(LayEveryOther, free && reg.Sequence != EveryOther, func(c *Register) { c.Sequence = EveryOther })
	return all
}

// End returns how far the last placement walks, as one distance.
func (d Drift) End() geom.Length { return geom.MM(math.Hypot(d.EndX.MM(), d.EndY.MM())) }
