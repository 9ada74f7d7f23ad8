package geom

import "math"

// arc returns the circle that an Arc from a runs on, and the angles at which it
// starts and by which it turns, in radians.
func (s Segment) arc(a Point) (cx, cy, r, start, turn float64) {
	turn = 4 * math.Atan(s.Bulge)
	d := s.End.Sub(a)
	half := d.Norm() / 2
	// The centre lies on the bisector, half/tan(turn/2) from the chord.
	h := half * (1 - s.Bulge*s.Bulge) / (2 * s.Bulge)
	ux, uy := float64(d.X)/(2*half), float64(d.Y)/(2*half)
	cx = float64(a.X) + float64(d.X)/2 - uy*h
	cy = float64(a.Y) + float64(d.Y)/2 + ux*h
	r = half * (1 + s.Bulge*s.Bulge) / (2 * math.Abs(s.Bulge))
	return cx, cy, r, math.Atan2(float64(a.Y)-cy, float64(a.X)-cx), turn
}

// straight reports whether s is a line in all but name.
func (s Segment) straight(a Point) bool {
	return s.Kind == Line || s.Kind == Arc && (s.Bulge == 0 || s.End == a)
}

// at returns the point of s at t in 0…1.
func (s Segment) at(a Point, t float64) (x, y float64) {
	switch {
	case s.straight(a):
		return float64(a.X) + t*float64(s.End.X-a.X), float64(a.Y) + t*float64(s.End.Y-a.Y)
	case s.Kind == Arc:
		cx, cy, r, start, turn := s.arc(a)
		sin, cos := math.Sincos(start + t*turn)
		return cx + r*cos, cy + r*sin
	}
	u := 1 - t
	w0, w1, w2, w3 := u*u*u, 3*u*u*t, 3*u*t*t, t*t*t
	x = w0*float64(a.X) + w1*float64(s.C1.X) + w2*float64(s.C2.X) + w3*float64(s.End.X)
	y = w0*float64(a.Y) + w1*float64(s.C1.Y) + w2*float64(s.C2.Y) + w3*float64(s.End.Y)
	return x, y
}

// point is at, put on the grid.
func (s Segment) point(a Point, t float64) Point {
	x, y := s.at(a, t)
	return Point{Length(math.Round(x)), Length(math.Round(y))}
}

func (s Segment) bounds(a Point) Box {
	b := BoxOf(a, s.End)
	if s.straight(a) {
		return b
	}
	if s.Kind == Arc {
		_, _, _, start, turn := s.arc(a)
		lo, hi := math.Min(start, start+turn), math.Max(start, start+turn)
		for q := math.Ceil(lo / (math.Pi / 2)); q*math.Pi/2 <= hi; q++ {
			b = b.With(s.point(a, (q*math.Pi/2-start)/turn))
		}
		return b
	}
	for _, axis := range [2][4]Length{{a.X, s.C1.X, s.C2.X, s.End.X}, {a.Y, s.C1.Y, s.C2.Y, s.End.Y}} {
		for _, t := range cubicExtremes(axis) {
			b = b.With(s.point(a, t))
		}
	}
	return b
}

// cubicExtremes returns the parameters in (0, 1) where one coordinate of a
// cubic stands still: the roots of its derivative, a quadratic.
func cubicExtremes(p [4]Length) []float64 {
	d0, d1, d2 := float64(p[1]-p[0]), float64(p[2]-p[1]), float64(p[3]-p[2])
	a, b, c := d0-2*d1+d2, 2*(d1-d0), d0
	var roots []float64
	keep := func(t float64) {
		if t > 0 && t < 1 {
			roots = append(roots, t)
		}
	}
	disc := b*b - 4*a*c
	if disc < 0 {
		return nil
	}
	// Citardauq form for the root that would cancel (Numerical Recipes, 5.6).
	q := -(b + math.Copysign(math.Sqrt(disc), b)) / 2
	if a != 0 {
		keep(q / a)
	}
	if q != 0 {
		keep(c / q)
	}
	return roots
}

