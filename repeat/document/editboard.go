package document

import (
	"fmt"
	"maps"
	"strings"

	"tsugime/repeat/cloth"
	"tsugime/repeat/geom"
)

// ClearTurn lays the cloth so that no panel lies over the turn of the board, as c
// tells for the garment as it lies now: by another start and more cloth before
// some panels.
func ClearTurn(o Order, c cloth.Clearing, now cloth.Dressed) (Order, error) {
	over := strings.Join(c.Over, " and the ")
	switch {
	case len(c.Over) == 0:
		return o, fmt.Errorf("turn: no panel lies over it; leave it as it is")
	case c.Lacks > 0:
		return o, fmt.Errorf("turn: the %s can't be moved off it on this bolt; take one that gives %s more finished cloth",
			over, geom.MMUnit.Format(c.Lacks, 1))
	case !c.Found:
		return o, fmt.Errorf("turn: no start clears the %s; use a longer board, or tell the tailor of the place", over)
	}
	next := o
	next.Board.Start = c.Start
	if len(c.Before) > 0 {
		gaps := maps.Clone(o.Garment.Layout.Gaps)
		if gaps == nil {
			gaps = map[string]geom.Length{}
		}
		for _, name := range c.Before {
			gaps[name] = now.GapBefore(name) + c.Gap
		}
		next.Garment.Layout.Gaps = gaps
	}
	return o.checked(next)
}

// Takeable reports whether a remedy against drift is an edit of the order. The
// others are made on the sheet, or by the dyer's hand.
func Takeable(r cloth.Remedy) bool {
	switch r {
	case cloth.UseEdgeLine, cloth.UseMarkedLine, cloth.LayEveryOther, cloth.DampSheet:
		return true
	}
	return false
}

// TakeRemedy has the cloth laid by a remedy against drift.
func TakeRemedy(o Order, r cloth.Remedy) (Order, error) {
	next := o
	switch r {
	case cloth.UseEdgeLine:
		next.Register.Way = cloth.EdgeLine
	case cloth.UseMarkedLine:
		next.Register.Way = cloth.MarkedLine
	case cloth.LayEveryOther:
		next.Board.Sequence = cloth.EveryOther
	case cloth.DampSheet:
		next.Register.Growth.End = o.Register.Growth.Start
	default:
		return o, fmt.Errorf("remedy: %q is no edit of the order; it is made on the sheet or by the dyer", string(r))
	}
	return o.checked(next)
}
