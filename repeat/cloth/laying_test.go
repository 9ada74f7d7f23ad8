package cloth

import (
	"math/rand/v2"
	"testing"

	"tsugime/repeat/geom"
	"tsugime/repeat/pattern"
)

func TestALayingHasThePhasesOfTheGarment(t *testing.T) {
	run := mustLay(t, coatBolt, coatBoard, design, sixSun)
	for name, l := range lattices() {
		for _, match := range []bool{false, true} {
			d := mustDress(t, coatBolt, run, l, 158, match)
			lay := d.Laying()
			if len(lay.Seams) != len(d.Seams) || len(lay.Panels) != len(d.Panels) {
				t.Fatalf("%d seams and %d panels laid of %d and %d", len(lay.Seams), len(lay.Panels), len(d.Seams), len(d.Panels))
			}
			for i, s := range lay.Seams {
				if got, want := lay.Phase(s, l), (geom.Point{X: d.Seams[i].PhaseAcross, Y: d.Seams[i].PhaseAlong}); got != want {
					t.Errorf("%s: %s is off by %v as laid, by %v as dressed", name, s.Name, got, want)
				}
			}
		}
	}
}

// Panels put down again in their order and with their gaps lie where they lay.
func TestLayingAgainChangesNothing(t *testing.T) {
	run := mustLay(t, coatBolt, coatBoard, design, sixSun)
	d := mustDress(t, coatBolt, run, lattices()["half-drop"], 158, true)
	lay := d.Laying()
	gaps := make([]geom.Length, len(lay.Panels))
	gaps[rightBody] = d.Extra
	again := lay.Laid(inOrder(len(lay.Panels)), gaps)
	for i, p := range again.Panels {
		if p != lay.Panels[i] {
			t.Errorf("%s lies at %+v, before at %+v", p.Name, p, lay.Panels[i])
		}
	}
	if again.Used() != d.Used {
		t.Errorf("used %s, dressed %s", again.Used(), d.Used)
	}
}

// In any order and with any gaps, panels keep off each other and each begins
// where one in its way ends, its gap further on.
func TestPanelsAreLaidCloseInAnyOrder(t *testing.T) {
	draw := rand.New(rand.NewPCG(7, 1))
	run := mustLay(t, coatBolt, coatBoard, design, sixSun)
	lay := mustDress(t, coatBolt, run, lattices()["straight"], 158, false).Laying()
	for range 200 {
		order := draw.Perm(len(lay.Panels))
		gaps := make([]geom.Length, len(order))
		for i := range gaps {
			gaps[i] = geom.Length(draw.IntN(3)) * 40 * geom.Millimetre
		}
		next := lay.Laid(order, gaps)
		for i, p := range next.Panels {
			touches := p.Y == gaps[i]
			for j, q := range next.Panels {
				shares := q.X < p.X+p.Width && p.X < q.X+q.Width
				if i == j || !shares {
					continue
				}
				if q.Y < p.Y+p.Length && p.Y < q.Y+q.Length {
					t.Fatalf("%v: %s lies on %s", order, p.Name, q.Name)
				}
				touches = touches || q.Y+q.Length+gaps[i] == p.Y
			}
			if !touches {
				t.Fatalf("%v: %s lies at %s, free of all", order, p.Name, p.Y)
			}
		}
	}
}

// Shifted as far as allowed, what is seen of a panel still keeps the least
// allowance at both edges.
func TestShiftsLeaveTheLeastAllowance(t *testing.T) {
	run := mustLay(t, coatBolt, coatBoard, design, sixSun)
	d := mustDress(t, coatBolt, run, pattern.Straight(sixSun, sixSun), 158, false)
	lay := d.Laying()
	for i, p := range lay.Panels {
		if p.ShiftLeast > 0 || p.ShiftMost < 0 {
			t.Errorf("%s may be shifted from %s to %s", p.Name, p.ShiftLeast, p.ShiftMost)
		}
		for _, shift := range []geom.Length{p.ShiftLeast, p.ShiftMost} {
			if p.Turned {
				shift = -shift
			}
			least := p.Width
			for _, piece := range d.Pieces() {
				if w := piece.Window(); piece.Panel == p.Name {
					least = min(least, w.Min.X+shift-p.X, p.X+p.Width-w.Max.X-shift)
				}
			}
			if least != bu(2.5) {
				t.Errorf("%s shifted by %s leaves %s", d.Panels[i].Name, shift, least)
			}
		}
	}
}
