package raster

import (
	"math"
	"slices"
	"testing"

	"tsugime/repeat/geom"
)

func TestEveryPixelHoldsTheExactAreaOfTheDiscs(t *testing.T) {
	r := seeded(1)
	worst := 0.0
	for _, zoom := range zooms(40, 0.05, 40) {
		// About two discs to three pixels at most, so that some pixels hold many
		// discs and some discs hold many pixels.
		shapes := apart(r, 12, math.Max(1, 6/zoom)/(1+9*r.Float64()))
		v := View{X: -6/zoom + r.Float64(), Y: -5/zoom + r.Float64(), PxPerMM: zoom}
		p := NewPlane(12, 10)
		NewGround(shapes).Paint(p, v, Lay{})
		worst = math.Max(worst, worstAgainstOracle(t, p, v, shapes, 1))
	}
	t.Logf("worst error before rounding: %.4f levels", worst)
	if worst > 0.25 {
		t.Errorf("discs are off by %.4f levels before rounding, want at most 0.25", worst)
	}
}

func TestEveryPixelHoldsTheExactAreaOfTheOutlines(t *testing.T) {
	r := seeded(2)
	worst := 0.0
	for _, zoom := range zooms(24, 0.05, 40) {
		v := View{X: -4 + 4*r.Float64(), Y: -4 + 4*r.Float64(), PxPerMM: zoom}
		p := NewPlane(40, 36)
		NewGround(blades()).Paint(p, v, Lay{})
		worst = math.Max(worst, worstAgainstOracle(t, p, v, blades(), 3))
	}
	t.Logf("worst error before rounding: %.4f levels", worst)
	if worst > 0.5 {
		t.Errorf("outlines are off by %.4f levels before rounding, want at most 0.5", worst)
	}
}

// lattices are the grounds that must look even: a square, a 45°, a half drop, a
// skew one, and one that was strained to fit a step.
var lattices = map[string][2]geom.Point{
	"square":    {geom.PtMM(1, 0), geom.PtMM(0, 1)},
	"45°":       {geom.PtMM(0.707107, 0.707107), geom.PtMM(0.707107, -0.707107)},
	"half-drop": {geom.PtMM(1.2, 0.55), geom.PtMM(0, 1.1)},
	"skew":      {geom.PtMM(1.013577, 0.217331), geom.PtMM(-0.341113, 0.930071)},
	"fitted":    {geom.PtMM(0.996923, 0.017417), geom.PtMM(-0.016129, 1.003187)},
}

func names() []string {
	var n []string
	for name := range lattices {
		n = append(n, name)
	}
	slices.Sort(n)
	return n
}

// around returns the discs of a plain ground that a pixel row or block can see.
func around(l [2]geom.Point, d geom.Length, w rect) []geom.Shape {
	g := NewGround([]geom.Shape{geom.DiscShape(geom.Point{}, d)}, l[0], l[1])
	var shapes []geom.Shape
	copies(g.unit.box, g.periods, w, func(p geom.Point) { shapes = append(shapes, geom.DiscShape(p, d)) })
	return shapes
}

func TestAUniformGroundShowsNothingThatIsNotInTheDesign(t *testing.T) {
	const d = 500 * geom.Micrometre
	for _, name := range names() {
		l := lattices[name]
		g := NewGround([]geom.Shape{geom.DiscShape(geom.Point{}, d)}, l[0], l[1])
		open := geom.DiscShape(geom.Point{}, d).AreaMM2() * 1e12 / math.Abs(cross(l[0], l[1]))
		worst, ways := 0.0, 0
		for _, zoom := range zooms(40, 0.05, 40) {
			v := View{X: 123.456 / zoom, Y: -77.7, PxPerMM: zoom}
			p := NewPlane(360, 240)
			if g.summed(p, v, []Lay{{}}) {
				ways++
			} else {
				g.direct(p, v, Lay{})
			}
			mean := 0.0
			for _, s := range p.sum {
				mean += float64(s)
			}
			mean /= float64(len(p.sum))
			// At the rim of the picture a row of dots is in or out.
			if rim := 2 * zoom * (1.0/360 + 1.0/240) * open; math.Abs(mean-open) > rim {
				t.Errorf("%s at %g px/mm: %.5f of the picture is open, want %.5f", name, zoom, mean, open)
			}
			for _, at := range [][2]int{{0, 0}, {176, 118}, {352, 236}} {
				worst = math.Max(worst, worstInBlock(t, p, v, l, d, at, 6))
			}
		}
		t.Logf("%s: worst error before rounding %.4f levels, %d of 40 zooms by sums", name, worst, ways)
		if worst > 0.5 {
			t.Errorf("%s: a pixel is off by %.4f levels before rounding, want at most 0.5", name, worst)
		}
		if ways < 5 {
			t.Errorf("%s: only %d zooms went by way of sums, want 5 at least", name, ways)
		}
	}
}

// worstInBlock compares a block of pixels of a plain ground with the oracle.
func worstInBlock(t *testing.T, p *Plane, v View, l [2]geom.Point, d geom.Length, at [2]int, n int) float64 {
	t.Helper()
	n = min(n, p.W-at[0], p.H-at[1])
	part := NewPlane(n, n)
	for y := range n {
		copy(part.sum[y*n:][:n], p.sum[(at[1]+y)*p.W+at[0]:])
		copy(part.Cover[y*n:][:n], p.Cover[(at[1]+y)*p.W+at[0]:])
	}
	v.X, v.Y = v.X+float64(at[0])/v.PxPerMM, v.Y+float64(at[1])/v.PxPerMM
	size := float64(n) / v.PxPerMM
	return worstAgainstOracle(t, part, v, around(l, d, rect{v.X, v.Y, v.X + size, v.Y + size}), 3)
}

