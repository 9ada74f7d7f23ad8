package report

import (
	"testing"

	"tsugime/repeat"
	"tsugime/repeat/document"
	"tsugime/repeat/geom"
	"tsugime/repeat/pattern"
	"tsugime/repeat/stencil"
)

// dotOrder returns an order for a ground of dots at 45°, fitted to the step: the
// usual sheet, field and bolt of Defaults, with changes of cloth and paper that
// make the three sizes differ.
func dotOrder(t testing.TB, pitchMM, dotMM float64) document.Order {
	t.Helper()
	o := document.Defaults()
	o.Title = "Small dots for a light indoor coat"
	o.Note = "A fine ground for a small dye shop in a harbour town."
	half := geom.MM(pitchMM / 1.4142135623730951)
	unit := pattern.Unit{
		Lattice: pattern.Diagonal(half, half),
		Motifs:  []pattern.Motif{{ID: 1, Shape: geom.DiscShape(geom.Point{}, geom.MM(dotMM))}},
	}
	fits, err := unit.Fits(o.Sheet.Step, 0)
	if err != nil || len(fits) == 0 {
		t.Fatalf("no fit to a step of %s mm: %v", o.Sheet.Step, err)
	}
	o.Unit, o.Sheet.Step = unit.Fitted(fits[0]), fits[0].Step
	o.Cloth.Bolt.ChangeAlong = -0.01
	o.Sheet.Paper.GrowthAcross, o.Sheet.Paper.GrowthAlong = 0.0015, 0.0025
	o.NextID = 2
	return o
}

// splitOrder returns an order of nested rings on one sheet or, for a split, on two:
// n by n of them in a unit, beside them a dot that only one sheet cuts.
func splitOrder(t testing.TB, n int, cut stencil.SecondCut) document.Order {
	t.Helper()
	ring, err := geom.ParsePathData("M4 0A4 4 0 0 1 -4 0A4 4 0 0 1 4 0Z M3 0A3 3 0 0 0 -3 0A3 3 0 0 0 3 0Z M2 0A2 2 0 0 1 -2 0A2 2 0 0 1 2 0Z M1.2 0A1.2 1.2 0 0 0 -1.2 0A1.2 1.2 0 0 0 1.2 0Z")
	if err != nil {
		t.Fatal(err)
	}
	o := document.Defaults()
	o.Title, o.Sheet.Step = "Rings in rings", geom.MM(180)
	o.Cloth.Bolt.ChangeAlong = -0.01
	o.Sheet.Paper.Width, o.Sheet.Paper.Height = geom.MM(450), geom.MM(330)
	o.Sheet.Paper.GrowthAcross, o.Sheet.Paper.GrowthAlong = 0.0015, 0.0025
	const across, along = 18, 10
	o.Unit.Lattice = pattern.Straight(geom.MM(across*float64(n)), geom.MM(along*float64(n)))
	for i := range n * n {
		at := geom.PtMM(9+across*float64(i%n), 5+along*float64(i/n))
		o.Unit.Motifs = append(o.Unit.Motifs,
			pattern.Motif{ID: pattern.ID(2*i + 1), Shape: geom.Shape{Outline: ring}, At: at, TurnDeg: float64(i % 7)},
			pattern.Motif{ID: pattern.ID(2*i + 2), Shape: geom.DiscShape(geom.Point{}, geom.MM(2)), At: at.Add(geom.PtMM(9, 5))})
	}
	o.NextID = pattern.ID(2*n*n + 1)
	o.Sheet.Hold.Second.Cut = cut
	if o, _, err = document.ProposeSplit(t.Context(), o); err != nil {
		t.Fatal(err)
	}
	return o
}

// built carries an order along the line.
func built(t testing.TB, o document.Order) repeat.Work {
	t.Helper()
	w, err := repeat.Build(t.Context(), o)
	if err != nil {
		t.Fatal(err)
	}
	return w
}
