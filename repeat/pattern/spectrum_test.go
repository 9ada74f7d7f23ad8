package pattern

import (
	"context"
	"encoding/json"
	"math"
	"math/cmplx"
	"math/rand/v2"
	"os"
	"slices"
	"testing"

	"tsugime/repeat/geom"
	"tsugime/repeat/repeattest"
)

// numpyWaves is what testdata/waves.py prints: numpy's transforms.
type numpyWaves struct {
	Units []struct {
		A, B           [2]float64
		Discs, Squares [][3]float64
		Waves          [][4]float64
	}
	Line, FFT [][2]float64
}

func numpy(t *testing.T) (said numpyWaves) {
	t.Helper()
	data, err := os.ReadFile("testdata/waves.json")
	if err != nil {
		t.Fatal(err)
	}
	return readWaves(t, data)
}

// numpyNow is what numpy says here and now, from a coarser raster.
func numpyNow(t *testing.T) numpyWaves {
	t.Helper()
	return readWaves(t, []byte(repeattest.Tool(t, "python3-numpy", "/usr/bin/python3", "testdata/waves.py", "512")))
}

func readWaves(t *testing.T, data []byte) (said numpyWaves) {
	t.Helper()
	if err := json.Unmarshal(data, &said); err != nil || len(said.Units) == 0 {
		t.Fatal(err, len(said.Units))
	}
	return said
}

func wavesUpTo(t testing.TB, u Unit, finest float64) (map[[2]int]complex128, float64) {
	t.Helper()
	l := u.Lattice.Reduced()
	waves := wavesOf(l, finest)
	covered, err := fill(context.Background(), l, u.holes(), waves)
	if err != nil {
		t.Fatal(err)
	}
	got := map[[2]int]complex128{}
	for _, w := range waves {
		got[[2]int{w.m, w.n}], got[[2]int{-w.m, -w.n}] = w.share, cmplx.Conj(w.share)
	}
	return got, covered
}

// Overlaps, seams, skew cells, discs and squares: the raster of 2048² points, taken
// by numpy, is off by its own fineness; one of 512² four times as far and more.
func TestWavesAreThoseThatNumpyTakesFromARaster(t *testing.T) {
	sameWaves(t, numpy(t), 2e-4)
	sameWaves(t, numpyNow(t), 1.2e-3)
}

func sameWaves(t *testing.T, said numpyWaves, off float64) {
	t.Helper()
	for i, c := range said.Units {
		u := Unit{Lattice: Lattice{geom.PtMM(c.A[0], c.A[1]), geom.PtMM(c.B[0], c.B[1])}}
		for _, d := range c.Discs {
			u.Motifs = append(u.Motifs, Motif{Shape: geom.DiscShape(geom.Point{}, geom.MM(d[2])), At: geom.PtMM(d[0], d[1])})
		}
		for _, s := range c.Squares {
			u.Motifs = append(u.Motifs, Motif{Shape: square(s[2]), At: geom.PtMM(s[0], s[1])})
		}
		got, covered := wavesUpTo(t, u, 3)
		r := u.Lattice.Reduced()
		for _, w := range c.Waves {
			m, n := int(w[0]), int(w[1])
			want := complex(w[2], w[3])
			if m == 0 && n == 0 {
				if math.Abs(covered-w[2]) > off {
					t.Errorf("unit %d: covered %.5f, want %.5f", i, covered, w[2])
				}
				continue
			}
			// The wave makes as many cycles along the reduced vectors.
			x, y := frameOf(u.Lattice).wave(m, n)
			along := func(p geom.Point) int { return int(math.Round(x*float64(p.X) + y*float64(p.Y))) }
			if have := got[[2]int{along(r.A), along(r.B)}]; cmplx.Abs(have-want) > off {
				t.Errorf("unit %d, wave %d %d: %.5f, want %.5f", i, m, n, have, want)
			}
		}
	}
}

func square(side float64) geom.Shape {
	h := side / 2
	c := geom.Contour{Start: geom.PtMM(-h, -h)}
	for _, p := range [][2]float64{{h, -h}, {h, h}, {-h, h}} {
		c.Segments = append(c.Segments, geom.Segment{End: geom.PtMM(p[0], p[1])})
	}
	return geom.Shape{Outline: geom.Outline{c}}
}

