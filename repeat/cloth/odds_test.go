package cloth

import (
	"fmt"
	"math"
	"math/rand/v2"
	"slices"
	"testing"
)

// Four rectangular errors of standard uncertainty 1 each: by drawing them, 95 %
// lie within ±3.88 (JCGM 101:2008, 9.2.3; from memory), in closed form
// 2√3·(2 − (3/5)^¼) = 3.8794. The source of chance and the tally of this package
// give that.
func TestTheSamplerGivesTheGuidesInterval(t *testing.T) {
	want := 2 * math.Sqrt(3) * (2 - math.Pow(.6, .25))
	within(t, "closed form", want, 3.8794, 5e-5)
	const draws = 1_000_000
	random := rand.New(rand.NewPCG(1, 0))
	sums := make([]float64, draws)
	var all tally
	for i := range sums {
		for range 4 {
			sums[i] += math.Sqrt(3) * (2*random.Float64() - 1)
		}
		all.add(sums[i])
	}
	slices.Sort(sums)
	within(t, "standard uncertainty", all.spread(), 2, .01)
	within(t, "lower end", sums[draws/40], -want, .01)
	within(t, "upper end", sums[draws-draws/40], want, .01)
}

// A joint is within a tolerance as often as drawn ones are.
func TestOddsOfAJointAgreeWithDrawing(t *testing.T) {
	random := rand.New(rand.NewPCG(2, 0))
	for _, c := range []struct {
		law       jointLaw
		lap, half float64
		most      float64
	}{
		{jointLaw{gap: .07, turn: .0004}, 0, 178, .1},
		{jointLaw{gap: .07, turn: .0004}, .05, 178, .15},
		{jointLaw{gap: .02, turn: .001}, -.1, 178, .3},
		{jointLaw{gap: .1}, .02, 178, .12},
		{jointLaw{turn: .0005}, .04, 178, .12},
		{jointLaw{gap: .1, turn: .0005}, .5, 100, .1},
	} {
		const draws = 200_000
		count := 0
		for range draws {
			if math.Abs(c.lap+c.law.gap*random.NormFloat64())+c.half*math.Abs(c.law.turn*random.NormFloat64()) <= c.most {
				count++
			}
		}
		within(t, fmt.Sprintf("%+v", c), c.law.within(c.lap, c.half, c.most), float64(count)/draws, .005)
	}
}

// Without a turn the odds are those of the normal law: 0.6827, 0.9545, 0.9973
// within one, two, three standard deviations (tables of the normal law).
func TestOddsWithoutATurnAreTheNormalLaws(t *testing.T) {
	for n, want := range map[float64]float64{1: .6827, 2: .9545, 3: .9973} {
		within(t, fmt.Sprintf("%g standard deviations", n), jointLaw{gap: .1}.within(0, 178, .1*n), want, 5e-5)
	}
}
