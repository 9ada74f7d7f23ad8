package stencil

import (
	"context"
	"math"
	"math/rand/v2"
	"reflect"
	"strconv"
	"strings"
	"testing"

	"tsugime/repeat/geom"
	"tsugime/repeat/pattern"
)

// wavyRings returns a unit of n by n rings with wavy rims on a straight lattice,
// every third with another ring within.
func wavyRings(n int, seed uint64) pattern.Unit {
	rnd := rand.New(rand.NewPCG(seed, 7))
	const pitch = 6.5
	u := pattern.Unit{Lattice: pattern.Straight(geom.MM(pitch*float64(n)), geom.MM(pitch*float64(n)))}
	wave := func(r, lean float64, way int) geom.Contour {
		var c geom.Contour
		for i := range 40 {
			a := 2 * math.Pi * float64(way*i) / 40
			d := r * (1 + 0.08*math.Cos(3*a+lean))
			p := geom.PtMM(d*math.Cos(a), d*math.Sin(a))
			if i == 0 {
				c.Start = p
			} else {
				c.Segments = append(c.Segments, geom.Segment{End: p})
			}
		}
		return c
	}
	for i := range n * n {
		lean := rnd.Float64() * 6
		o := geom.Outline{wave(2.8, lean, 1), wave(2.1, lean+rnd.Float64(), -1)}
		if i%3 == 0 {
			o = append(o, wave(1.5, lean, 1), wave(0.8, lean, -1))
		}
		u.Motifs = append(u.Motifs, pattern.Motif{
			ID: pattern.ID(i + 1), Shape: geom.Shape{Outline: o},
			At: geom.PtMM(pitch*float64(i%n), pitch*float64(i/n)), TurnDeg: float64(rnd.IntN(8)) * 45,
		})
	}
	return u
}

// mustSplit proposes both sheets of a split.
func mustSplit(t testing.TB, u pattern.Unit, cut SecondCut) (Hold, pattern.Unit, pattern.Unit, Cover) {
	t.Helper()
	h := Hold{Way: Split, TieWidth: geom.MM(0.4), PerIsland: 2, Second: Second{Cut: cut, Lap: geom.MM(0.2)}}
	h.Ties = mustPropose(t, u, 0.4, 2)
	second, unheld, err := ProposeSecond(context.Background(), u, h)
	if err != nil || len(unheld) > 0 {
		t.Fatalf("second sheet, %s: unheld %v, %v", cut, unheld, err)
	}
	h.Second = second
	one, two, cover, err := Parted(u, h)
	if err != nil {
		t.Fatalf("parted, %s: %v", cut, err)
	}
	return h, one, two, cover
}

func TestBothSheetsHoldAndCoverTheDesign(t *testing.T) {
	units := map[string]pattern.Unit{
		"rings by chance": wavyRings(5, 1),
		"rings in rings":  unitOf(t, pattern.HalfDrop(geom.MM(20), geom.MM(24)), ringPath(10, 10, 9, 8), ringPath(10, 10, 6.5, 5.5), ringPath(10, 10, 4, 2)),
		"a stripe":        unitOf(t, pattern.Straight(geom.MM(20), geom.MM(24)), rectPath(0, 3, 20, 2)),
		"a checker":       unitOf(t, pattern.Straight(geom.MM(20), geom.MM(20)), rectPath(0, 0, 10, 10), rectPath(10, 10, 10, 10)),
	}
	for name, u := range units {
		for _, cut := range SecondCuts() {
			if name == "a checker" && cut == Whole {
				continue // its corners must be held where they are: no tie of the second crosses elsewhere
			}
			t.Run(name+" "+string(cut), func(t *testing.T) {
				h, one, two, cover := mustSplit(t, u, cut)
				for i, sheet := range []pattern.Unit{one, two} {
					if c := mustConnect(t, sheet.CutOuts(), u.Lattice.A, u.Lattice.B); len(c.Islands)+len(c.Bands) != 0 {
						t.Errorf("sheet %d: islands %v, bands %v", i+1, c.Islands, c.Bands)
					}
				}
				if !cover.Sound() {
					t.Errorf("cover %+v; want a sound one", cover)
				}
				if _, _, less, err := Parted(u, Hold{Ties: h.Ties, Second: Second{Cut: Whole, Ties: h.Ties}}); err != nil || less.MissingMM2 == 0 {
					t.Errorf("both sheets tied alike miss %v mm2 (%v); want their ties", less.MissingMM2, err)
				}
			})
		}
	}
}

func TestASecondSheetLaidBesideMissesWhatTheLapDoesNotCover(t *testing.T) {
	u := unitOf(t, pattern.Straight(geom.MM(20), geom.MM(20)), rectPath(2, 2, 12, 2)+rectPath(2, 10, 12, 2)) // two bars
	h := Hold{Ties: []Tie{{Motif: 1, From: geom.PtMM(8, 1), To: geom.PtMM(8, 5), Width: geom.MM(1)}}, Second: Second{Cut: TiePlaces, Lap: geom.MM(0.2)}}
	first, second, cover, err := Parted(u, h)
	if err != nil || !cover.Sound() {
		t.Fatalf("in place: %+v, %v; want it sound", cover, err)
	}
	for _, c := range []struct{ by, missing float64 }{{0.1, 0}, {0.2, 0}, {0.5, 0.3 * 2}, {-0.7, 0.5 * 2}} {
		got, err := Covered(u, first, Misplaced(second, geom.PtMM(c.by, 0)))
		if err != nil || math.Abs(got.MissingMM2-c.missing) > 1e-4 || got.ExtraMM2 != 0 {
			t.Errorf("laid %g mm beside: missing %g, extra %g (%v); want %g and none", c.by, got.MissingMM2, got.ExtraMM2, err, c.missing)
		}
	}
	if got, err := Covered(u, first, Misplaced(second, geom.PtMM(0, 0.3))); err != nil || math.Abs(got.MissingMM2-0.3) > 1e-4 || math.Abs(got.ExtraMM2-0.3*1.4) > 1e-4 {
		t.Errorf("laid 0.3 mm lower: %+v, %v; want 0.3 mm2 missing and 0.42 extra", got, err)
	}
}

