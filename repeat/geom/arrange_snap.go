package geom

import (
	"cmp"
	"errors"
	"math"
)

// A piece is a straight part of a ring, or a run: a part of a ring that nothing
// comes near, taken as one.
type piece struct {
	a, b Point
	ring int32
	run  int32 // index+1 into runs; 0 for a straight piece
	// fresh pieces were made by the last round of splitting.
	fresh bool
}

// A run is the points from .. to of a ring, counted on past its end.
type run struct {
	ring     Ring
	from, to int
}

func (r run) at(i int) Point { return r.ring[i%len(r.ring)] }

// A cut is a place where a piece is to be split.
type cut struct {
	piece int32
	at    Point
}

// maxRounds bounds the rounds of splitting. Five were the most ever needed.
const maxRounds = 64

var errRestless = errors.New("union: the lines don't come to rest on the grid; move one of the shapes that nearly coincide")

// snapped splits straight pieces where they cross or touch, each crossing going
// to the nearest grid point, until no piece crosses another and no end lies on one
// or within half a grid step of it. Pieces keep their order.
func snapped(t torus, pieces []piece) ([]piece, error) {
	for range maxRounds {
		cuts := crossings(t, pieces)
		if len(cuts) == 0 {
			return pieces, nil
		}
		pieces = split(pieces, cuts)
	}
	return nil, errRestless
}

// crossings returns where pieces are to be split. Only pairs with a fresh piece
// are looked at.
func crossings(t torus, pieces []piece) []cut {
	g := pieceGrid(t, pieces)
	var cuts []cut
	for _, part := range inParts(g.nx*g.ny, fewCells, func(from, to int) []cut { return cutsIn(g, pieces, from, to) }) {
		cuts = append(cuts, part...)
	}
	return cuts
}

// cutsIn returns the cuts that the cells from … to tell of.
func cutsIn(g *grid, pieces []piece, from, to int) []cut {
	var cuts []cut
	g.pairsIn(from, to, func(i, j int32, shift Point) {
		p, q := &pieces[i], &pieces[j]
		if p.run|q.run != 0 || !p.fresh && !q.fresh {
			return
		}
		c, d := q.a.Add(shift), q.b.Add(shift)
		if max(p.a.X, p.b.X) < min(c.X, d.X) || max(c.X, d.X) < min(p.a.X, p.b.X) ||
			max(p.a.Y, p.b.Y) < min(c.Y, d.Y) || max(c.Y, d.Y) < min(p.a.Y, p.b.Y) {
			return
		}
		meet(p.a, p.b, c, d, func(at Point, first bool) {
			if first {
				cuts = append(cuts, cut{i, at})
			} else {
				cuts = append(cuts, cut{j, at.Sub(shift)})
			}
		})
	})
	return cuts
}

// pieceGrid returns the grid of the straight pieces in the cells where one is
// fresh; a run is put in as its
// first point only and left out by whoever asks.
func pieceGrid(t torus, pieces []piece) *grid {
	var side float64
	for _, p := range pieces {
		if p.run == 0 {
			side += float64((p.b.X - p.a.X).Abs() + (p.b.Y - p.a.Y).Abs())
		}
	}
	g := newGrid(t, len(pieces), side/float64(2*len(pieces)))
	covers := make([]cover, len(pieces))
	for i, p := range pieces {
		if p.run != 0 {
			p.b = p.a
		}
		covers[i] = g.line(p.a, p.b)
		if p.fresh {
			g.mark(covers[i])
		}
	}
	g.fill(covers)
	return g
}

// meet tells where the line ab and the line cd must be split so that they meet
// in ends only; first says that it is ab. A line that runs through the grid square
// around an end of the other is led through that end, which keeps lines from
// creeping along each other (J. D. Hobby, Practical segment intersection with
// finite precision output, 1999). Every test is exact; the crossing of two lines is
// rounded to the grid.
func meet(a, b, c, d Point, split func(at Point, first bool)) {
	o1, o2 := Orient(a, b, c), Orient(a, b, d)
	o3, o4 := Orient(c, d, a), Orient(c, d, b)
	led := false
	lead := func(p, a, b Point, o int64, first bool) {
		if through(p, a, b, o) {
			split(p, first)
			led = true
		}
	}
	lead(c, a, b, o1, true)
	lead(d, a, b, o2, true)
	lead(a, c, d, o3, false)
	lead(b, c, d, o4, false)
	if led || !opposite(o1, o2) || !opposite(o3, o4) {
		return
	}
	u := float64(o3) / (float64(o3) - float64(o4)) // along ab
	at := a.Add(Point{halfUp(u * float64(b.X-a.X)), halfUp(u * float64(b.Y-a.Y))})
	if at != a && at != b {
		split(at, true)
	}
	if at != c && at != d {
		split(at, false)
	}
}

