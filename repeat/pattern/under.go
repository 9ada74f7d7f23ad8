package pattern

import (
	"cmp"
	"context"
	"math"
	"math/cmplx"
	"slices"

	"tsugime/repeat/geom"
)

// A UnderKind says how an under-pattern shows.
type UnderKind string

// The kinds of under-patterns.
const (
	UnderBand UnderKind = "band" // lighter and darker stripes, as wide as several motifs
	UnderRow  UnderKind = "row"  // rows out of step: a beat beside the ground's own pitch
)

// A Component is an under-pattern: something that repeats over the joined units
// and isn't the ground's own lattice.
type Component struct {
	Kind         UnderKind
	Period       geom.Length // from one band to the next
	DirectionDeg float64     // along which the bands run, 0 … 180, clockwise on the sheet from across
	ContrastPct  float64     // Michelson's, of its strongest wave
	SeenTimes    float64     // that contrast over the least that the eye sees
}

// A Proof is what standing back from many copies of a unit would show.
type Proof struct {
	Found []Component // the most visible first; at most maxUnder
	More  int         // how many less visible ones there are
	Look  Look
}

// maxUnder is how many under-patterns a proof names.
const maxUnder = 12

// UnderPattern looks at u at the default distance, in black and white.
func UnderPattern(ctx context.Context, u Unit) (Proof, error) { return StandBack.UnderPattern(ctx, u) }

// designed is the order of a wave from which on it belongs to the ground. Rows a
// few percent off make waves of a few hundredths, one motif missing of nine an
// eighth; a drawn lattice 1, or 0.5 with two motifs in its cell. Where no wave is of
// order inStep, the ground counts as scattered. Judgement.
const (
	designed = 0.2
	inStep   = 0.5
)

// UnderPattern returns the under-patterns of u as l sees them: bands and rows
// which show only in the multiple.
//
// The coverage of the joined units is a sum of waves (Fourier). Those that the
// motifs follow closely make, with all sums and differences of them, the ground's
// own lattice; the others are under-patterns where their contrast is above the
// eye's threshold. A ground without a lattice of its own, such as scattered dots,
// has noise at all waves; there a wave must rise above that, too. A unit whose
// motifs make no finer lattice than its own is a design, of which nothing is told.
func (l Look) UnderPattern(ctx context.Context, u Unit) (Proof, error) {
	proof := Proof{Look: l}
	if err := u.Lattice.Check(); err != nil {
		return proof, err
	}
	if len(u.Motifs) < 2 {
		return proof, nil
	}
	waves, covered, err := u.spectrum(ctx)
	if err != nil || covered == 0 {
		return proof, err
	}
	own, scattered := ownLattice(waves, covered)
	others := slices.DeleteFunc(waves, func(w wave) bool { return own.holds(w.m, w.n) })
	if scattered {
		others = aboveNoise(others, covered)
	}
	proof.Found = l.gather(others, own, u.Lattice.Reduced(), covered)
	if more := len(proof.Found) - maxUnder; more > 0 {
		proof.Found, proof.More = proof.Found[:maxUnder], more
	}
	return proof, ctx.Err()
}

// ownLattice returns the waves of the ground itself: all sums of those that its
// motifs follow, or whose swing alone is that large.
func ownLattice(waves []wave, covered float64) (own waveLattice, scattered bool) {
	most := 0.0
	for _, w := range waves {
		order := max(w.order, cmplx.Abs(w.share)/covered)
		if most = max(most, order); order >= designed {
			own = own.with(w.m, w.n)
		}
	}
	return own, most < inStep
}

// gather names the waves that are seen: those whose beats with the ground run one
// way are one under-pattern, with the period of all of them.
func (l Look) gather(others []wave, own waveLattice, lattice Lattice, covered float64) []Component {
	type beat struct {
		m, n int // the direction, in lowest terms
	}
	type group struct {
		times int // the greatest common divisor of its beats
		Component
	}
	sensitivity := l.sensitivity()
	groups := map[beat]*group{}
	var order []beat
	frame := frameOf(lattice)
	for _, w := range others {
		contrast := l.contrast(w.share, covered)
		seen := contrast * sensitivity(w.cyclesPerMM())
		if seen < 1 {
			continue
		}
		m, n := own.nearest(frame, w.m, w.n)
		kind := UnderRow
		if m == w.m && n == w.n || m == -w.m && n == -w.n {
			kind = UnderBand
		}
		if n < 0 || n == 0 && m < 0 {
			m, n = -m, -n
		}
		times := gcd(max(m, -m), n)
		b := beat{m / times, n / times}
		g := groups[b]
		if g == nil {
			g = &group{}
			groups[b], order = g, append(order, b)
		}
		g.times = commonDivisor(g.times, times)
		if seen > g.SeenTimes {
			g.Kind, g.ContrastPct, g.SeenTimes = kind, 100*contrast, seen
		}
	}
	var found []Component
	for _, b := range order {
		g := groups[b]
		x, y := frame.wave(b.m*g.times, b.n*g.times)
		g.Period = geom.Length(math.Round(1 / math.Hypot(x, y)))
		g.DirectionDeg = math.Mod(math.Atan2(y, x)*180/math.Pi+450, 180)
		found = append(found, g.Component)
	}
	slices.SortStableFunc(found, func(a, b Component) int { return cmp.Compare(b.SeenTimes, a.SeenTimes) })
	return found
}

// commonDivisor is gcd for which 0 stands for nothing yet.
func commonDivisor(a, b int) int {
	if a == 0 {
		return b
	}
	return gcd(a, b)
}

// ring is over how many neighbours in fineness noise is measured on each side, and
// extinct the share of the coverage below which a wave isn't there at all: a unit
// that holds a smaller one several times lacks most waves.
const (
	ring    = 32
	extinct = 1e-5
)

// aboveNoise keeps the waves that rise above those of about the same period by
// more than chance. The powers of random waves are distributed exponentially: the
// median is ln 2 of the mean, and of n waves one exceeds ln(100·n) times the mean
// once in a hundred units. Fewer waves than a ring tell nothing.
func aboveNoise(waves []wave, covered float64) []wave {
	waves = slices.DeleteFunc(waves, func(w wave) bool { return cmplx.Abs(w.share) < extinct*covered })
	if len(waves) < 2*ring {
		return nil
	}
	slices.SortStableFunc(waves, func(a, b wave) int { return cmp.Compare(a.cyclesPerMM(), b.cyclesPerMM()) })
	limit := math.Log(100*float64(len(waves))) / math.Ln2
	var kept []wave
	var near []float64
	middle := 0.0
	for i, w := range waves {
		if i%(ring/4) == 0 { // the noise changes slowly from wave to wave
			near = near[:0]
			from := min(max(0, i-ring), len(waves)-2*ring)
			for _, n := range waves[from : from+2*ring] {
				near = append(near, n.power())
			}
			slices.Sort(near)
			middle = near[ring]
		}
		if w.power() > limit*middle {
			kept = append(kept, w)
		}
	}
	return kept
}
