package stencil

import (
	"cmp"
	"fmt"
	"runtime"
	"sync"

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
	tied, err := reshaped(u, meetStrips(u, strips), geom.Shape.Without)
	if err != nil {
		return pattern.Unit{}, err
	}
	all := pattern.Unit{Lattice: u.Lattice, Motifs: make([]pattern.Motif, 0, len(u.Motifs))}
	for i, m := range u.Motifs {
		if tied[i] == nil {
			all.Motifs = append(all.Motifs, m)
		} else {
			all.Motifs = appendStanding(all.Motifs, m, *tied[i])
		}
	}
	return all, nil
}

// reshaped returns what becomes of each motif, where it stands, by the strips that
// meet it; nil where none does. It works on all processors.
func reshaped(u pattern.Unit, met [][]geom.Strip, become func(geom.Shape, ...geom.Strip) (geom.Shape, error)) ([]*geom.Shape, error) {
	shapes := make([]*geom.Shape, len(u.Motifs))
	errs := make([]error, len(u.Motifs))
	var together sync.WaitGroup
	workers := runtime.GOMAXPROCS(0)
	for w := range workers {
		together.Go(func() {
			for i := w; i < len(met); i += workers {
				if len(met[i]) == 0 {
					continue
				}
				s, err := become(u.Motifs[i].Placed(), met[i]...)
				if shapes[i] = &s; err != nil {
					errs[i] = fmt.Errorf("ties across motif %d: %w", u.Motifs[i].ID, err)
				}
			}
		})
	}
	together.Wait()
	return shapes, cmp.Or(errs...)
}

// appendStanding appends m with another shape, given where it stands, unless
// that covers nothing.
func appendStanding(motifs []pattern.Motif, m pattern.Motif, s geom.Shape) []pattern.Motif {
	if !s.Round() && len(s.Outline) == 0 {
		return motifs
	}
	return append(motifs, pattern.Motif{ID: m.ID, Shape: s.Moved(m.At.Neg()), At: m.At})
}

// stripsOf returns the paper that every tie leaves.
func stripsOf(ties []Tie) ([]geom.Strip, error) {
	strips := make([]geom.Strip, len(ties))
	for i, t := range ties {
		empty := t.Width <= 0 || t.From == t.To
		if !empty {
			strips[i] = t.strip(0, 0, 0)
			empty = strips[i].Ring() == nil // a nanometre wide and slanting
		}
		if empty {
			return nil, fmt.Errorf("tie %d at %s, %s mm: %s mm wide and %s mm long holds nothing; give it a width and a length",
				i+1, t.From.X, t.From.Y, t.Width, t.From.Distance(t.To))
		}
	}
	return strips, nil
}

// strip returns the strip of a tie, grown by side on both sides and by from and
// to at its ends.
func (t Tie) strip(side, from, to geom.Length) geom.Strip {
	way := placeOf(t.To.Sub(t.From))
	way = way.times(1 / way.norm())
	return geom.Strip{
		From:  t.From.Sub(way.times(float64(from)).point()),
		To:    t.To.Add(way.times(float64(to)).point()),
		Width: t.Width + 2*side,
	}
}

// middle returns the place halfway along a tie.
func (t Tie) middle() geom.Point { return t.From.Add(half(t.To.Sub(t.From))) }

// meetStrips returns, for each motif, the copies of strips whose boxes meet the
// box around it where it stands.
func meetStrips(u pattern.Unit, strips []geom.Strip) [][]geom.Strip {
	met := make([][]geom.Strip, len(u.Motifs))
	boxes := make([]geom.Box, len(strips))
	for i, s := range strips {
		boxes[i] = s.Ring().Bounds()
	}
	meetBoxes(u, boxes, func(i, k int, shift geom.Point) {
		s := strips[k]
		met[i] = append(met[i], geom.Strip{From: s.From.Add(shift), To: s.To.Add(shift), Width: s.Width})
	})
	return met
}

// meetBoxes tells each motif i whose box meets box k moved by a shift of the
// lattice, the motif standing as it is.
func meetBoxes(u pattern.Unit, boxes []geom.Box, met func(i, k int, shift geom.Point)) {
	if len(boxes) == 0 {
		return
	}
	own := make([]geom.Box, len(u.Motifs))
	var all geom.Box
	for i, m := range u.Motifs {
		own[i] = m.Placed().Bounds()
		all = all.Union(own[i])
	}
	index := geom.NewIndex(own)
	for k, box := range boxes {
		reach := geom.BoxOf(all.Min.Sub(box.Max), all.Max.Sub(box.Min))
		for _, shift := range u.Lattice.Places(reach) {
			index.Visit(box.Moved(shift), func(i int) bool {
				met(i, k, shift)
				return true
			})
		}
	}
}
