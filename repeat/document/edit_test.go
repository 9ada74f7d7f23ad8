package document_test

import (
	"math"
	"math/rand/v2"
	"reflect"
	"strings"
	"testing"

	"tsugime/repeat/bench"
	"tsugime/repeat/cloth"
	"tsugime/repeat/document"
	"tsugime/repeat/geom"
	"tsugime/repeat/pattern"
	"tsugime/repeat/stencil"
)

// edit is one edit with its name for the failure.
type edit struct {
	name string
	do   func(document.Order) (document.Order, error)
}

// tieAcross is a tie that goes with a motif.
func tieAcross(id pattern.ID) stencil.Tie {
	return stencil.Tie{Motif: id, From: geom.PtMM(3, 3), To: geom.PtMM(5, 4), Width: geom.MM(0.5)}
}

// goodEdits change the full order; badEdits make no sense.
func goodEdits() []edit {
	mm := geom.MM
	dot := pattern.Motif{Shape: geom.DiscShape(geom.Point{}, mm(1)), At: geom.PtMM(2, 2)}
	return []edit{
		{"title", func(o document.Order) (document.Order, error) { return document.SetTitle(o, "Rain") }},
		{"note", func(o document.Order) (document.Order, error) { return document.SetNote(o, "two lines\nof note") }},
		{"step", func(o document.Order) (document.Order, error) { return document.SetStep(o, mm(200)) }},
		{"field", func(o document.Order) (document.Order, error) {
			return document.SetField(o, stencil.Field{Left: mm(10), Width: mm(350)})
		}},
		{"paper", func(o document.Order) (document.Order, error) {
			return document.SetPaper(o, stencil.Paper{Width: mm(400), Height: mm(280), Thickness: mm(0.3), Pile: 2})
		}},
		{"stars", func(o document.Order) (document.Order, error) {
			return document.SetStars(o, stencil.StarSpec{PerEnd: 4, Diameter: mm(0.8), Hidden: mm(8)})
		}},
		{"cloth", func(o document.Order) (document.Order, error) {
			return document.SetCloth(o, document.Cloth{Bolt: cloth.Bolt{Width: mm(400), Length: mm(13_000), Selvedge: mm(6), Sides: cloth.BothSides}})
		}},
		{"board", func(o document.Order) (document.Order, error) {
			return document.SetBoard(o, cloth.Board{Length: mm(6500), Faces: 1, Cloths: 2, Layings: 2, Sequence: cloth.EveryOther})
		}},
		{"register", func(o document.Order) (document.Order, error) {
			return document.SetRegister(o, document.Register{Way: cloth.StarToStar, StarError: mm(0.2), Sheets: 3})
		}},
		{"garment", func(o document.Order) (document.Order, error) {
			return document.SetGarment(o, document.Garment{Body: cloth.Body{Kind: cloth.WomensKimono, Height: mm(1500)}})
		}},
		{"body", func(o document.Order) (document.Order, error) {
			return document.SetBody(o, cloth.Body{Kind: cloth.WomensKimono, Height: mm(1700)})
		}},
		{"rack", func(o document.Order) (document.Order, error) {
			return document.SetRack(o, []document.Punch{{Name: "only", Diameter: mm(2)}})
		}},
		{"method", func(o document.Order) (document.Order, error) { return document.SetMethod(o, bench.Tsukibori, 1) }},
		{"limits", func(o document.Order) (document.Order, error) {
			return document.SetLimits(o, document.Limits{Hole: mm(0.5), Misfit: mm(0.2), MostMisfit: mm(0.4), Look: mm(500)}, mm(0.6))
		}},
		{"sheets", func(o document.Order) (document.Order, error) {
			return document.SetSheets(o, document.Sheets{Page: "A3", Units: "mm", Lap: mm(5), Language: "ja"})
		}},
		{"page", func(o document.Order) (document.Order, error) { return document.SetPage(o, "letter") }},
		{"lattice", func(o document.Order) (document.Order, error) {
			return document.SetLattice(o, pattern.Straight(mm(15), mm(15)))
		}},
		{"group", func(o document.Order) (document.Order, error) { return document.SetGroup(o, pattern.P2) }},
		{"ground", func(o document.Order) (document.Order, error) {
			g, _ := pattern.GroundNamed("row-dots")
			return document.LayGround(o, g.Recipe())
		}},
		{"joint", func(o document.Order) (document.Order, error) {
			return document.SetJoint(o, stencil.JointSpec{Share: 0.5})
		}},
		{"hold", func(o document.Order) (document.Order, error) {
			return document.SetHold(o, document.Defaults().Sheet.Hold)
		}},
		{"add ties", func(o document.Order) (document.Order, error) { return document.AddTies(o, false, tieAcross(1)) }},
		{"set tie", func(o document.Order) (document.Order, error) { return document.SetTie(o, true, 0, tieAcross(3)) }},
		{"delete ties", func(o document.Order) (document.Order, error) { return document.DeleteTies(o, false, 1) }},
		{"put on the shelf", func(o document.Order) (document.Order, error) {
			return document.PutOnShelf(o, document.ShelfMotif{Name: o.FreeShelfName("leaf"), Shape: dot.Shape})
		}},
		{"take from the shelf", func(o document.Order) (document.Order, error) {
			return document.TakeFromShelf(o, "leaf", geom.PtMM(3, 4))
		}},
		{"rename on the shelf", func(o document.Order) (document.Order, error) {
			return document.RenameOnShelf(o, "dot", "drop")
		}},
		{"delete from the shelf", func(o document.Order) (document.Order, error) { return document.DeleteFromShelf(o, "leaf") }},
		{"add", func(o document.Order) (document.Order, error) { return document.AddMotif(o, dot) }},
		{"delete", func(o document.Order) (document.Order, error) { return document.DeleteMotifs(o, 1) }},
		{"move", func(o document.Order) (document.Order, error) {
			return document.MoveMotifs(o, geom.PtMM(1, 1), 1, 3)
		}},
		{"turn", func(o document.Order) (document.Order, error) { return document.TurnMotif(o, 1, 15) }},
		{"mirror", func(o document.Order) (document.Order, error) { return document.MirrorMotif(o, 1) }},
		{"resize", func(o document.Order) (document.Order, error) { return document.ResizeDiscs(o, mm(2), 3) }},
		{"redraw", func(o document.Order) (document.Order, error) {
			return document.Redraw(o, 1, geom.DiscShape(geom.Point{}, mm(3)))
		}},
	}
}

