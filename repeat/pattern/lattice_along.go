package pattern

import "tsugime/repeat/geom"

// Along returns the along-period: the least way straight along the cloth after
// which l repeats. A lattice that leans has a long one; where every row lies on
// whole nanometres there always is one, at most 4.5e18 nm. l must pass Check.
//
// The places of l stand in columns gcd(A.X, B.X) apart, and those of one column
// are the along-period apart, since a column times a place is the cell.
func (l Lattice) Along() geom.Length {
	return geom.Length(l.A.Cross(l.B)).Abs() / gcd(l.A.X.Abs(), l.B.X.Abs())
}
