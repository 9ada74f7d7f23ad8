package stencil

import "tsugime/repeat/geom"

// mostTrim bounds the edges that are looked at one against another to find the
// trims of a motif; a motif with more is compared as a whole.
const mostTrim = 400

// A rimEdge is a straight piece of a rim, with what it bounds to its right as
// everywhere.
type rimEdge struct{ a, b geom.Point }

// rimEdges are the pieces of a motif's rims, found by where they start.
type rimEdges struct {
	edges []rimEdge
	from  map[geom.Point]int
	sound bool // no two start in one place
}

func edgesOf(rings []geom.Ring) rimEdges {
	n := 0
	for _, r := range rings {
		n += len(r)
	}
	e := rimEdges{make([]rimEdge, 0, n), make(map[geom.Point]int, n), true}
	for _, r := range rings {
		for i, a := range r {
			if b := r[(i+1)%len(r)]; a != b {
				e.from[a] = len(e.edges)
				e.edges = append(e.edges, rimEdge{a, b})
			}
		}
	}
	e.sound = len(e.from) == len(e.edges)
	return e
}

// trims returns closed lines such that the turns of the whole around a place, less
// those of the part, are the turns of the trims: what both have in common cancels,
// and only the rims of what the part leaves are kept. So outside of the trims'
// boxes whole and part cover the same, to a grid step along the whole's edges that
// were cut. It is not ok where the two have too little in common, or where rims of
// the part cross.
func (whole rimEdges) trims(part []geom.Ring) (lines []geom.Ring, ok bool) {
	if !whole.sound {
		return nil, false
	}
	kept := make([]bool, len(whole.edges))
	var added []rimEdge
	for _, r := range part {
		for i, a := range r {
			b := r[(i+1)%len(r)]
			if k, known := whole.from[a]; known && !kept[k] && whole.edges[k].b == b {
				kept[k] = true
			} else if a != b {
				added = append(added, rimEdge{a, b})
			}
		}
	}
	var left []rimEdge
	for k, e := range whole.edges {
		if !kept[k] {
			left = append(left, e)
		}
	}
	if len(left) > mostTrim || len(added) > mostTrim || tangled(added, part) {
		return nil, false
	}
	return linked(cancelled(splitAt(left, added), added))
}

// tangled reports whether any of the edges meets a piece of the rings beyond its
// own ends.
func tangled(edges []rimEdge, rings []geom.Ring) bool {
	for _, e := range edges {
		lo := geom.Point{X: min(e.a.X, e.b.X), Y: min(e.a.Y, e.b.Y)}
		hi := geom.Point{X: max(e.a.X, e.b.X), Y: max(e.a.Y, e.b.Y)}
		for _, r := range rings {
			a := r[len(r)-1]
			for _, b := range r {
				c := a
				a = b
				if max(b.X, c.X) < lo.X || min(b.X, c.X) > hi.X || max(b.Y, c.Y) < lo.Y || min(b.Y, c.Y) > hi.Y {
					continue
				}
				if e.a != b && e.a != c && e.b != b && e.b != c && meets(e.a, e.b, c, b) {
					return true
				}
			}
		}
	}
	return false
}

// splitAt parts edges where the other edges end on them.
func splitAt(edges, others []rimEdge) []rimEdge {
	for _, o := range others {
		for _, p := range [2]geom.Point{o.a, o.b} {
			for k, e := range edges {
				if p != e.a && p != e.b && segmentGap(p, e.a, e.b) < 2*float64(geom.Grid) {
					edges[k].b = p
					edges = append(edges, rimEdge{p, e.b})
				}
			}
		}
	}
	return edges
}

// cancelled returns the edges and, the other way round, those of others, less what
// is in both.
func cancelled(edges, others []rimEdge) []rimEdge {
	gone := make([]bool, len(edges))
	var all []rimEdge
next:
	for _, o := range others {
		for k, e := range edges {
			if e == o && !gone[k] {
				gone[k] = true
				continue next
			}
		}
		all = append(all, rimEdge{o.b, o.a})
	}
	for k, e := range edges {
		if !gone[k] {
			all = append(all, e)
		}
	}
	return all
}

// linked returns the edges as closed lines, and whether they close.
func linked(edges []rimEdge) (lines []geom.Ring, ok bool) {
	for len(edges) > 0 {
		line := geom.Ring{edges[0].a}
		at := edges[0].b
		edges = edges[1:]
		for at != line[0] {
			k := 0
			for k < len(edges) && edges[k].a != at {
				k++
			}
			if k == len(edges) {
				return nil, false
			}
			line, at = append(line, at), edges[k].b
			edges[k] = edges[0]
			edges = edges[1:]
		}
		lines = append(lines, line)
	}
	return lines, true
}

// takesOnly reports whether a part with these trims opens nothing beside its motif:
// each trim goes once around what is left, and crosses nowhere.
func takesOnly(trims []geom.Ring) bool {
	for _, r := range trims {
		if len(r) < 3 || r.Area2() <= 0 || !apartFromItself(r) {
			return false
		}
	}
	return true
}

// apartFromItself reports whether no two pieces of a ring meet but neighbours.
func apartFromItself(r geom.Ring) bool {
	for i, a := range r {
		for j := i + 2; j < len(r) && (i > 0 || j < len(r)-1); j++ {
			if meets(a, r[(i+1)%len(r)], r[j], r[(j+1)%len(r)]) {
				return false
			}
		}
	}
	return true
}

// meets reports whether the pieces ab and cd have a place in common.
func meets(a, b, c, d geom.Point) bool {
	if !geom.BoxOf(a, b).Meets(geom.BoxOf(c, d)) {
		return false
	}
	return differ(b.Sub(a).Cross(c.Sub(a)), b.Sub(a).Cross(d.Sub(a))) && differ(d.Sub(c).Cross(a.Sub(c)), d.Sub(c).Cross(b.Sub(c)))
}

// apartFrom reports whether nothing that the one lines go around is gone around by
// the others.
func apartFrom(lines, others []geom.Ring) bool {
	for _, r := range lines {
		box := r.Bounds()
		for _, o := range others {
			if box.Meets(o.Bounds()) && !ringsApart(r, o) {
				return false
			}
		}
	}
	return true
}

// ringsApart reports whether two rings don't meet and neither lies in the other.
func ringsApart(r, o geom.Ring) bool {
	for i, a := range r {
		for j, c := range o {
			if meets(a, r[(i+1)%len(r)], c, o[(j+1)%len(o)]) {
				return false
			}
		}
	}
	return r.Winding(o[0]) == 0 && o.Winding(r[0]) == 0
}
