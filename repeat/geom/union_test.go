package geom

import (
	"math"
	"testing"
)

// rectangle returns the rectangle between two corners in millimetres.
func rectangle(x0, y0, x1, y1 float64) Ring {
	return Ring{PtMM(x0, y0), PtMM(x1, y0), PtMM(x1, y1), PtMM(x0, y1)}
}

// discRing returns a disc as straight pieces.
func discRing(x, y, radius float64) Ring {
	return Disc{PtMM(x, y), MM(2 * radius)}.Ring(Chord)
}

// shapesOf makes each ring a shape.
func shapesOf(rings ...Ring) [][]Ring {
	shapes := make([][]Ring, len(rings))
	for i, r := range rings {
		shapes[i] = []Ring{r}
	}
	return shapes
}

func mustUnion(t testing.TB, shapes [][]Ring, periods ...Point) Region {
	t.Helper()
	r, err := Union(shapes, periods...)
	if err != nil {
		t.Fatalf("union of %d shapes: %v", len(shapes), err)
	}
	return r
}

func TestUnionHasTheAreaThatGeometrySays(t *testing.T) {
	slot := [][]Ring{{rectangle(-4, -1, 4, 1)}, {discRing(-4, 0, 1)}, {discRing(4, 0, 1)}}
	annulus := [][]Ring{{discRing(0, 0, 5), reversed(discRing(0, 0, 3))}}
	for _, c := range []struct {
		name   string
		shapes [][]Ring
		want   float64
		slack  float64 // the chords cut off at most Chord along the rim
	}{
		{"nothing", nil, 0, 0},
		{"one square", shapesOf(rectangle(0, 0, 2, 2)), 4, 0},
		{"one square, turned the other way", shapesOf(reversed(rectangle(0, 0, 2, 2))), 4, 0},
		{"a square twice", shapesOf(rectangle(0, 0, 2, 2), rectangle(0, 0, 2, 2)), 4, 0},
		{"a square and itself the other way", shapesOf(rectangle(0, 0, 2, 2), reversed(rectangle(0, 0, 2, 2))), 4, 0},
		{"two squares with an edge in common", shapesOf(rectangle(0, 0, 2, 2), rectangle(2, 0, 4, 2)), 8, 0},
		{"two squares that touch in a corner", shapesOf(rectangle(0, 0, 2, 2), rectangle(2, 2, 4, 4)), 8, 0},
		{"a square in a square", shapesOf(rectangle(0, 0, 4, 4), rectangle(1, 1, 2, 2)), 16, 0},
		{"a cross", shapesOf(rectangle(0, 1, 3, 2), rectangle(1, 0, 2, 3)), 5, 0},
		{"a square with a hole", [][]Ring{{rectangle(0, 0, 4, 4), reversed(rectangle(1, 1, 3, 3))}}, 12, 0},
		{"a square with a square that turns alike", [][]Ring{{rectangle(0, 0, 4, 4), rectangle(1, 1, 3, 3)}}, 16, 0},
		{"a hole filled by another shape", [][]Ring{{rectangle(0, 0, 4, 4), reversed(rectangle(1, 1, 3, 3))}, {rectangle(1, 1, 3, 3)}}, 16, 0},
		{"a bow-tie", shapesOf(Ring{PtMM(0, 0), PtMM(4, 4), PtMM(4, 0), PtMM(0, 4)}), 8, 0},
		{"a ring without area", shapesOf(Ring{PtMM(0, 0), PtMM(4, 4), PtMM(2, 2)}), 0, 0},
		{"a ring that goes out and back", shapesOf(Ring{PtMM(0, 0), PtMM(4, 0), PtMM(4, 3), PtMM(4, 0)}), 0, 0},
		{"a disc", shapesOf(discRing(0, 0, 5)), 25 * math.Pi, 2 * math.Pi * 5 * 1e-3},
		{"an annulus", annulus, 16 * math.Pi, 2 * math.Pi * 8 * 1e-3},
		// 100π less the lens; 134.714871779 = 50π − 22.364760900 (closed form).
		{"two discs 6 apart", shapesOf(discRing(0, 0, 5), discRing(6, 0, 5)), 134.714871779, 4 * math.Pi * 5 * 1e-3},
		{"a slot with round ends", slot, 16 + math.Pi, (16 + 2*math.Pi) * 1e-3},
	} {
		got := mustUnion(t, c.shapes).AreaMM2()
		if got > c.want+1e-9 || got < c.want-c.slack-1e-9 {
			t.Errorf("%s: area %.9f mm2, want %.9f less at most %.3g", c.name, got, c.want, c.slack)
		}
	}
}

func TestUnionRefusesWhatItCannotKeepExact(t *testing.T) {
	wide := [][]Ring{{rectangle(0, 0, 1100, 1)}}
	fine := [][]Ring{{rectangle(0, 0, 1, 1)}}
	for _, c := range []struct {
		name    string
		shapes  [][]Ring
		periods []Point
	}{
		{"a ring wider than MaxSpan/2", wide, nil},
		{"three periods", fine, []Point{PtMM(1, 0), PtMM(0, 1), PtMM(1, 1)}},
		{"a period of nothing", fine, []Point{{}}},
		{"a period beyond 1500 mm", fine, []Point{PtMM(1501, 0)}},
		{"periods in line", fine, []Point{PtMM(2, 4), PtMM(3, 6)}},
	} {
		if _, err := Union(c.shapes, c.periods...); err == nil {
			t.Errorf("%s: no error", c.name)
		}
	}
}

// On a bolt twelve metres long every ring is small, and all stay exact.
func TestUnionReachesAlongTheWholeBolt(t *testing.T) {
	var shapes [][]Ring
	for i := range 1000 {
		y := 12.6 * float64(i)
		shapes = append(shapes, []Ring{rectangle(0, y, 10, y+10)}, []Ring{rectangle(5, y+5, 15, y+12)})
	}
	r := mustUnion(t, shapes)
	if got, want := r.AreaMM2(), 1000*(100+70-25.0); math.Abs(got-want) > 1e-6 || len(r.Boundaries) != 1000 {
		t.Errorf("%.9f mm2 in %d lines, want %.9f in 1000", got, len(r.Boundaries), want)
	}
}

// On the cloth only what lies between two lines is a band; what reaches a selvedge
// is not.
func TestUnionOnTheClothParts(t *testing.T) {
	step := PtMM(3, 180)
	stripe := func(x float64) Ring {
		return Ring{PtMM(x, 0), PtMM(x+2, 0), PtMM(x+2, 0).Add(step), PtMM(x, 0).Add(step)}
	}
	r := mustUnion(t, shapesOf(stripe(10), stripe(30), stripe(60), discRing(47, 175, 8), discRing(5, 3, 2)), step)
	got := r.Loose()
	want := []float64{18 * 180, 28*180 - discRing(47, 175, 8).AreaMM2()}
	if len(got) != 2 {
		t.Fatalf("faces %v, want two bands", got)
	}
	for i, f := range got {
		if f.Along != step || math.Abs(f.AreaMM2-want[0])*math.Abs(f.AreaMM2-want[1]) > 1e-6 {
			t.Errorf("face %d: %v, want along %v and one of %v mm2", i, f, step, want)
		}
	}
	area := 3*2*180 + discRing(47, 175, 8).AreaMM2() + discRing(5, 3, 2).AreaMM2()
	if math.Abs(r.AreaMM2()-area) > 1e-6 {
		t.Errorf("%.9f mm2 are cut, want %.9f", r.AreaMM2(), area)
	}
}
