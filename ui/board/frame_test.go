package board

import (
	"image/color"
	"math"
	"math/rand/v2"
	"syscall"
	"testing"
	"time"

	"tsugime/export/raster"
	"tsugime/repeat/geom"
)

var (
	paper = color.RGBA{0x9a, 0x6b, 0x3f, 0xff}
	hole  = color.RGBA{0xfb, 0xf3, 0xdd, 0xff}
)

// Where a pixel holds more than two rows of holes, an even ground on the darkest dye is one
// colour, give or take a level, at any zoom.
func TestAFineGroundIsAnEvenTone(t *testing.T) {
	one := []geom.Shape{geom.DiscShape(geom.Point{}, geom.MM(0.45))}
	unit := raster.NewGround(one, geom.PtMM(1.01, 0), geom.PtMM(0, 1.01))
	s := Scene{Areas: []Area{{Shut: color.RGBA{0x1f, 0x2c, 0x4d, 0xff}, Open: hole}}, Grounds: []Laid{{Ground: unit, Lays: []raster.Lay{{}}}}}
	var p Painter
	for scale := 0.05; scale < 0.49; scale *= 1.037 {
		img := p.Paint(s, raster.View{X: 0.3, Y: 0.1, PxPerMM: scale}, 160, 120, 1)
		low, high := 255, 0
		for i := 1; i < len(img.Pix); i += 4 {
			low, high = min(low, int(img.Pix[i])), max(high, int(img.Pix[i]))
		}
		if high-low > 2 {
			t.Errorf("at %.3f px/mm an even ground spans %d levels; want 2 at most", scale, high-low)
		}
	}
}

// fineDots are the holes of one sheet: 63,000 dots on 356 by 181 mm.
// one is the sheet by itself, unit one hole of its plain pattern.
func fineDots() (unit, sheet, one *raster.Ground, step geom.Length) {
	pitch := geom.MM(1.01)
	step = 180 * pitch
	var dots []geom.Shape
	for y := geom.Length(0); y < step; y += pitch {
		for x := geom.MM(9.5); x < geom.MM(365); x += pitch {
			dots = append(dots, geom.DiscShape(geom.Point{X: x, Y: y}, geom.MM(0.45)))
		}
	}
	hole := []geom.Shape{geom.DiscShape(geom.Point{}, geom.MM(0.45))}
	return raster.NewGround(hole, geom.Point{X: pitch}, geom.Point{Y: pitch}),
		raster.NewGround(dots, geom.Point{Y: step}), raster.NewGround(dots), step
}

// scatter lays every placement of some pieces by itself, moved and turned as a
// bolt that is laid star to star with three times an error of 0.1 mm.
func scatter(pieces []raster.Lay, step geom.Length) []raster.Lay {
	r := rand.New(rand.NewPCG(4, 4))
	var lays []raster.Lay
	for k, piece := range pieces {
		for n := -5; n < 5; n++ {
			worn := float64(4*k + n + 5)
			by := geom.PtMM(0.5*math.Sqrt(worn)*r.NormFloat64(), 0.2*math.Sqrt(worn)*r.NormFloat64())
			lays = append(lays, raster.Lay{
				Move: piece.Move.Add(geom.Point{Y: geom.Length(n) * step}).Add(by), Turned: piece.Turned, Clip: piece.Clip,
				TurnDeg: 0.07 * math.Sqrt(worn) * r.NormFloat64(),
			})
		}
	}
	return lays
}

