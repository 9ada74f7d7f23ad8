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
	d, err := Dress(bolt, run, l, Garment{Body: Body{Kind: WomensKimono, Height: geom.MM(10 * cm)}, MatchBackCentre: match}, 500*geom.Micrometre)
	if err != nil {
		t.Fatal(err)
	}
	return d
}

// The women's kimono's panels, in the order in which its form has them.
const (
	leftSleeve = iota
	rightSleeve
	leftBody
	rightBody
	leftOverlap
	rightOverlap
	collarPanel
	overCollar
	panelCount
)

// bu returns n tenths of a kujira sun, the cloth ruler's 25/6600 m.
func bu(n float64) geom.Length { return geom.MM(n * 250 / 66) }

// mustCut returns the sizes of a women's kimono from wide cloth.
func mustCut(t testing.TB, cm float64) cut {
	t.Helper()
	c, err := cutFor(Body{Kind: WomensKimono, Height: geom.MM(10 * cm)}, 420*geom.Millimetre)
	if err != nil {
		t.Fatal(err)
	}
	return c
}

// length returns the size that a name stands for.
func (c cut) length(t testing.TB, name string) geom.Length {
	t.Helper()
	l, ok := c.values[name].(length)
	if !ok {
		t.Fatalf("there is no length %q", name)
	}
	return l.nm
}

func inOrder(n int) []int {
	order := make([]int, n)
	for i := range order {
		order[i] = i
	}
	return order
}
