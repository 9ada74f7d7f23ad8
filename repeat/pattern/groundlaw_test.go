package pattern_test

import (
	"math"
	"slices"
	"testing"

	"tsugime/repeat/geom"
	"tsugime/repeat/pattern"
)

// openPct returns the share of the cell that the cut-outs take, in per cent; none
// of them may overlap.
func openPct(u pattern.Unit) float64 {
	var sum float64
	for _, c := range u.CutOuts() {
		if c.Shape.Round() {
			sum += c.Shape.Disc.AreaMM2()
		} else {
			sum += math.Abs(c.Shape.Outline.AreaMM2())
		}
	}
	return 100 * sum / u.Lattice.CellMM2()
}

// Steps that the default tile fills exactly, so that no figure is stretched. The
// closed forms are worked out from the figure: they know nothing of its drawing.
func TestOpenAreasAreThoseOfTheClosedForms(t *testing.T) {
	// Two circles of radius r whose middles are d apart share
	// 2r²·acos(d/2r) − d/2·√(4r²−d²) (elementary geometry).
	lens := func(r, d float64) float64 {
		return 2*r*r*math.Acos(d/2/r) - d/2*math.Sqrt(4*r*r-d*d)
	}
	root3 := math.Sqrt(3)
	for _, c := range []struct {
		ground string
		values map[string]float64
		along  float64 // of a tile, mm
		want   float64 // per cent
	}{
		{"row-dots", map[string]float64{"pitch": 1, "dot": 0.5}, 1, 100 * math.Pi / 16},
		{"row-squares", map[string]float64{"pitch": 2, "dot": 1}, 2, 25},
		{"diagonal-dots", map[string]float64{"pitch": 1, "dot": 0.5}, math.Sqrt2, 100 * math.Pi / 16},
		// The web cuts a right corner of legs web/√2 off each corner of a square.
		{"checker", map[string]float64{"side": 8, "web": 0}, 16, 50},
		{"checker", map[string]float64{"side": 8, "web": 0.8}, 16, 50 * (1 - 0.64/64)},
		// A triangle whose circumradius side/√3 lost web/√3.
		{"fish-scales", map[string]float64{"side": 10, "web": 0}, 10 * root3, 50},
		{"fish-scales", map[string]float64{"side": 10, "web": 0.8}, 10 * root3, 50 * 0.92 * 0.92},
		// Four petals of circles of radius 8, each half a web smaller, on 16 × 16.
		{"linked-circles", map[string]float64{"radius": 8, "web": 0}, 16, 100 * (math.Pi/2 - 1)},
		{"linked-circles", map[string]float64{"radius": 8, "web": 0.8}, 16, 100 * 4 * lens(7.6, 8*math.Sqrt2) / 256},
		// Three sides a hexagon, each a slit of 0.9 mm that ends (web/2 + line/2·cos
		// 60°)/sin 60° from its knots; a hexagon of side 8 is 96·√3 mm² large.
		{"tortoise-shell", map[string]float64{"side": 8, "inset": 0}, 24,
			100 * 3 * 0.9 * (8 - 2*(0.4+0.225)/(root3/2)) / (96 * root3)},
		{"even-stripes", map[string]float64{"pitch": 8, "every": 40, "bridge": 0.8}, 40, 50 * (1 - 0.8/40)},
		{"thread-stripes", map[string]float64{"every": 40, "bridge": 0.8}, 40, 25 * (1 - 0.8/40)},
		{"paired-stripes", map[string]float64{"every": 40, "bridge": 0.8}, 40, 100 * 1.6 / 8.4 * (1 - 0.8/40)},
	} {
		r := pattern.Recipe{Ground: c.ground, Values: c.values}
		if got := openPct(grown(t, r, geom.MM(10*c.along), 0)); math.Abs(got-c.want) > 0.001 {
			t.Errorf("%s %v: %.4f %% open, want %.4f %%", c.ground, c.values, got, c.want)
		}
	}
}

