package pattern_test

import (
	"math"
	"math/big"
	"math/rand/v2"
	"slices"
	"strings"
	"testing"

	"tsugime/repeat/geom"
	"tsugime/repeat/pattern"
)

// randomLattice is one of every kind, sometimes far from its shortest vectors.
func randomLattice(random *rand.Rand) pattern.Lattice {
	length := func() geom.Length { return geom.Length(500_000 + random.Int64N(3_000_000)) }
	for {
		l := pattern.Laid(pattern.Kinds()[random.IntN(4)], length(), length())
		if random.IntN(2) == 0 {
			l = pattern.Lattice{
				A: geom.Point{X: length() - 2_000_000, Y: length() - 2_000_000},
				B: geom.Point{X: length() - 2_000_000, Y: length() - 2_000_000},
			}
		}
		for range random.IntN(4) {
			l.A, l.B = l.B, l.A.Add(l.B.Times(random.IntN(7)-3))
		}
		if r := l.Reduced(); l.Check() == nil && r.A.Norm() > 400_000 && l.CellMM2() > 0.3*r.B.Norm()/1e6 {
			return l // no finer than 0.4 mm, rows no nearer than 0.3 mm
		}
	}
}

func randomPoint(random *rand.Rand, reach int64) geom.Point {
	return geom.Point{X: geom.Length(random.Int64N(2*reach+1) - reach), Y: geom.Length(random.Int64N(2*reach+1) - reach)}
}

// exactHolds solves p = m·A + n·B in whole numbers, with fractions.
func exactHolds(l pattern.Lattice, p geom.Point) bool {
	cross := func(a, b geom.Point) *big.Int {
		x := new(big.Int).Mul(big.NewInt(int64(a.X)), big.NewInt(int64(b.Y)))
		return x.Sub(x, new(big.Int).Mul(big.NewInt(int64(a.Y)), big.NewInt(int64(b.X))))
	}
	det := cross(l.A, l.B)
	return new(big.Int).Rem(cross(p, l.B), det).Sign() == 0 && new(big.Int).Rem(cross(l.A, p), det).Sign() == 0
}

func TestReducedMakesTheSameLattice(t *testing.T) {
	random := rand.New(rand.NewPCG(1, 1))
	for range 3000 {
		l := randomLattice(random)
		r := l.Reduced()
		for _, v := range []geom.Point{r.A, r.B} {
			if !exactHolds(l, v) {
				t.Fatalf("%v: reduced to %v, which has a vector of its own", l, r)
			}
		}
		for _, v := range []geom.Point{l.A, l.B} {
			if !exactHolds(r, v) {
				t.Fatalf("%v: reduced to %v, which lacks %v", l, r, v)
			}
		}
		a, b := r.A.Dot(r.A), r.B.Dot(r.B)
		if d := r.A.Dot(r.B); a > b || 2*max(d, -d) > a {
			t.Fatalf("%v: %v is not the shortest pair", l, r)
		}
		if got := l.Pitch(); math.Abs(float64(got)-r.A.Norm()) > 0.5 {
			t.Fatalf("%v: pitch %s mm, want %v nm", l, got, r.A.Norm())
		}
	}
}

func TestNearestIsNearest(t *testing.T) {
	random := rand.New(rand.NewPCG(2, 1))
	for range 1500 {
		l := randomLattice(random)
		p := randomPoint(random, 20_000_000)
		if random.IntN(3) == 0 { // half way between places, where several are as near
			p = l.A.Times(random.IntN(9)).Add(l.B.Times(random.IntN(9)))
			p = geom.Point{X: p.X / 2, Y: p.Y / 2}
		}
		m, n, rest := l.Nearest(p)
		if l.At(m, n).Add(rest) != p {
			t.Fatalf("%v: %d, %d and %v don't make %v", l, m, n, rest, p)
		}
		// Every place within the distance that was found, in exact numbers.
		r := l.Reduced()
		for i := -4; i <= 4; i++ {
			for j := -4; j <= 4; j++ {
				if q := rest.Sub(r.At(i, j)); q.Dot(q) < rest.Dot(rest) {
					t.Fatalf("%v: %v is %v from its place, yet %v from another", l, p, rest, q)
				}
			}
		}
	}
}

// All copies of a point come to the same in the cell, and points that are no
// copies don't.
func TestCopiesComeToTheSamePlaceInTheCell(t *testing.T) {
	random := rand.New(rand.NewPCG(3, 1))
	for range 3000 {
		l := randomLattice(random)
		p := randomPoint(random, 5_000_000)
		if random.IntN(2) == 0 {
			p = l.A.Times(random.IntN(5)).Add(l.B.Times(random.IntN(5)))
			p = geom.Point{X: p.X / 2, Y: p.Y / 2}
		}
		home := l.Into(p)
		if !exactHolds(l, p.Sub(home)) {
			t.Fatalf("%v: %v comes to %v, which is no copy", l, p, home)
		}
		copied := p.Add(l.At(random.IntN(41)-20, random.IntN(41)-20))
		if got := l.Into(copied); got != home {
			t.Fatalf("%v: %v comes to %v, its copy %v to %v", l, p, home, copied, got)
		}
		if got := l.Into(home); got != home {
			t.Fatalf("%v: %v is in the cell, yet comes to %v", l, home, got)
		}
		next := p.Add(geom.Point{X: 1})
		if l.Into(next) == home || l.Holds(geom.Point{X: 1}) {
			t.Fatalf("%v: %v and %v are no copies, yet come to %v", l, p, next, home)
		}
		if far := l.At(3, -2); !l.Holds(far) || l.Holds(far.Add(geom.Point{Y: 1})) {
			t.Fatalf("%v: Holds is wrong about %v", l, far)
		}
	}
}

