package check_test

import (
	"errors"
	"fmt"
	"strings"
	"testing"

	"tsugime/repeat/check"
	"tsugime/repeat/cloth"
	"tsugime/repeat/geom"
	"tsugime/repeat/pattern"
	"tsugime/repeat/stencil"
)

// sound is a set of measures in which nothing needs a look.
func sound() check.Measures {
	disc := pattern.Motif{ID: 1, Shape: geom.DiscShape(geom.Point{}, geom.MM(0.5))}
	unit := pattern.Unit{Lattice: pattern.Straight(geom.MM(1), geom.MM(1)), Motifs: []pattern.Motif{disc}}
	star := func(end stencil.End, x, y float64) stencil.Star {
		return stencil.Star{End: end, At: geom.PtMM(x, y), Diameter: geom.MM(1), Hidden: true, Clear: geom.MM(2)}
	}
	return check.Measures{
		Unit: unit,
		Sheet: stencil.Sheet{
			Spec:    stencil.Spec{Step: geom.MM(180), Field: stencil.Field{Left: geom.MM(9.5), Width: geom.MM(356)}},
			Paper:   geom.BoxOf(geom.PtMM(-27, -50), geom.PtMM(403, 250)),
			CutOuts: unit.CutOuts(),
			Joint:   stencil.Joint{Line: []geom.Point{geom.PtMM(9.5, 0), geom.PtMM(365.5, 0)}, Clearance: geom.MM(0.25)},
			Webs:    stencil.WebReport{Limit: geom.MM(0.4), Found: true, Narrowest: stencil.Web{Width: geom.MM(0.5)}},
			Stars: stencil.StarSet{
				Stars:    []stencil.Star{star(stencil.Leading, 3, 0), star(stencil.Trailing, 3, 180)},
				Baseline: geom.MM(360), TurnedMisfit: geom.MM(6),
			},
		},
		Run: cloth.Run{
			Bolt: cloth.Bolt{Width: geom.MM(375), Length: geom.MM(360)}, Board: cloth.Board{Length: geom.MM(6400)},
			Step:       geom.MM(180),
			Placements: []cloth.Placement{{N: 0, Face: cloth.FaceA}, {N: 1, Y: geom.MM(180), Face: cloth.FaceA}},
			Drift:      cloth.Drift{Way: cloth.EdgeLine, WorstJoint: geom.MM(0.05)},
		},
	}
}

// split makes the measures those of a sound split and returns its first sheet.
func split(m *check.Measures) *stencil.Sheet {
	second := m.Sheet
	m.Sheet.Second = &second
	m.Sheet.Spec.Hold = stencil.Hold{
		Way: stencil.Split, Ties: []stencil.Tie{{Motif: 1, To: geom.PtMM(1, 0), Width: geom.MM(0.5)}},
		Second: stencil.Second{Cut: stencil.TiePlaces, Lap: geom.MM(0.2)},
	}
	return &m.Sheet
}

func limits() check.Limits {
	return check.Limits{
		Hole: geom.MM(0.33), StarClear: geom.MM(1), Baseline: geom.MM(300),
		TurnedMisfit: geom.MM(3), Joint: geom.MM(0.1), SeamPhase: geom.MM(0.5),
		Misfit: geom.MM(0.3), MostMisfit: geom.MM(0.5), Look: geom.MM(400),
	}
}

