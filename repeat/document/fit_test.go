package document_test

import (
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
		fits, err := o.Design().Fits(o.Sheet.Step+geom.MM(0.7), o.SeamWidth())
		if err != nil || len(fits) == 0 {
			t.Fatalf("%s: %d fits, %v", name, len(fits), err)
		}
		if !o.KeepsGround(fits[0]) {
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

// A fit that leans the columns is no ground's any more.
func TestAFitThatLeansEndsTheRecipe(t *testing.T) {
	o := laidFor(t, "row-dots", 0)
	fits, err := o.Design().Fits(o.Sheet.Step, 0)
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
		if kept := next.Ground.Ground != ""; kept != o.KeepsGround(f) || kept != (f.M == 0) {
			t.Errorf("%d·A %+d·B: the recipe is %+v", f.M, f.N, next.Ground)
		}
	}
	if leaning == 0 {
		t.Error("none of the fits leans")
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
