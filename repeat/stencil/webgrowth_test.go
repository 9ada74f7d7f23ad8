package stencil

import (
	"fmt"
	"math"
	"testing"

	"tsugime/repeat/geom"
)

// What is laid out ten times as large takes about ten times as long.
func BenchmarkGrowth(b *testing.B) {
	for _, n := range []int{600, 6000, 60000, 600000} {
		side := math.Sqrt(float64(n))
		u := scattered(9, math.Round(side), math.Round(side), 0.8, 0.5)
		cuts, l := u.CutOuts(), u.Lattice
		run := func(name string, measure func()) {
			b.Run(fmt.Sprintf("%s/%d", name, n), func(b *testing.B) {
				b.ReportMetric(float64(len(cuts)), "holes")
				for b.Loop() {
					measure()
				}
			})
		}
		run("webs", func() { Webs(cuts, geom.MM(0.3), l.A, l.B) })
		run("connect", func() { mustConnect(b, cuts, l.A, l.B) })
		run("open area", func() {
			if _, err := OpenAreaPct(cuts, l.A, l.B); err != nil {
				b.Fatal(err)
			}
		})
	}
}

// The fast search of discs tells what the general one does, to the bit, also where
// the search goes over several periods.
func TestTheFastSearchOfDiscsIsTheGeneralOne(t *testing.T) {
	webs := 0
	for seed := range uint64(60) {
		u := scattered(seed, 9+float64(seed%7), 8+float64(seed%5), 1.6, 0.3+0.015*float64(seed))
		u.Lattice.B = u.Lattice.B.Add(geom.Point{X: u.Lattice.A.X.Times(0.01 * float64(seed))})
		cuts, limit := u.CutOuts(), geom.MM(0.1+0.02*float64(seed))
		periods := []geom.Point{u.Lattice.A, u.Lattice.B}
		reach := webReach(cuts, limit, periods)
		fast := fieldScene(cuts, reach, periods)
		if fast == nil {
			t.Fatalf("seed %d: the discs get no field, so the fast search is not tried", seed)
		}
		tally := fast.tallied(limit, reach)
		if !tally.found || tally.doubled {
			t.Fatalf("seed %d: the fast search found %v, doubled %v", seed, tally.found, tally.doubled)
		}
		got := WebReport{Limit: limit}.of(fast, tally)
		s := sceneOf(cuts, reach, periods...)
		want := WebReport{Limit: limit}.with(s, s.links(reach))
		if fmt.Sprint(got) != fmt.Sprint(want) {
			t.Errorf("seed %d: %d webs, narrowest %v, %d below; want %d, %v, %d",
				seed, len(got.Widths()), got.Narrowest, len(got.Below), len(want.Widths()), want.Narrowest, len(want.Below))
		}
		if public := Webs(cuts, limit, periods...); fmt.Sprint(public) != fmt.Sprint(got) {
			t.Errorf("seed %d: Webs told another report than the fast search", seed)
		}
		webs += len(want.Widths())
	}
	if webs < 2000 {
		t.Errorf("only %d webs were compared", webs)
	}
}
