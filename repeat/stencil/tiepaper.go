package stencil

import (
	"fmt"

	"tsugime/repeat/geom"
	"tsugime/repeat/pattern"
)

// A paperKind says how a piece of paper goes on.
type paperKind uint8

const (
	body   paperKind = iota // it goes on in every direction
	ribbon                  // it goes on one way only: a band
	island                  // it ends all around
)

// A paperPiece is one connected piece of the plain pattern's paper, as it is
// drawn once; its copies repeat by the lattice.
type paperPiece struct {
	kind    paperKind
	along   geom.Point // the way a ribbon goes on
	rim     int        // the line around an island, or one of a ribbon's two
	areaMM2 float64    // of an island, what lies in it left out
}

// A pieceCopy is a piece of paper, moved by a sum of periods.
type pieceCopy struct {
	piece int
	shift geom.Point
}

// A paperMap tells the pieces of the plain pattern's paper apart: each line
// around the cut-outs, as it is drawn, and the piece of paper beyond it.
type paperMap struct {
	*frame
	cuts    []pattern.CutOut // those that can hold paper captive
	lines   []geom.Boundary
	beyond  []pieceCopy // of each line
	pieces  []paperPiece
	sides   *sideGrid // side.cut is the line
	islands *coverGrid
	rims    []int // the lines that islands has
	inks    *coverGrid
	drawn   map[pattern.ID]geom.Point // the way from a motif's cut-out to where the unit has it
}

// none marks paper too thin to be told from ink.
const none = -1

// mapPaper returns the paper of the plain pattern, nil where no cut-out can hold
// paper captive. It sees what Connect sees.
func mapPaper(u pattern.Unit) (*paperMap, error) {
	cuts, l := u.CutOuts(), u.Lattice
	near, err := contacts(cuts, []geom.Point{l.A, l.B})
	if err != nil {
		return nil, fmt.Errorf("ties: %w", err)
	}
	captor := captors(cuts, near)
	shapes := make([][]geom.Ring, len(cuts))
	m := &paperMap{drawn: make(map[pattern.ID]geom.Point, len(u.Motifs))}
	for _, motif := range u.Motifs {
		m.drawn[motif.ID] = motif.At.Sub(l.Into(motif.At))
	}
	var inks []cover
	for i, c := range cuts {
		if captor[i] {
			shapes[i] = c.Shape.Rings(geom.Chord)
			m.cuts, inks = append(m.cuts, c), append(inks, cover{shapes[i], c.Shape.Bounds()})
		}
	}
	if len(m.cuts) == 0 {
		return nil, nil
	}
	cut, err := geom.Union(append(shapes, bridges(cuts, shapes, near)...), l.A, l.B)
	if err != nil {
		return nil, fmt.Errorf("ties: %w", err)
	}
	if cut.Full() {
		return nil, fmt.Errorf("ties: the cut-outs leave no paper at all; take some away")
	}
	f := frameAround(m.cuts, []geom.Point{l.A, l.B})
	m.frame, m.lines = &f, cut.Boundaries
	m.inks = f.coverGrid(inks)
	m.label()
	m.gatherSides()
	return m, nil
}

// captors marks the cut-outs that can hold paper captive: discs that touch
// nothing can't.
func captors(cuts []pattern.CutOut, near []contact) []bool {
	captor := make([]bool, len(cuts))
	for i, c := range cuts {
		captor[i] = !c.Shape.Round()
	}
	for _, c := range near {
		captor[c.i], captor[c.j] = true, true
	}
	return captor
}

// label finds the pieces and what lies beyond each line.
func (m *paperMap) label() {
	m.beyond = make([]pieceCopy, len(m.lines))
	var covers []cover
	for i, b := range m.lines {
		m.beyond[i].piece = none
		if area := b.Area2(); b.Closed() && area < 0 {
			m.beyond[i].piece = len(m.pieces)
			m.pieces = append(m.pieces, paperPiece{kind: island, rim: i, areaMM2: -b.Points.AreaMM2()})
			covers = append(covers, cover{[]geom.Ring{b.Points}, b.Bounds()})
			m.rims = append(m.rims, i)
		}
	}
	m.islands = m.coverGrid(covers)
	var outside []int // lines that lie in no island
	for i, b := range m.lines {
		if !b.Closed() {
			outside = append(outside, i)
		} else if b.Area2() > 0 {
			if k, shift, ok := m.innermost(middleOf(b), i); ok {
				m.beyond[i] = pieceCopy{k, shift}
				m.pieces[k].areaMM2 -= b.Points.AreaMM2()
			} else {
				outside = append(outside, i)
			}
		}
	}
	m.labelOutside(outside)
	m.dropSlivers()
}

