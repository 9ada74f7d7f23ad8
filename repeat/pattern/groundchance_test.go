package pattern_test

import (
	"math"
	"math/rand/v2"
	"runtime"
	"slices"
	"testing"

	"tsugime/repeat/geom"
	"tsugime/repeat/pattern"
)

// nearest returns the distance of each motif to the nearest other place of the
// pattern, in mm: those within edge of the cell's border, and the rest.
func nearest(u pattern.Unit, edge float64) (atBorder, inside []float64) {
	w, h := u.Lattice.A.X.MM(), u.Lattice.B.Y.MM()
	for i, a := range u.Motifs {
		least := math.Inf(1)
		for j, b := range u.Motifs {
			if i != j {
				dx := math.Remainder(a.At.X.MM()-b.At.X.MM(), w)
				dy := math.Remainder(a.At.Y.MM()-b.At.Y.MM(), h)
				least = math.Min(least, math.Hypot(dx, dy))
			}
		}
		x, y := a.At.X.MM(), a.At.Y.MM()
		if min(x, w-x, y, h-y) < edge {
			atBorder = append(atBorder, least)
		} else {
			inside = append(inside, least)
		}
	}
	return atBorder, inside
}

func meanAndSpread(v []float64) (mean, spread float64) {
	for _, x := range v {
		mean += x / float64(len(v))
	}
	for _, x := range v {
		spread += (x - mean) * (x - mean) / float64(len(v)-1)
	}
	return mean, math.Sqrt(spread)
}

// A seam would show as dots that stand closer or farther apart at the border of
// the patch. The two means may differ by four standard errors.
func TestScatteredDotsAreAsFarApartAtTheJointAsInside(t *testing.T) {
	for _, name := range []string{"scattered-dots", "scattered-two-sizes"} {
		var atBorder, inside []float64
		for seed := range uint64(8) {
			u := grown(t, pattern.Recipe{Ground: name, Seed: seed}, geom.MM(45), geom.MM(45))
			b, i := nearest(u, 2.4)
			atBorder, inside = append(atBorder, b...), append(inside, i...)
		}
		m0, s0 := meanAndSpread(atBorder)
		m1, s1 := meanAndSpread(inside)
		standard := math.Hypot(s0/math.Sqrt(float64(len(atBorder))), s1/math.Sqrt(float64(len(inside))))
		if math.Abs(m0-m1) > 4*standard {
			t.Errorf("%s: at the border %.4f mm, inside %.4f mm, standard error %.4f mm", name, m0, m1, standard)
		}
		t.Logf("%s: %d at the border: %.4f ± %.4f mm; %d inside: %.4f ± %.4f mm", name, len(atBorder), m0, s0, len(inside), m1, s1)
	}
}

// The strips that are worked on at once follow from the patch, not from the cores.
func TestScatteredDotsAreTheSameOnAnyNumberOfCores(t *testing.T) {
	for _, r := range []pattern.Recipe{
		{Ground: "scattered-dots", Seed: 3, Values: map[string]float64{"patch": 90}, Width: geom.MM(90)},
		{Ground: "scattered-two-sizes", Seed: 4, Values: map[string]float64{"patch": 90}, Width: geom.MM(90)},
	} {
		many := grown(t, r, geom.MM(90), geom.MM(90))
		before := runtime.GOMAXPROCS(1)
		one := grown(t, r, geom.MM(90), geom.MM(90))
		runtime.GOMAXPROCS(before)
		for i, m := range many.Motifs {
			if m.At != one.Motifs[i].At || m.Shape.Disc != one.Motifs[i].Shape.Disc {
				t.Fatalf("%s: dot %d is at %v on one core, at %v on %d", r.Ground, i, one.Motifs[i].At, m.At, before)
			}
		}
	}
}

// Each two keep the paper that their sizes and the crowding leave, by the plainest
// of ways: all pairs.
func TestScatteredDotsKeepTheirPaper(t *testing.T) {
	for _, r := range []pattern.Recipe{
		{Ground: "scattered-dots", Values: map[string]float64{"dot": 1.7}},
		{Ground: "scattered-two-sizes"},
		{Ground: "scattered-two-sizes", Values: map[string]float64{"large": 2.6, "dot": 0.3, "share": 10}},
	} {
		u := grown(t, r, geom.MM(45), geom.MM(45))
		n, sum, squares, widest := float64(len(u.Motifs)), 0.0, 0.0, 0.0
		for _, m := range u.Motifs {
			d := m.Shape.Disc.Diameter.MM()
			sum, squares, widest = sum+d, squares+d*d, max(widest, d)
		}
		// Σ π/4·(d + gap)² = 0.52 of the area
		want := (math.Sqrt(sum*sum-n*(squares-0.52*45*45*4/math.Pi)) - sum) / n
		least := math.Inf(1)
		for i, a := range u.Motifs {
			for _, b := range u.Motifs[:i] {
				far := math.Hypot(math.Remainder(a.At.X.MM()-b.At.X.MM(), 45), math.Remainder(a.At.Y.MM()-b.At.Y.MM(), 45))
				least = min(least, far-(a.Shape.Disc.Diameter+b.Shape.Disc.Diameter).MM()/2)
			}
		}
		if least < want-2e-6 || least > want+0.03*(widest+want) {
			t.Errorf("%s %v: %.6f mm of paper, want %.6f mm", r.Ground, r.Values, least, want)
		}
	}
}

