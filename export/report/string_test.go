package report

import (
	"math"
	"math/rand/v2"
	"slices"
	"testing"

	"tsugime/repeat/geom"
)

// TestStringHolesAreClearOfStarsAndCuts measures every hole against every cut,
// star and edge by hand.
func TestStringHolesAreClearOfStarsAndCuts(t *testing.T) {
	sheets := map[string]setSheet{
		"dots": sheetsOf(built(t, dotOrder(t, 3, 1)))[0],
	}
	long := dotOrder(t, 5, 2)
	long.Sheet.Paper.Width, long.Sheet.Paper.Height = geom.MM(520), geom.MM(400)
	sheets["wide paper"] = sheetsOf(built(t, long))[0]
	for name, s := range sheets {
		b := bind(s)
		if len(b.bare) != 0 || len(b.places) != 8 {
			t.Errorf("%s: %d holes, bare sides %v; want 8 and none", name, len(b.places), b.bare)
		}
		for i, p := range b.places {
			for _, star := range s.Stars.Stars {
				if off := (p.at.Y - star.At.Y).Abs() - stringHole/2; off < 5*geom.Millimetre {
					t.Errorf("%s: hole %d is %s mm from the star line at %s", name, i+1, off, star.At.Y)
				}
			}
			clear := clearByHand(s, p.at)
			if clear < 10 {
				t.Errorf("%s: hole %d is %.3f mm from a cut, want 10", name, i+1, clear)
			}
			if got := p.clear.MM(); math.Abs(got-min(clear, 100-stringHole.MM()/2)) > 1e-5 {
				t.Errorf("%s: hole %d: clear %.6f mm, by hand %.6f", name, i+1, got, clear)
			}
			if !s.Paper.Grown(-7 * geom.Millimetre).Holds(p.at) {
				t.Errorf("%s: hole %d at %v is within 7 mm of the edge of %v", name, i+1, p.at, s.Paper)
			}
		}
	}
}

func TestASideWithoutMarginIsToldOf(t *testing.T) {
	o := dotOrder(t, 5, 2)
	o.Sheet.Paper.Width = geom.MM(385) // 7 mm beside the stars
	b := bind(sheetsOf(built(t, o))[0])
	if !slices.Equal(b.bare, []side{leftSide, rightSide}) || len(b.places) != 4 {
		t.Errorf("bare sides %v and %d holes; want left and right bare, 4 holes", b.bare, len(b.places))
	}
}

// TestStringHolesKeepTenMillimetresInANarrowMargin lowers the paper's top edge:
// where the middle of the margin is less than 10 mm from the cuts the holes go
// to the corners, and none comes nearer.
func TestStringHolesKeepTenMillimetresInANarrowMargin(t *testing.T) {
	o := dotOrder(t, 5, 2)
	tight := 0
	for height := 215.0; height < 262; height += 2 {
		o.Sheet.Paper.Height = geom.MM(height)
		s := sheetsOf(built(t, o))[0]
		field := s.cutField()
		if middle := (field.Min.Y-s.Paper.Min.Y)/2 - stringHole/2; middle > 9*geom.Millimetre && middle < 10*geom.Millimetre {
			tight++
		}
		for i, p := range bind(s).places {
			if clear := clearByHand(s, p.at); clear < 10 {
				t.Errorf("paper %g mm high: hole %d on the %s side is %.3f mm from a cut", height, i+1, p.side, clear)
			}
		}
	}
	if tight == 0 {
		t.Error("no height tried leaves between 9 and 10 mm")
	}
}

// clearByHand measures from the rim of a string hole to everything that is cut.
func clearByHand(s setSheet, at geom.Point) float64 {
	nearest := math.Inf(1)
	for _, c := range s.CutOuts {
		nearest = min(nearest, at.Sub(c.Shape.Disc.Centre).Norm()-float64(c.Shape.Disc.Diameter)/2)
	}
	for _, star := range s.Stars.Stars {
		nearest = min(nearest, at.Sub(star.At).Norm()-float64(star.Diameter)/2)
	}
	return nearest/1e6 - stringHole.MM()/2
}

// TestDistanceToAnOutlineAgreesWithSamples: the distance to a square is the one
// worked out with clamped coordinates.
func TestDistanceToAnOutlineAgreesWithSamples(t *testing.T) {
	square, err := geom.ParsePathData("M0 0H10V10H0Z")
	if err != nil {
		t.Fatal(err)
	}
	shape := geom.Shape{Outline: square}
	r := rand.New(rand.NewPCG(3, 4))
	for range 500 {
		x, y := r.Float64()*40-15, r.Float64()*40-15
		want := math.Hypot(max(0-x, x-10, 0), max(0-y, y-10, 0))
		if got := rimDistance(shape, geom.PtMM(x, y)) / 1e6; math.Abs(got-want) > 2e-6 {
			t.Fatalf("from %.3f, %.3f mm: %.6f, want %.6f", x, y, got, want)
		}
	}
}
