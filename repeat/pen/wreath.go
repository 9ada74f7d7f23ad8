package pen

import (
	"fmt"
	"slices"

	"tsugime/repeat/geom"
)

// A Wreath is the symmetry that a motif has of its own: so many turns about Centre,
// and with Mirrored as many mirror lines through it, the first one upright. Turns of
// 1 without mirror is none.
type Wreath struct {
	Centre   geom.Point
	Turns    int
	Mirrored bool
}

// MostTurns is how many turns a wreath may have.
const MostTurns = 72

// Check refuses a number of turns that is out of bounds.
func (w Wreath) Check() error {
	if w.Turns < 1 || w.Turns > MostTurns {
		return fmt.Errorf("%d turns about the centre are out of bounds; give 1 to %d", w.Turns, MostTurns)
	}
	return nil
}

// Plain reports whether w makes no copies.
func (w Wreath) Plain() bool { return w.Turns <= 1 && !w.Mirrored }

// Maps returns the maps of w, that which leaves all in its place first.
func (w Wreath) Maps() []geom.Affine {
	var maps []geom.Affine
	home, back := geom.Translate(w.Centre.Neg()), geom.Translate(w.Centre)
	for _, mirror := range []bool{false, true} {
		if mirror && !w.Mirrored {
			continue
		}
		for k := range max(w.Turns, 1) {
			m := geom.Identity
			if mirror {
				m = geom.Scale(-1, 1)
			}
			if k > 0 {
				m = m.Then(geom.Rotate(360 * float64(k) / float64(w.Turns)))
			}
			maps = append(maps, home.Then(m).Then(back))
		}
	}
	return maps
}

// Axes returns the directions of the mirror lines: the first upright, the next half
// a turn's part further.
func (w Wreath) Axes() []geom.Point {
	if !w.Mirrored {
		return nil
	}
	axes := make([]geom.Point, max(w.Turns, 1))
	for k := range axes {
		axes[k] = geom.Rotate(180 * float64(k) / float64(len(axes))).Apply(geom.Point{Y: -geom.Metre})
	}
	return axes
}

// Whole returns what s becomes with all its copies. Copies that lie on each other
// are one; open ones whose ends meet are joined, so that half a petal is closed by
// its mirror image. Closed copies all turn the same way.
func (w Wreath) Whole(s Stroke) []Stroke {
	var copies []Stroke
	for k, m := range w.Maps() {
		c := s
		if k > 0 {
			c = s.Mapped(m)
		}
		if m.Det() < 0 && s.Closed {
			c = c.Reversed()
		}
		if !slices.ContainsFunc(copies, c.lies) {
			copies = append(copies, c)
		}
	}
	if s.Closed {
		return copies
	}
	return chained(copies)
}

// lies reports whether s and t are the same line, run either way and, where closed,
// from any node.
func (s Stroke) lies(t Stroke) bool {
	if len(s.Segments) != len(t.Segments) || s.Closed != t.Closed {
		return false
	}
	n := s.count()
	for _, u := range []Stroke{t, t.Reversed()} {
		for shift := range n {
			if shift > 0 && !s.Closed {
				break
			}
			if s.matches(u, shift) {
				return true
			}
		}
	}
	return false
}

// matches reports whether s runs as t does from node shift on.
func (s Stroke) matches(t Stroke, shift int) bool {
	n := len(s.Segments)
	if n == 0 {
		return alike(s.Start, t.Start)
	}
	for i := range n {
		k := (i + shift) % n
		p, q := s.Node(i), t.Node(k)
		if !alike(p, q) || !alike(s.Segments[i].At(p, 0.5), t.Segments[k].At(q, 0.5)) ||
			!alike(s.Segments[i].At(p, 0.25), t.Segments[k].At(q, 0.25)) {
			return false
		}
	}
	return alike(s.End(), t.Node((n-1+shift)%n+1))
}

// chained joins open strokes whose ends meet until none does, and closes those that
// come back to their start.
func chained(open []Stroke) []Stroke {
	var done []Stroke
	for len(open) > 0 {
		s := open[0]
		open = open[1:]
		for turned := 0; turned < 2; {
			if len(s.Segments) > 0 && alike(s.End(), s.Start) {
				if closed, err := s.Close(); err == nil {
					s = closed
				}
				break
			}
			i := slices.IndexFunc(open, func(t Stroke) bool { return alike(s.End(), t.Start) || alike(s.End(), t.End()) })
			if i < 0 {
				s = s.Reversed()
				turned++
				continue
			}
			s, open = s.linked(open[i]), slices.Delete(slices.Clone(open), i, i+1)
		}
		done = append(done, s)
	}
	return done
}

// linked returns s going on as t, one end of which lies at the end of s.
func (s Stroke) linked(t Stroke) Stroke {
	if !alike(s.End(), t.Start) {
		t = t.Reversed()
	}
	next := s.edited()
	if n := len(next.Segments); n > 0 {
		next.Segments[n-1].End = t.Start
	} else {
		next.Start = t.Start
	}
	next.Segments = append(next.Segments, t.Segments...)
	return next
}
