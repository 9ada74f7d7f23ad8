package pattern

import "tsugime/repeat/geom"

// Multiply returns motifs and all the copies of them that g makes on l. What is
// given comes first, unchanged; the copies follow with new IDs, brought into the
// cell. A copy that looks like a motif that is there already, to geom.Alike, is
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
	var last ID
	for _, m := range motifs {
		last = max(last, m.ID)
		if it := pictures.item(m); there.find(it) < 0 {
			there.add(it)
			out = append(out, m)
		}
	}
	for _, m := range out[:len(out):len(out)] {
		for _, o := range e.ops[1:] {
			c := f.copied(l, o, m)
			if it := pictures.item(c); there.find(it) < 0 {
				last++
				c.ID = last
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
