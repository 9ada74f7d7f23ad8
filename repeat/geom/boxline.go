package geom

import "math"

// Cut returns the pieces of a line through points that lie in the box, each through
// two points at least, in the line's order. Where the line leaves the box it ends on
// the rim, rounded to the nanometre.
func (b Box) Cut(line []Point) [][]Point {
	var pieces [][]Point
	var piece []Point
	end := func() {
		if len(piece) > 1 {
			pieces = append(pieces, piece)
		}
		piece = nil
	}
	if b.Empty() {
		return nil
	}
	for i := 1; i < len(line); i++ {
		from, to, ok := b.within(line[i-1], line[i])
		if !ok {
			end()
			continue
		}
		if len(piece) == 0 || piece[len(piece)-1] != from {
			end()
			piece = append(piece, from)
		}
		if to != from {
			piece = append(piece, to)
		}
		if to != line[i] {
			end()
		}
	}
	end()
	return pieces
}

// within returns what of the way from p to q lies in the box (Liang and Barsky, A
// New Concept and Method for Line Clipping, ACM Transactions on Graphics 3, 1984).
func (b Box) within(p, q Point) (from, to Point, ok bool) {
	way := q.Sub(p)
	enters, leaves := 0.0, 1.0
	for _, side := range [4][2]Length{
		{-way.X, p.X - b.Min.X}, {way.X, b.Max.X - p.X}, {-way.Y, p.Y - b.Min.Y}, {way.Y, b.Max.Y - p.Y},
	} {
		t := float64(side[1]) / float64(side[0])
		switch {
		case side[0] == 0 && side[1] < 0:
			return p, q, false
		case side[0] < 0:
			enters = math.Max(enters, t)
		case side[0] > 0:
			leaves = math.Min(leaves, t)
		}
	}
	if enters > leaves {
		return p, q, false
	}
	at := func(t float64) Point {
		switch t {
		case 0:
			return p
		case 1:
			return q
		}
		on := Point{p.X + way.X.Times(t), p.Y + way.Y.Times(t)}
		return Point{min(max(on.X, b.Min.X), b.Max.X), min(max(on.Y, b.Min.Y), b.Max.Y)}
	}
	return at(enters), at(leaves), true
}