func badEdits() []edit {
	mm := geom.MM
	return []edit{
		{"group", func(o document.Order) (document.Order, error) { return document.SetGroup(o, pattern.P6MM) }},
		{"ground", func(o document.Order) (document.Order, error) {
			return document.LayGround(o, pattern.Recipe{Ground: "no-such"})
		}},
		{"set tie", func(o document.Order) (document.Order, error) { return document.SetTie(o, false, 2, tieAcross(1)) }},
		{"add ties", func(o document.Order) (document.Order, error) { return document.AddTies(o, false, tieAcross(2)) }},
		{"delete ties", func(o document.Order) (document.Order, error) { return document.DeleteTies(o, true, -1) }},
		{"joint", func(o document.Order) (document.Order, error) {
			return document.SetJoint(o, stencil.JointSpec{Share: 1.1})
		}},
		{"put on the shelf", func(o document.Order) (document.Order, error) {
			return document.PutOnShelf(o, document.ShelfMotif{Name: "leaf", Shape: geom.DiscShape(geom.Point{}, mm(1))})
		}},
		{"put on the shelf", func(o document.Order) (document.Order, error) {
			return document.PutOnShelf(o, document.ShelfMotif{Name: "off", Shape: geom.DiscShape(geom.PtMM(1, 1), mm(1))})
		}},
		{"take from the shelf", func(o document.Order) (document.Order, error) {
			return document.TakeFromShelf(o, "no such", geom.Point{})
		}},
		{"rename on the shelf", func(o document.Order) (document.Order, error) {
			return document.RenameOnShelf(o, "dot", "leaf")
		}},
		{"rename on the shelf", func(o document.Order) (document.Order, error) { return document.RenameOnShelf(o, "dot", " ") }},
		{"delete from the shelf", func(o document.Order) (document.Order, error) {
			return document.DeleteFromShelf(o, "no such")
		}},
		{"title", func(o document.Order) (document.Order, error) { return document.SetTitle(o, strings.Repeat("x", 201)) }},
		{"title", func(o document.Order) (document.Order, error) { return document.SetTitle(o, "a\xff") }},
		{"note", func(o document.Order) (document.Order, error) { return document.SetNote(o, "a\x00") }},
		{"step", func(o document.Order) (document.Order, error) { return document.SetStep(o, 0) }},
		{"field", func(o document.Order) (document.Order, error) { return document.SetField(o, stencil.Field{}) }},
		{"paper", func(o document.Order) (document.Order, error) { return document.SetPaper(o, stencil.Paper{}) }},
		{"stars", func(o document.Order) (document.Order, error) {
			return document.SetStars(o, stencil.StarSpec{PerEnd: 5, Diameter: mm(1)})
		}},
		{"cloth", func(o document.Order) (document.Order, error) {
			c := o.Cloth
			c.Bolt.ChangeAlong = math.NaN()
			return document.SetCloth(o, c)
		}},
		{"board", func(o document.Order) (document.Order, error) {
			return document.SetBoard(o, cloth.Board{Length: mm(6400), Start: mm(20_000)})
		}},
		{"register", func(o document.Order) (document.Order, error) { return document.SetRegister(o, document.Register{}) }},
		{"body", func(o document.Order) (document.Order, error) { return document.SetBody(o, cloth.Body{Kind: "coat"}) }},
		{"limits", func(o document.Order) (document.Order, error) {
			return document.SetLimits(o, document.Limits{}, mm(-1))
		}},
		{"page", func(o document.Order) (document.Order, error) { return document.SetPage(o, "a4") }},
		{"lattice", func(o document.Order) (document.Order, error) { return document.SetLattice(o, pattern.Lattice{}) }},
		{"add", func(o document.Order) (document.Order, error) { return document.AddMotif(o, pattern.Motif{}) }},
		{"add", func(o document.Order) (document.Order, error) {
			return document.AddMotif(o, pattern.Motif{Shape: geom.DiscShape(geom.PtMM(1, 0), mm(1))})
		}},
		{"delete", func(o document.Order) (document.Order, error) { return document.DeleteMotifs(o, 2) }},
		{"move", func(o document.Order) (document.Order, error) { return document.MoveMotif(o, 1, geom.PtMM(9000, 0)) }},
		{"turn", func(o document.Order) (document.Order, error) { return document.TurnMotif(o, 1, math.Inf(1)) }},
		{"resize", func(o document.Order) (document.Order, error) { return document.ResizeDiscs(o, mm(2), 1) }},
		{"redraw", func(o document.Order) (document.Order, error) { return document.Redraw(o, 1, geom.Shape{}) }},
	}
}

