package pen

import (
	"fmt"
	"math"

	"tsugime/repeat/geom"
)

// Figures are whole shapes about the origin, by their measures. Corners and ends
// are rounded to the grid; round edges are arcs.

// MostCorners is how many corners a polygon or points a star may have.
const MostCorners = 360

// Polygon returns the regular polygon with n corners on the circle of a radius, the
// first one turned by degrees from straight up, clockwise on the sheet.
func Polygon(n int, radius geom.Length, turnDeg float64) (geom.Outline, error) {
	if n < 3 || n > MostCorners {
		return nil, fmt.Errorf("%d corners are out of bounds; give 3 to %d", n, MostCorners)
	}
	if err := sized("radius", radius); err != nil {
		return nil, err
	}
	return polygon(n, turnDeg, func(int) geom.Length { return radius }), nil
}

// Star returns the star with n points on the circle of a radius and its inner
// corners on that of inner times the radius.
func Star(n int, radius geom.Length, inner, turnDeg float64) (geom.Outline, error) {
	if n < 2 || n > MostCorners {
		return nil, fmt.Errorf("%d points are out of bounds; give 2 to %d", n, MostCorners)
	}
	if err := share("inner share", inner); err != nil {
		return nil, err
	}
	if err := sized("radius", radius); err != nil {
		return nil, err
	}
	return polygon(2*n, turnDeg, func(i int) geom.Length {
		if i%2 == 1 {
			return radius.Times(inner)
		}
		return radius
	}), nil
}

func polygon(n int, turnDeg float64, radius func(i int) geom.Length) geom.Outline {
	var c geom.Contour
	for i := range n {
		p := geom.Rotate(360*float64(i)/float64(n) + turnDeg).Apply(geom.Point{Y: -radius(i)})
		if i == 0 {
			c.Start = p
		} else {
			c.Segments = append(c.Segments, LineTo(p))
		}
	}
	c.Segments = append(c.Segments, LineTo(c.Start))
	return geom.Outline{c}
}

// Petal returns the petal of two arcs that meet in two points, upright and then
// turned: so long from point to point, and width times that wide.
func Petal(length geom.Length, width, turnDeg float64) (geom.Outline, error) {
	o, err := PetalBetween(geom.Point{Y: -length / 2}, geom.Point{Y: length - length/2}, width)
	return turned(o, turnDeg), err
}

// PetalBetween returns the petal whose points are a and b, width times as wide as long.
func PetalBetween(a, b geom.Point, width float64) (geom.Outline, error) {
	if err := sized("length", a.Distance(b)); err != nil {
		return nil, err
	}
	if err := share("width", width); err != nil {
		return nil, err
	}
	side := geom.Segment{Kind: geom.Arc, Bulge: width} // half the width over half the length
	there, back := side, side
	there.End, back.End = b, a
	return geom.Outline{{Start: a, Segments: []geom.Segment{there, back}}}, nil
}

// Slot returns the slot with round ends, lying across and then turned: so long over
// all, and width times that wide.
func Slot(length geom.Length, width, turnDeg float64) (geom.Outline, error) {
	if err := sized("length", length); err != nil {
		return nil, err
	}
	if err := share("width", width); err != nil {
		return nil, err
	}
	half := length.Times(width / 2)
	x := length/2 - half
	if x <= 0 || half <= 0 {
		return nil, fmt.Errorf("the slot would be as wide as long; make it longer, or draw a circle")
	}
	return turned(geom.Outline{{Start: geom.Point{X: -x, Y: -half}, Segments: []geom.Segment{
		LineTo(geom.Point{X: x, Y: -half}),
		{Kind: geom.Arc, Bulge: 1, End: geom.Point{X: x, Y: half}},
		LineTo(geom.Point{X: -x, Y: half}),
		{Kind: geom.Arc, Bulge: 1, End: geom.Point{X: -x, Y: -half}},
	}}}, turnDeg), nil
}

// Ring returns the ring between the circle of a radius and that of inner times the
// radius. The disc within is an island: it needs ties.
func Ring(radius geom.Length, inner float64) (geom.Outline, error) {
	if err := sized("radius", radius); err != nil {
		return nil, err
	}
	if err := share("inner share", inner); err != nil {
		return nil, err
	}
	within := radius.Times(inner)
	if within <= 0 || within >= radius {
		return nil, fmt.Errorf("the ring would have no width on the grid; draw it larger")
	}
	return geom.Outline{circle(radius, 1), circle(within, -1)}, nil
}

// circle is two half circles that turn with the bulge's sign.
func circle(radius geom.Length, bulge float64) geom.Contour {
	left, right := geom.Point{X: -radius}, geom.Point{X: radius}
	half := geom.Segment{Kind: geom.Arc, Bulge: bulge}
	there, back := half, half
	there.End, back.End = right, left
	return geom.Contour{Start: left, Segments: []geom.Segment{there, back}}
}

// OfDisc returns the outline of a disc, four quarter arcs with nodes at its top,
// right, foot and left.
func OfDisc(d geom.Disc) geom.Outline {
	r := d.Diameter / 2
	at := func(x, y geom.Length) geom.Point { return d.Centre.Add(geom.Point{X: x, Y: y}) }
	arc := func(end geom.Point) geom.Segment { return geom.Segment{Kind: geom.Arc, Bulge: quarter, End: end} }
	return geom.Outline{{Start: at(0, -r), Segments: []geom.Segment{arc(at(r, 0)), arc(at(0, r)), arc(at(-r, 0)), arc(at(0, -r))}}}
}

func turned(o geom.Outline, deg float64) geom.Outline {
	if math.Mod(deg, 360) == 0 {
		return o
	}
	return o.Mapped(geom.Rotate(deg))
}

func sized(name string, l geom.Length) error {
	if l <= 0 || l > geom.Metre {
		return fmt.Errorf("a %s of %s mm is out of bounds; give more than 0 and at most 1000 mm", name, l)
	}
	return nil
}

func share(name string, v float64) error {
	if !(v > 0 && v < 1) {
		return fmt.Errorf("a %s of %g %% is out of bounds; give more than 0 and less than 100 %%", name, 100*v)
	}
	return nil
}
