package document_test

import (
	"math"
	"math/rand/v2"
	"testing"

	"tsugime/repeat/document"
	"tsugime/repeat/geom"
	"tsugime/repeat/pattern"
	"tsugime/repeat/stencil"
)

// grouped is an order of one leaning motif that a group multiplies.
func grouped(t *testing.T, g pattern.Group, l pattern.Lattice) document.Order {
	t.Helper()
	shape, err := geom.ParsePathData("M0 0L2 0L0.5 1Z")
	if err != nil {
		t.Fatal(err)
	}
	o := document.Defaults()
	o.Unit.Lattice = l
	if o, err = document.AddMotif(o, pattern.Motif{Shape: geom.Shape{Outline: shape}, At: geom.PtMM(2, 1)}); err != nil {
		t.Fatal(err)
	}
	if o, err = document.SetGroup(o, g); err != nil {
		t.Fatal(err)
	}
	return o
}

func TestAMotifIsDrawnOnceAndMultiplied(t *testing.T) {
	square := pattern.Straight(geom.MM(20), geom.MM(20))
	o := grouped(t, pattern.P4MM, square)
	if n := len(o.Design().Motifs); n != 8 || len(o.Unit.Motifs) != 1 {
		t.Fatalf("%d motifs in the design of %d drawn, want 8 of 1", n, len(o.Unit.Motifs))
	}
	r, err := pattern.Recognise(o.Design())
	if err != nil || r.Group != pattern.P4MM {
		t.Errorf("the design has the group %s, %v", r.Group, err)
	}
	if _, err := document.SetGroup(o, pattern.P6); err == nil {
		t.Error("a square lattice takes the group p6")
	}
	back := read(t, written(t, o))
	if back.Group != pattern.P4MM || len(back.Design().Motifs) != 8 {
		t.Errorf("from its file the group is %s", back.Group)
	}
	out, err := document.WriteOut(o)
	if err != nil || out.Group != pattern.P1 || len(out.Unit.Motifs) != 8 || out.NextID != 9 {
		t.Errorf("written out: group %s, %d motifs, next ID %d, %v", out.Group, len(out.Unit.Motifs), out.NextID, err)
	}
}

// A lattice that the group doesn't go with keeps the pattern: its copies become
// motifs of their own.
func TestALatticeThatLeavesTheGroupLosesNoMotif(t *testing.T) {
	o := grouped(t, pattern.P4, pattern.Straight(geom.MM(20), geom.MM(20)))
	same, err := document.SetLattice(o, pattern.Straight(geom.MM(22), geom.MM(22)))
	if err != nil || same.Group != pattern.P4 || len(same.Unit.Motifs) != 1 {
		t.Errorf("a larger square: group %s, %d motifs, %v", same.Group, len(same.Unit.Motifs), err)
	}
	other, err := document.SetLattice(o, pattern.Straight(geom.MM(22), geom.MM(20)))
	if err != nil || other.Group != pattern.P1 || len(other.Unit.Motifs) != 4 {
		t.Errorf("an oblong: group %s, %d motifs, %v", other.Group, len(other.Unit.Motifs), err)
	}
}

// Ties on copies go with them: seen from the copy's own frame they stay.
func TestTiesOnCopiesGoWithThem(t *testing.T) {
	random := rand.New(rand.NewPCG(4, 4))
	o := grouped(t, pattern.P2GG, pattern.Straight(geom.MM(20), geom.MM(26)))
	var ties []stencil.Tie
	own := map[pattern.ID]geom.Point{}
	for _, m := range o.Design().Motifs {
		from := m.Placing().Apply(geom.PtMM(1, -0.5))
		ties = append(ties, stencil.Tie{Motif: m.ID, From: from, To: m.Placing().Apply(geom.PtMM(1, 1)), Width: geom.MM(0.5)})
		own[m.ID] = geom.PtMM(1, -0.5)
	}
	o, err := document.AddTies(o, false, ties...)
	if err != nil {
		t.Fatal(err)
	}
	for range 20 {
		by := geom.Point{X: geom.Length(random.IntN(3_000_000)), Y: geom.Length(random.IntN(3_000_000))}
		if o, err = document.MoveMotif(o, 1, by); err != nil {
			t.Fatal(err)
		}
		if o, err = document.TurnMotif(o, 1, float64(random.IntN(360))); err != nil {
			t.Fatal(err)
		}
	}
	at := map[pattern.ID]pattern.Motif{}
	for _, m := range o.Design().Motifs {
		at[m.ID] = m
	}
	for _, tie := range o.Sheet.Hold.Ties {
		m := at[tie.Motif]
		want := m.Placing().Apply(own[tie.Motif])
		if _, _, rest := o.Unit.Lattice.Nearest(tie.From.Sub(want)); math.Hypot(rest.X.MM(), rest.Y.MM()) > 1e-4 {
			t.Errorf("the tie on copy %d is off its motif by %v", tie.Motif, rest)
		}
	}
}

func TestAGroundIsLaidForTheStepAndKeepsItsRecipe(t *testing.T) {
	for _, g := range pattern.Grounds() {
		o, err := document.LayGround(document.Defaults(), g.Recipe())
		if err != nil {
			t.Errorf("%s: %v", g.Name, err)
			continue
		}
		if step := (geom.Point{Y: o.Sheet.Step}); !o.Unit.Lattice.Holds(step) || len(o.Unit.Motifs) == 0 {
			t.Errorf("%s: %d motifs, and the step is no place of %v", g.Name, len(o.Unit.Motifs), o.Unit.Lattice)
		}
		if back := read(t, written(t, o)); back.Ground.Ground != g.Name || back.Ground.Seed != o.Ground.Seed {
			t.Errorf("%s: from its file the recipe is %+v", g.Name, back.Ground)
		}
	}
}
