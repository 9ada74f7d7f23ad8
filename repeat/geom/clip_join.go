package geom

import (
	"math"
	"slices"
)

// closed joins stretches end to end to contours. It reports false where more
// stretches end at a place than start there: then a split point lies so near to
// another line that its side can't be told.
func closed(k clipping) (clipping, bool) {
	s := k.stretches
	slices.SortStableFunc(s, func(a, b stretch) int {
		switch {
		case a.from.Less(b.from):
			return -1
		case b.from.Less(a.from):
			return 1
		}
		return 0
	})
	if !balanced(s) {
		return k, false
	}
	cancelSpurs(s)
	for i := range s {
		if s[i].used {
			continue
		}
		contour := Contour{Start: s[i].from}
		for at := i; ; {
			contour.Segments = append(contour.Segments, s[at].segments...)
			s[at].used = true
			next := follow(s, at, i)
			if next < 0 {
				return k, false
			}
			if next == i {
				break
			}
			at = next
		}
		if !contour.thin() {
			k.whole = append(k.whole, contour)
		}
	}
	return k, true
}

// outline returns the contours of k, the largest box first: never nil.
func (k clipping) outline() Outline {
	if k.whole == nil {
		return Outline{}
	}
	return k.whole
}

// leaving returns the range of the sorted stretches that start at p.
func leaving(s []stretch, p Point) (from, to int) {
	from, _ = slices.BinarySearchFunc(s, p, func(a stretch, p Point) int {
		if a.from.Less(p) {
			return -1
		}
		return 1
	})
	for to = from; to < len(s) && s[to].from == p; to++ {
	}
	return from, to
}

// balanced reports whether as many stretches end at each place as start there.
func balanced(s []stretch) bool {
	ends := make(map[Point]int, len(s))
	for i := range s {
		ends[s[i].from]++
		ends[s[i].to]--
	}
	for _, n := range ends {
		if n != 0 {
			return false
		}
	}
	return true
}

// cancelSpurs marks as used the pairs of lines that go to and fro.
func cancelSpurs(s []stretch) {
	straight := func(a stretch) bool { return len(a.segments) == 1 && a.segments[0].Kind == Line }
	for i := range s {
		if s[i].used || !straight(s[i]) {
			continue
		}
		from, to := leaving(s, s[i].to)
		for j := from; j < to; j++ {
			if j != i && !s[j].used && s[j].to == s[i].from && straight(s[j]) {
				s[i].used, s[j].used = true, true
				break
			}
		}
	}
}

// follow returns the stretch after at: of those that are left, or first itself,
// the one that turns most to the inside, so that parts which touch in a corner
// become two contours. Without any it is negative.
func follow(s []stretch, at, first int) int {
	best, most := -1, math.Inf(-1)
	from, to := leaving(s, s[at].to)
	for j := from; j < to; j++ {
		if s[j].used && j != first {
			continue
		}
		turn := turnBetween(s[at].last, s[j].first)
		if turn > most {
			best, most = j, turn
		}
	}
	return best
}

// turnBetween returns the angle from p to q, in −π … π.
func turnBetween(p, q Point) float64 {
	px, py, qx, qy := float64(p.X), float64(p.Y), float64(q.X), float64(q.Y)
	return math.Atan2(float64(px*qy)-float64(py*qx), float64(px*qx)+float64(py*qy))
}

// thin reports whether c is no wider than the grid's rounding: a sliver of lines
// whose area is below half a step along its whole length.
func (c Contour) thin() bool {
	var area, length float64
	at := c.Start
	for _, s := range c.Segments {
		if s.Kind != Line {
			return false
		}
		area += cross(at, s.End, c.Start)
		length += s.End.Sub(at).Norm()
		at = s.End
	}
	return math.Abs(area) <= length*float64(Grid)/2
}
