package stencil

import (
	"context"
	"fmt"
	"math"
	"slices"

	"tsugime/repeat/geom"
	"tsugime/repeat/pattern"
)

// A proposal is what the ties of one design are chosen from, found once.
type proposal struct {
	*paperMap
	unit  pattern.Unit
	width geom.Length
	least int
	turns map[pattern.ID]float64
	ways  map[int][][]tieWay // by how much finer than usual rims are looked at
}

// newProposal maps the paper; it is nil where nothing is loose.
func newProposal(u pattern.Unit, h Hold) (*proposal, error) {
	if h.TieWidth <= 0 {
		return nil, fmt.Errorf("ties %s mm wide hold nothing; give a width", h.TieWidth)
	}
	m, err := mapPaper(u)
	if err != nil || m == nil || !m.loose() {
		return nil, err
	}
	return &proposal{m, u, h.TieWidth, max(h.PerIsland, 1), turnsOf(u), map[int][][]tieWay{}}, nil
}

// Ties are chosen by looking at rims as they usually are and, where paper stays
// unheld, closer. Each time a tie's width of cut-out stays between any two ties;
// for paper that finds none then half of it, and at the closest look ties may come
// as near as they must.
var tryouts = [...]struct {
	finer int
	apart []float64 // widths from middle line to middle line
}{{1, []float64{2, keepOff}}, {4, []float64{2, keepOff, 0}}}

// best returns the first choice of ties clear of others that holds all, or the one
// that leaves least unheld.
func (p *proposal) best(ctx context.Context, others []Tie) (*tying, error) {
	var best *tying
	for _, try := range tryouts {
		t, err := p.chosen(ctx, others, try.finer, try.apart...)
		if err != nil {
			return nil, err
		}
		if best == nil || len(t.unheld) < len(best.unheld) {
			best = t
		}
		if len(t.unheld) == 0 {
			break
		}
	}
	return best, nil
}

// chosen chooses the ties, finer times as many places along each rim being looked
// at, so many widths apart, the first where possible.
func (p *proposal) chosen(ctx context.Context, others []Tie, finer int, apart ...float64) (*tying, error) {
	if p.ways[finer] == nil {
		p.ways[finer] = p.gather(finer)
	}
	n := len(p.pieces)
	t := &tying{
		paperMap: p.paperMap, width: p.width, least: p.least,
		avoid: p.middleLines(others), room: p.roomFor(p.width, n),
		joined: make([]bool, n), moved: make([]geom.Point, n), ends: make([]int, n),
		among: make([][]tieWay, n), near: neighbours(p.ways[finer]),
	}
	for k, ways := range p.ways[finer] {
		t.among[k] = slices.Clone(ways)
		for i := range t.among[k] {
			c := &t.among[k][i]
			c.bad = t.crowded(*c)
		}
	}
	t.hold(t.first(), geom.Point{})
	for i, widths := range apart {
		if t.squeeze(widths * float64(p.width)); i > 0 && len(t.unheld) == 0 {
			break
		}
		if err := t.join(ctx); err != nil {
			return nil, err
		}
		both := t.close()
		t.topUp()
		t.unheld = t.missing(both)
	}
	return t, nil
}

// proven returns the unit with its ties, and names the paper that Connect says is
// not held.
func proven(u pattern.Unit, ties []Tie) (pattern.Unit, []Unheld, error) {
	tied, err := Tied(u, ties)
	if err != nil {
		return tied, nil, err
	}
	left, err := Connect(tied.CutOuts(), u.Lattice.A, u.Lattice.B)
	var unheld []Unheld
	for _, p := range slices.Concat(left.Islands, left.Bands) {
		unheld = append(unheld, Unheld{p.At, "it falls out with the ties proposed; draw a tie by hand"})
	}
	return tied, unheld, err
}

// keepOff is how near to ties of the first sheet those of the second may come, in
// widths from middle line to middle line: so near that half a width lies between.
const keepOff = 1.5

// middleLines returns where the middle lines of ties are, nil without any.
func (m *paperMap) middleLines(ties []Tie) *sideGrid {
	var sides []side
	for _, t := range ties {
		a, b := placeOf(t.From), placeOf(t.To)
		home := m.home(a)
		sides = append(sides, side{a: home, b: b.add(home.sub(a))})
	}
	return m.sideGrid(sides)
}

// crowded reports whether a way across lies too near to a tie to stay clear of.
func (t *tying) crowded(c tieWay) bool {
	if t.avoid == nil {
		return false
	}
	p, q := placeOf(c.p), placeOf(c.q)
	most := keepOff * float64(t.width)
	lo := place{math.Min(p.x, q.x) - most, math.Min(p.y, q.y) - most}
	hi := place{math.Max(p.x, q.x) + most, math.Max(p.y, q.y) + most}
	near := false
	t.avoid.visit(t.avoid.over(lo, hi), func(i int32, by place) bool {
		s := &t.avoid.sides[i]
		a, b := s.a.add(by), s.b.add(by)
		g := pieces(rim{ax: p.x, ay: p.y, bx: q.x, by: q.y}, rim{ax: a.x, ay: a.y, bx: b.x, by: b.y})
		near = g.width < most
		return !near
	})
	return near
}