// area2 returns twice the signed area between s and the point o, by Green's
// theorem: closed for every kind.
func (s Segment) area2(a, o Point) float64 {
	if s.straight(a) {
		return cross(a, s.End, o)
	}
	if s.Kind == Arc {
		_, _, r, _, turn := s.arc(a)
		return cross(a, s.End, o) + r*r*(turn-math.Sin(turn))
	}
	// The integral of x·dy − y·dx over a cubic in its control points.
	p := [4]Point{a.Sub(o), s.C1.Sub(o), s.C2.Sub(o), s.End.Sub(o)}
	c := func(i, j int) float64 { return cross(p[i], p[j], Point{}) }
	return (6*c(0, 1) + 3*c(0, 2) + c(0, 3) + 3*c(1, 2) + 3*c(1, 3) + 6*c(2, 3)) / 10
}

// appendPoints appends the ends of the straight pieces that stand for s.
func (s Segment) appendPoints(ring Ring, a Point, chord Length) Ring {
	n := 1
	switch {
	case s.straight(a):
	case s.Kind == Arc:
		_, _, r, _, turn := s.arc(a)
		step := math.Pi / 2
		if h := float64(chord); r > h {
			step = min(step, 2*math.Acos(1-h/r))
		}
		n = int(math.Ceil(math.Abs(turn) / step))
	default:
		n = cubicPieces(a, s, chord)
	}
	for i := 1; i < n; i++ {
		if p := s.point(a, float64(i)/float64(n)); p != ring[len(ring)-1] {
			ring = append(ring, p)
		}
	}
	if s.End != ring[len(ring)-1] {
		ring = append(ring, s.End)
	}
	return ring
}

// maxPieces bounds what one cubic becomes: 4096 pieces of a curve a metre long
// are a quarter of a millimetre each.
const maxPieces = 4096

// cubicPieces returns into how many even pieces a cubic is cut so that none is
// farther than chord from it: √(|second difference|·6/(8·chord)) pieces, the
// bound of Wang's formula (G. Wang 1984, after Goldman, Pyramid Algorithms, 5.6).
func cubicPieces(a Point, s Segment, chord Length) int {
	bend := math.Max(
		a.Sub(s.C1.Times(2)).Add(s.C2).Norm(),
		s.C1.Sub(s.C2.Times(2)).Add(s.End).Norm(),
	)
	n := math.Ceil(math.Sqrt(6 * bend / (8 * float64(max(chord, 1)))))
	return int(math.Min(math.Max(n, 1), maxPieces))
}

// arcCubics returns cubics that stand for an arc, one for each started quarter:
// off by at most 2.8e-4 of the radius.
func arcCubics(a Point, s Segment) []Segment {
	if s.straight(a) {
		return []Segment{{Kind: Line, End: s.End}}
	}
	cx, cy, r, start, turn := s.arc(a)
	n := max(1, int(math.Ceil(math.Abs(turn)/(math.Pi/2)-1e-9)))
	step := turn / float64(n)
	k := 4.0 / 3 * math.Tan(step/4) * r
	put := func(x, y float64) Point { return Point{Length(math.Round(x)), Length(math.Round(y))} }
	out := make([]Segment, n)
	for i := range out {
		s0, c0 := math.Sincos(start + float64(i)*step)
		s1, c1 := math.Sincos(start + float64(i+1)*step)
		out[i] = Segment{
			Kind: Cubic,
			C1:   put(cx+r*c0-k*s0, cy+r*s0+k*c0),
			C2:   put(cx+r*c1+k*s1, cy+r*s1-k*c1),
			End:  put(cx+r*c1, cy+r*s1),
		}
	}
	out[n-1].End = s.End
	return out
}

// Cubics returns s as cubic Béziers, for writers that know no arcs. a is where s
// starts; a line or a cubic comes back alone and unchanged.
func (s Segment) Cubics(a Point) []Segment {
	if s.Kind != Arc {
		return []Segment{s}
	}
	return arcCubics(a, s)
}
