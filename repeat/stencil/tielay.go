package stencil

import (
	"math"

	"tsugime/repeat/geom"
)

// lay returns the tie along a way across of piece k: its strip reaches over both
// rims so far that all of its width ends in paper. Across a way across shorter than
// half its width, such as a corner in which two cut-outs touch, it takes the way
// that costs least. It returns false where no strip joins the two pieces.
func (m *paperMap) lay(k int, c tieWay, width geom.Length) (Tie, bool) {
	way := placeOf(c.q.Sub(c.p))
	bearings := []place{way}
	if l := way.norm(); l < float64(width)/2 {
		bearings = bearings[:0]
		const ways = 24
		for i := range ways {
			sin, cos := math.Sincos(math.Pi * 2 * float64(i) / ways)
			bearings = append(bearings, place{cos, sin})
		}
	}
	own := m.same(pieceCopy{piece: k})
	best, least := Tie{}, math.Inf(1)
	for _, b := range bearings {
		t, lost, ok := m.span(c.middle(), b.times(1/b.norm()), own, c.to, width)
		if ok && len(bearings) == 1 {
			ok = m.joins(t, own, c.to)
		}
		if ok && lost < least-1 {
			best, least = t, lost
		}
	}
	if math.IsInf(least, 1) {
		return Tie{}, false
	}
	h := float64(width) / 6
	mid := c.middle()
	side := placeOf(best.To.Sub(best.From))
	side = place{-side.y, side.x}.times(h / side.norm())
	id, shift, ok := m.owner(mid, mid.Add(side.point()), mid.Sub(side.point()))
	if !ok {
		return Tie{}, false
	}
	by := m.drawn[id].Sub(shift)
	best.Motif, best.From, best.To = id, best.From.Add(by), best.To.Add(by)
	return best, true
}

// joins reports whether the middle line of a tie starts in the one piece of paper
// and ends in the other.
func (m *paperMap) joins(t Tie, from, to pieceCopy) bool {
	a, _, ok := m.paperAt(t.From, t.To)
	if !ok || a != from {
		return false
	}
	b, _, ok := m.paperAt(t.To, t.From)
	return ok && b == to
}

// span returns the strip of paper through a place in a cut-out, and how much
// cut-out it takes, by four lines along it. The two in its middle third must come
// from the one piece and end in the other; its edges are followed on until they
// reach paper too, as far as the middle line stays in that paper.
func (m *paperMap) span(mid geom.Point, way place, from, to pieceCopy, width geom.Length) (Tie, float64, bool) {
	across := place{-way.y, way.x}.times(float64(width) / 2)
	var back, ahead, lost float64
	for _, share := range [2]float64{-1. / 3, 1. / 3} {
		b, f, ok := m.inkAround(mid.Add(across.times(share).point()), way)
		if !ok || m.at(f.side, f.by) != to || m.at(b.side, b.by) != from {
			return Tie{}, 0, false
		}
		back, ahead, lost = math.Max(back, b.at), math.Max(ahead, f.at), lost+f.at+b.at
	}
	ahead, mostAhead, okf := m.landed(mid, way, ahead, width)
	back, mostBack, okb := m.landed(mid, way.times(-1), back, width)
	if !okf || !okb {
		return Tie{}, 0, false
	}
	for _, share := range [2]float64{-1, 1} {
		// An edge that starts in paper takes nothing.
		if b, f, ok := m.inkAround(mid.Add(across.times(share).point()), way); ok {
			f.at, b.at = math.Min(f.at, mostAhead), math.Min(b.at, mostBack)
			back, ahead, lost = math.Max(back, b.at), math.Max(ahead, f.at), lost+f.at+b.at
		}
	}
	start, end := mid.Sub(way.times(back).point()), mid.Add(way.times(ahead).point())
	t := Tie{Width: width}
	t.From = start.Sub(way.times(m.bite(start, way.times(-1), width)).point())
	t.To = end.Add(way.times(m.bite(end, way, width)).point())
	return t, lost, true
}

// inkAround returns where the line through a place in a cut-out leaves it, back
// and ahead; it is not ok in paper.
func (m *paperMap) inkAround(at geom.Point, way place) (back, ahead meet, ok bool) {
	reach := 4*m.a.norm() + 4*m.b.norm()
	ahead, okf := m.firstOf(m.sides, placeOf(at), way, 0, reach)
	if !okf || ahead.ink {
		return back, ahead, false
	}
	back, okb := m.firstOf(m.sides, placeOf(at), way.times(-1), 0, reach)
	return back, ahead, okb && !back.ink
}

// landed returns where the middle line, gone that far, is in paper, and how far a
// tie may go on there: by its width, or half of what paper there is. It is not ok
// where the line is still in the cut-out a width on.
func (m *paperMap) landed(mid geom.Point, way place, gone float64, width geom.Length) (paper, most float64, ok bool) {
	w := float64(width)
	h, met := m.firstOf(m.sides, placeOf(mid.Add(way.times(gone).point())), way, 0, w)
	if met && !h.ink {
		gone += h.at
		h, met = m.firstOf(m.sides, placeOf(mid.Add(way.times(gone+2).point())), way, 0, w)
	}
	switch {
	case !met:
		return gone, gone + w, true
	case h.ink:
		return gone, gone + h.at/2, true
	}
	return gone, gone, false
}

// bite returns how far a tie reaches on into paper: an eighth of its width, or
// half of what paper there is.
func (m *paperMap) bite(at geom.Point, way place, width geom.Length) float64 {
	most := float64(width) / 8
	ahead, met := m.firstOf(m.sides, placeOf(at), way, 2, 2*most)
	if met && ahead.ink {
		return ahead.at / 2
	}
	return most
}
