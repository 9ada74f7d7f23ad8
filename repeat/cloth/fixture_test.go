package cloth

import (
	"math"
	"testing"

	"tsugime/repeat/geom"
	"tsugime/repeat/pattern"
)

// coat is a bolt of fine dots: 375 mm by 12.6 m of cotton that shrinks by three
// percent along and one across, on a board of 6.4 m.
var (
	coatBolt  = Bolt{Width: 375 * geom.Millimetre, Length: 12_600 * geom.Millimetre, ChangeAcross: -0.01, ChangeAlong: -0.03}
	coatBoard = Board{Length: 6_400 * geom.Millimetre, Turn: 40 * geom.Millimetre, Start: 30 * geom.Millimetre}
	// design is the register for which the walk of a bolt is known by hand.
	design = Register{
		Way: StarToStar, StarError: 100 * geom.Micrometre,
		Baseline: 340 * geom.Millimetre, Width: 356 * geom.Millimetre,
	}
	sixSun = geom.MM(181.818182)
)

// within fails unless got is within tol of want.
func within(t *testing.T, what string, got, want, tol float64) {
	t.Helper()
	if !(math.Abs(got-want) <= tol) {
		t.Errorf("%s: got %.6g, want %.6g ± %.2g", what, got, want, tol)
	}
}

func mustLay(t testing.TB, bolt Bolt, board Board, reg Register, step geom.Length) Run {
	t.Helper()
	run, err := Lay(bolt, board, reg, step)
	if err != nil {
		t.Fatal(err)
	}
	return run
}

func mustDress(t testing.TB, bolt Bolt, run Run, l pattern.Lattice, cm float64, match bool) Dressed {
	t.Helper()
	d, err := Dress(bolt, run, l, Body{WomensKimono, geom.MM(10 * cm)}, match, 500*geom.Micrometre)
	if err != nil {
		t.Fatal(err)
	}
	return d
}
