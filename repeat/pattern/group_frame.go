package pattern

import (
	"fmt"
	"math"

	"tsugime/repeat/geom"
)

// A frame is a conventional cell in the plane: the axes that a group's
// operations are written in.
type frame struct{ ax, ay, bx, by float64 } // nanometres

func frameOf(l Lattice) frame {
	return frame{float64(l.A.X), float64(l.A.Y), float64(l.B.X), float64(l.B.Y)}
}

func (f frame) det() float64 { return f.ax*f.by - f.ay*f.bx }

// into returns the coordinates of a place, out the place of coordinates.
func (f frame) into(x, y float64) (u, v float64) {
	d := f.det()
	return (x*f.by - y*f.bx) / d, (f.ax*y - f.ay*x) / d
}

func (f frame) out(u, v float64) (x, y float64) { return u*f.ax + v*f.bx, u*f.ay + v*f.by }

// image returns where o takes a place.
func (f frame) image(o Op, x, y float64) (float64, float64) {
	return f.out(o.apply(f.into(x, y)))
}

// point puts coordinates on the grid.
func (f frame) point(u, v float64) geom.Point {
	x, y := f.out(u, v)
	return geom.Point{X: geom.Length(math.Round(x)), Y: geom.Length(math.Round(y))}
}

// turn returns what o does to directions: mirrored left to right first where
// mirrored, then turned. A turn that the grid puts off a multiple of 15° by less
// than Alike over a cell is that multiple.
func (f frame) turn(o Op) (deg float64, mirrored bool) {
	m := func(x, y float64) (float64, float64) {
		u, v := f.into(x, y)
		return f.out(float64(o.M[0][0])*u+float64(o.M[0][1])*v, float64(o.M[1][0])*u+float64(o.M[1][1])*v)
	}
	a, c := m(1, 0)
	b, d := m(0, 1)
	mirrored = o.det() < 0
	rad := math.Atan2(c-b, a+d)
	if mirrored {
		rad = math.Atan2(-(b + c), d-a)
	}
	deg = rad * 180 / math.Pi
	if near := math.Round(deg/15) * 15; math.Abs(deg-near)*math.Pi/180*f.longest() <= float64(geom.Alike) {
		deg = near
	}
	return deg, mirrored
}

func (f frame) longest() float64 { return max(math.Hypot(f.ax, f.ay), math.Hypot(f.bx, f.by)) }

// suits reports whether f's axes are those of a system, to Alike.
func (f frame) suits(s system) bool {
	a, b, dot := math.Hypot(f.ax, f.ay), math.Hypot(f.bx, f.by), f.ax*f.bx+f.ay*f.by
	lean := func(want float64) bool { return math.Abs(dot-want)/min(a, b) <= float64(geom.Alike) }
	even := math.Abs(a-b) <= float64(geom.Alike)
	switch s {
	case rectangularAxes, centredAxes:
		return lean(0)
	case squareAxes:
		return lean(0) && even
	case hexagonalAxes:
		return even && lean(-a*b/2)
	}
	return true
}

// upright returns the smallest rectangle with sides across and along whose
// corners are places of l, and how many cells of l it holds, at most 2 for the
// systems of the groups.
func (l Lattice) upright() (f frame, cells int64) {
	det := l.A.Cross(l.B)
	det = max(det, -det)
	gx, gy := int64(gcd(int(l.A.X), int(l.B.X))), int64(gcd(int(l.A.Y), int(l.B.Y)))
	f = frame{ax: float64(det / gy), by: float64(det / gx)}
	if l.A.X == 0 && l.B.Y == 0 { // the first vector decides
		f = frame{ay: f.by, bx: f.ax}
	}
	return f, det / gx / gy
}

// frameFor returns the axes on which a group of the system lies on l: upright
// ones first, then those of the vectors as they are, then the shortest.
func (l Lattice) frameFor(s system) (frame, bool) {
	given, r := frameOf(l), frameOf(l.Reduced())
	var tries []frame
	box, cells := l.upright()
	if cells == 1 || s == centredAxes && cells == 2 {
		tries = append(tries, box)
	}
	rhomb := frame{r.ax + r.bx, r.ay + r.by, r.ax - r.bx, r.ay - r.by}
	if s == centredAxes {
		tries = append(tries, rhomb,
			frame{r.ax, r.ay, 2*r.bx - r.ax, 2*r.by - r.ay}, frame{r.ax, r.ay, 2*r.bx + r.ax, 2*r.by + r.ay})
	}
	if s == obliqueAxes {
		tries = nil
	}
	tries = append(tries, given, frame{given.ax, given.ay, -given.bx, -given.by}, r, frame{r.ax, r.ay, -r.bx, -r.by})
	for _, f := range tries {
		if f.suits(s) {
			return f, true
		}
	}
	return frame{}, false
}

// Allows returns nil where l can carry g, and else what to change.
func (g Group) Allows(l Lattice) error {
	_, _, err := g.on(l)
	return err
}

// on returns g's row and the axes on which it lies on l.
func (g Group) on(l Lattice) (groupEntry, frame, error) {
	e, err := g.entry()
	if err != nil {
		return e, frame{}, err
	}
	if err := l.Check(); err != nil {
		return e, frame{}, err
	}
	f, ok := l.frameFor(e.system)
	if ok {
		return e, f, nil
	}
	return e, f, fmt.Errorf("plane group %s: the %s lattice %s, %s and %s, %s mm doesn't go with it; %s",
		g, l.Kind(), l.A.X, l.A.Y, l.B.X, l.B.Y, map[system]string{
			rectangularAxes: "lay it straight",
			centredAxes:     "lay it diagonal or straight, or as a drop or brick by a half",
			squareAxes:      "lay it straight or diagonal with columns and rows equally far apart",
			hexagonalAxes:   "lay it hexagonal",
		}[e.system])
}

// Domain returns a piece of the plane that g's copies and l's cover once: draw in
// it, and the rest follows. Its corners are rounded to the grid.
func (g Group) Domain(l Lattice) (geom.Ring, error) {
	e, f, err := g.on(l)
	if err != nil {
		return nil, err
	}
	ring := make(geom.Ring, len(e.domain))
	for i, c := range e.domain {
		ring[i] = f.point(float64(c[0])/parts, float64(c[1])/parts)
	}
	return ring, nil
}
