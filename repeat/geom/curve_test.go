package geom_test

import (
	"math"
	"math/rand/v2"
	"testing"

	"tsugime/repeat/geom"
)

// toSegment returns how far x, y lies from the segment a b, in nanometres.
func toSegment(x, y float64, a, b geom.Point) float64 {
	dx, dy := float64(b.X-a.X), float64(b.Y-a.Y)
	t := 0.0
	if l := dx*dx + dy*dy; l > 0 {
		t = math.Min(math.Max(((x-float64(a.X))*dx+(y-float64(a.Y))*dy)/l, 0), 1)
	}
	return math.Hypot(x-float64(a.X)-t*dx, y-float64(a.Y)-t*dy)
}

func toRing(x, y float64, ring geom.Ring) float64 {
	off := math.Inf(1)
	for i, b := range ring {
		off = math.Min(off, toSegment(x, y, ring[(i+len(ring)-1)%len(ring)], b))
	}
	return off
}

// Points of the true curve, by de Casteljau's construction and by the circle's
// own angle, lie within the chord tolerance of the straight pieces.
func TestStraightPiecesStayNearTheCurve(t *testing.T) {
	random := rand.New(rand.NewPCG(8, 1))
	const slack = 2 // nanometres: each end is put on the grid
	for range 200 {
		chord := geom.Length(16) << random.IntN(14)
		p := [4]geom.Point{}
		for i := range p {
			p[i] = randomPoint(random, 20_000_000)
		}
		cubic := geom.Outline{{Start: p[0], Segments: []geom.Segment{{Kind: geom.Cubic, C1: p[1], C2: p[2], End: p[3]}}}}
		ring := cubic.Rings(chord)[0]
		if len(ring) > 4000 {
			continue // at the bound of pieces no chord is promised
		}
		for i := range 101 {
			x, y := casteljau(p, float64(i)/100)
			if off := toRing(x, y, ring); off > float64(chord)+slack {
				t.Fatalf("cubic %v: %.1f nm off with a chord of %d nm in %d pieces", p, off, chord, len(ring))
			}
		}
		bulge := math.Tan(random.Float64() * 1.4)
		arc := geom.Outline{{Start: p[0], Segments: []geom.Segment{{Kind: geom.Arc, Bulge: bulge, End: p[1]}}}}
		ring = arc.Rings(chord)[0]
		for i := range 101 {
			x, y := onArc(p[0], p[1], bulge, float64(i)/100)
			if off := toRing(x, y, ring); off > float64(chord)+slack {
				t.Fatalf("arc %v %v bulge %v: %.1f nm off with a chord of %d nm in %d pieces", p[0], p[1], bulge, off, chord, len(ring))
			}
		}
	}
}

func casteljau(p [4]geom.Point, t float64) (float64, float64) {
	var x, y [4]float64
	for i, q := range p {
		x[i], y[i] = float64(q.X), float64(q.Y)
	}
	for n := 3; n > 0; n-- {
		for i := range n {
			x[i] += t * (x[i+1] - x[i])
			y[i] += t * (y[i+1] - y[i])
		}
	}
	return x[0], y[0]
}

// onArc finds the point by the inscribed angle: seen from the arc, the chord
// spans π − θ/2, so the point lies at the ends' angles α and θ/2 − α.
func onArc(a, b geom.Point, bulge, t float64) (float64, float64) {
	half := 2 * math.Atan(bulge) // θ/2
	alpha, beta := half*(1-t), half*t
	dx, dy := float64(b.X-a.X), float64(b.Y-a.Y)
	// The law of sines in the triangle a, point, b.
	reach := math.Sin(beta) / math.Sin(half)
	sin, cos := math.Sincos(-alpha)
	return float64(a.X) + reach*(dx*cos-dy*sin), float64(a.Y) + reach*(dx*sin+dy*cos)
}

