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

// Between drifting leaves the widest ways climb along the rows of the lattice; the
// line stays level where a narrower web lets it.
func TestTheLineStaysLevelThroughNarrowerWebs(t *testing.T) {
	leaf := outlineOf(t, "M0.35 -4.4C2.6 -2 2.4 1.6 0.35 3.6ZM-0.35 -4.4L-0.35 3.6C-2.4 1.6 -2.6 -2 -0.35 -4.4Z")
	u := pattern.Unit{
		Lattice: pattern.Lattice{A: geom.PtMM(11.126894, 9.090909), B: geom.PtMM(0, 18.181818)},
		Motifs: []pattern.Motif{
			{ID: 1, Shape: leaf, At: geom.PtMM(189.662966, 0), TurnDeg: 30},
			{ID: 2, Shape: geom.DiscShape(geom.Point{}, geom.MM(1.2)), At: geom.PtMM(194.316031, 3.2)},
			{ID: 3, Shape: geom.DiscShape(geom.Point{}, geom.MM(0.8)), At: geom.PtMM(195.125259, -3.4)},
		},
	}
	field, step := Field{geom.MM(9.5), geom.MM(356)}, geom.Length(181_818_180)
	j, err := FindJoint(context.Background(), u, field, step, JointSpec{})
	if err != nil {
		t.Fatal(err)
	}
	if h := geom.BoxOf(j.Line...).Height(); h > step/2 || j.Clearance < geom.MM(0.5) {
		t.Errorf("the line is %s mm high and %s mm clear of %s mm", h, j.Clearance, j.Widest)
	}
	keepsClear(t, "leaves", u, field, step, j)
}