// The counts are those that writers give: 20, 23, 26 and 31 stripes to the kane
// sun of 1000/33 mm. The row is stretched to a whole number of pairs across.
func TestStripesOfAGradeAreAsManyAsTheyAreCalled(t *testing.T) {
	g, _ := pattern.GroundNamed("finest-stripes")
	for _, grade := range pattern.Grades() {
		pitch, ok := grade.For(g)
		if !ok {
			continue
		}
		r := g.Recipe()
		r.Values = map[string]float64{"pitch": pitch}
		u := grown(t, r, step6, 0)
		across := map[geom.Length]bool{}
		for _, m := range u.Motifs {
			across[m.At.X] = true
		}
		perSun := float64(len(across)) / u.Lattice.A.X.MM() * 1000 / 33
		if math.Abs(perSun-float64(grade.Count)) > 0.01 {
			t.Errorf("%s: %.3f stripes on a kane sun", grade, perSun)
		}
	}
}

// Copies by the step cover what was there: a window a step further along, or a
// cell further across, holds the same cut-outs, none of them twice.
func TestAGroundIsTheSameAStepFurther(t *testing.T) {
	window := geom.Box{Min: geom.PtMM(-3.3, -4.7), Max: geom.PtMM(24.1, 29.9)}
	for _, g := range pattern.Grounds() {
		u := grown(t, g.Recipe(), step6, 0)
		here := places(u, window, geom.Point{})
		for _, shift := range []geom.Point{{Y: step6}, {Y: -step6}, u.Lattice.A, u.Lattice.B} {
			moved := geom.Box{Min: window.Min.Add(shift), Max: window.Max.Add(shift)}
			if !slices.Equal(here, places(u, moved, shift)) {
				t.Errorf("%s: shifted by %v it is another ground", g.Name, shift)
			}
		}
		if len(here) == 0 || len(slices.Compact(slices.Clone(here))) != len(here) {
			t.Errorf("%s: %d cut-outs, some twice", g.Name, len(here))
		}
	}
}

// places returns the boxes of the cut-outs in the window, moved back by shift and
// in order.
func places(u pattern.Unit, window geom.Box, shift geom.Point) []geom.Box {
	var all []geom.Box
	for c := range u.In(window) {
		b := c.Shape.Bounds()
		all = append(all, geom.Box{Min: b.Min.Sub(shift), Max: b.Max.Sub(shift)})
	}
	slices.SortFunc(all, func(a, b geom.Box) int {
		for _, d := range []geom.Length{a.Min.Y - b.Min.Y, a.Min.X - b.Min.X, a.Max.Y - b.Max.Y, a.Max.X - b.Max.X} {
			if d != 0 {
				return int(max(-1, min(1, d)))
			}
		}
		return 0
	})
	return all
}

// A swell changes sizes and nothing else, and closes: the dot a step further has
// the size that it had.
func TestASwellKeepsCountAndPlaceAndClosesOverTheStep(t *testing.T) {
	for _, name := range []string{"row-dots", "diagonal-dots", "row-squares", "arc-dots"} {
		even := pattern.Recipe{Ground: name, Values: map[string]float64{"pitch": 2, "dot": 0.9}}
		along := pattern.Recipe{Ground: name, Values: map[string]float64{"pitch": 2, "dot": 0.9, "swell": 1, "sizes": 5}}
		a, b := grown(t, even, step6, 0), grown(t, along, step6, 0)
		if d := a.PerCM2() / b.PerCM2(); math.Abs(d-1) > 1e-9 {
			t.Errorf("%s: the swell changes the count by %g", name, d)
		}
		sizes := map[geom.Length]bool{}
		for _, m := range b.Motifs {
			w := m.Shape.Bounds().Max.X - m.Shape.Bounds().Min.X
			sizes[w] = true
		}
		if len(sizes) != 5 {
			t.Errorf("%s: %d sizes, want 5", name, len(sizes))
		}
	}
}
