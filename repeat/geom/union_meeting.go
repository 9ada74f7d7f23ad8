package geom

// meeting returns the arrangement of those solids that meet another, lie in
// another, or meet a copy of themselves. All others are boundaries as they are.
func meeting(t torus, solids []solid) arrangement {
	n := len(solids)
	a := arrangement{
		t: t, rings: make([]Ring, n), boxes: make([]Box, n),
		hot: make([][]bool, n), in: make([]bool, n),
	}
	for i, s := range solids {
		a.rings[i], a.boxes[i] = s.ring, s.box
	}
	a.grid = boxGrid(t, a.boxes)
	hot := func(i int32) []bool {
		if a.hot[i] == nil {
			a.hot[i] = make([]bool, len(a.rings[i]))
		}
		return a.hot[i]
	}
	var near nearness
	for _, part := range inParts(a.grid.nx*a.grid.ny, fewCells, a.overlaps) {
		for _, o := range part {
			i, j := o.i, o.j
			shared := a.boxes[i].Grown(Snap).Intersect(a.boxes[j].Moved(o.shift).Grown(Snap))
			if near.mark(a.rings[i], a.rings[j], o.shift, shared, func() ([]bool, []bool) { return hot(i), hot(j) }) ||
				a.nested(i, j, o.shift) || a.nested(j, i, o.shift.Neg()) {
				a.in[i], a.in[j] = true, true
			}
		}
	}
	for i, s := range solids {
		switch {
		case s.knotty:
			a.hot[i] = nil
		case a.in[i]:
			hot(int32(i))
		}
	}
	return a
}

// fewCells is the number of cells that are not worth a part of their own.
const fewCells = 4096

// A boxPair is two boxes that come within Snap of each other, that of j moved.
type boxPair struct {
	i, j  int32
	shift Point
}

// overlaps returns the pairs that the cells from … to tell of.
func (a arrangement) overlaps(from, to int) []boxPair {
	var all []boxPair
	a.grid.pairsIn(from, to, func(i, j int32, shift Point) {
		b, c := &a.boxes[i], &a.boxes[j]
		if b.Min.X-c.Max.X-shift.X <= 2*Snap && c.Min.X+shift.X-b.Max.X <= 2*Snap &&
			b.Min.Y-c.Max.Y-shift.Y <= 2*Snap && c.Min.Y+shift.Y-b.Max.Y <= 2*Snap {
			all = append(all, boxPair{i, j, shift})
		}
	})
	return all
}

// boxGrid returns the grid of the boxes, each grown by Snap.
func boxGrid(t torus, boxes []Box) *grid {
	g := newGrid(t, len(boxes), meanSide(boxes))
	covers := make([]cover, len(boxes))
	for i, b := range boxes {
		covers[i] = g.box(b.Grown(Snap))
	}
	g.fill(covers)
	return g
}

// nested reports whether ring j, moved by the shift, lies in ring i. The two must
// not meet.
func (a arrangement) nested(i, j int32, shift Point) bool {
	return a.boxes[i].HoldsBox(a.boxes[j].Moved(shift)) && a.rings[i].Winding(a.rings[j][0].Add(shift)) != 0
}

// nearness finds the segments of two rings that come within Snap of each other.
// It keeps its lists from call to call.
type nearness struct{ first, second []int32 }

// tooMany is the number of pairs of segments above which all of them are taken
// to be near: the arrangement sorts them out faster.
const tooMany = 1 << 14

// mark marks the near segments of p and of q moved by shift, and reports whether
// there are any. Nothing comes near outside of shared.
func (n *nearness) mark(p, q Ring, shift Point, shared Box, hot func() (p, q []bool)) bool {
	n.first = segmentsIn(p, shared, n.first[:0])
	if len(n.first) == 0 {
		return false
	}
	n.second = segmentsIn(q, shared.Moved(shift.Neg()), n.second[:0])
	if len(n.second) == 0 {
		return false
	}
	hotP, hotQ := hot()
	if len(n.first)*len(n.second) > tooMany {
		for _, i := range n.first {
			hotP[i] = true
		}
		for _, j := range n.second {
			hotQ[j] = true
		}
		return true
	}
	met := false
	for _, i := range n.first {
		a, b := p[(int(i)+len(p)-1)%len(p)], p[i]
		for _, j := range n.second {
			c, d := q[(int(j)+len(q)-1)%len(q)].Add(shift), q[j].Add(shift)
			if (!hotP[i] || !hotQ[j] || !met) && nearby(a, b, c, d) {
				hotP[i], hotQ[j], met = true, true, true
			}
		}
	}
	return met
}

// segmentsIn appends the last points of the segments whose boxes meet b.
func segmentsIn(r Ring, b Box, to []int32) []int32 {
	p := r[len(r)-1]
	for i, q := range r {
		if !outside(p, q, b) {
			to = append(to, int32(i))
		}
		p = q
	}
	return to
}

// outside reports whether the box of p and q misses b.
func outside(p, q Point, b Box) bool {
	return p.X < b.Min.X && q.X < b.Min.X || p.X > b.Max.X && q.X > b.Max.X ||
		p.Y < b.Min.Y && q.Y < b.Min.Y || p.Y > b.Max.Y && q.Y > b.Max.Y
}
