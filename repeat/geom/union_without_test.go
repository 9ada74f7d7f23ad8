package geom

import (
	"math"
	"math/rand/v2"
	"testing"
)

func mustWithout(t testing.TB, a, b [][]Ring, periods ...Point) Region {
	t.Helper()
	r, err := Without(a, b, periods...)
	if err != nil {
		t.Fatalf("%d shapes without %d: %v", len(a), len(b), err)
	}
	return r
}

func TestWithoutHasTheAreaThatGeometrySays(t *testing.T) {
	a, b := PtMM(100, 0), PtMM(0, 60)
	all := shapesOf(rectangle(0, 0, 100, 60))
	for _, c := range []struct {
		name  string
		a, b  [][]Ring
		want  float64
		lines int
		full  bool
	}{
		{"nothing from nothing", nil, nil, 0, 0, false},
		{"a square from nothing", nil, shapesOf(rectangle(0, 0, 2, 2)), 0, 0, false},
		{"nothing from a square", shapesOf(rectangle(0, 0, 2, 2)), nil, 4, 1, false},
		{"a square from itself", shapesOf(rectangle(0, 0, 2, 2)), shapesOf(rectangle(0, 0, 2, 2)), 0, 0, false},
		{"a square from itself, twice", shapesOf(rectangle(0, 0, 2, 2), rectangle(0, 0, 2, 2)), shapesOf(rectangle(0, 0, 2, 2)), 0, 0, false},
		{"a corner", shapesOf(rectangle(0, 0, 2, 2)), shapesOf(rectangle(1, 1, 3, 3)), 3, 1, false},
		{"the middle", shapesOf(rectangle(0, 0, 3, 3)), shapesOf(rectangle(1, 1, 2, 2)), 8, 2, false},
		{"all around", shapesOf(rectangle(1, 1, 2, 2)), shapesOf(rectangle(0, 0, 3, 3)), 0, 0, false},
		{"a strip through", shapesOf(rectangle(0, 0, 3, 3)), shapesOf(rectangle(1, -1, 2, 4)), 6, 2, false},
		{"something far away", shapesOf(rectangle(0, 0, 1, 1)), shapesOf(rectangle(50, 20, 60, 30)), 1, 1, false},
		{"over the seam", shapesOf(rectangle(98, 0, 104, 2)), shapesOf(rectangle(1, 0, 2, 2)), 10, 2, false},
		{"a square from everything", all, shapesOf(rectangle(99, 59, 101, 61)), 5996, 1, false},
		{"nothing from everything", all, nil, 6000, 0, true},
		{"everything from everything", all, all, 0, 0, false},
		{"everything from a square", shapesOf(rectangle(0, 0, 2, 2)), all, 0, 0, false},
		{"a belt from everything", all, shapesOf(rectangle(0, 10, 100, 20)), 5000, 2, false},
	} {
		r := mustWithout(t, c.a, c.b, a, b)
		if got := r.AreaMM2(); math.Abs(got-c.want) > 1e-9 || len(r.Boundaries) != c.lines || r.Full() != c.full {
			t.Errorf("%s: %.12f mm2 in %d lines, full %t, want %g in %d, full %t", c.name, got, len(r.Boundaries), r.Full(), c.want, c.lines, c.full)
		}
	}
}

// |A∖B| + |B| = |A∪B|, and what is left of A∪B without A and without B is nothing.
func TestWhatIsLeftAndWhatIsTakenMakeTheUnion(t *testing.T) {
	rng := rand.New(rand.NewPCG(21, 21))
	for k := range 120 {
		l := someLattices()[k%6]
		periods := l[:k%3]
		a, b := scene(rng, l[0], l[1]), scene(rng, l[0], l[1])
		if k%5 == 0 { // edges that coincide
			b = append(b, a[:len(a)/2]...)
		}
		ab := joined(a, b)
		all, of, left := mustUnion(t, ab, periods...), mustUnion(t, b, periods...), mustWithout(t, a, b, periods...)
		slack := 1e-5*rimMM(all, of, left) + 1e-9
		cell := math.Abs(cross(l[0], l[1], Point{})) / float64(Millimetre*Millimetre)
		diff := math.Abs(left.AreaMM2() + of.AreaMM2() - all.AreaMM2())
		if len(periods) == 2 {
			diff = math.Min(diff, math.Abs(diff-cell))
		}
		if diff > slack {
			t.Errorf("scene %d: %.9f mm2 left, %.9f taken, %.9f together", k, left.AreaMM2(), of.AreaMM2(), all.AreaMM2())
		}
		for _, of := range [][][]Ring{a, b, ab} {
			if r := mustWithout(t, of, ab, periods...); r.AreaMM2() != 0 || len(r.Boundaries) != 0 {
				t.Errorf("scene %d: %.9f mm2 of a part lie outside the whole", k, r.AreaMM2())
			}
		}
	}
}

func rimMM(regions ...Region) float64 {
	var sum float64
	for _, r := range regions {
		for _, b := range r.Boundaries {
			sum += b.lengthMM()
		}
	}
	return sum
}

func TestWithoutMovesWithItsShapesToTheBit(t *testing.T) {
	rng := rand.New(rand.NewPCG(22, 22))
	for k := range 30 {
		l := someLattices()[k%6]
		a, b := scene(rng, l[0], l[1]), scene(rng, l[0], l[1])
		d := Point{Length(rng.Int64N(600_000_000) - 300_000_000), Length(rng.Int64N(600_000_000) - 300_000_000)}
		still, moved := mustWithout(t, a, b, l[0], l[1]), mustWithout(t, movedShapes(a, d), movedShapes(b, d), l[0], l[1])
		if !boundariesEqual(still.Boundaries, moved.Boundaries, d) {
			t.Errorf("scene %d: not the same after moving by %v", k, d)
		}
	}
}
