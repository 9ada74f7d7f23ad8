package stencil

import (
	"cmp"
	"context"
	"slices"

	"tsugime/repeat/geom"
	"tsugime/repeat/pattern"
)

// ProposeSecond returns h.Second with ties of its own, so that the second sheet
// of the split holds by itself, and names what it can't hold. For Whole they keep
// off the ties of the first, h.Ties, by half a width at least, so that each sheet
// opens where the other is tied and the cover is whole. For TiePlaces the second
// sheet mostly holds as it is and gets none; where it does not, its ties leave
// places that neither sheet opens, which Parted measures.
//
// The motifs that only the second cuts are taken as h has them; see ProposeMotifs.
func ProposeSecond(ctx context.Context, u pattern.Unit, h Hold) (Second, []Unheld, error) {
	second := h.Second
	h.Second.Ties = nil
	design, others := u, h.Ties
	if h.Second.Cut == TiePlaces {
		_, places, _, err := Parted(u, h)
		if err != nil {
			return second, nil, err
		}
		design, others = places, nil
	}
	p, err := newProposal(design, h)
	if err != nil || p == nil {
		return second, nil, err
	}
	t, err := p.best(ctx, others)
	if err != nil {
		return second, nil, err
	}
	second.Ties = t.ties
	if len(t.unheld) > 0 {
		return second, t.unheld, nil
	}
	_, unheld, err := proven(design, t.ties)
	return second, unheld, err
}

// ProposeMotifs returns the motifs that the second sheet should cut, so that no
// web between two motifs on one sheet is narrower than limit: the two sheets
// colour the motifs, neighbours across such a web differently, and of each group
// the side of less area goes to the second sheet. Where the neighbours close an
// odd circle, or the web lies within one motif or between its own copies, two
// sheets can't help; such a web is named.
func ProposeMotifs(u pattern.Unit, limit geom.Length) ([]pattern.ID, []Unheld) {
	webs := Webs(u.CutOuts(), limit, u.Lattice.A, u.Lattice.B).Below
	beside := make(map[pattern.ID][]pattern.ID)
	for _, w := range webs {
		if w.A != w.B {
			beside[w.A], beside[w.B] = append(beside[w.A], w.B), append(beside[w.B], w.A)
		}
	}
	area := make(map[pattern.ID]float64, len(beside))
	for _, m := range u.Motifs {
		if beside[m.ID] != nil {
			area[m.ID] = m.Shape.AreaMM2()
		}
	}
	sheet := make(map[pattern.ID]int, len(beside)) // 1 or 2
	var second []pattern.ID
	for _, m := range u.Motifs {
		if beside[m.ID] != nil && sheet[m.ID] == 0 {
			second = append(second, lighter(colour(m.ID, beside, sheet), area)...)
		}
	}
	slices.Sort(second)
	var unheld []Unheld
	for _, w := range webs {
		at := w.P.Add(half(w.Q.Sub(w.P)))
		switch {
		case w.A == w.B:
			unheld = append(unheld, Unheld{at, "a web of " + w.Width.String() + " mm within one motif or to its own copy, which two sheets can't part; move or shrink the motif"})
		case sheet[w.A] == sheet[w.B]:
			unheld = append(unheld, Unheld{at, "a web of " + w.Width.String() + " mm in an odd circle of neighbours, which two sheets can't part; move one of them"})
		}
	}
	return second, unheld
}

// colour gives the motifs that are neighbours of one another, from first on, to
// the sheets by turns and returns both sides.
func colour(first pattern.ID, beside map[pattern.ID][]pattern.ID, sheet map[pattern.ID]int) [2][]pattern.ID {
	sheet[first] = 1
	sides := [2][]pattern.ID{{first}}
	for queue := []pattern.ID{first}; len(queue) > 0; queue = queue[1:] {
		for _, next := range beside[queue[0]] {
			if sheet[next] == 0 {
				sheet[next] = 3 - sheet[queue[0]]
				sides[sheet[next]-1] = append(sides[sheet[next]-1], next)
				queue = append(queue, next)
			}
		}
	}
	return sides
}

// lighter returns the side of less area, the one of fewer or else later motifs
// where they are alike.
func lighter(sides [2][]pattern.ID, area map[pattern.ID]float64) []pattern.ID {
	sum := func(ids []pattern.ID) float64 {
		var all float64
		for _, id := range ids {
			all += area[id]
		}
		return all
	}
	a, b := sides[0], sides[1]
	if cmp.Or(cmp.Compare(sum(a), sum(b)), cmp.Compare(len(a), len(b))) < 0 {
		return a
	}
	return b
}
