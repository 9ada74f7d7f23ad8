package cloth

import (
	"fmt"
	"math"
	"testing"

	"tsugime/repeat/geom"
)

func TestWalkAcrossGrowsAsWorkedByHand(t *testing.T) {
	// σ 0.1, S 181.8, B 340, n 70: 35·0.01 + (2·0.01·181.8²/340²)·(69·70·139/6)
	// = 0.35 + 639.8 mm², root 25.3 mm.
	d, err := design.Drift(geom.MM(181.8), 70)
	if err != nil {
		t.Fatal(err)
	}
	within(t, "walk across, mm", d.EndX.MM(), 25.3, 0.05)
	within(t, "walk along, mm", d.EndY.MM(), 0.1*math.Sqrt(35), 1e-5)
}

// Ten 1 kΩ resistors of 100 mΩ, all calibrated with one standard, are uncertain
// by 1 Ω together, not by 0.32 Ω (JCGM 100:2008, 5.2.2, example; from memory).
// A pitch error is such a shared error, a star error is not.
func TestASharedErrorAddsUpTenfold(t *testing.T) {
	pitch := design
	pitch.StarError, pitch.PitchError = 0, 100*geom.Micrometre
	d, err := pitch.Drift(sixSun, 10)
	if err != nil {
		t.Fatal(err)
	}
	if d.EndY != geom.Millimetre || d.WorstJoint != 0 {
		t.Errorf("ten steps 0.1 mm too long: %s mm along, joints %s; want 1 and 0", d.EndY, d.WorstJoint)
	}
	// A star error of 0.1·√2 makes 0.1 mm a placement, since two stars are averaged.
	star := design
	star.StarError = geom.MM(0.1 * math.Sqrt2)
	if d, err = star.Drift(sixSun, 10); err != nil {
		t.Fatal(err)
	}
	within(t, "ten placements of 0.1 mm each", d.EndY.MM(), 0.3162, 5e-5)
	pitch.PitchError = -pitch.PitchError
	pitch.StarError = star.StarError
	if d, err = pitch.Drift(sixSun, 10); err != nil {
		t.Fatal(err)
	}
	within(t, "short steps walk back", d.EndY.MM(), -1.3162, 5e-5)
}

// A plain random walk of 31 steps of 0.1: the end's standard deviation is 0.5568
// and its mean size 0.4442; tied down at both ends it has 0.2782 at step 16.
func TestWalkAlongIsARandomWalk(t *testing.T) {
	reg := design
	reg.StarError = geom.MM(0.1 * math.Sqrt2)
	d, err := reg.Drift(sixSun, 31)
	if err != nil {
		t.Fatal(err)
	}
	within(t, "end", d.EndY.MM(), .5568, 5e-5)
	const bolts = 20_000
	var size, bridge float64
	for seed := range uint64(bolts) {
		walk, err := Scatter(reg, sixSun, 31, seed)
		if err != nil {
			t.Fatal(err)
		}
		end, mid := walk[30].By.Y.MM(), walk[15].By.Y.MM()
		size += math.Abs(end) / bolts
		held := mid - end*16/31
		bridge += held * held / bolts
	}
	within(t, "mean size of the end", size, .4442, .4442*.02)
	within(t, "held at both ends, step 16", math.Sqrt(bridge), .2782, .2782*.02)
}

// 14 mm over 360 mm are 3.89 %, 2.227° (worked from the definition of ASTM
// D3882). A placement that is turned by an angle leans by its tangent.
func TestSkewIsTheDepartureOverTheWidth(t *testing.T) {
	skew := SkewPct(14*geom.Millimetre, 360*geom.Millimetre)
	within(t, "skew", skew, 3.89, .005)
	within(t, "angle", math.Atan(skew/100)*180/math.Pi, 2.227, 5e-4)
	// √(2·70)·0.1/340 of turn after 70 placements: 0.348 %.
	d, err := design.Drift(sixSun, 70)
	if err != nil {
		t.Fatal(err)
	}
	within(t, "of the last placement", d.SkewPct, .348, 5e-4)
}

// Known in closed form: one draw √(2/π); two draws 2/√π.
func TestExpectedWidestOfFewDraws(t *testing.T) {
	within(t, "none", widestOf([]normalDraws{{1, 0}}), 0, 1e-12)
	within(t, "one", widestOf([]normalDraws{{1, 1}}), math.Sqrt(2/math.Pi), 1e-9)
	within(t, "two", widestOf([]normalDraws{{1, 2}}), 2/math.Sqrt(math.Pi), 1e-9)
	for n := 1; n < 1_000_000; n *= 3 {
		if a, b := widestOf([]normalDraws{{1, n}}), widestOf([]normalDraws{{1, 3 * n}}); !(a < b && b < math.Sqrt(2*math.Log(6*float64(n)))+1) {
			t.Errorf("%d draws %g, %d draws %g", n, a, 3*n, b)
		}
	}
}