func TestNeighboursAcrossAThinWebGoToDifferentSheets(t *testing.T) {
	l := pattern.Straight(geom.MM(40), geom.MM(40))
	chain := unitOf(t, l, rectPath(0, 0, 5, 5), rectPath(5.2, 0, 4, 4), rectPath(9.4, 0, 5, 5), rectPath(20, 20, 5, 5))
	if got, unheld := ProposeMotifs(chain, geom.MM(0.5)); len(unheld) != 0 || len(got) != 1 || got[0] != 2 {
		t.Errorf("a chain of three: %v, unheld %v; want the middle one, and none", got, unheld)
	}
	odd := unitOf(t, l, rectPath(0, 0, 5, 5), rectPath(5.2, 0, 5, 5), rectPath(2.5, 5.2, 5, 5))
	if got, unheld := ProposeMotifs(odd, geom.MM(0.5)); len(got) != 1 || len(unheld) != 1 || !strings.Contains(unheld[0].Why, "odd circle") {
		t.Errorf("a circle of three: %v, unheld %v; want one motif, and one web named", got, unheld)
	}
}

// Both sheets are proven to hold, and to cover the design, within the call.
func BenchmarkTiesAndSplit(b *testing.B) {
	u := wavyRings(45, 3)
	for b.Loop() {
		h, parts, unheld, err := ProposeSplit(context.Background(), u, Hold{TieWidth: geom.MM(0.4), PerIsland: 2, Second: Second{Cut: Whole, Lap: geom.MM(0.2)}})
		if err != nil || len(unheld) > 0 || !parts.Cover.Sound() {
			b.Fatalf("unheld %v, cover %g missing, %v", unheld, parts.Cover.MissingMM2, err)
		}
		b.ReportMetric(float64(len(h.Ties)+len(h.Second.Ties)), "ties")
	}
}

func BenchmarkProposeTies(b *testing.B) {
	u := wavyRings(45, 3)
	for b.Loop() {
		mustPropose(b, u, 0.4, 2)
	}
}

func BenchmarkTied(b *testing.B) {
	u := wavyRings(45, 3)
	ties := mustPropose(b, u, 0.4, 2)
	for b.Loop() {
		mustTie(b, u, ties...)
	}
}

func TestTiesOfRandomScenesHold(t *testing.T) {
	for seed := range uint64(40) {
		t.Run(strconv.Itoa(int(seed)), func(t *testing.T) {
			rnd := rand.New(rand.NewPCG(seed, 3))
			var paths []string
			for range 2 + rnd.IntN(7) {
				r := 2 + 4*rnd.Float64()
				paths = append(paths, ringPath(20*rnd.Float64(), 20*rnd.Float64(), r, r-0.5-rnd.Float64()))
			}
			u := unitOf(t, pattern.HalfDrop(geom.MM(20), geom.MM(21)), paths...)
			ties, unheld, err := ProposeTies(context.Background(), u, Hold{TieWidth: geom.MM(0.3), PerIsland: 2})
			if err != nil {
				t.Fatal(err)
			}
			left := mustConnect(t, mustTie(t, u, ties...).CutOuts(), u.Lattice.A, u.Lattice.B)
			if len(unheld) == 0 && len(left.Islands)+len(left.Bands) != 0 {
				t.Errorf("islands %v, bands %v, and nothing unheld", left.Islands, left.Bands)
			}
			report, err := MeasureTies(u, ties)
			if err != nil {
				t.Fatal(err)
			}
			for i, m := range report.Ties {
				if !m.Bridges() || !m.CrossesMotif {
					t.Errorf("tie %d: %+v; want a bridge across its motif", i, m)
				}
			}
			if len(unheld) > 3 {
				t.Errorf("%d unheld", len(unheld))
			}
			for _, p := range report.Islands {
				if p.Hinges(2) && len(unheld) == 0 {
					t.Errorf("the island at %v has ties %v", p.At, p.Ties)
				}
			}
			t.Logf("%d ties, %d unheld", len(ties), len(unheld))
		})
	}
}

func TestASplitProposedAtOnceIsTheOneProposedSheetBySheet(t *testing.T) {
	u := wavyRings(6, 2)
	for _, cut := range SecondCuts() {
		h, one, two, cover := mustSplit(t, u, cut)
		got, parts, unheld, err := ProposeSplit(context.Background(), u, Hold{TieWidth: h.TieWidth, PerIsland: 2, Second: Second{Cut: cut, Lap: h.Second.Lap}})
		if err != nil || len(unheld) > 0 {
			t.Fatalf("%s: unheld %v, %v", cut, unheld, err)
		}
		if !reflect.DeepEqual(got.Ties, h.Ties) || !reflect.DeepEqual(got.Second, h.Second) {
			t.Errorf("%s: other ties came out", cut)
		}
		if !reflect.DeepEqual(parts, Parts{one, two, cover}) {
			t.Errorf("%s: other sheets came out", cut)
		}
	}
}
