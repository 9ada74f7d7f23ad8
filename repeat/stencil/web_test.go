package stencil

import (
	"fmt"
	"math"
	"math/rand/v2"
	"testing"

	"tsugime/repeat/geom"
	"tsugime/repeat/pattern"
)

func outline(t *testing.T, data string) geom.Shape {
	t.Helper()
	o, err := geom.ParsePathData(data)
	if err != nil {
		t.Fatal(err)
	}
	return geom.Shape{Outline: o}
}

func disc(x, y, d float64) geom.Shape { return geom.DiscShape(geom.PtMM(x, y), geom.MM(d)) }

func cutOuts(shapes ...geom.Shape) []pattern.CutOut {
	var cuts []pattern.CutOut
	for i, s := range shapes {
		cuts = append(cuts, pattern.CutOut{Shape: s, Motif: pattern.ID(i + 1)})
	}
	return cuts
}

// Closed forms: centre distance less radii; corner of a square to a disc by
// Pythagoras (4, 4) to (8, 7) less 1.5; parallel sides; a slot's own neck.
func TestWebsOfKnownPairs(t *testing.T) {
	for _, c := range []struct {
		name  string
		cuts  []pattern.CutOut
		width float64
		count int
	}{
		{"two discs", cutOuts(disc(0, 0, 3), disc(5, 0, 3)), 2, 1},
		{"square and disc", cutOuts(outline(t, "M0 0H4V4H0Z"), disc(8, 7, 3)), 3.5, 1},
		{"two squares side by side", cutOuts(outline(t, "M0 0H4V4H0Z"), outline(t, "M5 0H9V4H5Z")), 1, 1},
		{"a horseshoe's neck", cutOuts(outline(t, "M0 0H10V10H5.6V3H4.4V10H0Z")), 1.2, 1},
		{"a point of contact", cutOuts(outline(t, "M0 0H4V4H0Z"), outline(t, "M4 4H8V8H4Z")), 0, 1},
		{"overlapping discs", cutOuts(disc(0, 0, 3), disc(2, 0, 3)), 0, 0},
		{"a disc in a ring", cutOuts(outline(t, "M-5 0A5 5 0 0 1 5 0A5 5 0 0 1 -5 0ZM-3 0A3 3 0 0 0 3 0A3 3 0 0 0 -3 0Z"), disc(1, 0, 1)), 1.5, 1},
	} {
		r := Webs(c.cuts, geom.MM(6))
		if !r.Found && c.count == 0 {
			continue
		}
		if !r.Found || math.Abs(r.Narrowest.Width.MM()-c.width) > 2e-3 {
			t.Errorf("%s: narrowest %+v, want %.3f mm", c.name, r.Narrowest, c.width)
		}
		same := 0
		for _, w := range r.Widths() {
			if math.Abs(w.MM()-c.width) < 2e-3 {
				same++
			}
		}
		if same != c.count {
			t.Errorf("%s: told %d times, want %d (widths %v)", c.name, same, c.count, r.Widths())
		}
	}
}

// Round holes at 60° (perforated-sheet geometry): each has six neighbours, so
// three webs of P − D a hole, whatever the limit asked for.
func TestWebsOfASixtyDegreeGroundAreThreeAHole(t *testing.T) {
	l := pattern.Brick(geom.MM(5), geom.MM(5*math.Sqrt(3)/2))
	u := ground(l, 3)
	for _, limit := range []float64{0.1, 2.5} {
		r := Webs(u.CutOuts(), geom.MM(limit), l.A, l.B)
		if !r.Found || math.Abs(r.Narrowest.Width.MM()-2) > 2e-6 || len(r.Widths()) < 3 {
			t.Errorf("limit %g: narrowest %s mm of %d; want three of 2 mm", limit, r.Narrowest.Width, len(r.Widths()))
		}
	}
	if r := Webs(u.CutOuts(), geom.MM(2.5), l.A, l.B); len(r.Below) != 3 {
		t.Errorf("%d webs below 2.5 mm, want 3", len(r.Below))
	}
}

// The slow obvious way: every pair of discs and copies, every other disc tried
// against the circle over the gap.
func TestWebsOfRandomDiscsAgreeWithTryingAllTriples(t *testing.T) {
	rnd := rand.New(rand.NewPCG(7, 7))
	webs := 0
	for scene := range 200 {
		l := pattern.Lattice{A: geom.PtMM(60, rnd.Float64()*20), B: geom.PtMM(rnd.Float64()*20-10, 40)}
		var cuts []pattern.CutOut
		for i := range 1 + rnd.IntN(14) {
			cuts = append(cuts, pattern.CutOut{Shape: disc(rnd.Float64()*60, rnd.Float64()*40, 1+rnd.Float64()*12), Motif: pattern.ID(i)})
		}
		const limit = 9.0
		got := Webs(cuts, geom.MM(limit), l.A, l.B)
		want := allTriples(cuts, l, limit)
		var sum, wantSum float64
		n := 0
		for _, w := range got.Widths() {
			if w.MM() < limit {
				n, sum = n+1, sum+w.MM()
			}
		}
		for _, w := range want {
			wantSum += w
		}
		webs += n
		if n != len(want) || math.Abs(sum-wantSum) > 1e-4 {
			t.Errorf("scene %d: %d webs of %.6f mm in all, want %d of %.6f", scene, n, sum, len(want), wantSum)
		}
	}
	if webs < 500 {
		t.Errorf("only %d webs were compared", webs)
	}
}

