package pattern_test

import (
	"math"
	"strings"
	"testing"

	"tsugime/repeat/geom"
	"tsugime/repeat/pattern"
)

const seam = geom.Length(356_060_606) // a bolt of 375 mm less two allowances of 2.5 kujira bu

// What a laying says is what is drawn: its lattice, its tiles in step and width,
// and about as many cut-outs.
func TestALayingSaysWhatIsDrawn(t *testing.T) {
	for _, g := range pattern.Grounds() {
		for _, width := range []geom.Length{0, geom.MM(90)} {
			r := g.Recipe()
			r.Width = width
			l, err := r.Laying(geom.MM(45))
			if err != nil {
				continue // TestAGroundThatWouldBeAnotherIsRefused
			}
			u, err := r.Unit(geom.MM(45))
			if err != nil {
				t.Fatal(err)
			}
			if u.Lattice != l.Lattice {
				t.Errorf("%s: drawn on %v, said to be on %v", g.Name, u.Lattice, l.Lattice)
			}
			if n := float64(len(u.Motifs)); math.Abs(n/l.CutOuts-1) > 0.35 {
				t.Errorf("%s: %v cut-outs, said to be about %v", g.Name, n, l.CutOuts)
			}
		}
	}
}

// Tiles of 10 × 10 mm, worked out by hand.
func TestStretchAndBendAreThoseOfTheTile(t *testing.T) {
	r := pattern.Recipe{Ground: "checker", Values: map[string]float64{"side": 5}}
	for _, c := range []struct {
		step, width   float64
		columns, rows int
		x, y, bent    float64 // per cent
	}{
		{100, 0, 1, 10, 0, 0, 0},
		{102, 0, 1, 10, 2, 2, 0},
		{100, 200, 20, 10, 0, 0, 0},
		{100, 204, 20, 10, 2, 0, 2},
		{102, 204, 20, 10, 2, 2, 0},
		{102, 200, 20, 10, 0, 2, 100 * (1/1.02 - 1)},
	} {
		r.Width = geom.MM(c.width)
		l, err := r.Laying(geom.MM(c.step))
		if err != nil {
			t.Fatal(err)
		}
		off := math.Abs(100*l.Stretch.X-c.x) + math.Abs(100*l.Stretch.Y-c.y) + math.Abs(100*l.Bent-c.bent)
		if l.Columns != c.columns || l.Rows != c.rows || off > 1e-6 {
			t.Errorf("step %g, width %g: %+v, want %+v", c.step, c.width, l, c)
		}
	}
	// Stripes have no proportion to keep, and strewn dots no tile.
	for _, name := range []string{"even-stripes", "steam-stripes", "scattered-dots"} {
		r := pattern.Recipe{Ground: name, Width: geom.MM(357)}
		if l, err := r.Laying(step6); err != nil || l.Bent != 0 {
			t.Errorf("%s: bent by %g, %v", name, l.Bent, err)
		}
	}
}

func TestAGroundThatWouldBeAnotherIsRefused(t *testing.T) {
	for _, c := range []struct {
		ground      string
		values      map[string]float64
		step, width float64
		says        string
	}{
		{"hemp-leaf", map[string]float64{"side": 200}, 181.8, 0, "drawn at 52 % of its length; give a side near 104."},
		{"wave-scales", map[string]float64{"scale": 260}, 181.8, 0, "a scale near 363.600 mm or 181.800 mm"},
		{"checker", nil, 160, 40, "stretched by -16.7 % across; give a width near 32.000 or 48.000 mm"},
		{"checker", nil, 160, 8, "stretched by -50.0 % across; give a width near 16.000 mm"},
		{"steam-stripes", map[string]float64{"wave": 400}, 181.8, 0, "drawn at 45 % of its length; give a shorter tile"},
		{"even-stripes", nil, 181.8, 10, "stretched by -37.5 % across"},
		{"checker", nil, 160, 1501, "the width of 1501 mm can't be filled"},
		{"checker", nil, 0, 0, "the step of 0 mm can't be filled"},
	} {
		r := pattern.Recipe{Ground: c.ground, Values: c.values, Width: geom.MM(c.width)}
		l, err := r.Laying(geom.MM(c.step))
		if err == nil || !strings.Contains(err.Error(), c.says) {
			t.Errorf("%s %v on %g × %g mm: %+v, %v; want …%s…", c.ground, c.values, c.width, c.step, l, err, c.says)
		}
		if u, drawn := r.Unit(geom.MM(c.step)); drawn == nil {
			t.Errorf("%s %v on %g × %g mm: drawn with %d motifs", c.ground, c.values, c.width, c.step, len(u.Motifs))
		}
	}
	for _, r := range []pattern.Recipe{{Ground: "checker", Rows: -1}, {Ground: "checker", Columns: pattern.MaxTiles + 1}} {
		if err := r.Check(); err == nil {
			t.Errorf("%d × %d tiles are taken", r.Columns, r.Rows)
		}
	}
}

