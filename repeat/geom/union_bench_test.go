package geom

import (
	"math"
	"math/rand/v2"
	"testing"
)

// polygon returns n corners on a circle.
func polygon(x, y, radius float64, n int) Ring {
	r := make(Ring, n)
	for i := range r {
		s, c := math.Sincos(2 * math.Pi * (float64(i) + 0.13) / float64(n))
		r[i] = PtMM(x+radius*c, y+radius*s)
	}
	return r
}

// manyDots is 60,000 discs of 32 corners on 400 × 150 mm, 5 in a hundred over
// another.
func manyDots() [][]Ring {
	rng := rand.New(rand.NewPCG(1, 60_000))
	var shapes [][]Ring
	for y := range 150 {
		for x := range 400 {
			radius := 0.2 + 0.2*rng.Float64()
			if rng.IntN(40) == 0 {
				radius = 0.62
			}
			px, py := float64(x)+0.5+0.1*rng.Float64(), float64(y)+0.5+0.1*rng.Float64()
			shapes = append(shapes, []Ring{polygon(px, py, radius, 32)})
		}
	}
	return shapes
}

// manyPetals is 2,000 wavy motifs of n points each, a few of which meet.
func manyPetals(n int) [][]Ring {
	rng := rand.New(rand.NewPCG(2, 2000))
	var shapes [][]Ring
	for k := range 2000 {
		x, y := float64(k%50)*8+rng.Float64(), float64(k/50)*3.75+rng.Float64()
		waves, phase := float64(3+rng.IntN(6)), 7*rng.Float64()
		r := make(Ring, n)
		for i := range r {
			a := 2 * math.Pi * float64(i) / float64(n)
			s, c := math.Sincos(a)
			d := 1.3 + 0.3*math.Cos(waves*a+phase)
			r[i] = PtMM(x+d*c, y+d*s)
		}
		shapes = append(shapes, []Ring{r})
	}
	return shapes
}

// manyStrokes is chains of strokes that all run over each other.
func manyStrokes() [][]Ring {
	rng := rand.New(rand.NewPCG(3, 3))
	var shapes [][]Ring
	for range 260 {
		x, y := 400*rng.Float64(), 150*rng.Float64()
		turn := 7 * rng.Float64()
		var at []Point
		for range 40 {
			at = append(at, PtMM(x, y))
			turn += rng.Float64() - 0.5
			x, y = x+3*math.Cos(turn), y+3*math.Sin(turn)
		}
		shapes = append(shapes, stroke(1, at...)...)
	}
	return shapes
}

func BenchmarkUnion(b *testing.B) {
	for _, c := range []struct {
		name   string
		shapes [][]Ring
	}{
		{"60000 dots", manyDots()},
		{"2000 petals of 40", manyPetals(40)},
		{"2000 petals of 320", manyPetals(320)},
		{"strokes", manyStrokes()},
	} {
		b.Run(c.name, func(b *testing.B) {
			var r Region
			for b.Loop() {
				r = mustUnion(b, c.shapes, PtMM(400, 0), PtMM(0, 150))
			}
			b.ReportMetric(r.AreaMM2(), "mm2")
			b.ReportMetric(float64(len(r.Boundaries)), "lines")
		})
	}
}

func BenchmarkLoose(b *testing.B) {
	for _, c := range []struct {
		name   string
		shapes [][]Ring
	}{{"60000 dots", manyDots()}, {"strokes", manyStrokes()}} {
		r := mustUnion(b, c.shapes, PtMM(400, 0), PtMM(0, 150))
		b.Run(c.name, func(b *testing.B) {
			var faces []Face
			for b.Loop() {
				faces = r.Loose()
			}
			b.ReportMetric(float64(len(faces)), "faces")
		})
	}
}
