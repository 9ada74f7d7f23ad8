package pattern_test

import (
	"maps"
	"math"
	"runtime"
	"slices"
	"strings"
	"testing"

	"tsugime/repeat/geom"
	"tsugime/repeat/pattern"
)

// Every value of every ground at its least and its most, the others as offered,
// alone and in a width: either a unit that repeats and holds nothing twice, or a
// refusal that says what to do.
func TestEveryValueAtItsBoundsIsDrawnOrRefused(t *testing.T) {
	drawn, refused := 0, 0
	for _, g := range pattern.Grounds() {
		for _, p := range g.Params {
			for _, v := range []float64{p.Least, p.Most} {
				for _, width := range []geom.Length{0, geom.MM(91)} {
					r := pattern.Recipe{Ground: g.Name, Values: map[string]float64{p.Key: v}, Width: width}
					u, err := r.Unit(geom.MM(90))
					if err != nil {
						refused++
						if !strings.HasPrefix(err.Error(), "ground "+g.Name+": ") || !strings.Contains(err.Error(), "; ") {
							t.Errorf("%s %s=%g: %q names no ground or no remedy", g.Name, p.Key, v, err)
						}
						continue
					}
					drawn++
					soundUnit(t, r, u, geom.MM(90))
				}
			}
		}
	}
	if drawn < 150 || refused < 50 {
		t.Errorf("%d were drawn and %d refused", drawn, refused)
	}
}

// The rules that a starter doesn't show, each on its own.
func TestOtherRulesAreDrawn(t *testing.T) {
	for _, c := range []struct {
		ground string
		values map[string]float64
		count  int     // cut-outs of a tile
		open   float64 // per cent, where no two lie over one another
	}{
		{"even-stripes", map[string]float64{"every": 0}, 2, 50 * 90.1 / 90}, // whole stripes lap by 0.1 mm
		{"even-stripes", map[string]float64{"every": 45, "cut": 1, "slit": 25}, 2, 75 * (1 - 0.8/45)},
		{"companion-stripes", map[string]float64{"every": 45, "sides": 1}, 6, 100 * 5.6 / 15.6 * (1 - 0.8/45)},
		{"companion-stripes", map[string]float64{"every": 45, "cut": 1}, 2, 100 * 9 / 13.8 * (1 - 0.8/45)},
		{"cascade-stripes", map[string]float64{"every": 45, "lines": 3}, 6, 100 * 6.9 / 14.3 * (1 - 0.8/45)},
		{"cascade-stripes", map[string]float64{"every": 45, "lines": 3, "sides": 1}, 10, 100 * 9.8 / 19.6 * (1 - 0.8/45)},
		{"paired-stripes", map[string]float64{"every": 45, "cut": 1}, 2, 100 * 6.8 / 8.4 * (1 - 0.8/45)},
		{"linked-circles", map[string]float64{"radius": 7.5, "figure": 1}, 8, 0},
		{"hemp-leaf", map[string]float64{"side": 30 / math.Sqrt(3), "web": 0}, 18, 0},
		{"wave-scales", map[string]float64{"scale": 30, "web": 0}, 8, 0},
		{"row-dots", map[string]float64{"pitch": 3, "dot": 1.2, "swell": 2}, 900, 0},
		{"wavering-stripes", map[string]float64{"bridged": 0}, 2, 0},
	} {
		r := pattern.Recipe{Ground: c.ground, Values: c.values}
		u := grown(t, r, geom.MM(90), 0)
		if len(u.Motifs) != c.count {
			t.Errorf("%s %v: %d cut-outs, want %d", c.ground, c.values, len(u.Motifs), c.count)
		}
		if c.open > 0 {
			if got := openPct(u); math.Abs(got-c.open) > 0.01 {
				t.Errorf("%s %v: %.4f %% open, want %.4f %%", c.ground, c.values, got, c.open)
			}
		}
		soundUnit(t, r, u, geom.MM(90))
	}
}

