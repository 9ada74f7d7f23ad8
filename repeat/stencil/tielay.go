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
		if t, lost, ok := m.span(c.middle(), b.times(1/b.norm()), own, c.to, width); ok && lost < least-1 {
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

// span returns the strip of paper through a place in a cut-out, and how much cut-out it takes,
// by four lines along it. The two in its middle third must come from the one
// piece and end in the other.
func (m *paperMap) span(mid geom.Point, way place, from, to pieceCopy, width geom.Length) (Tie, float64, bool) {
	across := place{-way.y, way.x}.times(float64(width) / 2)
	reach := 4*m.a.norm() + 4*m.b.norm()
	var back, ahead, lost float64
	for i, share := range [4]float64{-1. / 3, 1. / 3, -1, 1} {
		at := placeOf(mid.Add(across.times(share).point()))
		f, okf := m.firstOf(m.sides, at, way, 0, reach)
		b, okb := m.firstOf(m.sides, at, way.times(-1), 0, reach)
		if i < 2 {
			if !okf || !okb || f.ink || b.ink || m.at(f.side, f.by) != to || m.at(b.side, b.by) != from {
				return Tie{}, 0, false
			}
		} else if !okf || !okb || f.ink || b.ink {
			continue // this edge of the strip lies in paper
		}
		if i >= 2 {
			f.at, b.at = math.Min(f.at, ahead+float64(width)), math.Min(b.at, back+float64(width))
		}
		back, ahead, lost = math.Max(back, b.at), math.Max(ahead, f.at), lost+f.at+b.at
	}
	start := mid.Sub(way.times(back).point())
	end := mid.Add(way.times(ahead).point())
	t := Tie{Width: width}
	t.From = start.Sub(way.times(m.bite(start, way.times(-1), width)).point())
	t.To = end.Add(way.times(m.bite(end, way, width)).point())
	return t, lost, true
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
