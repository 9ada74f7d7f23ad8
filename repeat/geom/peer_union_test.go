//go:build geos

package geom

import (
	"fmt"
	"math"
	"math/rand/v2"
	"slices"
	"testing"
)

// off bounds how far putting a line on the grid moves it, in millimetres: a piece
// is led through the middle of a grid square that it runs through, Grid/√2 away
// at most, and three rounds of that were the most ever needed here.
const off = 3 * 0.7072e-6

// blob returns a motif of cubics about x, y: smooth, with bays.
func blob(rng *rand.Rand, x, y, size float64) Outline {
	n := 3 + rng.IntN(5)
	radius := make([]float64, n)
	for i := range radius {
		radius[i] = size * (0.4 + 0.6*rng.Float64())
	}
	turn := 7 * rng.Float64()
	// The anchors lie on rays, the handles square to them: no ray is met twice.
	at := func(i int, side float64) Point {
		s, c := math.Sincos(turn + 2*math.Pi*float64(i)/float64(n))
		d := radius[i%n]
		k := side * d * 4 / 3 * math.Tan(math.Pi/float64(2*n))
		return PtMM(x+d*c-k*s, y+d*s+k*c)
	}
	c := Contour{Start: at(0, 0)}
	for i := range n {
		c.Segments = append(c.Segments, Segment{Kind: Cubic, C1: at(i, 1), C2: at(i+1, -1), End: at((i+1)%n, 0)})
	}
	return Outline{c}
}

// spiky returns a star of n points.
func spiky(rng *rand.Rand, x, y, size float64) Ring {
	n := 3 + rng.IntN(9)
	turn, inner := 7*rng.Float64(), 0.15+0.8*rng.Float64()
	r := make(Ring, 2*n)
	for i := range r {
		d := size
		if i%2 == 1 {
			d *= inner
		}
		s, c := math.Sincos(turn + math.Pi*float64(i)/float64(n))
		r[i] = PtMM(x+d*c, y+d*s)
	}
	return r
}

// slot returns a slot with round ends as one ring.
func slot(rng *rand.Rand, x, y, size float64) Ring {
	turn, half, radius := 7*rng.Float64(), size*rng.Float64(), size*(0.05+0.3*rng.Float64())
	s, c := math.Sincos(turn)
	const n = 24
	r := make(Ring, 0, n)
	for i := range n {
		end := half
		if i >= n/2 {
			end = -half
		}
		sa, ca := math.Sincos(turn - math.Pi/2 + 2*math.Pi*(float64(i)+0.5)/n)
		r = append(r, PtMM(x+end*c+radius*ca, y+end*s+radius*sa))
	}
	return r
}

// onGrid returns a rectangle on a grid of 5 mm: edges coincide, corners meet.
func onGrid(rng *rand.Rand) Ring {
	x, y := float64(5*rng.IntN(20)), float64(5*rng.IntN(12))
	return rectangle(x, y, x+float64(5*(1+rng.IntN(6))), y+float64(5*(1+rng.IntN(6))))
}

// mixed returns random shapes of one kind, or of all, about a cell of
// 100 × 60 mm.
func mixed(rng *rand.Rand, kind int) [][]Ring {
	var shapes [][]Ring
	for range 1 + rng.IntN(40) {
		x, y, size := 100*rng.Float64(), 60*rng.Float64(), 2+12*rng.Float64()
		of := kind
		if kind == 6 {
			of = rng.IntN(6)
		}
		switch of {
		case 0:
			shapes = append(shapes, []Ring{discRing(x, y, size)})
		case 1:
			shapes = append(shapes, []Ring{spiky(rng, x, y, size)})
		case 2:
			shapes = append(shapes, []Ring{slot(rng, x, y, size)})
		case 3:
			shapes = append(shapes, blob(rng, x, y, size).Rings(Chord))
		case 4:
			shapes = append(shapes, []Ring{onGrid(rng)})
		case 5:
			shapes = append(shapes, []Ring{discRing(x, y, size), reversed(discRing(x, y, size*(0.3+0.5*rng.Float64())))})
		}
	}
	if rng.IntN(4) == 0 { // some twice, one moved by a nanometre or two
		shapes = append(shapes, shapes[:len(shapes)/2]...)
		shapes = append(shapes, movedShapes(shapes[:1], Point{Length(rng.IntN(3)), Length(rng.IntN(3))})...)
	}
	return shapes
}

const kinds = 7

var kindNames = [kinds]string{"discs", "stars", "slots", "cubics", "rectangles on a grid", "rings", "all kinds"}

