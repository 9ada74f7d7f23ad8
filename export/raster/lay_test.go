package raster

import (
	"bytes"
	"math"
	"runtime"
	"sync"
	"testing"

	"tsugime/repeat/geom"
)

func worstDifference(a, b *Plane) float64 {
	worst := 0.0
	for i := range a.sum {
		worst = math.Max(worst, math.Abs(float64(a.sum[i]-b.sum[i]))*255)
	}
	return worst
}

func TestClipsThatMeetLeaveNoSeam(t *testing.T) {
	r := seeded(7)
	g := NewGround(append(apart(r, 4, 2.7), geom.Shape{Outline: geom.Outline{{Start: geom.PtMM(-30, 20), Segments: []geom.Segment{
		{End: geom.PtMM(30, 22)}, {End: geom.PtMM(0, 40)}}}}}))
	for range 40 {
		v := View{X: -14, Y: -14, PxPerMM: 0.3 * math.Pow(20, r.Float64())}
		whole, parts := NewPlane(90, 90), NewPlane(90, 90)
		g.Paint(whole, v, Lay{})
		x, y := geom.MM(28*r.Float64()-14), geom.MM(40*r.Float64()-14)
		const far = 900 * geom.Millimetre
		for _, c := range [4][2]geom.Point{
			{{X: -far, Y: -far}, {X: x, Y: y}}, {{X: x, Y: -far}, {X: far, Y: y}},
			{{X: -far, Y: y}, {X: x, Y: far}}, {{X: x, Y: y}, {X: far, Y: far}},
		} {
			g.Paint(parts, v, Lay{Clip: geom.BoxOf(c[0], c[1])})
		}
		if d := worstDifference(whole, parts); d > 0.02 {
			t.Fatalf("four clips that meet at %s, %s: off by %.4f levels at %g px/mm", x, y, d, v.PxPerMM)
		}
	}
}

func TestAClipCutsWithinAPixel(t *testing.T) {
	g := NewGround([]geom.Shape{{Outline: geom.Outline{{Start: geom.PtMM(-50, -50), Segments: []geom.Segment{
		{End: geom.PtMM(50, -50)}, {End: geom.PtMM(50, 50)}, {End: geom.PtMM(-50, 50)}}}}}})
	p := NewPlane(4, 3)
	g.Paint(p, View{PxPerMM: 1}, Lay{Clip: geom.BoxOf(geom.PtMM(0.25, 1), geom.PtMM(2.5, 1.2))})
	want := []uint8{0, 0, 0, 0, 38, 51, 26, 0, 0, 0, 0, 0} // 0.15, 0.2 and 0.1 of 255
	if !bytes.Equal(p.Cover, want) {
		t.Errorf("got %v, want %v", p.Cover, want)
	}
}

func TestTurningTwiceIsNotTurning(t *testing.T) {
	shapes := blades()
	half := geom.Rotate(180)
	turned := make([]geom.Shape, len(shapes))
	for i, s := range shapes {
		turned[i] = s.Placed(half)
	}
	v := View{X: -5, Y: -5.03, PxPerMM: 9.1}
	move := geom.PtMM(0.37, -0.11)
	want, got := NewPlane(90, 90), NewPlane(90, 90)
	NewGround(shapes).Paint(want, v, Lay{Move: move})
	NewGround(turned).Paint(got, v, Lay{Move: move, Turned: true})
	if d := worstDifference(want, got); d > 0.02 {
		t.Errorf("turned twice, the picture is off by %.4f levels", d)
	}
	got.Reset()
	NewGround(turned).Paint(got, v, Lay{Move: move, TurnDeg: 180})
	if d := worstDifference(want, got); d > 0.02 {
		t.Errorf("turned by 180 degrees, the picture is off by %.4f levels", d)
	}
}

