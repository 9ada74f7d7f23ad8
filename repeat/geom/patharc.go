package geom

import "math"

// maxRadius is the largest radius that path data may name, mm. An arc that is
// flatter is written as a line, which is off by 3 µm over a length of 1.5 m.
const maxRadius = 100_000_000

// An Ellipse is the run along part of an ellipse: the place at the angle v is
// (X, Y) + RX·cos v along the first axis + RY·sin v along the second; the first
// axis is turned by Degrees. It starts at From and turns by Turn, both in radians.
type Ellipse struct {
	X, Y, RX, RY, Degrees float64
	From, Turn            float64
}

// EllipseBetween returns the elliptical arc of path data from x0, y0 to x1, y1 by
// the conversion from end points to centre of SVG 1.1, appendix F.6.5; too small
// radii are scaled up (F.6.6). Both radii must be positive and the ends apart.
func EllipseBetween(x0, y0, rx, ry, degrees float64, large, sweep bool, x1, y1 float64) Ellipse {
	sin, cos := sincosDegrees(degrees)
	// The chord's half in the ellipse's own frame, scaled to the unit circle.
	hx, hy := (x0-x1)/2, (y0-y1)/2
	ux, uy := (cos*hx+sin*hy)/rx, (cos*hy-sin*hx)/ry
	l2 := ux*ux + uy*uy
	if l2 > 1 {
		l := math.Sqrt(l2)
		rx, ry, ux, uy, l2 = rx*l, ry*l, ux/l, uy/l, 1
	}
	h := math.Sqrt(math.Max(0, 1/l2-1))
	if large == sweep {
		h = -h
	}
	// Centre on the unit circle's frame; the angles at both ends.
	cx, cy := h*uy, -h*ux
	from := math.Atan2(uy-cy, ux-cx)
	turn := math.Atan2(-uy-cy, -ux-cx) - from
	if sweep && turn < 0 {
		turn += 2 * math.Pi
	} else if !sweep && turn > 0 {
		turn -= 2 * math.Pi
	}
	return Ellipse{
		X: (x0+x1)/2 + cos*rx*cx - sin*ry*cy, Y: (y0+y1)/2 + sin*rx*cx + cos*ry*cy,
		RX: rx, RY: ry, Degrees: degrees, From: from, Turn: turn,
	}
}
