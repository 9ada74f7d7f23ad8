package stencil

import (
	"context"
	"testing"

	"tsugime/repeat/geom"
	"tsugime/repeat/pattern"
)

// Rows of half-drop rings lead a line up by one millimetre on two: 178 mm over the
// field. Down and up by turns it is as long and stays level.
func TestTheLineBetweenSlantedRowsStaysLevel(t *testing.T) {
	step := geom.MM(180)
	for name, l := range map[string]pattern.Lattice{
		"half-drop":        pattern.HalfDrop(geom.MM(10), geom.MM(10)),
		"slanted":          {A: geom.PtMM(10, 5), B: geom.PtMM(0, 10)},
		"slanted downward": {A: geom.PtMM(10, -5), B: geom.PtMM(0, 10)},
	} {
		u := unitOf(t, l, ringPath(5, 5, 4, 3.5))
		j, err := FindJoint(context.Background(), u, field, step, JointSpec{})
		if err != nil {
			t.Fatal(err)
		}
		if h := geom.BoxOf(j.Line...).Height(); h > step/4 {
			t.Errorf("%s: the line is %s mm high; want a quarter step of %s mm at most", name, h, step)
		}
		if !j.keeps(keptClearance) {
			t.Errorf("%s: clearance %s mm of %s; want the share kept", name, j.Clearance, j.Widest)
		}
		if j.Length > geom.MM(1.2*356) {
			t.Errorf("%s: the line is %s mm long", name, j.Length)
		}
		t.Logf("%s: %s mm long, %s mm high", name, j.Length, geom.BoxOf(j.Line...).Height())
	}
}

// A line that climbs with the rows would need paper higher than the step and the
// length of the field times one half: 180 + 178 mm.
func TestASheetOfSlantedRingsFitsItsPaper(t *testing.T) {
	spec := starSpec(3)
	u := unitOf(t, pattern.HalfDrop(geom.MM(10), geom.MM(10)), ringPath(5, 5, 4, 3.5))
	spec.Hold = Hold{Way: WithTies, Ties: mustPropose(t, u, 0.6, 2)}
	sheet, err := Cut(context.Background(), u, spec, geom.MM(375))
	if err != nil {
		t.Fatal(err)
	}
	var cut geom.Box
	for _, c := range sheet.CutOuts {
		cut = cut.Union(c.Shape.Bounds())
	}
	if !sheet.Paper.HoldsBox(cut) || cut.Height() > spec.Step+spec.Step/4 {
		t.Errorf("cut-outs %v on paper %v; want them to fit", cut, sheet.Paper)
	}
}
