package ui

import (
	"context"
	"testing"

	"tsugime/export/raster"
	"tsugime/repeat"
	"tsugime/repeat/document"
)

// Around the fold after one step the ground of a folded cloth is its own mirror
// image, level by level; that of a plain one is not.
func TestAFoldedClothIsShownMirroredAtItsFolds(t *testing.T) {
	for _, folded := range []bool{false, true} {
		o, err := ReadStarter("leaf")
		if err != nil {
			t.Fatal(err)
		}
		c := o.Cloth
		c.Bolt.Folded = folded
		if o, err = document.SetCloth(o, c); err != nil {
			t.Fatal(err)
		}
		w, err := repeat.Build(context.Background(), o)
		if err != nil {
			t.Fatal(err)
		}
		const size = 400
		const pxPerMM = 4.0
		p := raster.NewPlane(size, size)
		view := raster.View{X: 100, Y: w.Run.Step.MM() - size/2/pxPerMM, PxPerMM: pxPerMM}
		g, err := groundsOf(t.Context(), w)
		if err != nil {
			t.Fatal(err)
		}
		g.board.Paint(p, view, raster.Lay{})
		worst, open := 0, 0
		for y := range size / 2 {
			for x := range size {
				a, b := int(p.Cover[y*size+x]), int(p.Cover[(size-1-y)*size+x])
				worst = max(worst, a-b, b-a)
				open += a
			}
		}
		if open == 0 {
			t.Fatal("nothing is open there")
		}
		if alike := worst <= 1; alike != folded {
			t.Errorf("folded %v: both sides of the fold differ by %d levels of 255", folded, worst)
		}
	}
}
