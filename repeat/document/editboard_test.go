package document_test

import (
	"testing"

	"tsugime/repeat/cloth"
	"tsugime/repeat/document"
	"tsugime/repeat/geom"
)

// A remedy that is an edit changes what it says and nothing else; the others are
// refused.
func TestARemedyIsTakenOrRefused(t *testing.T) {
	o := document.Defaults()
	o.Register.Growth = cloth.Growth{Start: 0.002, End: -0.001}
	want := map[cloth.Remedy]func(o *document.Order){
		cloth.UseEdgeLine:   func(o *document.Order) { o.Register.Way = cloth.EdgeLine },
		cloth.UseMarkedLine: func(o *document.Order) { o.Register.Way = cloth.MarkedLine },
		cloth.LayEveryOther: func(o *document.Order) { o.Board.Sequence = cloth.EveryOther },
		cloth.DampSheet:     func(o *document.Order) { o.Register.Growth.End = 0.002 },
	}
	for _, r := range []cloth.Remedy{
		cloth.UseEdgeLine, cloth.UseMarkedLine, cloth.LayEveryOther, cloth.DampSheet,
		cloth.LongerBaseline, cloth.LongerStep, cloth.CarefulStars, cloth.TrueStep,
	} {
		change, takeable := want[r]
		got, err := document.TakeRemedy(o, r)
		if takeable != document.Takeable(r) || takeable != (err == nil) {
			t.Errorf("%s: takeable %v, error %v", r, document.Takeable(r), err)
			continue
		}
		next := o
		if takeable {
			change(&next)
		}
		if got.Register != next.Register || got.Board != next.Board {
			t.Errorf("%s: %+v %+v", r, got.Register, got.Board)
		}
	}
}

// The gap that the order leaves already is kept under the one that clears the turn.
func TestClearingTheTurnAddsToTheGapThatIsThere(t *testing.T) {
	o := document.Defaults()
	now := cloth.Dressed{Panels: []cloth.Panel{
		{Name: "sleeve", Length: geom.Metre, Lane: [2]float64{0, 1}},
		{Name: "body", Y: geom.Metre + geom.MM(30), Length: geom.Metre, Lane: [2]float64{0, 1}},
	}}
	c := cloth.Clearing{Over: []string{"sleeve"}, Found: true, Start: geom.MM(12), Before: []string{"body"}, Gap: geom.MM(40)}
	got, err := document.ClearTurn(o, c, now)
	if err != nil {
		t.Fatal(err)
	}
	if got.Board.Start != geom.MM(12) || got.Garment.Layout.Gaps["body"] != geom.MM(70) {
		t.Errorf("start %v, gaps %v", got.Board.Start, got.Garment.Layout.Gaps)
	}
	if o.Board.Start == got.Board.Start || len(o.Garment.Layout.Gaps) != 0 {
		t.Error("the order before has changed")
	}
	for _, c := range []cloth.Clearing{{}, {Over: []string{"sleeve"}, Lacks: geom.MM(10)}, {Over: []string{"sleeve"}}} {
		if _, err := document.ClearTurn(o, c, now); err == nil {
			t.Errorf("%+v was done", c)
		}
	}
}
