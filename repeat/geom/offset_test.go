package geom

import (
	"math"
	"math/rand/v2"
	"testing"
)

func mustGrow(t testing.TB, o Outline, by Length) Outline {
	t.Helper()
	grown, err := o.Grown(by)
	if err != nil {
		t.Fatal(err)
	}
	return grown
}

// slotMM returns a slot with round ends, straight for length, about the origin.
func slotMM(length, width float64) Outline {
	x, y := length/2, width/2
	return Outline{{PtMM(-x, -y), []Segment{
		{Kind: Line, End: PtMM(x, -y)}, {Kind: Arc, Bulge: 1, End: PtMM(x, y)},
		{Kind: Line, End: PtMM(-x, y)}, {Kind: Arc, Bulge: 1, End: PtMM(-x, -y)},
	}}}
}

// The closed forms are worked out by hand; GEOS 3.11.1 agrees with the rectangle
// (332.566292, 96, 196.566292), the slot (19.141573), the annulus (50.265167) and
// the star, each within its own chords.
func TestGrowingHasTheAreaThatGeometrySays(t *testing.T) {
	disc := Outline{Disc{Diameter: MM(6)}.contour()}
	el := Outline{Ring{PtMM(0, 0), PtMM(6, 0), PtMM(6, 2), PtMM(2, 2), PtMM(2, 6), PtMM(0, 6)}.contour()}
	for _, c := range []struct {
		name     string
		o        Outline
		by       []float64 // one after the other, in millimetres
		area     float64
		contours int
	}{
		{"a rectangle outwards", square(0, 0, 20, 10), []float64{2}, 332.566370614, 1},
		{"a rectangle inwards", square(0, 0, 20, 10), []float64{-2}, 96, 1},
		{"a rectangle opened", square(0, 0, 20, 10), []float64{-2, 2}, 196.566370614, 1},
		{"a rectangle taken away", square(0, 0, 20, 10), []float64{-5}, 0, 0},
		{"a slot", slotMM(8, 2), []float64{0}, 19.141592654, 1},
		{"a slot from its middle", slotMM(8, 1), []float64{0.5}, 19.141592654, 1},
		{"a slot that vanishes", slotMM(8, 2), []float64{-1.01}, 0, 0},
		{"a turned slot that vanishes", slotMM(8, 2).Mapped(Rotate(30)), []float64{-1.5}, 0, 0},
		{"an annulus from a wider", annulus(6, 2), []float64{-1}, 50.265482457, 2},
		{"an annulus from a narrower", annulus(4.5, 3.5), []float64{0.5}, 50.265482457, 2},
		{"an annulus whose hole closes", annulus(5, 3), []float64{4}, 81 * math.Pi, 1},
		{"an annulus that vanishes", annulus(5, 3), []float64{-1.5}, 0, 0},
		{"a disc", disc, []float64{1}, 16 * math.Pi, 1},
		{"a disc that vanishes", disc, []float64{-3.5}, 0, 0},
		{"an L, one corner mitred", el, []float64{1}, 20 + 24 + 5*math.Pi/4 - 1, 1},
		{"a star and back", star(10, 4), []float64{0}, 117.557050458, 1},
		{"two squares that grow until they touch", append(square(0, 0, 4, 4), square(5, 0, 9, 4)...), []float64{0.5}, 2 * (16 + 8 + math.Pi/4), 1},
	} {
		o := c.o
		for _, by := range c.by {
			o = mustGrow(t, o, MM(by))
		}
		if got := o.AreaMM2(); math.Abs(got-c.area) > 2e-6*(lengthMM(o)+1) || len(o) != c.contours {
			t.Errorf("%s: %.9f mm2 in %d contours, want %.9f in %d", c.name, got, len(o), c.area, c.contours)
		}
	}
}

// Steiner's formula for what is convex: A + P·r + π·r².
func TestConvexMotifsGrowByTheFormulaOfSteiner(t *testing.T) {
	rng := rand.New(rand.NewPCG(41, 1))
	for k := range 500 {
		n := 3 + rng.IntN(9)
		ring := make(Ring, n)
		for i := range ring {
			s, c := math.Sincos(2 * math.Pi * (float64(i) + 0.6*rng.Float64()) / float64(n))
			ring[i] = PtMM(5*c, 3*s)
		}
		o := Outline{ring.contour()}
		if rng.IntN(2) == 0 {
			o = slotMM(1+8*rng.Float64(), 1+3*rng.Float64()).Mapped(Rotate(360 * rng.Float64()))
		}
		r := 0.01 + 3*rng.Float64()
		got := mustGrow(t, o, MM(r))
		want := o.AreaMM2() + lengthMM(o)*r + math.Pi*r*r
		if math.Abs(got.AreaMM2()-want) > 3e-6*lengthMM(got) || len(got) != 1 {
			t.Errorf("case %d: %.9f mm2 in %d contours, want %.9f in one", k, got.AreaMM2(), len(got), want)
		}
	}
}

