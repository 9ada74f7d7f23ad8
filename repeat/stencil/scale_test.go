package stencil

import (
	"math"
	"testing"

	"tsugime/repeat/geom"
	"tsugime/repeat/pattern"
)

// ISO 5077:2007 defines the dimensional change as (after − before)/before: marks
// 350.0 mm apart that end 339.5 mm apart have changed by −3 %. To finish at 350
// the step on the board must be 350/0.97 = 360.825 mm, not 350·1.03.
func TestStepOnTheBoardUndoesTheChangeOfTheCloth(t *testing.T) {
	change := (339.5 - 350.0) / 350.0
	_, along := Scale{ClothAlong: change}.Board()
	if got := geom.MM(350).Times(along); got.String() != "360.824742" {
		t.Errorf("step on the board %s mm, want 360.824742", got)
	}
	if back := geom.MM(350).Times(along).Times(1 + change); (back - geom.MM(350)).Abs() > geom.Nanometre {
		t.Errorf("the cloth finishes at %s mm, want 350", back)
	}
}

func TestCutSizeIsUndoneByWettingThenByTheCloth(t *testing.T) {
	s := Scale{ClothAcross: -0.01, ClothAlong: -0.03, PaperAcross: 0.002, PaperAlong: 0.001}
	x, y := s.Cut()
	if got := x * (1 + s.PaperAcross) * (1 + s.ClothAcross); math.Abs(got-1) > 1e-15 {
		t.Errorf("across comes back as %.17g", got)
	}
	if got := y * (1 + s.PaperAlong) * (1 + s.ClothAlong); math.Abs(got-1) > 1e-15 {
		t.Errorf("along comes back as %.17g", got)
	}
	if x, y := (Scale{}).Cut(); x != 1 || y != 1 {
		t.Errorf("the zero scale changes sizes by %g, %g", x, y)
	}
}

func TestHolesKeepTheirPunchWhenPlacesAreScaled(t *testing.T) {
	spec := starSpec(3)
	sheet := Sheet{Spec: spec, CutOuts: []pattern.CutOut{{Shape: geom.DiscShape(geom.PtMM(100, 50), geom.MM(0.5)), Motif: 1}}}
	sheet.Stars = placeStars(dotGround(1, 1, 0.5), spec, Joint{}, geom.MM(375))
	cut := sheet.AtCutSize(Scale{PaperAcross: 0.002})
	d := cut.CutOuts[0].Shape.Disc
	if d.Diameter != geom.MM(0.5) || d.Centre != (geom.Point{X: geom.MM(100 / 1.002), Y: geom.MM(50)}) {
		t.Errorf("hole at cut size is %v", d)
	}
	if sheet.CutOuts[0].Shape.Disc.Centre != geom.PtMM(100, 50) {
		t.Error("the sheet itself was changed")
	}
	if got, want := cut.Stars.Square.Left, spec.Step; got != want {
		t.Errorf("height between stars at cut size %s mm, want %s", got, want)
	}
}

func TestCrossingsAreCutAtTheSizeOfTheirLine(t *testing.T) {
	spec := starSpec(3)
	sheet := Sheet{Spec: spec, Joint: Joint{Line: []geom.Point{geom.PtMM(0, 0), geom.PtMM(100, 0), geom.PtMM(100, 50)}, Crossed: geom.MM(14)}}
	sheet.Joint.Crossings = []Crossing{
		{From: geom.PtMM(20, 0), To: geom.PtMM(30, 0), Width: geom.MM(10), Depth: geom.MM(3), Motif: 1},
		{From: geom.PtMM(100, 10), To: geom.PtMM(100, 14), Width: geom.MM(4), Depth: geom.MM(2), Motif: 2},
	}
	x, y := 1/1.25, 1/0.8 // the paper grows across and shrinks along
	cut := sheet.AtCutSize(Scale{PaperAcross: 0.25, PaperAlong: -0.2}).Joint
	want := []Crossing{
		{From: geom.PtMM(20*x, 0), To: geom.PtMM(30*x, 0), Width: geom.MM(10 * x), Depth: geom.MM(3 * y), Motif: 1},
		{From: geom.PtMM(100*x, 10*y), To: geom.PtMM(100*x, 14*y), Width: geom.MM(4 * y), Depth: geom.MM(2 * x), Motif: 2},
	}
	for i, c := range cut.Crossings {
		if c != want[i] {
			t.Errorf("crossing %d at cut size is %+v, want %+v", i+1, c, want[i])
		}
	}
	if len(cut.Crossings) != 2 || cut.Crossed != geom.MM(10*x+4*y) {
		t.Errorf("%d crossings of %s mm together, want 2 of %g mm", len(cut.Crossings), cut.Crossed, 10*x+4*y)
	}
	if sheet.Joint.Crossings[0].Width != geom.MM(10) {
		t.Error("the sheet itself was changed")
	}
}
