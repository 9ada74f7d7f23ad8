package report

import (
	"testing"

	"tsugime/repeat/cloth"
	"tsugime/repeat/geom"
	"tsugime/repeat/pattern"
	"tsugime/repeat/stencil"
)

// On a folded cloth of three sections of 100 mm a dot 10 mm from the near end lies
// at 10, 190 and 210 mm: plain, mirrored, plain.
func TestEveryOtherFoldedSectionIsDrawnMirrored(t *testing.T) {
	dot := pattern.CutOut{Shape: geom.DiscShape(geom.PtMM(50, 10), geom.MM(2))}
	sheet := stencil.Sheet{CutOuts: []pattern.CutOut{dot}}
	bolt := cloth.Bolt{Width: geom.MM(100), Length: geom.MM(310), Folded: true}
	board := cloth.Board{Length: geom.MM(1000), End: geom.MM(10)}
	run, err := cloth.Lay(bolt, board, cloth.Register{}, geom.MM(100))
	if err != nil {
		t.Fatal(err)
	}
	plain, mirrored := boltLays(run, sheet.Bounds(), geom.BoxOf(geom.Point{}, geom.PtMM(100, 310)))
	if len(plain) != 2 || len(mirrored) != 1 {
		t.Fatalf("%d plain, %d mirrored", len(plain), len(mirrored))
	}
	if got := dot.Shape.Moved(plain[1].Move).Bounds().Centre(); got != geom.PtMM(50, 210) {
		t.Errorf("third section: %v", got)
	}
	image := mirroredAlong(sheet.CutOuts, run.Step)[0].Moved(mirrored[0].Move)
	if got := image.Bounds().Centre(); got != geom.PtMM(50, 190) || !image.Round() {
		t.Errorf("second section: %v, round %v", got, image.Round())
	}
	// The waste at the end stays bare.
	if clip := plain[0].Clip; clip.Max.Y != geom.MM(300) {
		t.Errorf("drawn to %s mm", clip.Max.Y)
	}
}
