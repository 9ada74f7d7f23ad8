package cloth

import (
	"math"

	"tsugime/repeat/geom"
)

// A Drift is how far the last placement may have walked, as standard deviations
// with the share added that pitch error and growth have, and the worst gap or
// lap at a joint.
type Drift struct {
	Way        Way
	EndX, EndY geom.Length
	// ShareY is the part of EndY that is no chance: pitch error and growth.
	ShareY geom.Length
	// SkewPct is the standard deviation of the last placement's turn, as the skew
	// of its rows.
	SkewPct float64
	// WorstJoint is the gap or lap that the widest of all joints is expected to
	// show at the field's edge, on whichever side it is wider.
	WorstJoint geom.Length
	// WithinPct are the odds that no joint of the cloth opens by more than
	// Tolerance: never too high but where joints that depend on each other have
	// laps of their own.
	WithinPct float64
	Tolerance geom.Length
}

// Drift returns the drift of n placements, for comparing ways and counts. No
// placements don't drift.
func (r Register) Drift(step geom.Length, n int) (Drift, error) {
	if err := checkStep(step); err != nil {
		return Drift{}, err
	}
	if err := r.check(step); err != nil {
		return Drift{}, err
	}
	return r.drift(step, min(max(n, 0), maxPlacements)), nil
}

func (r Register) drift(step geom.Length, n int) Drift {
	ends, laps := r.course(step.MM(), n).systematic(r.Way)
	joints := r.joints(step, n, laps)
	d := Drift{
		Way: r.Way, Tolerance: r.Tolerance,
		WorstJoint: joints.widest(r.Width.MM() / 2),
		WithinPct:  100 * joints.within(r.Width.MM()/2, r.Tolerance.MM()),
	}
	if n > 0 {
		end := r.spread(step, n, n)
		d.ShareY, d.SkewPct = geom.MM(ends[n-1]), 100*math.Tan(end.turn)
		d.EndX, d.EndY = geom.MM(end.x), along(d.ShareY, end.y)
	}
	return d
}

// SkewPct returns the skew of a row that leaves the square by so much, measured
// along the bolt, over the width: 100·departure/width (ASTM D3882 from memory).
func SkewPct(departure, width geom.Length) float64 {
	return 100 * float64(departure) / float64(width)
}

// A spread is the standard deviations of where a placement lands: of the middle
// between its leading stars, in millimetres, and of its turn in radians.
type spread struct{ x, y, turn float64 }

// spread returns where the n-th placement (from 1) of so many lands.
func (r Register) spread(step geom.Length, n, of int) spread {
	if r.Sequence.between(n-1, of) {
		return r.between(step, n).at
	}
	return r.chained(step, n)
}

// chained returns where the n-th placement (from 1) lands, each laid after the
// one before. Each star misses its mark by σ along and σₓ across, independently;
// the sheet is laid by least squares. With the baseline B and the step S, one
// placement then adds σ²/2 along, σₓ²/2 across and 2σ²/B² of turn, by the law of
// propagation of uncertainty (JCGM 100:2008, 5.1.2). Derived for this package:
//
//	star-to-star  all of it adds up, and a turn leads every later step astray:
//	              var y = nσ²/2, var turn = 2nσ²/B²,
//	              var x = nσₓ²/2 + (2σ²S²/B²)·(1² + 2² + … + (n−1)²)
//	edge-line     the stars give y and a turn against the placement before; two
//	              marks a step apart on the line give x and a turn against the
//	              cloth; least squares weighs the turns as B²/σ² : S²/σₓ²; with w
//	              the first one's share and v = 2/(B²/σ² + S²/σₓ²),
//	              var turn = v·(1−w²ⁿ)/(1−w²),
//	              var y = nσ²/2, var x = σₓ²/2 + (S²/4)·var turn
//	marked-line   each placement stands alone: the forms for n = 1
//	fold-line     each section lies square to its own fold; folds add up along:
//	              var y = nσ²/2, the rest as for n = 1
//
// Second order in the turn is left out: S·(σ²/B²)·n(n−1)/2 of shortening along,
// 0.04 mm over 70 placements of 181.8 mm with σ 0.1 mm and B 340 mm.
func (r Register) chained(step geom.Length, n int) spread {
	if n <= 0 {
		return spread{}
	}
	across, along := r.errors()
	base, s, k := r.Baseline.MM(), step.MM(), float64(n)
	oneX, oneY := across*across/2, along*along/2
	turn := 2 * along * along / (base * base)
	switch r.Way {
	case StarToStar:
		squares := (k - 1) * k * (2*k - 1) / 6
		return spread{math.Sqrt(k*oneX + turn*s*s*squares), math.Sqrt(k * oneY), math.Sqrt(k * turn)}
	case EdgeLine:
		noise, w := r.edgeTurn(step)
		v := noise * (1 - math.Pow(w, 2*k)) / (1 - w*w)
		return spread{math.Sqrt(oneX + s*s/4*v), math.Sqrt(k * oneY), math.Sqrt(v)}
	case FoldLine:
		return spread{math.Sqrt(oneX), math.Sqrt(k * oneY), math.Sqrt(turn)}
	}
	return spread{math.Sqrt(oneX), math.Sqrt(oneY), math.Sqrt(turn)}
}

// edgeTurn returns the variance that one placement adds to the turn where an
// edge line is used, in square radians, and the share of the turn before it that
// is kept.
func (r Register) edgeTurn(step geom.Length) (variance, kept float64) {
	across, along := r.errors()
	base, s := r.Baseline.MM(), step.MM()
	fx, fy, m := relative(across, along)
	both := base*base*fx + s*s*fy
	return 2 * m * m * fx * fy / both, base * base * fx / both
}

// along adds a share that is no chance to a standard deviation in millimetres
// and gives the sum the share's sign. One and the same error in every step is
// fully correlated, so it adds up n times, not √n times (JCGM 100:2008, 5.2.2,
// note 1). On a marked line it doesn't add up at all.
func along(share geom.Length, sd float64) geom.Length {
	if share < 0 {
		return share - geom.MM(sd)
	}
	return share + geom.MM(sd)
}

// joints returns the joints between n placements.
func (r Register) joints(step geom.Length, n int, laps []float64) jointLine {
	chain := r.chainJoint(step)
	chain.count = len(laps)
	if r.Sequence != EveryOther || r.Way == StarToStar || r.Way == FoldLine {
		return jointLine{[]jointLaw{chain}, func(int) int { return 0 }, laps}
	}
	b := r.between(step, 2)
	b.before.count = max((n-1)/2, 0) // placements that lie between two
	b.after.count = b.before.count
	chain.count -= 2 * b.before.count
	return jointLine{[]jointLaw{chain, b.before, b.after}, func(k int) int {
		if k >= 2*b.before.count {
			return 0
		}
		return 1 + k%2
	}, laps}
}

// chainJoint returns the law of a joint where each placement follows the one
// before.
func (r Register) chainJoint(step geom.Length) jointLaw {
	_, along := r.errors()
	base := r.Baseline.MM()
	gap, turn := along*along/2, 2*along*along/(base*base)
	switch r.Way {
	case EdgeLine:
		// Δturn = (w−1)·turn + noise, the turn at its largest variance.
		noise, w := r.edgeTurn(step)
		turn = 2 * noise / (1 + w)
	case MarkedLine: // two placements, each with its own error
		gap, turn = 2*gap, 2*turn
	case FoldLine: // both sections mirror what the fold is off by
		gap, turn = 4*gap, 4*turn
	}
	return jointLaw{gap: math.Sqrt(gap), turn: math.Sqrt(turn)}
}
