package cloth

import (
	"math/rand/v2"
	"slices"
	"testing"

	"tsugime/repeat/geom"
	"tsugime/repeat/pattern"
)

// cheapestClearing tries, by whole millimetres, every place to part the cloth and
// every later start and gap: the least finished cloth with which no panel lies
// over the stretch.
func cheapestClearing(panels []Panel, turn Span) geom.Length {
	const mm, most = geom.Millimetre, 20_000
	over := func(moved []Panel, by geom.Length) bool {
		return slices.ContainsFunc(moved, func(p Panel) bool { return p.Y+by < turn.To && p.Y+p.Length+by > turn.From })
	}
	best := most * mm
	for _, first := range panels {
		var before, behind []Panel
		for _, p := range panels {
			if p.Y < first.Y {
				before = append(before, p)
			} else {
				behind = append(behind, p)
			}
		}
		if slices.ContainsFunc(before, func(p Panel) bool { return p.Y+p.Length > first.Y }) {
			continue
		}
		cleared := false
		for by := geom.Length(0); by < best; by += mm {
			cleared = cleared || !over(before, by)
			if cleared && !over(behind, by) {
				best = by
			}
		}
	}
	return best
}

// The turn falls anywhere on a bolt that it parts once, nearly always in a panel.
// Where there is cloth for it, laying as it is told clears it for the least that
// trying all finds; where there is none, it is told how much is lacking.
func TestATurnIsClearedForTheLeastCloth(t *testing.T) {
	const near = 1300 * geom.Micrometre // trying goes by millimetres, telling by tenths
	random := rand.New(rand.NewPCG(8, 8))
	cleared, lacking := 0, 0
	for k := range 100 {
		bolt, board := coatBolt, coatBoard
		bolt.Length = geom.Length(12_500+random.IntN(4500)) * geom.Millimetre
		board.Length = bolt.Length/2 + geom.Length(random.IntN(6000)+1)*geom.Millimetre
		board.Turn = geom.Length(random.IntN(80)) * geom.Millimetre
		board.End = geom.Length(random.IntN(300)) * geom.Millimetre
		board.Layings = 1
		run := mustLay(t, bolt, board, Register{}, sixSun)
		g := Garment{Body: Body{Kind: WomensKimono, Height: geom.Length(1500+random.IntN(200)) * geom.Millimetre}}
		before := dressedOn(t, bolt, run, g)
		c := ClearTurn(run, before)
		if len(c.Over) == 0 {
			continue
		}
		least := cheapestClearing(before.Panels, run.finished(run.Turns[0]))
		if (c.Extra - least).Abs() > near {
			t.Fatalf("question %d: %s mm of cloth are told, trying all finds %s", k, c.Extra, least)
		}
		if spare := before.Length - before.Used - least; spare.Abs() > near && c.Found != (spare > 0) ||
			!c.Found && (c.Lacks+spare).Abs() > near {
			t.Fatalf("question %d: %s mm are to spare, told %+v", k, spare, c)
		}
		if !c.Found {
			lacking++
			continue
		}
		cleared++
		board.Start, g.Layout.Gaps = c.Start, map[string]geom.Length{}
		for _, name := range c.Before {
			g.Layout.Gaps[name] = c.Gap
		}
		run = mustLay(t, bolt, board, Register{}, sixSun)
		after := dressedOn(t, bolt, run, g)
		if left := ClearTurn(run, after); len(left.Over) != 0 {
			t.Fatalf("%v lie over the turn %v still; told %+v", left.Over, run.Turns, c)
		}
		grown := after.Start + after.Used - before.Start - before.Used
		if grown > c.Extra+2*geom.Nanometre || grown < 0 || after.Used > after.Length {
			t.Fatalf("%s mm more used, %s told", grown, c.Extra)
		}
	}
	if cleared < 20 || lacking < 20 {
		t.Errorf("only %d turns were cleared, and %d lacked cloth", cleared, lacking)
	}
}

func dressedOn(t *testing.T, bolt Bolt, run Run, g Garment) Dressed {
	t.Helper()
	d, err := Dress(bolt, run, pattern.Straight(sixSun, sixSun), g, geom.Millimetre)
	if err != nil {
		t.Fatal(err)
	}
	return d
}

// What is wasted at the far end holds no pattern, and no panel.
func TestTheWasteAtTheFarEndIsNoCloth(t *testing.T) {
	board := coatBoard
	g := Garment{Body: Body{Kind: WomensKimono, Height: 1580 * geom.Millimetre}}
	whole := dressedOn(t, coatBolt, mustLay(t, coatBolt, board, Register{}, sixSun), g)
	board.End += 250 * geom.Millimetre
	less := dressedOn(t, coatBolt, mustLay(t, coatBolt, board, Register{}, sixSun), g)
	want := coatBolt.Finished(geom.Point{Y: 250 * geom.Millimetre}).Y
	if lost := whole.Length - less.Length; (lost - want).Abs() > geom.Nanometre {
		t.Errorf("%s mm less cloth, want %s", lost, want)
	}
	if less.Used != whole.Used {
		t.Errorf("%s used, %s before", less.Used, whole.Used)
	}
}

func TestPanelsOverTheTurnAreNamed(t *testing.T) {
	d := Dressed{Length: 3 * geom.Metre, Panels: []Panel{
		{Name: "one", Length: 950 * geom.Millimetre},
		{Name: "two", Y: 950 * geom.Millimetre, Length: 100 * geom.Millimetre},
		{Name: "strip", Y: 950 * geom.Millimetre, Length: 300 * geom.Millimetre},
	}}
	bolt := Bolt{Width: 375 * geom.Millimetre, Length: 2 * geom.Metre}
	run := mustLay(t, bolt, Board{Length: geom.Metre, Turn: 40 * geom.Millimetre}, Register{}, geom.MM(100))
	d.Used = 1250 * geom.Millimetre
	// The near end, at 2 m, turns too; it is beyond this bolt's last placement.
	c := ClearTurn(run, d)
	if !slices.Equal(c.Over, []string{"two", "strip"}) {
		t.Errorf("%+v", c)
	}
	run.Turns = run.Turns[:1]
	c = ClearTurn(run, d)
	if !c.Found || !slices.Equal(c.Before, []string{"two", "strip"}) || c.Extra != geom.MM(70.1) || c.Start != geom.MM(30) || c.Gap != geom.MM(40.1) {
		t.Errorf("%+v", c)
	}
	d.Length = d.Used + 60*geom.Millimetre
	if c = ClearTurn(run, d); c.Found || c.Lacks != geom.MM(10.1) {
		t.Errorf("cleared without the cloth for it: %+v", c)
	}
}
