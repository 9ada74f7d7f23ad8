package stencil

import (
	"math"
	"testing"

	"tsugime/repeat/geom"
	"tsugime/repeat/pattern"
)

func TestATieThatCrossesNothingIsTold(t *testing.T) {
	u := unitOf(t, pattern.Straight(geom.MM(20), geom.MM(20)), rectPath(2, 2, 12, 12)+"M5 5v6h6v-6Z")
	w := geom.MM(1)
	for _, c := range []struct {
		name              string
		tie               Tie
		crossed, lost     float64
		from, to, bridges bool
		holds             int // ties of the island
	}{
		{"across the ring", Tie{1, geom.PtMM(1, 8), geom.PtMM(6, 8), w}, 3, 3, true, true, true, 1},
		{"in a copy of the cell", Tie{1, geom.PtMM(21, 28), geom.PtMM(26, 28), w}, 3, 3, true, true, true, 1},
		{"right across the island", Tie{1, geom.PtMM(1, 8), geom.PtMM(15, 8), w}, 6, 6, true, true, true, 0},
		{"in paper only", Tie{1, geom.PtMM(16, 16), geom.PtMM(19, 19), w}, 0, 0, true, true, false, 0},
		{"ending in the cut-out", Tie{1, geom.PtMM(1, 8), geom.PtMM(4, 8), w}, 2, 2, true, false, false, 0},
	} {
		report, err := MeasureTies(u, []Tie{c.tie})
		if err != nil {
			t.Fatalf("%s: %v", c.name, err)
		}
		m := report.Ties[0]
		if math.Abs(m.Crossed.MM()-c.crossed) > 1e-4 || math.Abs(m.LostMM2-c.lost) > 1e-4 ||
			m.FromPaper != c.from || m.ToPaper != c.to || m.Bridges() != c.bridges || m.Idle() != (c.crossed == 0) {
			t.Errorf("%s: %+v", c.name, m)
		}
		if len(report.Islands) != 1 || len(report.Islands[0].Ties) != c.holds || !report.Islands[0].Hinges(2) {
			t.Errorf("%s: islands %+v; want one with %d ties", c.name, report.Islands, c.holds)
		}
	}
}

func TestAMirroredDesignIsHeldAlike(t *testing.T) {
	u := wavyRings(3, 5)
	mirrored := pattern.Unit{Lattice: u.Lattice}
	for _, m := range u.Motifs {
		m.Shape, m.At, m.TurnDeg = m.Placed().Placed(geom.Scale(-1, 1)), geom.Point{}, 0
		mirrored.Motifs = append(mirrored.Motifs, m)
	}
	lost := func(u pattern.Unit) (n int, sum float64) {
		ties := mustPropose(t, u, 0.4, 2)
		report, err := MeasureTies(u, ties)
		if err != nil {
			t.Fatal(err)
		}
		for _, m := range report.Ties {
			sum += m.LostMM2
		}
		for _, p := range report.Islands {
			if p.Hinges(2) || len(p.Ties) == 2 && p.SpreadDeg < 90 {
				t.Errorf("the island at %v has ties %v, %.0f degrees apart", p.At, p.Ties, p.SpreadDeg)
			}
		}
		return len(ties), sum
	}
	n, a := lost(u)
	k, b := lost(mirrored)
	if n != k || math.Abs(a-b) > 0.02*a {
		t.Errorf("%d ties take %.4f mm2, mirrored %d take %.4f", n, a, k, b)
	}
}
