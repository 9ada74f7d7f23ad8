package geom_test

import (
	"math"
	"math/rand/v2"
	"testing"

	"tsugime/repeat/geom"
)

func track(t testing.TB, open bool, data string) geom.Track {
	t.Helper()
	return geom.Track{Contour: outline(t, data)[0], Open: open}
}

// openLine returns a run of straight pieces that isn't closed.
func openLine(at ...geom.Point) geom.Track {
	l := geom.Track{Contour: geom.Contour{Start: at[0]}, Open: true}
	for _, p := range at[1:] {
		l.Segments = append(l.Segments, geom.Segment{End: p})
	}
	return l
}

func TestStrokesHaveTheAreaOfTheirForm(t *testing.T) {
	w := geom.MM(2)
	elbow := openLine(geom.PtMM(0, 0), geom.PtMM(10, 0), geom.PtMM(10, 10))
	circle := track(t, false, "M5 0A5 5 0 0 1 -5 0A5 5 0 0 1 5 0Z")
	small := track(t, false, "M.5 0A.5 .5 0 0 1 -.5 0A.5 .5 0 0 1 .5 0Z")
	square := track(t, false, "M0 0H10V10H0Z")
	half := track(t, true, "M5 0A5 5 0 0 1 -5 0")
	half.Segments = half.Segments[:1]
	dot := geom.Track{Contour: geom.Contour{Start: geom.PtMM(3, 4)}, Open: true}
	for name, c := range map[string]struct {
		pen   geom.Stroke
		track geom.Track
		want  float64
	}{
		"mitred elbow":           {geom.Stroke{Width: w}, elbow, 40},
		"bevelled elbow":         {geom.Stroke{Width: w, Join: geom.BevelJoin}, elbow, 39.5},
		"elbow over its limit":   {geom.Stroke{Width: w, Miter: 1.4}, elbow, 39.5},
		"rounded elbow":          {geom.Stroke{Width: w, Join: geom.RoundJoin}, elbow, 39 + math.Pi/4},
		"round caps":             {geom.Stroke{Width: w, Cap: geom.RoundCap}, elbow, 40 + math.Pi},
		"square caps":            {geom.Stroke{Width: w, Cap: geom.SquareCap}, elbow, 44},
		"ring":                   {geom.Stroke{Width: w}, circle, math.Pi * (36 - 16)},
		"ring without a hole":    {geom.Stroke{Width: w}, small, math.Pi * 1.5 * 1.5},
		"frame":                  {geom.Stroke{Width: w}, square, 144 - 64},
		"half ring":              {geom.Stroke{Width: w}, half, math.Pi * (36 - 16) / 2},
		"round dot":              {geom.Stroke{Width: w, Cap: geom.RoundCap}, dot, math.Pi},
		"square dot":             {geom.Stroke{Width: w, Cap: geom.SquareCap}, dot, 4},
		"flat dot":               {geom.Stroke{Width: w}, dot, 0},
		"dashes":                 {geom.Stroke{Width: w, Dash: []geom.Length{geom.MM(3), geom.MM(2)}}, openLine(geom.PtMM(0, 0), geom.PtMM(20, 0)), 24},
		"odd dashes":             {geom.Stroke{Width: w, Dash: []geom.Length{geom.MM(4)}, DashFrom: geom.MM(4)}, openLine(geom.PtMM(0, 0), geom.PtMM(20, 0)), 16},
		"dashes on a ring":       {geom.Stroke{Width: w, Dash: []geom.Length{geom.MM(5 * math.Pi / 4), geom.MM(5 * math.Pi / 4)}}, circle, math.Pi * (36 - 16) / 2},
		"one dash round a frame": {geom.Stroke{Width: w, Dash: []geom.Length{geom.MM(50), geom.MM(2)}}, square, 144 - 64},
	} {
		o, err := c.pen.Outline(c.track)
		if err != nil {
			t.Errorf("%s: %v", name, err)
			continue
		}
		if got := o.AreaMM2(); math.Abs(got-c.want) > 2e-5 {
			t.Errorf("%s: %.6f mm², want %.6f", name, got, c.want)
		}
		if _, mends := o.Mended(); len(mends) > 0 {
			t.Errorf("%s is not sound: %v", name, mends)
		}
	}
}

