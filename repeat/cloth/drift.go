package cloth

import (
	"math"

	"tsugime/repeat/geom"
)

// A Drift is how far the last placement may have walked, as standard deviations
// with the pitch error's share added, and the worst gap or lap at a joint.
type Drift struct {
	Way        Way
	EndX, EndY geom.Length
	// WorstJoint is the gap or lap that the widest of all joints is expected to
	// show at the field's edge, on whichever side it is wider.
	WorstJoint geom.Length
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
	end := r.spread(step, n)
	return Drift{
		Way:  r.Way,
		EndX: geom.MM(end.x), EndY: r.along(end.y, n),
		WorstJoint: r.worstJoint(step, n-1),
	}
}

// A spread is the standard deviations of where a placement lands: of the middle
// between its leading stars, in millimetres, and of its turn in radians.
type spread struct{ x, y, turn float64 }

// spread returns where the n-th placement (from 1) lands. Each star misses its
// mark by σ in each direction, independently; the sheet is laid by least
// squares. With the baseline B and the step S, one placement then adds σ²/2 each
// way and 2σ²/B² of turn, by the law of propagation of uncertainty (JCGM
// 100:2008, 5.1.2). Derived for this package:
//
//	star-to-star  all of it adds up, and a turn leads every later step astray:
//	              var y = nσ²/2, var turn = 2nσ²/B²,
//	              var x = nσ²/2 + (2σ²S²/B²)·(1² + 2² + … + (n−1)²)
//	edge-line     the stars give y and a turn against the placement before; two
//	              marks a step apart on the line give x and a turn against the
//	              cloth; least squares weighs the turns as B² : S², so
//	              var turn = 2σ²/(B²+S²)·(1−w²ⁿ)/(1−w²), w = B²/(B²+S²),
//	              var y = nσ²/2, var x = σ²/2 + (S²/4)·var turn
//	marked-line   each placement stands alone: the forms for n = 1
//
// Second order in the turn is left out: S·(σ²/B²)·n(n−1)/2 of shortening along,
// 0.04 mm over 70 placements of 181.8 mm with σ 0.1 mm and B 340 mm.
func (r Register) spread(step geom.Length, n int) spread {
	if n <= 0 {
		return spread{}
	}
	sigma, base, s, k := r.StarError.MM(), r.Baseline.MM(), step.MM(), float64(n)
	one := sigma * sigma / 2
	turn := 2 * sigma * sigma / (base * base)
	switch r.Way {
	case StarToStar:
		squares := (k - 1) * k * (2*k - 1) / 6
		return spread{math.Sqrt(k*one + turn*s*s*squares), math.Sqrt(k * one), math.Sqrt(k * turn)}
	case EdgeLine:
		noise, w := r.edgeTurn(step)
		v := noise * (1 - math.Pow(w, 2*k)) / (1 - w*w)
		return spread{math.Sqrt(one + s*s/4*v), math.Sqrt(k * one), math.Sqrt(v)}
	}
	return spread{math.Sqrt(one), math.Sqrt(one), math.Sqrt(turn)}
}

// edgeTurn returns the variance that one placement adds to the turn where an
// edge line is used, in square radians, and the share of the turn before it that
// is kept.
func (r Register) edgeTurn(step geom.Length) (variance, kept float64) {
	sigma, base, s := r.StarError.MM(), r.Baseline.MM(), step.MM()
	both := base*base + s*s
	return 2 * sigma * sigma / both, base * base / both
}

// along adds the pitch error of n steps to a standard deviation in millimetres
// and gives the sum the pitch error's sign. One and the same error in every step
// is fully correlated, so it adds up n times, not √n times (JCGM 100:2008,
// 5.2.2, note 1). On a marked line it doesn't add up at all.
func (r Register) along(sd float64, n int) geom.Length {
	var share geom.Length
	if r.Way != MarkedLine {
		share = geom.Length(n) * r.PitchError
	}
	if share < 0 {
		return share - geom.MM(sd)
	}
	return share + geom.MM(sd)
}

// worstJoint returns the widest gap or lap that is expected among the joints.
// At an edge of the field, W/2 from the middle, a joint opens by Δy ± (W/2)·Δturn.
// The two edges of all joints are 2·joints normal draws, nearly independent; by
// Šidák's inequality (JASA 62, 1967, 626–633) what is expected of independent
// ones is an upper bound. On a marked line a pitch error is a lap at every joint
// and is added; where placements follow each other's stars it leaves the joints
// closed.
func (r Register) worstJoint(step geom.Length, joints int) geom.Length {
	if joints <= 0 {
		return 0
	}
	worst := geom.MM(r.jointSpread(step) * expectedWidest(2*joints))
	if r.Way == MarkedLine {
		worst += r.PitchError.Abs()
	}
	return worst
}

// jointSpread returns the standard deviation of the gap at one edge of a joint,
// in millimetres.
func (r Register) jointSpread(step geom.Length) float64 {
	sigma, base, half := r.StarError.MM(), r.Baseline.MM(), r.Width.MM()/2
	gap, turn := sigma*sigma/2, 2*sigma*sigma/(base*base)
	switch r.Way {
	case EdgeLine:
		// Δturn = (w−1)·turn + noise, the turn at its largest variance.
		noise, w := r.edgeTurn(step)
		turn = 2 * noise / (1 + w)
	case MarkedLine: // two placements, each with its own error
		gap, turn = 2*gap, 2*turn
	}
	return math.Sqrt(gap + half*half*turn)
}

// expectedWidest returns the expected largest of n half-normal draws of standard
// deviation 1: the integral from 0 of 1 − F(t)ⁿ, F(t) = erf(t/√2) (David and
// Nagaraja, Order Statistics, 3rd edition 2003, chapter 3), by Simpson's rule.
// Beyond t = 12 the integrand is below n·10⁻³².
func expectedWidest(n int) float64 {
	const end, pieces = 12.0, 600
	f := func(i int) float64 {
		return 1 - math.Pow(math.Erf(end*float64(i)/pieces/math.Sqrt2), float64(n))
	}
	sum := f(0) + f(pieces)
	for i := 1; i < pieces; i++ {
		sum += float64(2+2*(i%2)) * f(i)
	}
	return sum * end / pieces / 3
}
