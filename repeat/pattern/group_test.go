package pattern_test

import (
	"math"
	"math/rand/v2"
	"testing"

	"tsugime/repeat/geom"
	"tsugime/repeat/pattern"
)

// carrier is a random lattice that g goes on.
func carrier(random *rand.Rand, g pattern.Group) pattern.Lattice {
	length := func() geom.Length { return geom.Length(10_000_000 + random.Int64N(9_000_000)) }
	switch g {
	case pattern.P1, pattern.P2:
		return pattern.Lattice{A: geom.Point{X: length(), Y: length() / 7}, B: geom.Point{X: length() / 5, Y: length()}}
	case pattern.PM, pattern.PG, pattern.P2MM, pattern.P2MG, pattern.P2GG:
		return pattern.Straight(length(), length())
	case pattern.CM, pattern.C2MM:
		return pattern.Laid([]pattern.Kind{pattern.DiagonalKind, pattern.HalfDropKind, pattern.BrickKind}[random.IntN(3)], length(), length())
	case pattern.P4, pattern.P4MM, pattern.P4GM:
		a := length()
		return pattern.Laid([]pattern.Kind{pattern.DiagonalKind, pattern.StraightKind}[random.IntN(2)], a, a)
	}
	l, _ := pattern.Hexagonal(length())
	return l
}

// scattered is a few motifs without symmetry at places of no symmetry.
func scattered(t testing.TB, random *rand.Rand) []pattern.Motif {
	motifs := []pattern.Motif{{ID: 4, Shape: geom.Shape{Outline: outline(t, "M0 -2L1 0L0.3 1L-1.5 0Z")}, At: randomPoint(random, 9_000_000), TurnDeg: float64(random.IntN(360))}}
	for i := range random.IntN(3) {
		motifs = append(motifs, pattern.Motif{ID: pattern.ID(7 + i), Shape: geom.DiscShape(geom.Point{}, geom.MM(0.5)), At: randomPoint(random, 9_000_000)})
	}
	return motifs
}

func multiplied(t testing.TB, g pattern.Group, l pattern.Lattice, motifs []pattern.Motif) []pattern.Motif {
	t.Helper()
	out, err := g.Multiply(l, motifs)
	if err != nil {
		t.Fatal(err)
	}
	return out
}

func TestAPatternMadeByAGroupIsRecognisedAsThatGroup(t *testing.T) {
	random := rand.New(rand.NewPCG(1, 17))
	for _, g := range pattern.Groups() {
		for range 40 {
			l := carrier(random, g)
			u := pattern.Unit{Lattice: l, Motifs: multiplied(t, g, l, scattered(t, random))}
			shift := randomPoint(random, 20_000_000)
			for i := range u.Motifs {
				u.Motifs[i].At = u.Motifs[i].At.Add(shift)
			}
			for range random.IntN(4) { // other vectors of the same lattice
				u.Lattice.A, u.Lattice.B = u.Lattice.B, u.Lattice.A.Add(u.Lattice.B.Times(random.IntN(5)-2))
			}
			r, err := pattern.Recognise(u)
			if err != nil || r.Group != g || r.Copies != 1 {
				t.Fatalf("%s on %v: recognised as %+v, %v", g, l, r, err)
			}
		}
	}
}

func TestOneMotifLessIsALowerGroup(t *testing.T) {
	random := rand.New(rand.NewPCG(2, 17))
	for _, g := range pattern.Groups()[1:] {
		for range 10 {
			l := carrier(random, g)
			motifs := multiplied(t, g, l, scattered(t, random))
			r, err := pattern.Recognise(pattern.Unit{Lattice: l, Motifs: motifs[1:]})
			if err != nil || len(r.Group.Ops()) >= len(g.Ops()) {
				t.Fatalf("%s less one motif is recognised as %+v, %v", g, r, err)
			}
		}
	}
}

