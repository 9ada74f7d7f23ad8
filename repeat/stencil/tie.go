package stencil

import (
	"fmt"

	"tsugime/repeat/geom"
	"tsugime/repeat/pattern"
)

// Tied returns the unit with its ties: every cut-out that a tie or a copy of it
// meets is cut less the tie's strip, whichever motif the tie belongs to. A motif
// stays one motif under its ID, in several contours where ties part it; one that
// lies wholly under ties is left out. Motifs that no tie meets are shared with u
// as they are.
func Tied(u pattern.Unit, ties []Tie) (pattern.Unit, error) {
	if len(ties) == 0 {
		return u, nil
	}
	strips, err := stripsOf(ties)
	if err != nil {
		return pattern.Unit{}, err
	}
	met := meetStrips(u, strips)
	tied := pattern.Unit{Lattice: u.Lattice, Motifs: make([]pattern.Motif, 0, len(u.Motifs))}
	for i, m := range u.Motifs {
		if len(met[i]) == 0 {
			tied.Motifs = append(tied.Motifs, m)
			continue
		}
		left, err := without(m.Placed(), met[i])
		if err != nil {
			return pattern.Unit{}, fmt.Errorf("ties across motif %d: %w", m.ID, err)
		}
		tied.Motifs = appendStanding(tied.Motifs, m, left)
	}
	return tied, nil
}

// appendStanding appends m with another outline, given where it stands, unless
// nothing is left of it.
func appendStanding(motifs []pattern.Motif, m pattern.Motif, o geom.Outline) []pattern.Motif {
	if len(o) == 0 {
		return motifs
	}
	return append(motifs, pattern.Motif{ID: m.ID, Shape: geom.Shape{Outline: o.Moved(m.At.Neg())}, At: m.At})
}

// stripsOf returns the four corners of every tie.
func stripsOf(ties []Tie) ([]geom.Ring, error) {
	strips := make([]geom.Ring, len(ties))
	for i, t := range ties {
		if t.Width <= 0 || t.From == t.To {
			return nil, fmt.Errorf("tie %d at %s, %s mm: %s mm wide and %s mm long holds nothing; give it a width and a length",
				i+1, t.From.X, t.From.Y, t.Width, t.From.Distance(t.To))
		}
		strips[i] = t.strip(0, 0, 0)
	}
	return strips, nil
}

// strip returns the four corners of a tie, grown by side on both sides and by
// from and to at its ends.
func (t Tie) strip(side, from, to geom.Length) geom.Ring {
	way := placeOf(t.To.Sub(t.From))
	way = way.times(1 / way.norm())
	across := place{-way.y, way.x}.times(float64(t.Width)/2 + float64(side))
	corner := func(at geom.Point, along geom.Length, across place) geom.Point {
		return at.Add(way.times(float64(along)).add(across).point())
	}
	return geom.Ring{
		corner(t.From, -from, across.times(-1)), corner(t.To, to, across.times(-1)),
		corner(t.To, to, across), corner(t.From, -from, across),
	}
}

// middle returns the place halfway along a tie.
func (t Tie) middle() geom.Point { return t.From.Add(half(t.To.Sub(t.From))) }

// meetStrips returns, for each motif, the copies of strips whose boxes meet the
// box around it where it stands.
func meetStrips(u pattern.Unit, strips []geom.Ring) [][]geom.Ring {
	boxes := make([]geom.Box, len(u.Motifs))
	var all geom.Box
	for i, m := range u.Motifs {
		boxes[i] = m.Placed().Bounds()
		all = all.Union(boxes[i])
	}
	met := make([][]geom.Ring, len(u.Motifs))
	index := geom.NewIndex(boxes)
	for _, s := range strips {
		box := s.Bounds()
		reach := geom.BoxOf(all.Min.Sub(box.Max), all.Max.Sub(box.Min))
		for _, p := range u.Lattice.Places(reach) {
			var copied geom.Ring
			index.Visit(box.Moved(p), func(i int) bool {
				if copied == nil {
					copied = s.Moved(p)
				}
				met[i] = append(met[i], copied)
				return true
			})
		}
	}
	return met
}

// without returns what the strips leave of a shape; nil where that is nothing.
func without(s geom.Shape, strips []geom.Ring) (geom.Outline, error) {
	left, err := geom.Without([][]geom.Ring{s.Rings(geom.Chord)}, each(strips))
	return outlineOf(left), err
}

// under returns what lies under the strips of a shape; nil where that is nothing.
func under(s geom.Shape, strips []geom.Ring) (geom.Outline, error) {
	whole := [][]geom.Ring{s.Rings(geom.Chord)}
	left, err := geom.Without(whole, each(strips))
	if err != nil {
		return nil, err
	}
	bare := make([]geom.Ring, len(left.Boundaries))
	for i, b := range left.Boundaries {
		bare[i] = b.Points
	}
	taken, err := geom.Without(whole, [][]geom.Ring{bare})
	return outlineOf(taken), err
}

func each(rings []geom.Ring) [][]geom.Ring {
	shapes := make([][]geom.Ring, len(rings))
	for i, r := range rings {
		shapes[i] = []geom.Ring{r}
	}
	return shapes
}

// outlineOf returns the lines of a region as contours.
func outlineOf(r geom.Region) geom.Outline {
	var o geom.Outline
	for _, b := range r.Boundaries {
		c := geom.Contour{Start: b.Points[0]}
		for _, p := range b.Points[1:] {
			c.Segments = append(c.Segments, geom.Segment{End: p})
		}
		o = append(o, c)
	}
	return o
}
