package stencil

import (
	"cmp"
	"context"
	"fmt"
	"slices"

	"tsugime/repeat/geom"
	"tsugime/repeat/pattern"
)

// An Unheld is paper that the ties proposed don't hold as they should.
type Unheld struct {
	At  geom.Point // on its rim
	Why string
}

// ProposeTies returns ties that hold the paper of u, and names what they can't
// hold. Of h it reads TieWidth and PerIsland; its ties are not looked at, so hand
// over Tied(u, h.Ties) to add to them.
//
// Where no paper is unheld it guarantees, and has proven by Connect on the tied
// unit, that nothing falls out and that the paper hangs together both ways.
// Every island, islands in islands too, has PerIsland ties at least that lead to
// paper which holds without it; a ribbon of paper has them on RibbonSpacing too.
// Each tie crosses cut-out once, from one piece of paper to another; all of its
// width ends in paper, except along rims that run on beside it.
//
// Ties go where they take least of the cut-outs (width × length), by one piece of
// paper after another, the cheapest first. Of equal places those in line with the
// middle of the island, on the motif's own axes and at corners of its rim are taken; ties all on one
// side cost up to three times as much, so that islands don't hinge. It is a good
// choice, not the best of all. The same ties come out wherever the whole pattern
// is moved, and the same on every run.
func ProposeTies(ctx context.Context, u pattern.Unit, h Hold) ([]Tie, []Unheld, error) {
	p, err := newProposal(u, h)
	if err != nil || p == nil {
		return nil, nil, err
	}
	t, err := p.best(ctx, nil)
	if err != nil {
		return nil, nil, err
	}
	if len(t.unheld) > 0 {
		return t.ties, t.unheld, nil
	}
	_, unheld, err := proven(u, t.ties)
	return t.ties, unheld, err
}

// turnsOf returns by how much each motif is turned.
func turnsOf(u pattern.Unit) map[pattern.ID]float64 {
	turns := make(map[pattern.ID]float64, len(u.Motifs))
	for _, m := range u.Motifs {
		turns[m.ID] = m.TurnDeg
	}
	return turns
}

// loose reports whether any paper is not held.
func (m *paperMap) loose() bool {
	for k, p := range m.pieces {
		if p.kind == ribbon || p.kind == island && m.beyond[p.rim].piece == k {
			return true
		}
	}
	return false
}

// first returns the piece that all others are joined to: the body, or the
// largest ribbon or island where there is none.
func (t *tying) first() int {
	order := make([]int, 0, len(t.pieces))
	for k, p := range t.pieces {
		if p.kind == body || t.beyond[p.rim].piece == k {
			order = append(order, k)
		}
	}
	return slices.MinFunc(order, func(i, j int) int {
		a, b := t.pieces[i], t.pieces[j]
		return cmp.Or(cmp.Compare(a.kind, b.kind), cmp.Compare(b.areaMM2, a.areaMM2), cmp.Compare(i, j))
	})
}

// missing names the paper that is not held as it should be.
func (t *tying) missing(both bool) []Unheld {
	var unheld []Unheld
	beside := ""
	if t.avoid != nil {
		beside = " beside those of the other sheet"
	}
	for k, p := range t.pieces {
		if p.kind == body || t.beyond[p.rim].piece != k {
			continue
		}
		at := t.lines[p.rim].Points[0]
		switch n := t.ends[k]; {
		case !t.joined[k]:
			unheld = append(unheld, Unheld{at, "no tie fits between it and other paper" + beside + "; draw one by hand or make ties narrower"})
		case n < t.least:
			unheld = append(unheld, Unheld{at, fmt.Sprintf("%d of %d ties fit%s; it hinges: draw one by hand or make ties narrower", n, t.least, beside)})
		case !both:
			why := "it hangs together one way only" + beside + "; draw ties across by hand"
			if len(t.loops) == 0 {
				why = "no tie fits between it and its own copies" + beside + ", so it falls out; draw ties by hand"
			}
			unheld = append(unheld, Unheld{at, why})
			both = true
		}
	}
	return unheld
}
