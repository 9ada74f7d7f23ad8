package document

import (
	"cmp"
	"fmt"
	"slices"

	"tsugime/repeat/geom"
	"tsugime/repeat/pattern"
)

// SeamWidth returns the distance across between the seams at both edges of a panel:
// a pattern that repeats in it runs on over the back centre.
func (o Order) SeamWidth() geom.Length { return o.Garment.Body.BetweenSeams(o.Cloth.Bolt) }

// LayAgain lays the order's ground again for its present step and width.
func LayAgain(o Order) (Order, error) {
	r := o.Ground
	r.Rows = 0
	return LayGround(o, r)
}

// EaseGround lays the order's ground again in the size nearest to its own that
// meets both step and width unbent.
func EaseGround(o Order) (Order, error) {
	r, ok := o.Ground.Eased(o.Sheet.Step)
	if !ok {
		return o, fmt.Errorf("ground: there is none of nearly its size that meets both the step of %s mm and a width of %s mm; "+
			"give another width or step", o.Sheet.Step, o.Ground.Width)
	}
	return LayGround(o, r)
}

// FreeGround lays the order's ground again without a width to repeat in.
func FreeGround(o Order) (Order, error) {
	r := o.Ground
	r.Width, r.Columns = 0, 0
	return LayGround(o, r)
}

// A FitWish is what an order is to be fitted to: the step, a width across where it
// is not zero, and the distance between the back seams where Seam.
type FitWish struct {
	Step, Width geom.Length
	Seam        bool
}

// An OrderFit is a fit with what it means for the order.
type OrderFit struct {
	pattern.Fit
	// WidthOff and SeamOff are how far the width of the wish and the distance
	// between the back seams are from the nearest repeat; 0 for a width not asked for.
	WidthOff, SeamOff geom.Length
	// KeepsGround tells that the ground can be changed and laid again after the fit.
	// It is true of a unit that was drawn by hand.
	KeepsGround bool
	// Bent is by how much the ground is bent after the fit, against its own
	// proportions and not those that it has now; 0 where there is none.
	Bent   float64
	ofTile pattern.Lattice // of a fit that lays the ground again, tile by tile
}

// Fits returns up to ten ways to meet a wish, those that change the pattern least
// first. With a width and the seams both, the seams are met exactly, and what the
// width is off counts as strain. A ground whose unit holds several tiles, none of
// them changed by hand, is fitted by its tiles.
func (o Order) Fits(w FitWish) ([]OrderFit, error) {
	seam, exact := o.SeamWidth(), w.Width
	if w.Seam {
		exact = seam
	}
	tile, tiled := o.tile()
	unit := o.Design()
	if tiled {
		unit = tile
	}
	fits, err := unit.Fits(w.Step, exact)
	if err != nil {
		return nil, err
	}
	var all []OrderFit
	for _, fit := range fits {
		f := OrderFit{Fit: fit, SeamOff: offAcross(fit.Lattice, seam)}
		if tiled {
			f.ofTile = tile.Lattice
		}
		if w.Width > 0 {
			f.WidthOff = offAcross(fit.Lattice, w.Width)
		}
		var ground pattern.Recipe
		if ground, f.KeepsGround = o.groundAfter(f); f.KeepsGround || !tiled {
			if l, err := ground.Laying(f.Step); err == nil && f.KeepsGround {
				f.Bent = l.Bent
			}
			all = append(all, f)
		}
	}
	if w.Seam && w.Width > 0 {
		change := func(f OrderFit) float64 { return f.Strain.Change() + float64(f.WidthOff)/float64(w.Width) }
		slices.SortStableFunc(all, func(a, b OrderFit) int { return cmp.Compare(change(a), change(b)) })
	}
	return all, nil
}

// tile returns one tile of the order's ground, and whether its unit is several of
// them just as they were laid.
func (o Order) tile() (pattern.Unit, bool) {
	l, err := o.Ground.Laying(o.Sheet.Step)
	h := o.Sheet.Hold
	if err != nil || l.Lattice != o.Unit.Lattice || len(h.Ties)+len(h.Second.Ties)+len(h.Second.Motifs) > 0 {
		return pattern.Unit{}, false
	}
	tile := l.Tile(o.Unit)
	if len(tile.Motifs) == len(o.Unit.Motifs) {
		return pattern.Unit{}, false
	}
	drawn, err := o.Ground.Unit(o.Sheet.Step)
	same := func(a, b pattern.Motif) bool {
		return a.At == b.At && a.TurnDeg == b.TurnDeg && a.Mirrored == b.Mirrored && a.Shape.Bounds() == b.Shape.Bounds()
	}
	if err != nil || !slices.EqualFunc(o.Unit.Motifs, drawn.Motifs, same) {
		return pattern.Unit{}, false
	}
	return tile, true
}

// ApplyFit takes the unit onto the lattice of f, the places of its motifs and
// their ties with it, and sets the step of f. The recipe of a ground follows, so
// that laying it again keeps the fit; where none can, the unit is from then on one
// that was drawn by hand.
func ApplyFit(o Order, f OrderFit) (Order, error) {
	ground, _ := o.groundAfter(f)
	next := o
	next.Sheet.Step = f.Step
	if f.ofTile != (pattern.Lattice{}) {
		laid, err := LayGround(next, ground)
		if err != nil {
			return o, err
		}
		return laid, nil
	}
	next = next.onLattice(func(u pattern.Unit) pattern.Unit { return u.Fitted(f.Fit) })
	next.Ground = ground
	before := o
	if next.Group != o.Group {
		before = o.writtenOut()
	}
	return o.checked(carryTies(before.Design(), next))
}

// groundAfter returns the recipe that lays the ground as f has it, and whether
// there is one.
func (o Order) groundAfter(f OrderFit) (pattern.Recipe, bool) {
	if o.Ground.Ground == "" {
		return o.Ground, true
	}
	found := o.Unit.Lattice
	if f.ofTile != (pattern.Lattice{}) {
		found = f.ofTile
	}
	return o.Ground.Fitted(f.Fit, found, o.Sheet.Step, o.SeamWidth())
}

// offAcross returns how far a place so far across is from the nearest of l.
func offAcross(l pattern.Lattice, across geom.Length) geom.Length {
	_, _, rest := l.Nearest(geom.Point{X: across})
	return rest.Distance(geom.Point{})
}
