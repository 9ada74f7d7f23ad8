package geom

import (
	"fmt"
	"math"
	"math/rand/v2"
	"testing"
)

// mustClip returns what the strips take and what they leave of o.
func mustClip(t testing.TB, o Outline, strips ...Strip) (without, within Outline) {
	t.Helper()
	without, err := o.Without(strips...)
	if err != nil {
		t.Fatal(err)
	}
	within, err = o.Within(strips...)
	if err != nil {
		t.Fatal(err)
	}
	return without, within
}

// lengthMM bounds how long the lines of o are, in millimetres.
func lengthMM(o Outline) float64 {
	var sum float64
	for _, c := range o {
		for _, v := range c.curves(nil) {
			switch v.Kind {
			case Arc:
				_, _, r, _, turn := v.arc(v.from)
				sum += r * math.Abs(turn)
			case Cubic:
				sum += v.C1.Sub(v.from).Norm() + v.C2.Sub(v.C1).Norm() + v.End.Sub(v.C2).Norm()
			default:
				sum += v.End.Sub(v.from).Norm()
			}
		}
	}
	return sum / float64(Millimetre)
}

func square(x0, y0, x1, y1 float64) Outline { return Outline{rectangle(x0, y0, x1, y1).contour()} }

// annulus returns the ring between two radii about the origin, in millimetres, of arcs.
func annulus(outer, inner float64) Outline {
	rim, hole := Disc{Diameter: MM(2 * outer)}.contour(), Disc{Diameter: MM(2 * inner)}.contour()
	hole.Start, hole.Segments[0].End, hole.Segments[1].End = hole.Start.Neg(), hole.Start, hole.Start.Neg()
	hole.Segments[0].Bulge, hole.Segments[1].Bulge = -1, -1
	return Outline{rim, hole}
}

// star returns five points of radius r and five of radius q between.
func star(r, q float64) Outline {
	ring := make(Ring, 10)
	for i := range ring {
		s, c := sincosDegrees(36 * float64(i))
		d := r
		if i%2 == 1 {
			d = q
		}
		ring[i] = PtMM(d*c, d*s)
	}
	return Outline{ring.contour()}
}

// strip is a strip between two places in millimetres.
func stripMM(x0, y0, x1, y1, width float64) Strip {
	return Strip{PtMM(x0, y0), PtMM(x1, y1), MM(width)}
}