func allTriples(cuts []pattern.CutOut, l pattern.Lattice, limit float64) []float64 {
	type d struct {
		x, y, r float64
		i       int
		shift   geom.Point
	}
	var all []d
	for i, c := range cuts {
		for m := -4; m <= 4; m++ {
			for n := -4; n <= 4; n++ {
				s := l.At(m, n)
				p := c.Shape.Disc.Centre.Add(s)
				all = append(all, d{p.X.MM(), p.Y.MM(), c.Shape.Disc.RadiusMM(), i, s})
			}
		}
	}
	var widths []float64
	for _, a := range all {
		if a.shift != (geom.Point{}) {
			continue
		}
		for _, b := range all {
			if b.i < a.i || b.i == a.i && !(geom.Point{}).Less(b.shift) {
				continue
			}
			dx, dy := b.x-a.x, b.y-a.y
			dist := math.Hypot(dx, dy)
			gap := dist - a.r - b.r
			if gap <= 1e-5 || gap >= limit {
				continue
			}
			mx, my := a.x+dx/dist*(a.r+gap/2), a.y+dy/dist*(a.r+gap/2)
			free := true
			for _, o := range all {
				if o == a || o == b {
					continue
				}
				if math.Hypot(o.x-mx, o.y-my)-o.r < gap/2-2e-6 {
					free = false
					break
				}
			}
			if free {
				widths = append(widths, gap)
			}
		}
	}
	return widths
}

// Moving the whole pattern, or writing the lattice by other vectors, changes no
// web.
func TestWebsDoNotDependOnPlaceOrBasis(t *testing.T) {
	u := scattered(11, 12, 10, 1.4, 0.7)
	l := u.Lattice
	want := Webs(u.CutOuts(), geom.MM(1), l.A, l.B)
	moved := pattern.Unit{Lattice: l}
	for _, m := range u.Motifs {
		m.At = m.At.Add(geom.PtMM(3.777, 8.123))
		moved.Motifs = append(moved.Motifs, m)
	}
	for name, got := range map[string]WebReport{
		"moved":         Webs(moved.CutOuts(), geom.MM(1), l.A, l.B),
		"another basis": Webs(u.CutOuts(), geom.MM(1), l.A.Add(l.B), l.B),
	} {
		if len(got.Widths()) != len(want.Widths()) {
			t.Errorf("%s: %d webs, want %d", name, len(got.Widths()), len(want.Widths()))
			continue
		}
		for i, w := range got.Widths() {
			if w != want.Widths()[i] {
				t.Errorf("%s: web %d is %s mm, want %s", name, i, w, want.Widths()[i])
				break
			}
		}
	}
}

// With a step that is a lattice vector the web across the joint is one of the
// pattern's own; a lap of the step shows as an overlap.
func TestWebAcrossTheJointIsThePatternsOwn(t *testing.T) {
	cuts := cutOuts(disc(0, 0, 1), disc(0, 2, 1), disc(0, 4, 1))
	if w := AcrossJoint(cuts, geom.PtMM(0, 6)); w.Width != geom.MM(1) {
		t.Errorf("across the joint %s mm, want 1", w.Width)
	}
	if w := AcrossJoint(cuts, geom.PtMM(0, 4.5)); w.Width != geom.MM(-0.5) {
		t.Errorf("a lap of 1.5 mm leaves %s mm, want −0.5", w.Width)
	}
}

func BenchmarkWebsOf63500Discs(b *testing.B) {
	u := ground(pattern.Straight(geom.MM(1.01), geom.MM(1.01)), 0.45)
	var cuts []pattern.CutOut
	for c := range u.In(geom.BoxOf(geom.Point{}, geom.PtMM(356, 181.8))) {
		cuts = append(cuts, c)
	}
	period := []geom.Point{geom.PtMM(1.01*354, 0), geom.PtMM(0, 1.01*181)}
	for b.Loop() {
		Webs(cuts, geom.MM(0.4), period...)
	}
}

// Interlaced rings leave no web between them: the search gives up long before it
// has looked across the unit, and a lone figure's web to its far copies is found
// all the same.
func TestTheSearchForAWebThatIsNotEnds(t *testing.T) {
	rings := make([]string, 0, 160)
	for i := range 160 {
		x, y := float64(i%16)*8, float64(i/16)*8
		rings = append(rings, fmt.Sprintf("M%g %ga5 5 0 0 1 -10 0a5 5 0 0 1 10 0Z m-0.5 0a4.5 4.5 0 0 0 -9 0a4.5 4.5 0 0 0 9 0Z", x+5, y))
	}
	if r := Webs(drawn(t, rings...), geom.MM(0.4), geom.PtMM(128, 0), geom.PtMM(0, 80)); len(r.Below) > 0 {
		t.Errorf("%d webs below the limit between rings that all cross", len(r.Below))
	}
	r := Webs(drawn(t, "M0 0H10V10H0Z"), geom.MM(0.4), geom.PtMM(300, 0), geom.PtMM(0, 200))
	if !r.Found || r.Narrowest.Width != geom.MM(190) {
		t.Errorf("the narrowest web is %+v, want 190 mm", r.Narrowest)
	}
}
