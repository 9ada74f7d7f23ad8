package bench

import (
	"bufio"
	"fmt"
	"math"
	"math/rand/v2"
	"os"

	"testing"

	"tsugime/repeat/geom"
)

func uniform(seed uint64, n int, side geom.Length) []geom.Point {
	rnd := rand.New(rand.NewPCG(seed, 1))
	at := make([]geom.Point, n)
	for i := range at {
		at[i] = geom.Point{X: geom.Length(rnd.Int64N(int64(side))), Y: geom.Length(rnd.Int64N(int64(side)))}
	}
	return at
}

// permutation fails where the order doesn't visit every place once.
func permutation(t *testing.T, order []int, n int) {
	t.Helper()
	seen := make([]bool, n)
	for _, i := range order {
		if i < 0 || i >= n || seen[i] {
			t.Fatalf("place %d is visited twice or is none of %d", i, n)
		}
		seen[i] = true
	}
	if len(order) != n {
		t.Fatalf("%d of %d places are visited", len(order), n)
	}
}

// The drilling problem d493 (G. Reinelt, TSPLIB); its optimum of 35002 stands in
// TSPLIB's list. By its rule EUC_2D a way counts in whole units, rounded.
func TestADrillingProblemIsTravelledNearItsOptimum(t *testing.T) {
	const file, optimum = "/usr/lib/R/site-library/TSP/examples/d493.tsp", 35002
	f, err := os.Open(file)
	if err != nil {
		t.Fatalf("the drilling problem is missing, and this check needs it: apt-get install r-cran-tsp (%v)", err)
	}
	defer f.Close()
	var at []geom.Point
	var xy [][2]float64
	for lines := bufio.NewScanner(f); lines.Scan(); {
		var n int
		var x, y float64
		if c, _ := fmt.Sscan(lines.Text(), &n, &x, &y); c == 3 {
			xy = append(xy, [2]float64{x, y})
			at = append(at, geom.PtMM(x, y))
		}
	}
	if len(at) != 493 {
		t.Fatalf("%d places read, want 493", len(at))
	}
	order := Travel(at, true)
	permutation(t, order, len(at))
	sum := 0
	for i, a := range order {
		b := order[(i+1)%len(order)]
		sum += int(math.Hypot(xy[a][0]-xy[b][0], xy[a][1]-xy[b][1]) + 0.5)
	}
	if sum < optimum || float64(sum) > 1.05*optimum {
		t.Errorf("a tour of %d, want %d to 5 %% more", sum, optimum)
	}
	t.Logf("d493: %d, %.2f %% over the optimum", sum, 100*(float64(sum)/optimum-1))
}

// For n uniform places in an area A the best tour tends to 0.7124·√(nA)
// (D. Johnson, L. McGeoch & E. Rothberg, 1996); at n = 1000 the edges of a square
// make it longer.
func TestTheWayThroughUniformPlacesIsOfTheKnownLength(t *testing.T) {
	for seed := range uint64(5) {
		at := uniform(seed, 1000, geom.Metre)
		order := Travel(at, true)
		permutation(t, order, len(at))
		if k := TravelMM(at, order, true) / math.Sqrt(1000*1e6); k < 0.70 || k > 0.80 {
			t.Errorf("seed %d: %.4f·√(nA), want 0.70 to 0.80", seed, k)
		}
	}
}

func TestAWholeFieldIsTravelledOnAShortWay(t *testing.T) {
	const n = 63_500
	at := uniform(9, n, 300*geom.Millimetre)
	order := Travel(at, false)
	permutation(t, order, n)
	if k := TravelMM(at, order, false) / math.Sqrt(n*300*300); k > 0.80 {
		t.Errorf("%.4f·√(nA), want under 0.80", k)
	} else {
		t.Logf("%.4f·√(nA)", k)
	}
}

