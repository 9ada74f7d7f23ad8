package cloth

import (
	"fmt"
	"math"
	"slices"
	"testing"

	"tsugime/repeat/geom"
)

func TestEveryOtherLaysEachPlacementOnceAndGapsLast(t *testing.T) {
	for n := 1; n < 12; n++ {
		seen := make([]int, n)
		for k := range n {
			seen[EveryOther.laidAs(k, n)]++
			if EveryOther.between(k, n) {
				for _, side := range []int{k - 1, k + 1} {
					if EveryOther.laidAs(side, n) > EveryOther.laidAs(k, n) {
						t.Errorf("%d placements: %d lies between, yet %d is laid after it", n, k, side)
					}
				}
			}
		}
		if slices.ContainsFunc(seen, func(v int) bool { return v != 1 }) {
			t.Errorf("%d placements: laid %v times", n, seen)
		}
	}
}

// Closed forms and laying bolts agree for every way, both sequences, unlike
// errors along and across, a pitch error, and a sheet that dries.
func TestClosedFormsAgreeWithLayingBoltsInAnySequence(t *testing.T) {
	const bolts = 6_000
	sdTol, meanTol := 4/math.Sqrt(2*bolts)+.01, 4/math.Sqrt(bolts)
	for _, way := range []Way{StarToStar, EdgeLine, MarkedLine, FoldLine} {
		for _, seq := range Sequences() {
			if way == FoldLine && seq == EveryOther {
				continue
			}
			for _, n := range []int{1, 2, 3, 8, 41} {
				for _, dry := range []Growth{{}, {Start: .0003, End: -.0006}, {Start: .0005, End: 0, Half: 4}} {
					reg := design
					reg.Way, reg.Sequence, reg.Growth = way, seq, dry
					reg.StarErrorAcross, reg.Tolerance = 150*geom.Micrometre, 350*geom.Micrometre
					reg.PitchError = 10 * geom.Micrometre
					name := fmt.Sprintf("%s, %s, %d placements, growth %v", way, seq, n, dry)
					want, err := reg.Drift(sixSun, n)
					if err != nil {
						t.Fatal(err)
					}
					got, err := Simulate(reg, sixSun, n, bolts, reg.Tolerance, 11)
					if err != nil {
						t.Fatal(err)
					}
					sdY := (want.EndY - want.ShareY).Abs().MM()
					within(t, name+": sd across", got.SpreadX.MM(), want.EndX.MM(), want.EndX.MM()*sdTol)
					within(t, name+": sd along", got.SpreadY.MM(), sdY, sdY*sdTol)
					within(t, name+": mean along", got.MeanY.MM(), want.ShareY.MM()-shortening(way, n), sdY*meanTol+.005)
					if n > 1 {
						closedJoints(t, name, want, got, dry == Growth{})
					}
				}
			}
		}
	}
}

// closedJoints compares the joints: the widest is a bound, as are the odds where
// no joint has a lap of its own that isn't shared by all.
func closedJoints(t *testing.T, name string, want Drift, got Simulated, even bool) {
	t.Helper()
	if got.WorstJoint > want.WorstJoint.Times(1.01)+geom.Micrometre {
		t.Errorf("%s: widest joint %s mm on the mean, %s expected at most", name, got.WorstJoint, want.WorstJoint)
	}
	if even && got.WorstJoint < want.WorstJoint.Times(.86)-30*geom.Micrometre {
		t.Errorf("%s: widest joint %s mm on the mean, %s expected: too far off", name, got.WorstJoint, want.WorstJoint)
	}
	// Four standard deviations of a count of bolts, and half a percent for what
	// is second order; above, joints that depend on each other may do better.
	noise := 100*4*.5/math.Sqrt(float64(got.Bolts)) + .5
	if got.WithinPct < want.WithinPct-noise || got.WithinPct > want.WithinPct+noise+7 {
		t.Errorf("%s: %.1f %% of the bolts within, odds of %.1f %%", name, got.WithinPct, want.WithinPct)
	}
}

// The joints of a chain of stars are independent, so its odds are exact.
func TestOddsOfAChainAreExact(t *testing.T) {
	for _, tolerance := range []float64{.2, .3, .4} {
		for _, seq := range Sequences() {
			reg := design
			reg.Tolerance, reg.Sequence = geom.MM(tolerance), seq
			want, _ := reg.Drift(sixSun, 30)
			got, err := Simulate(reg, sixSun, 30, 20_000, reg.Tolerance, 5)
			if err != nil {
				t.Fatal(err)
			}
			within(t, fmt.Sprintf("%s, within %g mm", seq, tolerance), got.WithinPct, want.WithinPct, 100*4*.5/math.Sqrt(20_000))
		}
	}
}

// A placement between two finished ones, where its neighbours are known, walks as
// a walk of two steps that is held at both ends: σ/√2·√(1·1/2) = σ/2. The same law
// gives the 0.2782 of a walk of 31 steps of 0.1 at step 16, √(16·15/31).
func TestAPlacementBetweenTwoIsHeldAtBothEnds(t *testing.T) {
	held := func(step float64, k, n int) float64 { return step * math.Sqrt(float64(k*(n-k))/float64(n)) }
	within(t, "31 steps, at 16", held(.1, 16, 31), .2782, 5e-5)
	for _, way := range []Way{StarToStar, MarkedLine} {
		reg := design
		reg.Way, reg.Sequence = way, EveryOther
		var y, joint tally
		for seed := range uint64(20_000) {
			walk, err := Scatter(reg, sixSun, 5, seed)
			if err != nil {
				t.Fatal(err)
			}
			middle := (walk[2].By.Y + walk[4].By.Y).MM() / 2
			y.add(walk[3].By.Y.MM() - middle)
			joint.add((walk[3].By.Y - walk[2].By.Y).MM())
		}
		want := held(.1/math.Sqrt2, 1, 2)
		within(t, string(way)+": off the middle of its neighbours", y.spread(), want, want*.03)
		within(t, string(way)+": joint", joint.spread(), .1/math.Sqrt2, .1/math.Sqrt2*.03)
	}
}

// Laid between their neighbours instead of on their own marks, placements close
// the joints of a marked line better; stars gain nothing.
func TestEveryOtherClosesTheJointsOfAMarkedLine(t *testing.T) {
	for _, way := range Ways() {
		reg := design
		reg.Way = way
		one, _ := reg.Drift(sixSun, 71)
		reg.Sequence = EveryOther
		other, _ := reg.Drift(sixSun, 71)
		if better := other.WorstJoint < one.WorstJoint; better != (way != StarToStar) {
			t.Errorf("%s: worst joint %s mm one after another, %s every other", way, one.WorstJoint, other.WorstJoint)
		}
	}
}