// Each case breaks one thing, and exactly its finding appears, with the measure
// in its text and something to do about it.
func TestEachRuleFindsItsOwnFaultAndNoOther(t *testing.T) {
	cases := []struct {
		code     string
		severity check.Severity
		says     string
		spoil    func(m *check.Measures)
	}{
		{"unit-empty", check.Fault, "no motif", func(m *check.Measures) { m.Unit.Motifs = nil }},
		{"hole-small", check.Warning, "0.3 mm", func(m *check.Measures) {
			m.Unit.Motifs = []pattern.Motif{{ID: 1, Shape: geom.DiscShape(geom.Point{}, geom.MM(0.3))}}
		}},
		{"outline-flaw", check.Warning, "The outlines of 2 motifs cross, touch or run along themselves; the first is motif 7.", func(m *check.Measures) {
			m.Sheet.Flaws = []stencil.Flaw{{Motif: 3, Kind: geom.Reversed}, {Motif: 7, Kind: geom.Crossed}, {Motif: 8, Kind: geom.Crossed}}
		}},
		{"outline-flaw", check.Warning, "The outlines of 1 motif have a line that encloses nothing", func(m *check.Measures) {
			m.Sheet.Flaws = []stencil.Flaw{{Motif: 3, Kind: geom.NoArea}}
		}},
		{"under-pattern", check.Warning, "1000 mm, the joined units show bands 10.8 mm apart that run across: contrast 0.87 %, 5.7 times", func(m *check.Measures) {
			m.Under = pattern.Proof{Look: pattern.StandBack, Found: []pattern.Component{
				{Kind: pattern.UnderBand, Period: geom.MM(10.8), ContrastPct: 0.87, SeenTimes: 5.7},
			}}
		}},
		{"under-pattern", check.Warning, "run at 33.7° clockwise from across: contrast 1 %, 2 times what the eye sees. 3 others are less visible", func(m *check.Measures) {
			m.Under = pattern.Proof{More: 2, Found: []pattern.Component{
				{Kind: pattern.UnderRow, Period: geom.MM(3), DirectionDeg: 33.69, ContrastPct: 1, SeenTimes: 2}, {},
			}}
		}},
		{"island", check.Fault, "2.500 mm²", func(m *check.Measures) {
			m.Sheet.Paths.Islands = []stencil.Part{{AreaMM2: 2.5}}
		}},
		{"band", check.Fault, "1 strip", func(m *check.Measures) { m.Sheet.Paths.Bands = []stencil.Part{{}} }},
		{"web-thin", check.Fault, "0.2 mm", func(m *check.Measures) {
			m.Sheet.Webs.Below = []stencil.Web{{Width: geom.MM(0.2)}}
		}},
		{"tongue", check.Warning, "2 tongues hang on one side only and may lift; the first reaches 12 mm from a neck of 2 mm", func(m *check.Measures) {
			neck := stencil.Web{Width: geom.MM(2)}
			m.Sheet.Tongues = []stencil.Tongue{{Neck: neck, Reach: geom.MM(12), Ratio: 6}, {Neck: neck, Ratio: 4.5}, {Neck: neck, Ratio: 3}}
		}},
		{"ribbon", check.Warning, "1 ribbon of paper gives; the first, 30 mm long and 1 mm wide, moves by up to 0.422 mm, the limit is 0.1 mm", func(m *check.Measures) {
			m.Sheet.Ribbons = []stencil.Ribbon{{Span: geom.MM(30), Width: geom.MM(1), Deflection: geom.MM(0.422)}, {Deflection: geom.MM(0.05)}}
		}},
		// 100 N/m on 0.2 mm of 2000 MPa at a hundredth of that stretches by 2.5 %; a
		// fourth of this over 180 mm is 1.125 mm.
		{"skew", check.Warning, "leans by 1.125 mm from end to end", func(m *check.Measures) {
			m.Sheet.Spec.Paper.Thickness = geom.MM(0.2)
			m.Sheet.StiffFound, m.Sheet.Stiff = true, stencil.Stiffness{Isotropy: 0.4, Along: stencil.Pull{Modulus: 0.01, Skew: -0.25}}
		}},
		{"skew", check.Note, "The second sheet has in one direction, 45° from across, only 30 %", func(m *check.Measures) {
			second := split(m).Second
			second.StiffFound, second.Stiff = true, stencil.Stiffness{Isotropy: 0.3, SoftDeg: 45}
		}},
		{"tie-open", check.Fault, "1 tie: an end lies in a cut-out", func(m *check.Measures) {
			m.Sheet.Ties.Ties = []stencil.TieMeasure{{Crossed: geom.MM(1), FromPaper: true, CrossesMotif: true}}
		}},
		{"tie-idle", check.Warning, "2 ties of the second sheet: no cut-out", func(m *check.Measures) {
			split(m).Second.Ties.Ties = make([]stencil.TieMeasure, 2)
		}},
		{"tie-astray", check.Note, "1 tie: the motif", func(m *check.Measures) {
			m.Sheet.Ties.Ties = []stencil.TieMeasure{{Crossed: geom.MM(1), FromPaper: true, ToPaper: true}}
		}},
		{"tie-hinge", check.Warning, "1 island is held by fewer ties than 2; the first, of 3.00 mm², swings on 1 tie", func(m *check.Measures) {
			m.Sheet.Spec.Hold.PerIsland = 2
			m.Sheet.Ties.Islands = []stencil.HeldPart{{}, {AreaMM2: 3, Ties: []int{0}}, {Ties: []int{1, 2}}}
		}},
		{"split-misses", check.Fault, "0.2500 mm² of the design uncut, in 1 place", func(m *check.Measures) {
			split(m).Cover = stencil.Cover{MissingMM2: 0.25, Missing: []stencil.Patch{{AreaMM2: 0.25}}}
		}},
		{"split-exceeds", check.Fault, "0.5000 mm²", func(m *check.Measures) {
			split(m).Cover = stencil.Cover{ExtraMM2: 0.5, Extra: []stencil.Patch{{AreaMM2: 0.5}}}
		}},
		{"split-lap", check.Warning, "0.05 mm", func(m *check.Measures) { split(m).Spec.Hold.Second.Lap = geom.MM(0.05) }},
		{"island", check.Fault, "1.500 mm² of the second sheet", func(m *check.Measures) {
			split(m).Second.Paths.Islands = []stencil.Part{{AreaMM2: 1.5}}
		}},
		{"star-match", check.Warning, "0.2 mm", func(m *check.Measures) {
			split(m).Stars.Match = []stencil.MatchStar{{Hidden: true, Clear: geom.MM(0.2)}}
		}},
		{"ground-bent", check.Warning, "+0.80 % more across than along, so that 15 of its tiles fill 356 mm", func(m *check.Measures) {
			m.Ground = check.Ground{
				Recipe: pattern.Recipe{Ground: "hemp-leaf", Width: geom.MM(356)},
				Laying: pattern.Laying{Columns: 15, Rows: 7, Bent: 0.008},
			}
		}},
		{"joint-step", check.Fault, "0.25 mm", func(m *check.Measures) { m.Sheet.StepError = geom.PtMM(0, 0.25) }},
		{"joint-crosses", check.Warning, "cross", func(m *check.Measures) { m.Sheet.Joint.Clearance = 0 }},
		{"joint-crosses", check.Warning, "drawn by hand crosses 3 mm", func(m *check.Measures) {
			m.Sheet.Joint.Clearance, m.Sheet.Joint.ByHand, m.Sheet.Joint.Crossed = -geom.MM(0.1), true, geom.MM(3)
		}},
		{"joint-hand", check.Warning, "ends 2 mm short", func(m *check.Measures) {
			m.Sheet.Joint.ByHand = true
			m.Sheet.Joint.Faults = []stencil.JointFault{{Kind: stencil.EndsShort, By: geom.MM(2)}}
		}},
		{"joint-thin", check.Warning, "0.1 mm", func(m *check.Measures) { m.Sheet.Joint.Clearance = geom.MM(0.1) }},
		{"field-wide", check.Fault, "375 mm", func(m *check.Measures) { m.Sheet.Spec.Field.Width = geom.MM(370) }},
		{"paper-small", check.Fault, "too small", func(m *check.Measures) { m.Sheet.Paper = geom.BoxOf(geom.PtMM(0, 0), geom.PtMM(300, 200)) }},
		{"star-near", check.Warning, "0.4 mm", func(m *check.Measures) {
			m.Sheet.Stars.Stars = append([]stencil.Star(nil), m.Sheet.Stars.Stars...)
			m.Sheet.Stars.Stars[0].Clear = geom.MM(0.4)
		}},
		{"star-open", check.Note, "1 star", func(m *check.Measures) {
			m.Sheet.Stars.Stars = append([]stencil.Star(nil), m.Sheet.Stars.Stars...)
			m.Sheet.Stars.Stars[0].Hidden = false
		}},
		{"star-baseline", check.Warning, "100 mm", func(m *check.Measures) { m.Sheet.Stars.Baseline = geom.MM(100) }},
		{"star-turned", check.Warning, "turned or mirrored", func(m *check.Measures) { m.Sheet.Stars.TurnedMisfit = 0 }},
		{"bolt-no-placement", check.Fault, "Not one placement", func(m *check.Measures) { m.Run.Placements = nil }},
		{"bolt-remainder", check.Note, "90 mm", func(m *check.Measures) { m.Run.Remainder = geom.MM(90) }},
		{"bolt-turn", check.Note, "placement 2", func(m *check.Measures) {
			m.Run.Placements = []cloth.Placement{{Face: cloth.FaceA}, {N: 1, Y: geom.MM(180), Face: cloth.Turn}}
		}},
		{"bolt-remainder", check.Note, "90 mm", func(m *check.Measures) {
			m.Run.Remainder, m.Run.Partial = geom.MM(90), cloth.Partial{N: 2, Y: geom.MM(360), Printed: geom.MM(90), Masked: geom.MM(90)}
		}},
		{"field-selvedge", check.Warning, "2.5 mm into a selvedge; 12 mm to 363 mm", func(m *check.Measures) { m.Run.Bolt.Selvedge = geom.MM(12) }},
		{"bolt-turn", check.Note, "placement 2", func(m *check.Measures) {
			m.Run.Placements = []cloth.Placement{{Face: cloth.FaceA}, {N: 1, Y: geom.MM(180), Face: cloth.Turn}}
			m.Dressed = cloth.Dressed{Used: geom.MM(300), Length: geom.MM(360), Panels: []cloth.Panel{{Name: "left body", Length: geom.MM(300)}}}
			m.Run.Turns, m.Run.Stretches = []cloth.Span{{From: geom.MM(200), To: geom.MM(240)}}, make([]cloth.Stretch, 1)
		}},
		{"board-short", check.Warning, "bolt of 360 mm is longer than both faces of the board, 200 mm", func(m *check.Measures) {
			m.Run.Board.Length, m.Run.Overhang = geom.MM(100), geom.MM(160)
		}},
		{"board-short", check.Warning, "at one time, 300 mm, is longer than one face of the board, 200 mm", func(m *check.Measures) {
			m.Run.Board = cloth.Board{Length: geom.MM(200), Faces: 1, Cloths: 3}
			m.Run.Stretches = []cloth.Stretch{{}, {Cloth: 1, Overhang: geom.MM(100)}}
		}},
		{"drift-joint", check.Note, "0.3 mm, more than 0.1 mm, plainly seen from 400 mm", func(m *check.Measures) { m.Run.Drift.WorstJoint = geom.MM(0.3) }},
		{"drift-joint", check.Note, "seen by an expert on crisp lines", func(m *check.Measures) { m.Run.Drift.WorstJoint = geom.MM(0.11) }},
		{"drift-walk", check.Warning, "walk 20 mm across, as a standard deviation; beside the field 9.5 mm are free, which placement 2", func(m *check.Measures) {
			m.Run.Drift.EndX = geom.MM(20)
			m.Run.Placements = []cloth.Placement{{WalkX: geom.MM(5)}, {N: 1, WalkX: geom.MM(20)}}
		}},
		{"sheet-dries", check.Note, "from +0.00 % to -0.40 %: the pattern walks -0.72 mm along", func(m *check.Measures) { // 180·(0 − 0.004)
			m.Run.Register.Growth.End, m.Run.Drift.ShareY = -0.004, -geom.MM(0.72)
		}},
		{"sheet-dries", check.Note, "gap by up to 0.72 mm", func(m *check.Measures) {
			m.Run.Register.Growth.End, m.Run.Drift.Way = -0.004, cloth.MarkedLine
		}},
		{"set-misfit", check.Note, "Of 69 prints", func(m *check.Measures) { m.Run.Set = cloth.Overlay{Prints: 69, Worst: geom.MM(0.4)} }},
		{"back-misfit", check.Warning, "miss the front by 0.6 mm, more than 0.3 mm", func(m *check.Measures) {
			m.Run.Back = cloth.Overlay{Prints: 69, Worst: geom.MM(0.6)}
		}},
		{"back-misfit", check.Note, "0.4 mm", func(m *check.Measures) { m.Run.Back = cloth.Overlay{Worst: geom.MM(0.4)} }},
		{"back-sheet", check.Note, "no mirror along the bolt", func(m *check.Measures) {
			m.Run.Bolt.Sides, m.Reverse = cloth.BothSides, &cloth.Reverse{}
		}},
		{"back-sheet", check.Note, "lies 1 mm beside the middle", func(m *check.Measures) {
			m.Run.Bolt.Sides, m.Reverse = cloth.BothSides, &cloth.Reverse{Mirror: cloth.Mirror{Found: true, Off: -geom.MM(1)}}
		}},
		{"back-sheet", check.Note, "only 1 of its leading stars", func(m *check.Measures) {
			m.Run.Bolt.Sides, m.Reverse = cloth.BothSides, &cloth.Reverse{Mirror: cloth.Mirror{Found: true}, Stars: make([]cloth.Served, 1)}
		}},
		{"fold-mirror", check.Warning, "(p1) has no mirror", func(m *check.Measures) {
			m.Run.Bolt.Folded, m.Fold = true, &cloth.Folding{Mirror: cloth.Mirror{Group: pattern.P1}}
		}},
		{"fold-mirror", check.Warning, "only a glide there, so it jumps by 2 mm", func(m *check.Measures) {
			m.Run.Bolt.Folded, m.Fold = true, &cloth.Folding{Mirror: cloth.Mirror{Found: true, Glide: geom.MM(2)}}
		}},
		{"fold-mirror", check.Warning, "lies 0.3 mm from it: the pattern jumps by 0.6 mm", func(m *check.Measures) {
			m.Run.Bolt.Folded, m.Fold = true, &cloth.Folding{Mirror: cloth.Mirror{Found: true, Off: geom.MM(0.3)}}
		}},
		{"fold-crossed", check.Warning, "12 cut-outs of the sheet reach over the folds, by up to 0.4 mm", func(m *check.Measures) {
			m.Run.Bolt.Folded, m.Fold = true, &cloth.Folding{Mirror: cloth.Mirror{Found: true}, Over: 12, Reach: geom.MM(0.4)}
		}},
		{"bolt-short", check.Fault, "40 mm too little", func(m *check.Measures) {
			m.Dressed = cloth.Dressed{Used: geom.MM(400), Length: geom.MM(360), Panels: []cloth.Panel{{Name: "left body"}}}
		}},
		{"garment-unlaid", check.Fault, "too narrow", func(m *check.Measures) { m.Unlaid = errors.New("the bolt is too narrow") }},
		{"garment-unlaid", check.Fault, "39 mm too wide", func(m *check.Measures) {
			m.Unlaid = fmt.Errorf("cloth: %w", &cloth.Misfit{Text: "the sleeve is 39 mm too wide", Remedy: "use wider cloth"})
		}},
		{"garment-narrowed", check.Warning, "341 mm are wanted", func(m *check.Measures) {
			m.Dressed.Narrowed = []cloth.Narrowing{{Size: cloth.Size{Title: "Sleeve width", Length: geom.MM(330)}, Wanted: geom.MM(341)}}
		}},
		{"back-centre-phase", check.Warning, "0.8 mm along", func(m *check.Measures) {
			m.Dressed.Seams = []cloth.Seam{{Name: cloth.BackCentre, Meeting: cloth.Meeting{PhaseAlong: geom.MM(0.8)}}}
		}},
	}
	for _, c := range cases {
		m := sound()
		c.spoil(&m)
		found := check.All(m, limits())
		if len(found) != 1 || found[0].Code != c.code {
			t.Errorf("%s: found %v", c.code, found)
			continue
		}
		f := found[0]
		if f.Severity != c.severity || !strings.Contains(f.Text, c.says) || f.Remedy == "" || f.Domain == "" {
			t.Errorf("%s: %+v; want %s and a text with %q", c.code, f, c.severity, c.says)
		}
	}
}

func TestNothingIsFoundWhereNothingIsWrong(t *testing.T) {
	if found := check.All(sound(), limits()); len(found) != 0 {
		t.Errorf("found %v", found)
	}
}

func TestSeveritiesAreRankedAndTheWorstIsTold(t *testing.T) {
	f := func(s check.Severity) check.Finding { return check.Finding{Severity: s} }
	if got := check.Worst([]check.Finding{f(check.Note), f(check.Fault), f(check.Warning)}); got != check.Fault {
		t.Errorf("worst is %q", got)
	}
	if check.Worst(nil).Rank() >= check.Note.Rank() {
		t.Error("no finding ranks as high as a note")
	}
}
