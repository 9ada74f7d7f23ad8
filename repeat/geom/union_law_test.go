package geom

import (
	"math"
	"math/rand/v2"
	"slices"
	"testing"
)

// movedShapes returns every ring moved by d.
func movedShapes(shapes [][]Ring, d Point) [][]Ring {
	moved := make([][]Ring, len(shapes))
	for i, shape := range shapes {
		for _, r := range shape {
			moved[i] = append(moved[i], r.Moved(d))
		}
	}
	return moved
}

// boundariesEqual reports whether q is p moved by d, to the bit.
func boundariesEqual(p, q []Boundary, d Point) bool {
	return slices.EqualFunc(p, q, func(b, c Boundary) bool {
		return b.Wrap == c.Wrap && slices.Equal(b.Points.Moved(d), c.Points)
	})
}

func TestUnionMovesWithItsShapesToTheBit(t *testing.T) {
	rng := rand.New(rand.NewPCG(7, 7))
	for k := range 60 {
		l := someLattices()[k%6]
		shapes := scene(rng, l[0], l[1])
		r := mustUnion(t, shapes, l[0], l[1])
		for range 4 {
			d := Point{Length(rng.Int64N(600_000_000) - 300_000_000), Length(rng.Int64N(600_000_000) - 300_000_000)}
			moved := mustUnion(t, movedShapes(shapes, d), l[0], l[1])
			if !boundariesEqual(r.Boundaries, moved.Boundaries, d) {
				t.Fatalf("scene %d: not the same after moving by %v", k, d)
			}
			if got, want := moved.AreaMM2(), r.AreaMM2(); got != want {
				t.Errorf("scene %d: %.17g mm2 after moving by %v, want %.17g", k, got, d, want)
			}
		}
	}
}

func TestUnionIsTheSameForEveryBasisOfTheLattice(t *testing.T) {
	rng := rand.New(rand.NewPCG(8, 8))
	for k := range 60 {
		l := someLattices()[k%6]
		a, b := l[0], l[1]
		shapes := scene(rng, a, b)
		r := mustUnion(t, shapes, a, b)
		for _, other := range [][2]Point{{b, a}, {a.Neg(), b}, {a.Add(b), b}, {a, b.Sub(a.Times(2))}, {a.Add(b), a.Add(b.Times(2))}} {
			again := mustUnion(t, shapes, other[0], other[1])
			if !boundariesEqual(r.Boundaries, again.Boundaries, Point{}) || r.AreaMM2() != again.AreaMM2() {
				t.Fatalf("scene %d: not the same with the periods %v", k, other)
			}
			if got, want := again.Loose(), r.Loose(); !slices.Equal(got, want) {
				t.Errorf("scene %d: faces %v with the periods %v, want %v", k, got, other, want)
			}
		}
	}
}

// The area of a union by counting, over the whole arrangement, is at least that of
// the largest shape and at most that of all, and a union of a union is itself.
func TestUnionOfAUnionIsItself(t *testing.T) {
	rng := rand.New(rand.NewPCG(9, 9))
	for k := range 100 {
		shapes := scene(rng, PtMM(100, 0), PtMM(0, 60))
		checkUnion(t, k, shapes)
	}
}

// checkUnion checks the laws of a union in the plane.
func checkUnion(t *testing.T, k int, shapes [][]Ring) {
	t.Helper()
	r := mustUnion(t, shapes)
	var most, sum, rim float64
	for _, s := range shapes {
		one := mustUnion(t, [][]Ring{s})
		most, sum = math.Max(most, one.AreaMM2()), sum+one.AreaMM2()
		for _, b := range one.Boundaries {
			rim += b.lengthMM()
		}
	}
	// Putting crossings on the grid moves a line by a few nanometres at most.
	slack := 5e-6*rim + 1e-9
	area := r.AreaMM2()
	if area < most-slack || area > sum+slack {
		t.Errorf("scene %d: area %.9f mm2, want between %.9f and %.9f", k, area, most, sum)
	}
	again := make([]Ring, len(r.Boundaries))
	for i, b := range r.Boundaries {
		again[i] = b.Points
	}
	twice := mustUnion(t, [][]Ring{again})
	if math.Abs(twice.AreaMM2()-area) > 1e-9*math.Max(1, area) || len(twice.Boundaries) != len(r.Boundaries) {
		t.Errorf("scene %d: the union of the union has %.9f mm2 in %d lines, want %.9f in %d",
			k, twice.AreaMM2(), len(twice.Boundaries), area, len(r.Boundaries))
	}
}

