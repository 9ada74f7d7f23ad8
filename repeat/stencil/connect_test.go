package stencil

import (
	"math"
	"math/rand/v2"
	"testing"

	"tsugime/repeat/geom"
	"tsugime/repeat/pattern"
)

// drawn returns outlines given as path data in millimetres, as cut-outs.
func drawn(t testing.TB, paths ...string) []pattern.CutOut {
	t.Helper()
	cuts := make([]pattern.CutOut, len(paths))
	for i, p := range paths {
		o, err := geom.ParsePathData(p)
		if err != nil {
			t.Fatalf("path %q: %v", p, err)
		}
		cuts[i] = pattern.CutOut{Shape: geom.Shape{Outline: o}, Motif: pattern.ID(100 + i)}
	}
	return cuts
}

func mustConnect(t testing.TB, cuts []pattern.CutOut, periods ...geom.Point) Connectivity {
	t.Helper()
	c, err := Connect(cuts, periods...)
	if err != nil {
		t.Fatalf("connect: %v", err)
	}
	return c
}

func TestPaperBetweenTouchingDotsFallsOut(t *testing.T) {
	square := pattern.Straight(geom.MM(2), geom.MM(2))
	for _, c := range []struct {
		name     string
		diameter float64
		lattice  pattern.Lattice
		islands  int
		area     float64 // of each
	}{
		{"dots that touch on a square lattice", 2, square, 1, 4 - math.Pi},
		{"dots a hair apart count as touching", 2 - geom.Touch.MM(), square, 1, 4 - math.Pi},
		{"dots farther apart hold", 2 - 2*geom.Touch.MM(), square, 0, 0},
		{"dots that overlap on a half-drop lattice", 1.5, pattern.HalfDrop(geom.MM(1.2), geom.MM(1.4)), 2, 0},
		{"dots that touch along only", 2, pattern.Straight(geom.MM(3), geom.MM(2)), 0, 0},
	} {
		got := mustConnect(t, dots(c.diameter, geom.PtMM(0.3, 0.7)), c.lattice.A, c.lattice.B)
		if len(got.Islands) != c.islands {
			t.Errorf("%s: %d islands, want %d", c.name, len(got.Islands), c.islands)
			continue
		}
		for _, p := range got.Islands {
			if c.area != 0 && math.Abs(p.AreaMM2-c.area) > 2*math.Pi*2e-3 {
				t.Errorf("%s: an island of %.6f mm2, want %.6f", c.name, p.AreaMM2, c.area)
			}
		}
	}
}

func TestDotsThatTouchInALineMakeBandsAlongTheLattice(t *testing.T) {
	for _, c := range []struct {
		lattice pattern.Lattice
		along   geom.Point
	}{
		{pattern.Straight(geom.MM(2), geom.MM(5)), geom.PtMM(2, 0)},
		{pattern.Straight(geom.MM(5), geom.MM(2)), geom.PtMM(0, 2)},
		{pattern.Lattice{A: geom.PtMM(1.2, 1.6), B: geom.PtMM(6, -1)}, geom.PtMM(1.2, 1.6)},
		{pattern.Lattice{A: geom.PtMM(7.2, 0.6), B: geom.PtMM(6, -1)}, geom.PtMM(1.2, 1.6)},
	} {
		got := mustConnect(t, dots(2.1, geom.Point{}), c.lattice.A, c.lattice.B)
		if len(got.Islands) != 0 || len(got.Bands) != 1 || got.Bands[0].Along != c.along {
			t.Errorf("lattice %v: islands %v, bands %v; want one band along %v", c.lattice, got.Islands, got.Bands, c.along)
			continue
		}
		open, err := OpenAreaPct(dots(2.1, geom.Point{}), c.lattice.A, c.lattice.B)
		want := c.lattice.CellMM2() * (1 - open/100)
		if err != nil || math.Abs(got.Bands[0].AreaMM2-want) > math.Pi*2.1*1e-3 {
			t.Errorf("lattice %v: the band has %.6f mm2, all paper %.6f (%v)", c.lattice, got.Bands[0].AreaMM2, want, err)
		}
	}
}

func TestPaperInsideAnOutlineFallsOut(t *testing.T) {
	a, b := geom.PtMM(20, 0), geom.PtMM(7, 20)
	hollow := "M0 0H10V10H0Z M2 2V8H8V2Z" // the hole turns the other way
	for _, c := range []struct {
		name    string
		cuts    []pattern.CutOut
		islands []float64 // areas, the largest first
	}{
		{"a square", drawn(t, "M0 0H10V10H0Z"), nil},
		{"a hollow square", drawn(t, hollow), []float64{36}},
		{"a dot in it", append(drawn(t, hollow), dots(2, geom.PtMM(5, 5))...), []float64{36 - math.Pi}},
		{"a hollow square in it", drawn(t, hollow, "M3 3H7V7H3Z M4 4V6H6V4Z"), []float64{20, 4}},
		{"a hook", drawn(t, "M0 0H10V10H0V8H8V2H0Z"), nil},
		{"a hook closed by a dot", append(drawn(t, "M0 0H10V10H0V8H8V2H0Z"), dots(6.2, geom.PtMM(0, 5))...), []float64{0}},
		{"two hooks that meet", drawn(t, "M0 0H5V2H2V8H5V10H0Z", "M10 0H5V2H8V8H5V10H10Z"), []float64{36}},
		{"two hooks a hair apart", drawn(t, "M0 0H5V2H2V8H5V10H0Z", "M10 0H5.001V2H8V8H5.001V10H10Z"), []float64{36}},
		{"two hooks that don't meet", drawn(t, "M0 0H5V2H2V8H5V10H0Z", "M10 0H5.01V2H8V8H5.01V10H10Z"), nil},
	} {
		for _, periods := range [][]geom.Point{nil, {b}, {a, b}} {
			got := mustConnect(t, c.cuts, periods...)
			if len(got.Bands) != 0 || len(got.Islands) != len(c.islands) {
				t.Errorf("%s, periods %v: islands %v, bands %v; want islands of %v mm2", c.name, periods, got.Islands, got.Bands, c.islands)
				continue
			}
			for i, want := range c.islands {
				if p := got.Islands[i]; want != 0 && math.Abs(p.AreaMM2-want) > 0.02 {
					t.Errorf("%s, periods %v: an island of %.6f mm2, want %.6f", c.name, periods, p.AreaMM2, want)
				}
			}
		}
	}
}

