package repeat_test

import (
	"context"
	"testing"

	"tsugime/repeat"
	"tsugime/repeat/check"
	"tsugime/repeat/document"
	"tsugime/repeat/geom"
	"tsugime/repeat/pattern"
	"tsugime/repeat/stencil"
)

// ringOrder is an order of nested rings on a lattice that divides the step: the
// discs of paper within them fall out unless something is done.
func ringOrder(t *testing.T) document.Order {
	t.Helper()
	ring, err := geom.ParsePathData("M4 0A4 4 0 0 1 -4 0A4 4 0 0 1 4 0Z M3 0A3 3 0 0 0 -3 0A3 3 0 0 0 3 0Z M2 0A2 2 0 0 1 -2 0A2 2 0 0 1 2 0Z M1.2 0A1.2 1.2 0 0 0 -1.2 0A1.2 1.2 0 0 0 1.2 0Z")
	if err != nil {
		t.Fatal(err)
	}
	o := document.Defaults()
	o.Sheet.Step = geom.MM(180)
	o.Unit.Lattice = pattern.HalfDrop(geom.MM(10), geom.MM(10))
	o, err = document.AddMotif(o, pattern.Motif{Shape: geom.Shape{Outline: ring}, At: geom.PtMM(3, 4)})
	if err != nil {
		t.Fatal(err)
	}
	return o
}

func built(t *testing.T, o document.Order) repeat.Work {
	t.Helper()
	w, err := repeat.Build(context.Background(), o)
	if err != nil {
		t.Fatal(err)
	}
	return w
}

// unit returns the findings about the unit.
func unit(w repeat.Work) []check.Finding {
	var found []check.Finding
	for _, f := range w.Findings {
		if f.Domain == check.OnUnit {
			found = append(found, f)
		}
	}
	return found
}

func TestRingsFallOutUntilTheyAreTied(t *testing.T) {
	o := ringOrder(t)
	drawn := built(t, o)
	if n := len(drawn.Sheet.Paths.Islands); n != 2 {
		t.Fatalf("%d islands as drawn, want the two of the nested rings", n)
	}
	o, unheld, err := document.ProposeTies(context.Background(), o)
	if err != nil || len(unheld) > 0 {
		t.Fatalf("ties: %v, %v", unheld, err)
	}
	w := built(t, o)
	if found := unit(w); len(found) > 0 || len(w.Sheet.Paths.Islands) != 0 {
		t.Errorf("tied, it still has %v", found)
	}
	if w.Sheet.OpenPct >= drawn.Sheet.OpenPct {
		t.Errorf("ties take nothing: open area %.4f %% before, %.4f %% after", drawn.Sheet.OpenPct, w.Sheet.OpenPct)
	}
	var lost float64
	for _, tie := range w.Sheet.Ties.Ties {
		lost += tie.LostMM2
	}
	cell := o.Unit.Lattice.CellMM2()
	if got := (drawn.Sheet.OpenPct - w.Sheet.OpenPct) / 100 * cell; got < lost*0.9999 || got > lost*1.0001 {
		t.Errorf("the open area shrank by %.5f mm², the ties say %.5f", got, lost)
	}
}

func TestASplitPrintsTheWholeDesign(t *testing.T) {
	for _, cut := range stencil.SecondCuts() {
		o := ringOrder(t)
		o.Sheet.Hold.Second.Cut = cut
		o, unheld, err := document.ProposeSplit(context.Background(), o)
		if err != nil || len(unheld) > 0 {
			t.Fatalf("%s: %v, %v", cut, unheld, err)
		}
		w := built(t, o)
		if found := unit(w); len(found) > 0 {
			t.Errorf("%s: split, it still has %v", cut, found)
		}
		if w.Sheet.Second == nil || !w.Sheet.Cover.Sound() {
			t.Fatalf("%s: the cover is %+v", cut, w.Sheet.Cover)
		}
		if got, want := len(w.Sheet.Printed), len(built(t, ringOrder(t)).Sheet.CutOuts); got != want {
			t.Errorf("%s: %d motifs are printed, the design has %d", cut, got, want)
		}
		// Each placement lays the same motifs with both sheets.
		for _, s := range w.Sheet.Set() {
			if len(s.CutOuts) != len(w.Sheet.Printed) {
				t.Errorf("%s: a sheet cuts %d motifs, %d are printed", cut, len(s.CutOuts), len(w.Sheet.Printed))
				continue
			}
			for i, c := range s.CutOuts {
				if p := w.Sheet.Printed[i]; c.Motif != p.Motif || !p.Shape.Bounds().Grown(geom.Micrometre).HoldsBox(c.Shape.Bounds()) {
					t.Fatalf("%s: part %d at %v is of another motif than that at %v", cut, i, c.Shape.Bounds(), p.Shape.Bounds())
				}
			}
		}
		if n := len(w.Sheet.Stars.Match); n != 3 {
			t.Errorf("%s: %d match stars, want a common one and one for each sheet", cut, n)
		}
		cutSize := w.CutSheet()
		if cutSize.Second == nil || len(cutSize.Second.CutOuts) != len(w.Sheet.Second.CutOuts) {
			t.Errorf("%s: the second sheet is lost on the way to the paper", cut)
		}
	}
}
