package ui

import (
	"slices"
	"testing"

	"tsugime/repeat/check"
	"tsugime/repeat/cloth"
	"tsugime/repeat/document"
	"tsugime/repeat/geom"
	"tsugime/repeat/repeattest"
	"tsugime/ui/board"
)

// atBolt opens the bolt of the small dots, changed by an edit.
func atBolt(t *testing.T, change func(o *document.Order)) (*Window, *boltStation) {
	t.Helper()
	w := onBench(t, "small-dot")
	w.Edit("Change", func(o document.Order) (document.Order, error) {
		change(&o)
		return document.SetBoard(o, o.Board)
	})
	settle(t, w)
	w.GoTo(boltAt)
	return w, w.boltStation()
}

// Whatever is shown, every place of the first cloth has one place in the picture,
// and leads back from there.
func TestAPlaceOfTheBoltIsFoundInThePictureAndBack(t *testing.T) {
	w, s := atBolt(t, func(o *document.Order) {})
	for _, change := range []func(b *cloth.Board){
		func(*cloth.Board) {},
		func(b *cloth.Board) { b.Layings = 3 },
		func(b *cloth.Board) { b.Faces = 1 },
		func(b *cloth.Board) { b.Cloths, b.Layings = 3, 2 },
	} {
		w.Edit("Change", func(o document.Order) (document.Order, error) {
			change(&o.Board)
			return document.SetBoard(o, o.Board)
		})
		settle(t, w)
		for range 2 {
			s.showNext()
			l, r := s.laid(), w.work.Run
			for y := geom.Length(0); y < r.Bolt.Length; y += 173 * geom.Millimetre {
				p := geom.Point{X: 100 * geom.Millimetre, Y: y}
				at, part, ok := l.back(l.put(r, p))
				if !ok || at != p || r.Stretches[part.stretch].Cloth != 0 {
					t.Fatalf("%+v, by the board %v: %v leads to %v of stretch %d", r.Board, s.byBoard, p, at, part.stretch)
				}
			}
		}
	}
}

// On the board each stretch is whole: its pieces join without a gap, each on a
// length of the board.
func TestTheBoardHoldsEveryClothWhole(t *testing.T) {
	w, _ := atBolt(t, func(o *document.Order) {
		o.Board.Cloths, o.Board.Layings, o.Cloth.Bolt.Length = 3, 2, 6*geom.Metre
	})
	r := w.work.Run
	ends := map[int]geom.Length{}
	for _, c := range onBoard(r).columns {
		for _, p := range c.pieces {
			if at, ok := ends[p.stretch]; ok && at != p.from {
				t.Errorf("stretch %d goes on at %v after %v", p.stretch, p.from, at)
			}
			ends[p.stretch] = p.to
			if b := p.box(r.Bolt.Width); b.Min.Y < c.box.Min.Y || b.Max.Y > c.box.Max.Y {
				t.Errorf("%v hangs over %s %v", b, c.title, c.box)
			}
		}
	}
	for i, st := range r.Stretches {
		if ends[i] != st.Cover.To {
			t.Errorf("stretch %d is shown to %v of %v", i, ends[i], st.Cover.To)
		}
	}
}

// Without an edge line the bolt walks; one command lays it to a line, in one edit,
// and the walk is gone.
func TestTheWalkGoesWithTheRemedyThatHelpsMost(t *testing.T) {
	w, _ := atBolt(t, func(o *document.Order) { o.Register.Way = cloth.StarToStar })
	before := w.work.Run.Drift.EndX
	if before < 10*geom.Millimetre {
		t.Fatalf("by stars alone the end walks %v", before)
	}
	w.takeBest()
	settle(t, w)
	if after := w.work.Run.Drift.EndX; after > before/100 {
		t.Errorf("the end walked %v, now %v", before, after)
	}
	w.Undo()
	settle(t, w)
	if got := w.work.Run.Drift.EndX; got != before {
		t.Errorf("undone, the end walks %v, not %v", got, before)
	}
}