func TestALatticeVectorChangesNothing(t *testing.T) {
	for _, name := range names() {
		l := lattices[name]
		g := NewGround([]geom.Shape{geom.DiscShape(geom.PtMM(0.2, 0.3), 400_000)}, l[0], l[1])
		for _, zoom := range []float64{0.1, 0.9, 3, 25} {
			v := View{X: 3, Y: 4, PxPerMM: zoom}
			want, got := NewPlane(300, 200), NewPlane(300, 200)
			g.Paint(want, v, Lay{})
			g.Paint(got, v, Lay{Move: l[0].Times(41).Add(l[1].Times(-23))})
			if d := worstDifference(want, got); d > 0.6 {
				t.Errorf("%s at %g px/mm: moved by a lattice vector, off by %.4f levels", name, zoom, d)
			}
		}
	}
}

func TestManyLaysAtOnceAreTheSameAsOneByOne(t *testing.T) {
	g, lays := sheet(), bolt(70)
	v := View{X: -10, Y: -20, PxPerMM: 0.078}
	want, got := NewPlane(60, 1000), NewPlane(60, 1000)
	for _, lay := range lays {
		g.direct(want, v, lay)
	}
	if !g.summed(got, v, lays) {
		t.Fatal("a bolt of 4.4 million dots was not summed up")
	}
	if d := worstDifference(want, got); d > 0.05 {
		t.Errorf("the bolt at once is off by %.4f levels", d)
	}
}

func TestThePictureDoesNotDependOnTheMachine(t *testing.T) {
	g := NewGround(append(apart(seeded(9), 40, 1.3), blades()...), geom.PtMM(110, 0), geom.PtMM(0, 110))
	paint := func() []uint8 {
		p := NewPlane(400, 300)
		g.Paint(p, View{X: -3, Y: -2, PxPerMM: 2.3}, Lay{})
		g.Paint(p, View{X: -3, Y: -2, PxPerMM: 0.23}, Lay{Move: geom.PtMM(0.4, 0.4)})
		return p.Cover
	}
	defer runtime.GOMAXPROCS(runtime.GOMAXPROCS(1))
	want := paint()
	for _, n := range []int{2, 3, 8} {
		runtime.GOMAXPROCS(n)
		var wait sync.WaitGroup
		for range 3 {
			wait.Go(func() {
				if !bytes.Equal(paint(), want) {
					t.Errorf("%d processors paint another picture than one", n)
				}
			})
		}
		wait.Wait()
	}
}

func TestAGroundOfNothingPaintsNothing(t *testing.T) {
	for _, g := range []*Ground{NewGround(nil), NewGround(nil, geom.PtMM(1, 0), geom.PtMM(0, 1)),
		NewGround([]geom.Shape{{}}, geom.Point{}), NewGround([]geom.Shape{{Outline: geom.Outline{}}}, geom.PtMM(1, 0))} {
		p := NewPlane(20, 20)
		g.Paint(p, View{PxPerMM: 1}, Lay{})
		g.Paint(p, View{PxPerMM: 0}, Lay{})
		g.Paint(NewPlane(0, 5), View{PxPerMM: 1}, Lay{})
		if !bytes.Equal(p.Cover, make([]uint8, 400)) {
			t.Error("nothing left a mark")
		}
	}
}

// A ground laid larger is the ground of larger shapes.
func TestAGrownLayIsOfLargerShapes(t *testing.T) {
	r := seeded(11)
	small := apart(r, 4, 2.7)
	large := make([]geom.Shape, len(small))
	for i, s := range small {
		large[i] = geom.DiscShape(geom.Point{X: s.Disc.Centre.X.Times(1.02), Y: s.Disc.Centre.Y.Times(1.02)}, s.Disc.Diameter.Times(1.02))
	}
	v := View{X: -14, Y: -14, PxPerMM: 5}
	want, got := NewPlane(150, 150), NewPlane(150, 150)
	NewGround(large).Paint(want, v, Lay{Move: geom.PtMM(1, 0.4)})
	NewGround(small).Paint(got, v, Lay{Move: geom.PtMM(1, 0.4), Grown: 0.02})
	if d := worstDifference(want, got); d > 0.05 {
		t.Errorf("grown by two percent the picture is off by %.4f levels", d)
	}
}
