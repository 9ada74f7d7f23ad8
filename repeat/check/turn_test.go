package check_test

import (
	"strings"
	"testing"

	"tsugime/repeat/check"
	"tsugime/repeat/cloth"
	"tsugime/repeat/geom"
)

// One panel of 300 mm lies over a turn from 200 to 240 mm: it goes behind the turn
// where the cloth is a tenth longer than 540 mm; on 360 mm, 180.1 are lacking.
func TestTheTurnIsToldHowToClearOrWhatClothIsLacking(t *testing.T) {
	for _, c := range []struct {
		length float64
		says   string
	}{
		{600, "Start at 240.1 mm: then no panel lies there, for 240.1 mm more cloth"},
		{360, "on a bolt that gives 180.1 mm more finished cloth it could be laid beside every panel"},
	} {
		m := sound()
		m.Run.Placements = []cloth.Placement{{Face: cloth.FaceA}, {N: 1, Y: geom.MM(180), Face: cloth.Turn}}
		m.Run.Turns, m.Run.Stretches = []cloth.Span{{From: geom.MM(200), To: geom.MM(240)}}, make([]cloth.Stretch, 1)
		m.Dressed = cloth.Dressed{Used: geom.MM(300), Length: geom.MM(c.length), Panels: []cloth.Panel{{Name: "left body", Length: geom.MM(300)}}}
		told := ""
		for _, f := range check.All(m, limits()) {
			if f.Code == "bolt-turn" {
				told += f.Remedy
			}
		}
		if !strings.Contains(told, "left body") || !strings.Contains(told, c.says) {
			t.Errorf("on %g mm: %q, want %q", c.length, told, c.says)
		}
	}
}
