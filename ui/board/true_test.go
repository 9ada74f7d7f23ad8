package board

import (
	"bytes"
	"image/color"
	"math"
	"math/rand/v2"
	"runtime"
	"sync"
	"testing"

	"tsugime/assets"
	"tsugime/export/raster"
	"tsugime/repeat/document"
	"tsugime/repeat/geom"
)

var (
	black = color.RGBA{A: 255}
	white = color.RGBA{255, 255, 255, 255}
)

// starterGrounds returns the plain pattern of every starter.
func starterGrounds(t *testing.T) []*plainGround {
	t.Helper()
	var all []*plainGround
	for _, s := range assets.Starters() {
		all = append(all, starterGround(t, s.Name))
	}
	if len(all) < 26 {
		t.Fatalf("%d starters, want all 26", len(all))
	}
	return all
}

// starterGround returns the plain pattern of one starter.
func starterGround(t *testing.T, name string) *plainGround {
	t.Helper()
	data, ok := assets.Starter(name)
	if !ok {
		t.Fatalf("there is no starter %s", name)
	}
	o, err := document.Read(bytes.NewReader(data))
	if err != nil {
		t.Fatal(err)
	}
	u := o.Design()
	var shapes []geom.Shape
	for _, c := range u.CutOuts() {
		shapes = append(shapes, c.Shape)
	}
	return newPlain(name, shapes, u.Lattice.A, u.Lattice.B)
}

// scene is the ground in black and white.
func (g *plainGround) scene() Scene {
	return Scene{Areas: []Area{{Shut: black, Open: white}}, Grounds: []Laid{{Ground: g.ground, Lays: []raster.Lay{{}}}}}
}

// trueZooms are forty zooms from 0.05 to 40 px/mm, evenly spaced as ratios, each a little off.
func trueZooms(r *rand.Rand) []float64 {
	z := make([]float64, 40)
	for i := range z {
		z[i] = 0.05 * math.Pow(800, (float64(i)+0.4*(r.Float64()-0.5))/39)
	}
	return z
}

// inTurn calls do for each ground on all processors.
func inTurn(grounds []*plainGround, do func(i int, g *plainGround)) {
	var wait sync.WaitGroup
	next := make(chan int)
	for range runtime.GOMAXPROCS(0) {
		wait.Go(func() {
			for i := range next {
				do(i, grounds[i])
			}
		})
	}
	for i := range grounds {
		next <- i
	}
	close(next)
	wait.Wait()
}

// What the window's painter shows of every starter, at forty zooms, against the
// oracle: each pixel is within a level of 255 of what its footprint covers.
func TestNoPixelIsMoreThanALevelOff(t *testing.T) {
	const side = 48
	inTurn(starterGrounds(t), func(i int, g *plainGround) {
		r := rand.New(rand.NewPCG(uint64(i), 7))
		var p Painter
		worst, at := 0.0, 0.0
		for _, zoom := range trueZooms(r) {
			v := raster.View{X: 300*r.Float64() - 150, Y: 300*r.Float64() - 150, PxPerMM: zoom}
			img := p.Paint(g.scene(), v, side, side, 1)
			mix := p.mix(black, white)
			reach, weight, summed := footprint(g.ground, zoom)
			// A hundred lines to a millimetre, as far as that goes.
			lines := min(max(int(200*reach/zoom), 800), 5000)
			for range 3 {
				x, y := r.IntN(side), r.IntN(side)
				mm := func(f func(float64) float64) func(float64) float64 {
					return func(v float64) float64 { return f(v * zoom) }
				}
				want := 255 * g.covered(v.X+(float64(x)+0.5)/zoom, v.Y+(float64(y)+0.5)/zoom, reach/zoom, lines, mm(weight), mm(summed), r)
				level := p.plane.Cover[y*side+x]
				if off := math.Abs(float64(level) - want); off > worst {
					worst, at = off, zoom
				}
				if c := img.RGBAAt(x, y); uint32(c.R) != mix[level]&255 {
					t.Errorf("%s: pixel %d, %d is %v, not level %d", g.name, x, y, c, level)
				}
			}
		}
		t.Logf("%s: a pixel is off by %.2f levels at most, at %.3f px/mm", g.name, worst, at)
		if worst > 1 {
			t.Errorf("%s: a pixel is off by %.2f levels at %.3f px/mm, want at most 1", g.name, worst, at)
		}
	})
}
