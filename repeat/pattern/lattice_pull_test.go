package pattern_test

import (
	"math"
	"math/rand/v2"
	"testing"

	"tsugime/repeat/geom"
	"tsugime/repeat/pattern"
)

// kindly is a random lattice of one of the kinds that hold their vectors to something,
// sometimes with vectors to the left or upwards.
func kindly(random *rand.Rand) pattern.Lattice {
	length := func() geom.Length { return geom.Length(500_000 + random.Int64N(3_000_000)) }
	den := 2 + random.IntN(5)
	num := 1 + random.IntN(den-1)
	l := []pattern.Lattice{
		pattern.Straight(length(), length()), pattern.HalfDropBy(length(), length(), num, den),
		pattern.BrickBy(length(), length(), num, den), pattern.Diagonal(length(), length()), pattern.Laid(pattern.HexagonalKind, length(), 0),
	}[random.IntN(5)]
	mirrored := l
	if random.IntN(2) == 0 {
		mirrored.A.X, mirrored.B.X = -l.A.X, -l.B.X
	}
	if random.IntN(2) == 0 {
		mirrored.A.Y, mirrored.B.Y = -mirrored.A.Y, -mirrored.B.Y
	}
	if mirrored.Kind() == l.Kind() {
		return mirrored
	}
	return l
}

// The kind and its drop stay, and no other spacing of the kind ends nearer to the place:
// tried against spacings a little off.
func TestAPulledVectorEndsAsNearAsItsKindAllows(t *testing.T) {
	random := rand.New(rand.NewPCG(71, 3))
	for range 4000 {
		l := kindly(random)
		for _, v := range []pattern.Vector{pattern.VectorA, pattern.VectorB} {
			to := v.Of(l).Add(randomPoint(random, 400_000))
			next := l.Pulled(v, to)
			num, den, _ := l.Drop()
			n, d, _ := next.Drop()
			if next.Kind() != l.Kind() || n != num || d != den || next.Check() != nil {
				t.Fatalf("%v pulled to %v is %v: %s by %d/%d, was %s by %d/%d", l, to, next, next.Kind(), n, d, l.Kind(), num, den)
			}
			across, along := next.Spacing()
			x, y := l.Spacing()
			if a, b := l.Ways(v); !a && across != x || !b && next.Kind() != pattern.HexagonalKind && along != y {
				t.Fatalf("%v pulled at %d is spaced %v, %v", l, v, across, along)
			}
			best := v.Of(next).Sub(to).Norm()
			for _, off := range []geom.Length{-1000, 1000} {
				a, b := l.Ways(v)
				tried := next
				if a {
					tried = tried.Pulled(v, v.Of(tried).Add(geom.Point{X: off}))
				}
				if b {
					tried = tried.Pulled(v, v.Of(tried).Add(geom.Point{Y: off}))
				}
				if d := v.Of(tried).Sub(to).Norm(); d < best-float64(2*pattern.MaxParts) {
					t.Fatalf("%v: %v ends %.0f nm from %v, %v only %.0f", l, next, best, to, tried, d)
				}
			}
		}
	}
}

func TestAFreedVectorEndsWhereItIsPulledTo(t *testing.T) {
	l := pattern.Straight(geom.Millimetre, 2*geom.Millimetre)
	to := geom.PtMM(1.2, 0.3)
	if got := l.Freed(pattern.VectorA, to); got.A != to || got.B != l.B || got.Kind() != pattern.FreeKind {
		t.Errorf("freed to %v", got)
	}
	free := l.Freed(pattern.VectorA, to)
	if got := free.Pulled(pattern.VectorB, geom.PtMM(-0.1, 2.2)); got.A != to || got.B != geom.PtMM(-0.1, 2.2) {
		t.Errorf("a free lattice is pulled to %v", got)
	}
}

func TestAPullIsKeptWithinTheBoundsOfAPitch(t *testing.T) {
	l := pattern.Straight(geom.Millimetre, geom.Millimetre)
	for to, want := range map[geom.Point]geom.Length{
		geom.PtMM(-3, 0): 2 * pattern.MinPitch, geom.PtMM(0, 5): 2 * pattern.MinPitch, geom.PtMM(9000, 0): pattern.MaxPitch,
	} {
		if got, _ := l.Pulled(pattern.VectorA, to).Spacing(); got != want {
			t.Errorf("pulled to %v the columns are %v apart, want %v", to, got, want)
		}
	}
}

// A lattice that is spaced so repeats exactly, within half the grain for each repeat, and
// no other number of repeats is spaced nearer to it.
func TestADividingSpacingRepeatsAWholeNumberOfTimes(t *testing.T) {
	random := rand.New(rand.NewPCG(72, 3))
	for range 4000 {
		l := kindly(random)
		across := random.IntN(2) == 0
		whole := geom.Length(20_000_000 + random.Int64N(400_000_000))
		spacing, times, ok := l.Dividing(whole, across)
		if !ok || times < 1 {
			t.Fatalf("%v: nothing divides %v", l, whole)
		}
		x, y := l.Spacing()
		now := y
		next := l.Respaced(x, spacing)
		if across {
			now, next = x, l.Respaced(spacing, y)
		} else if l.Kind() == pattern.HexagonalKind {
			continue // its rows follow from its columns
		}
		at := geom.Point{Y: whole}
		if across {
			at = geom.Point{X: whole}
		}
		_, _, rest := next.Nearest(at)
		if limit := float64(times * pattern.MaxParts / 2 * 2); rest.Norm() > limit {
			t.Fatalf("%v spaced %v: %v is %.0f nm off %d repeats", l, spacing, whole, rest.Norm(), times)
		}
		step := geom.Point{Y: now}
		if across {
			step = geom.Point{X: now}
		}
		repeat := 1
		for !l.Holds(step.Times(repeat)) {
			repeat++
		}
		if counted := float64(whole) / float64(now) / float64(repeat); times > 1 && math.Abs(counted-float64(times)) > 0.5001 {
			t.Fatalf("%v repeats %.3f times in %v, told %d", l, counted, whole, times)
		}
	}
	if _, _, ok := pattern.Straight(geom.Millimetre, geom.Millimetre).Freed(pattern.VectorA, geom.PtMM(1, 0.317)).Dividing(geom.Centimetre, true); ok {
		t.Error("a free lattice is told to divide")
	}
	if _, _, ok := pattern.Straight(geom.Centimetre, geom.Millimetre).Dividing(geom.Millimetre, true); ok {
		t.Error("a repeat divides what is shorter")
	}
}
