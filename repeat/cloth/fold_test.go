package cloth

import (
	"math/rand/v2"
	"testing"

	"tsugime/repeat/geom"
	"tsugime/repeat/pattern"
)

// dots is a unit of one dot on a straight lattice of 10 by 8 mm, at a place.
func dots(x, y float64) pattern.Unit {
	return pattern.Unit{Lattice: pattern.Straight(geom.MM(10), geom.MM(8)), Motifs: []pattern.Motif{
		{ID: 1, Shape: geom.DiscShape(geom.Point{}, geom.MM(1)), At: geom.PtMM(x, y)},
	}}
}

// Dots 8 mm apart along have mirrors across through every dot and half way
// between: every 4 mm.
func TestTheNearestMirrorIsFound(t *testing.T) {
	random := rand.New(rand.NewPCG(3, 3))
	for range 60 {
		x, y, at := random.Float64()*10, random.Float64()*8, random.Float64()*100-50
		for _, c := range []struct {
			find   func(pattern.Unit, geom.Length) (Mirror, error)
			place  float64
			period float64
		}{{FoldMirror, y, 4}, {AlongMirror, x, 5}} {
			m, err := c.find(dots(x, y), geom.MM(at))
			if err != nil || !m.Found || m.Glide != 0 {
				t.Fatalf("%+v, %v", m, err)
			}
			// From the place looked at, the mirror is a whole number of periods from the dot.
			n := (at + m.Off.MM() - c.place) / c.period
			within(t, "whole periods", n, float64(int(n+1000.5)-1000), 1e-5)
			within(t, "nearest", m.Off.MM(), 0, c.period/2+1e-5)
		}
	}
}

// A flag has no mirror; two flags, one the other's image moved half a cell on,
// have a glide.
func TestAGlideIsNoMirror(t *testing.T) {
	outline, err := geom.ParsePathData("M0 0L2 0L0 1Z")
	if err != nil {
		t.Fatal(err)
	}
	flag := pattern.Motif{ID: 1, Shape: geom.Shape{Outline: outline}, At: geom.PtMM(1, 1)}
	u := pattern.Unit{Lattice: pattern.Straight(geom.MM(10), geom.MM(8)), Motifs: []pattern.Motif{flag}}
	m, err := FoldMirror(u, 0)
	if err != nil || m.Found || m.Group != pattern.P1 {
		t.Errorf("a flag: %+v, %v", m, err)
	}
	image, err := pattern.ParseGroup("pg")
	if err != nil {
		t.Fatal(err)
	}
	// pg of the tables glides along y; so do the copies.
	if u.Motifs, err = image.Multiply(u.Lattice, u.Motifs); err != nil {
		t.Fatal(err)
	}
	if m, err = AlongMirror(u, 0); err != nil || !m.Found || m.Glide != geom.MM(4) || m.Off != 0 {
		t.Errorf("two flags: %+v, %v", m, err)
	}
	if m, err = FoldMirror(u, 0); err != nil || m.Found {
		t.Errorf("two flags across: %+v, %v", m, err)
	}
}

// Two dots of 1 mm on a sheet of 8 mm: one 0.2 mm over the near fold, one wholly
// beyond the far one by 1.5 mm.
func TestCutOutsOverAFoldAreCounted(t *testing.T) {
	var boxes []geom.Box
	for _, y := range []float64{.3, 4, 7.5, 9} {
		boxes = append(boxes, geom.DiscShape(geom.PtMM(3, y), geom.MM(1)).Bounds())
	}
	f, err := FoldingOf(dots(3, 4), geom.MM(8), boxes)
	if err != nil || !f.Found || f.Off != 0 || f.Over != 2 || f.Reach != geom.MM(1.5) {
		t.Errorf("%+v, %v", f, err)
	}
	if f, err = FoldingOf(dots(3, 4), geom.MM(9), nil); err != nil || f.Off.Abs() != geom.MM(1) {
		t.Errorf("a step off the pattern: %+v, %v", f, err)
	}
}

// A poured-dye cloth of 12 m in sections of 1 m: twelve, every other mirrored
// (a dyer's count), no turn, and joints that mirror what a fold is off by.
func TestFoldedSectionsAreMirroredByTurns(t *testing.T) {
	bolt := Bolt{Width: 370 * geom.Millimetre, Length: 12 * geom.Metre, Folded: true}
	run := mustLay(t, bolt, coatBoard, design, geom.Metre)
	if run.Needed != 12 || len(run.Placements) != 11 || len(run.Turns) != 0 || run.Drift.Way != FoldLine || Marks(run) != nil {
		t.Fatalf("%d needed, %d whole, turns %v, %s", run.Needed, len(run.Placements), run.Turns, run.Drift.Way)
	}
	for n, p := range run.Placements {
		if p.Mirrored != (n%2 == 1) || p.Face != FaceA {
			t.Errorf("%+v", p)
		}
	}
	marked := design
	marked.Way = MarkedLine
	single, _ := marked.Drift(geom.Metre, 11)
	// Twice one error against the difference of two: √2 as wide.
	within(t, "joints", run.Drift.WorstJoint.MM()/single.WorstJoint.MM(), 1.41421, 1e-4)
	bolt.Sides = BothSides
	if _, err := Lay(bolt, coatBoard, design, geom.Metre); err == nil {
		t.Error("a folded cloth was printed on both sides")
	}
}
