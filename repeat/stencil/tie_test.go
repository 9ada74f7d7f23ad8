package stencil

import (
	"fmt"
	"math"
	"testing"

	"tsugime/repeat/geom"
	"tsugime/repeat/pattern"
)

// unitOf returns outlines given as path data in millimetres, as motifs 1, 2, …
// of a unit.
func unitOf(t testing.TB, l pattern.Lattice, paths ...string) pattern.Unit {
	t.Helper()
	u := pattern.Unit{Lattice: l}
	for i, c := range drawn(t, paths...) {
		u.Motifs = append(u.Motifs, pattern.Motif{ID: pattern.ID(i + 1), Shape: c.Shape})
	}
	return u
}

// ring is a circle of cut-out around paper, as path data.
func ringPath(x, y, outer, inner float64) string {
	circle := func(r float64, sweep int) string {
		return fmt.Sprintf("M%g %gA%g %g 0 1 %d %g %gA%g %g 0 1 %d %g %gZ", x-r, y, r, r, sweep, x+r, y, r, r, sweep, x-r, y)
	}
	return circle(outer, 1) + circle(inner, 0)
}

func mustTie(t testing.TB, u pattern.Unit, ties ...Tie) pattern.Unit {
	t.Helper()
	tied, err := Tied(u, ties)
	if err != nil {
		t.Fatalf("tied: %v", err)
	}
	return tied
}

func TestTwoTiesPartARingAndTakeTheirArea(t *testing.T) {
	u := unitOf(t, pattern.Straight(geom.MM(20), geom.MM(20)), ringPath(3, 4, 6, 4))
	u.Motifs = append(u.Motifs, pattern.Motif{ID: 9, Shape: geom.DiscShape(geom.Point{}, geom.MM(1)), At: geom.PtMM(13, 13)})
	ties := []Tie{
		{Motif: 1, From: geom.PtMM(6.5, 4), To: geom.PtMM(9.5, 4), Width: geom.MM(1)},
		{Motif: 1, From: geom.PtMM(-3.5, 4), To: geom.PtMM(-0.5, 4), Width: geom.MM(1)},
	}
	tied := mustTie(t, u, ties...)
	if c := mustConnect(t, tied.CutOuts(), u.Lattice.A, u.Lattice.B); len(c.Islands)+len(c.Bands) != 0 {
		t.Errorf("tied: islands %v, bands %v; want none", c.Islands, c.Bands)
	}
	if n := len(tied.Motifs[0].Shape.Outline); len(tied.Motifs) != 2 || tied.Motifs[0].ID != 1 || n != 2 {
		t.Fatalf("%d motifs, the ring in %d contours; want 2, and 2", len(tied.Motifs), n)
	}
	if tied.Motifs[1].Shape.Disc != u.Motifs[1].Shape.Disc || !tied.Motifs[1].Shape.Round() {
		t.Errorf("the dot beside the ties became %v; want it untouched", tied.Motifs[1])
	}
	// Between two circles of radius R, a strip of half width h takes the
	// integral of √(R²−y²) over −h … h, of the outer less the inner.
	within := func(r, h float64) float64 { return h*math.Sqrt(r*r-h*h) + r*r*math.Asin(h/r) }
	want := math.Pi*(36-16) - 2*(within(6, .5)-within(4, .5))
	if got := tied.Motifs[0].Placed().AreaMM2(); math.Abs(got-want) > 2*math.Pi*10*geom.Chord.MM() {
		t.Errorf("the tied ring has %.6f mm2, want %.6f", got, want)
	}
}
