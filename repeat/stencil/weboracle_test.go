package stencil

import (
	"math"
	"math/rand/v2"
	"slices"
	"testing"

	"tsugime/repeat/geom"
	"tsugime/repeat/pattern"
)

// blob returns a closed outline of straight pieces around a place.
func blob(rnd *rand.Rand, x, y, size float64) geom.Shape {
	n := 3 + rnd.IntN(9)
	var c geom.Contour
	for k := range n {
		sin, cos := math.Sincos(2 * math.Pi * (float64(k) + 0.8*rnd.Float64()) / float64(n))
		r := size * (0.4 + 0.6*rnd.Float64())
		p := geom.PtMM(x+r*cos, y+r*sin)
		if k == 0 {
			c.Start = p
		} else {
			c.Segments = append(c.Segments, geom.Segment{End: p})
		}
	}
	return geom.Shape{Outline: geom.Outline{c}}
}

// A piece is a rim as the slow search sees it: a circle or a straight piece.
type piece struct {
	a, b [2]float64
	r    float64
	cut  int
}

func (s piece) nearest(x, y float64) (float64, float64) {
	if s.r > 0 {
		d := math.Hypot(x-s.a[0], y-s.a[1])
		return s.a[0] + (x-s.a[0])/d*s.r, s.a[1] + (y-s.a[1])/d*s.r
	}
	dx, dy := s.b[0]-s.a[0], s.b[1]-s.a[1]
	t := ((x-s.a[0])*dx + (y-s.a[1])*dy) / (dx*dx + dy*dy)
	t = min(max(t, 0), 1)
	return s.a[0] + t*dx, s.a[1] + t*dy
}

// slowWebs tries every corner and circle with every piece and copy, and every
// piece again against the circle over the gap: widths in millimetres, each once.
func slowWebs(cuts []pattern.CutOut, l pattern.Lattice, limit float64) []float64 {
	var all, home []piece
	for i, c := range cuts {
		for m := -2; m <= 2; m++ {
			for n := -2; n <= 2; n++ {
				s := c.Shape.Moved(l.At(m, n))
				var ps []piece
				if s.Round() {
					ps = []piece{{a: [2]float64{s.Disc.Centre.X.MM(), s.Disc.Centre.Y.MM()}, r: s.Disc.RadiusMM(), cut: i}}
				}
				for _, r := range s.Outline.Rings(geom.Chord) {
					for k, p := range r {
						q := r[(k+1)%len(r)]
						ps = append(ps, piece{a: [2]float64{p.X.MM(), p.Y.MM()}, b: [2]float64{q.X.MM(), q.Y.MM()}, cut: i})
					}
				}
				all = append(all, ps...)
				if m == 0 && n == 0 {
					home = append(home, ps...)
				}
			}
		}
	}
	covered := func(x, y float64) bool {
		p := geom.PtMM(x, y)
		for _, c := range cuts {
			for m := -2; m <= 2; m++ {
				for n := -2; n <= 2; n++ {
					if c.Shape.Contains(p.Sub(l.At(m, n))) {
						return true
					}
				}
			}
		}
		return false
	}
	var widths []float64
	for _, a := range home {
		for _, b := range all {
			if a == b {
				continue
			}
			var px, py, qx, qy, gap float64
			switch {
			case a.r > 0 && b.r > 0:
				d := math.Hypot(b.a[0]-a.a[0], b.a[1]-a.a[1])
				gap = d - a.r - b.r
				ux, uy := (b.a[0]-a.a[0])/d, (b.a[1]-a.a[1])/d
				px, py, qx, qy = a.a[0]+ux*a.r, a.a[1]+uy*a.r, b.a[0]-ux*b.r, b.a[1]-uy*b.r
			case a.r > 0:
				qx, qy = b.nearest(a.a[0], a.a[1])
				px, py = a.nearest(qx, qy)
				gap = math.Hypot(qx-a.a[0], qy-a.a[1]) - a.r
			case b.r > 0:
				continue
			default:
				px, py = a.a[0], a.a[1]
				qx, qy = b.nearest(px, py)
				gap = math.Hypot(qx-px, qy-py)
			}
			if gap < 1e-5 || gap >= limit {
				continue
			}
			x, y := (px+qx)/2, (py+qy)/2
			free := true
			for _, o := range all {
				if ox, oy := o.nearest(x, y); math.Hypot(ox-x, oy-y) < gap/2-1.5e-6 || o.r > math.Hypot(x-o.a[0], y-o.a[1]) {
					free = false
					break
				}
			}
			if free && !covered(x, y) {
				widths = append(widths, gap)
			}
		}
	}
	slices.Sort(widths)
	return slices.CompactFunc(widths, func(a, b float64) bool { return math.Abs(b-a) < 5e-6 })
}

