package geom_test

import (
	"math"
	"math/rand/v2"
	"reflect"
	"testing"

	"tsugime/repeat/geom"
)

func TestMapsFollowEachOther(t *testing.T) {
	random := rand.New(rand.NewPCG(3, 1))
	for range 2000 {
		p := randomPoint(random, 1e9)
		m := geom.Rotate(random.Float64() * 360).Then(geom.Translate(randomPoint(random, 1e9)))
		n := geom.Scale(random.Float64()*2-1, random.Float64()*2-1).Then(geom.Rotate(random.Float64() * 360))
		one, both := n.Apply(m.Apply(p)), m.Then(n).Apply(p)
		if d := one.Sub(both).Norm(); d > 2 { // one rounding more
			t.Fatalf("%v: one after the other gives %v, both at once %v", p, one, both)
		}
		if got, want := m.Then(n).Det(), m.Det()*n.Det(); math.Abs(got-want) > 1e-12 {
			t.Fatalf("areas change by %v, want %v", got, want)
		}
		if m.Then(geom.Identity).Apply(p) != m.Apply(p) || geom.Identity.Then(m).Apply(p) != m.Apply(p) {
			t.Fatalf("the identity moves %v", p)
		}
		if !m.Similar() {
			t.Fatalf("a turn and a move bend circles: %+v", m)
		}
	}
	if geom.Scale(1, 1.001).Similar() || !geom.Scale(-2, 2).Similar() || (geom.Affine{A: 1, B: 0.1, D: 1}).Similar() {
		t.Errorf("Similar takes a stretch or a lean for a turn")
	}
}

// Clockwise on the sheet: x goes to y.
func TestQuarterTurnsAreExact(t *testing.T) {
	p := geom.Point{X: 1_234_567_891, Y: -987_654_321}
	for degrees, want := range map[float64]geom.Point{
		0: p, 90: {X: -p.Y, Y: p.X}, 180: p.Neg(), 270: {X: p.Y, Y: -p.X}, -90: {X: p.Y, Y: -p.X}, 450: {X: -p.Y, Y: p.X},
	} {
		if got := geom.Rotate(degrees).Apply(p); got != want {
			t.Errorf("%v turned by %g°: got %v, want %v", p, degrees, got, want)
		}
	}
	if got := geom.Scale(-1, 1).Apply(p); got != (geom.Point{X: -p.X, Y: p.Y}) {
		t.Errorf("the mirror image of %v is %v", p, got)
	}
}

// form is an outline with all kinds of segments.
func form(t testing.TB) geom.Outline {
	return outline(t, "M0 0L4 0A2.5 2.5 0 0 1 4 4C3 5 1 6 0 4Z M1 1V2H2Z")
}

// Mirrored twice, and turned there and back, an outline is itself; its area and
// its kinds stay under each map that keeps sizes.
func TestOutlinesUnderMaps(t *testing.T) {
	o := form(t)
	mirror := geom.Scale(-1, 1)
	if got := o.Mapped(mirror).Mapped(mirror); !reflect.DeepEqual(got, o) {
		t.Errorf("mirrored twice it is\n%v\nwant\n%v", got, o)
	}
	if got := o.Mapped(geom.Rotate(90)).Mapped(geom.Rotate(270)); !reflect.DeepEqual(got, o) {
		t.Errorf("turned a quarter and three it is\n%v\nwant\n%v", got, o)
	}
	random := rand.New(rand.NewPCG(5, 1))
	for range 500 {
		degrees := random.Float64() * 360
		m := geom.Rotate(degrees)
		if random.IntN(2) == 0 {
			m = mirror.Then(m)
		}
		once := o.Mapped(m)
		if math.Abs(once.AreaMM2()-o.AreaMM2()) > 5e-5 {
			t.Fatalf("under %+v the area is %v, want %v", m, once.AreaMM2(), o.AreaMM2())
		}
		if once[0].Segments[1].Kind != geom.Arc {
			t.Fatalf("under %+v the arc is no arc", m)
		}
		back := geom.Rotate(-degrees)
		if m.Det() < 0 {
			back = back.Then(mirror)
		}
		if got := once.Mapped(back); apart(got.Bounds(), o.Bounds()) > 4 {
			t.Fatalf("under %+v and back it reaches %v, want %v", m, got.Bounds(), o.Bounds())
		}
	}
	squeezed := o.Mapped(geom.Scale(2, 0.5))
	if math.Abs(squeezed.AreaMM2()-o.AreaMM2()) > 1e-3*o.AreaMM2() {
		t.Errorf("twice as wide and half as high: area %v, want about %v", squeezed.AreaMM2(), o.AreaMM2())
	}
	moved := o.Moved(geom.PtMM(3, -7))
	if got := moved.Moved(geom.PtMM(-3, 7)); !reflect.DeepEqual(got, o) {
		t.Errorf("moved there and back it is\n%v\nwant\n%v", got, o)
	}
}
