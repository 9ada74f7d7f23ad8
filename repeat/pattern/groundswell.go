package pattern

import "math"

// The ways a ground of dots may swell, as the table lists them.
const (
	swellNone = iota
	swellAlong
	swellRound
)

// swellParams are the rows of a ground of dots that tell how their size changes
// over the step. The count stays.
func swellParams() []Param {
	return []Param{
		chosen("swell", "Swell", "Where dots grow: nowhere, half way along the step, or around a centre.", "even", "along", "round"),
		percent("small", "Smallest", 20, 100, 60, "The smallest dot of a swell, of the full size."),
		counted("sizes", "Sizes", 2, 64, 5, "How many sizes a swell has; each takes a punch of its own."),
	}
}

// swellOf returns the size of a dot at a place of the cell, as a fraction of the
// full one: a cosine that closes over the step, in as many sizes as there are
// punches. Around a centre it falls to the least at half the shorter side.
func swellOf(v values, l Laying) func(x, y float64) float64 {
	w, h := float64(l.Lattice.A.X), float64(l.Lattice.B.Y)
	last := v["sizes"] - 1
	sized := func(turn float64) float64 {
		full := math.Round((1-math.Cos(turn))/2*last) / last
		return v.share("small") + (1-v.share("small"))*full
	}
	switch v["swell"] {
	case swellAlong:
		return func(_, y float64) float64 { return sized(2 * math.Pi * y / h) }
	case swellRound:
		return func(x, y float64) float64 {
			dx, dy := math.Remainder(x-w/2, w), math.Remainder(y-h/2, h)
			far := math.Min(1, math.Hypot(dx, dy)/(math.Min(w, h)/2))
			return sized(math.Pi * (1 - far))
		}
	}
	return func(_, _ float64) float64 { return 1 }
}
