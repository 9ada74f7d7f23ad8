package bench_test

import (
	"math"
	"math/rand/v2"
	"testing"

	"tsugime/repeat/bench"
	"tsugime/repeat/geom"
)

func outline(t testing.TB, path string) geom.Outline {
	t.Helper()
	o, err := geom.ParsePathData(path)
	if err != nil {
		t.Fatal(err)
	}
	return o
}

// Shapes that no two of are alike, none of them its own mirror image but the last.
var shapes = []string{
	"M0 0H3V1H1V2H0Z",
	"M0 0C1 -2 3 -1 3 1C2 2 1 1.5 0 0Z",
	"M0 0A2 2 0 0 1 4 0L4 1A3 3 0 0 0 0 0.5Z",
	"M0 0H4V3H0Z M1 1V1.7H2.5V1Z",
	"M0 0L5 0L1 2Z",
	"M0 -2L0.5 -0.6L2 -0.6L0.8 0.3L1.2 1.7L0 0.8L-1.2 1.7L-0.8 0.3L-2 -0.6L-0.5 -0.6Z",
}

func TestAPunchIsKnownWhateverItsTurnOrMirror(t *testing.T) {
	rnd := rand.New(rand.NewPCG(4, 4))
	for i, path := range shapes {
		for range 12 {
			punch := outline(t, path)
			mirrored := rnd.IntN(2) == 1
			place := geom.Identity
			if mirrored {
				place = geom.Scale(-1, 1)
			}
			deg := rnd.Float64() * 360
			place = place.Then(geom.Rotate(deg)).Then(geom.Translate(geom.PtMM(rnd.Float64()*200, rnd.Float64()*200)))
			l, ok := bench.LikenessOf(punch.Mapped(place), punch, geom.MM(0.02))
			if !ok {
				t.Errorf("shape %d turned %.1f°, mirrored %t is off by %s mm", i, deg, mirrored, l.Off)
				continue
			}
			if i == len(shapes)-1 { // five turns and a mirror that change nothing
				continue
			}
			if off := math.Abs(math.Remainder(l.TurnDeg-deg, 360)); l.Mirrored != mirrored || off > 0.5 {
				t.Errorf("shape %d turned %.2f°, mirrored %t is told as %+v", i, deg, mirrored, l)
			}
		}
	}
}

func TestShapesThatDifferAreNotTakenForEachOther(t *testing.T) {
	for i, a := range shapes {
		for j, b := range shapes {
			if l, ok := bench.LikenessOf(outline(t, a), outline(t, b), geom.MM(0.05)); ok != (i == j) {
				t.Errorf("shapes %d and %d: alike %t, off by %s mm", i, j, ok, l.Off)
			}
		}
	}
}

// A punch that is smaller by 0.1 mm all around is off by that, a little more at
// the corners that it rounds.
func TestHowFarAPunchIsOffIsToldInMillimetres(t *testing.T) {
	square := outline(t, "M0 0H4V4H0Z")
	smaller := outline(t, "M0.1 0.1H3.9V3.9H0.1Z")
	l, ok := bench.LikenessOf(square, smaller, geom.MM(0.15))
	if want := 0.1 * math.Sqrt2; !ok || math.Abs(l.Off.MM()-want) > 0.002 {
		t.Errorf("a square smaller by 0.1 mm all around is off by %s mm (%t), want %.4f", l.Off, ok, want)
	}
	if _, ok := bench.LikenessOf(square, smaller, geom.MM(0.1)); ok {
		t.Error("it passes within 0.1 mm, though its corners are off by 0.141")
	}
}

// The same rim drawn by arcs or by cubics is the same shape: a cubic is off the
// circle by 2.7e-4 of the radius.
func TestAShapeIsKnownHoweverItsRimIsDrawn(t *testing.T) {
	arcs := outline(t, "M2 0A2 2 0 0 1 -2 0A2 2 0 0 1 0 -2H2Z")
	const k = 2 * 0.5522847498
	drawn := geom.Outline{{Start: geom.PtMM(0, -2), Segments: []geom.Segment{
		{End: geom.PtMM(2, -2)}, {End: geom.PtMM(2, -1)}, {End: geom.PtMM(2, 0)},
		{Kind: geom.Cubic, C1: geom.PtMM(2, k), C2: geom.PtMM(k, 2), End: geom.PtMM(0, 2)},
		{Kind: geom.Cubic, C1: geom.PtMM(-k, 2), C2: geom.PtMM(-2, k), End: geom.PtMM(-2, 0)},
		{Kind: geom.Cubic, C1: geom.PtMM(-2, -k), C2: geom.PtMM(-k, -2), End: geom.PtMM(0, -2)},
	}}}
	if l, ok := bench.LikenessOf(arcs, drawn, geom.MM(0.005)); !ok {
		t.Errorf("off by %s mm", l.Off)
	}
}
