package cloth

import (
	"math/rand/v2"
	"slices"
	"testing"

	"tsugime/repeat/geom"
	"tsugime/repeat/pattern"
)

// Laid as it is told, no panel lies over the turn, and the cloth used grows by
// what was told.
func TestAClearedTurnHasNoPanelOverIt(t *testing.T) {
	random := rand.New(rand.NewPCG(8, 8))
	cleared := 0
	for range 200 {
		bolt, board := coatBolt, coatBoard
		bolt.Length = 17 * geom.Metre
		board.Length = geom.Length(2000+random.IntN(9000)) * geom.Millimetre
		board.Turn = geom.Length(random.IntN(80)) * geom.Millimetre
		board.Layings = 1
		if 2*board.Length < bolt.Length {
			board.Length = 9 * geom.Metre
		}
		run := mustLay(t, bolt, board, Register{}, sixSun)
		g := Garment{Body: Body{Kind: WomensKimono, Height: geom.Length(1500+random.IntN(200)) * geom.Millimetre}}
		lattice := pattern.Straight(sixSun, sixSun)
		before, err := Dress(bolt, run, lattice, g, geom.Millimetre)
		if err != nil {
			t.Fatal(err)
		}
		c := ClearTurn(run, before)
		if !c.Found {
			if len(c.Over) > 0 && before.Used+2*board.Length < before.Length && len(run.Turns) == 1 {
				t.Errorf("room for anything, yet not cleared: %+v", c)
			}
			continue
		}
		cleared++
		board.Start, g.Layout.Gaps = c.Start, map[string]geom.Length{}
		for _, name := range c.Before {
			g.Layout.Gaps[name] = c.Gap
		}
		run = mustLay(t, bolt, board, Register{}, sixSun)
		after, err := Dress(bolt, run, lattice, g, geom.Millimetre)
		if err != nil {
			t.Fatal(err)
		}
		if left := ClearTurn(run, after); len(left.Over) != 0 {
			t.Fatalf("%v lie over the turn %v still; told %+v", left.Over, run.Turns, c)
		}
		grown := after.Start + after.Used - before.Start - before.Used
		if grown > c.Extra+2*geom.Nanometre || grown < 0 || after.Used > after.Length {
			t.Fatalf("%s mm more used, %s told", grown, c.Extra)
		}
	}
	if cleared < 50 {
		t.Errorf("only %d of 200 were cleared", cleared)
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
