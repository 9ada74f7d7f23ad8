package cloth

import (
	"fmt"
	"math"
	"math/rand/v2"

	"tsugime/repeat/geom"
)

// An Overlay tells how far prints miss others that they are to fall on: the back
// the front, a later sheet of a set the first. Each is laid by its leading stars
// on the stars of the print below, so nothing adds up along the bolt: with a
// star's error σ along and σₓ across, the baseline B, the field's width W and the
// step S, at the field's corners farthest off,
//
//	var along  = σ²/2 + (W/2)²·2σ²/B²
//	var across = σₓ²/2 + S²·2σ²/B²
//
// derived as for a placement. A print misses by the greater of the two at the
// worst of its four corners.
type Overlay struct {
	Prints        int
	Along, Across geom.Length // standard deviations
	Worst         geom.Length // expected of the worst of all prints, at most (Šidák)
	WithinPct     float64     // the odds that none misses by more than Tolerance, at least
	Tolerance     geom.Length
}

// overlay returns how prints with so long a baseline miss those below.
func (r Register) overlay(step, baseline geom.Length, prints int) Overlay {
	across, along := r.errors()
	half, s := r.Width.MM()/2, step.MM()
	turn := 2 * along * along / (baseline.MM() * baseline.MM())
	near, side := across/math.Sqrt2, math.Sqrt(along*along/2+half*half*turn)
	far := math.Sqrt(across*across/2 + s*s*turn)
	draws := []normalDraws{{side, 2 * prints}, {near, prints}, {far, prints}}
	return Overlay{
		Prints: prints, Along: geom.MM(side), Across: geom.MM(far),
		Worst: geom.MM(widestOf(draws)), WithinPct: 100 * inside(draws, r.Misfit.MM()), Tolerance: r.Misfit,
	}
}

// An Overlaid is what many bolts came to whose prints were laid on others.
type Overlaid struct {
	Bolts     int
	Worst     geom.Length // the mean over the bolts of the worst print of each
	WithinPct float64     // of the bolts: no print misses by more than the tolerance
}

// overlaidPrints is how many prints a run lays on others at most: a second's work.
const overlaidPrints = 5_000_000

// SimulateBack lays the backs of many bolts on their fronts; of one side nothing.
// Where so many are too much work, fewer are laid.
func (r Run) SimulateBack(bolts int, seed uint64) (Overlaid, error) {
	return r.overlaid(r.Back.Prints, r.Register.Baseline, bolts, seed)
}

// SimulateSet lays the later sheets of a set on the first, on many bolts; of one
// sheet nothing. Where so many are too much work, fewer are laid.
func (r Run) SimulateSet(bolts int, seed uint64) (Overlaid, error) {
	return r.overlaid(r.Set.Prints, r.Register.matchBaseline(), bolts, seed)
}

func (r Run) overlaid(prints int, baseline geom.Length, bolts int, seed uint64) (Overlaid, error) {
	if prints == 0 {
		return Overlaid{}, nil
	}
	return SimulateOverlay(r.Register, r.Step, baseline, prints, min(bolts, max(overlaidPrints/prints, 1)), seed)
}

// SimulateOverlay lays many bolts of so many prints, each by its leading stars,
// baseline apart, on the stars of a print below, and agrees with Overlay.
func SimulateOverlay(reg Register, step, baseline geom.Length, prints, bolts int, seed uint64) (Overlaid, error) {
	reg.MatchBaseline = baseline
	if err := reg.check(step); err != nil {
		return Overlaid{}, err
	}
	if prints < 1 || prints > maxLaid || bolts < 1 || bolts > maxLaid/prints {
		return Overlaid{}, fmt.Errorf("simulation: %d bolts of %d prints can't be laid; give fewer, at least one", bolts, prints)
	}
	draw := rand.New(rand.NewPCG(seed, 1))
	across, along := reg.errors()
	half, base, s := reg.Width.MM()/2, baseline.MM(), step.MM()
	var out Overlaid
	total, within := 0.0, 0
	for range bolts {
		worst := 0.0
		for range prints {
			left, right := along*draw.NormFloat64(), along*draw.NormFloat64()
			x := across * (draw.NormFloat64() + draw.NormFloat64()) / 2
			sin, cos := math.Sincos((right - left) / base)
			y := (left + right) / 2
			for _, c := range [4][2]float64{{-half, 0}, {half, 0}, {-half, s}, {half, s}} {
				dx := x + c[0]*cos - c[1]*sin - c[0]
				dy := y + c[0]*sin + c[1]*cos - c[1]
				worst = max(worst, math.Abs(dx), math.Abs(dy))
			}
		}
		total += worst
		if worst <= reg.Misfit.MM() {
			within++
		}
	}
	out.Bolts, out.Worst = bolts, geom.MM(total/float64(bolts))
	out.WithinPct = 100 * float64(within) / float64(bolts)
	return out, nil
}
