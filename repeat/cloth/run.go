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
	// own star errors and those before it. The pitch error's share, to the
	// placement's far end, is added to WalkY, which then has the pitch error's
	// sign (positive along).
	WalkX, WalkY geom.Length
}

// A Run is the work along one bolt.
type Run struct {
	Bolt       Bolt
	Board      Board
	Step       geom.Length // as it lies on the board, before the cloth changes
	Placements []Placement // the whole ones
	// Needed is how many placements cover the cloth to its end, the last of them
	// in part: one more than there are whole ones, unless nothing remains.
	Needed    int
	Remainder geom.Length // cloth left after the last whole placement
	Turns     []Span      // the unprintable stretches
	Overhang  geom.Length // cloth that is longer than both faces of the board
	Drift     Drift
}

// maxPlacements is how many placements a run may have. A bolt of the trade has
// 12 to 140.
const maxPlacements = 100_000

// Lay follows the stencil along the bolt. The step is as it lies on the board:
// the finished step over 1 + bolt.ChangeAlong. Whole placements are counted from
// board.Start to the bolt's end; a bolt shorter than one step has none. Needed
// is what trade figures count ("70 to 90 placements a bolt" at 15 to 20 cm,
// a Tokyo komon dyer's page on the work). A register without a baseline, where
// no stars have found room, leaves walk and drift at zero.
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
	if reg.Baseline != 0 {
		if err := reg.check(step); err != nil {
			return Run{}, err
		}
	}
	cloth := bolt.Length - board.Start
	count := cloth / step
	if count > maxPlacements {
		return Run{}, fmt.Errorf("step: %s mm makes %d placements on %s mm of cloth; give a longer step, for at most %d",
			step, count, cloth, maxPlacements)
	}
	run := Run{
		Bolt: bolt, Board: board, Step: step,
		Needed:    int((cloth + step - 1) / step),
		Remainder: cloth - count*step,
		Turns:     board.folds(bolt.Length),
		Overhang:  max(0, bolt.Length-2*board.Length),
	}
	run.Placements = make([]Placement, count)
	for n := range run.Placements {
		y := board.Start + geom.Length(n)*step
		run.Placements[n] = Placement{N: n, Y: y, Face: board.face(y, step, run.Turns)}
	}
	run.Drift.Way = reg.Way
	if reg.Baseline == 0 {
		return run, nil
	}
	run.Drift = reg.drift(step, int(count))
	for n := range run.Placements {
		walk := reg.spread(step, n+1)
		run.Placements[n].WalkX, run.Placements[n].WalkY = geom.MM(walk.x), reg.along(walk.y, n+1)
	}
	return run, nil
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

// OnFace returns how many placements fall on a face.
func (r Run) OnFace(f Face) int {
	n := 0
	for _, p := range r.Placements {
		if p.Face == f {
			n++
		}
	}
	return n
}
