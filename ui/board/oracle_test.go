package board

import (
	"math"
	"math/rand/v2"
	"slices"

	"tsugime/export/raster"
	"tsugime/repeat/geom"
)

// The oracle knows nothing of areas, tables or tones. It lays lines through the footprint of
// a pixel, asks of every shape between which places it covers each line, joins what
// overlaps, and adds up what the footprint weighs between them.

// A plainGround is a uniform ground: shapes on a lattice.
type plainGround struct {
	name   string
	shapes []geom.Shape
	rings  [][]geom.Ring // of outlines
	boxes  []geom.Box
	a, b   geom.Point
	ground *raster.Ground
}

func newPlain(name string, shapes []geom.Shape, a, b geom.Point) *plainGround {
	g := &plainGround{name: name, shapes: shapes, a: a, b: b, ground: raster.NewGround(shapes, a, b)}
	for _, s := range shapes {
		g.boxes = append(g.boxes, s.Bounds())
		var r []geom.Ring
		if !s.Round() {
			r = s.Rings(50) // nanometres
		}
		g.rings = append(g.rings, r)
	}
	return g
}

// span is where a shape covers a line, millimetres.
type span struct{ from, to float64 }

// covered returns how much of the footprint about (x, y) is open, in millimetres;
// reach is how far it goes each way, weight its curve from the middle, summed how much
// lies before a place. lines are laid at random within even strips.
func (g *plainGround) covered(x, y, reach float64, lines int, weight, summed func(mm float64) float64, r *rand.Rand) float64 {
	at, spans := make([]float64, lines), make([][]span, lines)
	strip := 2 * reach / float64(lines)
	for k := range at {
		at[k] = y - reach + (float64(k)+r.Float64())*strip
	}
	put := func(k int, s span) {
		if s.to > x-reach && s.from < x+reach {
			spans[k] = append(spans[k], s)
		}
	}
	each := func(from, to float64, do func(k int)) {
		for k := max(int((from-y+reach)/strip)-1, 0); k < min(int((to-y+reach)/strip)+2, lines); k++ {
			if at[k] > from && at[k] < to {
				do(k)
			}
		}
	}
	for i, s := range g.shapes {
		seen := geom.BoxOf(geom.PtMM(x-reach, y-reach), geom.PtMM(x+reach, y+reach))
		for _, d := range g.places(i, seen) {
			dx, dy := d.X.MM(), d.Y.MM()
			if s.Round() {
				cx, cy, radius := s.Disc.Centre.X.MM()+dx, s.Disc.Centre.Y.MM()+dy, s.Disc.RadiusMM()
				each(cy-radius, cy+radius, func(k int) {
					h := math.Sqrt(radius*radius - (at[k]-cy)*(at[k]-cy))
					put(k, span{cx - h, cx + h})
				})
				continue
			}
			crossed := map[int][]turning{}
			for _, ring := range g.rings[i] {
				for j, q := range ring {
					p := ring[(j+len(ring)-1)%len(ring)]
					px, py, qx, qy := p.X.MM()+dx, p.Y.MM()+dy, q.X.MM()+dx, q.Y.MM()+dy
					each(math.Min(py, qy), math.Max(py, qy), func(k int) {
						turn := 1
						if qy < py {
							turn = -1
						}
						crossed[k] = append(crossed[k], turning{px + (at[k]-py)/(qy-py)*(qx-px), turn})
					})
				}
			}
			for k, c := range crossed {
				for _, s := range wound(c) {
					put(k, s)
				}
			}
		}
	}
	sum, all := 0.0, 0.0
	for k, line := range spans {
		w := weight(at[k] - y)
		all += w
		slices.SortFunc(line, func(a, b span) int {
			if a.from < b.from {
				return -1
			}
			return 1
		})
		done := x - reach
		for _, s := range line {
			from, to := math.Max(s.from, done), math.Min(s.to, x+reach)
			if to > from {
				sum += w * (summed(to-x) - summed(from-x))
				done = to
			}
		}
	}
	return sum / all
}

// turning is where an outline crosses a line, and which way.
type turning struct {
	x  float64
	by int
}

// wound returns where crossings wind around a line not zero times.
func wound(c []turning) []span {
	slices.SortFunc(c, func(a, b turning) int {
		if a.x < b.x {
			return -1
		}
		return 1
	})
	var spans []span
	n := 0
	for i, t := range c {
		if n != 0 {
			spans = append(spans, span{c[i-1].x, t.x})
		}
		n += t.by
	}
	return spans
}

// places returns the copies of shape i that can meet a box.
func (g *plainGround) places(i int, seen geom.Box) []geom.Point {
	ax, ay, bx, by := g.a.X.MM(), g.a.Y.MM(), g.b.X.MM(), g.b.Y.MM()
	det := ax*by - ay*bx
	o := g.boxes[i]
	lo0, lo1, hi0, hi1 := math.Inf(1), math.Inf(1), math.Inf(-1), math.Inf(-1)
	for _, x := range []float64{seen.Min.X.MM() - o.Max.X.MM(), seen.Max.X.MM() - o.Min.X.MM()} {
		for _, y := range []float64{seen.Min.Y.MM() - o.Max.Y.MM(), seen.Max.Y.MM() - o.Min.Y.MM()} {
			m, n := (x*by-y*bx)/det, (ax*y-ay*x)/det
			lo0, hi0, lo1, hi1 = math.Min(lo0, m), math.Max(hi0, m), math.Min(lo1, n), math.Max(hi1, n)
		}
	}
	var all []geom.Point
	for m := int(math.Floor(lo0)); m <= int(math.Ceil(hi0)); m++ {
		for n := int(math.Floor(lo1)); n <= int(math.Ceil(hi1)); n++ {
			d := g.a.Times(m).Add(g.b.Times(n))
			if o.Moved(d).Meets(seen) {
				all = append(all, d)
			}
		}
	}
	return all
}

// footprint returns the curve of a ground's footprint at a zoom as it is documented:
// half its width, its weights and their sum from the left; pixels.
func footprint(g *raster.Ground, zoom float64) (reach float64, weight, summed func(px float64) float64) {
	switch g.Footprint(zoom) {
	case raster.Soft:
		return 1, func(x float64) float64 {
				if x = math.Abs(x); x < 0.5 {
					return 0.75
				} else if x < 1 {
					return 0.25
				}
				return 0
			}, func(x float64) float64 {
				inner := math.Min(math.Max(x, -0.5), 0.5)
				return 0.25*(x+1) + 0.5*(inner+0.5)
			}
	case raster.Wide:
		knot := 3 * zoom * math.Exp2(-math.Floor(2*math.Log2(3/1.6*zoom))/2)
		// Four boxes drawn over one another, by divided differences of x³.
		power := func(x float64, n float64) float64 { return math.Pow(math.Max(x, 0), n) }
		sums := func(x, n, f float64) float64 {
			s := 0.0
			for k, c := range []float64{1, -4, 6, -4, 1} {
				s += c * power(x/knot+2-float64(k), n)
			}
			return s / f
		}
		return 2 * knot, func(x float64) float64 { return sums(x, 3, 6) / knot }, func(x float64) float64 { return sums(x, 4, 24) }
	}
	return 0.5, func(float64) float64 { return 1 }, func(x float64) float64 { return x }
}