func TestClosedFormsAgreeWithLayingBolts(t *testing.T) {
	const bolts = 20_000
	// A sample's standard deviation is off by 1/√(2·bolts), a mean by sd/√bolts;
	// four of these are allowed, and 1 % for what is second order in the turn.
	sdTol, meanTol := 4/math.Sqrt(2*bolts)+.01, 4/math.Sqrt(bolts)
	for _, way := range Ways() {
		for _, n := range []int{1, 2, 7, 70} {
			for _, pitch := range []geom.Length{0, 50 * geom.Micrometre, -20 * geom.Micrometre} {
				reg := design
				reg.Way, reg.PitchError = way, pitch
				name := fmt.Sprintf("%s, %d placements, pitch error %s", way, n, pitch)
				want, err := reg.Drift(sixSun, n)
				if err != nil {
					t.Fatal(err)
				}
				got, err := Simulate(reg, sixSun, n, bolts, 300*geom.Micrometre, 7)
				if err != nil {
					t.Fatal(err)
				}
				share := geom.Length(n) * pitch
				if way == MarkedLine {
					share = 0
				}
				sdY := (want.EndY.Abs() - share.Abs()).MM()
				within(t, name+": sd across", got.SpreadX.MM(), want.EndX.MM(), want.EndX.MM()*sdTol)
				within(t, name+": sd along", got.SpreadY.MM(), sdY, sdY*sdTol)
				within(t, name+": mean across", got.MeanX.MM(), 0, want.EndX.MM()*meanTol)
				within(t, name+": mean along", got.MeanY.MM(), share.MM()-shortening(way, n), sdY*meanTol+.005)
				// The worst joint is a bound from above, close to what happens.
				if got.WorstJoint.MM() > want.WorstJoint.MM()*1.01 || got.WorstJoint.MM() < want.WorstJoint.MM()*.88-.02 {
					t.Errorf("%s: widest joint %s mm on the mean, %s expected at most", name, got.WorstJoint, want.WorstJoint)
				}
			}
		}
	}
}

// shortening returns by how much turned steps fall short along, in mm, the one
// effect of second order that can be seen: the mean of S·(1 − cos turn) over the
// placements before the n-th, S·(σ²/B²)·n(n−1)/2.
func shortening(way Way, n int) float64 {
	if way != StarToStar {
		return 0
	}
	tilt := design.StarError.MM() / design.Baseline.MM()
	return sixSun.MM() * tilt * tilt * float64(n*(n-1)) / 2
}

func TestOnlyStarToStarWalksAcross(t *testing.T) {
	for _, way := range Ways() {
		reg := design
		reg.Way = way
		short, _ := reg.Drift(sixSun, 40)
		long, _ := reg.Drift(sixSun, 80)
		if grows := long.EndX > short.EndX+geom.Micrometre; grows != (way == StarToStar) {
			t.Errorf("%s: %s mm across after 40, %s after 80", way, short.EndX, long.EndX)
		}
		if grows := long.EndY > short.EndY+geom.Micrometre; grows != (way != MarkedLine) {
			t.Errorf("%s: %s mm along after 40, %s after 80", way, short.EndY, long.EndY)
		}
	}
}

func TestAWrongStepShowsAtEveryJointOfAMarkedLine(t *testing.T) {
	reg := Register{Way: MarkedLine, PitchError: 80 * geom.Micrometre, Baseline: 340 * geom.Millimetre, Width: 356 * geom.Millimetre}
	got, err := Simulate(reg, sixSun, 70, 3, 79*geom.Micrometre, 1)
	if err != nil {
		t.Fatal(err)
	}
	if got.WorstJoint != reg.PitchError || got.WithinPct != 0 || got.MeanY != 0 {
		t.Errorf("got %+v, want joints of 0.08 mm on every bolt and no walk", got)
	}
	reg.Way = StarToStar
	if got, err = Simulate(reg, sixSun, 70, 3, 0, 1); err != nil {
		t.Fatal(err)
	}
	// The simulation works in float64, where 70 sums leave less than a nanometre.
	if got.WorstJoint != 0 || got.MeanY != 70*reg.PitchError {
		t.Errorf("got %+v, want closed joints and 5.6 mm along", got)
	}
}

func TestTheSameSeedLaysTheSameBolt(t *testing.T) {
	a, errA := Scatter(design, sixSun, 70, 3)
	b, errB := Scatter(design, sixSun, 70, 3)
	c, _ := Scatter(design, sixSun, 70, 4)
	if errA != nil || errB != nil || len(a) != 70 {
		t.Fatal(errA, errB, len(a))
	}
	same := 0
	for i := range a {
		if a[i] != b[i] {
			t.Fatalf("placement %d: %v and %v", i, a[i], b[i])
		}
		if a[i] == c[i] {
			same++
		}
	}
	if same > 0 {
		t.Errorf("another seed gives %d of the same placements", same)
	}
}

func TestSimulationRefusesEndlessWork(t *testing.T) {
	for _, c := range []struct{ n, bolts int }{{0, 1}, {1, 0}, {-1, -1}, {maxPlacements + 1, 1}, {70, 10_000_000}, {1, math.MaxInt}} {
		if _, err := Simulate(design, sixSun, c.n, c.bolts, 0, 1); err == nil {
			t.Errorf("%d placements on %d bolts were laid", c.n, c.bolts)
		}
	}
	if _, err := Scatter(design, sixSun, math.MaxInt, 1); err == nil {
		t.Error("an endless bolt was laid")
	}
	if _, err := Scatter(Register{}, sixSun, 3, 1); err == nil {
		t.Error("a bolt was laid without stars")
	}
}

func BenchmarkSimulate(b *testing.B) {
	for b.Loop() {
		if _, err := Simulate(design, sixSun, 90, 10_000, 300*geom.Micrometre, 1); err != nil {
			b.Fatal(err)
		}
	}
}
