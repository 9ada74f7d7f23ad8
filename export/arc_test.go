package export

import (
	"math"
	"math/rand/v2"
	"testing"

	"tsugime/repeat/geom"
)

// What a chain of arcs encloses with its chord has a closed form, which cutting
// the arc must not change.
func TestPiecesOfAnArcEncloseWhatItDoes(t *testing.T) {
	rng := rand.New(rand.NewPCG(7, 1))
	for range 500 {
		start, end := geom.PtMM(rng.Float64()*300, rng.Float64()*300), geom.PtMM(rng.Float64()*300, rng.Float64()*300)
		s := geom.Segment{Kind: geom.Arc, End: end, Bulge: math.Tan((rng.Float64()*2 - 1) * math.Pi / 2 * 0.9)}
		most := 5 + rng.Float64()*120
		pieces := ArcPieces(start, s, most)
		whole := geom.Outline{{Start: start, Segments: []geom.Segment{s}}}
		cut := geom.Outline{{Start: start, Segments: pieces}}
		if got, want := cut.AreaMM2(), whole.AreaMM2(); math.Abs(got-want) > 1e-9*want+1e-2 {
			t.Fatalf("%v to %v with bulge %v, cut at %.0f°: %.6f mm², want %.6f", start, end, s.Bulge, most, got, want)
		}
		for _, p := range pieces {
			if turn := 4 * math.Atan(math.Abs(p.Bulge)) * 180 / math.Pi; turn > most+1e-6 {
				t.Fatalf("a piece turns by %.3f°, want at most %.3f°", turn, most)
			}
		}
		if last := pieces[len(pieces)-1].End; last != end {
			t.Fatalf("the last piece ends at %v, want %v", last, end)
		}
		checkRadius(t, start, pieces, ArcRadius(start, s))
	}
}

func checkRadius(t *testing.T, at geom.Point, pieces []geom.Segment, want float64) {
	t.Helper()
	for i, p := range pieces {
		if got := ArcRadius(at, p); math.Abs(got/want-1) > 1e-4 && want < 1e9 {
			t.Fatalf("piece %d has a radius of %.0f nm, want %.0f", i, got, want)
		}
		at = p.End
	}
}

func TestWhatIsNoArcComesBackAlone(t *testing.T) {
	a := geom.PtMM(1, 1)
	for _, s := range []geom.Segment{
		{Kind: geom.Line, End: geom.PtMM(5, 5)},
		{Kind: geom.Cubic, End: geom.PtMM(5, 5)},
		{Kind: geom.Arc, End: geom.PtMM(5, 5)},
		{Kind: geom.Arc, End: a, Bulge: 1},
		{Kind: geom.Arc, End: geom.PtMM(5, 5), Bulge: 0.1},
	} {
		if got := ArcPieces(a, s, 90); len(got) != 1 || got[0] != s {
			t.Errorf("%+v became %+v", s, got)
		}
	}
}
