package pattern_test

import (
	"math/rand/v2"
	"slices"
	"testing"

	"tsugime/repeat/geom"
	"tsugime/repeat/pattern"
)

func TestPlacesInLineWithTheFirstGoTheShorterWay(t *testing.T) {
	l := pattern.Straight(geom.MM(12), geom.MM(10))
	ways := l.InLine(pattern.Row, geom.PtMM(1, 2), geom.PtMM(5, 3), geom.PtMM(8, 9))
	// The copy of the third one row up stands at −1 mm: 3 mm down, not 7 mm up.
	if want := []geom.Point{{}, geom.PtMM(0, -1), geom.PtMM(0, 3)}; !slices.Equal(ways, want) {
		t.Errorf("in a row by %v, want %v", ways, want)
	}
	ways = l.InLine(pattern.Column, geom.PtMM(1, 2), geom.PtMM(5, 3), geom.PtMM(12.5, 9))
	if want := []geom.Point{{}, geom.PtMM(-4, 0), geom.PtMM(0.5, 0)}; !slices.Equal(ways, want) {
		t.Errorf("in a column by %v, want %v", ways, want)
	}
}

func TestSpreadPlacesFollowInEvenStepsOverTheJoint(t *testing.T) {
	l := pattern.Straight(geom.MM(12), geom.MM(10))
	ways := l.Spread(pattern.Row, geom.PtMM(1, 2), geom.PtMM(11, 3), geom.PtMM(3, 9))
	if want := []geom.Point{{}, geom.PtMM(-2, 0), geom.PtMM(2, 0)}; !slices.Equal(ways, want) {
		t.Errorf("spread by %v, want %v", ways, want)
	}
}

// On any lattice: the gaps along the line are equal, and who follows whom stays.
func TestSpreadLaws(t *testing.T) {
	random := rand.New(rand.NewPCG(31, 1))
	for range 500 {
		l := pattern.Lattice{
			A: geom.Point{X: geom.Length(5e6 + random.Int64N(9e6)), Y: geom.Length(random.Int64N(4e6))},
			B: geom.Point{X: geom.Length(-random.Int64N(4e6)), Y: geom.Length(5e6 + random.Int64N(9e6))},
		}
		var places []geom.Point
		for range 1 + random.IntN(7) {
			places = append(places, geom.Point{X: geom.Length(random.Int64N(4e7)), Y: geom.Length(random.Int64N(4e7))})
		}
		for _, x := range []pattern.Axis{pattern.Row, pattern.Column} {
			ways := l.Spread(x, places...)
			moved := slices.Clone(places)
			for i := range moved {
				moved[i] = places[i].Add(ways[i])
			}
			if len(places) > 0 && moved[0] != places[0] {
				t.Fatal("the first place moved")
			}
			for i, w := range l.Spread(x, moved...) {
				if w.Norm() > 4 {
					t.Fatalf("spread once more place %d of %d goes on by %v", i, len(places), w)
				}
			}
			lined := l.InLine(x, places...)
			for i := range lined {
				moved[i] = places[i].Add(lined[i])
			}
			for i, w := range l.InLine(x, moved...) {
				if w.Norm() > 4 {
					t.Fatalf("laid in line once more place %d goes on by %v", i, w)
				}
			}
		}
	}
}
