package stencil

import (
	"context"
	"fmt"
	"slices"
	"sync"

	"tsugime/repeat/pattern"
)

// Parts are the units of the two sheets of a split, and how they cover the design
// together.
type Parts struct {
	First, Second pattern.Unit
	Cover         Cover
}

// exchanges bounds how often the first sheet gives places up to the second.
const exchanges = 8

// ProposeSplit returns h with ties for both sheets of a split, the sheets
// themselves with the proof that they cover the design, and names what they can't
// hold. Of h it reads TieWidth, PerIsland and Second without its ties.
//
// It is ProposeTies for the first sheet and ProposeSecond for the second, with the
// paper mapped once for both where they cut the same. Where Second.Cut is Whole and
// the second finds no place beside the ties of the first, the first gives places up
// and looks for others, as long as that leaves less unheld on both together. What
// is unheld in the end had no such exchange; it is a good choice, not the best of
// all. Where nothing is unheld both sheets have been proven by Connect.
func ProposeSplit(ctx context.Context, u pattern.Unit, h Hold) (Hold, Parts, []Unheld, error) {
	h.Way, h.Ties, h.Second.Ties = Split, nil, nil
	whole := h.Second.Cut == Whole
	if !whole || len(h.Second.Motifs) > 0 {
		return proposeEach(ctx, u, h)
	}
	var parts Parts
	p, err := newProposal(u, h)
	if err != nil {
		return h, parts, nil, err
	}
	if p == nil { // nothing is loose
		parts, err = parted(u, h)
		return h, parts, nil, err
	}
	first, second, err := p.bestTwo(ctx)
	if err != nil {
		return h, parts, nil, err
	}
	h.Ties, h.Second.Ties = first.ties, second.ties
	unheld := slices.Concat(onSheet("first", first.unheld), onSheet("second", second.unheld))
	var fallen [2][]Unheld
	var errs [2]error
	var together sync.WaitGroup
	together.Go(func() { parts.First, fallen[0], errs[0] = proven(u, h.Ties) })
	together.Go(func() { parts.Second, fallen[1], errs[1] = proven(u, h.Second.Ties) })
	together.Wait()
	for i, name := range [2]string{"first", "second"} {
		if errs[i] != nil {
			return h, parts, nil, fmt.Errorf("%s sheet: %w", name, errs[i])
		}
		if len([2]*tying{first, second}[i].unheld) == 0 {
			unheld = append(unheld, onSheet(name, fallen[i])...)
		}
	}
	parts.Cover, err = Covered(u, parts.First, parts.Second)
	return h, parts, unheld, err
}

// proposeEach proposes the ties of one sheet after the other.
func proposeEach(ctx context.Context, u pattern.Unit, h Hold) (Hold, Parts, []Unheld, error) {
	firstOnly := pattern.Unit{Lattice: u.Lattice}
	for _, m := range u.Motifs {
		if !slices.Contains(h.Second.Motifs, m.ID) {
			firstOnly.Motifs = append(firstOnly.Motifs, m)
		}
	}
	ties, unheld, err := ProposeTies(ctx, firstOnly, h)
	if err != nil {
		return h, Parts{}, nil, fmt.Errorf("first sheet: %w", err)
	}
	h.Ties = ties
	second, more, err := ProposeSecond(ctx, u, h)
	if err != nil {
		return h, Parts{}, nil, fmt.Errorf("second sheet: %w", err)
	}
	h.Second = second
	parts, err := parted(u, h)
	return h, parts, slices.Concat(onSheet("first", unheld), onSheet("second", more)), err
}

func parted(u pattern.Unit, h Hold) (p Parts, err error) {
	p.First, p.Second, p.Cover, err = Parted(u, h)
	return p, err
}

// onSheet says on which sheet the paper is that is not held.
func onSheet(name string, unheld []Unheld) []Unheld {
	named := slices.Clone(unheld)
	for i := range named {
		named[i].Why = "on the " + name + " sheet " + named[i].Why
	}
	return named
}

// bestTwo chooses the ties of two sheets that cut the same, those of the one clear
// of those of the other. Each piece that the second can't hold gets places of its
// own, which the first must keep off, as long as less is unheld by that.
func (p *proposal) bestTwo(ctx context.Context) (first, second *tying, err error) {
	if first, err = p.best(ctx, nil); err != nil {
		return nil, nil, err
	}
	if second, err = p.best(ctx, first.ties); err != nil {
		return nil, nil, err
	}
	var kept []Tie // places of the second
	for range exchanges {
		short := second.short()
		if len(short) == 0 {
			break
		}
		kept = append(kept, p.places(short)...)
		one, err := p.best(ctx, kept)
		if err != nil {
			return nil, nil, err
		}
		two, err := p.best(ctx, one.ties)
		if err != nil {
			return nil, nil, err
		}
		if len(one.unheld)+len(two.unheld) >= len(first.unheld)+len(second.unheld) {
			break
		}
		first, second = one, two
	}
	return first, second, nil
}

// short returns the pieces that are not held as they should be.
func (t *tying) short() []int {
	var pieces []int
	for k, p := range t.pieces {
		if p.kind != body && t.beyond[p.rim].piece == k && (!t.joined[k] || t.ends[k] < t.least) {
			pieces = append(pieces, k)
		}
	}
	return pieces
}

// places returns where each of the pieces would best be tied if nothing stood
// there, as ties from rim to rim.
func (p *proposal) places(pieces []int) []Tie {
	finest := p.ways[tryouts[len(tryouts)-1].finer]
	if finest == nil {
		return nil
	}
	t := &tying{paperMap: p.paperMap, width: p.width, least: p.least, among: finest}
	var ties []Tie
	for _, k := range pieces {
		by, _ := t.bestOf(k, t.need(k), func(tieWay) bool { return true })
		for _, i := range by {
			if c := finest[k][i]; c.p != c.q {
				ties = append(ties, Tie{From: c.p, To: c.q, Width: p.width})
			}
		}
	}
	return ties
}
