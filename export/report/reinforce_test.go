package report

import (
	"math"
	"strings"
	"testing"

	"tsugime/repeat"
	"tsugime/repeat/document"
	"tsugime/repeat/geom"
	"tsugime/repeat/pattern"
	"tsugime/repeat/stencil"
)

// slitOrder returns an order of slits, 2 mm wide and 50 mm long, with 2 mm of paper
// between them; along the bolt, or across it.
func slitOrder(t testing.TB, across bool) document.Order {
	t.Helper()
	o := document.Defaults()
	o.Title = "Slits"
	slit, w, h := "M-1 -25L1 -25L1 25L-1 25Z", 4.0, 60.0
	if across {
		slit, w, h = "M-25 -1L25 -1L25 1L-25 1Z", 60, 4
	}
	shape, err := geom.ParsePathData(slit)
	if err != nil {
		t.Fatal(err)
	}
	o.Unit.Lattice = pattern.Straight(geom.MM(w), geom.MM(h))
	o.Unit.Motifs = []pattern.Motif{{ID: 1, Shape: geom.Shape{Outline: shape}, At: geom.PtMM(w/2, h/2)}}
	o.Sheet.Step, o.NextID = geom.MM(180), 2
	o.Limits.Joint = geom.MM(0.01)
	return o
}

// Threads lie square to the paper they hold, inside the field, no farther apart than
// a beam fixed at both ends bends by the limit under the spatula's drag, by hand.
func TestThreadsLieSquareToTheirRibbonsAndNearEnough(t *testing.T) {
	for _, across := range []bool{false, true} {
		w := built(t, slitOrder(t, across))
		if !reinforced(w) {
			t.Fatalf("across %v: nothing is reinforced; ribbons: %v", across, w.Sheet.Ribbons)
		}
		s := sheetsOf(w)[0]
		r := reinforcingOf(w, s)
		threads, from, to := r.level, patternField(s.Sheet).Min.Y, patternField(s.Sheet).Max.Y
		if across {
			threads, from, to = r.upright, patternField(s.Sheet).Min.X, patternField(s.Sheet).Max.X
		}
		if len(threads) == 0 || len(r.level)+len(r.upright) != len(threads) {
			t.Fatalf("across %v: %d level and %d upright threads", across, len(r.level), len(r.upright))
		}
		// F l³ / (16 E t b³) ≤ limit with F 0.1 N, E 2000 N/mm², b 2 mm.
		thick := w.Order.Sheet.Paper.Thickness.MM()
		most := math.Cbrt(16 * 2000 * thick * 8 * 0.01 / 0.1)
		last := from
		for _, at := range append(threads, to) {
			if gap := (at - last).MM(); gap <= 0 || gap > most+0.001 {
				t.Errorf("across %v: a gap of %.3f mm, at most %.3f", across, gap, most)
			}
			last = at
		}
	}
}

// The sheet has what it is for, and only orders that ask for it have the sheet.
func TestOnlyWhatNeedsItIsReinforced(t *testing.T) {
	plain := built(t, dotOrder(t, 8, 2))
	if strings.Contains(strings.Join(Names(plain), " "), "reinforcement") {
		t.Error("dots that hold by themselves get a reinforcement sheet")
	}
	if _, err := Reinforcement(plain, Options{}); err == nil || !strings.Contains(err.Error(), "nothing to reinforce") {
		t.Errorf("error %v", err)
	}
	tied := tiedWork(t)
	b, err := Reinforcement(tied, Options{})
	if err != nil {
		t.Fatal(err)
	}
	s := sheetsOf(tied)[0]
	r := reinforcingOf(tied, s)
	if len(r.ties) == 0 || len(r.ties) != len(tieStrips(tied, s)) {
		t.Errorf("%d ties, want %d", len(r.ties), len(tieStrips(tied, s)))
	}
	field := patternField(s.Sheet)
	if !r.gauze.HoldsBox(field) || !s.Paper.HoldsBox(r.gauze) {
		t.Errorf("gauze %v doesn't cover the field %v inside the paper %v", r.gauze, field, s.Paper)
	}
	words := strings.Join(strings.Fields(string(read(t, "pdftotext", "-layout", written(t, "reinforcement.pdf", b), "-"))), " ")
	for _, want := range []string{"lacquer", "Solvent", "allergen", "rules of your workshop", "gauze is on and dry", "trained person"} {
		wantWords(t, words, want)
	}
	// mutool finds the gauze's edge, dashed, and the ties at true scale.
	found := false
	for _, p := range strokes(t, written(t, "again.pdf", b)) {
		for _, x := range p {
			wide, tall := x.size()
			found = found || math.Abs(wide-r.gauze.Width().MM()) < 0.01 && math.Abs(tall-r.gauze.Height().MM()) < 0.01
		}
	}
	if !found {
		t.Errorf("no edge of gauze of %s by %s mm was read", r.gauze.Width(), r.gauze.Height())
	}
}

// tiedWork is an order of rings on ties.
func tiedWork(t testing.TB) repeat.Work {
	t.Helper()
	o := splitOrder(t, 1, stencil.TiePlaces)
	o.Sheet.Hold.Way, o.Sheet.Hold.Second = stencil.WithTies, stencil.Second{Cut: stencil.TiePlaces, Lap: o.Sheet.Hold.Second.Lap}
	return built(t, o)
}

// All of it stays on its page and apart, with and without a printer's correction.
func TestTheReinforcementSheetIsTidy(t *testing.T) {
	for name, w := range map[string]repeat.Work{"slits": built(t, slitOrder(t, false)), "across": built(t, slitOrder(t, true)), "tied": tiedWork(t)} {
		for _, language := range []string{"en", "ja"} {
			for _, units := range []string{inMM, inSun} {
				for _, page := range []string{"A4", "A3"} {
					b, err := Reinforcement(w, Options{Page: page, Units: units, Language: language, PrintedAcross: geom.MM(99), PrintedAlong: geom.MM(101)})
					if err != nil {
						t.Fatal(err)
					}
					for i, p := range b.Pages {
						checkTexts(t, name+" "+language+" "+units+" page "+string(rune('1'+i)), p)
					}
				}
			}
		}
	}
}
