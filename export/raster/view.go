package raster

import (
	"math"

	"tsugime/repeat/geom"
)

// A View says which part of the plane a picture shows: X and Y are the
// millimetres at the top left corner of pixel (0, 0).
type View struct {
	X, Y    float64
	PxPerMM float64
}

// A Lay is one laying of a ground: turned about the origin, then moved, and seen
// through Clip. The zero Lay shows the ground as it was drawn.
type Lay struct {
	Move   geom.Point
	Turned bool // by 180°, exactly
	// TurnDeg is a further turn, clockwise as seen: a stencil laid askew.
	TurnDeg float64
	// Grown is the share by which the ground is larger than it was drawn: paper that
	// has grown.
	Grown float64
	// Clip is where the ground shows, in the frame of the view; an empty box
	// shows it everywhere. The cut is exact within a pixel.
	Clip geom.Box
}

// A place maps millimetres of a ground to pixels: x' = a·x − b·y + e and
// y' = b·x + a·y + f.
type place struct{ a, b, e, f float64 }

func (v View) place(l Lay) place {
	sin, cos := 0.0, 1.0
	if l.TurnDeg != 0 {
		sin, cos = math.Sincos(l.TurnDeg * math.Pi / 180)
	}
	if l.Turned {
		sin, cos = -sin, -cos
	}
	scale := v.PxPerMM * (1 + l.Grown)
	return place{
		a: cos * scale, b: sin * scale,
		e: (l.Move.X.MM() - v.X) * v.PxPerMM, f: (l.Move.Y.MM() - v.Y) * v.PxPerMM,
	}
}

// moved returns the place of a copy of the ground that is moved by d before it
// is laid.
func (m place) moved(d geom.Point) place {
	x, y := d.X.MM(), d.Y.MM()
	m.e += m.a*x - m.b*y
	m.f += m.b*x + m.a*y
	return m
}

func (m place) scale() float64 { return math.Hypot(m.a, m.b) }

// back returns the smallest box of the ground that holds a box of pixels.
func (m place) back(r rect) rect {
	d := m.a*m.a + m.b*m.b
	out := rect{math.Inf(1), math.Inf(1), math.Inf(-1), math.Inf(-1)}
	for _, c := range [4][2]float64{{r.x0, r.y0}, {r.x1, r.y0}, {r.x0, r.y1}, {r.x1, r.y1}} {
		x, y := c[0]-m.e, c[1]-m.f
		gx, gy := (m.a*x+m.b*y)/d, (m.a*y-m.b*x)/d
		out.x0, out.x1 = math.Min(out.x0, gx), math.Max(out.x1, gx)
		out.y0, out.y1 = math.Min(out.y0, gy), math.Max(out.y1, gy)
	}
	return out
}

// A rect is an upright rectangle in pixels or millimetres.
type rect struct{ x0, y0, x1, y1 float64 }

func (r rect) empty() bool { return !(r.x0 < r.x1 && r.y0 < r.y1) }

func (r rect) meets(o rect) bool {
	return r.x0 <= o.x1 && o.x0 <= r.x1 && r.y0 <= o.y1 && o.y0 <= r.y1
}

func (r rect) and(o rect) rect {
	return rect{math.Max(r.x0, o.x0), math.Max(r.y0, o.y0), math.Min(r.x1, o.x1), math.Min(r.y1, o.y1)}
}

func rectOf(b geom.Box) rect {
	return rect{b.Min.X.MM(), b.Min.Y.MM(), b.Max.X.MM(), b.Max.Y.MM()}
}

// shown returns which pixels of p the lay can touch, as a rectangle whose edges
// need not fall on pixels.
func (v View) shown(p *Plane, l Lay) rect {
	r := rect{0, 0, float64(p.W), float64(p.H)}
	if l.Clip.Empty() {
		return r
	}
	c := rectOf(l.Clip)
	return r.and(rect{
		(c.x0 - v.X) * v.PxPerMM, (c.y0 - v.Y) * v.PxPerMM,
		(c.x1 - v.X) * v.PxPerMM, (c.y1 - v.Y) * v.PxPerMM,
	})
}