// middleOf returns the middle of the longest piece of a line.
func middleOf(b geom.Boundary) geom.Point {
	var best geom.Point
	var most int64 = -1
	for i, p := range b.Points {
		q := lineEnd(b, i)
		if l := q.Sub(p).Dot(q.Sub(p)); l > most {
			most, best = l, p.Add(half(q.Sub(p)))
		}
	}
	return best
}

// lineEnd returns the point after point i of a line.
func lineEnd(b geom.Boundary, i int) geom.Point {
	if i+1 < len(b.Points) {
		return b.Points[i+1]
	}
	return b.Points[0].Add(b.Wrap)
}

func half(p geom.Point) geom.Point { return geom.Point{X: p.X / 2, Y: p.Y / 2} }

// innermost returns the smallest island that holds p, and the shift that brings
// it there.
func (m *paperMap) innermost(p geom.Point, self int) (k int, shift geom.Point, ok bool) {
	if m.islands == nil {
		return 0, shift, false
	}
	at := placeOf(p)
	home := m.home(at)
	least := 0.0
	for _, c := range m.islands.met[m.islands.part(home)] {
		by := m.islands.shift(int(c.tu), int(c.tv)).add(at.sub(home))
		ring := m.lines[m.rims[c.i]].Points
		q := at.sub(by).point()
		if m.rims[c.i] == self || !m.islands.covers[c.i].box.Holds(q) || ring.Winding(q) == 0 {
			continue
		}
		if size := -ring.Area2(); !ok || size < least {
			k, shift, ok, least = int(c.i), by.point(), true, size
		}
	}
	return k, shift, ok
}

// dropSlivers takes islands that Connect takes for none out of the map.
func (m *paperMap) dropSlivers() {
	thin := make([]bool, len(m.pieces))
	for k, p := range m.pieces {
		if p.kind == island {
			thin[k] = p.areaMM2 <= lineMM(m.lines[p.rim])/2*geom.Touch.MM()
		}
	}
	for i, b := range m.beyond {
		if b.piece != none && thin[b.piece] {
			m.beyond[i].piece = none
		}
	}
}

// lineMM returns how long a line is.
func lineMM(b geom.Boundary) float64 {
	var sum float64
	for i, p := range b.Points {
		sum += lineEnd(b, i).Sub(p).Norm()
	}
	return sum / float64(geom.Millimetre)
}

// gatherSides puts the pieces of every line that has paper beyond it where they
// can be found by place.
func (m *paperMap) gatherSides() {
	var sides []side
	for i, b := range m.lines {
		if m.beyond[i].piece == none {
			continue
		}
		for k, p := range b.Points {
			a, e := placeOf(p), placeOf(lineEnd(b, k))
			home := m.home(a)
			sides = append(sides, side{a: home, b: e.add(home.sub(a)), drawn: a.sub(home), cut: int32(i)})
		}
	}
	m.sides = m.sideGrid(sides)
}

// at returns the copy of a piece that a line bounds where its side was met.
func (m *paperMap) at(i int32, by place) pieceCopy {
	s := &m.sides.sides[i]
	c := m.beyond[s.cut]
	return m.same(pieceCopy{c.piece, c.shift.Add(by.sub(s.drawn).point())})
}

// same returns the one copy that stands for all that are the same paper: the
// body is one, and a ribbon goes on.
func (m *paperMap) same(c pieceCopy) pieceCopy {
	switch p := m.pieces[c.piece]; p.kind {
	case body:
		c.shift = geom.Point{}
	case ribbon:
		n := float64(c.shift.Dot(p.along)) / float64(p.along.Dot(p.along))
		c.shift = c.shift.Sub(p.along.Times(floor(n + 1e-9)))
	}
	return c
}