func TestMultiplyingOnceMoreAddsNothing(t *testing.T) {
	random := rand.New(rand.NewPCG(3, 17))
	for _, g := range pattern.Groups() {
		for range 40 {
			l := carrier(random, g)
			once := multiplied(t, g, l, scattered(t, random))
			if again := multiplied(t, g, l, once); len(again) != len(once) {
				t.Fatalf("%s on %v: %d motifs became %d", g, l, len(once), len(again))
			}
			want := len(g.Ops())
			if g == pattern.CM || g == pattern.C2MM {
				want /= 2 // the cell drawn is half the conventional one
			}
			if len(once)%want != 0 {
				t.Fatalf("%s: %d motifs are no multiple of %d", g, len(once), want)
			}
		}
	}
}

// The disc on a rotation point is one disc; the leaf on a mirror line that is
// its own axis is one leaf; a leaf across it is two.
func TestNothingIsDoubledOnSpecialPlaces(t *testing.T) {
	leaf := geom.Shape{Outline: outline(t, "M0 -2A2 2 0 0 1 0 2A2 2 0 0 1 0 -2Z M-0.5 0H0.5V1H-0.5Z")}
	disc := geom.DiscShape(geom.Point{}, geom.MM(1))
	straight := pattern.Straight(geom.MM(12), geom.MM(12))
	six, _ := pattern.Hexagonal(geom.MM(12))
	for _, row := range []struct {
		g    pattern.Group
		l    pattern.Lattice
		m    pattern.Motif
		want int
	}{
		{pattern.P4MM, straight, pattern.Motif{Shape: disc}, 1},
		{pattern.P4MM, straight, pattern.Motif{Shape: disc, At: geom.PtMM(6, 0)}, 2},
		{pattern.P4MM, straight, pattern.Motif{Shape: disc, At: geom.PtMM(3, 3)}, 4},
		{pattern.P6MM, six, pattern.Motif{Shape: disc}, 1},
		{pattern.P6, six, pattern.Motif{Shape: disc, At: geom.Point{X: 6_000_000, Y: 3_464_102}}, 2},
		{pattern.P6, six, pattern.Motif{Shape: disc, At: geom.PtMM(6, 0)}, 3},
		{pattern.PM, straight, pattern.Motif{Shape: leaf, At: geom.PtMM(0, 5)}, 1},
		{pattern.PM, straight, pattern.Motif{Shape: leaf, At: geom.PtMM(6, 5)}, 1},
		{pattern.PM, straight, pattern.Motif{Shape: leaf, TurnDeg: 30, At: geom.PtMM(6, 5)}, 2},
		{pattern.P2, straight, pattern.Motif{Shape: leaf}, 2},
		{pattern.CM, straight, pattern.Motif{Shape: disc}, 2},
		{pattern.CM, pattern.Diagonal(geom.MM(5), geom.MM(7)), pattern.Motif{Shape: disc}, 1},
		{pattern.P1, straight, pattern.Motif{Shape: leaf}, 1},
	} {
		if got := multiplied(t, row.g, row.l, []pattern.Motif{row.m}); len(got) != row.want {
			t.Errorf("%s: %v became %d, want %d", row.g, row.m.At, len(got), row.want)
		}
	}
}

// Copies of the domain, by the group and the lattice, lie on any place once.
func TestCopiesOfTheDomainCoverThePlaneOnce(t *testing.T) {
	random := rand.New(rand.NewPCG(4, 17))
	for _, g := range pattern.Groups() {
		for range 10 {
			l := carrier(random, g)
			ring, err := g.Domain(l)
			if err != nil {
				t.Fatal(err)
			}
			per := float64(len(g.Ops()))
			if g == pattern.CM || g == pattern.C2MM {
				per /= 2
			}
			if got, want := math.Abs(ring.AreaMM2()), l.CellMM2()/per; math.Abs(got-want) > 1e-5*want {
				t.Fatalf("%s: the domain is %v mm², want %v", g, got, want)
			}
			box := ring.Bounds()
			for range 30 {
				dot := pattern.Motif{Shape: geom.DiscShape(geom.Point{}, geom.MM(0.1)), At: randomPoint(random, 9_000_000)}
				n := 0
				for _, m := range multiplied(t, g, l, []pattern.Motif{dot}) {
					for _, p := range l.Places(geom.BoxOf(box.Min.Sub(m.At), box.Max.Sub(m.At))) {
						if ring.Winding(m.At.Add(p)) != 0 {
							n++
						}
					}
				}
				if n != 1 {
					t.Fatalf("%s on %v: %v comes %d times into the domain %v", g, l, dot.At, n, ring)
				}
			}
		}
	}
}

