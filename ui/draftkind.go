package ui

import (
	"fmt"
	"slices"
	"strings"

	"tsugime/repeat/document"
	"tsugime/repeat/pattern"
)

// drops are the parts by which columns or rows are commonly set off.
var drops = [][2]int{{1, 3}, {2, 3}, {1, 4}, {3, 4}}

// kindNames are the lattices to choose from.
func kindNames() []string {
	var names []string
	for _, k := range pattern.Kinds() {
		names = append(names, string(k))
		if k == pattern.HalfDropKind || k == pattern.BrickKind {
			for _, d := range drops {
				names = append(names, dropName(k, d[0], d[1]))
			}
		}
	}
	return names
}

// dropName names columns or rows that are set off by a part; a half has the
// kind's own name.
func dropName(k pattern.Kind, num, den int) string {
	switch {
	case den == 2:
		return string(k)
	case k == pattern.HalfDropKind:
		return fmt.Sprintf("drop by %d/%d", num, den)
	}
	return fmt.Sprintf("brick by %d/%d", num, den)
}

// kindOf names the lattice as the list does.
func kindOf(l pattern.Lattice) string {
	k := l.Kind()
	if num, den, ok := l.Drop(); ok && (k == pattern.HalfDropKind || k == pattern.BrickKind) {
		return dropName(k, num, den)
	}
	return string(k)
}

// laidAs returns the lattice of a name on the spacing of another.
func laidAs(name string, l pattern.Lattice) pattern.Lattice {
	across, along := l.Spacing()
	var num, den int
	if _, err := fmt.Sscanf(name[strings.LastIndex(name, " ")+1:], "%d/%d", &num, &den); err != nil {
		return pattern.Laid(pattern.Kind(name), across, along)
	}
	if strings.HasPrefix(name, "brick") {
		return pattern.BrickBy(across, along, num, den)
	}
	return pattern.HalfDropBy(across, along, num, den)
}

// kindField chooses how the lattice is laid out. A drop that is not in the list
// is shown where the order has it.
func (s *draft) kindField() {
	names := kindNames()
	kinds := newSelect(nil, nil)
	s.form.row("Kind", kinds)
	s.form.showing = append(s.form.showing, func(o document.Order) {
		kinds.OnChanged = nil
		now := kindOf(o.Unit.Lattice)
		offered := names
		if !slices.Contains(names, now) {
			offered = append(slices.Clone(names), now)
		}
		kinds.Options = allSaid(offered)
		kinds.SetSelectedIndex(slices.Index(offered, now))
		kinds.OnChanged = func(string) {
			if name := offered[kinds.SelectedIndex()]; name != kindOf(s.w.Order().Unit.Lattice) {
				s.w.Edit("Change Lattice", func(o document.Order) (document.Order, error) {
					return document.SetLattice(o, laidAs(name, o.Unit.Lattice))
				})
			}
		}
	})
}