func TestUnionAgreesWithTheSecondOpinion(t *testing.T) {
	for kind, name := range kindNames {
		t.Run(name, func(t *testing.T) {
			rng := rand.New(rand.NewPCG(31, uint64(kind)))
			worst := 0.0
			for k := range 500 {
				shapes := mixed(rng, kind)
				r, peer := mustUnion(t, shapes), peerUnion(shapes)
				rim := rimMM(r)
				diff := math.Abs(r.AreaMM2() - peerMM2(peer))
				worst = math.Max(worst, diff/(rim*off))
				if diff > rim*off {
					t.Errorf("scene %d: %.9f mm2, the peer has %.9f, allowed are %.9f", k, r.AreaMM2(), peerMM2(peer), rim*off)
				}
				sheet := peerShape([]Ring{rectangle(-100, -100, 300, 300)})
				if err := sameIslands(r.Loose(), peerParts(sheet.Difference(peer)), rim*off); err != nil {
					t.Errorf("scene %d: %v", k, err)
				}
			}
			t.Logf("the largest difference is %.3f of what is allowed", worst)
		})
	}
}

// sameIslands compares the islands with the parts of a sheet around all, of which
// the largest is held. Slivers below the tolerance may be there or not.
func sameIslands(faces []Face, parts []float64, slack float64) error {
	slices.SortFunc(parts, func(a, b float64) int { return -int(math.Copysign(1, a-b)) })
	parts = slices.DeleteFunc(parts[1:], func(a float64) bool { return a <= slack })
	faces = slices.DeleteFunc(slices.Clone(faces), func(f Face) bool { return f.AreaMM2 <= slack })
	if len(faces) != len(parts) {
		return fmt.Errorf("%d islands, the peer has %d", len(faces), len(parts))
	}
	for i, f := range faces {
		if math.Abs(f.AreaMM2-parts[i]) > slack {
			return fmt.Errorf("island %d has %.9f mm2, the peer's %.9f", i, f.AreaMM2, parts[i])
		}
	}
	return nil
}

func TestWithoutAgreesWithTheSecondOpinion(t *testing.T) {
	for kind, name := range kindNames {
		t.Run(name, func(t *testing.T) {
			rng := rand.New(rand.NewPCG(32, uint64(kind)))
			for k := range 150 {
				a, b := mixed(rng, kind), mixed(rng, rng.IntN(kinds))
				r := mustWithout(t, a, b)
				want := peerMM2(peerUnion(a).Difference(peerUnion(b)))
				slack := rimMM(r)*off + 1e-9
				if diff := math.Abs(r.AreaMM2() - want); diff > slack {
					t.Errorf("scene %d: %.9f mm2, the peer has %.9f, allowed are %.9f", k, r.AreaMM2(), want, slack)
				}
			}
		})
	}
}

// On the torus the peer gets every copy that can reach into the cell out of five times
// five, and the cell is cut out of what they cover.
func TestUnionOnTheTorusAgreesWithTheSecondOpinion(t *testing.T) {
	for kind, name := range kindNames {
		t.Run(name, func(t *testing.T) {
			rng := rand.New(rand.NewPCG(33, uint64(kind)))
			for k := range 100 {
				a, b := PtMM(100, 0), PtMM(0, 60)
				switch {
				case kind != 4 && k%3 == 1:
					a, b = PtMM(100, 30), PtMM(0, 60)
				case kind != 4 && k%3 == 2:
					a, b = PtMM(90.123456, 20.5), PtMM(-13.7, 61.000001)
				}
				shapes := mixed(rng, kind)
				r := mustUnion(t, shapes, a, b)
				cell := Ring{{}, a, a.Add(b), b}
				want := peerMM2(peerUnion(copiesIn(cell.Bounds(), shapes, a, b)).Intersection(peerShape([]Ring{cell})))
				slack := rimMM(r)*off + 1e-9
				if diff := math.Abs(r.AreaMM2() - want); diff > slack {
					t.Errorf("scene %d: %.9f mm2, the peer has %.9f, allowed are %.9f", k, r.AreaMM2(), want, slack)
				}
			}
		})
	}
}

// copiesIn returns the copies of the shapes that may reach into the box.
func copiesIn(box Box, shapes [][]Ring, a, b Point) [][]Ring {
	var copies [][]Ring
	const reach = 2
	for m := -reach; m <= reach; m++ {
		for n := -reach; n <= reach; n++ {
			for _, s := range movedShapes(shapes, a.Times(m).Add(b.Times(n))) {
				if s[0].Bounds().Meets(box) {
					copies = append(copies, s)
				}
			}
		}
	}
	return copies
}
