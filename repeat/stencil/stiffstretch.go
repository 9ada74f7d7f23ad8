package stencil

import (
	"math"

	"tsugime/repeat/geom"
)

// Stretch returns by what share of its length a sheet gives in the direction of p
// under a pull in newtons for each metre of its breadth, the paper being so thick
// and as stiff as PaperModulusMPa: infinite where it carries nothing.
func (p Pull) Stretch(pull float64, thickness geom.Length) float64 {
	if p.Modulus == 0 {
		return math.Inf(1)
	}
	// N/m by mm are kPa: a thousandth of N/mm².
	return pull / thickness.MM() / 1e3 / (PaperModulusMPa * p.Modulus)
}
