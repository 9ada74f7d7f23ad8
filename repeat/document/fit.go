package document

import (
	"fmt"

	"tsugime/repeat/geom"
	"tsugime/repeat/pattern"
)

// SeamWidth returns the distance across between the two back seams: a pattern that
// repeats in it runs on over the back centre.
func (o Order) SeamWidth() geom.Length { return o.Cloth.Bolt.BetweenSeams() }

// ApplyFit takes the unit onto the lattice of f, the places of its motifs and
// their ties with it, and sets the step of f. The recipe of a ground follows, so
// that laying it again keeps the fit; where none can (KeepsGround), the unit is
// from then on one that was drawn by hand.
func ApplyFit(o Order, f pattern.Fit) (Order, error) {
	next := o.onLattice(func(u pattern.Unit) pattern.Unit { return u.Fitted(f) })
	next.Sheet.Step = f.Step
	next.Ground, _ = o.groundAfter(f)
	before := o
	if next.Group != o.Group {
		before = o.writtenOut()
	}
	return o.checked(carryTies(before.Design(), next))
}

// KeepsGround reports whether the ground of the order can still be changed and
// laid again after f. It is true of a unit that was drawn by hand.
func (o Order) KeepsGround(f pattern.Fit) bool {
	_, ok := o.groundAfter(f)
	return ok
}

// groundAfter returns the recipe that lays the ground as f has it, and whether
// there is one.
func (o Order) groundAfter(f pattern.Fit) (pattern.Recipe, bool) {
	if o.Ground.Ground == "" {
		return o.Ground, true
	}
	return o.Ground.Fitted(f, o.Unit.Lattice, o.Sheet.Step, o.SeamWidth())
}

// EaseGround lays the order's ground again in the size nearest to its own that
// meets both step and width unbent.
func EaseGround(o Order) (Order, error) {
	r, ok := o.Ground.Eased(o.Sheet.Step)
	if !ok {
		return o, fmt.Errorf("ground: there is none of nearly its size that meets both the step of %s mm and a width of %s mm; "+
			"give another width", o.Sheet.Step, o.Ground.Width)
	}
	return LayGround(o, r)
}

// FreeGround lays the order's ground again without a width to repeat in.
func FreeGround(o Order) (Order, error) {
	r := o.Ground
	r.Width, r.Columns = 0, 0
	return LayGround(o, r)
}
