package pattern

import (
	"context"
	"math"
	"math/bits"
	"math/cmplx"
	"slices"
	"sync"
)

// fastSpectrum fills in the waves of many holes and returns the covered share of the
// cell. Each hole counts as the disc of its area. Discs of up to sizeNodes sizes are
// summed size by size; of more, at sizeNodes sizes in between, which a disc's
// transform is taken as a polynomial of its diameter for.
func fastSpectrum(ctx context.Context, l Lattice, holes []hole, waves []wave) (covered float64, err error) {
	sizes, cell := sizesOf(holes), l.CellMM2()
	places, _, total := weighed(holes)
	weights := make([][]float64, len(sizes)+len(sizes)%2) // two by two, the last perhaps nil
	for j := range sizes {
		weights[j] = make([]float64, len(holes))
		for i, s := range holes {
			weights[j][i] = lagrange(sizes, j, s.diameter)
		}
	}
	areas := make([]complex128, len(waves))
	for j := 0; j < len(sizes); j += 2 {
		if err := ctx.Err(); err != nil {
			return 0, err
		}
		// The real part of the grid holds one size, the imaginary part the next.
		grid := gridFor(l, waves)
		grid.spread(l, places, weights[j], weights[j+1])
		grid.transform()
		grid.each(waves, func(i int, a, b complex128) {
			for n, sum := range [2]complex128{a, b} {
				if weights[j+n] != nil {
					d := sizes[j+n]
					waves[i].share += sum * complex(discTransform(d, waves[i].cyclesPerMM())/cell, 0)
					areas[i] += sum * complex(d*d, 0)
				}
			}
		})
	}
	covered = math.Pi / 4 * total / cell
	kinds := kindsOf(holes)
	if len(kinds) > 1 {
		return covered, fastOrder(ctx, l, kinds, len(holes), waves)
	}
	for i, s := range areas {
		waves[i].order = cmplx.Abs(s) / total
	}
	return covered, nil
}

// fastOrder fills in the waves' order, two kinds at a time. Kinds of fewer than a
// hundredth of the motifs are accents and are left out.
func fastOrder(ctx context.Context, l Lattice, kinds [][]hole, holes int, waves []wave) error {
	kinds = slices.DeleteFunc(kinds, func(k []hole) bool { return len(k)*100 < holes })
	for j := 0; j < len(kinds); j += 2 {
		if err := ctx.Err(); err != nil {
			return err
		}
		grid := gridFor(l, waves)
		places, weights, total := weighed(kinds[j])
		grid.spread(l, places, weights, nil)
		other := math.Inf(1)
		if j+1 < len(kinds) {
			places, weights, other = weighed(kinds[j+1])
			grid.spread(l, places, nil, weights)
		}
		grid.transform()
		grid.each(waves, func(i int, a, b complex128) {
			waves[i].order = max(waves[i].order, cmplx.Abs(a)/total, cmplx.Abs(b)/other)
		})
	}
	return nil
}

// sizeNodes is how many sizes a ground is summed at.
const sizeNodes = 4

// sizesOf returns the diameters of holes, or Chebyshev's nodes over their range
// where there are more than sizeNodes.
func sizesOf(holes []hole) []float64 {
	var sizes []float64
	lo, hi := math.Inf(1), 0.0
	for _, s := range holes {
		lo, hi = math.Min(lo, s.diameter), math.Max(hi, s.diameter)
		if len(sizes) <= sizeNodes && !slices.Contains(sizes, s.diameter) {
			sizes = append(sizes, s.diameter)
		}
	}
	if len(sizes) <= sizeNodes {
		return sizes
	}
	sizes = sizes[:sizeNodes]
	for j := range sizes {
		sizes[j] = (lo+hi)/2 + (hi-lo)/2*math.Cos(math.Pi*(2*float64(j)+1)/(2*sizeNodes))
	}
	return sizes
}

// lagrange returns the j-th basis polynomial over nodes at x.
func lagrange(nodes []float64, j int, x float64) float64 {
	p := 1.0
	for i, n := range nodes {
		if i != j {
			p *= (x - n) / (nodes[j] - n)
		}
	}
	return p
}

// A waveGrid sums weighted places for all waves at once: each place is spread over
// a few neighbours of a grid, the grid is transformed, and what the spreading did
// is divided out (the non-uniform transform of Dutt and Rokhlin 1993 with the
// kernel exp(β·√(1−z²)) of Barnett, Magland and af Klinteberg 2019).
type waveGrid struct {
	nu, nv       int // powers of two
	lastM, lastN int
	cells        []complex128 // row by row of v
	byM, byN     []float64    // what the kernel does to waves 0, 1, 2 …
	beta         float64
}

// kernelWidth is over how many grid points a place is spread.
const kernelWidth = 8

