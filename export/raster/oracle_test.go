package raster

import (
	"math"
	"math/rand/v2"
	"slices"
	"testing"

	"tsugime/repeat/geom"
)

// The oracle knows nothing of areas: it cuts each pixel into fine lines, asks of
// every shape between which places it covers the line, joins what overlaps, and
// adds up lengths.

const oracleLines = 512

// span is where a shape covers a line.
type span struct{ from, to float64 }

// exactCover returns the covered part of the pixel whose corner lies at x, y
// and that is size wide, in millimetres.
func exactCover(shapes []geom.Shape, rings [][]geom.Ring, x, y, size float64) float64 {
	sum := 0.0
	var spans []span
	for k := range oracleLines {
		at := y + (float64(k)+0.5)*size/oracleLines
		spans = spans[:0]
		for i, s := range shapes {
			if s.Round() {
				dy := at - s.Disc.Centre.Y.MM()
				if h := s.Disc.RadiusMM()*s.Disc.RadiusMM() - dy*dy; h > 0 {
					c, h := s.Disc.Centre.X.MM(), math.Sqrt(h)
					spans = append(spans, span{c - h, c + h})
				}
				continue
			}
			spans = append(spans, ringSpans(rings[i], at)...)
		}
		slices.SortFunc(spans, func(a, b span) int {
			if a.from < b.from {
				return -1
			}
			return 1
		})
		done := x
		for _, s := range spans {
			from, to := math.Max(s.from, done), math.Min(s.to, x+size)
			if to > from {
				sum += to - from
				done = to
			}
		}
	}
	return sum / size / oracleLines
}

// ringSpans returns where rings wind around a line not zero times.
func ringSpans(rings []geom.Ring, at float64) []span {
	type crossing struct {
		x    float64
		turn int
	}
	var cs []crossing
	for _, r := range rings {
		for i, b := range r {
			a := r[(i+len(r)-1)%len(r)]
			ay, by := a.Y.MM(), b.Y.MM()
			if (ay > at) == (by > at) {
				continue
			}
			turn := 1
			if by < ay {
				turn = -1
			}
			cs = append(cs, crossing{a.X.MM() + (at-ay)/(by-ay)*(b.X.MM()-a.X.MM()), turn})
		}
	}
	slices.SortFunc(cs, func(a, b crossing) int {
		if a.x < b.x {
			return -1
		}
		return 1
	})
	var spans []span
	n := 0
	for i, c := range cs {
		if n != 0 {
			spans = append(spans, span{cs[i-1].x, c.x})
		}
		n += c.turn
	}
	return spans
}

// worstAgainstOracle compares pixels of p, every strideth one, with the oracle.
func worstAgainstOracle(t *testing.T, p *Plane, v View, shapes []geom.Shape, stride int) (worst float64) {
	t.Helper()
	size := 1 / v.PxPerMM
	boxes, fine := make([]rect, len(shapes)), make([][]geom.Ring, len(shapes))
	for i, s := range shapes {
		boxes[i] = rectOf(s.Bounds())
		if !s.Round() {
			fine[i] = s.Rings(10)
		}
	}
	for y := 0; y < p.H; y += stride {
		for x := 0; x < p.W; x += stride {
			px := rect{v.X + float64(x)*size, v.Y + float64(y)*size, v.X + float64(x+1)*size, v.Y + float64(y+1)*size}
			var near []geom.Shape
			var rings [][]geom.Ring
			for i, s := range shapes {
				if boxes[i].meets(px) {
					near = append(near, s)
					rings = append(rings, fine[i])
				}
			}
			want := exactCover(near, rings, px.x0, px.y0, size)
			got := float64(p.sum[y*p.W+x])
			worst = math.Max(worst, math.Abs(got-want)*255)
			if d := math.Abs(float64(p.Cover[y*p.W+x]) - 255*want); d > 1 {
				t.Fatalf("pixel %d, %d at %g px/mm: level %d, want %.3f", x, y, v.PxPerMM, p.Cover[y*p.W+x], 255*want)
			}
		}
	}
	return worst
}

func seeded(n uint64) *rand.Rand { return rand.New(rand.NewPCG(n, 1)) }

// zooms returns n zooms from lo to hi, evenly spaced as ratios.
func zooms(n int, lo, hi float64) []float64 {
	z := make([]float64, n)
	for i := range z {
		z[i] = lo * math.Pow(hi/lo, float64(i)/float64(n-1))
	}
	return z
}

// apart returns discs that stand free of each other around the origin.
func apart(r *rand.Rand, n int, pitch float64) []geom.Shape {
	var shapes []geom.Shape
	for j := -n; j <= n; j++ {
		for i := -n; i <= n; i++ {
			d := pitch * (0.2 + 0.5*r.Float64())
			slack := (pitch - d) / 2
			c := geom.PtMM(float64(i)*pitch+slack*(2*r.Float64()-1), float64(j)*pitch+slack*(2*r.Float64()-1))
			shapes = append(shapes, geom.DiscShape(c, geom.MM(d)))
		}
	}
	return shapes
}

// blades returns outlines of lines, arcs and cubics with a hole among them.
func blades() []geom.Shape {
	at := geom.PtMM
	line := func(x, y float64) geom.Segment { return geom.Segment{Kind: geom.Line, End: at(x, y)} }
	arc := func(x, y, bulge float64) geom.Segment {
		return geom.Segment{Kind: geom.Arc, End: at(x, y), Bulge: bulge}
	}
	cubic := func(a, b, c geom.Point) geom.Segment { return geom.Segment{Kind: geom.Cubic, C1: a, C2: b, End: c} }
	star := geom.Contour{Start: at(0.1, -3.9)}
	for i := 1; i < 10; i++ {
		r := 1.0
		if i%2 == 0 {
			r = 2.1
		}
		s, c := math.Sincos(float64(i) * math.Pi / 5)
		star.Segments = append(star.Segments, line(0.1+r*s, -1.8-r*c))
	}
	leaf := geom.Contour{Start: at(-2, 2), Segments: []geom.Segment{
		cubic(at(-1.5, 0.4), at(0.2, 0.3), at(1, 1.7)), cubic(at(0.4, 3.2), at(-1, 3.3), at(-2, 2))}}
	ring := geom.Outline{
		{Start: at(2, 1), Segments: []geom.Segment{arc(4, 1, 1), arc(2, 1, 1)}},
		{Start: at(2.5, 1), Segments: []geom.Segment{arc(3.5, 1, -1), arc(2.5, 1, -1)}},
	}
	slit := geom.Outline{{Start: at(-3.5, -1), Segments: []geom.Segment{line(-3.45, 1.7), line(-3.4, 1.7), line(-3.43, -1)}}}
	return []geom.Shape{{Outline: geom.Outline{star}}, {Outline: geom.Outline{leaf}}, {Outline: ring}, {Outline: slit}}
}
