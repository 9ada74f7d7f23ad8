package cloth

import (
	"fmt"
	"testing"

	"tsugime/repeat/geom"
	"tsugime/repeat/pattern"
)

func TestPrintsOnPrintsAgreeWithLayingThem(t *testing.T) {
	for _, across := range []geom.Length{0, 60 * geom.Micrometre} {
		for _, base := range []geom.Length{340 * geom.Millimetre, 200 * geom.Millimetre} {
			reg := design
			reg.StarErrorAcross, reg.Misfit = across, 300*geom.Micrometre
			name := fmt.Sprintf("across %s, baseline %s", across, base)
			want := reg.overlay(sixSun, base, 69)
			got, err := SimulateOverlay(reg, sixSun, base, 69, 4000, 3)
			if err != nil {
				t.Fatal(err)
			}
			if got.Worst > want.Worst.Times(1.01) || got.Worst < want.Worst.Times(.85) {
				t.Errorf("%s: worst print %s mm on the mean, %s expected at most", name, got.Worst, want.Worst)
			}
			if got.WithinPct < want.WithinPct-3.5 || got.WithinPct > want.WithinPct+15 {
				t.Errorf("%s: %.1f %% within, odds of %.1f %% at least", name, got.WithinPct, want.WithinPct)
			}
		}
	}
	if _, err := SimulateOverlay(design, sixSun, design.Baseline, maxLaid, maxLaid, 1); err == nil {
		t.Error("endless work was taken")
	}
}

// One print with σ 0.1, B 340, W 356, S 181.818, by hand: along √(0.005 +
// 178²·2·0.01/340²) = 0.10238, across √(0.005 + 181.818²·2·0.01/340²) = 0.10353.
func TestTheBackMissesAsWorkedByHand(t *testing.T) {
	bolt := coatBolt
	bolt.Sides = BothSides
	reg := design
	reg.Misfit = 300 * geom.Micrometre
	run := mustLay(t, bolt, coatBoard, reg, sixSun)
	within(t, "along", run.Back.Along.MM(), .10238, 2e-5)
	within(t, "across", run.Back.Across.MM(), .10353, 2e-5)
	if run.Back.Prints != len(run.Placements) || run.Count() != 2*len(run.Placements) {
		t.Errorf("%d prints, %d in all", run.Back.Prints, run.Count())
	}
	reg.Sheets = 3
	if run = mustLay(t, bolt, coatBoard, reg, sixSun); run.Set.Prints != 2*len(run.Placements) || run.Count() != 6*len(run.Placements) {
		t.Errorf("a set of three: %d prints on the first, %d in all", run.Set.Prints, run.Count())
	}
}

// A pattern with a mirror in the cloth's middle prints its back as it is; two
// stars as far from their selvedges serve then, others only on a turned sheet.
func TestTheBackNeedsATurnedSheetUnlessThePatternIsItsOwnImage(t *testing.T) {
	width := geom.MM(375)
	even := []geom.Point{geom.PtMM(5, 3), geom.PtMM(370, 3), geom.PtMM(100, 3)}
	r, err := ReverseOf(dots(187.5, 1), width, even, geom.MM(.1))
	if err != nil || r.Mirror.Off != 0 || len(r.Stars) != 2 || r.Stars[0] != (Served{0, 1}) || r.NeedsTurning(geom.MM(.1)) {
		t.Errorf("%+v, %v", r, err)
	}
	if r, err = ReverseOf(dots(188.5, 1), width, even, geom.MM(.1)); err != nil || r.Mirror.Off != geom.MM(1) || !r.NeedsTurning(geom.MM(.1)) {
		t.Errorf("a millimetre off: %+v, %v", r, err)
	}
	if r, err = ReverseOf(dots(187.5, 1), width, even[1:], geom.MM(.1)); err != nil || !r.NeedsTurning(geom.MM(.1)) {
		t.Errorf("stars unlike: %+v, %v", r, err)
	}
	if _, err = ReverseOf(pattern.Unit{Lattice: pattern.Straight(geom.MM(10), geom.MM(8))}, width, even, 0); err == nil {
		t.Error("an empty unit has a mirror")
	}
}
