package stencil

import (
	"math"
	"testing"

	"tsugime/repeat/geom"
	"tsugime/repeat/pattern"
)

// 400 N/m on 0.2 mm are 2 N/mm², a thousandth of the paper's modulus; half as stiff
// a sheet gives twice as much.
func TestASheetStretchesByPullOverStiffness(t *testing.T) {
	for modulus, want := range map[float64]float64{1: 1e-3, 0.5: 2e-3, 0: math.Inf(1)} {
		if got := (Pull{Modulus: modulus}).Stretch(400, geom.MM(0.2)); got != want && !near(got, want, 1e-12) {
			t.Errorf("modulus %g: %g, want %g", modulus, got, want)
		}
	}
}

// A quarter turn changes across for along; a mirror turns the skew round.
func TestAQuarterTurnAndAMirrorTurnTheStiffness(t *testing.T) {
	l := pattern.Straight(geom.MM(6), geom.MM(6))
	slit := outline(t, "M1 1L4 3L3.6 3.6L.6 1.6Z")
	as := mustStiffen(t, cutOuts(slit), l, 64)
	turned := mustStiffen(t, cutOuts(slit.Placed(geom.Rotate(90))), l, 64)
	mirror := mustStiffen(t, cutOuts(slit.Placed(geom.Scale(-1, 1))), l, 64)
	if !near(turned.Across.Modulus, as.Along.Modulus, 1e-4) || !near(turned.Along.Modulus, as.Across.Modulus, 1e-4) || !near(turned.Shear, as.Shear, 1e-4) {
		t.Errorf("turned %+v, was %+v", turned, as)
	}
	if !near(mirror.Across.Modulus, as.Across.Modulus, 1e-4) || !near(mirror.Along.Skew, -as.Along.Skew, 1e-4) || math.Abs(as.Along.Skew) < 1e-3 {
		t.Errorf("mirrored %+v, was %+v", mirror, as)
	}
}

// Few small round holes take three times their share of the stiffness (the dilute
// limit of plane elasticity; from memory).
func TestAFewHolesTakeThreeTimesTheirShare(t *testing.T) {
	const d = 1.128379 // 1 % of the cell
	s := mustStiffen(t, dots(d, geom.Point{}), pattern.Straight(geom.MM(10), geom.MM(10)), ReportMesh)
	if slope := (1 - s.Across.Modulus) / 0.01; slope < 2.8 || slope > 3 {
		t.Errorf("slope %.3f", slope)
	}
}

// How stiff a sheet with holes is does not depend on the paper's Poisson's ratio
// (Cherkaev, Lurie and Milton, 1992).
func TestTheModulusDoesNotDependOnThePapersPoissonsRatio(t *testing.T) {
	m := meshedCell(pattern.Straight(geom.MM(2), geom.MM(2)), LiveMesh)
	share, err := m.paper(dots(1.2, geom.Point{}))
	if err != nil {
		t.Fatal(err)
	}
	var first float64
	for _, nu := range []float64{0, 0.3, 0.45} {
		c, err := m.homogenise(t.Context(), share, nu)
		if err != nil {
			t.Fatal(err)
		}
		e := stiffnessOf(c, nu).Across.Modulus
		if first == 0 {
			first = e
		}
		if !near(e, first, 2e-3*first) {
			t.Errorf("ν %.2f: %.5f, at 0 %.5f", nu, e, first)
		}
	}
}
