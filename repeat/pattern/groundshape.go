package pattern

import (
	"math"

	"tsugime/repeat/geom"
)

// onGrid returns the point nearest to x, y nanometres.
func onGrid(x, y float64) geom.Point {
	return geom.Point{X: geom.Length(math.Round(x)), Y: geom.Length(math.Round(y))}
}

// polygon returns the shape with straight sides between the corners, in nanometres.
func polygon(corners [][2]float64) geom.Shape {
	c := geom.Contour{Start: onGrid(corners[0][0], corners[0][1])}
	for _, p := range corners[1:] {
		c.Segments = append(c.Segments, geom.Segment{End: onGrid(p[0], p[1])})
	}
	c.Segments = append(c.Segments, geom.Segment{End: c.Start})
	return geom.Shape{Outline: geom.Outline{c}}
}

// band returns the piece of a ring around the origin from radius r0 to r1 and from
// angle a0 to a1 (radians, clockwise on the sheet from x), its long sides native
// arcs.
func band(r0, r1, a0, a1 float64) geom.Shape {
	at := func(r, a float64) geom.Point { return onGrid(r*math.Cos(a), r*math.Sin(a)) }
	bulge := math.Tan((a1 - a0) / 4)
	c := geom.Contour{Start: at(r1, a0)}
	c.Segments = []geom.Segment{
		{Kind: geom.Arc, End: at(r1, a1), Bulge: bulge},
		{End: at(r0, a1)},
		{Kind: geom.Arc, End: at(r0, a0), Bulge: -bulge},
		{End: c.Start},
	}
	return geom.Shape{Outline: geom.Outline{c}}
}

// boxed moves a shape so that its box stands around the origin, and returns the
// mark whose place makes up for it.
func boxed(x, y float64, s geom.Shape) mark {
	c := s.Bounds().Centre()
	return mark{x: x + float64(c.X), y: y + float64(c.Y), shape: s.Moved(c.Neg())}
}
