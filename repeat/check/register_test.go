package check_test

import (
	"strings"
	"testing"

	"tsugime/repeat/check"
	"tsugime/repeat/cloth"
	"tsugime/repeat/geom"
)

// A bolt laid star to star walks off the cloth; the remedies name what helps
// most and by how much, and each holds what it says.
func TestDriftNamesTheBestRemedyAndItsGain(t *testing.T) {
	m := sound()
	reg := cloth.Register{
		Way: cloth.StarToStar, StarError: geom.MM(0.1), Baseline: geom.MM(250), Longest: geom.MM(370),
		Width: geom.MM(356), Tolerance: geom.MM(0.1),
	}
	var err error
	m.Run, err = cloth.Lay(cloth.Bolt{Width: geom.MM(375), Length: geom.MM(12_600)}, m.Run.Board, reg, geom.MM(180))
	if err != nil {
		t.Fatal(err)
	}
	said := map[string]string{}
	for _, f := range check.All(m, limits()) {
		said[f.Code] = f.Remedy
	}
	gains := cloth.Gains(m.Run)
	for code, by := range map[string]func(cloth.Gain) geom.Length{"drift-joint": cloth.Gain.Joint, "drift-walk": cloth.Gain.End} {
		best, ok := cloth.Best(gains, by)
		if !ok || best.Remedy == cloth.CarefulStars {
			t.Fatalf("%s: best is %+v, %v", code, best, ok)
		}
		if !strings.Contains(said[code], best.Text()) || !strings.Contains(said[code], geom.MMUnit.Format(by(best), 3)+" less") {
			t.Errorf("%s: %q doesn't name %q and %s mm", code, said[code], best.Text(), by(best))
		}
		for _, g := range gains {
			if g.Remedy != cloth.CarefulStars && by(g) > by(best) {
				t.Errorf("%s: %s gains more than %s", code, g.Remedy, best.Remedy)
			}
		}
	}
}