// soundUnit checks that step and width are lattice vectors, that no cut-out is
// there twice, and that a step further to the nanometre the same ones are.
func soundUnit(t *testing.T, r pattern.Recipe, u pattern.Unit, step geom.Length) {
	t.Helper()
	if !u.Lattice.Holds(geom.Point{Y: step}) || !u.Lattice.Holds(geom.Point{X: r.Width}) {
		t.Errorf("%s %v: %v holds no step of %s or width of %s mm", r.Ground, r.Values, u.Lattice, step, r.Width)
	}
	type cut struct {
		at   geom.Point
		size geom.Point
	}
	seen := make(map[cut]bool, len(u.Motifs))
	for _, m := range u.Motifs {
		box := m.Placed().Bounds()
		c := cut{u.Lattice.Into(box.Min), geom.Point{X: box.Width(), Y: box.Height()}}
		if seen[c] {
			t.Errorf("%s %v: two cut-outs at %v", r.Ground, r.Values, m.At)
			return
		}
		if seen[c] = true; box.Empty() {
			t.Errorf("%s %v: nothing is cut at %v", r.Ground, r.Values, m.At)
			return
		}
	}
	side := math.Min(30, 10/math.Sqrt(u.PerCM2()/100))
	window := geom.Box{Min: geom.PtMM(-side/3, -side/5), Max: geom.PtMM(side, side)}
	here := places(u, window, geom.Point{})
	for _, by := range []geom.Point{{Y: step}, {X: r.Width, Y: -step}, u.Lattice.A} {
		there := places(u, geom.Box{Min: window.Min.Add(by), Max: window.Max.Add(by)}, by)
		if !slices.Equal(here, there) {
			t.Errorf("%s %v: %v further it is another ground", r.Ground, r.Values, by)
		}
	}
}

// What can't be drawn is known before room is made for it: less than a megabyte
// is asked for, where a dot alone takes some ninety bytes.
func TestRefusalsComeBeforeAnythingIsAllocated(t *testing.T) {
	for _, c := range []struct {
		ground string
		values map[string]float64
		says   string
	}{
		{"row-dots", map[string]float64{"pitch": 0}, "pitch: 0 mm is out of bounds; give 0.05 mm to 50 mm"},
		{"row-dots", map[string]float64{"pitch": 1, "dot": 1.2}, "dots of 1.2 mm meet at a pitch of"},
		{"diagonal-dots", map[string]float64{"pitch": 10, "dot": 11}, "dots of 11 mm meet"},
		{"arc-dots", map[string]float64{"dot": 1.07}, "meet at a pitch"},
		{"scattered-dots", map[string]float64{"dot": 2.4}, "leave no paper at a pitch of 2.400 mm"},
		{"scattered-dots", map[string]float64{"pitch": 0.05, "dot": 0.01, "patch": 500}, "about 1"},
		{"row-dots", map[string]float64{"pitch": 0.05, "dot": 0.01, "swell": 2}, "cut-outs, and 200000 are the most"},
		{"arc-dots", map[string]float64{"pitch": 0.05, "dot": 0.01, "scale": 400}, "cut-outs, and 200000 are the most"},
		{"scattered-two-sizes", map[string]float64{"patch": 2}, "make the patch larger or the pitch finer"},
	} {
		r := pattern.Recipe{Ground: c.ground, Values: c.values, Width: geom.MM(1500)}
		var before, after runtime.MemStats
		runtime.ReadMemStats(&before)
		_, err := r.Unit(geom.MM(1500))
		runtime.ReadMemStats(&after)
		if err == nil || !strings.Contains(err.Error(), c.says) {
			t.Errorf("%s %v: %v, want …%s…", c.ground, c.values, err, c.says)
		}
		if asked := after.TotalAlloc - before.TotalAlloc; asked > 1<<20 {
			t.Errorf("%s %v: %d bytes were asked for before the refusal", c.ground, slices.Sorted(maps.Keys(c.values)), asked)
		}
	}
}