func TestDiscsAreRound(t *testing.T) {
	random := rand.New(rand.NewPCG(8, 2))
	for range 300 {
		d := geom.Disc{Centre: randomPoint(random, 1e8), Diameter: geom.Length(1 + random.Int64N(1<<random.IntN(30)))}
		chord := geom.Length(1) << random.IntN(16)
		ring := d.Ring(chord)
		r := float64(d.Diameter) / 2
		for i, p := range ring {
			next := ring[(i+1)%len(ring)]
			x, y := float64(p.X+next.X)/2-float64(d.Centre.X), float64(p.Y+next.Y)/2-float64(d.Centre.Y)
			if off := r - math.Hypot(x, y); off > float64(chord)+2 && off > 0.08*r+2 || off < -2 {
				t.Fatalf("%+v: a piece is %.1f nm inside with a chord of %d nm", d, off, chord)
			}
			if off := math.Abs(p.Sub(d.Centre).Norm() - r); off > 1 {
				t.Fatalf("%+v: a corner is %.1f nm off the rim", d, off)
			}
		}
		if ring.Area2() < 0 {
			t.Fatalf("%+v: the ring turns the wrong way", d)
		}
		if got, want := d.AreaMM2(), math.Pi*d.RadiusMM()*d.RadiusMM(); math.Abs(got-want) > 1e-12*want {
			t.Fatalf("%+v: area %v, want %v", d, got, want)
		}
		if b := d.Bounds(); b.Width() < d.Diameter || b.Width() > d.Diameter+1 || !b.Holds(d.Centre) {
			t.Fatalf("%+v reaches %v", d, b)
		}
	}
}

// A place is in a disc by its distance; in an outline as in a fine mask of it.
func TestShapesHoldWhatTheyCover(t *testing.T) {
	o := geom.Shape{Outline: outline(t, "M-3 0A3 3 0 0 1 3 0A3 3 0 0 1 -3 0ZM-1 0A1 1 0 0 0 1 0A1 1 0 0 0 -1 0Z")}
	random := rand.New(rand.NewPCG(8, 3))
	for range 3000 {
		p := randomPoint(random, 4_000_000)
		r := p.Norm() / float64(geom.Millimetre)
		if math.Abs(r-1) < 0.002 || math.Abs(r-3) < 0.002 {
			continue
		}
		if got, want := o.Contains(p), r > 1 && r < 3; got != want {
			t.Fatalf("a ring from 1 to 3 mm holds %v: %v, want %v", p, got, want)
		}
		if got, want := geom.DiscShape(geom.Point{}, geom.MM(6)).Contains(p), r <= 3; got != want {
			t.Fatalf("a disc of 6 mm holds %v: %v, want %v", p, got, want)
		}
	}
}

// Winding by the sum of the angles under which the ring is seen.
func TestWindingCountsTurns(t *testing.T) {
	random := rand.New(rand.NewPCG(8, 4))
	for range 500 {
		ring := make(geom.Ring, 3+random.IntN(8))
		for i := range ring {
			ring[i] = randomPoint(random, 20)
		}
		p := randomPoint(random, 20)
		var angle, near float64 = 0, math.Inf(1)
		for i, b := range ring {
			a := ring[(i+len(ring)-1)%len(ring)]
			near = math.Min(near, toSegment(float64(p.X), float64(p.Y), a, b))
			u, v := a.Sub(p), b.Sub(p)
			angle += math.Atan2(float64(u.Cross(v)), float64(u.Dot(v)))
		}
		if near < 1e-9 {
			continue // on the rim
		}
		if got, want := ring.Winding(p), int(math.Round(angle/2/math.Pi)); got != want {
			t.Fatalf("%v around %v: got %d, want %d", ring, p, got, want)
		}
	}
}

// A stretched disc stays a disc: the punch that cuts it does.
func TestStretchingMovesDiscsAndBendsOutlines(t *testing.T) {
	d := geom.DiscShape(geom.PtMM(10, 20), geom.MM(1))
	if got, want := d.Stretched(1.5, 0.5), geom.DiscShape(geom.PtMM(15, 10), geom.MM(1)); got.Disc != want.Disc {
		t.Errorf("got %v, want %v", got.Disc, want.Disc)
	}
	o := geom.Shape{Outline: outline(t, "M0 0H2V2H0Z")}
	if got := o.Stretched(1.5, 0.5).AreaMM2(); math.Abs(got-3) > 1e-9 {
		t.Errorf("a square of 4 mm² stretched by 1.5 and 0.5 has %v mm², want 3", got)
	}
}
