package stencil

import (
	"context"
	"math"
	"math/rand/v2"
	"testing"

	"tsugime/repeat/geom"
	"tsugime/repeat/pattern"
)

// Two bars are one motif and a dot stands between them. From bar to dot there is
// more room than from one motif to the next, yet no line may pass there.
func TestAMotifIsNotPartedWhereAnotherStandsBetweenItsPieces(t *testing.T) {
	bars := outline(t, "M-2 -7H2V-5H-2ZM-2 5H2V7H-2Z")
	step := geom.MM(51)
	u := pattern.Unit{Lattice: pattern.Straight(geom.MM(10), geom.MM(17)), Motifs: []pattern.Motif{
		{ID: 1, Shape: bars}, {ID: 2, Shape: geom.DiscShape(geom.Point{}, geom.MM(2))},
	}}
	f := Field{Width: geom.MM(95)}
	j, err := FindJoint(context.Background(), u, f, step, JointSpec{})
	if err != nil {
		t.Fatal(err)
	}
	keepsClear(t, "bars", u, f, step, j)
	notParted(t, "bars", u, f, j)
	// Between two motifs lie 17 − 14 = 3 mm.
	if j.Widest.MM() != 1.5 {
		t.Errorf("widest %s mm, want 1.5", j.Widest)
	}
}

// notParted checks that all pieces of each motif about the line lie on one side.
func notParted(t *testing.T, name string, u pattern.Unit, f Field, j Joint) {
	t.Helper()
	for _, c := range fieldCuts(u, f, -geom.MM(60), geom.MM(60)) {
		below := 0
		for _, contour := range c.Shape.Outline {
			if j.Below(contour.Start) {
				below++
			}
		}
		if below > 0 && below < len(c.Shape.Outline) {
			t.Errorf("%s: the motif %d at %v is parted", name, c.Motif, c.Shape.Bounds().Centre())
		}
	}
}

// Pairs of squares by chance, often with others between them.
func TestPairsByChanceAreNotParted(t *testing.T) {
	rnd := rand.New(rand.NewPCG(11, 3))
	lines := 0
	for scene := range 25 {
		u := pattern.Unit{Lattice: pattern.Straight(geom.MM(60), geom.MM(40))}
		for i := range 40 {
			s := outline(t, "M0 0H1.4V1.4H0Z").Outline
			at := geom.PtMM(rnd.Float64()*60, rnd.Float64()*40)
			if i%4 == 0 {
				turn := rnd.Float64() * 2 * math.Pi
				s = append(s, s.Moved(geom.PtMM(6*math.Cos(turn), 6*math.Sin(turn)))...)
			}
			u.Motifs = append(u.Motifs, pattern.Motif{ID: pattern.ID(i + 1), Shape: geom.Shape{Outline: s}, At: at})
		}
		f, step := Field{Width: geom.MM(60)}, geom.MM(80)
		j, err := FindJoint(context.Background(), u, f, step, JointSpec{})
		if err != nil {
			t.Fatal(err)
		}
		if j.Clearance > 0 {
			lines++
			keepsClear(t, "pairs", u, f, step, j)
			notParted(t, "pairs", u, f, j)
		} else {
			t.Logf("scene %d has no line", scene)
		}
	}
	if lines < 15 {
		t.Errorf("only %d of 25 scenes have a line", lines)
	}
}

// Leaves 100 mm tall and a step of 61 mm that is no multiple of anything: each
// leaf can go whole to one side, so none is crossed.
func TestTallMotifsStayWholeWhereTheStepFitsNothing(t *testing.T) {
	leaf := outline(t, "M0 -50C9 -30 9 30 0 50C-9 30 -9 -30 0 -50Z")
	u := pattern.Unit{Lattice: pattern.HalfDrop(geom.MM(24), geom.MM(120)), Motifs: []pattern.Motif{{ID: 1, Shape: leaf}}}
	f := Field{Width: geom.MM(240)}
	for _, step := range []float64{61, 97, 131, 180} {
		j, err := FindJoint(context.Background(), u, f, geom.MM(step), JointSpec{})
		if err != nil {
			t.Fatal(err)
		}
		if j.Clearance <= 0 || j.Crossed != 0 {
			t.Errorf("step %g: clearance %s, %s mm crossed", step, j.Clearance, j.Crossed)
			continue
		}
		if meetsCopy(j.Line, geom.MM(step)) {
			t.Errorf("step %g: the line meets its copy", step)
		}
	}
}
