package stencil

import (
	"testing"

	"tsugime/repeat/geom"
	"tsugime/repeat/pattern"
)

// The limit is the default of a new order: 0.4 mm.
func TestEveryGroundHoldsByItselfAsItIsOffered(t *testing.T) {
	limit := geom.MM(0.4)
	for _, g := range pattern.Grounds() {
		u, err := g.Recipe().Unit(geom.MM(181.8))
		if err != nil {
			t.Error(err)
			continue
		}
		cuts := u.CutOuts()
		c := mustConnect(t, cuts, u.Lattice.A, u.Lattice.B)
		if len(c.Islands)+len(c.Bands) > 0 {
			t.Errorf("%s: %d islands, %d bands", g.Name, len(c.Islands), len(c.Bands))
		}
		w := Webs(cuts, limit, u.Lattice.A, u.Lattice.B)
		if !w.Found || w.Narrowest.Width < limit {
			t.Errorf("%s: the narrowest web is %s mm at %v", g.Name, w.Narrowest.Width, w.Narrowest.P)
		}
	}
}
