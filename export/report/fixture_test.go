package report

import (
	"testing"

	"tsugime/repeat"
	"tsugime/repeat/document"
	"tsugime/repeat/geom"
	"tsugime/repeat/pattern"
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

// built carries an order along the line.
func built(t testing.TB, o document.Order) repeat.Work {
	t.Helper()
	w, err := repeat.Build(t.Context(), o)
	if err != nil {
		t.Fatal(err)
	}
	return w
}
