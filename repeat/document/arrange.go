package document

import (
	"slices"

	"tsugime/repeat/geom"
	"tsugime/repeat/pattern"
)

// Duplicate adds a copy of each motif, moved by a way, under the next free IDs in the
// order of the unit.
func Duplicate(o Order, by geom.Point, ids ...pattern.ID) (Order, error) {
	want, err := chosen(o, ids)
	if err != nil {
		return o, err
	}
	var copies []pattern.Motif
	for _, m := range o.Unit.Motifs {
		if want[m.ID] {
			m.At = m.At.Add(by)
			copies = append(copies, m)
		}
	}
	return AddMotifs(o, copies...)
}

// MoveEach moves each motif by its own way; a motif without one stays.
func MoveEach(o Order, ways map[pattern.ID]geom.Point) (Order, error) {
	ids := make([]pattern.ID, 0, len(ways))
	for id := range ways {
		ids = append(ids, id)
	}
	slices.Sort(ids)
	return change(o, ids, func(m *pattern.Motif) { m.At = m.At.Add(ways[m.ID]) })
}
