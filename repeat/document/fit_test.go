package document_test

import (
	"math"
	"testing"

	"tsugime/repeat/document"
	"tsugime/repeat/geom"
	"tsugime/repeat/pattern"
)

// laidFor is an order with a ground of its table.
func laidFor(t *testing.T, name string, width geom.Length) document.Order {
	t.Helper()
	o, err := document.LayGround(document.Defaults(), pattern.Recipe{Ground: name, Width: width})
	if err != nil {
		t.Fatal(err)
	}
	return o
}

func TestAGroundIsLaidAgainInItsWidth(t *testing.T) {
	o := laidFor(t, "diagonal-dots", geom.MM(356))
	o = read(t, written(t, o))
	r, err := o.Ground.With("dot", "0.45")
	if err != nil {
		t.Fatal(err)
	}
	again, err := document.LayGround(o, r)
	if err != nil {
		t.Fatal(err)
	}
	if again.Unit.Lattice != o.Unit.Lattice || !again.Unit.Lattice.Holds(geom.Point{X: geom.MM(356)}) {
		t.Errorf("laid on %v, again on %v", o.Unit.Lattice, again.Unit.Lattice)
	}
}

// A fit and then another dot size is the fit with that dot size: through a file,
// with the width between the back seams.
func TestLayingAgainKeepsAFit(t *testing.T) {
	for _, name := range []string{"row-dots", "diagonal-dots", "arc-dots", "hemp-leaf", "even-stripes", "scattered-dots"} {
		o := laidFor(t, name, 0)
		fits, err := o.Fits(document.FitWish{Step: o.Sheet.Step + geom.MM(0.7), Seam: true})
		if err != nil || len(fits) == 0 {
			t.Fatalf("%s: %d fits, %v", name, len(fits), err)
		}
		if !fits[0].KeepsGround {
			t.Errorf("%s: the fit that strains least loses the ground", name)
			continue
		}
		fitted, err := document.ApplyFit(o, fits[0])
		if err != nil {
			t.Fatal(err)
		}
		fitted = read(t, written(t, fitted))
		again, err := document.LayGround(fitted, fitted.Ground)
		if err != nil {
			t.Fatal(err)
		}
		step, width := geom.Point{Y: fits[0].Step}, geom.Point{X: fits[0].Width}
		if again.Sheet.Step != fits[0].Step || !again.Unit.Lattice.Holds(step) || !again.Unit.Lattice.Holds(width) ||
			!again.Unit.Lattice.Holds(fitted.Unit.Lattice.A) || !again.Unit.Lattice.Holds(fitted.Unit.Lattice.B) {
			t.Errorf("%s: fitted to %v, laid again on %v", name, fitted.Unit.Lattice, again.Unit.Lattice)
		}
	}
}

// A fit that leans the columns is no ground's any more. It is offered where a motif
// was moved by hand, so that tiles can't be laid again.
func TestAFitThatLeansEndsTheRecipe(t *testing.T) {
	o := laidFor(t, "row-dots", 0)
	o, err := document.MoveMotif(o, 1, geom.PtMM(0.1, 0))
	if err != nil {
		t.Fatal(err)
	}
	fits, err := o.Fits(document.FitWish{Step: o.Sheet.Step})
	if err != nil {
		t.Fatal(err)
	}
	leaning := 0
	for _, f := range fits {
		next, err := document.ApplyFit(o, f)
		if err != nil {
			t.Fatal(err)
		}
		if f.M != 0 {
			leaning++
		}
		if kept := next.Ground.Ground != ""; kept != f.KeepsGround || kept != (f.M == 0) {
			t.Errorf("%d·A %+d·B: the recipe is %+v", f.M, f.N, next.Ground)
		}
	}
	if leaning == 0 {
		t.Error("none of the fits leans")
	}
}

// A unit of five tiles meets 150 mm with four of them, 3 % longer, and not as a
// whole, which would be squeezed by 17.5 %.
func TestAGroundIsFittedTileByTile(t *testing.T) {
	r := pattern.Recipe{Ground: "hemp-leaf", Values: map[string]float64{"side": 20.994555}, Width: document.Defaults().SeamWidth()}
	o, err := document.SetStep(document.Defaults(), geom.Length(181_818_182)) // five don't divide it
	if err == nil {
		o, err = document.LayGround(o, r)
	}
	if err != nil {
		t.Fatal(err)
	}
	wish := document.FitWish{Step: geom.MM(150), Seam: true}
	fits, err := o.Fits(wish)
	if err != nil || len(fits) == 0 {
		t.Fatalf("%d fits, %v", len(fits), err)
	}
	if f := fits[0]; math.Abs(f.Strain.Y-0.03125) > 1e-4 || f.N != 4 || !f.KeepsGround || math.Abs(f.Bent-(20.944742/(37.5/math.Sqrt(3))-1)) > 1e-6 || f.SeamOff > geom.Micrometre {
		t.Errorf("the first fit is %+v", f)
	}
	next, err := document.ApplyFit(o, fits[0])
	if err != nil {
		t.Fatal(err)
	}
	if next.Sheet.Step != geom.MM(150) || !next.Unit.Lattice.Holds(geom.Point{Y: geom.MM(150)}) || next.Ground.Rows != 4 {
		t.Errorf("step %s, lattice %v, recipe %+v", next.Sheet.Step, next.Unit.Lattice, next.Ground)
	}
	// A motif moved by hand would be lost: then the unit is fitted as it is.
	moved, err := document.MoveMotif(o, o.Unit.Motifs[3].ID, geom.PtMM(0.1, 0))
	if err != nil {
		t.Fatal(err)
	}
	if fits, err = moved.Fits(wish); err != nil || fits[0].N != 1 {
		t.Errorf("with a motif moved: %+v, %v", fits[0], err)
	}
}

