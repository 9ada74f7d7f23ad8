package pattern_test

import (
	"math"
	"math/rand/v2"
	"testing"

	"tsugime/repeat/geom"
	"tsugime/repeat/pattern"
)

func TestADropByAnyPartIsRecognisedAndKeptOnRespacing(t *testing.T) {
	random := rand.New(rand.NewPCG(8, 17))
	length := func() geom.Length { return geom.Length(1_000_000 + random.Int64N(9_000_000)) }
	for den := 2; den <= pattern.MaxParts; den++ {
		for num := 1; num < den; num++ {
			g := 1
			for d := 2; d <= num; d++ {
				if num%d == 0 && den%d == 0 {
					g = d
				}
			}
			drop, brick := pattern.HalfDropBy(length(), length(), num, den), pattern.BrickBy(length(), length(), num, den)
			for kind, l := range map[pattern.Kind]pattern.Lattice{pattern.HalfDropKind: drop, pattern.BrickKind: brick} {
				for _, l := range []pattern.Lattice{l, l.Respaced(length(), length())} {
					n, d, ok := l.Drop()
					if !ok || n != num/g || d != den/g || l.Kind() != kind {
						t.Fatalf("%s by %d/%d is taken for %s by %d/%d", kind, num, den, l.Kind(), n, d)
					}
				}
			}
			if !drop.Holds(geom.Point{X: drop.A.X * geom.Length(den)}) || !brick.Holds(geom.Point{Y: brick.B.Y * geom.Length(den)}) {
				t.Fatalf("by %d/%d: column or row %d is not level with the first", num, den, den)
			}
		}
	}
	if _, _, ok := pattern.Straight(length(), length()).Drop(); ok {
		t.Error("a straight lattice drops")
	}
}

// The six neighbours of a hexagonal lattice are as far apart as the error says.
func TestAHexagonalLatticeIsTheNearestOnTheGrid(t *testing.T) {
	random := rand.New(rand.NewPCG(9, 17))
	for range 500 {
		pitch := 2 * geom.Length(500_000+random.Int64N(9_000_000))
		l, off := pattern.Hexagonal(pitch)
		if math.Abs(off) > 0.5 || l.Kind() != pattern.HexagonalKind {
			t.Fatalf("%s: %s, off by %v nm", pitch, l.Kind(), off)
		}
		// A neighbour on the next row is √3/2 of the error nearer or farther.
		if got := l.B.Norm() - float64(pitch); math.Abs(got-off*math.Sqrt(3)/2) > 1e-3 {
			t.Fatalf("%s: a neighbour is off by %v nm, the rows by %v", pitch, got, off)
		}
	}
}
