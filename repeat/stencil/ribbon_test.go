package stencil

import (
	"math"
	"math/rand/v2"
	"testing"

	"tsugime/repeat/geom"
	"tsugime/repeat/pattern"
)

var testPaper = RibbonSpec{Thickness: geom.MM(0.2), Width: geom.MM(356), Height: geom.MM(180)}

func mustRibbons(t testing.TB, cuts []pattern.CutOut, l pattern.Lattice) []Ribbon {
	t.Helper()
	found, err := Ribbons(cuts, l, testPaper)
	if err != nil {
		t.Fatal(err)
	}
	return found
}

// Worked by hand: spans and widths off the drawing, the deflection as
// F·l³/(192·E·I), I = t·w³/12, with t 0.2 mm.
func TestRibbonsOfKnownSlits(t *testing.T) {
	wide := pattern.Straight(geom.MM(50), geom.MM(50))
	for _, c := range []struct {
		name              string
		cuts              []pattern.CutOut
		l                 pattern.Lattice
		span, width, sags float64
	}{
		{"two slits", cutOuts(outline(t, "M0 0H.5V30H0Z"), outline(t, "M1.5 6H2V36H1.5Z")), wide, 24, 1, 0.216},
		{"slits that part", cutOuts(outline(t, "M0 0H.5V30H0Z"), outline(t, "M1.5 0H4.5V30Z")), wide, 5.0 * math.Sqrt(1+0.05*0.05), 1, 0.00196},
		{"arcs about one centre", cutOuts(outline(t, "M-10 0A10 10 0 0 1 10 0H9.5A9.5 9.5 0 0 0 -9.5 0Z"), outline(t, "M-11.5 0A11.5 11.5 0 0 1 11.5 0H11A11 11 0 0 0 -11 0Z")), wide, 10.5 * math.Pi, 1, 0.5609},
		{"tied stripes", cutOuts(outline(t, "M0 0H3V20H0Z")), pattern.Straight(geom.MM(4), geom.MM(21)), 20, 1, 0.125},
		{"bands along", cutOuts(outline(t, "M0 -1H3V9H0Z")), pattern.Straight(geom.MM(4), geom.MM(8)), 180, 1, 91.125},
		{"bands across", cutOuts(outline(t, "M-1 0V3H9V0Z")), pattern.Straight(geom.MM(8), geom.MM(5)), 356, 2, 88.118},
	} {
		found := mustRibbons(t, c.cuts, c.l)
		if len(found) != 1 {
			t.Errorf("%s: %d ribbons: %+v", c.name, len(found), found)
			continue
		}
		r := found[0]
		if !near(r.Span.MM(), c.span, 0.01*c.span) || !near(r.Width.MM(), c.width, 3e-3) || !near(r.Deflection.MM(), c.sags, 0.03*c.sags) {
			t.Errorf("%s: %+v; want %.3f × %.3f mm and %.4f mm", c.name, r, c.span, c.width, c.sags)
		}
	}
}

func TestWhatIsNoRibbon(t *testing.T) {
	wide := pattern.Straight(geom.MM(50), geom.MM(50))
	slits := []geom.Shape{outline(t, "M0 0H.5V20H0Z"), outline(t, "M2.5 0H3V20H2.5Z")}
	for name, cuts := range map[string][]pattern.CutOut{
		"dots":        cutOuts(disc(0, 0, 2), disc(2.2, 0, 2), disc(10, 10, 3), disc(13.1, 10, 3)),
		"a tongue":    cutOuts(outline(t, "M-1 0H0V10H2V0H3V11H-1Z")),
		"short slits": cutOuts(outline(t, "M0 0H.5V3H0Z"), outline(t, "M1.5 0H2V3H1.5Z")),
		"far apart":   cutOuts(outline(t, "M0 0H.5V30H0Z"), outline(t, "M6 0H6.5V30H6Z")),
		"dotted":      cutOuts(append(slits, disc(1.5, 4, 1), disc(1.5, 8, 1), disc(1.5, 12, 1), disc(1.5, 16, 1))...),
	} {
		if found := mustRibbons(t, cuts, wide); len(found) != 0 {
			t.Errorf("%s: %+v", name, found)
		}
	}
}