// A lattice that no axis suits is summed up over periods that lean a little: even
// at the rim of a large picture that must not show.
func TestALeaningLatticeIsTrueToTheRimOfThePicture(t *testing.T) {
	const d = 500 * geom.Micrometre
	r := seeded(13)
	worst := 0.0
	for range 8 {
		l := [2]geom.Point{geom.PtMM(1+0.1*r.Float64(), 0.3*r.Float64()), geom.PtMM(0.4*r.Float64(), 1+0.2*r.Float64())}
		g := NewGround([]geom.Shape{geom.DiscShape(geom.Point{}, d)}, l[0], l[1])
		v := View{X: 311, Y: -47, PxPerMM: 0.2 + 0.2*r.Float64()}
		p := NewPlane(1600, 1000)
		if !g.summed(p, v, []Lay{{}}) {
			t.Fatalf("%v: not summed up", l)
		}
		for _, at := range [][2]int{{0, 0}, {1590, 0}, {0, 990}, {1590, 990}} {
			worst = math.Max(worst, worstInBlock(t, p, v, l, d, at, 6))
		}
	}
	t.Logf("worst error before rounding: %.4f levels", worst)
	if worst > 0.5 {
		t.Errorf("a pixel at the rim is off by %.4f levels before rounding, want at most 0.5", worst)
	}
}

// The rounding that is left must be noise: a line in its spectrum would be a band.
func TestWhatRoundingLeavesMakesNoBands(t *testing.T) {
	const d, n = 500 * geom.Micrometre, 256
	for _, name := range names() {
		l := lattices[name]
		g := NewGround([]geom.Shape{geom.DiscShape(geom.Point{}, d)}, l[0], l[1])
		for _, zoom := range []float64{0.31, 0.77, 1.03, 1.9} {
			v := View{X: 17.1, Y: 5.3, PxPerMM: zoom}
			p := NewPlane(n, 300)
			if !g.summed(p, v, []Lay{{}}) {
				g.direct(p, v, Lay{})
			}
			size := 1 / zoom
			shapes := around(l, d, rect{v.X, v.Y, v.X + n*size, v.Y + size})
			residue := make([]float64, n)
			for x := range residue {
				x0 := v.X + float64(x)*size
				var near []geom.Shape
				for _, s := range shapes {
					if math.Abs(s.Disc.Centre.X.MM()-x0-size/2) < size/2+1 {
						near = append(near, s)
					}
				}
				residue[x] = float64(p.Cover[x]) - 255*exactCover(near, nil, x0, v.Y, size)
			}
			for k := 1; k < n/2; k++ {
				re, im := 0.0, 0.0
				for x, v := range residue {
					s, c := math.Sincos(2 * math.Pi * float64(k) * float64(x) / n)
					re, im = re+v*c, im+v*s
				}
				// A square-lattice row repeats, and so does its rounding; half a
				// level is what rounding can be.
				if a := 2 * math.Hypot(re, im) / n; a > 0.6 {
					t.Errorf("%s at %g px/mm: a band of %.3f levels, %d waves to the row", name, zoom, a, k)
				}
			}
		}
	}
}

func TestSumsAndSingleShapesGiveTheSamePicture(t *testing.T) {
	r := seeded(5)
	mixed := append(apart(r, 2, 1.9), blades()...)
	for i := range mixed[25:] {
		mixed[25+i] = mixed[25+i].Moved(geom.PtMM(11, 0))
	}
	cases := map[string]*Ground{
		"finite":       NewGround(mixed),
		"along y":      NewGround(mixed, geom.PtMM(0, 10.3)),
		"along x":      NewGround(mixed, geom.PtMM(21.7, 0)),
		"leaning":      NewGround(mixed, geom.PtMM(0.31, 10.3)),
		"plain":        NewGround(mixed, geom.PtMM(21.7, 0), geom.PtMM(0, 10.3)),
		"plain leaned": NewGround(mixed, geom.PtMM(21.7, 10.3), geom.PtMM(21.7, -10.3)),
	}
	lays := []Lay{{}, {Turned: true, Move: geom.PtMM(30, 20)}, {Move: geom.PtMM(3.3, -2.2), Clip: geom.BoxOf(geom.PtMM(1.23, 2.34), geom.PtMM(31.7, 17.9))}}
	for name, g := range cases {
		for _, zoom := range []float64{0.2, 1.3, 7} {
			v := View{X: -9.7, Y: -8.1, PxPerMM: zoom}
			for i, lay := range lays {
				want, got := NewPlane(150, 110), NewPlane(150, 110)
				g.direct(want, v, lay)
				forceSums(g, got, v, lay)
				for k := range want.sum {
					if d := math.Abs(float64(want.sum[k] - got.sum[k])); d > 2e-3 {
						t.Fatalf("%s, lay %d at %g px/mm, pixel %d, %d: %.5f by sums, %.5f one by one",
							name, i, zoom, k%150, k/150, got.sum[k], want.sum[k])
					}
				}
			}
		}
	}
}

// forceSums paints by way of sums whatever it costs.
func forceSums(g *Ground, p *Plane, v View, lays ...Lay) {
	t := g.tiled()
	windows := g.windows(t, p, v, lays)
	t.paint(p, v, windows, 0, p.H/3)
	t.paint(p, v, windows, p.H/3, p.H)
}
