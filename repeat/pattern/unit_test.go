package pattern_test

import (
	"math"
	"math/rand/v2"
	"reflect"
	"slices"
	"testing"

	"tsugime/repeat/geom"
	"tsugime/repeat/pattern"
)

func outline(t testing.TB, data string) geom.Outline {
	t.Helper()
	o, err := geom.ParsePathData(data)
	if err != nil {
		t.Fatal(err)
	}
	return o
}

// randomUnit has discs and outlines, some larger than the cell.
func randomUnit(t testing.TB, random *rand.Rand) pattern.Unit {
	u := pattern.Unit{Lattice: randomLattice(random)}
	kite := outline(t, "M0 -2L1 0L0 1L-1 0Z")
	for i := range 1 + random.IntN(4) {
		m := pattern.Motif{ID: pattern.ID(i + 1), At: randomPoint(random, 5_000_000), TurnDeg: float64(random.IntN(360)), Mirrored: random.IntN(2) == 0}
		m.Shape = geom.DiscShape(geom.Point{}, geom.Length(100_000+random.Int64N(4_000_000)))
		if random.IntN(2) == 0 {
			m.Shape = geom.Shape{Outline: kite}
		}
		u.Motifs = append(u.Motifs, m)
	}
	return u
}

// A window shows what a walk over far more copies finds, those included that
// only reach into it.
func TestAWindowShowsEveryHoleOnce(t *testing.T) {
	random := rand.New(rand.NewPCG(1, 2))
	for range 150 {
		u := randomUnit(t, random)
		window := geom.BoxOf(randomPoint(random, 3_000_000), randomPoint(random, 3_000_000))
		type hole struct {
			id pattern.ID
			at geom.Point
		}
		want := map[hole]int{}
		r := u.Lattice.Reduced()
		for _, m := range u.Motifs {
			_, _, near := u.Lattice.Nearest(m.At) // the walk is about the origin
			m.At = near
			for i := -25; i <= 25; i++ {
				for j := -25; j <= 25; j++ {
					if b := m.Placed().Moved(r.At(i, j)).Bounds(); b.Meets(window) {
						want[hole{m.ID, b.Min}]++
					}
				}
			}
		}
		got := map[hole]int{}
		for c := range u.In(window) {
			got[hole{c.Motif, c.Shape.Bounds().Min}]++
		}
		if !reflect.DeepEqual(got, want) {
			t.Fatalf("%v in %v: got %d holes, want %d", u.Lattice, window, len(got), len(want))
		}
	}
}

func TestAWindowCanBeLeftEarly(t *testing.T) {
	u := pattern.Unit{Lattice: pattern.Straight(geom.MM(1), geom.MM(1)), Motifs: []pattern.Motif{{ID: 1, Shape: geom.DiscShape(geom.Point{}, geom.MM(0.5))}}}
	n := 0
	for range u.In(geom.BoxOf(geom.Point{}, geom.PtMM(100, 100))) {
		if n++; n == 3 {
			break
		}
	}
	if n != 3 {
		t.Errorf("%d holes were shown, want 3", n)
	}
}

// Where a motif is drawn in the plane doesn't matter, only where in the cell.
func TestCutOutsComeIntoTheCell(t *testing.T) {
	random := rand.New(rand.NewPCG(2, 2))
	for range 300 {
		u := randomUnit(t, random)
		moved := pattern.Unit{Lattice: u.Lattice, Motifs: slices.Clone(u.Motifs)}
		for i := range moved.Motifs {
			moved.Motifs[i].At = moved.Motifs[i].At.Add(u.Lattice.At(random.IntN(9)-4, random.IntN(9)-4))
		}
		if got, want := moved.CutOuts(), u.CutOuts(); !reflect.DeepEqual(got, want) {
			t.Fatalf("%v: copies give\n%v\nwant\n%v", u.Lattice, got, want)
		}
	}
}

