package geom

import (
	"math"
	"math/rand/v2"
	"reflect"
	"testing"
)

// flawsOf returns the flaws of the mends, each once.
func flawsOf(mends []Mend) map[Flaw]bool {
	found := map[Flaw]bool{}
	for _, m := range mends {
		found[m.Flaw] = true
	}
	return found
}

func TestMendingSaysWhatWasWrong(t *testing.T) {
	bowTie := Outline{Ring{PtMM(0, 0), PtMM(4, 4), PtMM(4, 0), PtMM(0, 4)}.contour()}
	twice := append(square(0, 0, 4, 4), square(0, 0, 4, 4)...)
	eight := Outline{{PtMM(0, 0), []Segment{
		{Kind: Arc, Bulge: 1, End: PtMM(4, 0)}, {Kind: Arc, Bulge: 1, End: PtMM(8, 0)},
		{Kind: Arc, Bulge: 1, End: PtMM(4, 0)}, {Kind: Arc, Bulge: 1, End: PtMM(0, 0)},
	}}}
	still := square(0, 0, 4, 4)
	still[0].Segments = append([]Segment{{Kind: Line}}, still[0].Segments...)
	bad := square(0, 0, 4, 4)
	bad[0].Segments[1] = Segment{Kind: Arc, Bulge: math.NaN(), End: bad[0].Segments[1].End}
	for _, c := range []struct {
		name     string
		o        Outline
		flaw     Flaw // 0 where it is sound
		area     float64
		contours int
	}{
		{"nothing", Outline{}, 0, 0, 0},
		{"a square", square(0, 0, 4, 4), 0, 16, 1},
		{"an annulus", annulus(5, 3), 0, 16 * math.Pi, 2},
		{"a petal", petal(3, 5, 0.2, 1, 40), 0, petal(3, 5, 0.2, 1, 40).AreaMM2(), 1},
		{"a square the other way", Outline{turnedBack(square(0, 0, 4, 4)[0])}, Reversed, 16, 1},
		{"an annulus all the other way", Outline{turnedBack(annulus(5, 3)[0]), turnedBack(annulus(5, 3)[1])}, Reversed, 16 * math.Pi, 2},
		{"a square in a square", append(square(0, 0, 4, 4), square(1, 1, 2, 2)...), Nested, 16, 1},
		{"a square twice", twice, Crossed, 16, 1},
		// Checked with GEOS make_valid: 8 (buffer(0) drops a lobe).
		{"a bow-tie", bowTie, Crossed, 8, 2},
		{"an eight of arcs", eight, Crossed, 8 * math.Pi, 2},
		{"a still segment", still, StillSegment, 16, 1},
		{"a bulge that is no number", bad, BadBulge, 16, 1},
		{"a line and back", Outline{{PtMM(0, 0), []Segment{{End: PtMM(4, 0)}, {End: PtMM(0, 0)}}}}, NoArea, 0, 0},
		{"a spike", Outline{Ring{PtMM(0, 0), PtMM(4, 0), PtMM(9, 0), PtMM(4, 0), PtMM(4, 4), PtMM(0, 4)}.contour()}, Crossed, 16, 1},
		{"too wide", square(0, 0, 2000, 1), TooWide, 2000, 1},
	} {
		got, mends := c.o.Mended()
		flaws := flawsOf(mends)
		if c.flaw == 0 && (len(mends) > 0 || !reflect.DeepEqual(got, c.o)) {
			t.Errorf("%s: %v was mended, want it left as it is", c.name, mends)
		}
		if c.flaw != 0 && !flaws[c.flaw] {
			t.Errorf("%s: mended %v, want flaw %d", c.name, mends, c.flaw)
		}
		if a := got.AreaMM2(); math.Abs(a-c.area) > 1e-4 || len(got) != c.contours {
			t.Errorf("%s: %.6f mm2 in %d contours, want %.6f in %d", c.name, a, len(got), c.area, c.contours)
		}
	}
}

// randomTangle is contours that cross themselves and each other.
func randomTangle(rng *rand.Rand) Outline {
	var o Outline
	at := func() Point { return PtMM(8*rng.Float64()-4, 8*rng.Float64()-4) }
	if rng.IntN(2) == 0 {
		at = func() Point { return PtMM(float64(rng.IntN(7)-3), float64(rng.IntN(7)-3)) }
	}
	for range 1 + rng.IntN(3) {
		c := Contour{Start: at()}
		for range rng.IntN(7) {
			s := Segment{Kind: Kind(rng.IntN(3)), End: at()}
			switch s.Kind {
			case Cubic:
				s.C1, s.C2 = at(), at()
			case Arc:
				s.Bulge = 4*rng.Float64() - 2
			}
			c.Segments = append(c.Segments, s)
		}
		o = append(o, c)
	}
	return o
}

