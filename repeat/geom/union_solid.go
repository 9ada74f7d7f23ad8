package geom

import "fmt"

// A solid is a ring that does not cross itself: around what is cut out its area
// is positive, around a hole in it negative.
type solid struct {
	ring Ring
	box  Box
	// knotty rings came out of a tangle or come near themselves; all of their
	// segments are hot.
	knotty bool
	// backward rings are still to be turned: their area is negative.
	backward bool
}

// appendSolids appends the lines around what the rings of one shape enclose by the
// non-zero rule.
func (l *looker) appendSolids(solids []solid, shape []Ring) ([]solid, error) {
	first, plain := len(solids), true
	var all Box
	for _, r := range shape {
		if len(r) < 3 {
			continue
		}
		seen := look(r)
		if seen.repeats {
			if r = distinct(r); len(r) < 3 {
				continue
			}
			seen = look(r)
		}
		if seen.box.Width() > MaxSpan/2 || seen.box.Height() > MaxSpan/2 {
			return nil, fmt.Errorf("a ring is %s × %s mm; keep it within %s mm each way",
				seen.box.Width(), seen.box.Height(), MaxSpan/2)
		}
		plain = plain && (first == len(solids) || !all.Grown(Snap).Meets(seen.box)) && (seen.convex || l.apart(r))
		if len(shape) > 1 {
			all = all.Union(seen.box)
		}
		solids = append(solids, solid{ring: r, box: seen.box, backward: seen.area2 < 0})
	}
	if !plain {
		lines, err := untangled(solids[first:])
		return append(solids[:first], lines...), err
	}
	for i, s := range solids[first:] {
		if s.backward {
			solids[first+i].ring, solids[first+i].backward = reversed(s.ring), false
		}
	}
	return solids, nil
}

// untangled returns the lines around what the rings of one shape enclose.
func untangled(tangle []solid) ([]solid, error) {
	a := arrangement{hot: make([][]bool, len(tangle)), first: len(tangle)}
	var all Box
	for _, s := range tangle {
		a.rings, a.boxes, a.in = append(a.rings, s.ring), append(a.boxes, s.box), append(a.in, true)
		all = all.Union(s.box)
	}
	var err error
	if a.t, err = newTorus(all, nil); err != nil {
		return nil, err
	}
	a.grid = boxGrid(a.t, a.boxes)
	lines, _, err := a.boundaries(func(cover layer) bool { return cover != 0 })
	if err != nil {
		return nil, err
	}
	solids := make([]solid, 0, len(lines))
	for _, b := range lines {
		solids = append(solids, solid{ring: b.Points, box: around(b.Points), knotty: true})
	}
	return solids, nil
}

// distinct returns r without points that repeat the one before.
func distinct(r Ring) Ring {
	if len(r) == 0 {
		return nil
	}
	repeats := 0
	before := r[len(r)-1]
	for _, p := range r {
		if p == before {
			repeats++
		}
		before = p
	}
	if repeats == 0 {
		return r
	}
	kept := make(Ring, 0, len(r))
	before = r[len(r)-1]
	for _, p := range r {
		if p != before {
			kept = append(kept, p)
		}
		before = p
	}
	return kept
}

// around is Bounds for rings of many points.
func around(r Ring) Box {
	lo, hi := r[0], r[0]
	for _, p := range r[1:] {
		lo = Point{min(lo.X, p.X), min(lo.Y, p.Y)}
		hi = Point{max(hi.X, p.X), max(hi.Y, p.Y)}
	}
	return Box{lo, hi, true}
}

// aroundAll returns the box around the solids.
func aroundAll(solids []solid) Box {
	if len(solids) == 0 {
		return Box{}
	}
	all := solids[0].box
	for i := range solids {
		b := &solids[i].box
		all.Min = Point{min(all.Min.X, b.Min.X), min(all.Min.Y, b.Min.Y)}
		all.Max = Point{max(all.Max.X, b.Max.X), max(all.Max.Y, b.Max.Y)}
	}
	return all
}

// reversed returns r turning the other way.
func reversed(r Ring) Ring {
	back := make(Ring, len(r))
	for i, p := range r {
		back[len(r)-1-i] = p
	}
	return back
}
