package stencil

import (
	"cmp"
	"math"
	"slices"
)

// A wedge is the corners of a convex piece of the plane in which the webs of a
// corner run; its hull counts.
type wedge []place

// wedgeAt returns the wedge of the directions in which a corner's webs run, reach
// long: from one side's normal to the other's, on the side where the corner
// sticks out.
func wedgeAt(corners wedge, at, before, after place, reach float64) wedge {
	far := reach + 2*grain
	n1, n2 := place{-before.y, before.x}.times(1/before.norm()), place{-after.y, after.x}.times(1/after.norm())
	cos := n1.dot(n2)
	if cos <= 0 {
		return append(corners[:0], place{at.x - far, at.y - far}, place{at.x + far, at.y - far},
			place{at.x + far, at.y + far}, place{at.x - far, at.y + far})
	}
	// The line between tips that far out touches the arc between the normals.
	far *= 1 / math.Sqrt((1+cos)/2)
	switch turn := before.cross(after); {
	case turn > 0:
		return append(corners[:0], at, at.add(n1.times(-far)), at.add(n2.times(-far)))
	case turn == 0:
		return append(corners[:0], at.add(n1.times(far)), at.add(n1.times(-far)))
	}
	return append(corners[:0], at, at.add(n1.times(far)), at.add(n2.times(far)))
}

// visitWedge calls found with the sides in the parts that the wedge meets, as
// visit does, row by row: a long thin wedge meets few parts of the box around it.
func (g *sideGrid) visitWedge(w wedge, found func(i int32, by place) bool) {
	const most = 4
	var u, v [most]float64
	lo, hi := math.Inf(1), math.Inf(-1)
	for k, p := range w {
		u[k], v[k] = g.at(p)
		lo, hi = min(lo, v[k]), max(hi, v[k])
	}
	spareU, spareV := 2*grain/g.tallA, 2*grain/g.tallB
	rows := g.clamped(0, 0, lo-spareV, hi+spareV)
	for j := rows.j0; j <= rows.j1; j++ {
		// Where rows don't wrap what lies beyond the first and last belongs to them.
		from, to := float64(j)/float64(g.nv)-spareV, float64(j+1)/float64(g.nv)+spareV
		if !g.wrapB && j == 0 {
			from = math.Inf(-1)
		}
		if !g.wrapB && j == g.nv-1 {
			to = math.Inf(1)
		}
		left, right := math.Inf(1), math.Inf(-1)
		for k := range w {
			for m := range k + 1 {
				a, b, ok := rowSpan(u[k], v[k], u[m], v[m], from, to)
				if ok {
					left, right = min(left, a), max(right, b)
				}
			}
		}
		if left > right {
			continue
		}
		row := g.clamped(left-spareU, right+spareU, 0, 0)
		row.j0, row.j1 = j, j
		g.visit(row, found)
	}
}

// rowSpan returns between which u a segment runs where its v is between from and
// to, and whether it comes there.
func rowSpan(u0, v0, u1, v1, from, to float64) (left, right float64, ok bool) {
	if v0 > v1 {
		u0, v0, u1, v1 = u1, v1, u0, v0
	}
	if v1 < from || v0 > to {
		return 0, 0, false
	}
	if slope := (u1 - u0) / (v1 - v0); v1 > v0 {
		if v1 > to {
			u1 = u0 + slope*(to-v0)
		}
		if v0 < from {
			u0 += slope * (from - v0)
		}
	}
	return min(u0, u1), max(u0, u1), true
}

// A facing is a side that faces a corner, and its point q nearest to it.
type facing struct {
	q  place
	l  float64
	i  int32
	by place
}

// nearestFirst sorts what faces a corner.
func nearestFirst(all []facing) {
	slices.SortFunc(all, func(a, b facing) int {
		return cmp.Or(cmp.Compare(a.l, b.l), cmp.Compare(a.i, b.i), cmp.Compare(a.by.x, b.by.x), cmp.Compare(a.by.y, b.by.y))
	})
}