func TestTheFastTransformIsThatOfNumpy(t *testing.T) {
	said := numpyNow(t)
	x := make([]complex128, len(said.Line))
	for i, p := range said.Line {
		x[i] = complex(p[0], p[1])
	}
	newFFT(len(x)).run(x)
	for i, p := range said.FFT {
		if cmplx.Abs(x[i]-complex(p[0], p[1])) > 1e-12 {
			t.Errorf("%d: %v, want %v", i, x[i], p)
		}
	}
}

// The first dark ring of a round opening is at 1.2197/d (Airy 1835).
func TestADiscsTransformIsTheAiryPattern(t *testing.T) {
	if dark := discTransform(2, 1.21967/2) / discTransform(2, 0); math.Abs(dark) > 1e-5 {
		t.Errorf("the first dark ring has %g", dark)
	}
	round := rimFigure{edges: [][4]float64{}}
	const n = 4000
	for i := range n {
		s, c := math.Sincos(2 * math.Pi * float64(i) / n)
		s2, c2 := math.Sincos(2 * math.Pi * float64(i+1) / n)
		round.edges = append(round.edges, [4]float64{c, s, c2, s2})
	}
	for _, k := range [][2]float64{{1e-4, 0}, {0.1, 0.2}, {1, -0.3}, {0, 4}} {
		want := complex(discTransform(2, math.Hypot(k[0], k[1])), 0)
		if got := round.transform(k[0], k[1]); cmplx.Abs(got-want) > 5e-6 {
			t.Errorf("%v: %v, want %v", k, got, want)
		}
	}
}

// jittered is a ground of discs of the given diameters, each off its place.
func jittered(random *rand.Rand, across, along int, diameters func() float64) Unit {
	u := Unit{Lattice: Straight(geom.MM(1.1*float64(across)), geom.MM(float64(along)))}
	for i := range across * along {
		at := geom.PtMM(1.1*float64(i%across)+0.1*random.Float64(), float64(i/across)+0.1*random.Float64())
		u.Motifs = append(u.Motifs, Motif{Shape: geom.DiscShape(geom.Point{}, geom.MM(diameters())), At: at})
	}
	return u
}

// Parseval: what is covered or not has Σ|c|² = covered, and beyond k the waves of an
// edge P long hold P/(2π²·k·cell).
func TestAllWavesTogetherHoldTheCoveredArea(t *testing.T) {
	u := jittered(rand.New(rand.NewPCG(1, 3)), 3, 2, func() float64 { return 0.6 })
	const finest = 40.0
	got, covered := wavesUpTo(t, u, finest)
	sum := covered * covered
	for _, c := range got {
		sum += real(c)*real(c) + imag(c)*imag(c)
	}
	rest := 6 * math.Pi * 0.6 / (2 * math.Pi * math.Pi * finest * u.Lattice.CellMM2())
	if math.Abs(sum+rest-covered) > 0.02*rest {
		t.Errorf("Σ|c|² = %.6f and %.6f beyond, covered %.6f", sum, rest, covered)
	}
}

func TestWavesMoveWithTheDrawingAndAddUp(t *testing.T) {
	random := rand.New(rand.NewPCG(2, 3))
	u := jittered(random, 6, 5, func() float64 { return 0.3 + 0.4*random.Float64() })
	moved, odd, even := u, u, u
	moved.Motifs, odd.Motifs, even.Motifs = slices.Clone(u.Motifs), nil, nil
	for i, m := range u.Motifs {
		moved.Motifs[i].At = m.At.Add(geom.PtMM(0.377, -12.1))
		if i%2 == 0 {
			even.Motifs = append(even.Motifs, m)
		} else {
			odd.Motifs = append(odd.Motifs, m)
		}
	}
	all, _ := wavesUpTo(t, u, 2)
	shifted, _ := wavesUpTo(t, moved, 2)
	a, _ := wavesUpTo(t, odd, 2)
	b, _ := wavesUpTo(t, even, 2)
	for k, c := range all {
		if math.Abs(cmplx.Abs(c)-cmplx.Abs(shifted[k])) > 1e-12 {
			t.Errorf("%v: %g becomes %g when all is moved", k, cmplx.Abs(c), cmplx.Abs(shifted[k]))
		}
		if cmplx.Abs(c-a[k]-b[k]) > 1e-12 {
			t.Errorf("%v: %v is not %v and %v", k, c, a[k], b[k])
		}
	}
}

