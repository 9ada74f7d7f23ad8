package pattern_test

import (
	"context"
	"math"
	"math/rand/v2"
	"reflect"
	"testing"

	"tsugime/repeat/geom"
	"tsugime/repeat/pattern"
)

// dots returns a unit of across × along dots of 0.5 mm, 1.2 mm apart, each as spoil
// leaves it; a dot of no size is missing.
func dots(across, along int, spoil func(i, j int, m *pattern.Motif)) pattern.Unit {
	const pitch = 1.2
	u := pattern.Unit{Lattice: pattern.Straight(geom.MM(pitch*float64(across)), geom.MM(pitch*float64(along)))}
	for j := range along {
		for i := range across {
			m := pattern.Motif{
				ID: pattern.ID(len(u.Motifs) + 1), Shape: geom.DiscShape(geom.Point{}, geom.MM(0.5)),
				At: geom.PtMM(pitch*float64(i), pitch*float64(j)),
			}
			if spoil != nil {
				spoil(i, j, &m)
			}
			if m.Shape.Disc.Diameter > 0 {
				u.Motifs = append(u.Motifs, m)
			}
		}
	}
	return u
}

func proof(t testing.TB, u pattern.Unit) pattern.Proof {
	t.Helper()
	p, err := pattern.UnderPattern(context.Background(), u)
	if err != nil {
		t.Fatal(err)
	}
	return p
}

func TestAnEvenGroundHasNoUnderPattern(t *testing.T) {
	for _, u := range []pattern.Unit{dots(3, 3, nil), dots(9, 7, nil), dots(1, 40, nil), dots(20, 25, nil), dots(40, 30, nil)} {
		if p := proof(t, u); len(p.Found) > 0 {
			t.Errorf("%d dots: %+v", len(u.Motifs), p.Found)
		}
	}
}

// Every traditional ground as its recipe draws it; the one that wavers by chance is
// drawn uneven.
func TestTraditionalGroundsHaveNoUnderPattern(t *testing.T) {
	for _, g := range pattern.Grounds() {
		found := proof(t, grown(t, g.Recipe(), step6, 0)).Found
		if wavers := g.Name == "wavering-stripes"; wavers != (len(found) > 0) {
			t.Errorf("%s: %+v", g.Name, found)
		}
	}
}

// The contrast follows from the closed form of a disc's transform: each wave of rows
// of which the fifth of nine is larger has the difference of two discs, over all
// that is cut.
func TestRowsOfLargerDotsAreABandOfTheirPeriod(t *testing.T) {
	const d, pitch, rows = 0.5, 1.2, 9
	for _, larger := range []float64{1.02, 0.98} {
		u := dots(9, 4*rows, func(_, j int, m *pattern.Motif) {
			if j%rows == 4 {
				m.Shape.Disc.Diameter = geom.MM(d * larger)
			}
		})
		p := proof(t, u)
		if len(p.Found) != 1 || p.More != 0 {
			t.Fatalf("found %+v", p.Found)
		}
		airy := func(d, k float64) float64 { return d * math.J1(math.Pi*d*k) / (2 * k) }
		best := math.Inf(1)
		mean := math.Pi / 4 * d * d * (rows - 1 + larger*larger)
		for n := 1; n < rows; n++ {
			k := float64(n) / (rows * pitch)
			want := 100 * 2 * math.Abs(airy(d*larger, k)-airy(d, k)) / mean
			best = math.Min(best, math.Abs(p.Found[0].ContrastPct-want))
		}
		c := p.Found[0]
		if c.Kind != pattern.UnderBand || c.Period != geom.MM(rows*pitch) || c.DirectionDeg != 0 || best > 1e-6 {
			t.Errorf("%g: %+v, %.2g %% from the closed form", larger, c, best)
		}
	}
}

func TestRowsOutOfStepAreFoundWithTheirPeriodAndDirection(t *testing.T) {
	off := geom.MM(0.024) // 2 % of the pitch
	for _, c := range []struct {
		name      string
		direction float64
		spoil     func(i, j int, m *pattern.Motif)
	}{
		{"a row along itself", 0, func(_, j int, m *pattern.Motif) { m.At.X += off.Times(float64(j % 9 / 8)) }},
		{"a row across itself", 0, func(_, j int, m *pattern.Motif) { m.At.Y += off.Times(float64(j % 9 / 8)) }},
		{"a column along itself", 90, func(i, _ int, m *pattern.Motif) { m.At.Y += off.Times(float64(i % 9 / 8)) }},
		{"a diagonal", 135, func(i, j int, m *pattern.Motif) { m.At.X += off.Times(float64((i + j) % 9 / 8)) }},
	} {
		p := proof(t, dots(18, 9, c.spoil))
		if len(p.Found) == 0 {
			t.Errorf("%s: not found", c.name)
			continue
		}
		period := geom.MM(10.8)
		if c.direction == 135 {
			period = period.Times(math.Sqrt2 / 2)
		}
		f := p.Found[0]
		if len(p.Found) > 1 || (f.Period-period).Abs() > 2 || math.Abs(f.DirectionDeg-c.direction) > 1e-6 || f.SeenTimes < 1 {
			t.Errorf("%s: %+v", c.name, p.Found)
		}
	}
}

