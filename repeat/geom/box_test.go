package geom_test

import (
	"math/rand/v2"
	"testing"

	"tsugime/repeat/geom"
)

func randomPoint(random *rand.Rand, reach int64) geom.Point {
	return geom.Point{X: geom.Length(random.Int64N(2*reach+1) - reach), Y: geom.Length(random.Int64N(2*reach+1) - reach)}
}

func randomBox(random *rand.Rand, reach int64) geom.Box {
	if random.IntN(10) == 0 {
		return geom.Box{}
	}
	return geom.BoxOf(randomPoint(random, reach), randomPoint(random, reach))
}

func TestTheZeroBoxHoldsNothing(t *testing.T) {
	var b geom.Box
	origin := geom.BoxOf(geom.Point{})
	switch {
	case !b.Empty(), b.Holds(geom.Point{}), b.Meets(origin), origin.Meets(b), b.HoldsBox(origin):
		t.Errorf("the zero box holds the origin")
	case !origin.Holds(geom.Point{}), origin.Empty():
		t.Errorf("the box of the origin doesn't hold it")
	case !origin.HoldsBox(b), b.Union(origin) != origin, origin.Union(b) != origin:
		t.Errorf("the zero box counts in a union")
	case b.Moved(geom.PtMM(1, 1)) != b, b.Grown(geom.MM(1)) != b, b.Intersect(origin) != b, geom.BoxOf() != b:
		t.Errorf("the zero box becomes something")
	case !origin.Grown(-1).Empty():
		t.Errorf("shrunk to less than nothing, the box of the origin is %v", origin.Grown(-1))
	}
}

// Box laws, seen through the points of a small grid.
func TestBoxesHoldThePointsTheyShould(t *testing.T) {
	random := rand.New(rand.NewPCG(1, 1))
	const reach = 6
	for range 300 {
		a, b := randomBox(random, reach), randomBox(random, reach)
		d := randomPoint(random, reach)
		grow := geom.Length(random.IntN(4))
		meets, inside := false, true
		for x := geom.Length(-3 * reach); x <= 3*reach; x++ {
			for y := geom.Length(-3 * reach); y <= 3*reach; y++ {
				p := geom.Point{X: x, Y: y}
				inA, inB := a.Holds(p), b.Holds(p)
				meets = meets || inA && inB
				inside = inside && (!inB || inA)
				if got := a.Intersect(b).Holds(p); got != (inA && inB) {
					t.Fatalf("%v and %v: the intersection holds %v: %v", a, b, p, got)
				}
				if (inA || inB) && !a.Union(b).Holds(p) {
					t.Fatalf("%v and %v: the union misses %v", a, b, p)
				}
				if a.Moved(d).Holds(p.Add(d)) != inA {
					t.Fatalf("%v moved by %v disagrees at %v", a, d, p)
				}
				if inA && !a.Grown(grow).Holds(p.Add(geom.Point{X: grow, Y: -grow})) {
					t.Fatalf("%v grown by %d misses a corner of %v", a, grow, p)
				}
			}
		}
		if a.Meets(b) != meets || a.Meets(b) != b.Meets(a) {
			t.Fatalf("%v meets %v: %v, want %v", a, b, a.Meets(b), meets)
		}
		if a.HoldsBox(b) != inside {
			t.Fatalf("%v holds %v: %v, want %v", a, b, a.HoldsBox(b), inside)
		}
	}
}

// The index tells of the boxes that a walk over all of them finds, each once.
func TestTheIndexFindsWhatAWalkFinds(t *testing.T) {
	random := rand.New(rand.NewPCG(2, 6))
	for round := range 300 {
		boxes := make([]geom.Box, random.IntN(60))
		for i := range boxes {
			at := randomPoint(random, 1_000_000)
			size := random.Int64N(1 << random.IntN(22))
			if round%3 == 0 {
				at.Y = 0 // all in a row
			}
			boxes[i] = geom.BoxOf(at, at.Add(randomPoint(random, size)))
			if random.IntN(8) == 0 {
				boxes[i] = geom.Box{}
			}
		}
		index := geom.NewIndex(boxes)
		for range 30 {
			window := geom.BoxOf(randomPoint(random, 2_000_000), randomPoint(random, 2_000_000))
			if random.IntN(3) == 0 {
				window = geom.BoxOf(randomPoint(random, 1_000_000)).Grown(geom.Length(random.IntN(50_000)))
			}
			found := map[int]int{}
			index.Visit(window, func(i int) bool { found[i]++; return true })
			for i, b := range boxes {
				want := 0
				if b.Meets(window) {
					want = 1
				}
				if found[i] != want {
					t.Fatalf("round %d: box %d %v and window %v: found %d times, want %d", round, i, b, window, found[i], want)
				}
			}
			if len(found) > 1 {
				calls := 0
				index.Visit(window, func(int) bool { calls++; return false })
				if calls != 1 {
					t.Fatalf("a visit that is told to stop goes on: %d calls", calls)
				}
			}
		}
	}
}