// Each gain that is offered as a button is an edit that brings what it says.
func TestWhatIsOfferedGainsWhatItSays(t *testing.T) {
	w, _ := atBolt(t, func(o *document.Order) {
		o.Register.Way, o.Register.Growth = cloth.StarToStar, cloth.Growth{End: -0.002}
	})
	start, taken := w.work.Run, 0
	for _, g := range cloth.Gains(start) {
		if !document.Takeable(g.Remedy) {
			continue
		}
		taken++
		w.takeRemedy(g)
		settle(t, w)
		d := w.work.Run.Drift
		if d.WorstJoint != g.JointAfter || d.End() != g.EndAfter {
			t.Errorf("%s: worst joint %v, end %v; told %v and %v", g.Remedy, d.WorstJoint, d.End(), g.JointAfter, g.EndAfter)
		}
		w.Undo()
		settle(t, w)
	}
	if taken < 3 {
		t.Errorf("only %d could be taken", taken)
	}
}

func TestTenThousandBoltsReplaceTheFew(t *testing.T) {
	w, s := atBolt(t, func(o *document.Order) { o.Register.Sheets = 2 })
	if n := s.laidByChance().bolts.Bolts; n != cloth.SimulatedBolts {
		t.Fatalf("%d bolts at first", n)
	}
	w.layManyBolts()
	settleTask(t, w)
	c := s.laidByChance()
	if c.bolts.Bolts != manyBolts || c.set.Bolts != manyBolts {
		t.Errorf("%d bolts, %d sets", c.bolts.Bolts, c.set.Bolts)
	}
	w.takeBest()
	settle(t, w)
	if n := s.laidByChance().bolts.Bolts; n != cloth.SimulatedBolts {
		t.Errorf("another order still goes by %d bolts", n)
	}
}

// Where panels lie over the turn, one edit clears it, or the window says how much
// cloth is lacking and leaves the order.
func TestTheTurnIsClearedOrClothIsLacking(t *testing.T) {
	cleared := 0
	for i := range 6 {
		w, _ := atBolt(t, func(o *document.Order) {
			o.Garment = document.Garment{Body: cloth.Body{Kind: cloth.WomensKimono, Height: 1600 * geom.Millimetre}}
			o.Cloth.Bolt.Length, o.Board.Start = 17*geom.Metre, 0
			o.Board.Length = 8600*geom.Millimetre + geom.Length(i)*400*geom.Millimetre
		})
		c := cloth.ClearTurn(w.work.Run, w.work.Dressed)
		if len(c.Over) == 0 {
			continue
		}
		before := written(t, w.Order())
		w.clearTurn()
		settle(t, w)
		if !c.Found {
			if written(t, w.Order()) != before {
				t.Error("not to be cleared, yet the order has changed")
			}
			continue
		}
		if left := cloth.ClearTurn(w.work.Run, w.work.Dressed).Over; len(left) > 0 {
			t.Errorf("%v still lie over the turn", left)
		}
		cleared++
	}
	if cleared == 0 {
		t.Error("nothing was cleared")
	}
}

// A finding of the bolt is ringed at its place, until the order is another.
func TestAFindingLeadsToItsPlace(t *testing.T) {
	w, s := atBolt(t, func(o *document.Order) { o.Register.Way = cloth.StarToStar })
	i := slices.IndexFunc(w.work.Findings, func(f check.Finding) bool { return f.Code == "drift-walk" })
	if i < 0 {
		t.Fatal("no finding about the walk")
	}
	s.look(w.work.Findings[i])
	ringed := func() bool {
		return slices.ContainsFunc(s.scene().Marks, func(m board.Mark) bool { return m.Shape == board.Ring })
	}
	at, _, ok := s.laid().back(s.placeOf(s.laid()))
	if !ok || at.Y != w.work.Findings[i].At.Y || !ringed() {
		t.Errorf("the place shown is %v, not %v", at, w.work.Findings[i].At)
	}
	w.takeBest()
	settle(t, w)
	if ringed() {
		t.Error("a place of the order before is still ringed")
	}
}

// Every other placement laid first, both sides, selvedges, waste at both ends, the
// last one in part: as the board and in lengths.
func TestTheBoltAsItIsLaid(t *testing.T) {
	w, s := atBolt(t, func(o *document.Order) {
		o.Board.Sequence, o.Board.Start, o.Board.End = cloth.EveryOther, 200*geom.Millimetre, 150*geom.Millimetre
		o.Cloth.Bolt.Sides, o.Cloth.Bolt.Selvedge = cloth.BothSides, 6*geom.Millimetre
		o.Register.Way = cloth.StarToStar
	})
	repeattest.GoldenPNG(t, "bolt-lengths.png", w.win.Canvas().Capture())
	s.showNext()
	repeattest.GoldenPNG(t, "bolt-board.png", w.win.Canvas().Capture())
}
