package geom

// A Ring is a closed run of straight pieces; the last point joins the first.
// Its inside is where its winding number is not zero. A ring of fewer than
// three points has no inside.
type Ring []Point

// Area2 returns twice the signed area in square nanometres, positive where the
// ring turns clockwise on the sheet (x to y). It is summed in float64 about the
// first point, so its error is below 1e-12 of the box's area.
func (r Ring) Area2() float64 {
	var sum float64
	for i := 2; i < len(r); i++ {
		a, b := r[i-1].Sub(r[0]), r[i].Sub(r[0])
		sum += float64(float64(a.X)*float64(b.Y)) - float64(float64(a.Y)*float64(b.X))
	}
	return sum
}

// AreaMM2 returns the signed area in square millimetres.
func (r Ring) AreaMM2() float64 { return r.Area2() / 2 / float64(Millimetre*Millimetre) }

// Bounds returns the box around r.
func (r Ring) Bounds() Box { return BoxOf(r...) }

// Winding returns how often r goes around p, clockwise on the sheet being
// positive. It is exact; on the rim itself the answer is one of its two sides.
func (r Ring) Winding(p Point) int {
	n := 0
	for i, b := range r {
		a := r[(i+len(r)-1)%len(r)]
		if (a.Y > p.Y) == (b.Y > p.Y) {
			continue
		}
		side := Orient(a, b, p)
		if b.Y > a.Y && side > 0 {
			n++
		} else if b.Y < a.Y && side < 0 {
			n--
		}
	}
	return n
}

// Moved returns r moved by d.
func (r Ring) Moved(d Point) Ring {
	moved := make(Ring, len(r))
	for i, p := range r {
		moved[i] = p.Add(d)
	}
	return moved
}
