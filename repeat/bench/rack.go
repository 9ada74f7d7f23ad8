package bench

import (
	"slices"

	"tsugime/repeat/geom"
)

// A Rack is the cutter's own tools and what the cutter trusts each method with. It
// is a value of its own that many orders share.
type Rack struct {
	Tools  []Tool
	Limits []Limit // the cutter's own; other methods have the usual ones
}

// Limit returns what a method is trusted with: the cutter's own word value by
// value, else the usual one.
func (r Rack) Limit(m Method) Limit {
	limit := Limit{Method: m}
	for _, l := range usualLimits() {
		if l.Method == m {
			limit = l
		}
	}
	for _, own := range r.Limits {
		if own.Method != m {
			continue
		}
		whole := own.Hole > 0 && own.Web > 0 && own.Pile > 0
		if own.Hole > 0 {
			limit.Hole = own.Hole
		}
		if own.Web > 0 {
			limit.Web = own.Web
		}
		if own.Pile > 0 {
			limit.Pile = own.Pile
		}
		if whole {
			limit.Source = Own
		} else {
			limit.Source = Own + ", and " + limit.Source
		}
	}
	return limit
}

// Owns reports whether one limit of a method is the cutter's own word.
func (r Rack) Owns(m Method, w What) bool {
	for _, l := range r.Limits {
		if l.Method == m && (w == HoleSize && l.Hole > 0 || w == WebWidth && l.Web > 0 || w == PileSize && l.Pile > 0) {
			return true
		}
	}
	return false
}

// Tool returns tool n of the rack, and false for a choice that it has no tool for.
func (r Rack) Tool(n int) (Tool, bool) {
	if n < 0 || n >= len(r.Tools) {
		return Tool{}, false
	}
	return r.Tools[n], true
}

// With returns the rack joined by more tools. One whose kind, number and size are
// there already is not taken twice.
func (r Rack) With(tools ...Tool) Rack {
	there := make(map[[2]string]geom.Length, len(r.Tools))
	for _, t := range r.Tools {
		there[[2]string{string(t.Kind), t.Number}] = t.Size
	}
	joined := r
	joined.Tools = slices.Clone(r.Tools)
	for _, t := range tools {
		key := [2]string{string(t.Kind), t.Number}
		if size, ok := there[key]; ok && size == t.Size && t.Kind != Punch {
			continue
		}
		joined.Tools = append(joined.Tools, t)
	}
	return joined
}

// usable returns the indexes of the tools of a kind that are not broken, the
// finest first; where two are alike the sharp one, then the earlier.
func (r Rack) usable(k Kind) []int {
	var found []int
	for i, t := range r.Tools {
		if t.Kind == k && t.Condition != Broken {
			found = append(found, i)
		}
	}
	slices.SortStableFunc(found, func(i, j int) int {
		a, b := r.Tools[i], r.Tools[j]
		if a.Size != b.Size {
			return int(a.Size - b.Size)
		}
		return rank(a.Condition) - rank(b.Condition)
	})
	return found
}

func rank(c Condition) int {
	if c == Worn {
		return 1
	}
	return 0
}
