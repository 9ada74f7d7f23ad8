package stencil

import (
	"cmp"
	"context"
	"fmt"
	"math"
	"runtime"
	"slices"
	"sync"

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
// middle of the island and with the motif's own axes are taken; ties all on one
// side cost up to three times as much, so that islands don't hinge. It is a good
// choice, not the best of all. The same ties come out wherever the whole pattern
// is moved, and the same on every run.
func ProposeTies(ctx context.Context, u pattern.Unit, h Hold) ([]Tie, []Unheld, error) {
	return proposeBeside(ctx, u, h, nil)
}

// proposeBeside is ProposeTies with ties that stay clear of others.
func proposeBeside(ctx context.Context, u pattern.Unit, h Hold, others []Tie) ([]Tie, []Unheld, error) {
	if h.TieWidth <= 0 {
		return nil, nil, fmt.Errorf("ties %s mm wide hold nothing; give a width", h.TieWidth)
	}
	m, err := mapPaper(u)
	if err != nil || m == nil || !m.loose() {
		return nil, nil, err
	}
	t, err := m.tied(ctx, u, h, others, 1)
	if err == nil && len(t.unheld) > 0 { // look closer
		t, err = m.tied(ctx, u, h, others, 4)
	}
	if err != nil {
		return nil, nil, err
	}
	if len(t.unheld) > 0 {
		return t.ties, t.unheld, nil
	}
	unheld, err := fallen(u, t.ties)
	return t.ties, unheld, err
}

// tied chooses the ties, finer times as many places along each rim being looked at.
func (m *paperMap) tied(ctx context.Context, u pattern.Unit, h Hold, others []Tie, finer int) (*tying, error) {
	t := &tying{paperMap: m, width: h.TieWidth, least: max(h.PerIsland, 1), avoid: m.middleLines(others)}
	t.gather(turnsOf(u), finer)
	if err := t.join(ctx, t.first()); err != nil {
		return nil, err
	}
	both := t.close()
	t.topUp()
	t.unheld = t.missing(both)
	return t, nil
}

// fallen names the paper that is not held with the ties.
func fallen(u pattern.Unit, ties []Tie) ([]Unheld, error) {
	tied, err := Tied(u, ties)
	if err != nil {
		return nil, err
	}
	left, err := Connect(tied.CutOuts(), u.Lattice.A, u.Lattice.B)
	var unheld []Unheld
	for _, p := range slices.Concat(left.Islands, left.Bands) {
		unheld = append(unheld, Unheld{p.At, "it falls out with the ties proposed; draw a tie by hand"})
	}
	return unheld, err
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

// gather finds the crossings of all pieces, on all processors.
func (t *tying) gather(turnDeg map[pattern.ID]float64, finer int) {
	n := len(t.pieces)
	t.among, t.near = make([][]tieWay, n), make([][]int, n)
	t.joined, t.moved, t.ends = make([]bool, n), make([]geom.Point, n), make([]int, n)
	var together sync.WaitGroup
	workers := runtime.GOMAXPROCS(0)
	for w := range workers {
		together.Go(func() {
			for k := w; k < n; k += workers {
				if t.pieces[k].kind == body || t.beyond[t.pieces[k].rim].piece != k {
					continue
				}
				t.among[k] = t.crossings(k, t.width, finer)
				if t.pieces[k].kind == island {
					t.preferLines(k, turnDeg)
				}
			}
		})
	}
	together.Wait()
	t.mirror()
	for k := range t.among {
		t.setTurns(k)
		for i := range t.among[k] {
			c := &t.among[k][i]
			c.bad = t.crowded(*c)
			if to := c.to.piece; !slices.Contains(t.near[to], k) {
				t.near[to] = append(t.near[to], k)
			}
		}
	}
	for _, near := range t.near {
		slices.Sort(near)
	}
}

// preferLines makes crossings on the lines of symmetry of an island cheaper.
func (t *tying) preferLines(k int, turnDeg map[pattern.ID]float64) {
	if len(t.among[k]) == 0 {
		return
	}
	id, _, _ := t.owner(t.among[k][0].middle())
	t.preferred(t.among[k], centreOf(t.lines[t.pieces[k].rim]), t.width, turnDeg[id])
}

// mirror tells every piece of the crossings that others have to it.
func (t *tying) mirror() {
	back := make([][]tieWay, len(t.pieces))
	for k, among := range t.among {
		for _, c := range among {
			if to := c.to.piece; t.pieces[to].kind != body && to != k {
				back[to] = append(back[to], c.back(k))
			}
		}
	}
	for k, more := range back {
		t.among[k] = append(t.among[k], more...)
	}
}

// setTurns tells where around or along a piece its crossings lie.
func (t *tying) setTurns(k int) {
	p := t.pieces[k]
	var from geom.Point
	if len(t.among[k]) > 0 {
		from = t.lines[p.rim].Points[0]
	}
	if p.kind == island && len(t.among[k]) > 0 {
		from = centreOf(t.lines[p.rim])
	}
	for i := range t.among[k] {
		c := &t.among[k][i]
		way := placeOf(c.p.Sub(from))
		if p.kind == island {
			c.turn = math.Atan2(way.y, way.x) * 180 / math.Pi
		} else {
			along := placeOf(p.along)
			c.turn = 360 * way.dot(along) / along.dot(along)
		}
	}
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
	for k, p := range t.pieces {
		if p.kind == body || t.beyond[p.rim].piece != k {
			continue
		}
		at := t.lines[p.rim].Points[0]
		switch n := t.ends[k]; {
		case !t.joined[k]:
			unheld = append(unheld, Unheld{at, "no tie fits between it and other paper; draw one by hand or make ties narrower"})
		case n < t.least:
			unheld = append(unheld, Unheld{at, fmt.Sprintf("%d of %d ties fit; it hinges: draw one by hand or make ties narrower", n, t.least)})
		case !both:
			unheld = append(unheld, Unheld{at, "it hangs together one way only; draw ties across by hand"})
			both = true
		}
	}
	return unheld
}