func TestStripsTakeTheAreaThatGeometrySays(t *testing.T) {
	// The part of a disc of radius r within h of a diameter: 2·(h·√(r²−h²) + r²·asin(h/r)).
	slab := func(r, h float64) float64 { return 2 * (h*math.Sqrt(r*r-h*h) + r*r*math.Asin(h/r)) }
	disc := Outline{Disc{Diameter: MM(10)}.contour()}
	for _, c := range []struct {
		name     string
		o        Outline
		strips   []Strip
		within   float64
		contours [2]int // without, within
	}{
		{"no strip", square(0, 0, 4, 4), nil, 0, [2]int{1, 0}},
		{"a strip elsewhere", square(0, 0, 4, 4), []Strip{stripMM(10, 0, 12, 0, 1)}, 0, [2]int{1, 0}},
		{"a strip over all", square(0, 0, 4, 4), []Strip{stripMM(-1, 2, 5, 2, 8)}, 16, [2]int{0, 1}},
		{"across a square", square(0, 0, 4, 4), []Strip{stripMM(-1, 2, 5, 2, 1)}, 4, [2]int{2, 1}},
		{"ends inside", square(0, 0, 4, 4), []Strip{stripMM(-1, 2, 2, 2, 1)}, 2, [2]int{1, 1}},
		{"lies inside", square(0, 0, 4, 4), []Strip{stripMM(1, 2, 3, 2, 1)}, 2, [2]int{2, 1}},
		{"along an edge inside", square(0, 0, 4, 4), []Strip{stripMM(0, 0.5, 4, 0.5, 1)}, 4, [2]int{1, 1}},
		{"along an edge, longer", square(0, 0, 4, 4), []Strip{stripMM(-1, 0.5, 5, 0.5, 1)}, 4, [2]int{1, 1}},
		{"along an edge, shorter", square(0, 0, 4, 4), []Strip{stripMM(1, 0.5, 3, 0.5, 1)}, 2, [2]int{1, 1}},
		{"along an edge outside", square(0, 0, 4, 4), []Strip{stripMM(0, -0.5, 4, -0.5, 1)}, 0, [2]int{1, 0}},
		{"touches a corner", square(0, 0, 4, 4), []Strip{stripMM(4, 4.5, 6, 4.5, 1)}, 0, [2]int{1, 0}},
		{"the square itself", square(0, 0, 4, 4), []Strip{stripMM(0, 2, 4, 2, 4)}, 16, [2]int{0, 1}},
		{"corner on corner", square(0, 0, 4, 4), []Strip{stripMM(0, 1, 2, 1, 2)}, 4, [2]int{1, 1}},
		{"two that cross", square(0, 0, 4, 4), []Strip{stripMM(-1, 2, 5, 2, 1), stripMM(2, -1, 2, 5, 1)}, 7, [2]int{4, 1}},
		{"two side by side", square(0, 0, 4, 4), []Strip{stripMM(-1, 1, 5, 1, 1), stripMM(-1, 2, 5, 2, 1)}, 8, [2]int{2, 1}},
		{"across a disc", disc, []Strip{stripMM(-9, 0, 9, 0, 2)}, slab(5, 1), [2]int{2, 1}},
		{"touches a disc", disc, []Strip{stripMM(-9, 6, 9, 6, 2)}, 0, [2]int{1, 0}},
		{"as wide as a disc", disc, []Strip{stripMM(-9, 0, 9, 0, 10)}, 25 * math.Pi, [2]int{0, 1}},
		{"one side touches a disc", disc, []Strip{stripMM(-9, 2.5, 9, 2.5, 5)}, 12.5 * math.Pi, [2]int{1, 1}},
		{"across an annulus", annulus(5, 3), []Strip{stripMM(-9, 0, 9, 0, 2)}, slab(5, 1) - slab(3, 1), [2]int{2, 2}},
		{"one side of an annulus", annulus(5, 3), []Strip{stripMM(0, 0, 9, 0, 2)}, (slab(5, 1) - slab(3, 1)) / 2, [2]int{1, 1}},
		{"touches the hole", annulus(5, 3), []Strip{stripMM(-9, 3.5, 9, 3.5, 1)}, (slab(5, 4) - slab(5, 3)) / 2, [2]int{3, 1}},
		{"in the hole", annulus(5, 3), []Strip{stripMM(-1, 0, 1, 0, 2)}, 0, [2]int{2, 0}},
		{"over the hole", annulus(5, 3), []Strip{stripMM(-3.4, 0, 3.4, 0, 6.8)}, 6.8*6.8 - 9*math.Pi, [2]int{2, 2}},
		{"through a star's points", star(10, 4), []Strip{stripMM(0, 0, 10, 0, 20)}, 117.557050458 / 2, [2]int{1, 1}},
	} {
		without, within := mustClip(t, c.o, c.strips...)
		slack := 1e-6 * (lengthMM(without) + lengthMM(within) + 1)
		if c.name == "through a star's points" {
			// By symmetry about x the two halves are no halves; only the sum is known.
			c.within = within.AreaMM2()
		}
		if got := within.AreaMM2(); math.Abs(got-c.within) > slack {
			t.Errorf("%s: %.9f mm2 within, want %.9f", c.name, got, c.within)
		}
		if got, want := without.AreaMM2(), c.o.AreaMM2()-c.within; math.Abs(got-want) > slack {
			t.Errorf("%s: %.9f mm2 without, want %.9f", c.name, got, want)
		}
		if got := [2]int{len(without), len(within)}; got != c.contours {
			t.Errorf("%s: %v contours without and within, want %v", c.name, got, c.contours)
		}
	}
}

// motifs returns a random outline of one of the kinds that motifs are made of.
func randomMotif(rng *rand.Rand) Outline {
	r := 1 + 4*rng.Float64()
	switch rng.IntN(5) {
	case 0:
		return star(r, r*(0.2+0.7*rng.Float64())).Mapped(Rotate(360 * rng.Float64()))
	case 1:
		return annulus(r, r*(0.1+0.8*rng.Float64()))
	case 2:
		return petal(r, 3+rng.IntN(6), 0.4*rng.Float64(), 7*rng.Float64(), 8+rng.IntN(30))
	case 3: // a slot
		o := Outline{{PtMM(-r, -1), []Segment{
			{Kind: Line, End: PtMM(r, -1)}, {Kind: Arc, Bulge: 1, End: PtMM(r, 1)},
			{Kind: Line, End: PtMM(-r, 1)}, {Kind: Arc, Bulge: 1, End: PtMM(-r, -1)},
		}}}
		return o.Mapped(Rotate(360 * rng.Float64()))
	}
	return wavyRing(r, 3+rng.IntN(6), 7*rng.Float64(), 8+rng.IntN(30))
}