func gridFor(l Lattice, waves []wave) *waveGrid {
	g := &waveGrid{}
	for _, w := range waves {
		g.lastM, g.lastN = max(g.lastM, w.m, -w.m), max(g.lastN, w.n)
	}
	// At least one and a half times the points that the waves alone would need.
	size := func(last int) int { return 1 << bits.Len(uint(max(3*last, 2*kernelWidth)-1)) }
	g.nu, g.nv = size(g.lastM), size(g.lastN)
	g.beta = 0.976 * math.Pi * kernelWidth * (1 - 1/(2*1.5))
	g.cells = make([]complex128, g.nu*g.nv)
	g.byM, g.byN = g.kernelWaves(g.lastM, g.nu), g.kernelWaves(g.lastN, g.nv)
	return g
}

func (g *waveGrid) kernel(z float64) float64 {
	if s := 1 - z*z; s > 0 {
		return math.Exp(g.beta * (math.Sqrt(s) - 1))
	}
	return 0
}

// kernelWaves returns the kernel's own transform for waves 0 … last on n points,
// by the midpoint rule, with z = sin φ so that the ends are smooth.
func (g *waveGrid) kernelWaves(last, n int) []float64 {
	const points = 200
	out := make([]float64, last+1)
	for q := range points {
		phi := math.Pi / 2 * (2*(float64(q)+0.5)/points - 1)
		z := math.Sin(phi)
		w := g.kernel(z) * math.Cos(phi) * math.Pi / points * kernelWidth / 2
		for m := range out {
			out[m] += w * math.Cos(2*math.Pi*float64(m)/float64(n)*z*kernelWidth/2)
		}
	}
	return out
}

// spread puts the places on the grid, with real and imaginary weights.
func (g *waveGrid) spread(l Lattice, places [][2]float64, re, im []float64) {
	f := frameOf(l)
	var wu, wv [kernelWidth]float64
	var iu [kernelWidth]int
	for p, at := range places {
		u, v := f.into(at[0]*1e6, at[1]*1e6)
		u, v = (u-math.Floor(u))*float64(g.nu), (v-math.Floor(v))*float64(g.nv)
		u0, v0 := int(math.Ceil(u-kernelWidth/2)), int(math.Ceil(v-kernelWidth/2))
		for i := range wu {
			wu[i] = g.kernel((float64(u0+i) - u) / (kernelWidth / 2))
			wv[i] = g.kernel((float64(v0+i) - v) / (kernelWidth / 2))
			iu[i] = (u0 + i) & (g.nu - 1)
		}
		var weight complex128
		if re != nil {
			weight += complex(re[p], 0)
		}
		if im != nil {
			weight += complex(0, im[p])
		}
		for j, v := range wv {
			row := g.cells[((v0+j)&(g.nv-1))*g.nu:][:g.nu]
			c := weight * complex(v, 0)
			for i, u := range wu {
				row[iu[i]] += complex(real(c)*u, imag(c)*u)
			}
		}
	}
}

// transform takes the grid to its waves, in both directions: rows, then the
// columns that are asked for, which are gathered so that they lie together.
func (g *waveGrid) transform() {
	rows := newFFT(g.nu)
	halves(g.nv, func(j int, _ []complex128) { rows.run(g.cells[j*g.nu:][:g.nu]) }, 0)
	columns := newFFT(g.nv)
	halves(2*g.lastM+1, func(c int, line []complex128) {
		m := modulo(c-g.lastM, g.nu)
		for j := range line {
			line[j] = g.cells[j*g.nu+m]
		}
		columns.run(line)
		for j := range line {
			g.cells[j*g.nu+m] = line[j]
		}
	}, g.nv)
}

// halves calls do for 0 … n−1, in two halves at once, each with a line of its own.
func halves(n int, do func(i int, line []complex128), length int) {
	var wait sync.WaitGroup
	for _, span := range [][2]int{{0, n / 2}, {n / 2, n}} {
		wait.Go(func() {
			line := make([]complex128, length)
			for i := span[0]; i < span[1]; i++ {
				do(i, line)
			}
		})
	}
	wait.Wait()
}

// each hands out the sums of the real and of the imaginary weights of every wave:
// those of real weights are conjugate at opposite waves.
func (g *waveGrid) each(waves []wave, do func(i int, re, im complex128)) {
	for i, w := range waves {
		at := g.cells[(w.n&(g.nv-1))*g.nu+w.m&(g.nu-1)]
		opposite := cmplx.Conj(g.cells[(-w.n&(g.nv-1))*g.nu+(-w.m)&(g.nu-1)])
		k := complex(1/(2*g.byM[max(w.m, -w.m)]*g.byN[w.n]), 0)
		do(i, (at+opposite)*k, (at-opposite)*k*complex(0, -1))
	}
}
