package stencil

import (
	"context"
	"fmt"
	"math"
	"strings"
	"testing"

	"tsugime/repeat/geom"
	"tsugime/repeat/pattern"
)

func mustPropose(t testing.TB, u pattern.Unit, width float64, least int) []Tie {
	t.Helper()
	ties, unheld, err := ProposeTies(context.Background(), u, Hold{TieWidth: geom.MM(width), PerIsland: least})
	if err != nil {
		t.Fatalf("propose: %v", err)
	}
	for _, p := range unheld {
		t.Errorf("unheld at %s, %s: %s", p.At.X, p.At.Y, p.Why)
	}
	return ties
}

// mustHold fails unless the unit with the ties hangs together both ways.
func mustHold(t testing.TB, u pattern.Unit, ties []Tie) {
	t.Helper()
	if c := mustConnect(t, mustTie(t, u, ties...).CutOuts(), u.Lattice.A, u.Lattice.B); len(c.Islands)+len(c.Bands) != 0 {
		t.Errorf("with %d ties: islands %v, bands %v; want none", len(ties), c.Islands, c.Bands)
	}
}

func rectPath(x, y, w, h float64) string {
	return fmt.Sprintf("M%g %gh%gv%gh%gZ", x, y, w, h, -w)
}

func TestProposedTiesHoldEveryDesign(t *testing.T) {
	straight := pattern.Straight(geom.MM(20), geom.MM(24))
	half := pattern.HalfDrop(geom.MM(20), geom.MM(24))
	diamond := pattern.Lattice{A: geom.PtMM(10, 10), B: geom.PtMM(10, -10)}
	letterB := "M0 0H8V14H0Z M2 2V6H6V2Z M2 8V12H6V8Z"
	for _, c := range []struct {
		name    string
		lattice pattern.Lattice
		paths   string // one motif in each line
		ties    int
	}{
		{"a dot-free ground needs none", straight, rectPath(1, 1, 5, 5), 0},
		{"a ring", straight, ringPath(10, 10, 6, 4), 2},
		{"a ring over the cell's corner", half, ringPath(0, 0, 6, 4), 2},
		{"rings in rings, three deep", straight, ringPath(10, 10, 9, 8) + "\n" + ringPath(10, 10, 6.5, 5.5) + "\n" + ringPath(10, 10, 4, 2), 6},
		{"a ring of four bars", straight, rectPath(2, 2, 12, 2) + "\n" + rectPath(2, 12, 12, 2) + "\n" + rectPath(2, 2, 2, 12) + "\n" + rectPath(12, 2, 2, 12), 2},
		{"a letter with two counters", straight, letterB, 4},
		{"two rings that share an island", straight, ringPath(8, 10, 5, 4) + "\n" + ringPath(13, 10, 5, 4), 6},
		{"a checker, one square a cell", diamond, rectPath(0, 0, 10, 10), 2},
		{"a checker, two squares a cell", pattern.Straight(geom.MM(20), geom.MM(20)), rectPath(0, 0, 10, 10) + "\n" + rectPath(10, 10, 10, 10), 3},
		{"interlaced circles", pattern.Straight(geom.MM(10), geom.MM(10)), ringPath(0, 0, 7.3, 6.7) + "\n" + ringPath(5, 5, 7.3, 6.7), -1},
		{"a stripe across", straight, rectPath(0, 3, 20, 2), 2},
		{"a stripe along", straight, rectPath(3, 0, 2, 24), 2},
		{"stripes across, two", straight, rectPath(0, 3, 20, 2) + "\n" + rectPath(0, 13, 20, 3), 4},
		{"stripes both ways", straight, rectPath(0, 3, 20, 2) + "\n" + rectPath(3, 0, 2, 24), -1},
		{"a slanted stripe", straight, "M0 0L20 24H23L3 0Z", 2},
		{"a stripe with a ring in the paper", straight, rectPath(0, 1, 20, 2) + "\n" + ringPath(10, 13, 5, 4), 4},
		{"dots that touch in a ring", pattern.Straight(geom.MM(2), geom.MM(2)), ringPath(0, 0, 1, 0.0001), -1},
	} {
		u := unitOf(t, c.lattice, strings.Split(c.paths, "\n")...)
		t.Run(c.name, func(t *testing.T) {
			ties := mustPropose(t, u, 0.8, 2)
			if c.ties >= 0 && len(ties) != c.ties {
				t.Errorf("%d ties, want %d: %v", len(ties), c.ties, ties)
			}
			mustHold(t, u, ties)
		})
	}
}

func TestMovingTheWholePatternMovesTheTies(t *testing.T) {
	u := unitOf(t, pattern.HalfDrop(geom.MM(20), geom.MM(24)), ringPath(8, 10, 5, 4), ringPath(13, 10, 5, 4.1), "M1 18C5 14 6 26 2 23C-3 20 0 19 1 18Z M1.2 19C1 20 2 21 3 20Z")
	want := mustPropose(t, u, 0.7, 3)
	mustHold(t, u, want)
	for _, by := range []geom.Point{geom.PtMM(3.21, -1.1), geom.PtMM(-17.000001, 40.1234), geom.PtMM(5, 13)} {
		got := mustPropose(t, Misplaced(u, by), 0.7, 3)
		if len(got) != len(want) {
			t.Fatalf("moved by %v: %d ties, want %d", by, len(got), len(want))
		}
		for i, tie := range got {
			tie.From, tie.To = tie.From.Sub(by), tie.To.Sub(by)
			if tie != want[i] {
				t.Errorf("moved by %v: tie %d is %v, want %v", by, i, tie, want[i])
			}
		}
	}
}

func TestTiesOfARingStandOpposite(t *testing.T) {
	u := unitOf(t, pattern.Straight(geom.MM(20), geom.MM(20)), ringPath(10, 10, 6, 4))
	ties := mustPropose(t, u, 1, 2)
	if len(ties) != 2 {
		t.Fatalf("%d ties, want 2", len(ties))
	}
	for _, tie := range ties {
		d := tie.middle().Sub(geom.PtMM(10, 10))
		if math.Min(math.Abs(d.X.MM()), math.Abs(d.Y.MM())) > 0.01 || math.Abs(d.Norm()/1e6-5) > 0.2 {
			t.Errorf("a tie at %v from the middle; want it on an axis, across the ring", d)
		}
	}
	if d := ties[0].middle().Add(ties[1].middle()).Sub(geom.PtMM(20, 20)); d.Norm() > 1e4 {
		t.Errorf("the ties don't stand opposite: %v", ties)
	}
}
