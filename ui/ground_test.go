package ui

import (
	"slices"
	"strings"
	"testing"

	"tsugime/repeat/geom"
	"tsugime/repeat/pattern"
)

// pick chooses a ground of the list, as a person does.
func pick(w *Window, n int) { theDraft(w).ground.names.SetSelectedIndex(n) }

func TestLayingAGroundIsOneEditAndUndoLeadsBack(t *testing.T) {
	w := onBench(t, "leaf")
	start := written(t, w.Order())
	pick(w, slices.IndexFunc(pattern.Grounds(), func(g pattern.Ground) bool { return g.Name == "wave-scales" }))
	if w.Changed() {
		t.Fatal("choosing a ground has changed the order before it was laid")
	}
	theDraft(w).ground.lay()
	settleTask(t, w)
	o := w.Order()
	if o.Ground.Ground != "wave-scales" || w.history.UndoName() != "Lay Ground" {
		t.Errorf("laid %q by the edit %q", o.Ground.Ground, w.history.UndoName())
	}
	if !o.Unit.Lattice.Holds(geom.Point{Y: o.Sheet.Step}) {
		t.Error("the step is no lattice vector of the ground")
	}
	w.Undo()
	if got := written(t, w.Order()); got != start {
		t.Errorf("one undo leads to\n%s\nwant\n%s", got, start)
	}
}

func TestEveryGroundIsLaid(t *testing.T) {
	w := onBench(t, "small-dot")
	g := theDraft(w).ground
	for n, ground := range pattern.Grounds() {
		pick(w, n)
		if g.names.Selected != groundTitle(ground) || len(g.rows.Objects) < len(ground.Params) {
			t.Errorf("%s: the bench shows %q with %d rows for %d parameters", ground.Name, g.names.Selected, len(g.rows.Objects), len(ground.Params))
		}
		g.lay()
		settleTask(t, w)
		o := w.Order()
		if o.Ground.Ground != ground.Name || len(o.Unit.Motifs) == 0 {
			t.Errorf("%s was not laid; the window says: %s", ground.Name, w.status.Text)
		}
		if sc := theDraft(w).scene(); sc.Extent.Empty() || sc.Extent.Width() > 40*draftMost*w.pitch() {
			t.Errorf("%s is shown from %v mm away", ground.Name, sc.Extent.Width())
		}
	}
}

func TestAGroundsLengthIsReadInAnyUnitAndNonsenseIsRefused(t *testing.T) {
	w := onBench(t, "small-dot")
	g := theDraft(w).ground
	pick(w, 0)
	e := g.fields[0]
	e.SetText("0.5 kane bu")
	e.hand()
	if got, want := g.recipe.Value("pitch"), 50.0/33; got < want-1e-6 || got > want+1e-6 {
		t.Errorf("half a kane bu is read as %v mm, want %v", got, want)
	}
	shown := e.Text
	for _, text := range []string{"wide", "400 mm"} {
		e.SetText(text)
		e.hand()
		if e.Text != shown {
			t.Errorf("%q was left standing as %q", text, e.Text)
		}
	}
	if w.Changed() {
		t.Error("what is set on the bench changed the order before it was laid")
	}
}

func TestAGradeSetsThePitchAndShowsItsCount(t *testing.T) {
	w := onBench(t, "small-dot")
	g := theDraft(w).ground
	pick(w, slices.IndexFunc(pattern.Grounds(), func(g pattern.Ground) bool { return g.Name == "row-dots" }))
	n := slices.IndexFunc(g.fine, func(r pattern.Grade) bool { return r.Count == 900 })
	if n < 0 {
		t.Fatalf("900 is none of %v", g.grades.Options)
	}
	g.grades.SetSelectedIndex(n)
	if want := 1000.0 / 33 / 30; g.recipe.Value("pitch") < want-1e-3 || g.recipe.Value("pitch") > want+1e-3 {
		t.Errorf("900 on a square sun is a pitch of %v mm, want %v", g.recipe.Value("pitch"), want)
	}
	if !strings.HasPrefix(g.grades.Selected, "900 per square kane sun") {
		t.Errorf("the grade is shown as %q", g.grades.Selected)
	}
	g.lay()
	settleTask(t, w)
	if got := w.Order().Unit.PerSquareSun(); got < 880 || got > 920 {
		t.Errorf("laid %v dots on a square sun, want about 900", got)
	}
}

func TestTheOrdersOwnRecipeIsShown(t *testing.T) {
	w := onBench(t, "small-dot")
	g := theDraft(w).ground
	pick(w, slices.IndexFunc(pattern.Grounds(), func(g pattern.Ground) bool { return g.Name == "hemp-leaf" }))
	g.lay()
	settleTask(t, w)
	pick(w, 0)
	if !strings.Contains(g.from.Text, "hemp-leaf") || !strings.Contains(g.from.Text, "not laid yet") {
		t.Errorf("the bench says %q", g.from.Text)
	}
	g.lay()
	settleTask(t, w)
	w.Undo()
	if !strings.HasPrefix(g.names.Selected, "hemp-leaf") {
		t.Errorf("after the undo the bench shows %q", g.names.Selected)
	}
}
