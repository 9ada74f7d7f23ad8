package stencil

import (
	"context"
	"math/rand/v2"
	"slices"
	"testing"

	"tsugime/repeat/geom"
	"tsugime/repeat/pattern"
)

func byHand(t *testing.T, u pattern.Unit, f Field, step geom.Length, line ...geom.Point) Joint {
	t.Helper()
	j, err := FindJoint(context.Background(), u, f, step, JointSpec{Line: line})
	if err != nil {
		t.Fatal(err)
	}
	if !j.ByHand {
		t.Error("the line is not told as drawn by hand")
	}
	return j
}

func faultsOf(j Joint) []JointFaultKind {
	var kinds []JointFaultKind
	for _, f := range j.Faults {
		kinds = append(kinds, f.Kind)
	}
	return kinds
}

// Dots of 2 mm every 10 mm, the first about 5, 5: what is wrong with each line is
// plain to see.
func TestWhatIsWrongWithALineDrawnByHand(t *testing.T) {
	u := pattern.Unit{Lattice: pattern.Straight(geom.MM(10), geom.MM(10)), Motifs: []pattern.Motif{{ID: 7, Shape: geom.DiscShape(geom.Point{}, geom.MM(2)), At: geom.PtMM(5, 5)}}}
	f, step := Field{Width: geom.MM(40)}, geom.MM(50)
	p := geom.PtMM
	for name, c := range map[string]struct {
		line []geom.Point
		want []JointFaultKind
	}{
		"good":          {[]geom.Point{p(0, 0), p(40, 1)}, nil},
		"right to left": {[]geom.Point{p(40, 0), p(0, 0)}, nil},
		"short":         {[]geom.Point{p(1, 0), p(38, 0)}, []JointFaultKind{EndsShort, EndsShort}},
		"too long":      {[]geom.Point{p(-1, 0), p(42, 0)}, []JointFaultKind{LeavesTheField, LeavesTheField}},
		"crossing":      {[]geom.Point{p(0, 0), p(10, 0), p(10, 5), p(20, 5), p(20, 0), p(40, 0)}, []JointFaultKind{CrossesCutOuts}},
		"loop":          {[]geom.Point{p(0, 0), p(30, 0), p(30, -9), p(20, -9), p(20, 1), p(40, 1)}, []JointFaultKind{CrossesItself}},
		"meeting": {[]geom.Point{p(0, 0), p(10, 0), p(10, 30), p(30, 30), p(30, -30), p(20, -30), p(20, -10), p(40, -10)},
			[]JointFaultKind{MeetsItsCopy, CrossesItself}},
	} {
		j := byHand(t, u, f, step, c.line...)
		got := faultsOf(j)
		if name == "meeting" {
			if !slices.Contains(got, MeetsItsCopy) {
				t.Errorf("meeting: faults %v", got)
			}
			continue
		}
		if !slices.Equal(got, c.want) {
			t.Errorf("%s: faults %v, want %v", name, got, c.want)
		}
	}
}

// A line through the middle of a dot of 2 mm crosses 2 mm, 1 mm deep; one that
// passes 0.6 mm off the middle crosses 2·√(1 − 0.36) = 1.6 mm, 0.4 mm deep.
func TestHowMuchOfACutOutALineCrosses(t *testing.T) {
	u := pattern.Unit{Lattice: pattern.Straight(geom.MM(10), geom.MM(10)), Motifs: []pattern.Motif{{ID: 7, Shape: geom.DiscShape(geom.Point{}, geom.MM(2)), At: geom.PtMM(5, 5)}}}
	f := Field{Width: geom.MM(40)}
	for y, want := range map[float64][2]float64{5: {2, -1}, 5.6: {1.6, -0.4}} {
		j := byHand(t, u, f, geom.MM(50), geom.PtMM(0, y), geom.PtMM(40, y))
		if len(j.Crossings) != 4 || j.Crossed != geom.MM(4*want[0]) || j.Clearance != geom.MM(want[1]) {
			t.Errorf("at %g: %d crossings, %s mm crossed, clearance %s", y, len(j.Crossings), j.Crossed, j.Clearance)
			continue
		}
		if c := j.Crossings[0]; c.Motif != 7 || c.From != geom.PtMM(5-want[0]/2, y) || c.To != geom.PtMM(5+want[0]/2, y) {
			t.Errorf("at %g: the first crossing is %+v", y, c)
		}
		if j.Lap <= 0 {
			t.Errorf("at %g: no lap", y)
		}
	}
}

// Two pieces of one motif on both sides of a line that crosses neither.
func TestALineByHandBetweenThePiecesOfAMotifPartsIt(t *testing.T) {
	two := outline(t, "M-2 -4H2V-2H-2ZM-2 2H2V4H-2Z")
	u := pattern.Unit{Lattice: pattern.Straight(geom.MM(10), geom.MM(20)), Motifs: []pattern.Motif{{ID: 3, Shape: two, At: geom.PtMM(5, 10)}}}
	j := byHand(t, u, Field{Width: geom.MM(20)}, geom.MM(60), geom.PtMM(0, 10), geom.PtMM(20, 10))
	if got := faultsOf(j); !slices.Equal(got, []JointFaultKind{PartsAMotif, PartsAMotif}) {
		t.Errorf("faults %v", got)
	}
	if j.Clearance != geom.MM(2) || j.Crossed != 0 {
		t.Errorf("clearance %s, crossed %s", j.Clearance, j.Crossed)
	}
}

// Whatever line is drawn, of a motif and its copies by the step exactly one is
// among the sheet's cut-outs: even of lines that meet themselves and their copies.
func TestPlacementsCoverThePatternOnceWithAnyLineByHand(t *testing.T) {
	rnd := rand.New(rand.NewPCG(8, 9))
	u, f, step := scattered(3, 60, 40, 2, 1), Field{Left: geom.MM(5), Width: geom.MM(57)}, geom.MM(40)
	for scene := range 20 {
		line := []geom.Point{geom.PtMM(5, rnd.Float64()*20)}
		for range 12 {
			line = append(line, geom.PtMM(5+rnd.Float64()*57, rnd.Float64()*160-80))
		}
		line = append(line, geom.PtMM(62, rnd.Float64()*20))
		seen := map[geom.Point]int{}
		for _, c := range Between(u, f, byHand(t, u, f, step, line...), step) {
			for k := -8; k <= 8; k++ {
				seen[c.Shape.Disc.Centre.Add(geom.Point{Y: step}.Times(k))]++
			}
		}
		n := 0
		for c := range u.In(geom.BoxOf(geom.PtMM(5, -40), geom.PtMM(62, 40))) {
			if f.whole(c.Shape.Bounds()) {
				n++
				if seen[c.Shape.Disc.Centre] != 1 {
					t.Errorf("scene %d: the dot at %v is cut %d times", scene, c.Shape.Disc.Centre, seen[c.Shape.Disc.Centre])
				}
			}
		}
		if n == 0 {
			t.Fatal("no dots")
		}
	}
}
