package bench

import (
	"cmp"
	"fmt"
	"slices"
	"strconv"

	"tsugime/repeat/geom"
)

// Put returns the rack with t as its tool n, or with t added where n is the number of
// its tools. It refuses what ReadRack would refuse.
func (r Rack) Put(n int, t Tool) (Rack, error) {
	if n < 0 || n > len(r.Tools) {
		return r, fmt.Errorf("rack: there is no tool %d; give 0 to %d", n, len(r.Tools))
	}
	if n == maxTools {
		return r, fmt.Errorf("rack: more than %d tools; keep it to those that are used", maxTools)
	}
	if value, text := t.check(); value != "" {
		return r, fmt.Errorf("%s: %s", value, text)
	}
	for i, other := range r.Tools {
		if i != n && other.Number == t.Number {
			return r, fmt.Errorf("number: there is a tool %q already; give each a number of its own", t.Number)
		}
	}
	next := r
	next.Tools = slices.Clone(r.Tools)
	if n == len(next.Tools) {
		next.Tools = append(next.Tools, t)
	} else {
		next.Tools[n] = t
	}
	return next, nil
}

// Without returns the rack without its tool n.
func (r Rack) Without(n int) Rack {
	if n < 0 || n >= len(r.Tools) {
		return r
	}
	next := r
	next.Tools = slices.Delete(slices.Clone(r.Tools), n, n+1)
	return next
}

// WithLimit returns the rack with the cutter's own limits of a method; one that is all
// zero takes them away.
func (r Rack) WithLimit(l Limit) (Rack, error) {
	if !l.Method.Known() {
		return r, fmt.Errorf("method: there is no method %.40q; give one of %q", l.Method, Methods())
	}
	if l.Hole < 0 || l.Web < 0 || l.Hole > mostSize || l.Web > mostSize {
		return r, fmt.Errorf("limit: %s and %s mm are out of bounds; give 0 to %s mm", l.Hole, l.Web, mostSize)
	}
	if l.Pile < 0 || l.Pile > mostPile {
		return r, fmt.Errorf("pile: %d sheets are out of bounds; give 0 to %d", l.Pile, mostPile)
	}
	next := r
	next.Limits = slices.DeleteFunc(slices.Clone(r.Limits), func(o Limit) bool { return o.Method == l.Method })
	if l.Hole > 0 || l.Web > 0 || l.Pile > 0 {
		l.Source = Own
		next.Limits = append(next.Limits, l)
		slices.SortStableFunc(next.Limits, func(a, b Limit) int {
			return cmp.Compare(slices.Index(Methods(), a.Method), slices.Index(Methods(), b.Method))
		})
	}
	return next, nil
}

// A By is what the tools of a rack are sorted by.
type By string

// What tools are sorted by.
const (
	ByKind      By = "kind" // then by size
	ByNumber    By = "number"
	BySize      By = "size"
	ByCondition By = "condition"
	ByNote      By = "note"
)

// Sorted returns the indexes of the tools in another order; tools that are alike in it
// stay in the order of the rack. Numbers that are whole go by their value.
func (r Rack) Sorted(by By) []int {
	order := make([]int, len(r.Tools))
	for i := range order {
		order[i] = i
	}
	slices.SortStableFunc(order, func(i, j int) int {
		a, b := r.Tools[i], r.Tools[j]
		switch by {
		case ByKind:
			return cmp.Or(cmp.Compare(slices.Index(Kinds(), a.Kind), slices.Index(Kinds(), b.Kind)), cmp.Compare(a.Across(), b.Across()))
		case ByNumber:
			return compareNumbers(a.Number, b.Number)
		case BySize:
			return cmp.Compare(a.Across(), b.Across())
		case ByCondition:
			return cmp.Compare(slices.Index(Conditions(), a.Condition), slices.Index(Conditions(), b.Condition))
		case ByNote:
			return cmp.Compare(a.Note, b.Note)
		}
		return 0
	})
	return order
}

// Across is the size of a tool; of a punch the larger side of its outline.
func (t Tool) Across() geom.Length {
	if t.Kind != Punch {
		return t.Size
	}
	b := t.Outline.Bounds()
	return max(b.Width(), b.Height())
}

func compareNumbers(a, b string) int {
	x, errX := strconv.Atoi(a)
	y, errY := strconv.Atoi(b)
	switch {
	case errX == nil && errY == nil:
		return cmp.Compare(x, y)
	case errX == nil:
		return -1
	case errY == nil:
		return 1
	}
	return cmp.Compare(a, b)
}

// FreeNumber returns the smallest whole number that no tool has for its own.
func (r Rack) FreeNumber() string {
	taken := make(map[string]bool, len(r.Tools))
	for _, t := range r.Tools {
		taken[t.Number] = true
	}
	n := 1
	for taken[strconv.Itoa(n)] {
		n++
	}
	return strconv.Itoa(n)
}
