package bench_test

import (
	"math"
	"testing"

	"tsugime/repeat/bench"
	"tsugime/repeat/geom"
)

func lengthMM(path []geom.Point) (sum float64) {
	for i := 1; i < len(path); i++ {
		sum += path[i].Sub(path[i-1]).Norm() / 1e6
	}
	return sum
}

// Around a square the axis goes its four sides and swings a quarter circle at each
// corner: three of them, or four where it goes on past its start.
func TestTheWayAroundASquareIsItsSidesAndItsSwings(t *testing.T) {
	square := geom.Shape{Outline: outline(t, "M0 0H20V20H0Z")}
	for _, c := range []struct{ offset, over, want float64 }{
		{0, 0, 80}, {0, 1.5, 81.5}, {0.25, 0, 80 + 3*0.25*math.Pi/2},
		{0.25, 1.5, 80 + 4*0.25*math.Pi/2 + 1.5}, {0.5, 25, 80 + 5*0.5*math.Pi/2 + 25},
	} {
		paths := bench.Blade{Offset: geom.MM(c.offset), Overcut: geom.MM(c.over)}.Paths(square)
		if len(paths) != 1 {
			t.Fatalf("%d paths, want 1", len(paths))
		}
		// Each chord of a swing is shorter than its arc by less than a hundredth.
		if got := lengthMM(paths[0]); got > c.want+1e-6 || got < c.want-0.01*c.offset*8 {
			t.Errorf("offset %v, overcut %v: %.4f mm, want %.4f", c.offset, c.over, got, c.want)
		}
	}
}

// The axis of a blade that cuts a circle of radius r runs on one of √(r² + offset²).
func TestTheWayAroundADiscIsALargerCircle(t *testing.T) {
	const offset = 0.4
	for _, r := range []float64{0.15, 0.5, 3, 40} {
		path := bench.Blade{Offset: geom.MM(offset)}.Paths(geom.DiscShape(geom.PtMM(10, 10), geom.MM(2*r)))[0]
		for _, p := range path[1 : len(path)-1] {
			if got := p.Sub(geom.PtMM(10, 10)).Norm() / 1e6; math.Abs(got-math.Hypot(r, offset)) > 0.006 {
				t.Fatalf("radius %v: the axis is %.4f mm from the centre, want %.4f", r, got, math.Hypot(r, offset))
			}
		}
	}
}

// The tip of a blade is dragged: it moves towards the axis and stays its offset away
// from it. Following the path in small steps it never leaves the rim.
func TestADraggedTipFollowsTheRim(t *testing.T) {
	const offset = 0.3
	for _, path := range []string{
		"M0 0H20V12H0Z", "M0 0L20 0L3 5Z", "M5 0A5 5 0 0 1 -5 0A5 5 0 0 1 5 0Z",
		"M0 0C10 -8 20 8 30 0V15C20 8 10 20 0 10Z", "M0 0H12V9H0Z M3 3V6H8V3Z",
	} {
		o := outline(t, path)
		rings := o.Rings(geom.Chord)
		for _, way := range (bench.Blade{Offset: geom.MM(offset), Overcut: geom.MM(2)}).Paths(geom.Shape{Outline: o}) {
			first := way[1].Sub(way[0])
			k := 1e6 * offset / first.Norm()
			tx, ty := float64(way[0].X)-k*float64(first.X), float64(way[0].Y)-k*float64(first.Y)
			for i := 1; i < len(way); i++ {
				a, b := way[i-1], way[i]
				steps := int(b.Sub(a).Norm()/2000) + 1
				for s := 1; s <= steps; s++ {
					f := float64(s) / float64(steps)
					x, y := float64(a.X)+f*float64(b.X-a.X), float64(a.Y)+f*float64(b.Y-a.Y)
					d := math.Hypot(x-tx, y-ty)
					tx, ty = x-(x-tx)/d*1e6*offset, y-(y-ty)/d*1e6*offset
					if off := toRings(rings, tx, ty) / 1e6; off > 0.02 {
						t.Fatalf("%s: the tip is %.4f mm off the rim at %.2f, %.2f mm", path, off, tx/1e6, ty/1e6)
					}
				}
			}
		}
	}
}

func toRings(rings []geom.Ring, x, y float64) float64 {
	least := math.Inf(1)
	for _, r := range rings {
		for i, a := range r {
			b := r[(i+1)%len(r)]
			dx, dy := float64(b.X-a.X), float64(b.Y-a.Y)
			f := ((x-float64(a.X))*dx + (y-float64(a.Y))*dy) / (dx*dx + dy*dy)
			f = math.Min(math.Max(f, 0), 1)
			least = math.Min(least, math.Hypot(x-float64(a.X)-f*dx, y-float64(a.Y)-f*dy))
		}
	}
	return least
}
