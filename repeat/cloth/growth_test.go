package cloth

import (
	"math"
	"testing"

	"tsugime/repeat/geom"
)

// summed is the growth of the first n placements of so many added up, by the sum
// of an arithmetic series, or of a geometric one.
func summed(g Growth, n, of int) float64 {
	k := float64(n)
	switch {
	case g.Half > 0 && g.Start != g.End:
		q := math.Exp2(-1 / float64(g.Half))
		return k*g.End + (g.Start-g.End)*(1-math.Pow(q, k))/(1-q)
	case of > 1:
		return k*g.Start + (g.End-g.Start)*k*(k-1)/2/float64(of-1)
	}
	return k * g.Start
}

// Chains of stars walk along by the sum of all growths, in closed form.
func TestAChainWalksByTheSumOfItsGrowths(t *testing.T) {
	for _, g := range []Growth{{}, {Start: .002, End: .002}, {Start: .003, End: -.001}, {Start: .003, End: .001, Half: 7}, {Start: 0, End: .01, Half: 1}} {
		for _, of := range []int{1, 2, 70} {
			reg := design
			reg.Growth, reg.PitchError = g, 15*geom.Micrometre
			d, err := reg.Drift(sixSun, of)
			if err != nil {
				t.Fatal(err)
			}
			within(t, "walk along", d.ShareY.MM(), sixSun.MM()*summed(g, of, of)+.015*float64(of), 1e-6)
		}
	}
}

func TestASheetDriesByHalvesOrInALine(t *testing.T) {
	line, halves := Growth{Start: .004, End: .002}, Growth{Start: .004, End: .002, Half: 10}
	for _, c := range []struct {
		g    Growth
		n    int
		want float64
	}{{line, 0, .004}, {line, 69, .002}, {line, 23, .004 - .002/3}, {halves, 0, .004}, {halves, 10, .003}, {halves, 20, .0025}} {
		within(t, "growth", c.g.At(c.n, 70), c.want, 1e-15)
	}
}

// A sheet that loses two parts in a thousand over 70 placements of 6 kane sun,
// cut for its start: 70·181.818182·0.001 = 12.727 mm short at the end of a chain,
// worked by hand; on a marked line the last joint gaps by what the sheet lacks,
// 181.818182·0.002·68/69 = 0.3584 mm.
func TestADryingSheetWalksByItsSum(t *testing.T) {
	reg := design
	reg.StarError, reg.Growth = 0, Growth{End: -.002}
	d, err := reg.Drift(sixSun, 70)
	if err != nil {
		t.Fatal(err)
	}
	within(t, "walk along", d.EndY.MM(), -12.7273, 5e-5)
	if d.WorstJoint != 0 {
		t.Errorf("joints of %s mm where stars follow stars", d.WorstJoint)
	}
	reg.Way = MarkedLine
	if d, err = reg.Drift(sixSun, 70); err != nil {
		t.Fatal(err)
	}
	within(t, "last joint", d.WorstJoint.MM(), .3584, 5e-5)
	if d.EndY != 0 {
		t.Errorf("a marked line walks %s mm", d.EndY)
	}
}

func TestGrowthOutOfBoundsIsRefused(t *testing.T) {
	for _, g := range []Growth{{Start: .2}, {End: math.NaN()}, {Start: math.Inf(-1)}, {Half: -1}, {Half: maxPlacements + 1}} {
		reg := design
		reg.Growth = g
		if _, err := reg.Drift(sixSun, 3); err == nil {
			t.Errorf("%v was taken", g)
		}
	}
}

// ISO 5077: marks 350.0 mm apart that are 339.5 mm apart afterwards have changed
// by −3.00 %; to finish at 350 mm the step on the board is 350/0.97 = 360.825 mm,
// not 350·1.03 = 360.5 (worked by hand from the standard's formula).
func TestAStepOnTheBoardAllowsForTheChange(t *testing.T) {
	bolt := Bolt{Width: 375 * geom.Millimetre, Length: 12 * geom.Metre, ChangeAlong: (339.5 - 350.0) / 350.0}
	within(t, "change", 100*bolt.ChangeAlong, -3, 1e-9)
	step := geom.MM(350).Times(1 / (1 + bolt.ChangeAlong))
	within(t, "step on the board", step.MM(), 360.825, 5e-4)
	within(t, "finished again", bolt.Finished(geom.Point{Y: step}).Y.MM(), 350, 1e-5)
	within(t, "difference over 31 repeats", 31*(step.MM()-360.5), 10.1, .05)
}
