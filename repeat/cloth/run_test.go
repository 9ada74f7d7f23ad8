package cloth

import (
	"math"
	"strings"
	"testing"

	"tsugime/repeat/geom"
)

// The counts are ceil(length / step), worked by hand; the steps are 5 and 6 kane
// sun, 6 kujira sun, 1 kane and 1 kujira shaku, and 130 mm.
func TestPlacementsNeededPerBolt(t *testing.T) {
	lengths := []float64{11_400, 12_000, 12_500, 13_000, 13_500}
	for _, row := range []struct {
		step string
		want [5]int
	}{
		{"130 mm", [5]int{88, 93, 97, 100, 104}},
		{"5 kane sun", [5]int{76, 80, 83, 86, 90}},
		{"6 kane sun", [5]int{63, 66, 69, 72, 75}},
		{"6 kujira sun", [5]int{51, 53, 56, 58, 60}},
		{"1 kane shaku", [5]int{38, 40, 42, 43, 45}},
		{"1 kujira shaku", [5]int{31, 32, 33, 35, 36}},
	} {
		step, err := geom.ParseLength(row.step, geom.MMUnit)
		if err != nil {
			t.Fatal(err)
		}
		for i, mm := range lengths {
			bolt := Bolt{Width: 370 * geom.Millimetre, Length: geom.MM(mm)}
			run := mustLay(t, bolt, Board{Length: 7 * geom.Metre}, design, step)
			if run.Needed != row.want[i] {
				t.Errorf("%s on %g mm: needed %d, want %d", row.step, mm, run.Needed, row.want[i])
			}
			whole := run.Needed
			if run.Remainder > 0 {
				whole--
			}
			if len(run.Placements) != whole {
				t.Errorf("%s on %g mm: %d whole placements of %d needed, %s mm left", row.step, mm, len(run.Placements), run.Needed, run.Remainder)
			}
		}
	}
}

// Dyers' own figures: 70 to 90 placements at 20 to 15 cm (Tokyo komon), about 50
// at about 30 cm, 31 at about 40 cm on 12.5 m (Edo sarasa), 12 at about 1 m
// (poured dye, a bolt of 12 m).
func TestPlacementsAgreeWithDyersFigures(t *testing.T) {
	for _, c := range []struct {
		name          string
		length, step  float64
		least, atMost int
	}{
		{"komon 15 cm", 13_500, 150, 90, 90},
		{"komon 20 cm", 14_000, 200, 70, 70},
		{"komon 30 cm", 14_000, 300, 45, 50},
		{"sarasa 40 cm", 12_500, 400, 31, 32},
		{"poured dye 1 m", 12_000, 1000, 12, 12},
	} {
		run := mustLay(t, Bolt{Width: 370 * geom.Millimetre, Length: geom.MM(c.length)}, Board{Length: 7 * geom.Metre}, design, geom.MM(c.step))
		if run.Needed < c.least || run.Needed > c.atMost {
			t.Errorf("%s: needed %d, the dyer counts %d to %d", c.name, run.Needed, c.least, c.atMost)
		}
	}
}

func TestPlacementsTileTheClothFromTheStart(t *testing.T) {
	run := mustLay(t, coatBolt, coatBoard, design, sixSun)
	y := coatBoard.Start
	for n, p := range run.Placements {
		if p.N != n || p.Y != y {
			t.Fatalf("placement %d: got number %d at %s, want %s", n, p.N, p.Y, y)
		}
		y += sixSun
	}
	if y+run.Remainder != coatBolt.Length || run.Remainder < 0 || run.Remainder >= sixSun {
		t.Errorf("%s mm laid and %s left of %s", y, run.Remainder, coatBolt.Length)
	}
	if a, b, turn := run.OnFace(FaceA), run.OnFace(FaceB), run.OnFace(Turn); a+b+turn != len(run.Placements) || a == 0 || b == 0 || turn == 0 {
		t.Errorf("faces: %d on A, %d on B, %d in the turn of %d", a, b, turn, len(run.Placements))
	}
}

