package cloth

import "tsugime/repeat/geom"

// BackCentre is the name of the seam that forms of worn garments match.
const BackCentre = "back centre"

// A joining is a seam before it is measured: the place of the cloth that lies at
// the same point of the seam line, on the first panel and on the second. Seam
// allowances are already taken off.
type joining struct {
	at, on            geom.Point
	firstTurn, onTurn bool
}

// way returns how far the pattern on the second panel is from where the first
// one's would go on: a place of the lattice where it runs on. Seen from the seam,
// a panel's places are the lattice less the cloth's own place, and both signs
// change where the panel is turned half round. The lattice is the same after
// half a turn, the motif need not be: where only one of two panels is turned, the
// lattice places are compared, about which a pattern that has no up and down
// turns into itself. Swapping the panels changes the sign.
func (j joining) way() geom.Point {
	at, on := j.at, j.on
	if j.firstTurn {
		at = at.Neg()
	}
	if j.onTurn {
		on = on.Neg()
	}
	return at.Sub(on)
}
