package bench

import (
	"cmp"
	"math"
	"slices"

	"tsugime/repeat/geom"
)

// missing lists the tools that the rack lacks, most used first.
func (d *desk) missing() []Missing {
	if len(d.rack.Tools) == 0 {
		return nil
	}
	var list []Missing
	var shapes []form // of the punches in list, by their place in it
	for _, k := range d.kinds {
		m, ok := d.lacks(k)
		if !ok {
			continue
		}
		var f form
		if m.Kind == Punch {
			f = formOf(m.Outline)
		}
		at := slices.IndexFunc(list, func(o Missing) bool { return o.Kind == m.Kind && o.Size == m.Size && m.Kind != Punch })
		if m.Kind == Punch {
			at = slices.IndexFunc(shapes, func(g form) bool {
				if len(g.rings) == 0 {
					return false
				}
				_, same := f.like(g, punchOff(m.Outline))
				return same
			})
		}
		if at < 0 {
			list, shapes = append(list, m), append(shapes, f)
			continue
		}
		list[at].Count += m.Count
	}
	list = slices.DeleteFunc(list, func(m Missing) bool { return m.Kind == Punch && m.Count < worthCount })
	slices.SortStableFunc(list, func(a, b Missing) int {
		return cmp.Or(cmp.Compare(b.Count, a.Count), cmp.Compare(a.Size, b.Size))
	})
	return list
}

// mostShapes bounds how many shapes are compared with each other.
const mostShapes = 500

// lacks says which tool is missing for a kind of cut-out, where one is.
func (d *desk) lacks(k kind) (Missing, bool) {
	c := k.choice
	m := Missing{Kind: c.Method.tool(), Size: c.Size, Count: k.count, Motif: k.motif, Nearest: c.Tool, Strain: c.Strain}
	switch c.Method {
	case Kiribori:
		return m, c.Tool < 0 || math.Abs(c.Strain.Pct) > SnapPct
	case Shimabori:
		m.Size = pairSize(m.Size)
		return m, c.Tool < 0 || d.rack.Tools[c.Tool].Kind != Pair
	case Dogubori:
		m.Outline = k.shape.Outline
		return m, c.Tool < 0 && !k.shape.Round()
	}
	if c.Tool < 0 {
		m.Size = 0
		return m, true
	}
	if c.Reason == FreeLine && c.Size <= worthSize && !k.shape.Round() && len(d.kinds) <= mostShapes {
		return Missing{Kind: Punch, Size: c.Size, Outline: k.shape.Outline, Count: k.count, Motif: k.motif, Nearest: c.Tool}, true
	}
	return Missing{}, false
}

// LengthMM returns the length of the lines that the cut-outs of an assignment have in
// all, each counted once.
func (a Assignment) LengthMM() float64 {
	var sum float64
	for _, c := range a.Choices {
		sum += c.RimMM
	}
	return sum
}

// sizeOf is the size that tells the tools of a pass apart where the rack has none.
func sizeOf(c Choice) geom.Length {
	switch {
	case c.Tool >= 0:
		return 0
	case c.Method == Kiribori:
		return c.Size
	case c.Method == Shimabori:
		return pairSize(c.Size)
	}
	return 0
}

// pairSize is the size of a pair that is made for a stripe: to a hundredth of a
// millimetre, finer than hands set blades.
func pairSize(l geom.Length) geom.Length {
	const step = geom.Millimetre / 100
	return (l + step/2) / step * step
}
