package pattern

import (
	"context"
	"math"
	"math/cmplx"
)

// A wave is one periodic component of a unit's coverage: m waves along the first
// and n along the second vector of the reduced lattice. X and Y are its cycles a
// millimetre; share is its complex amplitude as a share of the cell, so that a
// real wave with its opposite swings by twice its size.
type wave struct {
	m, n  int
	x, y  float64
	share complex128
	// order is how nearly the motifs of the kind that is most in step stand at one
	// phase of the wave: 1 where all do, near 0 where they don't follow it.
	order float64
}

func (w wave) cyclesPerMM() float64 { return math.Hypot(w.x, w.y) }

// wavesOf lists the waves of half the plane (the rest are their opposites) up to
// finest cycles a millimetre, without amplitudes, row by row.
func wavesOf(l Lattice, finest float64) []wave {
	f := frameOf(l)
	ax, ay, bx, by := f.ax/1e6, f.ay/1e6, f.bx/1e6, f.by/1e6
	det := ax*by - ay*bx
	// A wave k makes k·A waves along A, so no more than |k|·|A|.
	lastM, lastN := int(finest*math.Hypot(ax, ay)), int(finest*math.Hypot(bx, by))
	waves := make([]wave, 0, int(math.Pi/2*finest*finest*math.Abs(det))+lastM+lastN)
	for n := 0; n <= lastN; n++ {
		for m := -lastM; m <= lastM; m++ {
			if n == 0 && m <= 0 {
				continue
			}
			x := (float64(m)*by - float64(n)*ay) / det
			y := (float64(n)*ax - float64(m)*bx) / det
			if math.Hypot(x, y) <= finest {
				waves = append(waves, wave{m: m, n: n, x: x, y: y})
			}
		}
	}
	return waves
}

// wavesPerPitch is up to where waves are looked at, in cycles a mean pitch
// (√(cell/motifs)). The first waves of the closest packing have 1.07, those of a
// lattice twice as wide as high 1.41; beyond stands the shape of the motifs.
const wavesPerPitch = 1.5

// directMotifs is how many motifs are summed wave by wave; more of them go
// through the fast transform.
const directMotifs = 600

// spectrum returns the periodic components of u's coverage, 0 < |k| ≤ 1.5 waves a
// mean pitch, and the covered share of the cell. Up to directMotifs motifs they
// are those of the exact outlines (discs by closed form, curves as straight
// pieces), with what overlaps counted once. Beyond, each hole counts alone.
func (u Unit) spectrum(ctx context.Context) (waves []wave, covered float64, err error) {
	l := u.Lattice.Reduced()
	waves = wavesOf(l, wavesPerPitch*math.Sqrt(float64(len(u.Motifs))/l.CellMM2()))
	holes := u.holes()
	if len(holes) > directMotifs {
		covered, err = fastSpectrum(ctx, l, holes, waves)
	} else {
		covered, err = fill(ctx, l, holes, waves)
	}
	return waves, covered, err
}

// fill fills in the waves of few holes and returns the covered share of the cell.
func fill(ctx context.Context, l Lattice, holes []hole, waves []wave) (covered float64, err error) {
	if len(holes) == 0 {
		return 0, nil
	}
	forms, err := formsOf(l, holes, len(waves))
	if err != nil {
		return 0, err
	}
	cell := l.CellMM2()
	for _, f := range forms {
		if err := ctx.Err(); err != nil {
			return 0, err
		}
		covered += f.figure.areaMM2() * float64(len(f.places)) / cell
		for i, s := range sums(l, f.places, nil, waves) {
			waves[i].share += s * f.figure.transform(waves[i].x, waves[i].y) / complex(cell, 0)
		}
	}
	for _, kind := range kindsOf(holes) {
		places, weights, total := weighed(kind)
		for i, s := range sums(l, places, weights, waves) {
			waves[i].order = max(waves[i].order, cmplx.Abs(s)/total)
		}
	}
	return covered, ctx.Err()
}

// sums returns Σ weight·exp(−2πi k·place) for every wave: powers of the two
// phases of a place, multiplied. Places are in millimetres; no weights are ones.
func sums(l Lattice, places [][2]float64, weights []float64, waves []wave) []complex128 {
	f := frameOf(l)
	lastM, lastN := 0, 0
	for _, w := range waves {
		lastM, lastN = max(lastM, w.m, -w.m), max(lastN, w.n)
	}
	out := make([]complex128, len(waves))
	along, across := make([]complex128, 2*lastM+1), make([]complex128, lastN+1)
	for p, at := range places {
		u, v := f.into(at[0]*1e6, at[1]*1e6)
		for m := range along {
			along[m] = turns(float64(m-lastM) * u)
			if weights != nil {
				along[m] *= complex(weights[p], 0)
			}
		}
		for n := range across {
			across[n] = turns(float64(n) * v)
		}
		for i, w := range waves {
			out[i] += along[w.m+lastM] * across[w.n]
		}
	}
	return out
}

// turns returns exp(−2πi t).
func turns(t float64) complex128 {
	sin, cos := math.Sincos(-2 * math.Pi * (t - math.Round(t)))
	return complex(cos, sin)
}

func (w wave) power() float64 { return real(w.share)*real(w.share) + imag(w.share)*imag(w.share) }
