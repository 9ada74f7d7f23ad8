package ui

import (
	"slices"
	"strings"
	"testing"

	"tsugime/repeat/document"
	"tsugime/repeat/geom"
	"tsugime/repeat/pattern"
)

func layNamed(t *testing.T, w *Window, name string) {
	t.Helper()
	pick(w, slices.IndexFunc(pattern.Grounds(), func(g pattern.Ground) bool { return g.Name == name }))
	theDraft(w).ground.lay()
	settleTask(t, w)
	if got := w.Order().Ground.Ground; got != name {
		t.Fatalf("laid %q; the window says %s", got, w.status.Text)
	}
}

// The width that a ground was laid for stays when another value is changed, and
// the bench shows it with how the tiles meet it.
func TestAGroundIsLaidAgainInTheWidthOfItsOrder(t *testing.T) {
	w := onBench(t, "small-dot")
	g := theDraft(w).ground
	g.width.SetText("356 mm")
	g.width.hand()
	layNamed(t, w, "row-squares")
	if got := w.Order().Ground.Width; got != geom.MM(356) || !strings.Contains(g.from.Text, "fill the width") {
		t.Errorf("laid for a width of %s mm; the bench says %q", got, g.from.Text)
	}
	before := w.Order().Unit.Lattice
	g.fields[1].SetText("0.6 mm") // the dot
	g.lay()
	settleTask(t, w)
	o := w.Order()
	if o.Ground.Value("dot") != 0.6 || o.Unit.Lattice != before || g.width.Text != "356 mm" {
		t.Errorf("laid again as %+v on %v, the field shows %q", o.Ground, o.Unit.Lattice, g.width.Text)
	}
	g.width.SetText("wide")
	g.width.hand()
	if g.width.Text != "356 mm" {
		t.Errorf("nonsense was left standing as %q", g.width.Text)
	}
}

func TestAFitIsShownAppliedAndTakenBack(t *testing.T) {
	w := onBench(t, "small-dot")
	b := &theDraft(w).fit
	if w.Edit("Change Step", func(o document.Order) (document.Order, error) { return document.SetStep(o, geom.MM(180)) }); len(b.found) == 0 {
		t.Fatal("no fit is listed")
	}
	b.apply()
	if w.history.UndoName() != "Change Step" {
		t.Error("a fit was applied that nobody chose")
	}
	b.across.SetSelectedIndex(backSeams)
	b.fits.SetSelectedIndex(0)
	for _, want := range []string{"per square kane sun", "off at the back seams", "turned"} {
		if !strings.Contains(b.about.Text, want) {
			t.Errorf("the chosen fit says %q, not %q", b.about.Text, want)
		}
	}
	if !strings.Contains(b.punch.Text, "0.5 mm → 0.5 mm (+0.0 %)") {
		t.Errorf("of the rack is said %q", b.punch.Text)
	}
	start := w.Order()
	for _, c := range fitCommands() {
		if c.name(w) == "Apply This Fit" {
			w.run(c)
		}
	}
	o := w.Order()
	if !o.Unit.Lattice.Holds(geom.Point{Y: o.Sheet.Step}) || (o.Sheet.Step-geom.MM(180)).Abs() > geom.Micrometre ||
		(o.SeamWidth()-b.found[0].Width).Abs() > geom.Millimetre {
		t.Errorf("fitted to a step of %s mm on %v", o.Sheet.Step, o.Unit.Lattice)
	}
	w.Undo()
	if w.Order().Unit.Lattice != start.Unit.Lattice {
		t.Error("one undo does not lead back")
	}
}

func TestTheDotsSnapToTheRack(t *testing.T) {
	w := onBench(t, "small-dot")
	w.Edit("Rack", func(o document.Order) (document.Order, error) {
		return document.SetRack(o, []document.Punch{{Name: "awl", Diameter: geom.MM(0.45)}})
	})
	w.snapDots()
	if d := w.Order().Unit.Motifs[0].Shape.Disc.Diameter; d != geom.MM(0.45) || w.history.UndoName() != "Snap the Dots to the Rack" {
		t.Errorf("a dot has %s mm by the edit %q", d, w.history.UndoName())
	}
}