func TestAnEditLeavesTheOrderBeforeAsItWas(t *testing.T) {
	for _, e := range goodEdits() {
		before := full(t)
		after, err := e.do(before)
		if err != nil {
			t.Errorf("%s: %v", e.name, err)
			continue
		}
		if want := full(t); !reflect.DeepEqual(before, want) {
			t.Errorf("%s: the order before became\n%+v\nit was\n%+v", e.name, before, want)
		}
		if reflect.DeepEqual(after, before) {
			t.Errorf("%s changes nothing", e.name)
		}
		if back := read(t, written(t, after)); !reflect.DeepEqual(back, after) {
			t.Errorf("%s: from its file it is\n%+v\nwant\n%+v", e.name, back, after)
		}
	}
}

func TestAnEditThatMakesNoSenseIsRefused(t *testing.T) {
	for _, e := range badEdits() {
		before := full(t)
		after, err := e.do(before)
		if err == nil {
			t.Errorf("%s is done", e.name)
		}
		if want := full(t); !reflect.DeepEqual(after, want) || !reflect.DeepEqual(before, want) {
			t.Errorf("%s: refused, yet the order is\n%+v", e.name, after)
		}
	}
}

// Appending to the motifs of an order must not reach into another that shares
// them.
func TestTwoFuturesOfAnOrderShareNothingTheyWrite(t *testing.T) {
	base, err := document.DeleteMotifs(ground(t, 50), 50)
	if err != nil {
		t.Fatal(err)
	}
	dot := pattern.Motif{Shape: geom.DiscShape(geom.Point{}, geom.MM(1))}
	left, err := document.AddMotif(base, dot)
	if err != nil {
		t.Fatal(err)
	}
	dot.Shape.Disc.Diameter = geom.MM(2)
	right, err := document.AddMotif(base, dot)
	if err != nil {
		t.Fatal(err)
	}
	a, _ := left.Motif(51)
	b, _ := right.Motif(51)
	if a.Shape.Disc.Diameter != geom.MM(1) || b.Shape.Disc.Diameter != geom.MM(2) {
		t.Errorf("the two have %s and %s mm, want 1 and 2", a.Shape.Disc.Diameter, b.Shape.Disc.Diameter)
	}
}

func TestIDsAreNeverUsedAgain(t *testing.T) {
	o := full(t)
	next := o.NextID
	dot := pattern.Motif{ID: 1, Shape: geom.DiscShape(geom.Point{}, geom.MM(1))}
	o, err := document.AddMotif(o, dot)
	if err != nil {
		t.Fatal(err)
	}
	if _, ok := o.Motif(next); !ok {
		t.Errorf("motif %d is not there: %+v", next, o.Unit.Motifs)
	}
	if o, err = document.DeleteMotifs(o, next); err != nil {
		t.Fatal(err)
	}
	if o, err = document.AddMotif(o, dot); err != nil {
		t.Fatal(err)
	}
	if _, ok := o.Motif(next); ok || o.NextID != next+2 {
		t.Errorf("after a delete the ID %d came back; next is %d", next, o.NextID)
	}
}

