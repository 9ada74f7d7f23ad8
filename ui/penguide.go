package ui

import (
	"slices"

	"tsugime/repeat/geom"
	"tsugime/repeat/pattern"
	"tsugime/repeat/pen"
)

// What holds a place that is drawn, as the surface names it.
const (
	onStart   = "start"
	onNode    = "node"
	onCentre  = "centre"
	onEdge    = "edge"
	onLattice = "lattice place"
	onTurn    = "turning point"
	onMirror  = "mirror line"
	onGlide   = "glide line"
	onOwn     = "own mirror"
	onNext    = "start of the next turn"
)

// snapPx is how near on the screen a place is drawn to what holds it.
const snapPx = 7

// A snapGround is what of one state can hold a place.
type snapGround struct {
	number   int // of the state
	without  []pattern.ID
	openings openings
	elements pattern.Elements
}

// snapGround returns what of the present state can hold a place; motifs and their
// copies can be left out.
func (s *draft) snapGround(without ...pattern.ID) *snapGround {
	now := s.w.history.Now()
	if g := s.snaps; g != nil && g.number == now.number && slices.Equal(g.without, without) {
		return g
	}
	u := s.design().unit
	if len(without) > 0 {
		out := make(map[pattern.ID]bool, len(without))
		for _, id := range without {
			out[id] = true
		}
		rest := pattern.Unit{Lattice: u.Lattice}
		for _, m := range u.Motifs {
			if id, _ := drawnFrom(now.order, m.ID); !out[id] {
				rest.Motifs = append(rest.Motifs, m)
			}
		}
		u = rest
	}
	s.snaps = &snapGround{number: now.number, without: slices.Clone(without), openings: openingsOf(u)}
	if e, err := now.order.Group.Elements(u.Lattice); err == nil {
		s.snaps.elements = e
	}
	return s.snaps
}

// reach is how near counts, at the zoom of the surface.
func (w *Window) reach() geom.Length { return geom.MM(snapPx / max(w.board.Scale(), 1e-6)) }

// guides are what a place near p can be held by: the lattice, the elements of the
// plane group, and the other motifs.
func (s *draft) guides(p geom.Point, reach, grid geom.Length, without ...pattern.ID) pen.Guides {
	ground, l := s.snapGround(without...), s.w.Order().Unit.Lattice
	near := geom.BoxOf(p).Grown(reach)
	g := pen.Guides{Grid: grid, Fine: 10 * geom.Micrometre}
	for _, t := range ground.elements.Points {
		for _, shift := range l.Places(near.Moved(t.At.Neg())) {
			g.Marks = append(g.Marks, pen.Mark{At: t.At.Add(shift), Name: onTurn})
		}
	}
	for _, at := range l.Places(near) {
		g.Marks = append(g.Marks, pen.Mark{At: at, Name: onLattice})
	}
	g.Lines = append(linesNear(l, ground.elements.Mirrors, p, reach, onMirror),
		linesNear(l, ground.elements.Glides, p, reach, onGlide)...)
	ground.openings.visit(near, func(m pattern.Motif, shift geom.Point) bool {
		shape := m.Placed().Moved(shift.Neg())
		g.Marks = append(g.Marks, pen.Mark{At: m.At.Sub(shift), Name: onCentre})
		o := shape.Outline
		if shape.Round() {
			o = pen.OfDisc(shape.Disc)
		}
		for _, stroke := range pen.Of(o) {
			for i, at := range stroke.Nodes() {
				if !shape.Round() {
					g.Marks = append(g.Marks, pen.Mark{At: at, Name: onNode})
				}
				g.Edges = append(g.Edges, pen.Edge{From: at, Segment: stroke.Segments[i], Name: onEdge})
			}
		}
		return true
	})
	return g
}

// linesNear are the copies of lines that pass within reach of p.
func linesNear(l pattern.Lattice, lines []pattern.MirrorLine, p geom.Point, reach geom.Length, name string) []pen.Guide {
	var near []pen.Guide
	around := geom.BoxOf(p).Grown(l.A.Distance(geom.Point{}) + l.B.Distance(geom.Point{}))
	for _, m := range lines {
		for _, shift := range l.Places(around.Moved(m.At.Neg())) {
			g := pen.Guide{At: m.At.Add(shift), Along: m.Along, Name: name}
			if g.Distance(p) <= reach {
				near = append(near, g)
				break // another copy that near is the same line
			}
		}
	}
	return near
}