// The pictures of the window at 1600 by 1000 pixels, still, panned and zoomed by hand;
// each must be ready within 5 ms on two processors.
func BenchmarkFrame(b *testing.B) {
	unit, sheet, one, step := fineDots()
	box := func(x0, y0, x1, y1 float64) geom.Box { return geom.BoxOf(geom.PtMM(x0, y0), geom.PtMM(x1, y1)) }
	joint := []geom.Point{geom.PtMM(9, 0), geom.PtMM(366, 0)}
	var bolt, garment Scene
	laid := Laid{Ground: sheet}
	for n := range 6 {
		x := float64(n) * 560
		column := box(x, 0, x+375, 12*step.MM())
		bolt.Areas = append(bolt.Areas, Area{column, paper, hole})
		laid.Lays = append(laid.Lays, raster.Lay{Move: geom.PtMM(x, float64(-n)*12*step.MM()), Clip: column})
	}
	bolt.Grounds, laid.Lays = []Laid{laid}, nil
	for n := range 18 {
		x, y := float64(n%6)*400, float64(n/6)*600
		piece := box(x, y, x+300, y+560)
		garment.Areas = append(garment.Areas, Area{piece, paper, hole})
		laid.Lays = append(laid.Lays, raster.Lay{Move: geom.PtMM(x+300, y+560), Turned: n%2 == 0, Clip: piece})
	}
	garment.Grounds = []Laid{laid}
	scattered := Scene{Areas: garment.Areas, Grounds: []Laid{{Ground: one, Lays: scatter(laid.Lays, step)}}}
	frames := []struct {
		name  string
		scene Scene
		scale float64
	}{
		{"unit", Scene{Areas: []Area{{Shut: paper, Open: hole}}, Grounds: []Laid{{Ground: unit, Lays: []raster.Lay{{}}}}}, 40},
		{"sheet", Scene{
			Areas: []Area{{box(-20, -50, 400, 250), paper, hole}}, Grounds: []Laid{{Ground: sheet, Lays: []raster.Lay{{Clip: box(0, 0, 375, step.MM())}}}},
			Marks: []Mark{{Shape: Dashes, Points: joint, Colour: hole, Width: 2}},
		}, 3.6},
		{"bolt", bolt, 0.45},
		{"garment", garment, 0.5},
		{"scattered", scattered, 0.5},
		{"scattered-near", scattered, 4},
	}
	for _, f := range frames {
		for _, h := range hands {
			b.Run(f.name+"/"+h.name, func(b *testing.B) {
				var p Painter
				v := raster.View{X: -20, Y: -20, PxPerMM: f.scale}
				p.Paint(f.scene, v, 1600, 1000, 1) // makes ready what is kept between frames
				before, n := processor(b), 0
				for b.Loop() {
					p.Paint(f.scene, h.at(v, n), 1600, 1000, 1)
					n++
				}
				// On a machine that does other work too, this is the figure to go by.
				b.ReportMetric((processor(b)-before).Seconds()*1000/float64(b.N), "processor-ms/frame")
			})
		}
	}
}

// A hand is how the view moves from frame to frame.
type hand struct {
	name string
	at   func(v raster.View, n int) raster.View
}

// hands are a hand at rest, one that pans by a few pixels and parts of one, and one that
// zooms in and out again by a fiftieth a frame about the middle.
var hands = []hand{
	{"still", func(v raster.View, n int) raster.View { return v }},
	{"pan", func(v raster.View, n int) raster.View {
		v.X += float64(n%97) * 3.3 / v.PxPerMM
		v.Y += float64(n%61) * 1.7 / v.PxPerMM
		return v
	}},
	{"zoom", func(v raster.View, n int) raster.View {
		if n %= 40; n > 20 {
			n = 40 - n
		}
		to := v.PxPerMM * math.Pow(1.02, float64(n-10))
		v.X += 800/v.PxPerMM - 800/to
		v.Y += 500/v.PxPerMM - 500/to
		v.PxPerMM = to
		return v
	}},
}

// processor returns the processor time that this process has taken.
func processor(b *testing.B) time.Duration {
	b.Helper()
	var u syscall.Rusage
	if err := syscall.Getrusage(syscall.RUSAGE_SELF, &u); err != nil {
		b.Fatal(err)
	}
	return time.Duration(u.Utime.Nano() + u.Stime.Nano())
}
