package document

import (
	"context"
	"fmt"
	"slices"

	"tsugime/repeat/pattern"
	"tsugime/repeat/stencil"
)

// A proposal is worked out by the stencil station and put into the order as one
// edit. What it can't hold comes back by name; the order is the better for the
// rest of it all the same.

// ProposeTies puts ties that Tsugime chooses in the place of those of the first
// sheet. An order held as drawn is held with ties from then on; that of a split
// stays one, and its second sheet is proposed anew.
func ProposeTies(ctx context.Context, o Order) (Order, []stencil.Unheld, error) {
	h := o.Sheet.Hold
	ties, unheld, err := stencil.ProposeTies(ctx, without(o.Design(), onlySecond(h)), h)
	if err != nil {
		return o, nil, fmt.Errorf("propose ties: %w", err)
	}
	h.Ties = ties
	if h.Way == stencil.Split {
		return proposeSecond(ctx, o, h, unheld)
	}
	h.Way = stencil.WithTies
	next, err := SetHold(o, h)
	return next, unheld, err
}

// ProposeSplit parts the order into two sheets: motifs whose webs are too thin
// go to the second, the first is tied, the second opens where it is.
func ProposeSplit(ctx context.Context, o Order) (Order, []stencil.Unheld, error) {
	h := o.Sheet.Hold
	var thin []stencil.Unheld
	h.Second.Motifs, thin = stencil.ProposeMotifs(o.Design(), o.Sheet.WebLimit)
	h, _, unheld, err := stencil.ProposeSplit(ctx, o.Design(), h)
	if err != nil {
		return o, nil, fmt.Errorf("propose a split: %w", err)
	}
	next, err := SetHold(o, h)
	return next, slices.Concat(thin, unheld), err
}

func proposeSecond(ctx context.Context, o Order, h stencil.Hold, before []stencil.Unheld) (Order, []stencil.Unheld, error) {
	second, unheld, err := stencil.ProposeSecond(ctx, o.Design(), h)
	if err != nil {
		return o, nil, fmt.Errorf("propose a second sheet: %w", err)
	}
	h.Second = second
	next, err := SetHold(o, h)
	return next, slices.Concat(before, unheld), err
}

// onlySecond returns the motifs that only the second sheet of a split cuts.
func onlySecond(h stencil.Hold) []pattern.ID {
	if h.Way != stencil.Split {
		return nil
	}
	return h.Second.Motifs
}

func without(u pattern.Unit, ids []pattern.ID) pattern.Unit {
	if len(ids) == 0 {
		return u
	}
	gone := make(map[pattern.ID]bool, len(ids))
	for _, id := range ids {
		gone[id] = true
	}
	u.Motifs = slices.DeleteFunc(slices.Clone(u.Motifs), func(m pattern.Motif) bool { return gone[m.ID] })
	return u
}
