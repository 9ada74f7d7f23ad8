package stencil

import (
	"context"
	"math"
	"strings"
	"testing"

	"tsugime/repeat/geom"
	"tsugime/repeat/pattern"
)

func drawnUnit(l pattern.Lattice, shapes ...geom.Shape) pattern.Unit {
	u := pattern.Unit{Lattice: l}
	for i, s := range shapes {
		u.Motifs = append(u.Motifs, pattern.Motif{ID: pattern.ID(i + 1), Shape: s, At: geom.PtMM(float64(3*i), 1)})
	}
	return u
}

var plainSpec = Spec{Step: geom.MM(20), Field: Field{Left: geom.MM(5), Width: geom.MM(40)}, WebLimit: geom.MM(0.3), Stars: StarSpec{PerEnd: 2, Diameter: geom.MM(0.8)}}

// A bow crosses itself: the place is where the line that crosses begins, 4, 0 on the
// bow, after the bow is turned by a quarter.
func TestAFlawIsToldWhereTheMotifStands(t *testing.T) {
	bow := outline(t, "M0 0L4 4V0L0 4Z")
	u := drawnUnit(pattern.Straight(geom.MM(20), geom.MM(20)), disc(0, 0, 1), bow, outline(t, "M0 0H1V1H0Z"), outline(t, "M0 0H2"))
	u.Motifs[1].TurnDeg = 90
	s, err := Cut(context.Background(), u, plainSpec, geom.MM(60))
	if err != nil {
		t.Fatal(err)
	}
	begins := geom.PtMM(3, 1+4)
	if len(s.Flaws) != 2 || s.Flaws[0].Motif != 2 || s.Flaws[0].Kind != geom.Crossed || s.Flaws[0].At.Distance(begins) > geom.Chord ||
		s.Flaws[1].Motif != 4 || s.Flaws[1].Kind != geom.NoArea {
		t.Errorf("flaws %+v; want motif 2 crossed at %v, motif 4 without area", s.Flaws, begins)
	}
}

// What can't be measured is refused in words that name the motif and what to do.
func TestAMotifOutOfBoundsIsRefused(t *testing.T) {
	arc := func(bulge float64) geom.Shape {
		return geom.Shape{Outline: geom.Outline{{Segments: []geom.Segment{{Kind: geom.Arc, End: geom.PtMM(1, 0), Bulge: bulge}, {}}}}}
	}
	for name, s := range map[string]geom.Shape{
		"draw the arc anew":    arc(math.NaN()),
		"which is no circle":   arc(math.Inf(-1)),
		"bulge of 1e+09":       arc(1e9),
		"give it 0 to 1500":    disc(0, 0, 1501),
		"give it 0 to":         geom.DiscShape(geom.Point{}, -1),
		"reaches more than":    outline(t, "M0 0H1600V1Z"),
		"cells of the lattice": outline(t, "M0 0H1400V1400H0Z"),
	} {
		_, err := Cut(context.Background(), drawnUnit(pattern.Straight(geom.MM(20), geom.MM(20)), disc(0, 0, 1), s), plainSpec, geom.MM(60))
		if err == nil || !strings.Contains(err.Error(), "motif 2 at 3, 1 mm") || !strings.Contains(err.Error(), name) {
			t.Errorf("%q, want a refusal of motif 2 that says %q", err, name)
		}
	}
}

// A line that runs through the crossings of an outline with itself is no web, and
// what such outlines cover twice is counted once: a bow of two triangles of 4 mm²
// each, twice in one place, beside one whose edges lie on its own.
func TestSelfCrossingOutlinesAreMeasuredByWhatTheyCover(t *testing.T) {
	l := pattern.Straight(geom.MM(20), geom.MM(20))
	bow, folded := outline(t, "M0 0L4 4V0L0 4Z"), outline(t, "M10 0H14V4H12V0H14V2H10Z")
	cuts := cutOuts(bow, bow, folded)
	if got := mustOpen(t, cuts, l.A, l.B); math.Abs(got-100*(8+12)/400) > 1e-6 {
		t.Errorf("%.6f %% open, want 5", got)
	}
	if c := mustConnect(t, cuts, l.A, l.B); len(c.Islands)+len(c.Bands) > 0 {
		t.Errorf("parts %+v, want none", c)
	}
	w := Webs(cuts, geom.MM(7), l.A, l.B)
	// From the bows to the folded outline are 6 mm. Where a bow pinches its own paper
	// in the crossing is for Flaws to tell.
	if !w.Found || w.Narrowest.Width != 6*geom.Millimetre {
		t.Errorf("webs %v, want 6 mm", w.Widths())
	}
}