// A place is under the pen where a disc of its width about some place of the line
// holds it, for round caps and joins: an oracle that knows nothing of edges.
func TestAStrokeCoversWhatLiesNearTheLine(t *testing.T) {
	rng := rand.New(rand.NewPCG(7, 11))
	at := func() geom.Point { return geom.PtMM(rng.Float64()*40, rng.Float64()*40) }
	wrong, looked := 0, 0
	for n := range 120 {
		l := geom.Track{Contour: geom.Contour{Start: at()}, Open: n%3 != 0}
		for range 1 + rng.IntN(4) {
			s := geom.Segment{Kind: geom.Kind(rng.IntN(3)), End: at(), C1: at(), C2: at()}
			if s.Kind == geom.Arc {
				s.Bulge = rng.Float64()*4 - 2
			}
			l.Segments = append(l.Segments, s)
		}
		pen := geom.Stroke{Width: geom.MM(0.2 + 8*rng.Float64()), Cap: geom.RoundCap, Join: geom.RoundJoin}
		o, err := pen.Outline(l)
		if err != nil {
			t.Fatal(err)
		}
		shape := geom.Shape{Outline: o}
		line := lineOf(l)
		b := o.Bounds().Grown(geom.MM(3))
		for range 60 {
			p := geom.Point{X: b.Min.X + geom.Length(rng.Int64N(int64(b.Width()))), Y: b.Min.Y + geom.Length(rng.Int64N(int64(b.Height())))}
			far := distance(p, line) - float64(pen.Width)/2
			if math.Abs(far) < 5*float64(geom.Chord) {
				continue
			}
			looked++
			if shape.Contains(p) != (far < 0) {
				wrong++
				if wrong < 5 {
					t.Errorf("case %d: %v is %.4f mm from the stroke's edge, covered: %v\n%+v width %s", n, p, far/1e6, shape.Contains(p), l, pen.Width)
				}
			}
		}
	}
	if looked < 4000 {
		t.Errorf("only %d places were looked at", looked)
	}
}

// lineOf returns the straight pieces of a track.
func lineOf(l geom.Track) geom.Ring {
	ring := geom.Outline{l.Contour}.Rings(geom.Chord / 4)[0]
	if !l.Open {
		ring = append(ring, ring[0])
	} else if end := l.Segments[len(l.Segments)-1].End; ring[len(ring)-1] != end {
		ring = append(ring, end)
	}
	return ring
}

func distance(p geom.Point, line geom.Ring) float64 {
	best := math.Inf(1)
	for i := 1; i < len(line); i++ {
		d, q := line[i].Sub(line[i-1]), p.Sub(line[i-1])
		s := max(0, min(1, float64(q.Dot(d))/max(1, float64(d.Dot(d)))))
		best = min(best, math.Hypot(float64(q.X)-s*float64(d.X), float64(q.Y)-s*float64(d.Y)))
	}
	return best
}

func TestEvenOddTakesEverySecondOutlineAway(t *testing.T) {
	for data, want := range map[string]float64{
		"M0 0H10V10H0Z M2 2H8V8H2Z M4 4H6V6H4Z": 100 - 36 + 4,
		"M0 0H10V10H0Z M5 5H15V15H5Z":           100 + 100 - 2*25,
		"M0 0H10V10H0Z M0 0H10V10H0Z":           0,
		"M0 0H10V10H0Z M10 2H2V8H10Z":           100 - 48,
	} {
		o, _ := outline(t, data).MendedEvenOdd()
		if got := o.AreaMM2(); math.Abs(got-want) > 1e-6 {
			t.Errorf("%s: %.6f mm², want %.6f", data, got, want)
		}
		if again, _ := o.Mended(); math.Abs(again.AreaMM2()-want) > 1e-6 {
			t.Errorf("%s: by the other rule %.6f mm²", data, again.AreaMM2())
		}
	}
}

func BenchmarkStroke(b *testing.B) {
	l := track(b, true, "M0 0C10 0 10 10 20 10S30 0 40 5A20 20 0 0 1 80 5L90 40Z")
	pen := geom.Stroke{Width: geom.MM(1.5), Join: geom.RoundJoin, Cap: geom.RoundCap, Dash: []geom.Length{geom.MM(3), geom.MM(2)}}
	for b.Loop() {
		if _, err := pen.Outline(l); err != nil {
			b.Fatal(err)
		}
	}
}
