package stencil

import (
	"context"
	"math"
	"testing"

	"tsugime/repeat/geom"
	"tsugime/repeat/pattern"
)

// Four corners about one disc become one: where the outer two ways meet.
func TestCornersAboutOneDotBecomeOne(t *testing.T) {
	n := around([]pattern.CutOut{{Shape: geom.DiscShape(geom.PtMM(10, 0), geom.MM(4))}})
	line := []geom.Point{geom.PtMM(0, 0)}
	for _, deg := range []float64{-60, -30, 0, 30, 60} {
		sin, cos := math.Sincos(deg * math.Pi / 180)
		line = append(line, geom.PtMM(10+3.2*sin, -3.2*cos))
	}
	line = append(line, geom.PtMM(20, 0))
	few := n.fewer(line, 1e6)
	if len(few) > 4 {
		t.Errorf("%d points about one dot: %v", len(few), few)
	}
	for i, b := range few[1:] {
		if c := n.clearOf(few[i], b, 2e6); c < 1e6-2 {
			t.Errorf("piece %d comes within %.0f nm", i, c)
		}
	}
}

// A right angle with pieces 10 mm long, no cut-out near: rounded with half a
// piece on each side the radius is 5/tan 45° = 5 mm. With a dot on the inner
// side the arc must stay as far from it as the line says.
func TestACornerIsRoundedAsFarAsThereIsRoom(t *testing.T) {
	l := pattern.Straight(geom.MM(500), geom.MM(500))
	f := Field{Width: geom.MM(400)}
	j := Joint{Line: []geom.Point{geom.PtMM(100, 10), geom.PtMM(110, 10), geom.PtMM(110, 20)}, Clearance: geom.MM(2)}
	free := pattern.Unit{Lattice: l, Motifs: []pattern.Motif{{ID: 1, Shape: geom.DiscShape(geom.Point{}, geom.MM(1)), At: geom.PtMM(300, 200)}}}
	c := JointCorners(free, f, j)
	if len(c) != 1 || math.Abs(c[0].TurnDeg-90) > 1e-9 || math.Abs(c[0].Radius.MM()-5) > 1e-5 {
		t.Fatalf("corners %v; want one of 90° with 5 mm", c)
	}
	// The dot's centre lies 3.5 mm from both pieces. The arc of radius r comes
	// within r + (3.5 − r)·√2 of it, which is 2 + 1 at r = (3.5·√2 − 3)/(√2 − 1).
	dot := pattern.Unit{Lattice: l, Motifs: []pattern.Motif{{ID: 1, Shape: geom.DiscShape(geom.Point{}, geom.MM(2)), At: geom.PtMM(106.5, 13.5)}}}
	want := (3.5*math.Sqrt2 - 3) / (math.Sqrt2 - 1)
	if got := JointCorners(dot, f, j)[0].Radius.MM(); got > want+1e-3 || got < want*0.98 {
		t.Errorf("radius %.4f mm beside a dot, want %.4f", got, want)
	}
}

// Less clearance never makes a longer line but for what a lost corner is worth,
// and each choice is what FindJoint finds for that share.
func TestTheCurveTellsWhatEachShareMakesOfTheLine(t *testing.T) {
	u, f, step := scattered(5, 60, 37, 1.6, 1), Field{Left: geom.MM(3), Width: geom.MM(57)}, geom.MM(37)
	curve, err := JointCurve(context.Background(), u, f, step)
	if err != nil {
		t.Fatal(err)
	}
	if len(curve) != len(jointShares) {
		t.Fatalf("%d choices", len(curve))
	}
	for i, c := range curve {
		j, err := FindJoint(context.Background(), u, f, step, JointSpec{Share: c.Share})
		if err != nil {
			t.Fatal(err)
		}
		if c.Length != j.Length || c.Clearance != j.Clearance || c.Points != len(j.Line) {
			t.Errorf("share %g: the curve says %+v, the line is %s mm at %s", c.Share, c, j.Length, j.Clearance)
		}
		if i > 0 && c.Length > curve[i-1].Length.Times(1.03) {
			t.Errorf("share %g is %s mm long, more clearance only %s", c.Share, c.Length, curve[i-1].Length)
		}
	}
	if first, last := curve[0], curve[len(curve)-1]; last.Length >= first.Length {
		t.Errorf("all of the clearance %s mm, 0.3 of it %s", first.Length, last.Length)
	}
}

func TestAShareBeyondAllOrNothingIsRefused(t *testing.T) {
	for _, share := range []float64{-0.1, 1.01, math.NaN()} {
		if _, err := FindJoint(context.Background(), ground(pattern.Straight(geom.MM(2), geom.MM(2)), 1), field, geom.MM(100), JointSpec{Share: share}); err == nil {
			t.Errorf("share %g was taken", share)
		}
	}
}