// petal returns a wavy closed curve of n cubics through its points.
func petal(r float64, waves int, depth, phase float64, n int) Outline {
	at := func(a float64) (x, y, dx, dy float64) {
		s, c := math.Sincos(a)
		ws, wc := math.Sincos(float64(waves)*a + phase)
		d, dd := r*(1+depth*wc), -r*depth*float64(waves)*ws
		return d * c, d * s, dd*c - d*s, dd*s + d*c
	}
	step := 2 * math.Pi / float64(n)
	x, y, dx, dy := at(0)
	c := Contour{Start: PtMM(x, y)}
	for i := range n {
		nx, ny, ndx, ndy := at(step * float64(i+1))
		c.Segments = append(c.Segments, Segment{
			Kind: Cubic, C1: PtMM(x+dx*step/3, y+dy*step/3), C2: PtMM(nx-ndx*step/3, ny-ndy*step/3), End: PtMM(nx, ny),
		})
		x, y, dx, dy = nx, ny, ndx, ndy
	}
	c.Segments[n-1].End = c.Start
	return Outline{c}
}

// wavyRing returns a petal with a petal cut out of it.
func wavyRing(r float64, waves int, phase float64, n int) Outline {
	rim, hole := petal(r, waves, 0.2, phase, n), petal(r*0.7, waves, 0.2, phase, n)
	return Outline{rim[0], turnedBack(hole[0])}
}

// turnedBack returns c run the other way.
func turnedBack(c Contour) Contour {
	back := Contour{Start: c.Start}
	curves := c.curves(nil)
	for i := len(curves) - 1; i >= 0; i-- {
		v := curves[i]
		back.Segments = append(back.Segments, Segment{Kind: v.Kind, C1: v.C2, C2: v.C1, Bulge: -v.Bulge, End: v.from})
	}
	return back
}

func randomStrip(rng *rand.Rand) Strip {
	at := func() float64 { return 8*rng.Float64() - 4 }
	if rng.IntN(3) == 0 { // on a coarse lattice, so that much touches
		at = func() float64 { return float64(rng.IntN(9) - 4) }
	}
	return stripMM(at(), at(), at(), at(), 0.25*float64(1+rng.IntN(8)))
}

// A split point is put on the grid, so a line that is split moves by less than a
// nanometre: that, along every line, bounds what the areas may differ by.
func TestWhatStripsTakeAndLeaveIsTheWhole(t *testing.T) {
	rng := rand.New(rand.NewPCG(21, 1))
	for k := range 4000 {
		o := randomMotif(rng)
		strips := make([]Strip, 1+rng.IntN(3))
		for i := range strips {
			strips[i] = randomStrip(rng)
		}
		without, within := mustClip(t, o, strips...)
		got, want := without.AreaMM2()+within.AreaMM2(), o.AreaMM2()
		if slack := 1.5e-6 * (lengthMM(without) + lengthMM(within)); math.Abs(got-want) > slack {
			t.Errorf("case %d: %.9f + %.9f mm2 is not %.9f; strips %v", k, without.AreaMM2(), within.AreaMM2(), want, strips)
		}
		if err := agreesWithStraightPieces(o, strips, within); err != nil {
			t.Errorf("case %d: %v; strips %v", k, err, strips)
		}
		if err := holdsThePlaces(rng, o, strips, without, within); err != nil {
			t.Errorf("case %d: %v; strips %v", k, err, strips)
		}
	}
}

