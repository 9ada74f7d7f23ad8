package raster

import (
	"image"
	"image/color"
	"syscall"
	"testing"

	"tsugime/repeat/geom"
)

// sheet is a field of 356 × 182 mm with 63,504 dots, three sizes of punch, each
// dot a little off its place.
func sheet() *Ground {
	r := seeded(3)
	var shapes []geom.Shape
	const nx, ny = 353, 180
	for j := range ny {
		for i := range nx {
			d := geom.Length(450+50*r.IntN(3)) * geom.Micrometre
			shapes = append(shapes, geom.DiscShape(geom.PtMM(9+(float64(i)+0.5+0.1*r.Float64())*356/nx, (float64(j)+0.5+0.1*r.Float64())*181.818182/ny), d))
		}
	}
	return NewGround(shapes)
}

// bolt is n placements, each a little off.
func bolt(n int) []Lay {
	r := seeded(4)
	lays := make([]Lay, n)
	for i := range lays {
		lays[i].Move = geom.PtMM(0.2*r.NormFloat64(), float64(i)*181.818182+0.2*r.NormFloat64())
	}
	return lays
}

func frame(b *testing.B, v View, paint func(p *Plane)) {
	p := NewPlane(1600, 1000)
	img := image.NewRGBA(image.Rect(0, 0, 1600, 1000))
	start := processorMS(b)
	for b.Loop() {
		p.Reset()
		paint(p)
		p.Blend(img, color.RGBA{0x5a, 0x3a, 0x22, 255}, color.RGBA{0xf4, 0xef, 0xe4, 255})
	}
	// What the frame takes of all processors together, whatever else they do.
	b.ReportMetric((processorMS(b)-start)/float64(b.N), "processor-ms/frame")
}

func processorMS(b *testing.B) float64 {
	var u syscall.Rusage
	if err := syscall.Getrusage(syscall.RUSAGE_SELF, &u); err != nil {
		b.Fatal(err)
	}
	return float64(u.Utime.Nano()+u.Stime.Nano()) / 1e6
}

func BenchmarkPlain(b *testing.B) {
	shapes := apart(seeded(8), 14, 1.0) // 841 dots a unit
	for _, z := range []struct {
		name string
		zoom float64
	}{{"40", 40}, {"8", 8}, {"4", 4}, {"2", 2}, {"1", 1}, {"0.3", 0.3}, {"0.05", 0.05}} {
		v := View{PxPerMM: z.zoom}
		b.Run("unit/"+z.name, func(b *testing.B) {
			g := NewGround(shapes, geom.PtMM(29, 14.5), geom.PtMM(0, 29))
			frame(b, v, func(p *Plane) { g.Paint(p, v, Lay{}) })
		})
		for _, name := range []string{"45°", "fitted", "skew"} {
			b.Run(name+"/"+z.name, func(b *testing.B) {
				g := NewGround([]geom.Shape{geom.DiscShape(geom.Point{}, 500_000)}, lattices[name][0], lattices[name][1])
				frame(b, v, func(p *Plane) { g.Paint(p, v, Lay{}) })
			})
		}
	}
}

func BenchmarkSheet(b *testing.B) {
	g := sheet()
	v := View{PxPerMM: 4.2}
	frame(b, v, func(p *Plane) { g.Paint(p, v, Lay{}) })
}

func BenchmarkBolt(b *testing.B) {
	g, lays := sheet(), bolt(70)
	for _, z := range []struct {
		name string
		zoom float64
	}{{"0.078", 0.078}, {"0.3", 0.3}, {"1", 1}, {"4", 4}} {
		v := View{X: -100, PxPerMM: z.zoom}
		b.Run("drifting/"+z.name, func(b *testing.B) {
			frame(b, v, func(p *Plane) { g.PaintAll(p, v, lays...) })
		})
		b.Run("alone/"+z.name, func(b *testing.B) {
			frame(b, v, func(p *Plane) {
				for _, lay := range lays {
					g.Paint(p, v, lay)
				}
			})
		})
	}
}

func BenchmarkGarment(b *testing.B) {
	one := sheet()
	step := []geom.Point{geom.PtMM(0, 181.818182)}
	g := &Ground{unit: one.unit, periods: step, patch: one.unit, steps: step}
	v := View{PxPerMM: 0.6}
	var lays []Lay
	for i := range 12 {
		x, y := 20+float64(i%6)*420, 30+float64(i/6)*800
		lays = append(lays, Lay{Move: geom.PtMM(x, y), Turned: i%3 == 1,
			Clip: geom.BoxOf(geom.PtMM(x, y), geom.PtMM(x+375, y+760))})
		if lays[i].Turned {
			lays[i].Move = geom.PtMM(x+375, y+760)
		}
	}
	frame(b, v, func(p *Plane) { g.PaintAll(p, v, lays...) })
}

func BenchmarkOutlines(b *testing.B) {
	g := NewGround(blades(), geom.PtMM(9, 0), geom.PtMM(0, 9))
	for _, z := range []struct {
		name string
		zoom float64
	}{{"40", 40}, {"4", 4}, {"0.3", 0.3}} {
		v := View{PxPerMM: z.zoom}
		b.Run(z.name, func(b *testing.B) { frame(b, v, func(p *Plane) { g.Paint(p, v, Lay{}) }) })
	}
}

// What a frame costs more where a sheet of 63,504 dots is first seen at a zoom: its fine
// cells once, and a tone for each stage.
func BenchmarkTone(b *testing.B) {
	b.Run("cells", func(b *testing.B) {
		g := sheet()
		u := g.setUpright()
		for b.Loop() {
			u.cells(g.pitch)
		}
	})
	for _, z := range []struct {
		name string
		zoom float64
	}{{"2.9", 2.9}, {"1", 1}, {"0.3", 0.3}, {"0.05", 0.05}} {
		b.Run("stage/"+z.name, func(b *testing.B) {
			g := sheet()
			u := g.setUpright()
			f := u.cells(g.pitch)
			_, knot := stage(z.zoom)
			for b.Loop() {
				u.tone(&f, knot)
			}
		})
	}
}
