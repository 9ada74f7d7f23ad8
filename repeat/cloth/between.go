package cloth

import (
	"math"

	"tsugime/repeat/geom"
)

// The laws of a placement that is laid between two finished ones. It is set by
// least squares on the stars of both: its leading stars on the trailing stars of
// the one before, its trailing stars on the leading stars of the one after.
// With σ a star's error along and τ = 2σ²/B² the turn of one placement, σₓ the
// error across, S the step, B the baseline:
//
//	star-to-star  what the placement adds, seen from both neighbours, is just what
//	              a placement of the chain has when its neighbours are known: the
//	              walk that is held at both ends, of variance (σ²/2)·(1·1/2) = σ²/4
//	              along. The chain's laws hold unchanged, for walk and joints.
//	edge-line     turn = (B²/σ²)(θ₋ + θ₊)/(2B²/σ² + S²/σₓ²) + its own
//	marked-line   the neighbours don't know of each other, so half of what they
//	              disagree by falls on each joint: gap (σ²/2 + σ²/2)/4 + σ²/4 =
//	              σ²/2 instead of σ²
//
// Derived for this package from the propagation of uncertainty (JCGM 100:2008,
// 5.1.2) and shown by laying bolts.
type between struct {
	at            spread   // where it lands, in a long bolt
	before, after jointLaw // the joints on its two sides
}

// between returns the law of placement n (from 1), which is laid between two.
func (r Register) between(step geom.Length, n int) between {
	switch r.Way {
	case EdgeLine:
		return r.betweenOnLine(step, n)
	case MarkedLine:
		return r.betweenMarks(step)
	}
	joint := r.chainJoint(step)
	return between{r.chained(step, n), joint, joint}
}

// betweenOnLine is the law of an edge line.
func (r Register) betweenOnLine(step geom.Length, n int) between {
	across, along := r.errors()
	base, s := r.Baseline.MM(), step.MM()
	fx, fy, _ := relative(across, along)
	noise, w := r.edgeTurn(step)
	share := base * base * fx / (2*base*base*fx + s*s*fy) // of each neighbour's turn
	own := 2 * along * along / (base * base) * share
	turns := func(k int) float64 { return noise * (1 - math.Pow(w, 2*float64(k))) / (1 - w*w) }
	// The neighbours' turns are those of the chain, two steps apart.
	of := func(left, right float64, a, b float64) float64 {
		return a*a*left + b*b*right + 2*a*b*w*w*left
	}
	left, right := turns(n-1), turns(n+1)
	turn := of(left, right, share, share) + own
	still := noise / (1 - w*w)
	joint := jointLaw{gap: along / math.Sqrt2, turn: math.Sqrt(of(still, still, share-1, share) + own)}
	at := spread{math.Sqrt(across*across/2 + s*s/4*turn), along * math.Sqrt(float64(n)/2), math.Sqrt(turn)}
	return between{at, joint, joint}
}

// betweenMarks is the law of marks of a ruled line. With w the share that the
// stars have in the turn against the long lever of the step:
//
//	turn = θ₋(3w/2−1) + θ₊w/2 + (1−w)(x₋−x₊)/S + own, own = 1/(B²/σ² + S²/σₓ²)
//	x    = x₋(1−w/2) + x₊w/2 + S(3w/4−1)θ₋ + Sθ₊w/4 + own of variance σₓ²/4 + S²own/4
func (r Register) betweenMarks(step geom.Length) between {
	across, along := r.errors()
	base, s := r.Baseline.MM(), step.MM()
	fx, fy, m := relative(across, along)
	both := base*base*fx + s*s*fy
	w, own := base*base*fx/both, m*m*fx*fy/both
	turn, x := 2*along*along/(base*base), across*across/2 // of a neighbour
	lever := (1 - w) * (1 - w) * 2 * x / (s * s)
	turned := func(a, b float64) float64 { return math.Sqrt(turn*(a*a+b*b) + lever + own) }
	at := spread{
		x: math.Sqrt(x*((1-w/2)*(1-w/2)+w*w/4) + turn*s*s*((3*w/4-1)*(3*w/4-1)+w*w/16) + across*across/4 + s*s*own/4),
		y: along / math.Sqrt2, turn: turned(3*w/2-1, w/2),
	}
	gap := along / math.Sqrt2
	return between{at, jointLaw{gap: gap, turn: turned(3*w/2-2, w/2)}, jointLaw{gap: gap, turn: turned(1-w/2, 1-3*w/2)}}
}

// relative returns the squares of two errors as shares of the square of the
// larger, m: of equal ones both are 1.
func relative(across, along float64) (fx, fy, m float64) {
	m = math.Max(across, along)
	if m == 0 {
		return 1, 1, 0
	}
	return across / m * (across / m), along / m * (along / m), m
}