// distanceTo returns whether p is inside of the rings, and how far from them.
func distanceTo(rings []Ring, p Point) (inside bool, far float64) {
	far = math.Inf(1)
	n := 0
	for _, r := range rings {
		n += r.Winding(p)
		for i, b := range r {
			a := r[(i+len(r)-1)%len(r)]
			d, way := p.Sub(a), b.Sub(a)
			t := max(0, min(1, float64(way.Dot(d))/max(1, float64(way.Dot(way)))))
			far = min(far, math.Hypot(float64(d.X)-t*float64(way.X), float64(d.Y)-t*float64(way.Y)))
		}
	}
	return n != 0, far
}

// A place is in a grown outline where it is in the outline or no farther from it
// than it grew, and in a shrunk one where it is in it and farther from its rim: on
// random motifs, grown a little and beyond all their bends.
func TestGrownOutlinesHoldThePlacesThatAreNear(t *testing.T) {
	rng := rand.New(rand.NewPCG(42, 1))
	for k := range 1500 {
		o := randomMotif(rng)
		by := MM((rng.Float64() - 0.5) * []float64{0.1, 1, 4}[rng.IntN(3)])
		sound, _ := o.Mended()
		rings := sound.Rings(Chord)
		grown := mustGrow(t, o, by)
		result := grown.Rings(Chord)
		for range 40 {
			p := PtMM(14*rng.Float64()-7, 14*rng.Float64()-7)
			inside, far := distanceTo(rings, p)
			want := inside && far > float64(-by)
			if by > 0 {
				want = inside || far < float64(by)
			}
			if math.Abs(far-math.Abs(float64(by))) < 4*float64(Chord) {
				continue
			}
			if got, _ := distanceTo(result, p); got != want {
				t.Errorf("case %d: grown by %s it holds %v: %v, want %v; %v", k, by, p, got, want, o[:min(1, len(o))])
				break
			}
		}
	}
}

func TestGrownArcsKeepTheirCentre(t *testing.T) {
	got := mustGrow(t, slotMM(8, 2), MM(0.25))
	arcs := 0
	for _, v := range got.curves()[0] {
		if v.Kind != Arc {
			continue
		}
		arcs++
		if cx, cy, r, _, _ := v.arc(v.from); math.Abs(r-1.25e6) > 1 || math.Abs(cy) > 1 || math.Abs(math.Abs(cx)-4e6) > 1 {
			t.Errorf("an arc of radius %.3f nm about %.3f, %.3f; want 1.25e6 about ±4e6, 0", r, cx, cy)
		}
	}
	if arcs != 2 || len(got[0].Segments) != 4 {
		t.Errorf("%d arcs in %d segments, want 2 in 4", arcs, len(got[0].Segments))
	}
}

func TestGrowingBeyondTheSpanIsRefused(t *testing.T) {
	if _, err := square(0, 0, 4, 4).Grown(MM(600)); err == nil {
		t.Error("a square grown by 600 mm was taken")
	}
}

// manyMotifs is 2,000 wavy motifs of 40 cubics.
func manyMotifs() []Outline {
	rng := rand.New(rand.NewPCG(2, 2000))
	motifs := make([]Outline, 2000)
	for k := range motifs {
		d := Point{MM(float64(k%50)*8 + rng.Float64()), MM(float64(k/50)*3.75 + rng.Float64())}
		motifs[k] = petal(1.3, 3+rng.IntN(6), 0.23, 7*rng.Float64(), 40).Moved(d)
	}
	return motifs
}

func BenchmarkGrown(b *testing.B) {
	motifs := manyMotifs()
	b.ResetTimer()
	for range b.N {
		for _, o := range motifs {
			if _, err := o.Grown(MM(0.05)); err != nil {
				b.Fatal(err)
			}
		}
	}
}