// With both, the seams are met to a micrometre and the width is told how far off.
func TestFitsMeetTheSeamsAndTellTheWidth(t *testing.T) {
	o := laidFor(t, "diagonal-dots", 0)
	fits, err := o.Fits(document.FitWish{Step: geom.MM(180), Width: geom.MM(350), Seam: true})
	if err != nil || len(fits) == 0 {
		t.Fatalf("%d fits, %v", len(fits), err)
	}
	for _, f := range fits {
		if f.SeamOff > geom.Micrometre || (f.Width-o.SeamWidth()).Abs() > geom.Micrometre {
			t.Errorf("%d·A %+d·B misses the seams by %s mm", f.M, f.N, f.SeamOff)
		}
		pitch := f.Width.MM() / math.Round(f.Width.MM()/f.Lattice.A.X.MM())
		if off := math.Abs(math.Remainder(350, pitch)); math.Abs(off-f.WidthOff.MM()) > 1e-3 {
			t.Errorf("%d·A %+d·B: the width is off by %s mm, want %.4f", f.M, f.N, f.WidthOff, off)
		}
	}
	bare, err := o.Fits(document.FitWish{Step: geom.MM(180)})
	if err != nil || bare[0].WidthOff != 0 || bare[0].Width != 0 {
		t.Errorf("without a width: %+v, %v", bare[0], err)
	}
}

func TestDotsSnapToTheNearestPunch(t *testing.T) {
	mm := geom.MM
	o := laidFor(t, "scattered-two-sizes", 0) // 0.7 and 1.8 mm
	if _, err := document.SnapDots(o); err == nil || len(o.Punches()) != 0 {
		t.Errorf("snapped without a rack: %v", err)
	}
	o, err := document.SetRack(o, []document.Punch{{Name: "a", Diameter: mm(0.5)}, {Name: "b", Diameter: mm(0.8)}, {Name: "c", Diameter: mm(1.9)}})
	if err != nil {
		t.Fatal(err)
	}
	punches := o.Punches()
	if len(punches) != 2 || punches[0].Dot != mm(0.7) || punches[0].Punch.Name != "b" || math.Abs(punches[0].Change()-1.0/7) > 1e-9 || punches[1].Punch.Name != "c" {
		t.Errorf("the punches are %+v", punches)
	}
	snapped, err := document.SnapDots(o)
	if err != nil {
		t.Fatal(err)
	}
	for i, m := range snapped.Unit.Motifs {
		want := map[geom.Length]geom.Length{mm(0.7): mm(0.8), mm(1.8): mm(1.9)}[o.Unit.Motifs[i].Shape.Disc.Diameter]
		if m.Shape.Disc.Diameter != want || m.At != o.Unit.Motifs[i].At {
			t.Fatalf("dot %d became %s mm at %v, want %s", m.ID, m.Shape.Disc.Diameter, m.At, want)
		}
	}
	if r := snapped.Ground; r.Value("dot") != 0.8 || r.Value("large") != 1.9 {
		t.Errorf("the recipe is %+v", r)
	}
	// The sizes of a swell are its own.
	swell, err := document.LayGround(o, pattern.Recipe{Ground: "row-dots", Values: map[string]float64{"swell": 1}})
	if err == nil {
		swell, err = document.SnapDots(swell)
	}
	if err != nil || swell.Ground.Ground != "" {
		t.Errorf("a snapped swell has the recipe %+v, %v", swell.Ground, err)
	}
}

func TestABentGroundIsEasedOrFreed(t *testing.T) {
	o := laidFor(t, "hemp-leaf", document.Defaults().SeamWidth())
	bend := func(o document.Order) float64 {
		l, err := o.Ground.Laying(o.Sheet.Step)
		if err != nil {
			t.Fatal(err)
		}
		return max(l.Bent, -l.Bent)
	}
	if bend(o) <= pattern.MostBent {
		t.Fatalf("bent by %g only", bend(o))
	}
	eased, err := document.EaseGround(o)
	if err != nil || bend(eased) > pattern.MostBent || eased.Ground.Width != o.Ground.Width {
		t.Errorf("eased to %+v, %v", eased.Ground, err)
	}
	free, err := document.FreeGround(o)
	if err != nil || bend(free) > 1e-6 || free.Ground.Width != 0 {
		t.Errorf("freed to %+v, %v", free.Ground, err)
	}
	if _, err := document.EaseGround(laidFor(t, "checker", o.SeamWidth())); err == nil {
		t.Error("squares were eased that no size fits")
	}
}
