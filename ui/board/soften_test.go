package board

import (
	"math/rand/v2"
	"testing"

	"tsugime/export/raster"
)

// The quick way in two halves against the mean of nine, pixel by pixel.
func TestSoftenIsTheMeanOfNine(t *testing.T) {
	r := rand.New(rand.NewPCG(3, 9))
	for _, size := range [][2]int{{3, 3}, {4, 3}, {5, 4}, {31, 17}} {
		p := raster.NewPlane(size[0], size[1])
		for i := range p.Cover {
			p.Cover[i] = uint8(r.IntN(256))
		}
		before := append([]uint8(nil), p.Cover...)
		soften(p)
		at := func(x, y int) int {
			return int(before[min(max(y, 0), p.H-1)*p.W+min(max(x, 0), p.W-1)])
		}
		for y := range p.H {
			for x := range p.W {
				sum := 4
				for dy := -1; dy <= 1; dy++ {
					for dx := -1; dx <= 1; dx++ {
						sum += at(x+dx, y+dy)
					}
				}
				if got, want := int(p.Cover[y*p.W+x]), sum/9; got != want {
					t.Fatalf("%v at %d, %d: %d, want %d", size, x, y, got, want)
				}
			}
		}
	}
}
