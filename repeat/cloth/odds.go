package cloth

import (
	"math"

	"tsugime/repeat/geom"
)

// A jointLaw is how a joint opens: by a gap and a turn of which both are normal
// and independent, with these standard deviations in millimetres and radians;
// count joints open so.
type jointLaw struct {
	gap, turn float64
	count     int
}

// edge returns the standard deviation at one edge of the field, half its width
// from the middle.
func (j jointLaw) edge(half float64) float64 {
	return math.Sqrt(j.gap*j.gap + half*half*j.turn*j.turn)
}

// within returns the probability that a joint with a lap of its own opens by no
// more than most at both edges of the field: |lap + gap| + half·|turn| ≤ most.
// The gap's density times the probability of the turn, by Simpson's rule over
// seven standard deviations.
func (j jointLaw) within(lap, half, most float64) float64 {
	turned := func(room float64) float64 { // P(half·|turn| ≤ room)
		switch {
		case room < 0:
			return 0
		case j.turn*half == 0:
			return 1
		}
		return math.Erf(room / (half * j.turn * math.Sqrt2))
	}
	if j.gap == 0 {
		return turned(most - math.Abs(lap))
	}
	from, to := math.Max(-most-lap, -7*j.gap), math.Min(most-lap, 7*j.gap)
	if from >= to {
		return 0
	}
	// The two halves meet where the room for the turn has its corner.
	corner := math.Min(math.Max(-lap, from), to)
	f := func(g float64) float64 {
		u := g / j.gap
		return math.Exp(-u*u/2) / (j.gap * math.Sqrt(2*math.Pi)) * turned(most-math.Abs(lap+g))
	}
	return simpson(f, from, corner, 120) + simpson(f, corner, to, 120)
}

// simpson integrates f; pieces is even.
func simpson(f func(float64) float64, from, to float64, pieces int) float64 {
	if from >= to {
		return 0
	}
	h := (to - from) / float64(pieces)
	sum := f(from) + f(to)
	for i := 1; i < pieces; i++ {
		sum += float64(2+2*(i%2)) * f(from+float64(i)*h)
	}
	return sum * h / 3
}

// A jointLine is all joints of a cloth: the law of each and its lap.
type jointLine struct {
	laws []jointLaw
	kind func(k int) int // which law joint k has
	laps []float64
}

// within returns the odds, 0 to 1, that no joint opens beyond most. Joints of a
// chain of stars are independent, so their product is exact; for joints that
// depend on each other it is a lower bound as long as they have no lap of their
// own, by the Gaussian correlation inequality (Royen, Far East Journal of
// Theoretical Statistics 48, 2014, 139–145; for single strips Šidák, JASA 62,
// 1967, 626–633). Laps are rounded to a 200th of most.
func (l jointLine) within(half, most float64) float64 {
	grain := most / 200
	type class struct {
		kind int
		lap  int64
	}
	known := map[class]float64{}
	odds := 1.0
	for k, lap := range l.laps {
		if math.Abs(lap) > most && l.laws[l.kind(k)].gap == 0 {
			return 0
		}
		c := class{kind: l.kind(k)}
		if grain > 0 {
			c.lap = int64(math.Round(math.Min(math.Abs(lap)/grain, 1e9)))
		}
		p, ok := known[c]
		if !ok {
			p = l.laws[c.kind].within(float64(c.lap)*grain, half, most)
			known[c] = p
		}
		if odds *= p; odds == 0 {
			return 0
		}
	}
	return odds
}

// widest returns the widest gap or lap that is expected among the joints. At an
// edge of the field, W/2 from the middle, a joint opens by Δy ± (W/2)·Δturn. The
// two edges of all joints are nearly independent normal draws; by Šidák's
// inequality what is expected of independent ones is an upper bound. Laps that
// the sheets have of themselves are added, the largest of them.
func (l jointLine) widest(half float64) geom.Length {
	var draws []normalDraws
	for _, law := range l.laws {
		draws = append(draws, normalDraws{law.edge(half), 2 * law.count})
	}
	lap := 0.0
	for _, v := range l.laps {
		lap = math.Max(lap, math.Abs(v))
	}
	return geom.MM(widestOf(draws)) + geom.MM(lap)
}

// normalDraws are independent normal draws with one standard deviation.
type normalDraws struct {
	sd    float64
	count int
}

// widestOf returns the expected largest size of normal draws: the integral from
// 0 of 1 − Π F(t/sd)ⁿ, F(t) = erf(t/√2) (David and Nagaraja, Order Statistics,
// 3rd edition 2003, chapter 3), by Simpson's rule. Beyond 12 standard deviations
// the integrand is below n·10⁻³².
func widestOf(draws []normalDraws) float64 {
	most := 0.0
	for _, d := range draws {
		if d.count > 0 {
			most = math.Max(most, d.sd)
		}
	}
	if most == 0 {
		return 0
	}
	return most * simpson(func(t float64) float64 {
		inside := 1.0
		for _, d := range draws {
			if d.count > 0 && d.sd > 0 {
				inside *= math.Pow(math.Erf(t*most/d.sd/math.Sqrt2), float64(d.count))
			}
		}
		return 1 - inside
	}, 0, 12, 600)
}

// inside returns the odds, 0 to 1, that no draw is larger than most: exact for
// independent draws, a lower bound for others (Šidák).
func inside(draws []normalDraws, most float64) float64 {
	odds := 1.0
	for _, d := range draws {
		if d.count > 0 && d.sd > 0 {
			odds *= math.Pow(math.Erf(most/d.sd/math.Sqrt2), float64(d.count))
		}
	}
	return odds
}
