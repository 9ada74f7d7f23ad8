package geom_test

import (
	"math"
	"math/rand/v2"
	"testing"

	"tsugime/repeat/geom"
)

// anySegment returns a start and a segment of a random kind within some millimetres.
func anySegment(random *rand.Rand) (geom.Point, geom.Segment) {
	a := randomPoint(random, 4_000_000)
	s := geom.Segment{Kind: geom.Kind(random.IntN(3)), End: randomPoint(random, 4_000_000)}
	switch s.Kind {
	case geom.Arc:
		s.Bulge = math.Tan(random.Float64()*2.6 - 1.3)
	case geom.Cubic:
		s.C1, s.C2 = randomPoint(random, 4_000_000), randomPoint(random, 4_000_000)
	}
	return a, s
}

func TestTheTwoPartsOfASegmentRunAsItDid(t *testing.T) {
	random := rand.New(rand.NewPCG(21, 1))
	for range 2000 {
		a, s := anySegment(random)
		cut := 0.05 + 0.9*random.Float64()
		first, second := s.Split(a, cut)
		if first.Kind != s.Kind || second.Kind != s.Kind || second.End != s.End || first.End != s.At(a, cut) {
			t.Fatalf("%+v from %v parts into %+v and %+v", s, a, first, second)
		}
		for range 10 {
			share := random.Float64()
			want, got := s.At(a, share*cut), first.At(a, share)
			if off := got.Sub(want).Norm(); off > 8 {
				t.Fatalf("%+v from %v: the first part is %.1f nm off at %g", s, a, off, share)
			}
			want, got = s.At(a, cut+share*(1-cut)), second.At(first.End, share)
			if off := got.Sub(want).Norm(); off > 8 {
				t.Fatalf("%+v from %v: the second part is %.1f nm off at %g", s, a, off, share)
			}
		}
	}
}

// The oracle looks at ten thousand places of the segment.
func TestTheNearestPlaceIsNearerThanAnyOther(t *testing.T) {
	random := rand.New(rand.NewPCG(21, 2))
	for range 300 {
		a, s := anySegment(random)
		p := randomPoint(random, 5_000_000)
		_, at := s.Nearest(a, p)
		got := at.Sub(p).Norm()
		for i := range 10_001 {
			if d := s.At(a, float64(i)/10_000).Sub(p).Norm(); d < got-float64(geom.Chord) {
				t.Fatalf("%+v from %v: %v is %.0f nm from %v, but the segment comes within %.0f nm", s, a, at, got, p, d)
			}
		}
	}
}

func TestPlacesOnASegmentAreFoundOnIt(t *testing.T) {
	random := rand.New(rand.NewPCG(21, 3))
	for range 1000 {
		a, s := anySegment(random)
		want := s.At(a, random.Float64())
		if _, at := s.Nearest(a, want); at.Sub(want).Norm() > 2 {
			t.Fatalf("%+v from %v: %v lies on it, found is %v", s, a, want, at)
		}
	}
}

// A quarter circle to the right and down leaves downward to the left (worked by hand).
func TestHeadingsOfAQuarterCircle(t *testing.T) {
	s := geom.Segment{Kind: geom.Arc, Bulge: math.Tan(math.Pi / 8), End: geom.PtMM(1, 1)}
	first, last := s.Headings(geom.PtMM(0, 0))
	if first.X.Abs() < 1000*first.Y.Abs() || first.X <= 0 || last.Y.Abs() < 1000*last.X.Abs() || last.Y <= 0 {
		t.Errorf("a quarter circle from 0,0 to 1,1 sets out along %v and ends along %v; want right, then down", first, last)
	}
}