// exact returns the length of the best way through a few places: every set of
// places and every last place of it in turn (R. Bellman; M. Held & R. Karp, 1962).
func exact(at []geom.Point, closed bool) float64 {
	n := len(at)
	d := func(i, j int) float64 { return at[i].Sub(at[j]).Norm() }
	best := math.Inf(1)
	for start := range n {
		cost := make([][]float64, 1<<n)
		for s := range cost {
			cost[s] = make([]float64, n)
			for j := range n {
				cost[s][j] = math.Inf(1)
			}
		}
		cost[1<<start][start] = 0
		for s := range cost {
			for j := range n {
				if math.IsInf(cost[s][j], 1) {
					continue
				}
				for k := range n {
					if s>>k&1 == 0 {
						cost[s|1<<k][k] = math.Min(cost[s|1<<k][k], cost[s][j]+d(j, k))
					}
				}
			}
		}
		for j := range n {
			end := cost[1<<n-1][j]
			if closed && n > 1 {
				end += d(j, start)
			}
			best = math.Min(best, end)
		}
	}
	return best / float64(geom.Millimetre)
}

func TestFewPlacesAreTravelledOnTheShortestWay(t *testing.T) {
	missed := 0
	for seed := range uint64(60) {
		at := uniform(100+seed, 1+int(seed%8), geom.Metre)
		for _, closed := range []bool{true, false} {
			order := Travel(at, closed)
			permutation(t, order, len(at))
			got, want := TravelMM(at, order, closed), exact(at, closed)
			if got < want-1e-6 {
				t.Fatalf("seed %d: a way of %f is shorter than the shortest, %f", seed, got, want)
			}
			if got > 1.1*want+1e-6 {
				t.Errorf("seed %d, %d places, closed %t: %.3f mm, want %.3f", seed, len(at), closed, got, want)
			}
			if got > want+1e-6 {
				missed++
			}
		}
	}
	if missed > 6 {
		t.Errorf("%d of 120 ways are not the shortest", missed)
	}
}

// Whatever is turned and moved, the tour becomes shorter by just what was counted.
func TestWhatIsSavedIsWhatTheTourIsShorterBy(t *testing.T) {
	for seed := range uint64(40) {
		at := uniform(seed, 4+int(seed)*3, geom.Metre)
		tour := newTour(at, alongHilbert(at), seed%2 == 0)
		around := func() (sum float64) {
			for i, p := range tour.run {
				sum += tour.length(p, tour.run[(i+1)%len(tour.run)])
			}
			return sum
		}
		before := around()
		tour.look(tour.run...)
		saved := tour.settle()
		for k := range 20 {
			n := len(tour.run)
			cuts := [3]int32{tour.run[k%n], tour.run[(k+1)%n], tour.run[(k+3)%n]}
			if n > 5 {
				saved += tour.bridged(cuts)
			}
		}
		if off := before - around() - saved; math.Abs(off) > 1e-3 {
			t.Errorf("seed %d: the tour is shorter by %f nm more than was counted", seed, off)
		}
		tour.undo = tour.undo[:0]
		now := around()
		if n := len(tour.run); n > 5 {
			tour.bridged([3]int32{tour.run[0], tour.run[2], tour.run[4]})
			if tour.back(); math.Abs(around()-now) > 1e-3 {
				t.Errorf("seed %d: undone, the tour is %f nm longer", seed, around()-now)
			}
		}
	}
}

func TestPlacesInOneSpotOrInARowAreTravelled(t *testing.T) {
	same := make([]geom.Point, 500)
	row := make([]geom.Point, 500)
	for i := range row {
		row[i] = geom.Point{X: geom.Length(i*7919%500) * geom.Millimetre}
	}
	for _, at := range [][]geom.Point{nil, same[:1], same[:3], same, row} {
		order := Travel(at, false)
		permutation(t, order, len(at))
		if len(at) > 0 && at[len(at)-1] != (geom.Point{}) {
			if got := TravelMM(at, order, false); math.Abs(got-499) > 1e-9 {
				t.Errorf("a row of 499 mm is travelled in %f mm", got)
			}
		}
	}
}

func TestTheSamePlacesGiveTheSameWay(t *testing.T) {
	at := uniform(3, 2000, geom.Metre)
	a, b := Travel(at, false), Travel(at, false)
	for i := range a {
		if a[i] != b[i] {
			t.Fatalf("place %d of the way differs", i)
		}
	}
}

func BenchmarkTravelOfAField(b *testing.B) {
	at := uniform(9, 63_500, 300*geom.Millimetre)
	for b.Loop() {
		Travel(at, false)
	}
}