// Many holes go through the grid; the sum wave by wave is the oracle.
func TestManyHolesHaveTheWavesOfTheSlowSum(t *testing.T) {
	for _, c := range []struct {
		name string
		off  float64
		size func(random *rand.Rand) float64
	}{
		{"one size", 1e-7, func(*rand.Rand) float64 { return 0.5 }},
		{"three sizes", 1e-7, func(r *rand.Rand) float64 { return 0.4 + 0.1*float64(r.IntN(3)) }},
		{"all near one", 1e-7, func(r *rand.Rand) float64 { return 0.5 + 0.02*r.Float64() }},
		{"all between", 2e-5, func(r *rand.Rand) float64 { return 0.35 + 0.3*r.Float64() }},
	} {
		random := rand.New(rand.NewPCG(3, 3))
		u := jittered(random, 31, 22, func() float64 { return c.size(random) })
		l, holes := u.Lattice.Reduced(), u.holes()
		fast := wavesOf(l, 1.4)
		slow := slices.Clone(fast)
		covered, err := fastSpectrum(context.Background(), l, holes, fast)
		if err != nil {
			t.Fatal(err)
		}
		want, err := fill(context.Background(), l, holes, slow)
		if err != nil || math.Abs(covered-want) > 1e-12 {
			t.Errorf("%s: covered %v, want %v (%v)", c.name, covered, want, err)
		}
		worst, order := 0.0, 0.0
		for i, w := range slow {
			worst = max(worst, cmplx.Abs(w.share-fast[i].share))
			order = max(order, math.Abs(w.order-fast[i].order))
		}
		t.Logf("%s: shares off by %.1e, orders by %.1e", c.name, worst, order)
		if worst > c.off || order > 1e-5 {
			t.Errorf("%s: shares are off by %g, orders by %g", c.name, worst, order)
		}
	}
}

// All sums of up to six times each wave, and the nearest of them, by trying.
func TestWaveLatticesHoldTheSumsOfTheirWaves(t *testing.T) {
	random := rand.New(rand.NewPCG(4, 3))
	f := frame{5, 1, -1, 6}
	for range 200 {
		var l waveLattice
		sums := map[[2]int]bool{{0, 0}: true}
		for range random.IntN(3) {
			m, n := random.IntN(9)-4, random.IntN(9)-4
			l = l.with(m, n)
			next := map[[2]int]bool{}
			for s := range sums {
				for k := -30; k <= 30; k++ {
					next[[2]int{s[0] + k*m, s[1] + k*n}] = true
				}
			}
			sums = next
		}
		for m := -4; m <= 4; m++ {
			for n := -4; n <= 4; n++ {
				if l.holds(m, n) != sums[[2]int{m, n}] {
					t.Fatalf("%+v holds %d %d: %t", l, m, n, l.holds(m, n))
				}
				least := math.Inf(1)
				for s := range sums {
					least = min(least, f.waveLength2(m-s[0], n-s[1]))
				}
				a, b := l.nearest(f, m, n)
				if got := f.waveLength2(a, b); !sums[[2]int{m - a, n - b}] && !l.holds(m-a, n-b) || got > least*(1+1e-9)+1e-12 {
					t.Fatalf("%+v: %d %d beats as %d %d, %g; the least is %g", l, m, n, a, b, got, least)
				}
			}
		}
	}
}

// Figures of the same formula in another language (Barten 2003, from memory).
func TestTheEyeIsMostSensitiveAtThreeCyclesADegree(t *testing.T) {
	perMM := 180 / math.Pi / StandBack.Distance.MM()
	for f, want := range map[float64]float64{1: 411, 3: 655, 10: 338, 30: 31} {
		if got := StandBack.sensitivity()(f * perMM); math.Abs(got-want) > 0.5 {
			t.Errorf("%g cycles a degree: %.1f, want %g", f, got, want)
		}
	}
}
