package cloth

import (
	"tsugime/repeat/geom"
	"tsugime/repeat/pattern"
)

// BackCentre is the name of the seam that Dress can match.
const BackCentre = "back centre"

// A joining is a seam before it is measured: the place of the cloth that lies at
// the same point of the seam line, on the first panel and on the second. Seam
// allowances are already taken off.
type joining struct {
	name              string
	first, second     string
	at, on            geom.Point
	firstTurn, onTurn bool
	priority          bool
}

// joined returns the joining of two pieces that meet where x is a on the first
// and b on the second, at height y below the shoulder.
func joined(name string, priority bool, first Piece, a geom.Length, second Piece, b, y geom.Length) joining {
	return joining{
		name: name, priority: priority, first: first.Panel, second: second.Panel,
		at: first.ToCloth(geom.Point{X: a, Y: y}), on: second.ToCloth(geom.Point{X: b, Y: y}),
		firstTurn: first.Turned, onTurn: second.Turned,
	}
}

// phase returns how far the pattern on the second panel is from where the first
// one's would go on: the way from the nearest place of the lattice. Seen from
// the seam, a panel's places are the lattice less the cloth's own place, and
// both signs change where the panel is turned half round. The lattice is the
// same after half a turn, the motif need not be: where only one of two panels is
// turned, the lattice places are compared, about which a pattern that has no up
// and down turns into itself. Swapping the panels changes the sign.
func (j joining) phase(l pattern.Lattice) geom.Point {
	at, on := j.at, j.on
	if j.firstTurn {
		at = at.Neg()
	}
	if j.onTurn {
		on = on.Neg()
	}
	return l.Into(at.Sub(on))
}

// seam measures the joining.
func (j joining) seam(l pattern.Lattice, tolerance geom.Length) Seam {
	p := j.phase(l)
	return Seam{
		Name: j.name, Between: [2]string{j.first, j.second},
		PhaseAlong: p.Y, PhaseAcross: p.X,
		Matched:  p.X.Abs() <= tolerance && p.Y.Abs() <= tolerance,
		Priority: j.priority,
	}
}

// joinings lists the seams of the garment. Those that the eye goes to first are
// marked (a tailor's page on pattern matching: back centre, upper front to
// overlap, over-collar). The left front is the upper one. Bodies are compared
// below their tucks, so that both tucks of a side seam are passed.
func (d Dressed) joinings() []joining {
	pieces := d.Pieces()
	find := func(name string) Piece {
		for _, p := range pieces {
			if p.Name == name {
				return p
			}
		}
		return Piece{}
	}
	hem, shoulder := d.cut.body, geom.Length(0)
	collar, over := find("collar"), find("over-collar")
	lb, rb := find("left back below the tuck"), find("right back below the tuck")
	lf, rf := find("left front below the tuck"), find("right front below the tuck")
	ly, ry := find("left back above the tuck"), find("right back above the tuck")
	ls, rs := find("left sleeve back"), find("right sleeve back")
	lo, ro := find("left overlap"), find("right overlap")
	return []joining{
		joined(BackCentre, true, lb, lb.Area.Max.X, rb, rb.Area.Min.X, hem),
		joined("upper overlap", true, lo, lo.Area.Max.X, lf, lf.Area.Min.X, hem),
		joined("collar", true, collar, 0, over, 0, over.Area.Min.Y),
		joined("under overlap", false, rf, rf.Area.Max.X, ro, ro.Area.Min.X, hem),
		joined("left side", false, lf, lf.Area.Max.X, lb, lb.Area.Min.X, hem),
		joined("right side", false, rb, rb.Area.Max.X, rf, rf.Area.Min.X, hem),
		joined("left sleeve", false, ls, ls.Area.Max.X, ly, ly.Area.Min.X, shoulder),
		joined("right sleeve", false, ry, ry.Area.Max.X, rs, rs.Area.Min.X, shoulder),
	}
}
