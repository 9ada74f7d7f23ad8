package geom

import "math"

// span is what is left of a moved curve between the cuts at its ends.
type span struct {
	t0, t1   float64
	from, to Point
}

// trim joins moved curves that part by arcs and cuts those that overlap at their
// crossing. It reports false where two overlap and don't cross near their corner.
func trim(raw []curve, ends []end, c []curve, by float64) ([]curve, bool) {
	spans := make([]span, len(raw))
	for i, v := range raw {
		spans[i] = span{0, 1, v.from, v.End}
	}
	joins := make([]float64, len(raw)) // the turn of the arc after each; 0 for none
	for i := range raw {
		j := (i + 1) % len(raw)
		if !ends[i].last || raw[i].End == raw[j].from {
			continue
		}
		gap := raw[i].End.Sub(raw[j].from).Norm()
		switch turn := ends[i].turn; {
		case gap <= float64(Snap), turn*by < 0 && gap <= float64(Parallel)/4:
			spans[j].from = raw[i].End
		case turn*by > 0:
			joins[i] = turn
		default:
			a, b, at, ok := overlap(raw[i], raw[j])
			if !ok {
				return nil, false
			}
			spans[i].t1, spans[i].to = a, at
			spans[j].t0, spans[j].from = b, at
		}
	}
	out := make([]curve, 0, 2*len(raw))
	for i, v := range raw {
		s := spans[i]
		if s.t0 >= s.t1 {
			return nil, false
		}
		seg := v.part(s.t0, s.t1, s.from, s.to)
		if s.t0 == 0 && s.t1 == 1 {
			seg.End = s.to
		}
		if !seg.still(s.from) {
			out = append(out, curve{s.from, seg})
		}
		if joins[i] != 0 {
			out = append(out, join(s.to, spans[(i+1)%len(raw)].from, joins[i])...)
		}
	}
	return out, len(out) >= 2
}

// overlap returns where two curves, of which the second starts beside the end of
// the first, cross near there: by Newton's method from the shared corner, which for
// two lines is exact at once.
func overlap(v, w curve) (a, b float64, at Point, ok bool) {
	a, b = 1, 0
	for range 12 {
		ax, ay := v.at(v.from, a)
		bx, by := w.at(w.from, b)
		dx, dy := bx-ax, by-ay
		ux, uy := v.speed(a)
		vx, vy := w.speed(b)
		det := float64(ux*vy) - float64(uy*vx)
		if math.Abs(det) < 1e-9*math.Hypot(ux, uy)*math.Hypot(vx, vy) || det == 0 {
			return a, b, at, false
		}
		if math.Hypot(dx, dy) < float64(Grid)/100 {
			break
		}
		a += (float64(dx*vy) - float64(dy*vx)) / det
		b += (float64(dx*uy) - float64(dy*ux)) / det
		if a < -1 || a > 2 || b < -1 || b > 2 {
			return a, b, at, false
		}
	}
	at = v.point(v.from, a)
	bx, by := w.at(w.from, b)
	near := math.Hypot(bx-float64(at.X), by-float64(at.Y)) <= float64(joint)
	return a, b, at, near && a > 0 && a < 1 && b > 0 && b < 1
}
