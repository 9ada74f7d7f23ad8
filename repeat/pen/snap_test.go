package pen_test

import (
	"math"
	"math/rand/v2"
	"slices"
	"testing"

	"tsugime/repeat/geom"
	"tsugime/repeat/pen"
)

func guides() pen.Guides {
	return pen.Guides{
		Marks: []pen.Mark{{At: geom.PtMM(1.23, 4.56), Name: "node"}},
		Lines: []pen.Guide{{At: geom.PtMM(0, 2), Along: geom.PtMM(3, 1), Name: "mirror"}},
		Edges: []pen.Edge{{From: geom.PtMM(5, 5), Segment: geom.Segment{Kind: geom.Arc, Bulge: 1, End: geom.PtMM(9, 5)}, Name: "edge"}},
		Grid:  geom.MM(0.5), Fine: geom.MM(0.01),
	}
}

func TestSnappingTakesTheStrongerHold(t *testing.T) {
	g := guides()
	for _, c := range []struct {
		what  string
		g     pen.Guides
		p     geom.Point
		want  geom.Point
		names []string
	}{
		{"a node", g, geom.PtMM(1.3, 4.5), geom.PtMM(1.23, 4.56), []string{"node"}},
		{"the grid", g, geom.PtMM(2.93, 7.04), geom.PtMM(3, 7), []string{"grid"}},
		{"a line on the grid", g, geom.PtMM(2.95, 3.07), geom.PtMM(3, 3), []string{"mirror", "grid"}},
		{"level with a place", pen.Guides{}.From(geom.PtMM(1, 1)), geom.PtMM(7.777, 1.06), geom.PtMM(7.777, 1), []string{"level"}},
		{"aslant of a place", pen.Guides{}.From(geom.PtMM(1, 1)), geom.PtMM(4.02, 3.98), geom.PtMM(4, 4), []string{"45°"}},
		{"where two lines cross", g.From(geom.PtMM(6, 9)), geom.PtMM(6.05, 4.03), geom.PtMM(6, 4), []string{"mirror", "upright"}},
		{"an edge", g, geom.PtMM(7.02, 3.05), geom.Point{}, []string{"edge"}},
		{"nothing", pen.Guides{Fine: geom.MM(0.01)}, geom.PtMM(2.2345, 7.2371), geom.PtMM(2.23, 7.24), nil},
	} {
		got := c.g.Snap(c.p, geom.MM(0.12))
		if c.what == "an edge" {
			c.want = got.At
			if off := math.Abs(got.At.Sub(geom.PtMM(7, 5)).Norm() - 2e6); off > 1 {
				t.Errorf("%s: %.1f nm beside the edge", c.what, off)
			}
		}
		if got.At != c.want || !slices.Equal(got.Names, c.names) {
			t.Errorf("%s: %v, %v by %v; want %v, %v by %v", c.what, got.At.X, got.At.Y, got.Names, c.want.X, c.want.Y, c.names)
		}
	}
}

// The laws: no place is moved farther than the reach (but for rounding); what has
// snapped stays where it is; with no reach nothing but rounding happens.
func TestSnappingLaws(t *testing.T) {
	g := guides().From(geom.PtMM(3, 3))
	random := rand.New(rand.NewPCG(24, 1))
	reach := geom.MM(0.1)
	held := 0
	for range 20_000 {
		p := geom.Point{X: geom.Length(random.Int64N(1e7)), Y: geom.Length(random.Int64N(1e7))}
		s := g.Snap(p, reach)
		if d := s.At.Sub(p).Norm(); d > float64(reach) {
			t.Fatalf("%v went %.0f nm to %v by %v", p, d, s.At, s.Names)
		}
		if len(s.Names) > 0 {
			held++
		}
		if again := g.Snap(s.At, 2); len(s.Names) > 0 && again.At.Sub(s.At).Norm() > 2 {
			t.Fatalf("%v by %v went on to %v by %v", s.At, s.Names, again.At, again.Names)
		}
		if free := (pen.Guides{Fine: geom.MM(0.01)}).Snap(p, reach); free.At.X%geom.MM(0.01) != 0 || len(free.Names) > 0 || free.At.Sub(p).Norm() > 7072 {
			t.Fatalf("%v snapped to %v by %v with nothing there", p, free.At, free.Names)
		}
	}
	if held < 2000 {
		t.Errorf("only %d of 20000 places were held", held)
	}
}

func TestPlacesAreReadAsTheyAreWritten(t *testing.T) {
	before := geom.PtMM(10, 20)
	for text, want := range map[string]geom.Point{
		"12.5, 3":          geom.PtMM(12.5, 3),
		"12,5 3":           geom.PtMM(12.5, 3),
		"12,5; 3":          geom.PtMM(12.5, 3),
		"-1.25, -3":        geom.PtMM(-1.25, -3),
		"1 cm, 1/2 in":     geom.PtMM(10, 12.7),
		"by 3, -2":         geom.PtMM(13, 18),
		"5 at 90":          geom.PtMM(10, 25),
		"5 mm at 180°":     geom.PtMM(5, 20),
		"3 kane bu; 0":     {X: 9_090_909},
		"1 kane sun, 2 mm": {X: 30_303_030, Y: geom.MM(2)},
		"  7   8 ":         geom.PtMM(7, 8),
	} {
		if got, err := pen.ParsePlace(text, geom.MMUnit, before); err != nil || got != want {
			t.Errorf("%q is %v, %v (%v); want %v, %v", text, got.X, got.Y, err, want.X, want.Y)
		}
	}
	for _, text := range []string{"", "5", "a, b", "1, 2, 3", "by 5", "by by 1, 2", "5 at", "at 5", "5 at 3 at 2", "99999, 1", "5 at 1e99", "by 3 at 5", "1e9 at 3"} {
		if got, err := pen.ParsePlace(text, geom.MMUnit, before); err == nil {
			t.Errorf("%q was taken for %v, %v", text, got.X, got.Y)
		}
	}
}