func TestLatticesThatDoNotGoWithAGroupAreRefused(t *testing.T) {
	straight := pattern.Straight(geom.MM(7), geom.MM(11))
	six, _ := pattern.Hexagonal(geom.MM(7))
	free := pattern.Lattice{A: geom.PtMM(7, 1), B: geom.PtMM(1.3, 11)}
	for _, row := range []struct {
		g    pattern.Group
		l    pattern.Lattice
		fits bool
	}{
		{pattern.P2, free, true}, {pattern.PM, free, false}, {pattern.CM, free, false},
		{pattern.PM, straight, true}, {pattern.CM, straight, true}, {pattern.P4, straight, false}, {pattern.P3, straight, false},
		{pattern.P6MM, six, true}, {pattern.C2MM, six, true}, {pattern.PM, six, false}, {pattern.P4, six, false},
		{pattern.PG, pattern.Diagonal(geom.MM(3), geom.MM(5)), false}, {pattern.P4GM, pattern.Diagonal(geom.MM(5), geom.MM(5)), true},
		{"p5", straight, false}, {pattern.P1, pattern.Lattice{}, false},
	} {
		if err := row.g.Allows(row.l); (err == nil) != row.fits {
			t.Errorf("%s on %v: %v, want fits %v", row.g, row.l, err, row.fits)
		}
	}
}

func TestAUnitOfSeveralCellsSaysSo(t *testing.T) {
	dots := func(at ...geom.Point) (m []pattern.Motif) {
		for i, p := range at {
			m = append(m, pattern.Motif{ID: pattern.ID(i + 1), Shape: geom.DiscShape(geom.Point{}, geom.MM(1)), At: p})
		}
		return m
	}
	u := pattern.Unit{Lattice: pattern.Straight(geom.MM(20), geom.MM(30)), Motifs: dots(geom.PtMM(1, 1), geom.PtMM(11, 1), geom.PtMM(1, 11), geom.PtMM(11, 11), geom.PtMM(1, 21), geom.PtMM(11, 21))}
	r, err := pattern.Recognise(u)
	if err != nil || r.Group != pattern.P4MM || r.Copies != 6 || math.Abs(r.Primitive.CellMM2()-100) > 1e-6 {
		t.Errorf("six squares of dots: %+v, %v", r, err)
	}
	u.Motifs[3].At.X += 500_000
	if r, err = pattern.Recognise(u); err != nil || r.Copies != 1 || r.Group != pattern.PM {
		t.Errorf("one dot moved along its row: %+v, %v", r, err)
	}
	if _, err := pattern.Recognise(pattern.Unit{Lattice: u.Lattice}); err == nil {
		t.Error("an empty unit has a group")
	}
}

func BenchmarkRecognise500Motifs(b *testing.B) {
	random := rand.New(rand.NewPCG(5, 17))
	l := pattern.Straight(geom.MM(40), geom.MM(40))
	var seed []pattern.Motif
	for range 63 {
		seed = append(seed, pattern.Motif{Shape: geom.Shape{Outline: outline(b, "M0 -2L1 0L0.3 1L-1.5 0Z")}, At: randomPoint(random, 20_000_000), TurnDeg: float64(random.IntN(360))})
	}
	u := pattern.Unit{Lattice: l, Motifs: multiplied(b, pattern.P4MM, l, seed)}
	for b.Loop() {
		if r, err := pattern.Recognise(u); err != nil || r.Group != pattern.P4MM {
			b.Fatal(r, err)
		}
	}
}
