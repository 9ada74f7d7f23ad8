package outlinefile

import (
	"cmp"
	"fmt"
	"slices"

	"tsugime/repeat/geom"
)

// A group is the lines of one layer: those that are closed, and those that are to be
// chained.
type group struct {
	layer  string
	closed []line
	open   []line
}

// A line is one line of a file on the grid and what it was.
type line struct {
	geom.Contour
	kind string
	line int
}

func (l line) end() geom.Point {
	if n := len(l.Segments); n > 0 {
		return l.Segments[n-1].End
	}
	return l.Start
}

// An assembly collects the lines of a file by layer, in the order of the file.
type assembly struct {
	groups []*group
	byName map[string]*group
}

// group returns the lines of a layer.
func (a *assembly) group(layer string) *group {
	if a.byName == nil {
		a.byName = map[string]*group{}
	}
	g := a.byName[layer]
	if g == nil {
		g = &group{layer: layer}
		a.byName[layer] = g
		a.groups = append(a.groups, g)
	}
	return g
}

func (g *group) add(kind string, number int, t geom.Track) {
	l := line{t.Contour, kind, number}
	if !t.Open || l.end().Sub(l.Start).Norm() <= float64(geom.Chain) && len(l.Segments) > 1 {
		g.closed = append(g.closed, l)
		return
	}
	g.open = append(g.open, l)
}

// pieces makes shapes of the lines, layer by layer.
func (a *assembly) pieces(log *logbook) []Piece {
	var pieces []Piece
	for _, g := range a.groups {
		closed := slices.Concat(g.closed, chained(g.open, log))
		slices.SortStableFunc(closed, func(a, b line) int { return cmp.Compare(a.line, b.line) })
		all := sources(closed, log)
		all = parted(once(all, log))
		loops := make([]loop, len(all))
		for i, t := range all {
			loops[i] = t.loop
		}
		shapes, rims := nested(loops)
		for i, s := range shapes {
			if rim := all[rims[i]]; cuttable(log, rim.line, rim.kind, s) {
				pieces = append(pieces, Piece{s, rim.kind, g.layer, rim.line})
			}
		}
	}
	return pieces
}

// A source is a loop and what it was in the file.
type source struct {
	loop
	kind string
	line int
}

// sources makes each closed line sound.
func sources(closed []line, log *logbook) []source {
	var all []source
	for _, l := range closed {
		o, ok := sound(geom.Outline{l.Contour}, true)
		if !ok {
			tooWide(log, l.line, l.kind, o)
			continue
		}
		if len(o) == 0 {
			log.add(l.line, "%s: it encloses nothing and was left out", l.kind)
		}
		for _, c := range o {
			all = append(all, source{loopOf(c), l.kind, l.line})
		}
	}
	return all
}

// once leaves out loops that are drawn a second time on the same place: by even and
// odd the two would take each other away.
func once(all []source, log *logbook) []source {
	type key struct {
		box      geom.Box
		segments int
		area     int64 // in hundredths of a square millimetre
	}
	seen := map[key]bool{}
	kept := all[:0]
	for _, s := range all {
		k := key{box: s.box, area: int64(s.shape.AreaMM2() * 100)}
		if !s.shape.Round() {
			k.segments = len(s.shape.Outline[0].Segments)
		}
		if seen[k] {
			log.add(s.line, "%s: it is drawn twice on the same place and was taken once", s.kind)
			continue
		}
		seen[k] = true
		kept = append(kept, s)
	}
	return kept
}

// parted brings loops that cross each other to such that don't: what they enclose an
// odd number of times.
func parted(all []source) []source {
	with := make([]int, len(all)) // the first of those that each crosses, by union–find
	for i := range with {
		with[i] = i
	}
	find := func(i int) int {
		for with[i] != i {
			with[i] = with[with[i]]
			i = with[i]
		}
		return i
	}
	boxes, owner := pieceBoxes(all)
	index := geom.NewIndex(boxes)
	asked := map[[2]int]bool{}
	for p := range boxes {
		i := owner[p]
		index.Visit(boxes[p], func(q int) bool {
			j := owner[q]
			if j >= i || find(i) == find(j) || asked[[2]int{i, j}] {
				return true
			}
			asked[[2]int{i, j}] = true
			if cross(all[i].shape, all[j].shape) {
				a, b := find(i), find(j)
				with[max(a, b)] = min(a, b)
			}
			return true
		})
	}
	tangles := map[int][]int{}
	for i := range all {
		tangles[find(i)] = append(tangles[find(i)], i)
	}
	var out []source
	for i, s := range all {
		members := tangles[i]
		if len(members) == 1 {
			out = append(out, s)
		}
		if len(members) < 2 {
			continue
		}
		var o geom.Outline
		for _, m := range members {
			o = append(o, contoursOf(all[m].shape)...)
		}
		o, _ = sound(o, true)
		for _, c := range o {
			out = append(out, source{loopOf(c), fmt.Sprintf("%s and %d that cross it", s.kind, len(members)-1), s.line})
		}
	}
	return out
}

// pieceBoxes returns a box around each piece of each loop, and whose it is.
func pieceBoxes(all []source) (boxes []geom.Box, owner []int) {
	for i, s := range all {
		for _, c := range contoursOf(s.shape) {
			at := c.Start
			for _, piece := range c.Segments {
				one := geom.Outline{{Start: at, Segments: []geom.Segment{piece}}}
				boxes, owner = append(boxes, one.Bounds().Grown(geom.Snap)), append(owner, i)
				at = piece.End
			}
			if at != c.Start {
				boxes, owner = append(boxes, geom.BoxOf(at, c.Start).Grown(geom.Snap)), append(owner, i)
			}
		}
	}
	return boxes, owner
}

// cross reports whether two loops meet.
func cross(a, b geom.Shape) bool {
	if a.Round() && b.Round() {
		d := a.Disc.Centre.Sub(b.Disc.Centre).Norm()
		r, s := float64(a.Disc.Diameter)/2, float64(b.Disc.Diameter)/2
		return d <= r+s+float64(geom.Snap) && d+min(r, s)+float64(geom.Snap) >= max(r, s)
	}
	both := slices.Concat(contoursOf(a), contoursOf(b))
	_, mends := both.Moved(both.Bounds().Centre().Neg()).MendedEvenOdd()
	return slices.ContainsFunc(mends, func(m geom.Mend) bool { return m.Flaw == geom.Crossed })
}
