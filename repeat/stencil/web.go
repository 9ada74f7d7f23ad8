package stencil

import (
	"cmp"
	"math"
	"slices"

	"tsugime/repeat/geom"
	"tsugime/repeat/pattern"
)

// A link is a web found between two items of a neighbourhood.
type link struct {
	a, b int // items
	gap
}

// Webs measures the paper between neighbouring cut-outs: in the plane, repeated
// along one period, or on the torus of two. Every narrow place is told once: a
// shortest segment across paper whose diametral disc holds no rim (an index-1
// critical point of the distance to the cut-outs), necks within one outline and
// webs to a cut-out's own copies among them. Cut-outs that overlap have no web
// there; where they touch in a point the web is zero wide. The search grows
// until it finds one, or until no more paper lies between cut-outs.
func Webs(cuts []pattern.CutOut, limit geom.Length, periods ...geom.Point) WebReport {
	report := WebReport{Limit: limit}
	if len(cuts) == 0 {
		return report
	}
	reach, most := max(limit, geom.Millimetre/10), farthest(cuts, periods)
	var found []link
	var n *neighbourhood
	for {
		n = around(cuts, reach, periods...)
		found = n.links(float64(reach))
		if len(found) > 0 || reach >= most {
			break
		}
		reach = min(2*reach, most)
	}
	for _, l := range found {
		w := n.web(l)
		report.Widths = append(report.Widths, w.Width)
		if w.Width < limit {
			report.Below = append(report.Below, w)
		}
	}
	if len(found) > 0 {
		report.Narrowest, report.Found = n.web(found[0]), true
	}
	return report
}

// farthest returns a length beyond which no web can be: the periods, or the
// whole drawing where nothing repeats.
func farthest(cuts []pattern.CutOut, periods []geom.Point) geom.Length {
	var far float64
	for _, p := range periods {
		far += p.Norm()
	}
	if len(periods) < 2 {
		var all geom.Box
		for _, c := range cuts {
			all = all.Union(c.Shape.Bounds())
		}
		far += all.Max.Sub(all.Min).Norm()
	}
	return geom.Length(math.Ceil(far))
}

// web returns a link as the report tells it, its ends put on the grid.
func (n *neighbourhood) web(l link) Web {
	at := func(x, y float64) geom.Point {
		return geom.Point{X: geom.Length(math.Round(x)), Y: geom.Length(math.Round(y))}
	}
	return Web{
		P: at(l.px, l.py), Q: at(l.qx, l.qy),
		Width: geom.Length(math.Round(math.Max(l.width, 0))),
		A:     n.cuts[n.items[l.a].owner].Motif, B: n.cuts[n.items[l.b].owner].Motif,
	}
}

// links returns every web up to reach wide, the narrowest first.
func (n *neighbourhood) links(reach float64) []link {
	outlines := n.outlineIndex()
	var found []link
	for i := range n.cuts {
		for k := n.first[i]; k < n.first[i+1]; k++ {
			found = n.linksOf(found, i, k, reach, outlines)
		}
	}
	slices.SortFunc(found, func(x, y link) int {
		return cmp.Or(cmp.Compare(x.width, y.width), cmp.Compare(x.py+x.qy, y.py+y.qy), cmp.Compare(x.px+x.qx, y.px+y.qx),
			cmp.Compare(x.a, y.a), cmp.Compare(x.b, y.b))
	})
	if outlines == nil {
		return found
	}
	return n.merged(found)
}

// outlineIndex finds the items that are outlines, or returns nil where all are
// discs.
func (n *neighbourhood) outlineIndex() *geom.Index {
	boxes, any := make([]geom.Box, len(n.items)), false
	for i, it := range n.items {
		if !n.cuts[it.owner].Shape.Round() {
			boxes[i], any = it.box, true
		}
	}
	if !any {
		return nil
	}
	return geom.NewIndex(boxes)
}

// linksOf appends the webs that begin on rim k of item i and that no other rim
// tells: of two cut-outs the first tells, of a cut-out and its copies the one
// that looks forward.
func (n *neighbourhood) linksOf(found []link, i, k int, reach float64, outlines *geom.Index) []link {
	e := n.rims[k]
	box := geom.BoxOf(geom.Point{X: geom.Length(e.ax - e.r), Y: geom.Length(e.ay - e.r)},
		geom.Point{X: geom.Length(e.ax + e.r), Y: geom.Length(e.ay + e.r)})
	if !e.round {
		box = geom.BoxOf(geom.Point{X: geom.Length(e.ax), Y: geom.Length(e.ay)}, geom.Point{X: geom.Length(e.bx), Y: geom.Length(e.by)})
	}
	n.index.Visit(box.Grown(geom.Length(math.Ceil(reach))+1), func(m int) bool {
		f := n.rims[m]
		if !n.tells(i, k, f.item, m) {
			return true
		}
		g := between(e, f)
		touching := g.width <= float64(geom.Touch) && (i != f.item || !e.round)
		if g.width > reach || g.width < -float64(geom.Touch) || i == f.item && g.width <= float64(geom.Touch) {
			return true
		}
		x, y := (g.px+g.qx)/2, (g.py+g.qy)/2
		if !n.empty(x, y, g.width/2) || !touching && outlines != nil && !n.paper(x, y, outlines) {
			return true
		}
		if touching && n.overlap(i, f.item, g) {
			return true
		}
		found = append(found, link{i, f.item, g})
		return true
	})
	return found
}

