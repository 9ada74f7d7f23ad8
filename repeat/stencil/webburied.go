package stencil

import (
	"math"
	"sync"
)

// buriedFrom is how many times the boxes of the outlines must cover the cell before
// it is worth while to look which corners no web can begin at.
const buriedFrom = 1

// bury marks the corners that lie wholly within other cut-outs, where outlines lie
// over one another so much that most do: all around such a corner is cut-out, and
// no circle over paper touches it.
func (s *scene) bury() {
	if s.sides == nil {
		return
	}
	var boxes float64
	for _, c := range s.covers.covers {
		boxes += float64(c.box.Width()) * float64(c.box.Height())
	}
	if boxes <= buriedFrom*s.det {
		return
	}
	s.buried = make([]bool, len(s.sides.sides))
	var wait sync.WaitGroup
	for k := range workers {
		wait.Go(func() {
			for v := k; v < len(s.buried); v += workers {
				s.buried[v] = s.deep(s.sides.sides[v].a)
			}
		})
	}
	wait.Wait()
}

// deep reports whether outlines cover all places around p. Of a circle through p
// that is wider than twice the distance looked at, one of the places is within.
func (s *scene) deep(p place) bool {
	const looks = 8
	for k := range looks {
		sin, cos := math.Sincos(2 * math.Pi * float64(k) / looks)
		if !s.covers.holds(p.add(place{cos, sin}.times(8 * grain))) {
			return false
		}
	}
	return true
}