// powerWithin returns the mean power of the waves of from to to cycles across the
// cell: 1 for places by pure chance, whatever their number.
func powerWithin(u pattern.Unit, from, to float64) float64 {
	w, h := u.Lattice.A.X.MM(), u.Lattice.B.Y.MM()
	var sum, n float64
	for kx := -int(to); kx <= int(to); kx++ {
		for ky := 0; ky <= int(to); ky++ {
			if k := math.Hypot(float64(kx), float64(ky)); k < from || k > to {
				continue
			}
			var re, im float64
			for _, m := range u.Motifs {
				s, c := math.Sincos(2 * math.Pi * (float64(kx)*m.At.X.MM()/w + float64(ky)*m.At.Y.MM()/h))
				re, im = re+c, im+s
			}
			sum += (re*re + im*im) / float64(len(u.Motifs))
			n++
		}
	}
	return sum / n
}

// darts throws n places onto a square of the given side, each at least apart from
// all before it as the square wraps around: Poisson discs in the plainest way.
func darts(n int, side, apart float64, random *rand.Rand) pattern.Unit {
	u := pattern.Unit{Lattice: pattern.Straight(geom.MM(side), geom.MM(side))}
	var x, y []float64
throw:
	for len(x) < n {
		px, py := random.Float64()*side, random.Float64()*side
		for i := range x {
			if math.Hypot(math.Remainder(px-x[i], side), math.Remainder(py-y[i], side)) < apart {
				continue throw
			}
		}
		x, y = append(x, px), append(y, py)
		u.Motifs = append(u.Motifs, pattern.Motif{At: geom.PtMM(px, py)})
	}
	return u
}

// The three parts of the radial spectrum of blue noise (Ulichney 1988 describes
// them, from memory): little power far below the main frequency, the root of the
// number of dots; a peak there; that of pure chance far above. The measure is a
// dart thrower with as many discs, 4 % smaller so that all find room, which knows nothing of how the
// ground is made; discs thrown until none fits have a power of 0.059 at the lowest
// frequencies (Zhang and Torquato 2013, from memory). Pushed dots lie a little
// looser than darts: half way to the main frequency they have 1.7 times the power
// (measured). The bounds keep it from getting worse.
func TestScatteredDotsHaveTheSpectrumOfThrownDarts(t *testing.T) {
	const side, seeds = 30.0, 8
	bands := []struct {
		from, to    float64 // of the main frequency
		least, most float64 // times the power of darts
	}{
		{0.01, 0.25, 0, 1.5},
		{0.25, 0.5, 0, 2},
		{0.9, 1.2, 0.85, 1.15},
		{2.5, 3, 0.9, 1.1},
	}
	got, want := make([]float64, len(bands)), make([]float64, len(bands))
	random := rand.New(rand.NewPCG(5, 7))
	for seed := range uint64(seeds) {
		r := pattern.Recipe{Ground: "scattered-dots", Seed: seed, Values: map[string]float64{"patch": side}}
		u := grown(t, r, geom.MM(side), geom.MM(side))
		n := len(u.Motifs)
		all, _ := nearest(u, side)
		thrown := darts(n, side, 0.96*slices.Min(all), random)
		main := math.Sqrt(float64(n))
		for i, b := range bands {
			got[i] += powerWithin(u, b.from*main, b.to*main) / seeds
			want[i] += powerWithin(thrown, b.from*main, b.to*main) / seeds
		}
	}
	for i, b := range bands {
		t.Logf("from %g to %g of the main frequency: power %.4f, of darts %.4f", b.from, b.to, got[i], want[i])
		if got[i] < b.least*want[i] || got[i] > b.most*want[i] {
			t.Errorf("want %g to %g times that of darts", b.least, b.most)
		}
	}
}

// All dots as one patch, 63,245 of them.
func BenchmarkScatteredDotsOnePatch(b *testing.B) {
	onePatch(b, pattern.Recipe{Ground: "scattered-dots", Values: map[string]float64{"pitch": 1.01, "dot": 0.4, "patch": 254}})
}

func BenchmarkScatteredTwoSizesOnePatch(b *testing.B) {
	onePatch(b, pattern.Recipe{Ground: "scattered-two-sizes", Values: map[string]float64{"pitch": 1.01, "dot": 0.3, "large": 0.6, "patch": 254}})
}

func onePatch(b *testing.B, r pattern.Recipe) {
	r.Width = geom.MM(254)
	for b.Loop() {
		u, err := r.Unit(geom.MM(254))
		if err != nil {
			b.Fatal(err)
		}
		b.ReportMetric(float64(len(u.Motifs)), "dots")
	}
}