// checkMended holds a mended outline against the union of its straight pieces, and
// mends it again.
func checkMended(t *testing.T, name any, o Outline) {
	t.Helper()
	got, _ := o.Mended()
	flat, err := Union([][]Ring{o.Rings(Chord)})
	if err != nil {
		return // wider than a union may be
	}
	length := lengthMM(o)
	if a, want := got.AreaMM2(), flat.AreaMM2(); !(math.Abs(a-want) <= 2e-3*(length+1)) {
		t.Errorf("%v: mended %.6f mm2, the straight pieces cover %.6f; %v", name, a, want, o)
	}
	again, err := Union([][]Ring{got.Rings(Chord)})
	if err != nil {
		t.Errorf("%v: mended: %v", name, err)
	}
	if a, want := again.AreaMM2(), flat.AreaMM2(); !(math.Abs(a-want) <= 4e-3*(length+1)) {
		t.Errorf("%v: mended covers %.6f mm2, want %.6f; %v", name, a, want, o)
	}
}

func TestMendingKeepsWhatIsCovered(t *testing.T) {
	rng := rand.New(rand.NewPCG(31, 1))
	for k := range 3000 {
		checkMended(t, k, randomTangle(rng))
	}
}

func TestSoundMotifsAreLeftAsTheyAre(t *testing.T) {
	rng := rand.New(rand.NewPCG(32, 1))
	for k := range 2000 {
		o := randomMotif(rng)
		if got, mends := o.Mended(); len(mends) > 0 || !reflect.DeepEqual(got, o) {
			t.Errorf("motif %d: mended %v", k, mends)
		}
	}
}

func TestMendingSplitsOnlyWhatIsCrossed(t *testing.T) {
	o := append(Outline{Disc{Diameter: MM(10)}.contour()}, Disc{PtMM(6, 0), MM(10)}.contour())
	got, _ := o.Mended()
	if len(got) != 1 {
		t.Fatalf("two discs that overlap: %d contours, want one", len(got))
	}
	for _, s := range got[0].Segments {
		if s.Kind != Arc {
			t.Errorf("a rim of arcs holds %v", s)
		}
	}
	// 100π − (50·acos 0.6 − 24) − 50π, closed form.
	if a := got.AreaMM2(); math.Abs(a-134.714871779) > 1e-5 {
		t.Errorf("%.9f mm2, want 134.714871779", a)
	}
}

func TestALineOfAMillionCornersIsMended(t *testing.T) {
	ring := make(Ring, 1_000_000)
	for i := range ring {
		s, c := math.Sincos(2 * math.Pi * float64(i) / float64(len(ring)))
		ring[i] = PtMM(300*c, 300*s)
	}
	o := Outline{ring.contour()}
	if _, mends := o.Mended(); len(mends) > 0 {
		t.Errorf("a circle of a million corners: %v", mends)
	}
	ring[0] = PtMM(-310, 0)
	got, mends := Outline{ring.contour()}.Mended()
	if !flawsOf(mends)[Crossed] || len(got) < 1 {
		t.Errorf("a line across it: %v", mends)
	}
}

func FuzzMend(f *testing.F) {
	f.Add(uint64(1), uint64(2), 0.5, int64(0))
	f.Add(uint64(3), uint64(4), math.NaN(), int64(1<<40))
	f.Add(uint64(5), uint64(6), math.Inf(1), int64(-1))
	f.Fuzz(func(t *testing.T, a, b uint64, bulge float64, far int64) {
		o := randomTangle(rand.New(rand.NewPCG(a, b)))
		checkMended(t, "tangle", o)
		for i := range o {
			for j := range o[i].Segments {
				o[i].Segments[j].Bulge = bulge
			}
			o[i].Start.X += Length(far)
		}
		o.Mended()
	})
}

func BenchmarkMended(b *testing.B) {
	rng := rand.New(rand.NewPCG(5, 5))
	var motifs []Outline
	for range 2700 {
		motifs = append(motifs, wavyRing(2, 3+rng.IntN(6), 7*rng.Float64(), 40))
	}
	b.ResetTimer()
	for range b.N {
		for _, o := range motifs {
			o.Mended()
		}
	}
}