// tells reports whether the pair of rim k of item i and rim m of item j is to be
// looked at from here.
func (n *neighbourhood) tells(i, k, j, m int) bool {
	a, b := n.items[i], n.items[j]
	switch {
	case i == j:
		return k < m
	case a.owner != b.owner:
		return a.owner < b.owner
	}
	return geom.Point{}.Less(b.shift)
}

// overlap reports whether two outlines that touch do more than that: whether
// their rims cross or one holds the other. Discs that overlap are known by
// their negative gap.
func (n *neighbourhood) overlap(i, j int, g gap) bool {
	a, b := n.items[i], n.items[j]
	s, t := n.cuts[a.owner].Shape, n.cuts[b.owner].Shape
	if s.Round() && t.Round() {
		return false
	}
	for p := n.first[i]; p < n.first[i+1]; p++ {
		for q := n.first[j]; q < n.first[j+1]; q++ {
			e, f := n.rims[p], n.rims[q]
			if !e.round && !f.round && crossing(e, f) || between(e, f).width < -float64(geom.Touch) {
				return true
			}
		}
	}
	inner := geom.Point{X: geom.Length(math.Round(g.px)), Y: geom.Length(math.Round(g.py))}
	return s.Contains(t.Bounds().Centre().Sub(a.shift).Add(b.shift)) && t.Contains(inner.Sub(b.shift)) && s.Contains(inner.Sub(a.shift)) &&
		a.box.HoldsBox(b.box)
}

// merged drops what tells the same narrow place again: two webs between the same
// items, equally wide, with the paper between them no wider. Straight rims that
// run side by side make many of these.
func (n *neighbourhood) merged(found []link) []link {
	type pair struct{ a, b int }
	kept := map[pair][]link{}
	var out []link
	for _, l := range found {
		again := false
		for _, o := range kept[pair{l.a, l.b}] {
			if n.samePlace(l, o) {
				again = true
				break
			}
		}
		if !again {
			kept[pair{l.a, l.b}] = append(kept[pair{l.a, l.b}], l)
			out = append(out, l)
		}
	}
	return out
}

func (n *neighbourhood) samePlace(l, o link) bool {
	if l.width-o.width > float64(geom.Touch) {
		return false
	}
	x, y := (l.px+l.qx+o.px+o.qx)/4, (l.py+l.qy+o.py+o.qy)/4
	radius := l.width/2 + float64(geom.Touch)
	return !n.empty(x, y, radius+2*float64(geom.Grid))
}

// AcrossJoint returns the narrowest web between the cut-outs of one placement
// and those of the next, which lies off by way. Its width is negative where
// round holes overlap and zero where outlines do.
func AcrossJoint(cuts []pattern.CutOut, way geom.Point) Web {
	least := link{gap: gap{width: math.Inf(1)}}
	if len(cuts) == 0 {
		return Web{}
	}
	here := around(cuts, 0)
	for reach := float64(geom.Millimetre); ; reach *= 4 {
		for i := range cuts {
			for k := here.first[i]; k < here.first[i+1]; k++ {
				e := here.rims[k].moved(way)
				box := boxAround(e.ax, e.ay, e.r+reach)
				if !e.round {
					box = box.Union(boxAround(e.bx, e.by, reach))
				}
				here.index.Visit(box, func(m int) bool {
					if g := between(here.rims[m], e); g.width < least.width {
						least = link{here.rims[m].item, i, g}
					}
					return true
				})
			}
		}
		if least.width <= reach || reach > float64(geom.Metre) {
			break
		}
	}
	w := here.web(least)
	w.Width = geom.Length(math.Round(least.width))
	return w
}

// moved returns the rim moved by d.
func (e rim) moved(d geom.Point) rim {
	x, y := float64(d.X), float64(d.Y)
	e.ax, e.ay, e.bx, e.by = e.ax+x, e.ay+y, e.bx+x, e.by+y
	return e
}