// agreesWithStraightPieces holds the area against the exact arrangement of the
// straight pieces, which lie within Chord of the curves.
func agreesWithStraightPieces(o Outline, strips []Strip, within Outline) error {
	shapes := [][]Ring{o.Rings(Chord)}
	for _, s := range strips {
		if r := s.Ring(); r != nil {
			shapes = append(shapes, []Ring{r})
		}
	}
	all, err := Union(shapes)
	if err != nil {
		return err
	}
	only, err := Union(shapes[1:])
	if err != nil {
		return err
	}
	flat, err := Union(shapes[:1])
	if err != nil {
		return err
	}
	want := flat.AreaMM2() + only.AreaMM2() - all.AreaMM2()
	if got := within.AreaMM2(); math.Abs(got-want) > 2e-3*(lengthMM(o)+1) {
		return fmt.Errorf("%.6f mm2 within, the straight pieces have %.6f", got, want)
	}
	return nil
}

// holdsThePlaces tests places that are not within 3 µm of a line.
func holdsThePlaces(rng *rand.Rand, o Outline, strips []Strip, without, within Outline) error {
	for range 8 {
		p := PtMM(10*rng.Float64()-5, 10*rng.Float64()-5)
		if o.near(p, 3*Micrometre) || without.near(p, 3*Micrometre) || within.near(p, 3*Micrometre) {
			continue
		}
		whole, covered := Shape{Outline: o}.Contains(p), false
		for _, s := range strips {
			covered = covered || s.Ring().Winding(p) != 0
		}
		if got, want := (Shape{Outline: without}).Contains(p), whole && !covered; got != want {
			return fmt.Errorf("without holds %v: %v, want %v", p, got, want)
		}
		if got, want := (Shape{Outline: within}).Contains(p), whole && covered; got != want {
			return fmt.Errorf("within holds %v: %v, want %v", p, got, want)
		}
	}
	return nil
}

// near reports whether the straight pieces of o come so near to p.
func (o Outline) near(p Point, far Length) bool {
	for _, r := range o.Rings(Chord) {
		for i, b := range r {
			a := r[(i+len(r)-1)%len(r)]
			d, way := p.Sub(a), b.Sub(a)
			t := max(0, min(1, float64(way.Dot(d))/max(1, float64(way.Dot(way)))))
			if math.Hypot(float64(d.X)-t*float64(way.X), float64(d.Y)-t*float64(way.Y)) < float64(far) {
				return true
			}
		}
	}
	return false
}

func TestCutArcsKeepTheirRadiusAndDiscsStayDiscs(t *testing.T) {
	d := DiscShape(PtMM(3, 4), MM(2))
	if got, err := d.Without(stripMM(0, 9, 9, 9, 1)); err != nil || got.Outline != nil || got.Disc != d.Disc {
		t.Errorf("a disc that no strip meets: %v, %v, want the disc", got, err)
	}
	got, err := d.Without(stripMM(0, 4, 9, 4, 0.5))
	if err != nil {
		t.Fatal(err)
	}
	arcs := 0
	for _, c := range got.Outline {
		for _, v := range c.curves(nil) {
			if v.Kind != Arc {
				continue
			}
			arcs++
			if cx, cy, r, _, _ := v.arc(v.from); math.Abs(r-1e6) > 1 || math.Hypot(cx-3e6, cy-4e6) > 30 {
				t.Errorf("an arc of radius %.6f nm about %.1f, %.1f; want 1e6 about the disc's centre", r, cx, cy)
			}
		}
	}
	if arcs < 2 || len(got.Outline) != 2 {
		t.Errorf("%d arcs in %d contours, want at least two in two", arcs, len(got.Outline))
	}
}

func TestStripsTooLongAreRefused(t *testing.T) {
	if _, err := square(0, 0, 4, 4).Without(stripMM(-800, 2, 800, 2, 1)); err == nil {
		t.Error("a strip of 1600 mm was taken")
	}
}

// BenchmarkWithout cuts 2,700 wavy rings of 80 cubics with a strip each.
func BenchmarkWithout(b *testing.B) {
	rng := rand.New(rand.NewPCG(5, 5))
	var motifs []Outline
	var strips []Strip
	for k := range 2700 {
		d := PtMM(float64(k%60)*6, float64(k/60)*6)
		motifs = append(motifs, wavyRing(2, 3+rng.IntN(6), 7*rng.Float64(), 40).Moved(d))
		a := 2 * math.Pi * rng.Float64()
		strips = append(strips, Strip{d, d.Add(PtMM(4*math.Cos(a), 4*math.Sin(a))), MM(0.3)})
	}
	b.ResetTimer()
	for range b.N {
		for i, o := range motifs {
			if _, err := o.Without(strips[i]); err != nil {
				b.Fatal(err)
			}
		}
	}
}
