package export

import (
	"math"

	"tsugime/repeat/geom"
)

// thickened returns a letter whose strokes are wider by twice a length: every
// corner and every control of its outline moves away from the ink, along the
// line that halves the angle there. That is what a pen of that width drawn around
// the letter adds, but for its rounded corners. Contours turn as TrueType has
// them, seen the right way up: ink is on the right of the way along them.
func thickened(o geom.Outline, by geom.Length) geom.Outline {
	out := make(geom.Outline, len(o))
	for i, c := range o {
		out[i] = thickenedContour(c, float64(by))
	}
	return out
}

// thickenedContour moves the points of a contour to its left by away.
func thickenedContour(c geom.Contour, away float64) geom.Contour {
	var ring []geom.Point // corners and controls in their order, the start last
	for _, s := range c.Segments {
		if s.Kind == geom.Cubic {
			ring = append(ring, s.C1, s.C2)
		}
		ring = append(ring, s.End)
	}
	if n := len(ring); n > 0 && ring[n-1] != c.Start {
		ring = append(ring, c.Start)
	}
	moved := make([]geom.Point, len(ring))
	for i, p := range ring {
		moved[i] = p.Add(aside(before(ring, i), p, after(ring, i), away))
	}
	out := geom.Contour{Start: c.Start}
	if n := len(moved); n > 0 {
		out.Start = moved[n-1]
	}
	i := 0
	for _, s := range c.Segments {
		if s.Kind == geom.Cubic {
			s.C1, s.C2 = moved[i], moved[i+1]
			i += 2
		}
		s.End = moved[i]
		i++
		out.Segments = append(out.Segments, s)
	}
	return out
}

// before and after return the neighbours of a point that are not at its place.
func before(ring []geom.Point, i int) geom.Point { return neighbour(ring, i, len(ring)-1) }
func after(ring []geom.Point, i int) geom.Point  { return neighbour(ring, i, 1) }

func neighbour(ring []geom.Point, i, step int) geom.Point {
	for j := (i + step) % len(ring); j != i; j = (j + step) % len(ring) {
		if ring[j] != ring[i] {
			return ring[j]
		}
	}
	return ring[i]
}

// aside is the way by which a corner moves so that both its sides move left by
// away; at a sharp corner no farther than twice that.
func aside(a, b, c geom.Point, away float64) geom.Point {
	x1, y1 := unit(b.Sub(a))
	x2, y2 := unit(c.Sub(b))
	nx, ny := y1+y2, -x1-x2 // the sum of the two normals
	k := nx*nx + ny*ny
	if k == 0 {
		return geom.Point{}
	}
	k = math.Min(2/k, 2/math.Sqrt(k))
	return geom.Point{X: geom.Nanometre.Times(away * k * nx), Y: geom.Nanometre.Times(away * k * ny)}
}

func unit(v geom.Point) (x, y float64) {
	n := v.Norm()
	if n == 0 {
		return 0, 0
	}
	return float64(v.X) / n, float64(v.Y) / n
}