// Outlines that stick out in all directions, lie over one another and over the
// edges of a skew cell, with discs among them: the widths found are those of the
// slow search, no more and no fewer.
func TestWebsOfRandomOutlinesAgreeWithTryingEverything(t *testing.T) {
	rnd := rand.New(rand.NewPCG(3, 9))
	total := 0
	for scene := range 200 {
		l := pattern.Lattice{A: geom.PtMM(40, rnd.Float64()*10), B: geom.PtMM(rnd.Float64()*16-8, 30)}
		var cuts []pattern.CutOut
		for i := range 1 + rnd.IntN(6) {
			x, y := rnd.Float64()*40, rnd.Float64()*30
			s := blob(rnd, x, y, 2+rnd.Float64()*7)
			if rnd.IntN(4) == 0 {
				s = disc(x, y, 1+rnd.Float64()*9)
			}
			cuts = append(cuts, pattern.CutOut{Shape: s, Motif: pattern.ID(i)})
		}
		const limit = 8.0
		want := slowWebs(cuts, l, limit)
		var got []float64
		for _, w := range Webs(cuts, geom.MM(limit), l.A, l.B).Widths() {
			if v := w.MM(); v < limit && v > 2e-5 && (len(got) == 0 || v-got[len(got)-1] >= 5e-6) {
				got = append(got, v)
			}
		}
		total += len(want)
		missing, extra := apart(want, got), apart(got, want)
		if len(missing)+len(extra) > 0 {
			t.Errorf("scene %d: of %d widths missing %v, too many %v", scene, len(want), missing, extra)
		}
	}
	if total < 350 {
		t.Errorf("only %d widths were compared", total)
	}
}

// apart returns what of a is not in b, to 10 nm.
func apart(a, b []float64) []float64 {
	var out []float64
	for _, v := range a {
		if !slices.ContainsFunc(b, func(w float64) bool { return math.Abs(v-w) < 1e-5 }) {
			out = append(out, v)
		}
	}
	return out
}

// Round outlines drawn as arcs have the webs of the discs they are, within the
// chord of their straight pieces.
func TestWebsOfArcsAreThoseOfTheirDiscs(t *testing.T) {
	u := scattered(5, 14, 11, 1.5, 0.8)
	want := Webs(u.CutOuts(), geom.MM(0.9), u.Lattice.A, u.Lattice.B)
	round := outline(t, "M-0.4 0A0.4 0.4 0 0 1 0.4 0A0.4 0.4 0 0 1 -0.4 0Z")
	for i := range u.Motifs {
		u.Motifs[i].Shape = round
	}
	got := Webs(u.CutOuts(), geom.MM(0.9), u.Lattice.A, u.Lattice.B)
	if len(got.Below) != len(want.Below) || len(want.Below) < 15 {
		t.Fatalf("%d webs below the limit, want %d", len(got.Below), len(want.Below))
	}
	for i, w := range want.Below {
		if d := got.Below[i].Width - w.Width; d.Abs() > 2*geom.Chord+2*geom.Grid {
			t.Errorf("web %d is %s mm, want %s", i, got.Below[i].Width, w.Width)
		}
	}
}

// On a square ground each hole has one web across and one along; over the
// diagonals four rims meet one circle, and that is no web.
func TestASquareGroundHasTwoWebsAHole(t *testing.T) {
	l := pattern.Straight(geom.MM(2), geom.MM(2))
	got := Webs(ground(l, 1).CutOuts(), geom.MM(3), l.A, l.B).Widths()
	if want := []geom.Length{geom.MM(1), geom.MM(1)}; !slices.Equal(got, want) {
		t.Errorf("webs %v, want %v", got, want)
	}
}