// A board of 1 m with 100 mm of turn: the fold's stretch is 950 to 1050 mm.
func TestPlacementsKnowTheTurn(t *testing.T) {
	bolt := Bolt{Width: 370 * geom.Millimetre, Length: 2_100 * geom.Millimetre}
	for _, c := range []struct {
		start, step, turn float64
		want              string
	}{
		{0, 200, 100, "AAAATTBBBT"},  // 800–1000 and 1000–1200 reach in; 1800–2000 the near end's
		{0, 200, 0, "AAAAABBBBB"},    // a bare fold between two placements harms none
		{100, 200, 0, "AAAATBBBBT"},  // 900–1100 goes over it
		{150, 200, 100, "AAAATBBBB"}, // 750–950 and 1750–1950 end where a stretch begins
		{50, 450, 100, "AATB"},       // 500–950 | 950–1400
	} {
		board := Board{Length: geom.Metre, Turn: geom.MM(c.turn), Start: geom.MM(c.start)}
		run := mustLay(t, bolt, board, design, geom.MM(c.step))
		var got strings.Builder
		for _, p := range run.Placements {
			got.WriteString(strings.ToUpper(string(p.Face[:1])))
		}
		if got.String() != c.want {
			t.Errorf("start %g, step %g, turn %g: faces %s, want %s", c.start, c.step, c.turn, got.String(), c.want)
		}
		if run.Overhang != 100*geom.Millimetre {
			t.Errorf("overhang %s mm, want 100", run.Overhang)
		}
	}
}

// The near faces agree with asking every fold.
func TestFaceAgreesWithLookingAtEveryFold(t *testing.T) {
	board := Board{Length: 300 * geom.Millimetre, Turn: 299 * geom.Millimetre}
	folds := board.folds(5 * geom.Metre)
	for y := geom.Length(0); y < 4*geom.Metre; y += 7 * geom.Millimetre {
		for _, step := range []geom.Length{geom.Millimetre, 90 * geom.Millimetre, 300 * geom.Millimetre} {
			reached := false
			for _, f := range folds {
				reached = reached || f.reaches(y, step)
			}
			if got := board.face(y, step); (got == Turn) != reached {
				t.Fatalf("%s + %s mm: face %s, a fold is reached: %v", y, step, got, reached)
			}
		}
	}
}

func TestLayRefusesWhatCantBeLaid(t *testing.T) {
	type input struct {
		bolt  Bolt
		board Board
		reg   Register
		step  geom.Length
	}
	for name, c := range map[string]struct {
		spoil func(*input)
		say   string
	}{
		"a nanometre's step on ten kilometres": {func(i *input) { i.bolt.Length, i.board.Length, i.step = 10_000*geom.Metre, 10*geom.Metre, 1 }, "step"},
		"too many placements":                  {func(i *input) { i.bolt.Length, i.step = 10_000*geom.Metre, geom.Millimetre }, "at most 100000"},
		"no step":                              {func(i *input) { i.step = 0 }, "step"},
		"a step backwards":                     {func(i *input) { i.step = -sixSun }, "step"},
		"the longest number":                   {func(i *input) { i.bolt.Length = math.MaxInt64 }, "bolt"},
		"no bolt":                              {func(i *input) { i.bolt.Length = 0 }, "bolt"},
		"no width":                             {func(i *input) { i.bolt.Width = -1 }, "width"},
		"a change that is no number":           {func(i *input) { i.bolt.ChangeAlong = math.NaN() }, "change"},
		"a change without end":                 {func(i *input) { i.bolt.ChangeAcross = math.Inf(1) }, "change"},
		"no board":                             {func(i *input) { i.board.Length = 0 }, "board"},
		"a turn as long as the board":          {func(i *input) { i.board.Turn = i.board.Length }, "turn"},
		"a start off the bolt":                 {func(i *input) { i.board.Start = i.bolt.Length }, "start"},
		"a board shorter than a step":          {func(i *input) { i.board.Length, i.board.Turn = sixSun-1, 0 }, "board"},
		"an unknown way":                       {func(i *input) { i.reg.Way = "by eye" }, "by eye"},
		"stars in one place":                   {func(i *input) { i.reg.Baseline = -1 }, "stars"},
		"stars too near":                       {func(i *input) { i.reg.Baseline = geom.Micrometre }, "further apart"},
		"a pitch error beyond the step":        {func(i *input) { i.reg.PitchError = sixSun }, "pitch"},
	} {
		in := input{coatBolt, coatBoard, design, sixSun}
		c.spoil(&in)
		run, err := Lay(in.bolt, in.board, in.reg, in.step)
		if err == nil || !strings.Contains(err.Error(), c.say) {
			t.Errorf("%s: error %v, want one that says %q", name, err, c.say)
		}
		if run.Placements != nil {
			t.Errorf("%s: %d placements in spite of the error", name, len(run.Placements))
		}
	}
}

