package pattern

import (
	"fmt"

	"tsugime/repeat/geom"
)

// CopyStep is the distance between the IDs of a motif and of its copies: the copy
// that operation number k of a group makes of motif n is motif n + k·CopyStep.
// So a copy keeps its ID whatever is drawn beside it.
const CopyStep ID = 1 << 26

// Drawn returns the motif that id is a copy of, and the number of the operation
// that makes it: 0 for the motif itself.
func (id ID) Drawn() (motif ID, op int) { return id % CopyStep, int(id / CopyStep) }

// Multiply returns motifs and all the copies of them that g makes on l. What is
// given comes first, unchanged; the copies follow, brought into the cell. A copy that looks like a motif that is there already, to geom.Alike, is
// left out: a disc on a rotation point stays one disc, and multiplying once more
// adds nothing. A motif that lies on a mirror line without being symmetric gets
// its copy, and the two overlap.
func (g Group) Multiply(l Lattice, motifs []Motif) ([]Motif, error) {
	e, f, err := g.on(l)
	if err != nil {
		return nil, err
	}
	pictures := newGallery()
	there := newTorus(pictures, frameOf(l.Reduced()), len(motifs)*len(e.ops))
	var out []Motif
	for _, m := range motifs {
		if it := pictures.item(m); there.find(it) < 0 {
			there.add(it)
			out = append(out, m)
		}
	}
	for _, m := range out[:len(out):len(out)] {
		for k, o := range e.ops[1:] {
			c := f.copied(l, o, m)
			if it := pictures.item(c); there.find(it) < 0 {
				c.ID = m.ID + ID(k+1)*CopyStep
				there.add(it)
				out = append(out, c)
			}
		}
	}
	return out, nil
}

// copied returns what o makes of a motif, brought into the cell of l.
func (f frame) copied(l Lattice, o Op, m Motif) Motif {
	deg, mirrored := f.turn(o)
	u, v := f.into(float64(m.At.X), float64(m.At.Y))
	place := l.Into(f.point(o.apply(u, v)))
	// The disc around its own place needs no turn.
	if m.Shape.Round() && m.Shape.Disc.Centre == (geom.Point{}) {
		m.At = place
		return m
	}
	s := stance{m.TurnDeg, m.Mirrored}.under(stance{deg, mirrored})
	m.At, m.TurnDeg, m.Mirrored = place, s.deg, s.mirrored
	return m
}

// Carried returns by how a motif must be moved so that the copy of it that
// operation number op of g makes moves by way, to the nanometre.
func (g Group) Carried(l Lattice, op int, way geom.Point) (geom.Point, error) {
	e, f, err := g.on(l)
	if err != nil {
		return geom.Point{}, err
	}
	if op < 0 || op >= len(e.ops) {
		return geom.Point{}, fmt.Errorf("plane group %s: there is no operation %d; it has %d", g, op, len(e.ops))
	}
	m := e.ops[op].M
	det := float64(e.ops[op].det())
	u, v := f.into(float64(way.X), float64(way.Y))
	return f.point(
		(float64(m[1][1])*u-float64(m[0][1])*v)/det,
		(float64(m[0][0])*v-float64(m[1][0])*u)/det,
	), nil
}
