package cloth

import (
	"math"
	"testing"

	"tsugime/repeat/geom"
	"tsugime/repeat/pattern"
)

var leadingMiddle = geom.PtMM(187, 4)

// flat is the coat's bolt with cloth that stays as it is, so that the board's
// millimetres are those of the finished cloth.
func flat() Bolt {
	b := coatBolt
	b.ChangeAcross, b.ChangeAlong = 0, 0
	return b
}

func TestPrintsLieWhereTheyBelongWithoutErrors(t *testing.T) {
	for _, folded := range []bool{false, true} {
		bolt := flat()
		bolt.Folded = folded
		run := mustLay(t, bolt, coatBoard, design, sixSun)
		prints, err := run.ScatteredPrints(0, 7)
		if err != nil || len(prints) != run.Needed {
			t.Fatalf("%d prints, %v; want %d", len(prints), err, run.Needed)
		}
		for n, p := range prints[1:] {
			before, after := prints[n].Joined(p, geom.PtMM(20, 1.5), leadingMiddle)
			if before != after {
				t.Errorf("folded %v: joint %d lies at %v of one, %v of the other", folded, n, before, after)
			}
		}
	}
}

// The widest gap or lap at both edges of the field, over all joints of a bolt, is
// what the simulation reports for the same seed: two ways to the same figure.
func TestTheWorstJointOfAScatteredBoltIsTheSimulated(t *testing.T) {
	for _, way := range []Way{StarToStar, EdgeLine, MarkedLine} {
		for _, seq := range Sequences() {
			reg := design
			reg.Way, reg.PitchError = way, geom.MM(0.05)
			reg.Growth = Growth{Start: 0.0004, End: -0.0002, Half: 9}
			board := coatBoard
			board.Sequence = seq
			run := mustLay(t, flat(), board, reg, sixSun)
			for seed := range uint64(4) {
				prints, err := run.ScatteredPrints(1, seed)
				if err != nil {
					t.Fatal(err)
				}
				want, err := Simulate(run.Register, run.Step, len(prints), 1, 0, seed)
				if err != nil {
					t.Fatal(err)
				}
				worst := 0.0
				for n, p := range prints[1:] {
					for _, x := range []geom.Length{-reg.Width / 2, reg.Width / 2} {
						before, after := prints[n].Joined(p, geom.Point{X: leadingMiddle.X + x, Y: leadingMiddle.Y}, leadingMiddle)
						worst = math.Max(worst, (after.Y - before.Y).Abs().MM())
					}
				}
				// The formula measures along the turned sheet, the prints along the
				// cloth: a walk of some millimetres times a turn of milliradians.
				within(t, string(way)+" "+string(seq), worst, want.WorstJoint.MM(), 0.02)
			}
		}
	}
}

func TestErrorsGrowWithTheirMeasure(t *testing.T) {
	run := mustLay(t, flat(), coatBoard, design, sixSun)
	one, _ := run.ScatteredPrints(1, 5)
	two, _ := run.ScatteredPrints(2, 5)
	for i := range one {
		within(t, "across", two[i].Off.By.X.MM(), 2*one[i].Off.By.X.MM(), 0.01+0.01*math.Abs(one[i].Off.By.X.MM()))
		within(t, "turn", two[i].Off.TurnDeg, 2*one[i].Off.TurnDeg, 1e-9)
	}
	other, _ := run.ScatteredPrints(1, 6)
	if other[9].Off == one[9].Off {
		t.Error("another seed laid the same bolt")
	}
}

// squareDots are dots on squares of a millimetre.
var squareDots = pattern.Lattice{A: geom.PtMM(1, 0), B: geom.PtMM(0, 1)}
