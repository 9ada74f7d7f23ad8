package stencil

import (
	"cmp"
	"slices"
	"sync"

	"tsugime/repeat/geom"
	"tsugime/repeat/pattern"
)

// Between returns the cut-outs of the sheet: the whole motifs in the field that
// lie between the joint line and its copy one step on. Of a motif and its copies
// by the step exactly one is among them, so placements a step apart cover the
// pattern once. They come row by row.
func Between(u pattern.Unit, field Field, joint Joint, step geom.Length) []pattern.CutOut {
	line := geom.BoxOf(joint.Line...)
	window := geom.BoxOf(
		geom.Point{X: field.Left, Y: line.Min.Y},
		geom.Point{X: field.Right(), Y: line.Max.Y + step},
	)
	var found []pattern.CutOut
	var order []counted
	j := divider{joint.Line, line}
	for c := range u.In(window) {
		box := c.Shape.Bounds()
		at := j.placeOf(c, step)
		if field.whole(box) && j.firstBelow(at, step) {
			order = append(order, counted{at, c.Motif, len(found)})
			found = append(found, c)
		}
	}
	cuts := make([]pattern.CutOut, len(found))
	for i, c := range read(order) {
		cuts[i] = found[c.number]
	}
	return cuts
}

// counted is the place by which a cut-out is counted, its motif, and which one it is.
type counted struct {
	at     geom.Point
	motif  pattern.ID
	number int
}

// read returns cut-outs row by row. Both halves are put in order side by side.
func read(order []counted) []counted {
	by := func(a, b counted) int {
		return cmp.Or(inReadingOrder(a.at, b.at, a.motif, b.motif), cmp.Compare(a.number, b.number))
	}
	a, b := order[:len(order)/2], order[len(order)/2:]
	var half sync.WaitGroup
	half.Go(func() { slices.SortFunc(a, by) })
	slices.SortFunc(b, by)
	half.Wait()
	all := make([]counted, 0, len(order))
	for len(a) > 0 && len(b) > 0 {
		if by(a[0], b[0]) < 0 {
			all, a = append(all, a[0]), a[1:]
		} else {
			all, b = append(all, b[0]), b[1:]
		}
	}
	return append(append(all, a...), b...)
}

// placeOf returns the place by which a cut-out is counted: its anchor or, where
// the line or a copy of it a step on has the cut-out's corners on both sides, the
// middle of its box, so that the greater part lies on the placement that has it.
// It is the same for all copies a step apart.
func (d divider) placeOf(c pattern.CutOut, step geom.Length) geom.Point {
	box := c.Shape.Bounds()
	if c.Shape.Round() || d.box.Empty() {
		return anchor(c)
	}
	// The copies of the cut-out that meet the line's box.
	first := -floorDiv(box.Max.Y-d.box.Min.Y, step)
	for k := first; box.Min.Y+k*step <= d.box.Max.Y; k++ {
		if d.parts(c.Shape.Outline, geom.Point{Y: k * step}) {
			return box.Centre()
		}
	}
	return anchor(c)
}

// parts reports whether corners of an outline, moved by so much, lie on both sides
// of the line.
func (d divider) parts(o geom.Outline, by geom.Point) bool {
	above, below := false, false
	for _, c := range o {
		at := c.Start
		for i := -1; i < len(c.Segments); i++ {
			if i >= 0 {
				at = c.Segments[i].End
			}
			if d.below(at.Add(by)) {
				below = true
			} else {
				above = true
			}
			if above && below {
				return true
			}
		}
	}
	return false
}

// floorDiv is a/b rounded down, b being positive.
func floorDiv(a, b geom.Length) geom.Length {
	q := a / b
	if a < q*b {
		q--
	}
	return q
}

// partsOf returns what a sheet cuts of the design's cut-outs that one placement
// has: the parts under the same IDs, moved as their motifs are. So a motif that
// stands in the field or not, and on this placement or the next, does so with all
// its parts, whichever sheet has them.
func partsOf(design, sheet pattern.Unit, laid []pattern.CutOut) []pattern.CutOut {
	stands := make(map[pattern.ID]geom.Point, len(design.Motifs))
	for _, m := range design.Motifs {
		stands[m.ID] = m.Placed().Bounds().Min
	}
	parts := make(map[pattern.ID]geom.Shape, len(sheet.Motifs))
	for _, m := range sheet.Motifs {
		parts[m.ID] = m.Placed()
	}
	cuts := make([]pattern.CutOut, 0, len(laid))
	for _, c := range laid {
		if part, ok := parts[c.Motif]; ok {
			by := c.Shape.Bounds().Min.Sub(stands[c.Motif])
			cuts = append(cuts, pattern.CutOut{Shape: part.Moved(by), Motif: c.Motif})
		}
	}
	return cuts
}

// asRead orders cut-outs row by row, as Between returns them.
func asRead(c, d pattern.CutOut) int { return inReadingOrder(anchor(c), anchor(d), c.Motif, d.Motif) }

func inReadingOrder(p, q geom.Point, m, n pattern.ID) int {
	return cmp.Or(cmp.Compare(p.Y, q.Y), cmp.Compare(p.X, q.X), cmp.Compare(m, n))
}

// anchor is the place by which a cut-out that no line parts is counted to one
// placement or the next. It lies on the cut-out, so a line that goes around the whole has it on the
// right side; the middle of a hook's box may lie across the line.
func anchor(c pattern.CutOut) geom.Point {
	switch {
	case c.Shape.Round():
		return c.Shape.Disc.Centre
	case len(c.Shape.Outline) == 0:
		return geom.Point{}
	}
	return c.Shape.Outline[0].Start
}
