package cloth

import (
	"fmt"
	"math"

	"tsugime/repeat/geom"
)

// A Misplacement is how far a placement lies from where it belongs. The sheet is
// moved By, and turned clockwise about the middle between its leading stars.
type Misplacement struct {
	By      geom.Point
	TurnDeg float64
}

// A Simulated is what many bolts came to, each laid star by star.
type Simulated struct {
	Bolts            int
	Seed             uint64
	MeanX, MeanY     geom.Length // of the last placement's walk, pitch error and growth counted to its far end
	SpreadX, SpreadY geom.Length // standard deviations of it
	WorstJoint       geom.Length // the mean over the bolts of the widest gap or lap of each
	WithinPct        float64     // of the bolts: no joint beyond the tolerance
}

// maxLaid bounds how many placements are simulated: some seconds' work.
const maxLaid = 50_000_000

// Simulate lays n placements on each of many bolts, drawing the error of every
// star, and returns what came out. It goes through the motions instead of the
// formulas of Drift, and agrees with them. The same seed gives the same answer.
func Simulate(reg Register, step geom.Length, n, bolts int, tolerance geom.Length, seed uint64) (Simulated, error) {
	if err := checkWalk(reg, step, n); err != nil {
		return Simulated{}, err
	}
	if bolts < 1 || bolts > maxLaid/n {
		return Simulated{}, fmt.Errorf("simulation: %d bolts of %d placements can't be laid; give 1 to %d bolts", bolts, n, maxLaid/n)
	}
	dyer := newDyer(reg, step, n, seed)
	var x, y tally
	var worst float64
	within := 0
	for range bolts {
		sheets := dyer.bolt()
		widest := dyer.widest(sheets)
		last := sheets[n-1]
		x.add(last.x)
		y.add(last.y - float64(n-1)*dyer.step)
		worst += widest
		if widest <= tolerance.MM() {
			within++
		}
	}
	far := 0.0 // the last placement's own length
	if reg.Way != MarkedLine && reg.Way != FoldLine {
		far = dyer.over[n-1]
	}
	return Simulated{
		Bolts: bolts, Seed: seed,
		MeanX: geom.MM(x.mean), MeanY: geom.MM(y.mean + far),
		SpreadX: geom.MM(x.spread()), SpreadY: geom.MM(y.spread()),
		WorstJoint: geom.MM(worst / float64(bolts)),
		WithinPct:  100 * float64(within) / float64(bolts),
	}, nil
}

// Scatter lays n placements on one bolt, drawing the error of every star, and
// returns how far each lies from its place. The same seed gives the same bolt.
func Scatter(reg Register, step geom.Length, n int, seed uint64) ([]Misplacement, error) {
	if err := checkWalk(reg, step, n); err != nil {
		return nil, err
	}
	dyer := newDyer(reg, step, n, seed)
	out := make([]Misplacement, n)
	for k, sheet := range dyer.bolt() {
		out[k] = Misplacement{geom.PtMM(sheet.x, sheet.y-float64(k)*dyer.step), sheet.turn * 180 / math.Pi}
	}
	return out, nil
}

func checkWalk(reg Register, step geom.Length, n int) error {
	if err := checkStep(step); err != nil {
		return err
	}
	if n < 1 || n > maxPlacements {
		return fmt.Errorf("simulation: %d placements can't be laid; give 1 to %d", n, maxPlacements)
	}
	return reg.check(step)
}

// A tally is a running mean and sum of squared differences from it (Welford,
// Technometrics 4, 1962, 419–420).
type tally struct{ n, mean, squares float64 }

func (t *tally) add(v float64) {
	t.n++
	d := v - t.mean
	t.mean += d / t.n
	t.squares += d * (v - t.mean)
}

// spread returns the standard deviation of one draw; of a single one it is 0.
func (t tally) spread() float64 {
	if t.n < 2 {
		return 0
	}
	return math.Sqrt(t.squares / (t.n - 1))
}