func TestPlacesAreThoseOfAWalk(t *testing.T) {
	random := rand.New(rand.NewPCG(4, 1))
	for range 300 {
		l := randomLattice(random)
		window := geom.BoxOf(randomPoint(random, 6_000_000), randomPoint(random, 6_000_000))
		if random.IntN(3) == 0 { // with a place in a corner
			r := l.Reduced()
			window = geom.BoxOf(r.At(1, 1), r.At(random.IntN(3)-1, random.IntN(3)-1))
		}
		var want []geom.Point
		r := l.Reduced()
		for m := -60; m <= 60; m++ {
			for n := -60; n <= 60; n++ {
				if p := r.At(m, n); window.Holds(p) {
					want = append(want, p)
				}
			}
		}
		got := slices.Clone(l.Places(window))
		order := func(a, b geom.Point) int {
			switch {
			case a.Less(b):
				return -1
			case b.Less(a):
				return 1
			}
			return 0
		}
		slices.SortFunc(got, order)
		slices.SortFunc(want, order)
		if !slices.Equal(got, want) {
			t.Fatalf("%v in %v: got %d places, want %d", l, window, len(got), len(want))
		}
	}
	if got := pattern.Straight(1_000_000, 1_000_000).Places(geom.Box{}); got != nil {
		t.Errorf("nothing holds %v", got)
	}
}

// Two columns of a half-drop are a column of a straight lattice of twice the
// width: what lies in both is the straight one, and nothing more.
func TestHalfDropTwiceIsStraight(t *testing.T) {
	random := rand.New(rand.NewPCG(5, 1))
	for range 1000 {
		across, along := geom.Length(1_000_000+random.Int64N(30_000_000)), geom.Length(1_000_000+random.Int64N(30_000_000))
		drop, brick := pattern.HalfDrop(across, along), pattern.Brick(across, along)
		straight := pattern.Straight(2*across, along/2*2)
		if !drop.Holds(straight.A) || !drop.Holds(straight.B) || drop.Holds(geom.Point{X: across}) {
			t.Fatalf("half-drop %v doesn't meet itself after two columns", drop)
		}
		if !brick.Holds(geom.Point{Y: 2 * along}) || brick.Holds(geom.Point{Y: along}) {
			t.Fatalf("brick %v doesn't meet itself after two rows", brick)
		}
		if got, want := 2*drop.CellMM2(), straight.CellMM2(); math.Abs(got-want) > 1e-9*want {
			t.Fatalf("two cells of a half-drop are %v mm², the straight one %v", got, want)
		}
	}
}

func TestKindsFollowFromTheVectors(t *testing.T) {
	random := rand.New(rand.NewPCG(6, 1))
	for range 500 {
		across, along := 2*geom.Length(500_000+random.Int64N(9_000_000)), 2*geom.Length(500_000+random.Int64N(9_000_000))
		for _, kind := range []pattern.Kind{pattern.StraightKind, pattern.HalfDropKind, pattern.BrickKind, pattern.DiagonalKind} {
			l := pattern.Laid(kind, across, along)
			gotAcross, gotAlong := l.Spacing()
			if l.Kind() != kind || gotAcross != across || gotAlong != along {
				t.Fatalf("%s %s × %s is taken for %s %s × %s", kind, across, along, l.Kind(), gotAcross, gotAlong)
			}
		}
	}
	if got := (pattern.Lattice{A: geom.PtMM(3, 1), B: geom.PtMM(1, 4)}).Kind(); got != pattern.FreeKind {
		t.Errorf("two vectors at random are %s", got)
	}
}

func TestLatticesThatRepeatNothingAreRefused(t *testing.T) {
	for _, row := range []struct {
		l    pattern.Lattice
		want string
	}{
		{pattern.Lattice{}, "span no area"},
		{pattern.Straight(geom.MM(3), 0), "span no area"},
		{pattern.Lattice{A: geom.PtMM(3, 3), B: geom.PtMM(6, 6)}, "span no area"},
		{pattern.Straight(geom.MM(1501), geom.MM(3)), "keep it within 1500 mm"},
		{pattern.Lattice{A: geom.PtMM(100, 0), B: geom.PtMM(100, 0.009)}, "span no area"}, // its short vector is 9 µm
		{pattern.Lattice{A: geom.PtMM(1500, 0), B: geom.PtMM(749.9999, 0.001)}, ""},
	} {
		err := row.l.Check()
		if err == nil || !strings.Contains(err.Error(), row.want) {
			t.Errorf("%v: got %v, want …%s…", row.l, err, row.want)
		}
	}
	if err := pattern.Straight(geom.MM(0.01), geom.MM(1500)).Check(); err != nil {
		t.Errorf("the finest rows over the longest sheet: %v", err)
	}
}

// Half vectors make Lagrange's steps take turns for ever unless a half stays.
func BenchmarkNearestOfAHalfDrop(b *testing.B) {
	l := pattern.HalfDrop(geom.MM(11), geom.MM(18.181818))
	p := geom.PtMM(187.5, 3)
	for b.Loop() {
		l.Nearest(p)
	}
}
