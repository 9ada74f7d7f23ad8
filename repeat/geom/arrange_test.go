package geom

import (
	"math"
	"math/rand/v2"
	"testing"
)

// A probe beside one edge can land beyond a sliver a nanometre wide and lose a
// whole motif: each motif is joined here with itself, moved by a few nanometres.
func TestNoMotifIsLostBehindASliver(t *testing.T) {
	rng := rand.New(rand.NewPCG(13, 13))
	for k := range 300 {
		var shapes [][]Ring
		var want float64
		for i := range 1 + rng.IntN(6) {
			r := polygon(float64(12*i), 100*rng.Float64(), 1+4*rng.Float64(), 5+rng.IntN(40))
			d := Point{Length(rng.IntN(7) - 3), Length(rng.IntN(7) - 3)}
			shapes = append(shapes, []Ring{r}, []Ring{r.Moved(d)})
			want += r.AreaMM2()
		}
		a, b := PtMM(80, 11), PtMM(-9, 130)
		if got := mustUnion(t, shapes, a, b).AreaMM2(); got < want-1e-6 || got > want+1e-3 {
			t.Errorf("scene %d: %.9f mm2, want %.9f and at most 0.001 more", k, got, want)
		}
	}
}

// Four squares that touch in their corners hold the paper between them captive:
// paper that meets in a point only is not connected, cut-outs are.
func TestPaperIsPartedWhereCutOutsTouchInAPoint(t *testing.T) {
	shapes := shapesOf(rectangle(1, 0, 2, 1), rectangle(2, 1, 3, 2), rectangle(1, 2, 2, 3), rectangle(0, 1, 1, 2))
	faces := mustUnion(t, shapes).Loose()
	if len(faces) != 1 || math.Abs(faces[0].AreaMM2-1) > 1e-12 {
		t.Errorf("faces %v, want one island of 1 mm2", faces)
	}
	// Two squares in a cut-out touch in a corner: two islands.
	frame := [][]Ring{{rectangle(0, 0, 9, 9), reversed(rectangle(1, 1, 4, 4)), reversed(rectangle(4, 4, 7, 7))}}
	if faces := mustUnion(t, frame).Loose(); len(faces) != 2 {
		t.Errorf("faces %v, want two islands of 9 mm2", faces)
	}
}

// The grid has a few cells for each thing at most, however long and thin the cell
// of the lattice is.
func TestGridStaysInProportion(t *testing.T) {
	for _, periods := range [][]Point{{PtMM(400, 0), PtMM(0, 150)}, {PtMM(1000, 0), PtMM(0, 0.1)}, {PtMM(1000, 1), PtMM(3, 0.2)}, {PtMM(50, 0)}, nil} {
		tor, err := newTorus(BoxOf(Point{}, PtMM(1000, 2)), periods)
		if err != nil {
			t.Fatal(err)
		}
		for _, n := range []int{1, 10, 1000, 60_000} {
			for _, side := range []float64{1, 1e6, 1e9} {
				if g := newGrid(tor, n, side); g.nx*g.ny > 5*n+5 {
					t.Errorf("periods %v, %d things of %g nm: %d × %d cells", periods, n, side, g.nx, g.ny)
				}
			}
		}
	}
}

func TestCanonIsTheSameForEveryCopy(t *testing.T) {
	rng := rand.New(rand.NewPCG(14, 14))
	for _, l := range someLattices() {
		for _, periods := range [][]Point{l[:], l[:1]} {
			tor, err := newTorus(BoxOf(Point{}), periods)
			if err != nil {
				t.Fatal(err)
			}
			for range 1000 {
				p := Point{Length(rng.Int64N(2e9) - 1e9), Length(rng.Int64N(2e9) - 1e9)}
				q := p
				for _, v := range periods {
					q = q.Add(v.Times(rng.IntN(21) - 10))
				}
				if tor.canon(p) != tor.canon(q) {
					t.Fatalf("periods %v: %v and its copy %v differ: %v, %v", periods, p, q, tor.canon(p), tor.canon(q))
				}
				if o := p.Add(Point{1, 0}); tor.canon(o) == tor.canon(p) {
					t.Fatalf("periods %v: %v and %v are one", periods, p, o)
				}
			}
		}
	}
}
