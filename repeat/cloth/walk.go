package cloth

import (
	"fmt"
	"math"
	"math/rand/v2"

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
	MeanX, MeanY     geom.Length // of the last placement's walk, the pitch error counted to its far end
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
	dyer := newDyer(reg, step, seed)
	var x, y tally
	var worst float64
	within := 0
	for range bolts {
		var widest float64
		sheet := dyer.before()
		for k := range n {
			next := dyer.lay(k, sheet)
			if k > 0 {
				widest = math.Max(widest, dyer.opens(sheet, next))
			}
			sheet = next
		}
		x.add(sheet.x)
		y.add(sheet.y - float64(n-1)*dyer.step)
		worst += widest
		if widest <= tolerance.MM() {
			within++
		}
	}
	share := 100 * float64(within) / float64(bolts)
	far := 0.0 // the last placement's own length
	if reg.Way != MarkedLine {
		far = dyer.pitch
	}
	return Simulated{
		Bolts: bolts,
		MeanX: geom.MM(x.mean), MeanY: geom.MM(y.mean + far),
		SpreadX: geom.MM(x.spread()), SpreadY: geom.MM(y.spread()),
		WorstJoint: geom.MM(worst / float64(bolts)),
		WithinPct:  share,
	}, nil
}

// Scatter lays n placements on one bolt, drawing the error of every star, and
// returns how far each lies from its place. The same seed gives the same bolt.
func Scatter(reg Register, step geom.Length, n int, seed uint64) ([]Misplacement, error) {
	if err := checkWalk(reg, step, n); err != nil {
		return nil, err
	}
	dyer := newDyer(reg, step, seed)
	out := make([]Misplacement, n)
	sheet := dyer.before()
	for k := range out {
		sheet = dyer.lay(k, sheet)
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

// A laid sheet: the middle between its leading stars in millimetres, and its
// turn in radians, clockwise.
type laid struct{ x, y, turn float64 }

// A dyer lays sheets with drawn errors.
type dyer struct {
	way                            Way
	sigma, base, step, pitch, half float64 // mm
	draw                           *rand.Rand
}

func newDyer(reg Register, step geom.Length, seed uint64) dyer {
	return dyer{
		way:   reg.Way,
		sigma: reg.StarError.MM(), base: reg.Baseline.MM(),
		step: step.MM(), pitch: reg.PitchError.MM(), half: reg.Width.MM() / 2,
		draw: rand.New(rand.NewPCG(seed, 0)),
	}
}

// before returns the sheet whose trailing stars the first placement is laid on:
// they are where they belong.
func (d dyer) before() laid { return laid{y: -(d.step + d.pitch)} }

func (d dyer) miss() float64 { return d.sigma * d.draw.NormFloat64() }

// lay returns placement k (from 0) as laid after prev.
func (d dyer) lay(k int, prev laid) laid {
	left, right := d.miss(), d.miss() // along, at the two stars
	along, turn := (left+right)/2, (right-left)/d.base
	one, two := d.miss(), d.miss() // across
	across := (one + two) / 2
	if d.way == MarkedLine {
		return laid{across, float64(k)*d.step + along, turn}
	}
	// The trailing stars that prev has printed.
	s, c := math.Sincos(prev.turn)
	x, y := prev.x-s*(d.step+d.pitch), prev.y+c*(d.step+d.pitch)
	if d.way == StarToStar {
		return laid{x + across, y + along, prev.turn + turn}
	}
	// One and two are misses on the edge line, at the sheet's two ends.
	byStars, byLine := prev.turn+turn, (one-two)/d.step
	b2, s2 := d.base*d.base, d.step*d.step
	turn = (b2*byStars + s2*byLine) / (b2 + s2)
	return laid{across + d.step/2*turn, y + along, turn}
}

// opens returns the gap or lap between prev and next, at the edge of the field
// where it is wider.
func (d dyer) opens(prev, next laid) float64 {
	s, c := math.Sincos(prev.turn)
	middle := c*(next.y-prev.y) - s*(next.x-prev.x) - (d.step + d.pitch)
	return math.Abs(middle) + d.half*math.Abs(next.turn-prev.turn)
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
