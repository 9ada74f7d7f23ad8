package stencil

import (
	"context"
	"math"
	"testing"

	"tsugime/repeat/geom"
	"tsugime/repeat/pattern"
)

// Twenty stripes of 1 mm along the bolt: straight across, 20 mm are crossed, half
// a millimetre deep.
func TestStripesAreCrossedSquarelyAndTheirWidthIsTold(t *testing.T) {
	j, err := FindJoint(context.Background(), stripes(t), Field{Width: geom.MM(41)}, geom.MM(100), JointSpec{})
	if err != nil {
		t.Fatal(err)
	}
	if len(j.Crossings) != 20 || j.Crossed != geom.MM(20) || j.Clearance != geom.MM(-0.5) || j.Lap == 0 || len(j.Line) != 2 {
		t.Errorf("%d crossings, %s mm crossed, clearance %s, lap %s, %d points", len(j.Crossings), j.Crossed, j.Clearance, j.Lap, len(j.Line))
	}
	for _, c := range j.Crossings {
		if c.Width != geom.MM(1) || c.From.Y != c.To.Y {
			t.Errorf("a stripe is crossed from %v to %v", c.From, c.To)
		}
	}
}

func stripes(t testing.TB) pattern.Unit {
	return pattern.Unit{Lattice: pattern.Straight(geom.MM(2), geom.MM(20)), Motifs: []pattern.Motif{{ID: 1, Shape: outlineOf(t, "M-0.5 -10H0.5V10H-0.5Z")}}}
}

// linkedRings are rings 10 mm wide every 8 mm with a band of 0.6 mm: they hang
// together both ways.
func linkedRings(t testing.TB) pattern.Unit {
	ring := outlineOf(t, "M5 0A5 5 0 0 1 -5 0A5 5 0 0 1 5 0ZM4.4 0A4.4 4.4 0 0 0 -4.4 0A4.4 4.4 0 0 0 4.4 0Z")
	return pattern.Unit{Lattice: pattern.Straight(geom.MM(8), geom.MM(8)), Motifs: []pattern.Motif{{ID: 1, Shape: ring}}}
}

func outlineOf(t testing.TB, path string) geom.Shape {
	o, err := geom.ParsePathData(path)
	if err != nil {
		t.Fatal(err)
	}
	return geom.Shape{Outline: o}
}

// Walking the line in steps of 5 µm gives the crossed width once more. The line must do better than the one through all middles, which crosses each
// band twice.
func TestLinkedRingsAreCrossedAsLittleAsTheLineSays(t *testing.T) {
	u, f := linkedRings(t), Field{Width: geom.MM(84)}
	j, err := FindJoint(context.Background(), u, f, geom.MM(80), JointSpec{})
	if err != nil {
		t.Fatal(err)
	}
	n := around(fieldCuts(u, f, geom.MM(-40), geom.MM(40)))
	outlines := n.outlineIndex()
	in, all := 0, 0
	walk(j.Line, func(p geom.Point) {
		all++
		if !n.paper(float64(p.X), float64(p.Y), outlines) {
			in++
		}
	})
	if got, want := j.Crossed.MM(), j.Length.MM()*float64(in)/float64(all); math.Abs(got-want) > 0.01*want {
		t.Errorf("%.4f mm crossed, walking says %.4f", got, want)
	}
	// Ten rings stand in a row: a line through the middles crosses 20 bands.
	if got := j.Crossed.MM(); got > 0.75*20*0.6 || got == 0 || j.Clearance >= 0 {
		t.Errorf("%.4f mm crossed at %s; straight through the middles 12 mm are", got, j.Clearance)
	}
	t.Logf("%.4f mm crossed in %d places, length %s, %d points", j.Crossed.MM(), len(j.Crossings), j.Length, len(j.Line))
	if meetsCopy(j.Line, geom.MM(80)) {
		t.Error("the line meets its copy")
	}
}

func BenchmarkJointOfStripes(b *testing.B) { benchmarkJoint(b, stripes(b), geom.MM(180)) }

func BenchmarkJointOfRings(b *testing.B) { benchmarkJoint(b, linkedRings(b), geom.MM(184)) }

// Petals of four Béziers each, about 2,000 on the sheet.
func BenchmarkJointOf2000Curves(b *testing.B) {
	petal := outlineOf(b, "M0 -2.4C1.5 -1.4 1.5 1.4 0 2.4C-1.5 1.4 -1.5 -1.4 0 -2.4Z")
	benchmarkJoint(b, pattern.Unit{Lattice: pattern.HalfDrop(geom.MM(5), geom.MM(6)), Motifs: []pattern.Motif{{ID: 1, Shape: petal}}}, geom.MM(180))
}

// A stripe as long as the step, lapping the next by a hair, stands between the
// line and its copy and not on the far side of it.
func TestACrossedStripeStandsBetweenTheLines(t *testing.T) {
	step := geom.MM(180)
	u := pattern.Unit{
		Lattice: pattern.Straight(geom.MM(8), step),
		Motifs:  []pattern.Motif{{ID: 1, Shape: outlineOf(t, "M-2 -0.05H2V180.05H-2Z"), At: geom.PtMM(4, 0)}},
	}
	field := Field{geom.MM(10), geom.MM(350)}
	j, err := FindJoint(context.Background(), u, field, step, JointSpec{})
	if err != nil {
		t.Fatal(err)
	}
	cuts := Between(u, field, j, step)
	if len(cuts) == 0 {
		t.Fatal("no stripe is on the sheet")
	}
	all := geom.BoxOf(j.Line...).Union(geom.BoxOf(j.Line...).Moved(geom.Point{Y: step})).Grown(geom.MM(0.2))
	for _, c := range cuts {
		if box := c.Shape.Bounds(); box.Min.Y < all.Min.Y || box.Max.Y > all.Max.Y {
			t.Errorf("a stripe reaches from %s to %s mm, the lines from %s to %s", box.Min.Y, box.Max.Y, all.Min.Y, all.Max.Y)
		}
	}
}