// Slits of chance, turned: each next to the last; the overlap of two is the span.
// Moving all, or writing the lattice otherwise, changes nothing.
func TestRandomSlitsGiveTheirOverlaps(t *testing.T) {
	rnd := rand.New(rand.NewPCG(8, 1))
	ribbons := 0
	for range 80 {
		var shapes []geom.Shape
		var want float64
		n, x, lo, hi := 0, 0.0, 0.0, 0.0
		for k := range 2 + rnd.IntN(5) {
			y0, l, gap := 6*rnd.Float64(), 8+20*rnd.Float64(), 0.4+1.6*rnd.Float64()
			if k > 0 {
				x += gap
				if span := math.Min(hi, y0+l) - math.Max(lo, y0); span >= RibbonRatio*gap {
					n, want = n+1, want+span
				}
			}
			shapes = append(shapes, geom.Shape{Outline: geom.Outline{{Start: geom.PtMM(x, y0), Segments: []geom.Segment{
				{End: geom.PtMM(x+6, y0)}, {End: geom.PtMM(x+6, y0+l)}, {End: geom.PtMM(x, y0+l)},
			}}}})
			x, lo, hi = x+6, y0, y0+l
		}
		ribbons += n
		turn := geom.Rotate(360 * rnd.Float64())
		for i := range shapes {
			shapes[i] = shapes[i].Placed(turn)
		}
		l := pattern.Lattice{A: geom.PtMM(90, 11*rnd.Float64()), B: geom.PtMM(11*rnd.Float64(), 90)}
		found := mustRibbons(t, cutOuts(shapes...), l)
		sum := func(rs []Ribbon) (s float64) {
			for _, r := range rs {
				s += r.Span.MM()
			}
			return s
		}
		if len(found) != n || !near(sum(found), want, 0.01) {
			t.Fatalf("%d ribbons of %.3f mm in all, want %d of %.3f: %+v", len(found), sum(found), n, want, found)
		}
		by := geom.PtMM(90*rnd.Float64(), 90*rnd.Float64())
		for i := range shapes {
			shapes[i] = shapes[i].Moved(by)
		}
		if moved := mustRibbons(t, cutOuts(shapes...), pattern.Lattice{A: l.A, B: l.A.Add(l.B)}); len(moved) != n || !near(sum(moved), sum(found), 1e-4) {
			t.Errorf("moved by %v: %+v, was %+v", by, moved, found)
		}
	}
	if ribbons < 100 {
		t.Errorf("only %d ribbons", ribbons)
	}
}

// What lies that far apart moves by just the limit; the proposal follows from it.
func TestThreadsThatFarApartHoldARibbonToTheLimit(t *testing.T) {
	l := pattern.Straight(geom.MM(4), geom.MM(8))
	limit := geom.MM(0.1)
	found := mustRibbons(t, cutOuts(outline(t, "M0 -1H3V9H0Z")), l)
	r := found[0]
	r.Span = r.HeldEvery(limit)
	if d := deflectionMM(r.Span.MM(), r.Width.MM(), 0.2); !near(d, 0.1, 1e-4) {
		t.Errorf("held every %s mm it moves by %.5f mm", r.Span, d)
	}
	if how := HoldRibbons(found, l, limit); how != ByGauze {
		t.Errorf("a band every 4 mm: %q", how)
	}
	sparse := pattern.Straight(geom.MM(200), geom.MM(200))
	slits := func(length string) []Ribbon {
		return mustRibbons(t, cutOuts(outline(t, "M0 0H.5V"+length+"H0Z"), outline(t, "M1.5 0H2V"+length+"H1.5Z")), sparse)
	}
	for length, want := range map[string]RibbonHold{"10": "", "30": ByTies, "90": ByThread} {
		if how := HoldRibbons(slits(length), sparse, limit); how != want {
			t.Errorf("slits of %s mm: %q, want %q", length, how, want)
		}
	}
	if _, err := Ribbons(nil, l, RibbonSpec{}); err == nil {
		t.Error("paper without a thickness is taken")
	}
}

func BenchmarkRibbons(b *testing.B) {
	slit, err := geom.ParsePathData("M0 0H.5C.6 2 .4 4 .5 6H0C.1 4 -.1 2 0 0Z")
	if err != nil {
		b.Fatal(err)
	}
	var slits []pattern.CutOut
	for y := range 22 {
		for x := range 90 {
			slits = append(slits, pattern.CutOut{Shape: geom.Shape{Outline: slit}.Moved(geom.PtMM(float64(x)*1.2, float64(y)*7))})
		}
	}
	l := pattern.Straight(geom.MM(108), geom.MM(154))
	for b.Loop() {
		if found := mustRibbons(b, slits, l); len(found) < 1900 {
			b.Fatalf("%d ribbons", len(found))
		}
	}
}