// On what stands on the cloth: mirrored twice, and turned there and back, each
// motif covers what it did; mirrored once, it covers the mirror image.
func TestMirrorAndTurnLaws(t *testing.T) {
	random := rand.New(rand.NewPCG(5, 8))
	for range 200 {
		o, err := document.TurnMotif(full(t), 1, float64(random.IntN(3600))/10)
		if err != nil {
			t.Fatal(err)
		}
		was, _ := o.Motif(1)
		once, err := document.MirrorMotif(o, 1)
		if err != nil {
			t.Fatal(err)
		}
		twice, err := document.MirrorMotif(once, 1)
		if err != nil {
			t.Fatal(err)
		}
		if m, _ := twice.Motif(1); !reflect.DeepEqual(m, was) {
			t.Fatalf("mirrored twice %+v became %+v", was, m)
		}
		flipped, _ := once.Motif(1)
		image := was.Placed().Moved(was.At.Neg()).Placed(geom.Scale(-1, 1)).Moved(was.At)
		if got, want := flipped.Placed().Bounds(), image.Bounds(); !near(got, want) {
			t.Fatalf("turned %g°: the mirror image reaches %v, want %v", was.TurnDeg, got, want)
		}
		degrees := random.Float64()*720 - 360
		there, err := document.TurnMotif(o, 1, degrees)
		if err != nil {
			t.Fatal(err)
		}
		back, err := document.TurnMotif(there, 1, -degrees)
		if err != nil {
			t.Fatal(err)
		}
		if m, _ := back.Motif(1); !near(m.Placed().Bounds(), was.Placed().Bounds()) {
			t.Fatalf("turned by %g° and back %v became %v", degrees, was.Placed().Bounds(), m.Placed().Bounds())
		}
	}
}

// near allows two roundings to the grid.
func near(a, b geom.Box) bool {
	d := func(p, q geom.Point) bool { w := p.Sub(q); return max(w.X.Abs(), w.Y.Abs()) <= 3 }
	return d(a.Min, b.Min) && d(a.Max, b.Max)
}

func TestAFitMakesTheStepALatticeVector(t *testing.T) {
	o := full(t)
	o, err := document.SetLattice(o, pattern.HalfDrop(geom.MM(21.3), geom.MM(17.7)))
	if err != nil {
		t.Fatal(err)
	}
	fits, err := o.Fits(document.FitWish{Step: o.Sheet.Step})
	if err != nil || len(fits) == 0 {
		t.Fatalf("%d fits, %v", len(fits), err)
	}
	for _, f := range fits {
		after, err := document.ApplyFit(o, f)
		if err != nil {
			t.Fatal(err)
		}
		if !after.Unit.Lattice.Holds(geom.Point{Y: after.Sheet.Step}) {
			t.Errorf("after fit %d, %d the step %s is no place of %v", f.M, f.N, after.Sheet.Step, after.Unit.Lattice)
		}
		if len(after.Unit.Motifs) != len(o.Unit.Motifs) || after.NextID != o.NextID {
			t.Errorf("the fit changed the motifs: %+v", after.Unit.Motifs)
		}
	}
}

// A turned and mirrored motif that is reshaped to what it looks like looks the same.
func TestAReshapedMotifStandsAsItWasDrawn(t *testing.T) {
	o := full(t)
	id := o.Unit.Motifs[0].ID
	outline, err := geom.ParsePathData("M0 0H2V1Z")
	if err != nil {
		t.Fatal(err)
	}
	for _, edit := range []func(document.Order) (document.Order, error){
		func(o document.Order) (document.Order, error) {
			return document.Redraw(o, id, geom.Shape{Outline: outline})
		},
		func(o document.Order) (document.Order, error) { return document.TurnMotif(o, id, 30) },
		func(o document.Order) (document.Order, error) { return document.MirrorMotif(o, id) },
	} {
		if o, err = edit(o); err != nil {
			t.Fatal(err)
		}
	}
	before, _ := o.Motif(id)
	drawn := before
	drawn.At = geom.Point{}
	next, err := document.Reshape(o, id, drawn.Placed())
	if err != nil {
		t.Fatal(err)
	}
	after, _ := next.Motif(id)
	if after.TurnDeg != 0 || after.Mirrored || !reflect.DeepEqual(after.Placed(), before.Placed()) {
		t.Errorf("it became %+v, was %+v", after.Placed(), before.Placed())
	}
	if _, err := document.Reshape(o, id, geom.Shape{Outline: geom.Outline{}}); err == nil {
		t.Error("a shape of nothing was taken")
	}
}
