package stencil

import (
	"fmt"
	"slices"

	"tsugime/repeat/geom"
	"tsugime/repeat/pattern"
)

// Parted returns the units of the two sheets of a split, and how they cover the
// design u together.
//
// The first sheet is the design less the motifs that h keeps for the second,
// tied with h.Ties. The second cuts those motifs whole and, of all others,
//   - for TiePlaces what lies under the ties of the first, each grown by the lap
//     on both sides, and at an end where the cut-out goes on there;
//   - for Whole all of it;
//
// less the second's own ties. Where a motif is cut by both sheets, both parts
// keep its ID. Whether each sheet holds is for Connect to say.
func Parted(u pattern.Unit, h Hold) (first, second pattern.Unit, cover Cover, err error) {
	apart := make(map[pattern.ID]bool, len(h.Second.Motifs))
	for _, id := range h.Second.Motifs {
		apart[id] = true
	}
	of := func(second bool) pattern.Unit {
		part := pattern.Unit{Lattice: u.Lattice}
		for _, m := range u.Motifs {
			if apart[m.ID] == second {
				part.Motifs = append(part.Motifs, m)
			}
		}
		return part
	}
	if first, err = Tied(of(false), h.Ties); err != nil {
		return first, second, cover, fmt.Errorf("first sheet: %w", err)
	}
	switch h.Second.Cut {
	case Whole:
		second = u
	case TiePlaces:
		second, err = tiePlaces(u, of(false), h)
		second.Motifs = append(second.Motifs, of(true).Motifs...)
	default:
		err = fmt.Errorf("cut %q is none of %q; name one of them", h.Second.Cut, SecondCuts())
	}
	if err == nil {
		second, err = Tied(second, h.Second.Ties)
	}
	if err != nil {
		return first, second, cover, fmt.Errorf("second sheet: %w", err)
	}
	cover, err = Covered(u, first, second)
	return first, second, cover, err
}

// tiePlaces returns what the second sheet opens where the first has its ties.
func tiePlaces(design, first pattern.Unit, h Hold) (pattern.Unit, error) {
	if _, err := stripsOf(h.Ties); err != nil {
		return pattern.Unit{}, err
	}
	strips := lapped(design, h.Ties, h.Second.Lap)
	opened, err := reshaped(first, meetStrips(first, strips), geom.Shape.Within)
	places := pattern.Unit{Lattice: first.Lattice}
	for i, m := range first.Motifs {
		if opened[i] != nil {
			places.Motifs = appendStanding(places.Motifs, m, *opened[i])
		}
	}
	return places, err
}

// lapped returns the strips of ties grown by the lap: on both sides, and at an
// end that lies in a cut-out with any of its two corners or the middle.
func lapped(design pattern.Unit, ties []Tie, lap geom.Length) []geom.Strip {
	strips := make([]geom.Strip, len(ties))
	looks := make([]geom.Point, 0, 6*len(ties))
	for _, t := range ties {
		s := t.strip(0, 0, 0).Ring()
		looks = append(looks, t.From, s[0], s[3], t.To, s[1], s[2])
	}
	in := inked(design, looks)
	for i, t := range ties {
		grown := func(end []bool) geom.Length {
			if slices.Contains(end, true) {
				return lap
			}
			return 0
		}
		at := in[6*i : 6*i+6]
		strips[i] = t.strip(lap, grown(at[:3]), grown(at[3:]))
	}
	return strips
}

// inked reports which places lie in a cut-out of the plain pattern.
func inked(u pattern.Unit, places []geom.Point) []bool {
	boxes := make([]geom.Box, len(places))
	for k, p := range places {
		boxes[k] = geom.BoxOf(p)
	}
	in := make([]bool, len(places))
	meetBoxes(u, boxes, func(i, k int, shift geom.Point) {
		in[k] = in[k] || u.Motifs[i].Placed().Contains(places[k].Add(shift))
	})
	return in
}

// Misplaced returns the unit of a second sheet that is laid by that much beside
// its place: Covered then tells what shows on the cloth.
func Misplaced(second pattern.Unit, by geom.Point) pattern.Unit {
	moved := pattern.Unit{Lattice: second.Lattice, Motifs: slices.Clone(second.Motifs)}
	for i := range moved.Motifs {
		moved.Motifs[i].At = moved.Motifs[i].At.Add(by)
	}
	return moved
}
