package document

import (
	"fmt"
	"maps"
	"slices"

	"tsugime/repeat/pattern"
)

// Design returns the unit with every copy that the order's plane group makes of
// the motifs that are drawn. In the group p1 it is the unit as it is drawn. A
// copy's ID tells its motif (pattern.ID.Drawn).
func (o Order) Design() pattern.Unit {
	if o.Group == pattern.P1 {
		return o.Unit
	}
	motifs, err := o.Group.Multiply(o.Unit.Lattice, o.Unit.Motifs)
	if err != nil { // an order that Check refuses
		return o.Unit
	}
	return pattern.Unit{Lattice: o.Unit.Lattice, Motifs: motifs}
}

// SetGroup lets a plane group multiply the motifs. Copies that the group before
// made are gone; WriteOut keeps them.
func SetGroup(o Order, g pattern.Group) (Order, error) {
	next := o
	next.Group = g
	return o.checked(carryTies(o.Design(), next))
}

// WriteOut makes every copy a motif of its own, so that each can be changed
// alone. The pattern stays as it is; motifs that were copies get new IDs.
func WriteOut(o Order) (Order, error) {
	next := o.writtenOut()
	return o.checked(next)
}

func (o Order) writtenOut() Order {
	if o.Group == pattern.P1 {
		return o
	}
	design := o.Design()
	next := o
	next.Group = pattern.P1
	next.Unit.Motifs = slices.Clone(design.Motifs)
	next.Methods = maps.Clone(o.Methods)
	renamed := make(map[pattern.ID]pattern.ID, len(design.Motifs))
	for i := range next.Unit.Motifs {
		m := &next.Unit.Motifs[i]
		if drawn, op := m.ID.Drawn(); op != 0 {
			if method, named := o.Methods[drawn]; named {
				next.Methods[next.NextID] = method
			}
			renamed[m.ID] = next.NextID
			m.ID = next.NextID
			next.NextID++
		}
	}
	return next.renamedTies(renamed)
}

// renamedTies takes ties and motifs of the second sheet along when motifs get
// other IDs.
func (o Order) renamedTies(to map[pattern.ID]pattern.ID) Order {
	name := func(id pattern.ID) pattern.ID {
		if n, ok := to[id]; ok {
			return n
		}
		return id
	}
	h := o.Sheet.Hold
	h.Ties, h.Second.Ties = slices.Clone(h.Ties), slices.Clone(h.Second.Ties)
	h.Second.Motifs = slices.Clone(h.Second.Motifs)
	for i := range h.Ties {
		h.Ties[i].Motif = name(h.Ties[i].Motif)
	}
	for i := range h.Second.Ties {
		h.Second.Ties[i].Motif = name(h.Second.Ties[i].Motif)
	}
	for i, id := range h.Second.Motifs {
		h.Second.Motifs[i] = name(id)
	}
	o.Sheet.Hold = h
	return o
}

// onLattice puts the unit on another lattice. Where the plane group doesn't go
// with it the copies become motifs of their own, so that none is lost.
func (o Order) onLattice(u func(pattern.Unit) pattern.Unit) Order {
	next := o
	next.Unit = u(o.Unit)
	if o.Group.Allows(next.Unit.Lattice) == nil {
		return next
	}
	next = o.writtenOut()
	next.Unit = u(next.Unit)
	return next
}

// LayGround draws a traditional ground for the order's step in the place of what
// the unit holds. The recipe is kept with its width, so that it can be changed and
// laid again.
func LayGround(o Order, r pattern.Recipe) (Order, error) {
	u, err := r.Unit(o.Sheet.Step)
	if err != nil {
		return o, err
	}
	next := o
	next.Group, next.Ground = pattern.P1, r
	next.Unit = pattern.Unit{Lattice: u.Lattice, Motifs: slices.Clone(u.Motifs)}
	if n := len(next.Unit.Motifs); int(next.NextID) > maxID-n {
		return o, fmt.Errorf("ground %s: the order has no IDs left for %d motifs; begin a new order", r.Ground, n)
	}
	for i := range next.Unit.Motifs {
		next.Unit.Motifs[i].ID = next.NextID
		next.NextID++
	}
	h := next.Sheet.Hold
	h.Ties, h.Second.Ties, h.Second.Motifs = nil, nil, nil
	next.Sheet.Hold, next.Methods = h, nil
	return o.checked(next)
}

// maxSeed keeps a seed within what every reader of JSON takes for a whole number.
const maxSeed = 1 << 30

func checkGroup(o Order) *Fault {
	if err := o.Group.Allows(o.Unit.Lattice); err != nil {
		return faultf("unit.group", "%v", err)
	}
	if o.Group != pattern.P1 && o.NextID > pattern.CopyStep {
		return faultf("unit.next_id", "%d is out of bounds under the group %s; give 1 to %d", o.NextID, o.Group, pattern.CopyStep)
	}
	if o.Ground.Seed > maxSeed {
		return faultf("unit.ground.seed", "%d is out of bounds; give 0 to %d", int64(o.Ground.Seed), maxSeed)
	}
	if o.Ground.Width < 0 || o.Ground.Width > pattern.MaxPitch {
		return faultf("unit.ground.width_mm", "%s mm is out of bounds; give 0 to %s", o.Ground.Width, pattern.MaxPitch)
	}
	for _, n := range []struct {
		key   string
		count int
	}{{"columns", o.Ground.Columns}, {"rows", o.Ground.Rows}} {
		if n.count < 0 || n.count > pattern.MaxTiles {
			return faultf("unit.ground."+n.key, "%d is out of bounds; give 0 to %d", n.count, pattern.MaxTiles)
		}
	}
	if o.Ground.Ground == "" {
		return nil
	}
	if err := o.Ground.Check(); err != nil {
		return faultf("unit.ground", "%v", err)
	}
	return nil
}