func TestAShortBoltHasNoWholePlacement(t *testing.T) {
	bolt := Bolt{Width: 370 * geom.Millimetre, Length: 100 * geom.Millimetre}
	run := mustLay(t, bolt, Board{Length: geom.Metre}, design, sixSun)
	if len(run.Placements) != 0 || run.Needed != 1 || run.Remainder != bolt.Length || run.Drift.EndX != 0 {
		t.Errorf("got %d placements, %d needed, %s left, drift %v", len(run.Placements), run.Needed, run.Remainder, run.Drift)
	}
}

func FuzzLayNeverPanics(f *testing.F) {
	f.Add(int64(375e6), int64(12.6e9), -0.03, int64(6.4e9), int64(4e7), int64(0), int64(181818182), int64(1e5), int64(340e6), 0.0, uint32(0))
	f.Add(int64(1), int64(1), 0.5, int64(1), int64(0), int64(0), int64(1), int64(0), int64(1), 0.01, uint32(1<<20))
	f.Add(int64(2e9), int64(1e13), -0.5, int64(1e7), int64(1e7-1), int64(1), int64(1e6), int64(1e7), int64(2e9), -0.1, uint32(0xffffffff))
	f.Add(int64(37e7), int64(9e8), 0.0, int64(15e8), int64(1e8), int64(5e7), int64(2e8), int64(1e5), int64(3e8), 0.002, uint32(0x5a3f))
	f.Fuzz(func(t *testing.T, width, length int64, change float64, board, turn, start, step, sigma, base int64, growth float64, bits uint32) {
		// Bits choose faces, cloths, layings, order, sides, fold, sheets and the way.
		bolt := Bolt{
			Width: geom.Length(width), Length: geom.Length(length), ChangeAcross: change, ChangeAlong: change,
			Selvedge: geom.Length(bits & 0xff), Folded: bits&0x100 != 0,
		}
		if bits&0x200 != 0 {
			bolt.Sides = BothSides
		}
		b := Board{
			Length: geom.Length(board), Turn: geom.Length(turn), Start: geom.Length(start), End: geom.Length(start / 2),
			Faces: int(bits >> 10 & 3), Cloths: int(bits >> 12 & 7), Layings: int(bits >> 15 & 7),
		}
		if bits&0x40000 != 0 {
			b.Sequence = EveryOther
		}
		reg := Register{
			Way: Ways()[bits>>19%3], StarError: geom.Length(sigma), PitchError: geom.Length(sigma), StarErrorAcross: geom.Length(sigma / 3),
			Baseline: geom.Length(base), Width: geom.Length(width), Growth: Growth{Start: growth, End: -growth, Half: int(bits >> 21 & 7)},
			Sheets: int(bits >> 24), Tolerance: geom.Length(sigma), Misfit: geom.Length(sigma),
		}
		run, err := Lay(bolt, b, reg, geom.Length(step))
		if err != nil {
			return
		}
		if len(run.Placements) > maxPlacements || len(run.Turns) > maxPlacements+2 {
			t.Errorf("%d placements, %d turns", len(run.Placements), len(run.Turns))
		}
		d := run.Drift
		if d.EndX < 0 || d.WorstJoint < 0 || !(d.WithinPct >= 0 && d.WithinPct <= 100.001) {
			t.Errorf("drift %+v", d)
		}
		for _, g := range Gains(run) {
			if g.Total() <= 0 {
				t.Errorf("gain %+v", g)
			}
		}
		Marks(run)
	})
}
