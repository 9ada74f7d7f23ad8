package stencil

import (
	"math"

	"tsugime/repeat/geom"
	"tsugime/repeat/pattern"
)

// Choices of the corners.
const (
	// mostMerged bounds how many corners of a line may become one.
	mostMerged = 12
	// cornerWorth: the line may be longer by the clearance over this for each
	// corner that it loses.
	cornerWorth = 5
)

// fewer returns a line with fewer corners that keeps the clearance: those that
// lead around one cut-out in small turns become the one where the straight pieces
// before and after them would meet.
//
//	 ╭──╮           ╱╲
//	╱    ╲    →    ╱  ╲
func (n *neighbourhood) fewer(line []geom.Point, clearance float64) []geom.Point {
	out := line[:1:1]
	for i := 1; i < len(line)-1; i++ {
		a := out[len(out)-1]
		corner, next := line[i], i
		for j := i + 1; j < min(i+mostMerged, len(line)-1); j++ {
			x, ok := meetingOf(a, line[i], line[j+1], line[j])
			longer := x.Sub(a).Norm() + line[j+1].Sub(x).Norm() - lengthOf(line[i:j+2]) - line[i].Sub(a).Norm()
			if !ok || longer > float64(j-i)*clearance/cornerWorth {
				continue
			}
			if n.passes(a, x, clearance) && n.passes(x, line[j+1], clearance) {
				corner, next = x, j
			}
		}
		out = append(out, corner)
		i = next
	}
	out = append(out, line[len(line)-1])
	return n.pulled(out, clearance)
}

// meetingOf returns where the way from a over b meets the way from c over d, both
// going on: at or beyond b and d.
func meetingOf(a, b, c, d geom.Point) (geom.Point, bool) {
	p, q := placeOf(a), placeOf(c)
	u, v := placeOf(b).sub(p), placeOf(d).sub(q)
	across := u.cross(v)
	if math.Abs(across) < 1e-6*u.norm()*v.norm() {
		return geom.Point{}, false
	}
	s, t := q.sub(p).cross(v)/across, q.sub(p).cross(u)/across
	if s < 1 || t < 1 || s*u.norm() > float64(geom.Metre) {
		return geom.Point{}, false
	}
	return p.add(u.times(s)).point(), true
}

// A Corner is where a joint line turns.
type Corner struct {
	At      geom.Point
	TurnDeg float64 // clockwise on the sheet is positive
	// Radius is the largest arc by which the corner can be rounded: it takes half
	// of the shorter piece beside it at most and keeps the line's clearance.
	Radius geom.Length
}

// JointCorners returns the corners of a joint line from left to right, and by how
// much each can be rounded among the cut-outs of the pattern in the field.
func JointCorners(u pattern.Unit, field Field, j Joint) []Corner {
	box := geom.BoxOf(j.Line...)
	n := around(fieldCuts(u, field, box.Min.Y-jointBand, box.Max.Y+jointBand))
	var corners []Corner
	for i := 1; i < len(j.Line)-1; i++ {
		p := placeOf(j.Line[i])
		back, ahead := placeOf(j.Line[i-1]).sub(p), placeOf(j.Line[i+1]).sub(p)
		turn := math.Atan2(back.times(-1).cross(ahead), back.times(-1).dot(ahead))
		c := Corner{At: j.Line[i], TurnDeg: turn * 180 / math.Pi}
		reach := min(back.norm(), ahead.norm()) / 2
		if tan := math.Tan(math.Abs(turn) / 2); tan > 0 && reach > 0 {
			c.Radius = n.rounding(p, back, ahead, reach/tan, math.Abs(turn), float64(j.Clearance))
		}
		corners = append(corners, c)
	}
	return corners
}

// rounding returns the largest radius, up to most, by which a corner can be
// rounded at the clearance.
func (n *neighbourhood) rounding(p, back, ahead place, most, turn, clearance float64) geom.Length {
	fits := func(r float64) bool {
		line := arcOver(p, back, ahead, r, turn)
		for i, b := range line[1:] {
			if n.clearOf(line[i], b, max(clearance, 0)) < clearance-2*grain {
				return false
			}
		}
		return true
	}
	lo, hi := 0.0, most
	if fits(hi) {
		return geom.Length(hi)
	}
	for hi-lo > float64(geom.Micrometre) {
		if m := (lo + hi) / 2; fits(m) {
			lo = m
		} else {
			hi = m
		}
	}
	return geom.Length(lo)
}

// arcOver returns an arc of radius r between the two ways that leave p, in
// straight pieces of at most a sixteenth of half a turn; they lie on the inner
// side of the arc, which is nearer to what the corner leads around.
func arcOver(p, back, ahead place, r, turn float64) []geom.Point {
	t := r * math.Tan(turn/2)
	from := p.add(back.times(t / back.norm()))
	to := p.add(ahead.times(t / ahead.norm()))
	middle := from.add(to).times(0.5).sub(p)
	if middle.norm() == 0 {
		return []geom.Point{from.point(), to.point()}
	}
	centre := p.add(middle.times(r / math.Cos(turn/2) / middle.norm()))
	pieces := 1 + int(turn/(math.Pi/16))
	a, b := from.sub(centre), to.sub(centre)
	line := make([]geom.Point, pieces+1)
	for i := range line {
		s := float64(i) / float64(pieces)
		way := a.times(math.Sin((1 - s) * turn)).add(b.times(math.Sin(s * turn))).times(1 / math.Sin(turn))
		line[i] = centre.add(way).point()
	}
	return line
}
