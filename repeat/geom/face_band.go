package geom

import (
	"math"
	"slices"
)

// A course is one copy of a boundary that runs around the torus.
type course struct {
	line Boundary
	move Point // from the line to the copy
	// over is true where what is left lies above the course.
	over bool
	// How far below the strip's first point the line reaches, with room for
	// rounding: the product with along.
	top, bottom float64
}

// A band is what is left between two courses.
type band struct {
	upper Boundary
	area  float64 // square nanometres in one period
}

// A strip is one period of the torus, cut open along its first course and laid
// so that the courses run more across than along: straight up crosses them.
type strip struct {
	turned  bool
	along   Point // the period that the courses follow
	next    Point // the period from one strip to the one below; zero if there is none
	courses []course
	bands   []band // bands[i] lies below courses[i], where anything is left there
}

// newStrip returns the strip of the boundaries that run around the torus, and
// whether there are any.
func (r Region) newStrip() (*strip, bool) {
	along := r.along()
	if along == (Point{}) {
		return nil, false
	}
	s := &strip{turned: along.Y.Abs() > along.X.Abs(), along: along}
	if s.laid(along).X < 0 {
		s.along = along.Neg()
	}
	if r.t.rank == 2 {
		if s.next = r.t.beside(s.along); s.along.Cross(s.next) < 0 {
			s.next = s.next.Neg()
		}
	}
	for _, b := range r.Boundaries {
		if b.Closed() {
			continue
		}
		// The cut-out lies x to y of the line: below one that follows along.
		c := course{line: b, over: b.Wrap == s.along, top: math.Inf(1), bottom: math.Inf(-1)}
		for _, p := range b.Points {
			d := s.depth(p)
			c.top, c.bottom = math.Min(c.top, d), math.Max(c.bottom, d)
		}
		margin := 1e-9 * (math.Abs(c.top) + math.Abs(c.bottom) + s.along.Norm())
		c.top, c.bottom = c.top-margin, c.bottom+margin
		s.courses = append(s.courses, c.moved(s, s.into(c.middle())))
	}
	rest := s.courses
	if (s.next != Point{}) {
		rest = rest[1:] // all lie between the first and its copy
	}
	slices.SortStableFunc(rest, func(c, d course) int {
		switch {
		case s.below(c, d.middle()):
			return -1
		case s.below(d, c.middle()):
			return 1
		}
		return 0
	})
	s.findBands()
	return s, true
}

// laid returns p in the frame of the strip.
func (s *strip) laid(p Point) Point {
	if s.turned {
		return Point{p.Y, -p.X}
	}
	return p
}

// depth returns how far p lies down the strip.
func (s *strip) depth(p Point) float64 { return cross(s.along, p, Point{}) }

// beside returns a period that makes the lattice together with along, which must
// be no multiple of a shorter one.
func (t torus) beside(along Point) Point {
	m, n := along.Cross(t.b)/t.det, t.a.Cross(along)/t.det // along = m·a + n·b
	// x·m + y·n = ±1 by Euclid; then −y·a + x·b does it.
	x0, y0, x1, y1 := int64(1), int64(0), int64(0), int64(1)
	for n != 0 {
		q := m / n
		m, n = n, m-q*n
		x0, x1 = x1, x0-q*x1
		y0, y1 = y1, y0-q*y1
	}
	return t.at(int32(-y0), int32(x0))
}

func (c course) moved(s *strip, d Point) course {
	c.move = c.move.Add(d)
	down := s.depth(d)
	c.top, c.bottom = c.top+down, c.bottom+down
	return c
}

// middle returns a place on the course that no other one touches, on a grid twice
// as fine.
func (c course) middle() Point {
	return c.line.Points[0].Add(c.line.next(0)).Add(c.move.Times(2))
}

// into returns the way that brings p, on the grid twice as fine, between the first
// course and its copy in the next strip.
func (s *strip) into(p Point) Point {
	if (s.next == Point{}) || len(s.courses) == 0 {
		return Point{}
	}
	first := s.courses[0]
	n := int(math.Floor((first.top - s.depth(p)/2) / s.depth(s.next)))
	way := s.next.Times(n)
	for !s.below(first, p.Add(way.Times(2))) {
		way = way.Add(s.next)
	}
	for s.below(first, p.Add(way.Sub(s.next).Times(2))) {
		way = way.Sub(s.next)
	}
	return way
}

// below reports whether p, on the grid twice as fine, lies below the course. It
// counts how often the way straight up from p crosses it, exactly.
func (s *strip) below(c course, p Point) bool {
	if d := s.depth(p) / 2; d < c.top {
		return false
	} else if d > c.bottom {
		return true
	}
	p = s.laid(p.Sub(c.move.Times(2)))
	w := 2 * int64(s.laid(s.along).X)
	wy := 2 * s.laid(s.along).Y
	n := 0
	for i, a := range c.line.Points {
		a, b := s.laid(a.Times(2)), s.laid(c.line.next(i).Times(2))
		ka, kb := floorDiv(int64(p.X-a.X), w), floorDiv(int64(p.X-b.X), w)
		for k := min(ka, kb) + 1; k <= max(ka, kb); k++ {
			move := Point{Length(k * w), Length(k) * wy}
			if higher(a.Add(move), b.Add(move), p) {
				if ka > kb {
					n++
				} else {
					n--
				}
			}
		}
	}
	return n != 0
}

// higher reports whether the line ab, which p's level line upwards crosses, does
// so above p.
func higher(a, b, p Point) bool {
	if a.Y >= p.Y && b.Y >= p.Y {
		return false
	}
	if a.Y < p.Y && b.Y < p.Y {
		return true
	}
	if a.X > b.X {
		a, b = b, a
	}
	return Orient(a, b, p) > 0
}

// findBands sets what is left below each course.
func (s *strip) findBands() {
	s.bands = make([]band, len(s.courses))
	from := s.courses[0].line.Points[0]
	under := func(c course) float64 {
		down := s.depth(c.move)
		if c.over {
			down = -down
		}
		return c.line.under(from, s.along) + down
	}
	for i, c := range s.courses {
		if c.over {
			continue
		}
		lower := s.courses[(i+1)%len(s.courses)]
		if i+1 == len(s.courses) {
			if (s.next == Point{}) {
				continue // it reaches the outside
			}
			lower = lower.moved(s, s.next)
		}
		s.bands[i] = band{c.line, -under(c) - under(lower)}
	}
}

// takeHole subtracts a cut-out that lies in a band, around the place p on the
// grid twice as fine, from the band's area.
func (s *strip) takeHole(p Point, area float64) {
	p = p.Add(s.into(p).Times(2))
	for i := len(s.courses) - 1; i >= 0; i-- {
		if s.below(s.courses[i], p) {
			s.bands[i].area -= area
			return
		}
	}
}
