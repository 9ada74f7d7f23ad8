package stencil

import (
	"context"
	"math"
	"math/rand/v2"
	"strconv"
	"strings"
	"testing"

	"tsugime/repeat/geom"
	"tsugime/repeat/pattern"
)

// inMM writes a length for path data.
func inMM(v float64) string { return strconv.FormatFloat(v, 'f', 6, 64) }

// starPath is a star of points between two radii, outward or, the other way round,
// inward, as path data.
func starPath(x, y float64, points int, outer, inner float64, way int) string {
	var b strings.Builder
	for i := range 2 * points {
		r := outer
		if i%2 == 1 {
			r = inner
		}
		sin, cos := math.Sincos(math.Pi * (float64(way*i)/float64(points) - 0.5))
		b.WriteString([]string{"L", "M"}[max(0, 1-i)])
		b.WriteString(strings.Join([]string{inMM(x + r*cos), inMM(y + r*sin)}, " "))
	}
	return b.String() + "Z"
}

// On a frame of one width a tie square across a side is the shortest there is, at
// any place of it: of these the middles of two opposite sides are taken, on the
// frame's own axis.
func TestTiesOfASquareFrameStandInTheMiddleOfOppositeSides(t *testing.T) {
	u := unitOf(t, pattern.Straight(geom.MM(20), geom.MM(20)), rectPath(4, 4, 12, 12)+"M6 6v8h8v-8Z")
	ties := mustPropose(t, u, 0.8, 2)
	if len(ties) != 2 {
		t.Fatalf("%d ties, want 2", len(ties))
	}
	for _, tie := range ties {
		d := tie.middle().Sub(geom.PtMM(10, 10))
		if math.Min(math.Abs(d.X.MM()), math.Abs(d.Y.MM())) > 0.01 || math.Abs(d.Norm()/1e6-5) > 0.2 {
			t.Errorf("a tie at %v from the middle; want it on an axis, across a side", d)
		}
	}
	if d := ties[0].middle().Add(ties[1].middle()).Sub(geom.PtMM(20, 20)); d.Norm() > 1e4 {
		t.Errorf("the ties don't stand opposite: %v", ties)
	}
}

// Where the rims of a star come nearest to each other one of them has a corner:
// the ties lead there, and stand opposite.
func TestTiesOfAStarEndAtItsCorners(t *testing.T) {
	const x, y = 10, 10
	u := unitOf(t, pattern.Straight(geom.MM(20), geom.MM(20)), starPath(x, y, 6, 8, 7, 1)+starPath(x, y, 6, 6.4, 5.4, -1))
	ties := mustPropose(t, u, 0.4, 2)
	if len(ties) != 2 {
		t.Fatalf("%d ties, want 2", len(ties))
	}
	var corners []geom.Point
	for _, r := range u.Motifs[0].Placed().Rings(geom.Chord) {
		corners = append(corners, r...)
	}
	for _, tie := range ties {
		least := math.Inf(1)
		for _, c := range corners {
			least = min(least, segmentGap(c, tie.From, tie.To))
		}
		if least > 0.01e6 {
			t.Errorf("a tie at %v leads %.3f mm past the nearest corner", tie.middle(), least/1e6)
		}
	}
	if d := ties[0].middle().Add(ties[1].middle()).Sub(geom.PtMM(2*x, 2*y)); d.Norm() > 0.5e6 {
		t.Errorf("the ties don't stand opposite: %v", ties)
	}
}

// A hemp-leaf figure: six lines from the middle and a rim of six, with an island
// between any two lines: each gets its ties, and the figure's symmetry shows in
// what they take.
func TestTheIslandsOfAHempLeafAreHeldAlike(t *testing.T) {
	var path strings.Builder
	path.WriteString(starPath(12, 12, 6, 10, 10*math.Sqrt(3)/2, 1))
	for k := range 6 {
		mid := math.Pi * (float64(k) + 0.5) / 3
		for i, at := range [3][2]float64{{1.6, 0}, {8, 0.38}, {8, -0.38}} {
			a := mid + at[1]
			path.WriteString([]string{"L", "M"}[max(0, 1-i)] + inMM(12+at[0]*math.Cos(a)) + " " + inMM(12+at[0]*math.Sin(a)))
		}
		path.WriteString("Z")
	}
	u := unitOf(t, pattern.Straight(geom.MM(24), geom.MM(24)), path.String())
	report, err := MeasureTies(u, mustPropose(t, u, 0.4, 2))
	if err != nil {
		t.Fatal(err)
	}
	if len(report.Islands) != 6 {
		t.Fatalf("%d islands, want 6", len(report.Islands))
	}
	for _, p := range report.Islands {
		if p.Hinges(2) {
			t.Errorf("the island at %v has ties %v", p.At, p.Ties)
		}
	}
}

func TestTiesLeaveAWidthOfCutOutBetweenThem(t *testing.T) {
	u := wavyRings(6, 4)
	width := 0.4
	ties := mustPropose(t, u, width, 2)
	for i, a := range ties {
		for _, b := range ties[:i] {
			for _, shift := range u.Lattice.Places(geom.BoxOf(geom.PtMM(-60, -60), geom.PtMM(60, 60))) {
				gap := lineGap(placeOf(a.From), placeOf(a.To), placeOf(b.From.Add(shift)), placeOf(b.To.Add(shift)))
				if gap < 2*width*1e6-2 {
					t.Errorf("two ties with %.4f mm between their middle lines, at %v", gap/1e6, a.From)
				}
			}
		}
	}
}

