package pen_test

import (
	"math"
	"testing"

	"tsugime/repeat/geom"
	"tsugime/repeat/pen"
)

// Half a petal from the centre to its tip, with five turns and their mirrors, is a
// flower of five petals. The area of a petal of two arcs is that of two circle
// segments, r²(θ − sin θ) (common geometry).
func TestHalfAPetalBecomesAFlower(t *testing.T) {
	s := pen.Begin(geom.PtMM(3, 3))
	tip := geom.PtMM(3, -3)
	arc, err := pen.ArcThrough(s.Start, geom.PtMM(4, 0), tip)
	if err != nil {
		t.Fatal(err)
	}
	s = added(t, s, arc)
	whole := pen.Wreath{Centre: geom.PtMM(3, 3), Turns: 5, Mirrored: true}.Whole(s)
	if len(whole) != 5 {
		t.Fatalf("%d petals, want 5", len(whole))
	}
	const r, half = 5.0, 3.0 // 1 = r − √(r²−3²)
	theta := 2 * math.Asin(half/r)
	want := r * r * (theta - math.Sin(theta))
	for i, p := range whole {
		if !p.Closed {
			t.Fatalf("petal %d is open", i+1)
		}
		o, _, err := pen.Outline(p)
		if err != nil || math.Abs(o.AreaMM2()-want) > 1e-5 {
			t.Errorf("petal %d has %v mm², %v; want %v", i+1, o.AreaMM2(), err, want)
		}
	}
}

// A line from one mirror line to the next closes all around: with four mirrored
// turns the line from straight up to 45° makes an octagon of sixteenths.
func TestALineFromMirrorToMirrorClosesAround(t *testing.T) {
	w := pen.Wreath{Turns: 4, Mirrored: true}
	s := line(t, 0, -4, 2, -2)
	whole := w.Whole(s)
	if len(whole) != 1 || !whole[0].Closed {
		t.Fatalf("it became %d lines: %+v", len(whole), whole)
	}
	o, mends, err := pen.Outline(whole...)
	if err != nil || len(mends) > 0 || math.Abs(o.AreaMM2()-32) > 1e-9 {
		t.Errorf("area %v, mends %v, %v; want the square of half diagonal 4, 32 mm²", o.AreaMM2(), mends, err)
	}
}

func TestALineToItsNextTurnClosesAround(t *testing.T) {
	for n := 2; n <= 12; n++ {
		w := pen.Wreath{Centre: geom.PtMM(1, 1), Turns: n}
		start := geom.PtMM(1, -4)
		s := pen.Begin(start)
		s = added(t, s, pen.LineTo(geom.PtMM(2, -2)))
		s = added(t, s, pen.LineTo(w.Maps()[1].Apply(start)))
		whole := w.Whole(s)
		if len(whole) != 1 || !whole[0].Closed || len(whole[0].Segments) != 2*n {
			t.Fatalf("%d turns: %d lines, first %+v", n, len(whole), whole[0])
		}
	}
}

func TestACopyThatLiesOnItsOriginalIsNotDoubled(t *testing.T) {
	o, err := pen.Polygon(6, geom.MM(2), 0)
	if err != nil {
		t.Fatal(err)
	}
	hexagon := pen.Of(o)[0]
	if whole := (pen.Wreath{Turns: 6, Mirrored: true}).Whole(hexagon); len(whole) != 1 {
		t.Errorf("a hexagon about the centre became %d", len(whole))
	}
	if whole := (pen.Wreath{Centre: geom.PtMM(9, 0), Turns: 6, Mirrored: true}).Whole(hexagon); len(whole) != 6 {
		t.Errorf("a hexagon on a mirror line became %d, want 6", len(whole))
	}
	if whole := (pen.Wreath{Centre: geom.PtMM(9, 2), Turns: 6, Mirrored: true}).Whole(hexagon); len(whole) != 12 {
		t.Errorf("a hexagon off all mirror lines became %d, want 12", len(whole))
	}
}

func TestCopiesTurnAsTheirOriginalDoes(t *testing.T) {
	s := must(t)(line(t, 1, 0, 4, 0, 2, 3).Close())
	o, mends, err := pen.Outline(pen.Wreath{Turns: 3, Mirrored: true}.Whole(s)...)
	if err != nil || o.AreaMM2() <= 0 {
		t.Fatal(mends, err)
	}
	for _, m := range mends {
		if m.Flaw == geom.Nested {
			t.Errorf("a copy was taken for a hole: %v", m)
		}
	}
}

func TestTurnsOutOfBoundsAreRefused(t *testing.T) {
	for _, n := range []int{0, -3, 73, 1 << 40} {
		if (pen.Wreath{Turns: n}).Check() == nil {
			t.Errorf("%d turns were taken", n)
		}
	}
}
