package pattern

import (
	"fmt"
	"math"
	"math/rand/v2"

	"tsugime/repeat/geom"
)

// A stripe is a slit of a rule: where it begins across the period and how wide it
// is, in nanometres.
type stripe struct{ from, width float64 }

// stripes returns a ground of stripes whose rule gives the slits of one period.
func stripes(name, trade, about string, rule func(v values) (period float64, all []stripe), params ...Param) Ground {
	return Ground{
		Name: name, Trade: trade, About: about,
		Params: append(params, cutParam(), everyParam(40), bridgeParam(0.8)),
		draft: draft{
			tile: func(v values) (float64, float64) {
				period, all := rule(v)
				return period * pairs(all), v.nm("every")
			},
			count: func(v values, _ tile) float64 { _, all := rule(v); return float64(len(all)) * pairs(all) },
			draw: func(v values, t tile, _ *rand.Rand) ([]mark, error) {
				period, all := rule(v)
				return drawStripes(v, t, period, all)
			},
			whole: wholeStripes, apart: true, spaced: true,
		},
	}
}

func cutParam() Param {
	return chosen("cut", "Cut", "What is cut: the threads of the rule, or the ground between them.", "threads", "ground")
}

func everyParam(usual float64) Param {
	return length("every", "Bridges every", 0, 400, usual, "From bridge to bridge along a slit; 0 leaves whole stripes, which need threads or gauze.")
}

func bridgeParam(usual float64) Param {
	return length("bridge", "Bridge", 0.05, 20, usual, "Width of a bridge across a slit.")
}

// wholeStripes reports whether the slits have no bridges, so that the tile is as
// long as the step.
func wholeStripes(v values) bool { return v["every"] == 0 }

// pairs is how many periods a tile takes, so that it has an even number of slits
// and bridges can stand by turns.
func pairs(all []stripe) float64 { return float64(1 + len(all)%2) }

func drawStripes(v values, t tile, period float64, all []stripe) ([]mark, error) {
	n := pairs(all)
	stretch := t.w / (period * n)
	var err error
	if all, err = inOrder(all, period, v["cut"] == 1); err != nil {
		return nil, err
	}
	from, to, err := slitRun(v, t)
	if err != nil {
		return nil, err
	}
	var pieces []mark
	for i := range int(n) {
		for _, s := range all {
			w, y := s.width*stretch, (from+to)/2
			if len(pieces)%2 == 1 && !wholeStripes(v) {
				y += t.h / 2
			}
			half := (to - from) / 2
			pieces = append(pieces, mark{
				x: (s.from+float64(i)*period)*stretch + w/2, y: y,
				shape: polygon([][2]float64{{-w / 2, -half}, {w / 2, -half}, {w / 2, half}, {-w / 2, half}}),
			})
		}
	}
	return pieces, nil
}

// inOrder returns the slits of a period, or the ground between them, and an error
// where they leave no paper.
func inOrder(all []stripe, period float64, ground bool) ([]stripe, error) {
	between := make([]stripe, len(all))
	for i, s := range all {
		next := period + all[0].from
		if i+1 < len(all) {
			next = all[i+1].from
		}
		end := s.from + s.width
		if s.width < 1 || next-end < 1 {
			return nil, fmt.Errorf("a stripe of %.3f mm leaves %.3f mm to the next; give both some width",
				s.width/1e6, (next-end)/1e6)
		}
		between[i] = stripe{end, next - end}
	}
	if ground {
		return between, nil
	}
	return all, nil
}

// slitRun returns where a slit begins and ends along a tile. A whole stripe laps
// over its own copy a little, so that nothing is left between.
func slitRun(v values, t tile) (from, to float64, err error) {
	if wholeStripes(v) {
		lap := math.Min(float64(geom.Millimetre)/10, t.h/4)
		return -lap / 2, t.h + lap/2, nil
	}
	bridge := v.nm("bridge")
	if 2*bridge >= t.h {
		return 0, 0, fmt.Errorf("bridges of %.3f mm every %.3f mm leave no slit; set them farther apart", bridge/1e6, t.h/1e6)
	}
	return bridge / 2, t.h - bridge/2, nil
}
