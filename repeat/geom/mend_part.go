package geom

import "math"

// A flatPiece is one of the straight pieces that stand for a curve: it runs from
// the parameter t0 to t1.
type flatPiece struct {
	of     *curve
	p, q   Point
	t0, t1 float64
}

// parted returns what is inside by how often the contours go around it. Which
// parts bound it is told by the exact arrangement of their straight pieces; what the bounding
// pieces stand for is taken back from the curves, whole where they are whole.
func parted(contours [][]curve, inside func(cover layer) bool) (Outline, error) {
	rings, pieces := flattened(contours)
	lines, err := enclosed(tangleOf(rings), len(rings), inside)
	if err != nil {
		return nil, err
	}
	starts, ends := make(map[Point][]int32, len(pieces)), make(map[Point][]int32, len(pieces))
	for i, f := range pieces {
		starts[f.p] = append(starts[f.p], int32(i))
		ends[f.q] = append(ends[f.q], int32(i))
	}
	w := weaver{pieces, starts, ends}
	o := make(Outline, 0, len(lines))
	for _, b := range lines {
		for _, loop := range loops(b.Points) {
			o = append(o, w.contour(loop))
		}
	}
	return o, nil
}

// loops parts a line that touches itself into lines that don't, one for each time
// that it comes back to a place.
func loops(line Ring) []Ring {
	var parts []Ring
	seen := make(map[Point]int, len(line))
	var open Ring
	for _, p := range line {
		if k, back := seen[p]; back {
			parts = append(parts, append(Ring(nil), open[k:]...))
			for _, q := range open[k:] {
				delete(seen, q)
			}
			open = open[:k]
		}
		seen[p] = len(open)
		open = append(open, p)
	}
	return append(parts, open)
}

// nonZero, positive and odd are the rules by which parted tells what is inside.
func nonZero(cover layer) bool  { return cover != 0 }
func odd(cover layer) bool      { return cover%2 != 0 }
func positive(cover layer) bool { return cover > 0 }

// flattened returns the contours as straight pieces, and the pieces one by one.
func flattened(contours [][]curve) ([]Ring, []flatPiece) {
	rings := make([]Ring, 0, len(contours))
	var pieces []flatPiece
	var run Ring
	for _, curves := range contours {
		var ring Ring
		for k := range curves {
			v := &curves[k]
			run = v.evenPoints(append(run[:0], v.from))
			n := float64(len(run) - 1)
			for i := 1; i < len(run); i++ {
				if run[i] == run[i-1] {
					continue
				}
				ring = append(ring, run[i])
				pieces = append(pieces, flatPiece{v, run[i-1], run[i], float64(i-1) / n, float64(i) / n})
			}
		}
		rings = append(rings, ring)
	}
	return rings, pieces
}

// evenPoints appends the ends of the even pieces that stand for c within Chord,
// repeated ones too.
func (c *curve) evenPoints(run Ring) Ring {
	n := c.flatCount()
	for i := 1; i < n; i++ {
		run = append(run, c.point(c.from, float64(i)/float64(n)))
	}
	return append(run, c.End)
}

// flatCount returns into how many even pieces c is cut.
func (c *curve) flatCount() int {
	switch c.Kind {
	case Arc:
		_, _, r, _, turn := c.arc(c.from)
		step := math.Pi / 2
		if r > float64(Chord) {
			step = min(step, math.Sqrt(8*float64(Chord)/r))
		}
		return max(1, int(math.Ceil(math.Abs(turn)/step)))
	case Cubic:
		return cubicPieces(c.from, c.Segment, Chord)
	}
	return 1
}

// A weaver takes the lines of an arrangement back to the curves they stand for.
type weaver struct {
	pieces       []flatPiece
	starts, ends map[Point][]int32 // the pieces that start and end at a place
}

// A thread is a part of a curve, from t0 to t1, which may run backwards.
type thread struct {
	of       *curve // nil for a line that no curve was found for
	t0, t1   float64
	from, to Point
}

