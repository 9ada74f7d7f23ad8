package bench

import (
	"cmp"
	"slices"

	"tsugime/repeat/geom"
)

// A Strained is cut-outs of one size whose tool differs from what is drawn.
type Strained struct {
	Tool   int // in the rack
	Size   geom.Length
	Strain Strain // the worst of them
	Count  int
}

// Strained lists what is cut by a tool that differs from what is drawn, the tools in
// their order.
func (a Assignment) Strained() []Strained {
	type key struct {
		tool int
		size geom.Length
	}
	at := map[key]int{}
	var list []Strained
	for _, c := range a.Choices {
		if c.Tool < 0 || c.Strain.By == 0 {
			continue
		}
		n, ok := at[key{c.Tool, c.Size}]
		if !ok {
			n = len(list)
			at[key{c.Tool, c.Size}] = n
			list = append(list, Strained{Tool: c.Tool, Size: c.Size, Strain: c.Strain})
		}
		list[n].Count++
		if c.Strain.By.Abs() > list[n].Strain.By.Abs() {
			list[n].Strain = c.Strain
		}
	}
	slices.SortFunc(list, func(a, b Strained) int { return cmp.Or(cmp.Compare(a.Tool, b.Tool), cmp.Compare(a.Size, b.Size)) })
	return list
}
