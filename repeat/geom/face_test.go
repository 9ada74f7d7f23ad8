package geom

import (
	"fmt"
	"math"
	"math/rand/v2"
	"slices"
	"testing"
)

// stroke returns a line of the given width with round joints, as shapes.
func stroke(width float64, at ...Point) [][]Ring {
	var shapes [][]Ring
	for i, q := range at {
		shapes = append(shapes, []Ring{Disc{q, MM(width)}.Ring(20 * Micrometre)})
		if i == 0 {
			continue
		}
		p := at[i-1]
		way := q.Sub(p)
		k := MM(width/2).MM() / way.Norm() * float64(Millimetre)
		side := Point{-way.Y.Times(k), way.X.Times(k)}
		shapes = append(shapes, []Ring{{p.Sub(side), q.Sub(side), q.Add(side), p.Add(side)}})
	}
	return shapes
}

// hoop returns a stroke around a circle.
func hoop(x, y, radius, width float64) [][]Ring {
	var at []Point
	for i := range 25 {
		s, c := math.Sincos(2 * math.Pi * float64(i%24) / 24)
		at = append(at, PtMM(x+radius*c, y+radius*s))
	}
	return stroke(width, at...)
}

func joined(shapes ...[][]Ring) [][]Ring { return slices.Concat(shapes...) }

// count sums up faces: "islands 2, bands 1 along 100, 0".
func count(faces []Face, whole bool) string {
	islands := 0
	bands := ""
	for _, f := range faces {
		if f.Island() {
			islands++
		} else {
			bands += fmt.Sprintf(", band along %s, %s", f.Along.X, f.Along.Y)
		}
	}
	s := fmt.Sprintf("islands %d%s", islands, bands)
	if whole {
		s += ", whole"
	}
	return s
}

// countRaster is count for the raster; specks are left out.
func countRaster(parts []rasterPart, a, b Point, speck int) string {
	var faces []Face
	whole := false
	for _, p := range parts {
		switch {
		case len(p.loops) == 0 && p.cells >= speck:
			faces = append(faces, Face{})
		case len(p.loops) == 1:
			along := a.Times(p.loops[0][0]).Add(b.Times(p.loops[0][1]))
			if along.Less(Point{}) {
				along = along.Neg()
			}
			faces = append(faces, Face{Along: along})
		case len(p.loops) == 2:
			whole = true
		}
	}
	slices.SortStableFunc(faces, func(f, g Face) int {
		if f.Island() == g.Island() {
			return 0
		}
		if f.Island() {
			return -1
		}
		return 1
	})
	return count(faces, whole)
}

// whole reports whether r leaves a face that goes on in every direction: the area
// that the loose ones don't account for.
func whole(r Region, cell float64) bool {
	left := cell - r.AreaMM2()
	for _, f := range r.Loose() {
		left -= f.AreaMM2
	}
	return left > 1e-6
}

func TestLooseFacesAreThoseOfTheRaster(t *testing.T) {
	bar := func(x0, y0, x1, y1 float64) [][]Ring { return [][]Ring{{rectangle(x0, y0, x1, y1)}} }
	for _, c := range []struct {
		name   string
		shapes [][]Ring
		want   string
	}{
		{"nothing", nil, "islands 0, whole"},
		{"one disc", [][]Ring{{discRing(50, 30, 10)}}, "islands 0, whole"},
		{"a disc over the corner", [][]Ring{{discRing(0, 0, 10)}}, "islands 0, whole"},
		{"a ring", hoop(50, 30, 15, 3), "islands 1, whole"},
		{"a ring over the corner", hoop(0, 60, 15, 3), "islands 1, whole"},
		{"a ring in a ring", joined(hoop(50, 30, 20, 3), hoop(50, 30, 8, 3)), "islands 2, whole"},
		{"a stripe of one period", bar(0, 10, 100, 20), "islands 0, band along 100, 0"},
		{"a stripe longer than the period", bar(-7, 10, 130, 20), "islands 0, band along 100, 0"},
		{"a stripe along", bar(10, 0, 20, 60), "islands 0, band along 0, 60"},
		{"two stripes", joined(bar(0, 10, 100, 20), bar(0, 40, 100, 45)), "islands 0, band along 100, 0, band along 100, 0"},
		{"two stripes that cross", joined(bar(0, 10, 100, 20), bar(30, 0, 40, 60)), "islands 1"},
		{"a diagonal once each way", stroke(4, PtMM(0, 0), PtMM(100, 60)), "islands 0, band along 100, 60"},
		{"a diagonal twice across", stroke(4, PtMM(0, 0), PtMM(200, 60)), "islands 0, band along 200, 60"},
		{"a diagonal back, a disc, a ring", joined(stroke(4, PtMM(0, 0), PtMM(100, -60)), [][]Ring{{discRing(60, 30, 4)}}, hoop(20, 20, 5, 2)),
			"islands 1, band along -100, 60"},
		{"a zigzag", stroke(3, PtMM(0, 30), PtMM(25, 50), PtMM(50, 10), PtMM(75, 45), PtMM(100, 30)), "islands 0, band along 100, 0"},
		{"a stripe and a ring", joined(bar(0, 10, 100, 12), hoop(50, 40, 8, 2)), "islands 1, band along 100, 0"},
		{"a ring wider than the torus", hoop(50, 30, 45, 3), ""},
		{"everything", bar(0, 0, 100, 60), "islands 0"},
		{"everything in tiles", joined(bar(0, 0, 50, 60), bar(50, 0, 100, 60)), "islands 0"},
	} {
		a, b := PtMM(100, 0), PtMM(0, 60)
		r := mustUnion(t, c.shapes, a, b)
		got := count(r.Loose(), whole(r, 6000))
		const n = 500
		parts, cells := rasterParts(c.shapes, a, b, n)
		if raster := countRaster(parts, a, b, 4); got != raster || c.want != "" && got != c.want {
			t.Errorf("%s: %s, want %s, on the raster %s", c.name, got, c.want, raster)
		}
		area, raster := 6000-r.AreaMM2(), 6000*float64(cells)/(n*n)
		if math.Abs(area-raster) > 15 {
			t.Errorf("%s: %.3f mm2 left, on the raster %.3f", c.name, area, raster)
		}
		checkFaceAreas(t, c.name, r, area)
	}
}