// Mirrored, then turned, then moved: each point of the rim by hand.
func TestAMotifIsMirroredThenTurnedThenMoved(t *testing.T) {
	random := rand.New(rand.NewPCG(3, 2))
	corners := []geom.Point{geom.PtMM(0, -2), geom.PtMM(1, 0), geom.PtMM(0, 1), geom.PtMM(-1.5, 0)}
	shape := geom.Shape{Outline: outline(t, "M0 -2L1 0L0 1L-1.5 0Z")}
	for range 1000 {
		m := pattern.Motif{Shape: shape, At: randomPoint(random, 1e8), TurnDeg: random.Float64()*360 - 180, Mirrored: random.IntN(2) == 0}
		ring := m.Placed().Rings(geom.Chord)[0]
		sin, cos := math.Sincos(m.TurnDeg * math.Pi / 180)
		for i, c := range corners {
			x, y := float64(c.X), float64(c.Y)
			if m.Mirrored {
				x = -x
			}
			want := geom.Point{X: geom.Length(math.Round(x*cos - y*sin)), Y: geom.Length(math.Round(x*sin + y*cos))}.Add(m.At)
			if d := ring[i].Sub(want); max(d.X.Abs(), d.Y.Abs()) > 1 {
				t.Fatalf("%+v: corner %d is at %v, want %v", m, i, ring[i], want)
			}
		}
	}
	// A disc off its own place goes around it like any shape.
	m := pattern.Motif{Shape: geom.DiscShape(geom.PtMM(3, 0), geom.MM(1)), At: geom.PtMM(10, 10), TurnDeg: 90, Mirrored: true}
	if got, want := m.Placed().Disc.Centre, geom.PtMM(10, 7); got != want {
		t.Errorf("the disc is at %v, want %v", got, want)
	}
}

// The measure of a fine ground: 1,200 holes on a square sun of 30.303 mm are
// 130.68 on a square centimetre, since a sun is 100/33 cm (act of 1891).
func TestDensityIsCountedOnCentimetreAndSun(t *testing.T) {
	dots := func(n int) []pattern.Motif {
		m := make([]pattern.Motif, n)
		for i := range m {
			m[i] = pattern.Motif{ID: pattern.ID(i + 1), Shape: geom.DiscShape(geom.Point{}, geom.MM(0.4))}
		}
		return m
	}
	u := pattern.Unit{Lattice: pattern.Straight(geom.MM(10), geom.MM(10)), Motifs: dots(98)}
	if got, want := u.PerCM2(), 98.0; math.Abs(got-want) > 1e-9 {
		t.Errorf("got %v on a square centimetre, want %v", got, want)
	}
	if got, want := u.PerSquareSun(), 98*10000.0/1089; math.Abs(got-want) > 1e-9 {
		t.Errorf("got %v on a square sun, want %v", got, want)
	}
	sun := geom.Length(30_303_030)
	u = pattern.Unit{Lattice: pattern.Straight(sun, sun), Motifs: dots(1200)}
	if got := u.PerSquareSun(); math.Abs(got-1200) > 1e-3 {
		t.Errorf("1200 on a sun by a sun are counted as %v", got)
	}
	if got, want := u.PerCM2(), 1200*33.0*33/10000; math.Abs(got-want) > 1e-4 {
		t.Errorf("1200 on a square sun are %v on a square centimetre, want %v", got, want)
	}
}

// No rim lies beyond the reach, and the reach is no more than the box's corner.
func TestReachCoversEveryRim(t *testing.T) {
	random := rand.New(rand.NewPCG(4, 2))
	for range 300 {
		u := randomUnit(t, random)
		reach := float64(u.Reach())
		for _, m := range u.Motifs {
			for _, ring := range m.Placed().Rings(geom.Chord) {
				for _, p := range ring {
					if d := p.Sub(m.At).Norm(); d > reach {
						t.Fatalf("%+v reaches %v nm, said is %v", m, d, reach)
					}
				}
			}
		}
	}
}

// What a person waits for: the 63,000 holes of a fine sheet.
func BenchmarkHolesOfAFineSheet(b *testing.B) {
	u := pattern.Unit{
		Lattice: pattern.Diagonal(geom.MM(0.7125), 181_818_182/254),
		Motifs:  []pattern.Motif{{ID: 1, Shape: geom.DiscShape(geom.Point{}, geom.MM(0.4)), At: geom.PtMM(187.5, 0)}},
	}
	window := geom.BoxOf(geom.PtMM(9.5, 0), geom.PtMM(365.5, 181.818182))
	for b.Loop() {
		n := 0
		for range u.In(window) {
			n++
		}
		if n < 63_000 || n > 64_500 {
			b.Fatalf("%d holes", n)
		}
	}
}