// contour returns the contour of the line through the points.
func (w weaver) contour(points Ring) Contour {
	threads := make([]thread, 0, 16)
	for i, p := range points {
		t := w.thread(p, points[(i+1)%len(points)])
		if n := len(threads); n > 0 && threads[n-1].joins(t) {
			threads[n-1].t1, threads[n-1].to = t.t1, t.to
			continue
		}
		threads = append(threads, t)
	}
	if n := len(threads); n > 1 && threads[n-1].joins(threads[0]) {
		threads[0].t0, threads[0].from = threads[n-1].t0, threads[n-1].from
		threads = threads[:n-1]
	}
	for i := range threads {
		threads[i].meet(&threads[(i+1)%len(threads)])
	}
	c := Contour{Start: threads[0].from, Segments: make([]Segment, len(threads))}
	for i, t := range threads {
		c.Segments[i] = t.segment()
	}
	return c
}

// joins reports whether u goes on where t ends, on the same curve the same way.
func (t thread) joins(u thread) bool {
	return t.of != nil && t.of == u.of && math.Abs(t.t1-u.t0) < 1e-9 && (t.t0 < t.t1) == (u.t0 < u.t1)
}

// meet moves the place where t ends and u starts from the crossing of their straight
// pieces to that of their curves, by Newton's method; where that leads elsewhere it
// stays.
func (t *thread) meet(u *thread) {
	if t.of == nil || u.of == nil || t.of == u.of || t.to == t.of.End || t.to == t.of.from {
		return
	}
	a, b := t.t1, u.t0
	for range 8 {
		ax, ay := t.of.at(t.of.from, a)
		bx, by := u.of.at(u.of.from, b)
		ux, uy := t.of.speed(a)
		vx, vy := u.of.speed(b)
		det := float64(ux*vy) - float64(uy*vx)
		if math.Abs(det) < 1e-6*math.Hypot(ux, uy)*math.Hypot(vx, vy) {
			return
		}
		dx, dy := bx-ax, by-ay
		a += (float64(dx*vy) - float64(dy*vx)) / det
		b += (float64(dx*uy) - float64(dy*ux)) / det
	}
	at := t.of.point(t.of.from, a)
	inside := func(s float64) bool { return s > 0 && s < 1 }
	if inside(a) && inside(b) && at.Distance(t.to) <= 4*Chord &&
		(a > t.t0) == (t.t1 > t.t0) && (b < u.t1) == (u.t0 < u.t1) {
		t.t1, t.to, u.t0, u.from = a, at, b, at
	}
}

// segment returns what t is.
func (t thread) segment() Segment {
	switch {
	case t.of == nil:
		return Segment{Kind: Line, End: t.to}
	case t.t0 < t.t1:
		return t.of.part(t.t0, t.t1, t.from, t.to)
	}
	back := curve{t.to, t.of.part(t.t1, t.t0, t.to, t.from)}.back()
	return back.Segment
}

// thread finds the curve that the piece from p to q is part of: a straight piece
// that starts or ends at one of them and passes the other.
func (w weaver) thread(p, q Point) thread {
	best, least := thread{from: p, to: q}, 3*float64(Grid)
	try := func(ids []int32) {
		for _, id := range ids {
			f := w.pieces[id]
			s, far := f.place(p)
			u, farther := f.place(q)
			if off := far + farther; off < least && s != u {
				best.of, best.t0, best.t1, least = f.of, s, u, off
			}
		}
	}
	try(w.starts[p])
	try(w.ends[q])
	try(w.starts[q])
	try(w.ends[p])
	return best
}

// place returns the parameter of f's curve at p, and how far p is from f.
func (f flatPiece) place(p Point) (t, far float64) {
	switch p {
	case f.p:
		return f.t0, 0
	case f.q:
		return f.t1, 0
	}
	way, d := f.q.Sub(f.p), p.Sub(f.p)
	share := max(0, min(1, float64(way.Dot(d))/float64(way.Dot(way))))
	far = math.Hypot(float64(d.X)-share*float64(way.X), float64(d.Y)-share*float64(way.Y))
	return f.t0 + share*(f.t1-f.t0), far
}
