package stencil

import (
	"cmp"
	"math"
	"slices"

	"tsugime/repeat/geom"
)

// along returns j on the line, measured. What is farther than jointBand counts as
// that far.
func (j Joint) along(n *neighbourhood, line []geom.Point) Joint {
	j.Line, j.Length = line, geom.Length(math.Round(lengthOf(line)))
	for reach := float64(max(j.Widest, geom.Millimetre/4)) + grain; ; reach *= 2 {
		clear := min(reach, float64(jointBand))
		for i, b := range line[1:] {
			clear = min(clear, n.clearOf(line[i], b, max(clear, 0)))
		}
		j.Clearance = geom.Length(math.Round(clear))
		if clear < reach {
			return j
		}
	}
}

// A stretch is a part of a line within one cut-out, by the way from the line's
// start.
type stretch struct {
	from, to      float64
	item          int
	piece         int     // of the line
	begin, finish float64 // as shares of that piece
}

// crossing adds what the line crosses: the clearance is negative by how deep.
func (j Joint) crossing(n *neighbourhood) Joint {
	inside := n.stretches(j.Line, geom.NewIndex(n.boxes))
	if len(inside) == 0 {
		j.Clearance = max(j.Clearance, 0)
		return j
	}
	j.Crossings, j.Crossed, j.Lap = nil, 0, crossingLap
	var deepest, sum float64
	for first := 0; first < len(inside); {
		last, to, depth := first, inside[first].to, 0.0
		for last < len(inside) && inside[last].from <= to+grain {
			o := inside[last]
			to = max(to, o.to)
			depth = max(depth, n.depth(o.item, j.Line[o.piece], j.Line[o.piece+1], o.begin, o.finish))
			last++
		}
		s := inside[first]
		sum, deepest = sum+to-s.from, max(deepest, depth)
		j.Crossings = append(j.Crossings, Crossing{
			From: alongLine(j.Line, s.from), To: alongLine(j.Line, to), Motif: n.cuts[s.item].Motif,
			Width: geom.Length(math.Round(to - s.from)), Depth: geom.Length(math.Round(depth)),
		})
		first = last
	}
	j.Crossed, j.Clearance = geom.Length(math.Round(sum)), -geom.Length(math.Round(deepest))
	return j
}

// stretches returns the parts of a line that lie in cut-outs, in order. shapes
// finds the cut-outs by their boxes.
func (n *neighbourhood) stretches(line []geom.Point, shapes *geom.Index) []stretch {
	var all []stretch
	var way float64
	var met []int
	for i, b := range line[1:] {
		a := line[i]
		length := b.Sub(a).Norm()
		if length == 0 {
			continue
		}
		met = met[:0]
		row := boxesAlong(a, b, 0)
		for k := range row.n {
			shapes.Visit(row.box(k), func(item int) bool {
				met = append(met, item)
				return true
			})
		}
		slices.Sort(met)
		for _, item := range slices.Compact(met) {
			for _, s := range n.chords(item, a, b) {
				all = append(all, stretch{way + s.from*length, way + s.to*length, item, i, s.from, s.to})
			}
		}
		way += length
	}
	slices.SortFunc(all, func(a, b stretch) int {
		return cmp.Or(cmp.Compare(a.from, b.from), cmp.Compare(a.to, b.to), cmp.Compare(a.item, b.item))
	})
	return all
}

// chords returns the parts of the straight piece from a to b that lie in a
// cut-out, as shares of it.
func (n *neighbourhood) chords(item int, a, b geom.Point) []stretch {
	p, d := placeOf(a), placeOf(b).sub(placeOf(a))
	rims := n.rims[n.first[item]:n.first[item+1]]
	if len(rims) == 1 && rims[0].round {
		c, l2 := place{rims[0].ax, rims[0].ay}.sub(p), d.dot(d)
		m, off := c.dot(d)/l2, c.cross(d)/math.Sqrt(l2)
		half := math.Sqrt(max(rims[0].r*rims[0].r-off*off, 0) / l2)
		if from, to := max(m-half, 0), min(m+half, 1); half > 0 && from < to {
			return []stretch{{from: from, to: to}}
		}
		return nil
	}
	cuts := []float64{0, 1}
	for _, e := range rims {
		q := place{e.ax, e.ay}
		side := place{e.bx, e.by}.sub(q)
		across := d.cross(side)
		if across == 0 {
			continue
		}
		t, s := q.sub(p).cross(side)/across, q.sub(p).cross(d)/across
		if t > 0 && t < 1 && s >= -1e-9 && s <= 1+1e-9 {
			cuts = append(cuts, t)
		}
	}
	slices.Sort(cuts)
	var found []stretch
	for i, to := range cuts[1:] {
		from := cuts[i]
		m := p.add(d.times((from + to) / 2))
		switch {
		case to == from || !n.covers(item, m):
		case len(found) > 0 && found[len(found)-1].to == from:
			found[len(found)-1].to = to
		default:
			found = append(found, stretch{from: from, to: to})
		}
	}
	return found
}

// covers reports whether an outline covers a place, by its winding number.
func (n *neighbourhood) covers(item int, p place) bool {
	turns := 0
	for _, e := range n.rims[n.first[item]:n.first[item+1]] {
		if (e.ay > p.y) == (e.by > p.y) {
			continue
		}
		side := place{e.bx - e.ax, e.by - e.ay}.cross(place{p.x - e.ax, p.y - e.ay})
		if e.by > e.ay && side > 0 {
			turns++
		} else if e.by < e.ay && side < 0 {
			turns--
		}
	}
	return turns != 0
}

// depth returns how far from the rim of a cut-out a piece comes at most between
// two shares of it, to a tenth of a micrometre: the distance changes by no more
// than the way (a Lipschitz bound), so a part that can't be deeper is left out.
func (n *neighbourhood) depth(item int, a, b geom.Point, from, to float64) float64 {
	const enough = 0.1 * float64(geom.Micrometre)
	p, d := placeOf(a), placeOf(b).sub(placeOf(a))
	length := d.norm()
	rims := n.rims[n.first[item]:n.first[item+1]]
	off := func(t float64) float64 {
		at, least := p.add(d.times(t)), math.Inf(1)
		for _, e := range rims {
			least = min(least, math.Abs(e.distance(at.x, at.y)))
		}
		return least
	}
	best := 0.0
	var look func(from, to, f, g float64)
	look = func(from, to, f, g float64) {
		best = max(best, f, g)
		if (f+g+(to-from)*length)/2 <= best+enough {
			return
		}
		m := (from + to) / 2
		h := off(m)
		look(from, m, f, h)
		look(m, to, h, g)
	}
	look(from, to, off(from), off(to))
	return best
}

// alongLine returns the place so far from the line's start.
func alongLine(line []geom.Point, way float64) geom.Point {
	for i, b := range line[1:] {
		d := b.Sub(line[i])
		l := d.Norm()
		if way <= l && l > 0 {
			return placeOf(line[i]).add(placeOf(d).times(way / l)).point()
		}
		way -= l
	}
	return line[len(line)-1]
}
