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