// The size nearest to the one asked for that meets both: no size between the two
// does, of those that fill the step a whole number of times.
func TestAnEasedGroundMeetsStepAndWidthUnbent(t *testing.T) {
	r := pattern.Recipe{Ground: "hemp-leaf", Width: seam}
	eased, ok := r.Eased(step6)
	l, err := eased.Laying(step6)
	if !ok || err != nil || math.Abs(l.Bent) > pattern.MostBent/2 {
		t.Fatalf("%+v: %+v, %t, %v", eased, l, ok, err)
	}
	// 181.818 mm are 5 rows of 21·√3 mm and 356.06 mm are 17 sides of 20.94 mm;
	// 6 and 7 rows are off by more than a quarter of a percent.
	if l.Rows != 5 || l.Columns != 17 || math.Abs(eased.Value("side")-181.818182/5/math.Sqrt(3)) > 1e-5 {
		t.Errorf("%d × %d tiles with a side of %g mm", l.Columns, l.Rows, eased.Value("side"))
	}
	if same, ok := (pattern.Recipe{Ground: "hemp-leaf"}).Eased(step6); !ok || same.Values != nil {
		t.Errorf("a ground that isn't bent becomes %+v", same)
	}
	if got, ok := (pattern.Recipe{Ground: "checker", Width: seam}).Eased(step6); ok {
		t.Errorf("squares meet 181.818 by 356.061 mm with %+v", got)
	}
}

// Every fit either leads to a recipe that lays the fitted lattice again, or says
// that there is none: then it leans or bends.
func TestTheRecipeFollowsAFit(t *testing.T) {
	followed := 0
	for _, g := range pattern.Grounds() {
		for _, width := range []geom.Length{0, seam} {
			r := g.Recipe()
			u := grown(t, r, step6, 0)
			fits, err := u.Fits(step6+geom.MM(1.3), width)
			if err != nil {
				t.Fatal(err)
			}
			for _, f := range fits {
				next, ok := r.Fitted(f, u.Lattice, step6, seam)
				if !ok {
					continue
				}
				followed++
				again := grown(t, next, f.Step, next.Width)
				fitted := u.Fitted(f)
				if !again.Lattice.Holds(f.Lattice.A) || !again.Lattice.Holds(f.Lattice.B) {
					t.Errorf("%s: %+v lays %v, the fit %v", g.Name, next, again.Lattice, f.Lattice)
				}
				if g.Name == "row-dots" && math.Abs(again.PerCM2()/fitted.PerCM2()-1) > 1e-9 {
					t.Errorf("%s: %g to the cm², the fit has %g", g.Name, again.PerCM2(), fitted.PerCM2())
				}
			}
			if len(fits) > 0 {
				if _, ok := r.Fitted(fits[0], u.Lattice, step6+geom.MM(1), seam); ok {
					t.Errorf("%s: a recipe follows from a step that its unit was not laid for", g.Name)
				}
			}
		}
	}
	if followed < 40 {
		t.Errorf("only %d fits were followed", followed)
	}
}

// A changed tile is free to find its number anew, a changed dot is not.
func TestSettledTilesStayUntilTheirSizeIsChanged(t *testing.T) {
	r := pattern.Recipe{Ground: "row-dots", Columns: 300, Rows: 160, Width: seam}
	dot, err := r.With("dot", "0.4")
	if err != nil || dot.Rows != 160 || dot.Columns != 300 {
		t.Errorf("another dot: %+v, %v", dot, err)
	}
	pitch, err := dot.With("pitch", "1.2")
	if err != nil || pitch.Rows != 0 || pitch.Columns != 0 || pitch.Width != seam {
		t.Errorf("another pitch: %+v, %v", pitch, err)
	}
}