func TestAMirroredDesignIsTiedTieByTie(t *testing.T) {
	for seed := range uint64(4) {
		u := wavyRings(3, seed)
		mirrored := pattern.Unit{Lattice: u.Lattice}
		for _, m := range u.Motifs {
			m.Mirrored, m.TurnDeg, m.At.X = !m.Mirrored, -m.TurnDeg, -m.At.X
			mirrored.Motifs = append(mirrored.Motifs, m)
		}
		ties, others := mustPropose(t, u, 0.4, 2), mustPropose(t, mirrored, 0.4, 2)
		alone := 0
		for _, a := range ties {
			if !hasMirrored(a, others, u.Lattice) {
				alone++
			}
		}
		if alone > 0 || len(ties) != len(others) {
			t.Errorf("seed %d: of %d ties %d have none that mirrors them among %d", seed, len(ties), alone, len(others))
		}
	}
}

// hasMirrored reports whether a tie, mirrored, lies within its width's hundredth
// of another one.
func hasMirrored(a Tie, others []Tie, l pattern.Lattice) bool {
	m := a.middle()
	m.X = -m.X
	for _, b := range others {
		if _, _, off := l.Nearest(m.Sub(b.middle())); off.Norm() < float64(a.Width)/100 {
			return true
		}
	}
	return false
}

// A checker's paper hangs together at its corners alone, four in a cell of two by
// two. A sheet needs three of them, to join its two squares of paper and both ways
// on, so two sheets need six: what can't be held is named.
func TestTheCornersOfACheckerAreHeldOrNamed(t *testing.T) {
	u := unitOf(t, pattern.Straight(geom.MM(20), geom.MM(20)), rectPath(0, 0, 10, 10), rectPath(10, 10, 10, 10))
	h, parts, unheld, err := ProposeSplit(context.Background(), u, Hold{TieWidth: geom.MM(0.4), PerIsland: 2, Second: Second{Cut: Whole, Lap: geom.MM(0.2)}})
	if err != nil {
		t.Fatal(err)
	}
	loose := 0
	for i, sheet := range []pattern.Unit{parts.First, parts.Second} {
		c := mustConnect(t, sheet.CutOuts(), u.Lattice.A, u.Lattice.B)
		loose += len(c.Islands) + len(c.Bands)
		t.Logf("sheet %d: %d islands, %d bands", i+1, len(c.Islands), len(c.Bands))
	}
	if loose == 0 || len(unheld) == 0 {
		t.Errorf("%d pieces fall out, %d are named; four corners can't hold both sheets", loose, len(unheld))
	}
	for _, p := range unheld {
		if !strings.Contains(p.Why, "sheet") {
			t.Errorf("unheld at %v: %q does not say on which sheet", p.At, p.Why)
		}
	}
	if !parts.Cover.Sound() {
		t.Errorf("cover %+v; want a sound one", parts.Cover)
	}
	t.Logf("%d and %d ties, unheld %v", len(h.Ties), len(h.Second.Ties), unheld)
}

// Rings as narrow as the ties are wide, close to one another: what the second sheet
// finds no place for is fewer where the first gives places up.
func TestTheFirstSheetGivesPlacesUpToTheSecond(t *testing.T) {
	better := 0
	for seed := range uint64(30) {
		u := crowdedRings(seed)
		h := Hold{TieWidth: geom.MM(0.8), PerIsland: 2, Second: Second{Cut: Whole, Lap: geom.MM(0.2)}}
		p, err := newProposal(u, h)
		if err != nil || p == nil {
			t.Fatal(p, err)
		}
		first, err := p.best(context.Background(), nil)
		if err != nil {
			t.Fatal(err)
		}
		second, err := p.best(context.Background(), first.ties)
		if err != nil {
			t.Fatal(err)
		}
		greedy := len(first.unheld) + len(second.unheld)
		one, two, err := p.bestTwo(context.Background())
		if err != nil {
			t.Fatal(err)
		}
		left := len(one.unheld) + len(two.unheld)
		if left > greedy {
			t.Errorf("seed %d: %d unheld, %d without any exchange", seed, left, greedy)
		}
		if left < greedy {
			better++
		}
		t.Logf("seed %d: %d unheld, %d without any exchange", seed, left, greedy)
	}
	if better == 0 {
		t.Error("no exchange was of use")
	}
}

// crowdedRings returns small rings by chance that overlap, on a half-drop.
func crowdedRings(seed uint64) pattern.Unit {
	rnd := rand.New(rand.NewPCG(seed, 11))
	u := pattern.Unit{Lattice: pattern.HalfDrop(geom.MM(14), geom.MM(14))}
	for i := range 7 {
		r := 1.6 + 1.6*rnd.Float64()
		shape, err := geom.ParsePathData(ringPath(0, 0, r, r-0.6))
		if err != nil {
			panic(err)
		}
		u.Motifs = append(u.Motifs, pattern.Motif{ID: pattern.ID(i + 1), Shape: geom.Shape{Outline: shape}, At: geom.PtMM(14*rnd.Float64(), 14*rnd.Float64())})
	}
	return u
}
