package cloth

import (
	"slices"
	"testing"

	"tsugime/repeat/geom"
)

func find(gains []Gain, r Remedy) (Gain, bool) {
	i := slices.IndexFunc(gains, func(g Gain) bool { return g.Remedy == r })
	if i < 0 {
		return Gain{}, false
	}
	return gains[i], true
}

// Each gain is what the run with the remedy taken is measured to have.
func TestAGainIsWhatTheRemedyThenBrings(t *testing.T) {
	reg := design
	reg.Baseline, reg.Longest = 250*geom.Millimetre, 360*geom.Millimetre
	reg.PitchError, reg.Growth = 20*geom.Micrometre, Growth{End: -.001}
	run := mustLay(t, coatBolt, coatBoard, reg, sixSun)
	gains := Gains(run)
	if !slices.IsSortedFunc(gains, func(a, b Gain) int { return int(b.Total() - a.Total()) }) {
		t.Error("the greatest gain doesn't stand first")
	}
	for remedy, take := range map[Remedy]func(*Register, *Board, *geom.Length){
		LongerBaseline: func(r *Register, _ *Board, _ *geom.Length) { r.Baseline = r.Longest },
		UseEdgeLine:    func(r *Register, _ *Board, _ *geom.Length) { r.Way = EdgeLine },
		UseMarkedLine:  func(r *Register, _ *Board, _ *geom.Length) { r.Way = MarkedLine },
		CarefulStars:   func(r *Register, _ *Board, _ *geom.Length) { r.StarError /= 2 },
		TrueStep:       func(r *Register, _ *Board, _ *geom.Length) { r.PitchError = 0 },
		DampSheet:      func(r *Register, _ *Board, _ *geom.Length) { r.Growth.End = 0 },
		LongerStep:     func(_ *Register, _ *Board, step *geom.Length) { *step *= 2 },
	} {
		g, ok := find(gains, remedy)
		again, board, step := reg, coatBoard, sixSun
		take(&again, &board, &step)
		after := mustLay(t, coatBolt, board, again, step)
		better := run.Drift.WorstJoint - after.Drift.WorstJoint + run.Drift.End() - after.Drift.End()
		if ok != (better >= geom.Micrometre) {
			t.Errorf("%s: offered %v, it gains %s mm", remedy, ok, better)
			continue
		}
		if ok && (g.JointAfter != after.Drift.WorstJoint || g.EndAfter != after.Drift.End() || g.Total() != better) {
			t.Errorf("%s: %+v, the run then has %+v", remedy, g, after.Drift)
		}
	}
	if _, ok := find(gains, UseEdgeLine); !ok {
		t.Error("no edge line for stars alone")
	}
}

func TestNoGainIsOfferedThatBringsNothing(t *testing.T) {
	for _, way := range append(Ways(), FoldLine) {
		for _, seq := range Sequences() {
			bolt, board, reg := coatBolt, coatBoard, design
			reg.Way, board.Sequence, bolt.Folded = way, seq, way == FoldLine
			run := mustLay(t, bolt, board, reg, sixSun)
			for _, g := range Gains(run) {
				if g.Total() <= 0 || g.JointBefore != run.Drift.WorstJoint {
					t.Errorf("%s, %s: %+v", way, seq, g)
				}
			}
		}
	}
	if gains := Gains(mustLay(t, coatBolt, coatBoard, Register{}, sixSun)); gains != nil {
		t.Errorf("without stars: %v", gains)
	}
}

func TestSelvedgesTakeFromTheWidth(t *testing.T) {
	bolt := coatBolt
	bolt.Selvedge = 8 * geom.Millimetre
	if u := bolt.Usable(); u.From != 8*geom.Millimetre || u.Length() != 359*geom.Millimetre {
		t.Errorf("%+v", u)
	}
	for _, wide := range []geom.Length{-1, bolt.Width / 2} {
		bolt.Selvedge = wide
		if bolt.Check() == nil {
			t.Errorf("selvedges of %s mm were taken", wide)
		}
	}
}
