package board

import (
	"image/color"
	"math"
	"testing"

	"tsugime/export/raster"
	"tsugime/repeat/geom"
)

// painted is one large hole in a tint on white, in a picture of 40 × 40 pixels.
func painted(w Weave, x float64) (count int, image func(x, y int) color.RGBA) {
	hole := raster.NewGround([]geom.Shape{geom.DiscShape(geom.PtMM(20, 20), geom.MM(80))})
	s := Scene{Desk: color.RGBA{255, 255, 255, 255}, Tints: []Tint{{hole, color.RGBA{40, 60, 110, 255}, w}}}
	img := new(Painter).Paint(s, raster.View{X: x, PxPerMM: 1}, 40, 40, 1)
	for y := range 40 {
		for x := range 40 {
			if img.RGBAAt(x, y) == (color.RGBA{40, 60, 110, 255}) {
				count++
			}
		}
	}
	return count, img.RGBAAt
}

func TestEveryWeaveTellsItsTintFromTheOthers(t *testing.T) {
	seen := map[[64]bool]Weave{}
	for w := Full; w <= Lattice; w++ {
		_, at := painted(w, 0)
		var print [64]bool
		for i := range print {
			print[i] = at(10+i%8, 10+i/8) == (color.RGBA{40, 60, 110, 255})
		}
		if other, taken := seen[print]; taken {
			t.Errorf("weaves %d and %d look alike", w, other)
		}
		seen[print] = w
	}
}

func TestAWeaveLiesStillOnTheGround(t *testing.T) {
	_, before := painted(Rising, 0)
	_, after := painted(Rising, 5) // panned by five pixels
	for y := range 40 {
		for x := 5; x < 40; x++ {
			if before(x, y) != after(x-5, y) {
				t.Fatalf("the weave at %d, %d moved against the ground", x, y)
			}
		}
	}
}

func TestATintCoversAsMuchAsItsHoleDoes(t *testing.T) {
	// A disc of 10 mm at 4 pixels a millimetre: its area is 25π mm², 400π pixels.
	hole := raster.NewGround([]geom.Shape{geom.DiscShape(geom.PtMM(10, 10), geom.MM(10))})
	s := Scene{Desk: color.RGBA{255, 255, 255, 255}, Tints: []Tint{{hole, color.RGBA{0, 0, 0, 255}, Full}}}
	img := new(Painter).Paint(s, raster.View{PxPerMM: 4}, 80, 80, 1)
	dark := 0.0
	for y := range 80 {
		for x := range 80 {
			dark += float64(255-img.RGBAAt(x, y).R) / 255
		}
	}
	if want := 400 * math.Pi; math.Abs(dark-want) > want/500 {
		t.Errorf("%.2f pixels are covered, want %.2f", dark, want)
	}
}