// halfUp rounds to the grid, halves towards more x or y whichever way a line runs.
func halfUp(v float64) Length { return Length(math.Floor(v + 0.5)) }

func opposite(o1, o2 int64) bool { return o1 > 0 && o2 < 0 || o1 < 0 && o2 > 0 }

// through reports whether the line ab runs through the grid square around p, which
// is no end of it; o is Orient(a, b, p). A square has its left and upper edges and
// the corner between them, so that each place is in one square.
func through(p, a, b Point, o int64) bool {
	if p == a || p == b ||
		p.X < min(a.X, b.X) || p.X > max(a.X, b.X) || p.Y < min(a.Y, b.Y) || p.Y > max(a.Y, b.Y) {
		return false
	}
	dx, dy := b.X-a.X, b.Y-a.Y
	// The line is o/|ab| from p, and a corner of the square is as far from p in the
	// same direction as half of this is.
	span := int64(dx.Abs() + dy.Abs())
	side := max(o, -o)
	if side < span-side {
		return true
	}
	// The line grazes a corner: is it the one that belongs to the square?
	return side == span-side && (o > 0 && dx > 0 && dy < 0 || o < 0 && dx < 0 && dy > 0)
}

// split returns the pieces split at the cuts.
func split(pieces []piece, cuts []cut) []piece {
	cuts = sorted(cuts, len(pieces), func(c *cut) int32 { return c.piece }, func(p, q cut) int {
		of := pieces[p.piece]
		way := of.b.Sub(of.a)
		if c := cmp.Compare(p.at.Sub(of.a).Dot(way), q.at.Sub(of.a).Dot(way)); c != 0 {
			return c
		}
		return cmp.Or(cmp.Compare(p.at.Y, q.at.Y), cmp.Compare(p.at.X, q.at.X))
	})
	out := make([]piece, 0, len(pieces)+len(cuts))
	for i, p := range pieces {
		if len(cuts) == 0 || int(cuts[0].piece) != i {
			p.fresh = false
			out = append(out, p)
			continue
		}
		at := p.a
		for len(cuts) > 0 && int(cuts[0].piece) == i {
			if to := cuts[0].at; to != at {
				out = append(out, piece{a: at, b: to, ring: p.ring, fresh: true})
				at = to
			}
			cuts = cuts[1:]
		}
		if at != p.b {
			out = append(out, piece{a: at, b: p.b, ring: p.ring, fresh: true})
		}
	}
	return out
}

// winding returns how often the snapped pieces of one ring go around the place
// just above p on the sheet and a still smaller bit to its right. p may be an end
// of pieces but lies on no other. It is exact.
func winding(pieces []piece, runs []run, p Point) int {
	n := 0
	for _, s := range pieces {
		if s.run == 0 {
			n += crossing(s.a, s.b, p)
			continue
		}
		r := runs[s.run-1]
		for i := r.from; i < r.to; i++ {
			n += crossing(r.at(i), r.at(i+1), p)
		}
	}
	return n
}

// crossing is what the line ab adds to the winding about the place just above p:
// ±1 where it crosses the level of that place to its right.
func crossing(a, b, p Point) int {
	if (a.Y >= p.Y) == (b.Y >= p.Y) {
		return 0
	}
	turn := 1
	if b.Y < a.Y {
		turn = -1
	}
	switch p {
	case a:
		if b.X > p.X {
			return turn
		}
		return 0
	case b:
		if a.X > p.X {
			return turn
		}
		return 0
	}
	if side := Orient(a, b, p); side > 0 && turn > 0 || side < 0 && turn < 0 {
		return turn
	}
	return 0
}

// meanSide returns half the mean of width plus height of the boxes.
func meanSide(boxes []Box) float64 {
	var sum float64
	for _, b := range boxes {
		sum += float64(b.Width()) + float64(b.Height())
	}
	return math.Max(1, sum/float64(2*max(1, len(boxes))))
}