// Two motifs share a curved edge that one draws from left to right and the other
// from right to left: its straight pieces differ by a hair, and what lies between
// them is no paper.
func TestNoIslandLiesBetweenCurvesThatCoincide(t *testing.T) {
	cuts := drawn(t, "M0 0C3 2 7 -2 10 0V5H0Z", "M10 0C8.2 -1.2 6.04 -0.24 3.952 0.288C2.56 0.64 1.2 0.8 0 0V-5H10Z",
		"M20 0A5 5 0 0 1 30 0V5H20Z", "M30 0A5 5 0 0 0 20 0V-8H30Z")
	got := mustConnect(t, cuts)
	if len(got.Islands)+len(got.Bands) != 0 {
		t.Errorf("islands %v, bands %v, want none", got.Islands, got.Bands)
	}
}

// smallDots is the ground of the small-dot story: 356 × 182 mm of dots that touch
// nothing, 63,500 of them.
func smallDots() ([]pattern.CutOut, pattern.Lattice) {
	const across, along = 356, 181.818182
	columns, rows := 353, 180
	var at []geom.Point
	for i := range columns {
		for j := range rows {
			x, y := (float64(i)+0.5)*across/float64(columns), (float64(j)+0.5*float64(i%2))*along/float64(rows)
			at = append(at, geom.PtMM(x, y))
		}
	}
	return dots(0.5, at...), pattern.Straight(geom.MM(across), geom.MM(along))
}

func BenchmarkConnect(b *testing.B) {
	cuts, l := smallDots()
	b.Run("63540 dots apart", func(b *testing.B) {
		for b.Loop() {
			if c := mustConnect(b, cuts, l.A, l.B); len(c.Islands) != 0 {
				b.Fatal(len(c.Islands), "islands, want none")
			}
		}
	})
	ring := append(drawn(b, "M10 10H20V20H10Z M12 12V18H18V12Z"), cuts...)
	b.Run("one island among 63540 dots", func(b *testing.B) {
		for b.Loop() {
			mustConnect(b, ring, l.A, l.B)
		}
	})
}

func BenchmarkOpenArea(b *testing.B) {
	cuts, l := smallDots()
	for b.Loop() {
		if _, err := OpenAreaPct(cuts, l.A, l.B); err != nil {
			b.Fatal(err)
		}
	}
}

// Discs that lie far from what is loose are left out of the second look; the
// areas are those of a look at all of them, with any periods.
func TestDiscsFarFromIslandsChangeNothing(t *testing.T) {
	random := rand.New(rand.NewPCG(2, 7))
	ring := "M0 0H10V10H0Z M1 1V9H9V1Z"
	compared := 0
	for range 60 {
		a, b := geom.PtMM(40, 3), geom.PtMM(-5, 33)
		at := geom.PtMM(random.Float64()*90-30, random.Float64()*90-30)
		cuts := drawn(t, ring)
		cuts[0].Shape = cuts[0].Shape.Moved(at)
		inside := 0
		for range 40 {
			p := geom.PtMM(random.Float64()*40, random.Float64()*33)
			cuts = append(cuts, dots(0.2, p)...)
		}
		for _, periods := range [][]geom.Point{nil, {b}, {a, b}, {b, a.Neg()}} {
			got := mustConnect(t, cuts, periods...)
			want := 64.0
			for _, c := range cuts[1:] {
				for _, p := range shiftsOnto(c.Shape.Bounds(), cuts[0].Shape.Bounds(), periods) {
					d := c.Shape.Moved(p).Disc.Centre.Sub(at)
					if m := geom.MM(1.1); d.X > m && d.X < geom.MM(10)-m && d.Y > m && d.Y < geom.MM(10)-m {
						want, inside = want-c.Shape.AreaMM2(), inside+1
					} else if m := geom.MM(0.8); d.X > m && d.X < geom.MM(10)-m && d.Y > m && d.Y < geom.MM(10)-m {
						want = math.NaN() // on the rim: another test's
					}
				}
			}
			if len(got.Islands) != 1 || math.IsNaN(want) {
				continue
			}
			compared++
			if math.Abs(got.Islands[0].AreaMM2-want) > 1e-3*want {
				t.Errorf("periods %v: the island has %.4f mm², want %.4f with %d dots in it", periods, got.Islands[0].AreaMM2, want, inside)
			}
		}
	}
	if compared < 40 {
		t.Errorf("only %d of 240 scenes could be compared", compared)
	}
}