// One dot missing of n: 1/n of each wave, whichever it is.
func TestAMissingDotShowsInEveryDirection(t *testing.T) {
	p := proof(t, dots(18, 18, func(i, j int, m *pattern.Motif) {
		if i%9 == 3 && j%9 == 4 {
			m.Shape.Disc.Diameter = 0
		}
	}))
	if len(p.Found) != 12 || p.More == 0 {
		t.Fatalf("found %d and %d", len(p.Found), p.More)
	}
	for _, c := range p.Found[:2] {
		if c.Period != geom.MM(10.8) || math.Mod(c.DirectionDeg, 90) != 0 || c.ContrastPct > 100*2.0/80 || c.ContrastPct < 2 {
			t.Errorf("%+v", c)
		}
	}
	for i, c := range p.Found[1:] {
		if c.SeenTimes > p.Found[i].SeenTimes {
			t.Errorf("%g after %g", c.SeenTimes, p.Found[i].SeenTimes)
		}
	}
}

func TestFarAwayAndInADarkDyeTheSameBandIsSeenOtherwise(t *testing.T) {
	u := dots(3, 9, func(_, j int, m *pattern.Motif) {
		if j == 4 {
			m.Shape.Disc.Diameter = geom.MM(0.53)
		}
	})
	look := pattern.StandBack
	look.Dyed, look.Undyed = 1, 0 // the holes are the dark
	light, dark := proof(t, u), pattern.Proof{}
	var err error
	if dark, err = look.UnderPattern(context.Background(), u); err != nil || len(dark.Found) != 1 {
		t.Fatal(err, dark.Found)
	}
	if dark.Found[0].ContrastPct >= light.Found[0].ContrastPct {
		t.Error("dark dots on much white swing as much over the mean")
	}
	look = pattern.StandBack
	look.Distance = geom.MM(60_000) // 5.4 mm are a third of a minute of arc
	if far, err := look.UnderPattern(context.Background(), u); err != nil || len(far.Found) > 0 {
		t.Error(err, far.Found)
	}
}

// Many dots off their places by up to half a percent have noise and no band; with
// every twelfth row 2 % larger it is found among the noise.
func TestABandIsFoundAmongManyDots(t *testing.T) {
	for _, larger := range []float64{1, 1.02} {
		random := rand.New(rand.NewPCG(5, 1))
		p := proof(t, dots(120, 60, func(_, j int, m *pattern.Motif) {
			m.At = m.At.Add(geom.PtMM(0.006*random.Float64(), 0.006*random.Float64()))
			if j%12 == 5 {
				m.Shape.Disc.Diameter = geom.MM(0.5 * larger)
			}
		}))
		if (larger > 1) != (len(p.Found) > 0) || larger > 1 && (p.Found[0].Period != geom.MM(14.4) || p.Found[0].DirectionDeg != 0) {
			t.Errorf("%g: %+v", larger, p.Found)
		}
	}
}

// Every single change of a motif makes another proof, none the same.
func TestAProofIsTakenAgainWhereTheDrawingChanged(t *testing.T) {
	larger := func(_, j int, m *pattern.Motif) {
		if j == 4 {
			m.Shape.Disc.Diameter = geom.MM(0.53)
		}
	}
	even, uneven := dots(9, 9, nil), dots(9, 9, larger)
	for _, c := range []struct{ from, to pattern.Unit }{{even, uneven}, {uneven, even}, {uneven, uneven}, {pattern.Unit{}, uneven}} {
		p := pattern.Proof{}
		if len(c.from.Motifs) > 0 {
			p = proof(t, c.from)
		}
		again, err := p.Again(context.Background(), c.from, c.to)
		if err != nil || !reflect.DeepEqual(again, proof(t, c.to)) {
			t.Errorf("%+v (%v), want %+v", again, err, proof(t, c.to))
		}
	}
	marked := pattern.Proof{More: 77, Look: pattern.StandBack} // shows whether it is kept
	if kept, _ := marked.Again(context.Background(), even, dots(9, 9, nil)); kept.More != 77 {
		t.Error("the same drawing is looked at anew")
	}
}

func TestAnAbandonedProofReturns(t *testing.T) {
	ctx, cancel := context.WithCancel(context.Background())
	cancel()
	if _, err := pattern.UnderPattern(ctx, dots(9, 9, nil)); err == nil {
		t.Error("no error")
	}
}

func BenchmarkUnderPatternOf9(b *testing.B)   { under(b, dots(3, 3, nil)) }
func BenchmarkUnderPatternOf500(b *testing.B) { under(b, dots(20, 25, nil)) }

func BenchmarkUnderPatternOf63500(b *testing.B) {
	random := rand.New(rand.NewPCG(1, 1))
	under(b, dots(352, 180, func(_, _ int, m *pattern.Motif) {
		m.At = m.At.Add(geom.PtMM(0.1*random.Float64(), 0.1*random.Float64()))
	}))
}

func under(b *testing.B, u pattern.Unit) {
	for b.Loop() {
		proof(b, u)
	}
}
