package stencil

import (
	"context"
	"math"
	"math/rand/v2"
	"strings"
	"testing"

	"tsugime/repeat/geom"
	"tsugime/repeat/pattern"
)

// wavyOutline is one outline of n corners that waves around a circle.
func wavyOutline(n int) pattern.Unit {
	ps := make([]geom.Point, n)
	for i := range ps {
		sin, cos := math.Sincos(2 * math.Pi * float64(i) / float64(n))
		r := 60 * (1 + 0.1*math.Sin(2*math.Pi*float64(40*i)/float64(n)))
		ps[i] = geom.PtMM(r*cos, r*sin)
	}
	shape := geom.Shape{Outline: geom.Outline{lines(ps...)}}
	return pattern.Unit{Lattice: pattern.Straight(geom.MM(180), geom.MM(180)), Motifs: []pattern.Motif{{ID: 1, Shape: shape, At: geom.PtMM(90, 90)}}}
}

func BenchmarkFlawsOfAnOutlineOfAMillionCorners(b *testing.B) {
	u := wavyOutline(1_000_000)
	for b.Loop() {
		Flaws(u)
	}
}

func BenchmarkCutOfAnOutlineOf20000Corners(b *testing.B) {
	u := wavyOutline(20_000)
	for b.Loop() {
		mustCut(b, u, Field{Left: geom.MM(5), Width: geom.MM(185)}, geom.MM(180), Hold{Way: AsDrawn})
	}
}

// A drawing of a million corners is refused by name before anything is measured.
func TestAnOutlineOfAMillionCornersIsRefused(t *testing.T) {
	_, err := Cut(context.Background(), wavyOutline(1_000_000), Spec{Step: geom.MM(180), Field: Field{Width: geom.MM(180)}}, geom.MM(200))
	if err == nil || !strings.Contains(err.Error(), "motif 1 at 90, 90 mm is drawn in more than 50000 pieces; draw it plainer") {
		t.Errorf("got %v", err)
	}
}

func BenchmarkFlawsOf60000Discs(b *testing.B) {
	rnd := rand.New(rand.NewPCG(6, 0))
	u := pattern.Unit{Lattice: pattern.Straight(geom.MM(250), geom.MM(240))}
	for i := range 60_000 {
		u.Motifs = append(u.Motifs, pattern.Motif{ID: pattern.ID(i + 1), Shape: disc(0, 0, 0.5), At: geom.PtMM(250*rnd.Float64(), 240*rnd.Float64())})
	}
	for b.Loop() {
		if f := Flaws(u); f != nil {
			b.Fatal(f)
		}
	}
}