// An overlap area by summing over scan lines is an oracle that shares nothing with
// the arrangement. Its error is that of the trapezoid rule.
func TestUnionCoversWhatScanLinesCount(t *testing.T) {
	rng := rand.New(rand.NewPCG(10, 10))
	for k := range 60 {
		l := someLattices()[k%5]
		shapes := scene(rng, l[0], l[1])
		const n = 1000
		cut := rasterCut(shapes, l[0], l[1], n)
		cells := 0
		for _, c := range cut {
			if c {
				cells++
			}
		}
		cell := math.Abs(cross(l[0], l[1], Point{})) / float64(Millimetre*Millimetre)
		r := mustUnion(t, shapes, l[0], l[1])
		var rim float64
		for _, b := range r.Boundaries {
			rim += b.lengthMM()
		}
		want := cell * float64(cells) / (n * n)
		slack := 0.02 * rim * math.Sqrt(cell) / math.Sqrt(n)
		if got := r.AreaMM2(); math.Abs(got-want) > slack {
			t.Errorf("scene %d: %.4f mm2, counted %.4f ± %.4f", k, got, want, slack)
		}
	}
}

// Scenes on a coarse grid: edges that coincide, vertices on edges, vertices that
// meet, shapes twice and backwards.
func TestUnionTakesShapesThatCoincide(t *testing.T) {
	rng := rand.New(rand.NewPCG(11, 11))
	at := func() Point { return PtMM(float64(2*rng.IntN(15)), float64(2*rng.IntN(10))) }
	for k := range 300 {
		var shapes [][]Ring
		for range 1 + rng.IntN(20) {
			p, q := at(), at()
			switch rng.IntN(4) {
			case 0:
				shapes = append(shapes, []Ring{{p, {q.X, p.Y}, q, {p.X, q.Y}}})
			case 1:
				shapes = append(shapes, []Ring{{p, q, at()}})
			case 2:
				shapes = append(shapes, []Ring{{p, q, at(), at()}})
			default:
				if len(shapes) > 0 {
					shapes = append(shapes, []Ring{reversed(shapes[0][0])})
				}
			}
		}
		checkUnion(t, k, shapes)
	}
}

// Rectangles on a grid of 2 mm and a raster of 1 mm: the raster is exact, and
// paper that meets in a corner only is parted by both.
func TestLooseFacesOfRectanglesAreExactlyThoseOfTheRaster(t *testing.T) {
	rng := rand.New(rand.NewPCG(12, 12))
	a, b := PtMM(40, 0), PtMM(0, 40)
	for k := range 2000 {
		var shapes [][]Ring
		for range 1 + rng.IntN(30) {
			x, y := float64(2*rng.IntN(20)), float64(2*rng.IntN(20))
			w, h := float64(2*(1+rng.IntN(6))), float64(2*(1+rng.IntN(6)))
			if rng.IntN(8) == 0 {
				w = float64(2 * (1 + rng.IntN(25)))
			}
			shapes = append(shapes, []Ring{rectangle(x, y, x+w, y+h)})
		}
		r := mustUnion(t, shapes, a, b)
		parts, cells := rasterParts(shapes, a, b, 40)
		if got, want := r.AreaMM2(), 1600-float64(cells); math.Abs(got-want) > 1e-9 {
			t.Errorf("scene %d: area %.12f mm2, want %g", k, got, want)
		}
		if got, want := count(r.Loose(), whole(r, 1600)), countRaster(parts, a, b, 1); got != want {
			t.Errorf("scene %d: %s, on the raster %s", k, got, want)
		}
		if !slices.Equal(facesAreas(r.Loose()), rasterAreas(parts)) {
			t.Errorf("scene %d: islands of %v mm2, on the raster %v", k, facesAreas(r.Loose()), rasterAreas(parts))
		}
	}
}

// facesAreas returns the areas of loose faces in whole square millimetres, rising.
func facesAreas(faces []Face) []int {
	var areas []int
	for _, f := range faces {
		areas = append(areas, int(math.Round(f.AreaMM2)))
	}
	slices.Sort(areas)
	return areas
}

func rasterAreas(parts []rasterPart) []int {
	var areas []int
	for _, p := range parts {
		if len(p.loops) < 2 {
			areas = append(areas, p.cells)
		}
	}
	slices.Sort(areas)
	return areas
}

func FuzzUnion(f *testing.F) {
	f.Add([]byte{0, 0, 8, 0, 8, 8, 0, 8, 255, 4, 4, 12, 4, 12, 12, 4, 12})
	f.Add([]byte{0, 0, 9, 7, 9, 0, 0, 7, 255, 0, 0, 9, 7, 1, 3})
	f.Fuzz(func(t *testing.T, data []byte) {
		var shapes [][]Ring
		var ring Ring
		for len(data) > 1 && len(shapes) < 12 {
			if data[0] == 255 || len(ring) > 12 {
				shapes, ring = append(shapes, []Ring{ring}), nil
				data = data[1:]
				continue
			}
			// Few nanometres: everything meets everything.
			ring = append(ring, Point{Length(data[0]), Length(data[1])})
			data = data[2:]
		}
		checkUnion(t, 0, append(shapes, []Ring{ring}))
		if _, err := Union(append(shapes, []Ring{ring}), Point{97, 13}, Point{-5, 101}); err != nil {
			t.Error(err)
		}
	})
}