// checkFaceAreas checks that islands and bands add up to what is left, where they
// are all there is.
func checkFaceAreas(t *testing.T, name string, r Region, left float64) {
	t.Helper()
	if r.along() == (Point{}) {
		return
	}
	var sum float64
	for _, f := range r.Loose() {
		if f.AreaMM2 <= 0 {
			t.Errorf("%s: a face at %v of %.9f mm2", name, f.At, f.AreaMM2)
		}
		sum += f.AreaMM2
	}
	if math.Abs(sum-left) > 1e-6 {
		t.Errorf("%s: the faces have %.9f mm2, %.9f are left", name, sum, left)
	}
}

// scene returns up to 20 random shapes about a cell of 100 × 60 mm.
func scene(rng *rand.Rand, a, b Point) [][]Ring {
	span := func(lo, hi float64) float64 { return lo + rng.Float64()*(hi-lo) }
	var shapes [][]Ring
	for range 1 + rng.IntN(20) {
		x, y := span(0, 100), span(0, 60)
		switch rng.IntN(6) {
		case 0, 1:
			shapes = append(shapes, []Ring{Disc{PtMM(x, y), MM(span(2, 18))}.Ring(Length(1+rng.IntN(400)) * Micrometre)})
		case 2:
			shapes = append(shapes, hoop(x, y, span(3, 17), span(0.8, 4))...)
		case 3:
			shapes = append(shapes, []Ring{rectangle(x, y, x+span(0, 60), y+span(1, 4))})
		case 4:
			shapes = append(shapes, stroke(span(1, 4), PtMM(x, y), PtMM(x+span(-40, 40), y+span(-40, 40)), PtMM(x+span(-40, 40), y+span(-40, 40)))...)
		default:
			if way := a.Times(rng.IntN(3) - 1).Add(b.Times(rng.IntN(3) - 1)); way != (Point{}) && rng.IntN(3) == 0 {
				p := PtMM(x, y)
				half := p.Add(Point{way.X / 2, way.Y / 2}).Add(PtMM(0, span(-4, 4)))
				shapes = append(shapes, stroke(span(1, 3), p, half, p.Add(way))...)
			}
		}
	}
	return shapes
}

// lattices to try: straight, half-drop, brick, diagonal, a free one, and one
// given by vectors that are far from the shortest.
func someLattices() [][2]Point {
	return [][2]Point{
		{PtMM(100, 0), PtMM(0, 60)},
		{PtMM(100, 30), PtMM(0, 60)},
		{PtMM(100, 0), PtMM(50, 60)},
		{PtMM(60, 45), PtMM(60, -45)},
		{PtMM(90.123456, 20.5), PtMM(-13.7, 61.000001)},
		{PtMM(300, 90), PtMM(400, 140)},
	}
}

func TestLooseFacesOfRandomScenesAreThoseOfTheRaster(t *testing.T) {
	rng := rand.New(rand.NewPCG(5, 60))
	const scenes = 60
	unequal := 0
	for k := range scenes {
		l := someLattices()[k%6]
		shapes := scene(rng, l[0], l[1])
		r := mustUnion(t, shapes, l[0], l[1])
		cell := math.Abs(cross(l[0], l[1], Point{})) / float64(Millimetre*Millimetre)
		checkFaceAreas(t, fmt.Sprint("scene ", k), r, cell-r.AreaMM2())
		faces := r.Loose()
		equal := false
		// Webs thinner than a raster cell look like none: a finer raster decides.
		for _, n := range []int{240, 701, 1801} {
			if equal {
				break
			}
			parts, _ := rasterParts(shapes, l[0], l[1], n)
			speck := 40
			seen := slices.DeleteFunc(slices.Clone(faces), func(f Face) bool {
				return f.Island() && f.AreaMM2 < float64(speck)*cell/float64(n*n)
			})
			equal = count(seen, whole(r, cell)) == countRaster(parts, l[0], l[1], speck)
			if !equal && n == 1801 {
				t.Logf("scene %d: %s, on the raster %s", k, count(seen, whole(r, cell)), countRaster(parts, l[0], l[1], speck))
			}
		}
		if !equal {
			unequal++
		}
	}
	// A web or an island next to the raster's limit is told apart by no raster.
	if unequal > scenes/50 {
		t.Errorf("%d of %d scenes differ from the raster, want at most %d", unequal, scenes, scenes/50)
	}
}
