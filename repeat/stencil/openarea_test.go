package stencil

import (
	"math"
	"testing"

	"tsugime/repeat/geom"
	"tsugime/repeat/pattern"
)

// dots returns discs of one diameter, in millimetres, as cut-outs.
func dots(diameter float64, at ...geom.Point) []pattern.CutOut {
	cuts := make([]pattern.CutOut, len(at))
	for i, p := range at {
		cuts[i] = pattern.CutOut{Shape: geom.DiscShape(p, geom.MM(diameter)), Motif: pattern.ID(i + 1)}
	}
	return cuts
}

// The open fractions of perforated plate: round holes in staggered rows at 60°
// (R T) 0.906900·D²/P², in staggered rows at 45° (R M) and in square rows (R U)
// 0.785398·D²/P², as in the tables that go with ISO 7806 (π/(2√3) and π/4).
func TestOpenAreaIsThatOfPerforatedPlate(t *testing.T) {
	const d, p = 1.0, 2.5
	half := p / math.Sqrt2
	for _, c := range []struct {
		name     string
		lattice  pattern.Lattice
		fraction float64
	}{
		{"R T, columns half dropped", pattern.HalfDrop(geom.MM(p*math.Sqrt(3)/2), geom.MM(p)), 0.906900},
		{"R T, rows shifted", pattern.Brick(geom.MM(p), geom.MM(p*math.Sqrt(3)/2)), 0.906900},
		{"R U", pattern.Straight(geom.MM(p), geom.MM(p)), 0.785398},
		{"R M", pattern.Diagonal(geom.MM(half), geom.MM(half)), 0.785398},
	} {
		got, err := OpenAreaPct(dots(d, geom.Point{}), c.lattice.A, c.lattice.B)
		if want := 100 * c.fraction * d * d / (p * p); err != nil || math.Abs(got-want) > 1e-4 {
			t.Errorf("%s: open %.6f %%, want %.6f %% (%v)", c.name, got, want, err)
		}
	}
}

func mustOpen(t *testing.T, cuts []pattern.CutOut, a, b geom.Point) float64 {
	t.Helper()
	pct, err := OpenAreaPct(cuts, a, b)
	if err != nil {
		t.Fatalf("open area: %v", err)
	}
	return pct
}

// On a cell of 100 mm² a percent is a square millimetre.
func TestOpenAreaCountsWhatCutOutsShareOnce(t *testing.T) {
	a, b := geom.PtMM(20, 0), geom.PtMM(10, 5)
	wide, deep := geom.PtMM(20, 0), geom.PtMM(3, 20)
	for _, c := range []struct {
		name  string
		cuts  []pattern.CutOut
		a, b  geom.Point
		want  float64 // mm²
		slack float64
	}{
		{"nothing", nil, a, b, 0, 0},
		{"a dot", dots(2, geom.Point{}), a, b, math.Pi, 1e-9},
		{"a dot twice", dots(2, geom.Point{}, geom.Point{}), a, b, math.Pi, 1e-9},
		{"a dot and its copy two cells on", dots(2, geom.Point{}, geom.PtMM(30, 5)), a, b, math.Pi, 1e-9},
		{"a bow-tie", drawn(t, "M0 0L4 4V0L0 4Z"), wide, deep, 8, 1e-9},
		{"a square over itself", drawn(t, "M0 0H30V2H0Z"), wide, deep, 40, 1e-9},
		{"everything", drawn(t, "M0 0H40V60H0Z"), wide, deep, 400, 1e-9},
		// Lens of two discs of radius 5, 6 apart: 22.364760900 (closed form).
		{"two discs", dots(10, geom.PtMM(0, 0), geom.PtMM(6, 0)), wide, deep, 50*math.Pi - 22.364760900, 1e-8},
		{"two discs over the seam", dots(10, geom.PtMM(-3, 0), geom.PtMM(26, 20)), wide, deep, 50*math.Pi - 22.364760900, 1e-8},
		{"a slot with round ends", drawn(t, "M-4 -1H4A1 1 0 0 1 4 1H-4A1 1 0 0 1 -4 -1Z"), wide, deep, 19.141592654, 1e-8},
		{"the slot from three pieces", append(drawn(t, "M-4 -1H4V1H-4Z"), dots(2, geom.PtMM(-4, 0), geom.PtMM(4, 0))...), wide, deep, 19.141592654, 1e-4},
		{"an annulus", drawn(t, "M5 0A5 5 0 0 1 -5 0A5 5 0 0 1 5 0ZM3 0A3 3 0 0 0 -3 0A3 3 0 0 0 3 0Z"), wide, deep, 16 * math.Pi, 1e-6},
	} {
		cell := pattern.Lattice{A: c.a, B: c.b}.CellMM2()
		if got := mustOpen(t, c.cuts, c.a, c.b) * cell / 100; math.Abs(got-c.want) > c.slack {
			t.Errorf("%s: %.9f mm2, want %.9f ± %.3g", c.name, got, c.want, c.slack)
		}
	}
}

func TestOpenAreaOfThreeDiscsOverOneAnother(t *testing.T) {
	// Three discs of radius r whose centres are r apart: the area is
	// r²·(3π/2 + √3/2), by inclusion and exclusion with the Reuleaux triangle
	// r²·(π − √3)/2 as what all three share.
	const r = 4.0
	cuts := dots(2*r, geom.PtMM(0, 0), geom.PtMM(r, 0), geom.PtMM(r/2, r*math.Sqrt(3)/2))
	lens := r * r * (2*math.Pi/3 - math.Sqrt(3)/2)
	want := 3*math.Pi*r*r - 3*lens + r*r*(math.Pi-math.Sqrt(3))/2
	got := mustOpen(t, cuts, geom.PtMM(20, 0), geom.PtMM(0, 20)) * 4
	if math.Abs(got-want) > 2e-4 {
		t.Errorf("%.6f mm2, want %.6f", got, want)
	}
}

func TestOpenAreaNeedsTwoPeriods(t *testing.T) {
	for _, periods := range [][]geom.Point{nil, {geom.PtMM(1, 0)}, {geom.PtMM(1, 0), geom.PtMM(2, 0)}} {
		if pct, err := OpenAreaPct(nil, periods...); err == nil {
			t.Errorf("periods %v: %g %% and no error", periods, pct)
		}
	}
}
