package stencil

import (
	"math"

	"tsugime/repeat/geom"
)

// pulled pulls a way tight like a string: it keeps as few of its points as leave
// every straight piece at the clearance, or at what the way itself had there.
func (n *neighbourhood) pulled(path []geom.Point, clearance float64) []geom.Point {
	if len(path) < 3 {
		return path
	}
	line := []geom.Point{path[0]}
	for i := 0; i < len(path)-1; {
		// Double the stride while the piece is clear, then halve to the last that is.
		free := 1
		for stride := 2; i+stride/2 < len(path)-1; stride *= 2 {
			s := min(stride, len(path)-1-i)
			if !n.passes(path[i], path[i+s], clearance) {
				free = n.farthestFree(path, i, free, s, clearance)
				break
			}
			free = s
		}
		i += free
		line = append(line, path[i])
	}
	return line
}

// farthestFree searches between a free stride and one that is not.
func (n *neighbourhood) farthestFree(path []geom.Point, i, free, not int, clearance float64) int {
	for not-free > 1 {
		middle := (free + not) / 2
		if n.passes(path[i], path[i+middle], clearance) {
			free = middle
		} else {
			not = middle
		}
	}
	return free
}

func (n *neighbourhood) passes(a, b geom.Point, clearance float64) bool {
	piece := rim{ax: float64(a.X), ay: float64(a.Y), bx: float64(b.X), by: float64(b.Y)}
	least, ok := clearance-2*grain, true
	pieces := boxesAlong(a, b, clearance)
	for i := 0; i < pieces.n && ok; i++ {
		n.index.Visit(pieces.box(i), func(k int) bool {
			ok = pieceClear(piece, n.rims[k]) >= least
			return ok
		})
	}
	return ok
}

// clearOf returns the distance in nanometres between the straight piece from a
// to b and the nearest cut-out, at most reach beyond what is needed; it is
// negative where the piece runs within a disc and zero where it crosses an
// outline.
func (n *neighbourhood) clearOf(a, b geom.Point, reach float64) float64 {
	piece := rim{ax: float64(a.X), ay: float64(a.Y), bx: float64(b.X), by: float64(b.Y)}
	least := reach
	pieces := boxesAlong(a, b, reach)
	for i := range pieces.n {
		n.index.Visit(pieces.box(i), func(k int) bool {
			least = min(least, pieceClear(piece, n.rims[k]))
			return true
		})
	}
	return least
}

// pieceClear is the distance from a straight piece to a rim; within a disc it is
// negative by how deep it goes.
func pieceClear(piece, e rim) float64 {
	if e.round {
		x, y := piece.nearest(e.ax, e.ay)
		return math.Hypot(x-e.ax, y-e.ay) - e.r
	}
	return pieces(piece, e).width
}

// A boxRow covers a long slanted piece by a row of boxes, so that a search stays
// by the line.
type boxRow struct {
	a, d  geom.Point
	n     int
	grown geom.Length
}

func boxesAlong(a, b geom.Point, reach float64) boxRow {
	d := b.Sub(a)
	return boxRow{a, d, 1 + int(min(d.X.Abs(), d.Y.Abs())/max(geom.Length(reach), geom.Millimetre)), geom.Length(math.Ceil(reach))}
}

func (r boxRow) box(i int) geom.Box {
	if r.n == 1 {
		return geom.BoxOf(r.a, r.a.Add(r.d)).Grown(r.grown)
	}
	return geom.BoxOf(r.at(i), r.at(i+1)).Grown(r.grown)
}

func (r boxRow) at(i int) geom.Point {
	return r.a.Add(geom.Point{X: r.d.X * geom.Length(i) / geom.Length(r.n), Y: r.d.Y * geom.Length(i) / geom.Length(r.n)})
}

// Below reports whether p lies beyond the joint line as seen from the placement
// before: on the line's lower side. Beyond its ends the line goes on level.
func (j Joint) Below(p geom.Point) bool { return divider{j.Line, geom.BoxOf(j.Line...)}.below(p) }

// A divider is a joint line with its box: most places are beside the box and
// need no look at the line.
type divider struct {
	line []geom.Point
	box  geom.Box
}

func (d divider) below(p geom.Point) bool {
	switch {
	case d.box.Empty():
		return p.Y >= 0
	case p.Y < d.box.Min.Y:
		return false
	case p.Y > d.box.Max.Y:
		return true
	}
	first, last := d.line[0], d.line[len(d.line)-1]
	below := false
	if p.X < first.X && p.Y >= first.Y || p.X >= last.X && p.Y >= last.Y {
		below = true
	}
	// Count the pieces straight above p: an odd count puts it below.
	for i, b := range d.line[1:] {
		a := d.line[i]
		if (a.X > p.X) == (b.X > p.X) || min(a.Y, b.Y) > p.Y {
			continue
		}
		side := geom.Orient(a, b, p)
		if b.X > a.X && side >= 0 || b.X < a.X && side <= 0 {
			below = !below
		}
	}
	return below
}

// firstBelow reports whether p is the first of its copies a step apart that lies
// below the line. Of all copies exactly one is, even where a line drawn by hand
// meets its copy and is passed several times.
func (d divider) firstBelow(p geom.Point, step geom.Length) bool {
	if !d.below(p) {
		return false
	}
	for p.Y -= step; p.Y >= d.box.Min.Y; p.Y -= step {
		if d.below(p) {
			return false
		}
	}
	return !d.below(p)
}