// A unit whose reach is many times its cell: one dot, the limit ten periods.
func TestOneDotFindsItsOwnCopiesHoweverFarTheSearch(t *testing.T) {
	l := pattern.Lattice{A: geom.PtMM(1, 0.3), B: geom.PtMM(7.1, 3.2)}
	r := Webs(ground(l, 0.2).CutOuts(), geom.MM(10), l.A, l.B)
	if got, want := r.Narrowest.Width, l.Pitch()-geom.MM(0.2); (got-want).Abs() > 1 || len(r.Widths()) != 3 {
		t.Errorf("narrowest %s mm of %d webs, want %s of 3", got, len(r.Widths()), want)
	}
}

// On the cloth the drawing repeats along only: a column of dots.
func TestWebsOnTheClothRepeatAlongOnly(t *testing.T) {
	for _, c := range []struct {
		periods []geom.Point
		want    []geom.Length
	}{
		{nil, []geom.Length{geom.MM(2)}},
		{[]geom.Point{{Y: geom.MM(5)}}, []geom.Length{geom.MM(2), geom.MM(4), geom.MM(4)}},
	} {
		got := Webs(cutOuts(disc(0, 0, 1), disc(3, 0, 1)), geom.MM(4.5), c.periods...).Widths()
		if !slices.Equal(got, c.want) {
			t.Errorf("periods %v: webs %v, want %v", c.periods, got, c.want)
		}
	}
}

// Small dots beside one large disc: sizes that differ a hundredfold are sought
// in grids of their own and still see each other.
func TestWebsBetweenSmallAndLargeDiscs(t *testing.T) {
	cuts := cutOuts(disc(0, 0, 100), disc(51, 0, 0.4), disc(52, 0, 0.4), disc(0, 50.5, 0.4))
	got := Webs(cuts, geom.MM(1)).Widths()
	if want := []geom.Length{geom.MM(0.3), geom.MM(0.6), geom.MM(0.8)}; !slices.Equal(got, want) {
		t.Errorf("webs %v, want %v", got, want)
	}
}

// The narrow gap between two concentric rims is one place, not as many as the
// rims have pieces.
func TestACorridorOfEvenWidthIsToldOnce(t *testing.T) {
	ring := outline(t, "M-5 0A5 5 0 0 1 5 0A5 5 0 0 1 -5 0ZM-3 0A3 3 0 0 0 3 0A3 3 0 0 0 -3 0Z")
	for name, inner := range map[string]geom.Shape{
		"a disc":    disc(0, 0, 5),
		"an arc":    outline(t, "M-2.5 0A2.5 2.5 0 0 1 2.5 0A2.5 2.5 0 0 1 -2.5 0Z"),
		"a polygon": disc(0, 0, 5),
	} {
		r := Webs(cutOuts(ring, inner), geom.MM(1))
		if len(r.Below) != 1 || math.Abs(r.Narrowest.Width.MM()-0.5) > 2e-3 {
			t.Errorf("%s in a ring: %d webs, the narrowest %s mm; want one of 0.5", name, len(r.Below), r.Narrowest.Width)
		}
	}
}

func benchmarkWebs(b *testing.B, shape geom.Shape, limit float64) {
	u := scattered(2, 180, 90, 1.9, 1)
	for i := range u.Motifs {
		u.Motifs[i].Shape = shape
		u.Motifs[i].TurnDeg = float64(i * 37 % 360)
	}
	cuts := u.CutOuts()
	b.ReportMetric(float64(len(cuts)), "cut-outs")
	for b.Loop() {
		Webs(cuts, geom.MM(limit), u.Lattice.A, u.Lattice.B)
	}
}

func BenchmarkWebsOfRoundOutlines(b *testing.B) {
	o, err := geom.ParsePathData("M-0.5 0A0.5 0.5 0 0 1 0.5 0A0.5 0.5 0 0 1 -0.5 0Z")
	if err != nil {
		b.Fatal(err)
	}
	benchmarkWebs(b, geom.Shape{Outline: o}, 0.4)
}
