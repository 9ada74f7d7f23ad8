package board

import (
	"image/color"
	"testing"

	"tsugime/export/raster"
	"tsugime/repeat/geom"
)

// A line on a ground of its own lightness is seen by its casing, and has none where the
// scene has none or the mark is bare.
func TestAMarkIsEdgedSoThatItIsSeenOnAnyGround(t *testing.T) {
	dark, pale := color.RGBA{10, 10, 10, 255}, color.RGBA{250, 250, 250, 255}
	line := Mark{Points: []geom.Point{geom.PtMM(0, 10), geom.PtMM(20, 10)}, Width: 2}
	for _, c := range []struct {
		name        string
		desk, mark  color.RGBA
		casing      Casing
		bare, edged bool
	}{
		{"dark on dark", dark, dark, Casing{Pale: pale, Dark: dark}, false, true},
		{"pale on pale", pale, pale, Casing{Pale: pale, Dark: dark}, false, true},
		{"bare", dark, dark, Casing{Pale: pale, Dark: dark}, true, false},
		{"without casing", dark, dark, Casing{}, false, false},
	} {
		m := line
		m.Colour, m.Bare = c.mark, c.bare
		img := new(Painter).Paint(Scene{Desk: c.desk, Marks: []Mark{m}, Casing: c.casing}, raster.View{PxPerMM: 1}, 20, 20, 1)
		// The line is 2 pixels about y = 10, the casing one more at each side.
		if got := img.RGBAAt(10, 9); got != c.mark {
			t.Errorf("%s: the line is %v, want %v", c.name, got, c.mark)
		}
		for _, y := range []int{8, 11} {
			if edged := img.RGBAAt(10, y) != c.desk; edged != c.edged {
				t.Errorf("%s: at %d there is %v on %v; edged %v, want %v", c.name, y, img.RGBAAt(10, y), c.desk, edged, c.edged)
			}
		}
		if got := img.RGBAAt(10, 6); got != c.desk {
			t.Errorf("%s: the casing reaches too far: %v", c.name, got)
		}
	}
}

func TestWhatIsHatchedHasNoCasing(t *testing.T) {
	c := Casing{Pale: color.RGBA{250, 250, 250, 255}, Dark: color.RGBA{10, 10, 10, 255}}
	if got := c.cased([]Mark{{Shape: Hatch, Colour: c.Dark}, {Shape: Ring, Colour: c.Pale}}); len(got) != 1 || got[0].Colour != c.Dark || got[0].Width != 3 {
		t.Errorf("the casings are %+v, want one dark ring 3 wide", got)
	}
}
