package document

import (
	"maps"
	"slices"

	"tsugime/repeat/bench"
	"tsugime/repeat/geom"
	"tsugime/repeat/pattern"
)

// Taken returns the order with the chosen motifs alone, as they are handed on to another
// order: without shelf, and with no ground that would be laid again.
func Taken(o Order, ids ...pattern.ID) (Order, error) {
	want, err := chosen(o, ids)
	if err != nil {
		return o, err
	}
	var others []pattern.ID
	for _, m := range o.Unit.Motifs {
		if !want[m.ID] {
			others = append(others, m.ID)
		}
	}
	next, err := DeleteMotifs(o, others...)
	if err != nil {
		return o, err
	}
	next.Ground, next.Shelf = pattern.Recipe{}, nil
	return o.checked(next)
}

// Paste adds the motifs of another order, moved by a way, under the next free IDs and
// with the cutting methods that were named for them. Their copies are those that o's own
// plane group makes.
func Paste(o, from Order, by geom.Point) (Order, error) {
	motifs := slices.Clone(from.Unit.Motifs)
	for i := range motifs {
		motifs[i].At = motifs[i].At.Add(by)
	}
	next := o
	next.Methods = maps.Clone(o.Methods)
	for i, m := range motifs {
		if method, ok := from.Methods[m.ID]; ok {
			if next.Methods == nil {
				next.Methods = bench.Overrides{}
			}
			next.Methods[o.NextID+pattern.ID(i)] = method
		}
	}
	next.Unit.Motifs = slices.Concat(o.Unit.Motifs, motifs)
	for i := len(o.Unit.Motifs); i < len(next.Unit.Motifs); i++ {
		next.Unit.Motifs[i].ID = next.NextID
		next.NextID++
	}
	return o.checked(next)
}
