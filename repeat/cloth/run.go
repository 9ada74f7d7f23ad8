package cloth

import (
	"fmt"

	"tsugime/repeat/geom"
)

// A Placement is one laying of the stencil: it covers Y to Y + step.
type Placement struct {
	N    int
	Y    geom.Length
	Face Face
	// WalkX and WalkY are the standard deviations of where it lands, after its
	// own star errors and those before it. The share of pitch error and growth,
	// to the placement's far end, is added to WalkY, which then has its sign
	// (positive along).
	WalkX, WalkY geom.Length
	LaidAs       int  // as which one of its cloth, from 0, it is laid
	Between      bool // it is laid between two finished ones
	Mirrored     bool // along: every other section of a folded cloth
	Stretch      int  // its number in Run.Stretches
}

// A Partial is the last placement where it is laid in part, up to the waste at
// the cloth's end. Without one all is zero.
type Partial struct {
	N       int
	Y       geom.Length
	Printed geom.Length // from Y on
	Masked  geom.Length // the rest of the step, to be covered over
}

// A Run is the work along one bolt. Where several cloths lie on the board, it is
// that along the first; Stretches has them all.
type Run struct {
	Bolt       Bolt
	Board      Board
	Register   Register    // with which Drift was worked out; no Baseline where no stars have found room
	Step       geom.Length // as it lies on the board, before the cloth changes
	Placements []Placement // the whole ones
	// Needed is how many placements cover the cloth to its end, the last of them
	// in part: one more than there are whole ones, unless nothing remains.
	Needed    int
	Remainder geom.Length // cloth left after the last whole placement, the waste at the end not counted
	Partial   Partial
	Stretches []Stretch
	Turns     []Span      // the unprintable stretches
	Overhang  geom.Length // cloth that is longer than both faces of the board
	Drift     Drift
	// Simulated is what SimulatedBolts bolts of this run came to; Simulate lays
	// more. It is zero where there is no register or nothing to lay.
	Simulated Simulated
	Back      Overlay // of both sides: each placement of the back on the front's
	Set       Overlay // of several sheets: each later one on the first
}

// maxPlacements is how many placements a run may have. A bolt of the trade has
// 12 to 140.
const maxPlacements = 100_000

// Lay follows the stencil along the bolt. The step is as it lies on the board:
// the finished step over 1 + bolt.ChangeAlong. Whole placements are counted from
// board.Start to the bolt's end, less board.End; a bolt shorter than one step has
// none. Needed is what trade figures count ("70 to 90 placements a bolt" at 15 to
// 20 cm, a Tokyo komon dyer's page on the work). A register without a baseline,
// where no stars have found room, leaves walk and drift at zero.
func Lay(bolt Bolt, board Board, reg Register, step geom.Length) (Run, error) {
	if err := bolt.Check(); err != nil {
		return Run{}, err
	}
	if err := checkStep(step); err != nil {
		return Run{}, err
	}
	if err := board.check(bolt, step); err != nil {
		return Run{}, err
	}
	reg.Sequence = board.Sequence
	if bolt.Folded {
		reg.Way, reg.Sequence = FoldLine, OneAfterAnother
	}
	if reg.Baseline != 0 {
		if err := reg.check(step); err != nil {
			return Run{}, err
		}
	}
	cloth := max(bolt.Length-board.Start-board.End, 0)
	count := cloth / step
	if all := count * geom.Length(max(board.Cloths, 1)); all > maxPlacements {
		return Run{}, fmt.Errorf("step: %s mm makes %d placements on %s mm of cloth; give a longer step, for at most %d",
			step, all, cloth, maxPlacements)
	}
	run := Run{
		Bolt: bolt, Board: board, Register: reg, Step: step,
		Needed:    int((cloth + step - 1) / step),
		Remainder: cloth - count*step,
	}
	run.Placements = make([]Placement, count)
	run.place()
	if reg.Baseline != 0 {
		run.walk()
	}
	return run, nil
}

// place tells where every placement lies and falls.
func (r *Run) place() {
	r.Stretches = r.stretches()
	for i, l := range r.Stretches {
		if l.Cloth > 0 {
			continue
		}
		r.Turns = append(r.Turns, l.Turns...)
		r.Overhang = max(r.Overhang, l.Overhang)
		for n := l.First; n < l.First+l.Count; n++ {
			r.Placements[n] = Placement{N: n, Y: r.placed(n), Face: r.Face(l, n), Stretch: i}
		}
	}
	count := len(r.Placements)
	for n := range r.Placements {
		p := &r.Placements[n]
		p.LaidAs, p.Between = r.Register.Sequence.laidAs(n, count), r.Register.Sequence.between(n, count)
		p.Mirrored = r.Bolt.Folded && n%2 == 1
	}
	if r.Remainder > 0 {
		r.Partial = Partial{N: count, Y: r.placed(count), Printed: r.Remainder, Masked: r.Step - r.Remainder}
	}
	r.Drift.Way = r.Register.Way
}

// walk tells how far every placement may walk.
func (r *Run) walk() {
	reg, count := r.Register, len(r.Placements)
	r.Drift = reg.drift(r.Step, count)
	ends, _ := reg.course(r.Step.MM(), count).systematic(reg.Way)
	for n := range r.Placements {
		s := reg.spread(r.Step, n+1, count)
		r.Placements[n].WalkX, r.Placements[n].WalkY = geom.MM(s.x), along(geom.MM(ends[n]), s.y)
	}
	if r.Bolt.Sides == BothSides {
		r.Back = reg.overlay(r.Step, reg.Baseline, count)
	}
	if reg.Sheets > 1 {
		r.Set = reg.overlay(r.Step, reg.matchBaseline(), count*(reg.Sheets-1))
	}
	if count > 0 {
		r.Simulated, _ = r.Simulate(min(SimulatedBolts, quickLaid/count), 1)
	}
}

// SimulatedBolts is how many bolts Lay lays at most, and quickLaid how many
// placements: some milliseconds' work.
const (
	SimulatedBolts = 400
	quickLaid      = 40_000
)

// Simulate lays many bolts of this run with drawn star errors.
func (r Run) Simulate(bolts int, seed uint64) (Simulated, error) {
	return Simulate(r.Register, r.Step, len(r.Placements), bolts, r.Register.Tolerance, seed)
}

// checkStep returns an error where no stencil can be moved by step.
func checkStep(step geom.Length) error {
	if step < minStep || step > maxStep {
		return fmt.Errorf("step: %s mm can't be laid; give between %s and %s mm", step, minStep, maxStep)
	}
	return nil
}

// The steps that are accepted. Those of the trade are 130 to 400 mm, with a
// framed stencil for poured dye about 1 m.
const (
	minStep = geom.Millimetre
	maxStep = 3 * geom.Metre
)

// WalksAcross returns WalkX of every placement as it would be, were all laid by
// another way of registering; nothing where there are no stars.
func (r Run) WalksAcross(way Way) []geom.Length {
	reg := r.Register
	if reg.Way = way; reg.Baseline == 0 {
		return nil
	}
	walks := make([]geom.Length, len(r.Placements))
	for n := range walks {
		walks[n] = geom.MM(reg.spread(r.Step, n+1, len(walks)).x)
	}
	return walks
}

// OnFace returns how many placements of the first cloth fall on a face.
func (r Run) OnFace(f Face) int {
	n := 0
	for _, p := range r.Placements {
		if p.Face == f {
			n++
		}
	}
	return n
}
