package outlinefile

import (
	"math"
	"slices"

	"tsugime/repeat/geom"
)

// A loop is one closed line that crosses no other of its group: a disc, or an
// outline of one contour.
type loop struct {
	shape geom.Shape
	box   geom.Box
	rings []geom.Ring // of an outline, made when first asked for
}

func loopOf(c geom.Contour) loop {
	s := geom.Shape{Outline: geom.Outline{c}}
	if d, ok := discOf(c); ok {
		s = geom.Shape{Disc: d}
	}
	return loop{shape: s, box: s.Bounds()}
}

// holds reports whether l goes around p.
func (l *loop) holds(p geom.Point) bool {
	if l.shape.Round() {
		return l.shape.Disc.Contains(p)
	}
	if l.rings == nil {
		l.rings = l.shape.Rings(geom.Chord)
	}
	return l.rings[0].Winding(p) != 0
}

// inner returns a place on l: the middle of a piece of it, where no other touches it.
func (l *loop) inner() geom.Point {
	if l.shape.Round() {
		return l.shape.Disc.Centre.Add(geom.Point{X: l.shape.Disc.Diameter / 2})
	}
	c := l.shape.Outline[0]
	ring := geom.Outline{{Start: c.Start, Segments: c.Segments[:1]}}.Rings(geom.Chord)[0]
	a, b := ring[len(ring)/2], ring[max(0, len(ring)/2-1)]
	return geom.Point{X: a.X + (b.X-a.X)/2, Y: a.Y + (b.Y-a.Y)/2}
}

// nested groups loops into shapes: what lies inside of one is its hole, what lies
// inside of that is a shape again. It returns the shapes in the order of their rims,
// and for each the number of its rim.
func nested(loops []loop) (shapes []geom.Shape, rims []int) {
	boxes := make([]geom.Box, len(loops))
	for i, l := range loops {
		boxes[i] = l.box
	}
	index := geom.NewIndex(boxes)
	parent, depth := make([]int, len(loops)), make([]int, len(loops))
	for i := range loops {
		parent[i] = -1
		p := loops[i].inner()
		least := math.Inf(1)
		index.Visit(geom.BoxOf(p), func(j int) bool {
			if j == i || !boxes[j].HoldsBox(boxes[i]) || !loops[j].holds(p) {
				return true
			}
			if boxes[j] == boxes[i] && loops[j].shape.AreaMM2() <= loops[i].shape.AreaMM2() {
				return true
			}
			depth[i]++
			if a := loops[j].shape.AreaMM2(); a < least {
				parent[i], least = j, a
			}
			return true
		})
	}
	holes := make(map[int][]int)
	for i, d := range depth {
		if d%2 == 1 {
			holes[parent[i]] = append(holes[parent[i]], i)
		}
	}
	for i, d := range depth {
		if d%2 == 1 {
			continue
		}
		s := loops[i].shape
		if len(holes[i]) > 0 {
			o := slices.Clone(contoursOf(s))
			for _, h := range holes[i] {
				o = append(o, contoursOf(loops[h].shape)...)
			}
			o, _ = sound(o, true)
			s = geom.Shape{Outline: o}
		}
		shapes, rims = append(shapes, s), append(rims, i)
	}
	return shapes, rims
}

// contoursOf returns the contours around s, two half circles around a disc.
func contoursOf(s geom.Shape) geom.Outline {
	if !s.Round() {
		return s.Outline
	}
	d := s.Disc
	left := geom.Point{X: d.Centre.X - d.Diameter/2, Y: d.Centre.Y}
	right := geom.Point{X: left.X + d.Diameter, Y: d.Centre.Y}
	return geom.Outline{{Start: right, Segments: []geom.Segment{
		{Kind: geom.Arc, Bulge: 1, End: left}, {Kind: geom.Arc, Bulge: 1, End: right},
	}}}
}

// discOf returns the disc that a contour goes around, where it is one: arcs about
// one centre, or cubics that stand for them as most programs draw circles, off by
// 2.8·10⁻⁴ of the radius.
func discOf(c geom.Contour) (geom.Disc, bool) {
	var on []geom.Point // places of the circle
	at, arcs := c.Start, true
	for _, s := range c.Segments {
		if s.Kind == geom.Line && s.End.Sub(at).Norm() > float64(geom.Snap) {
			return geom.Disc{}, false
		}
		on = append(on, s.End)
		if s.Kind == geom.Arc {
			d := s.End.Sub(at)
			on = append(on, geom.Point{
				X: at.X + d.X/2 + d.Y.Times(s.Bulge/2), Y: at.Y + d.Y/2 - d.X.Times(s.Bulge/2),
			})
		}
		arcs = arcs && s.Kind != geom.Cubic
		at = s.End
	}
	if at != c.Start || len(on) < 3 {
		return geom.Disc{}, false
	}
	o := geom.Outline{c}
	box := o.Bounds()
	d := geom.Disc{Centre: box.Centre(), Diameter: (box.Width() + box.Height()) / 2}
	slack := 2 * float64(geom.Chord) / 10
	if !arcs {
		d.Centre, d.Diameter = circleThrough(on)
		slack = max(slack, 3e-4*float64(d.Diameter)/2)
	}
	for _, r := range o.Rings(geom.Chord) {
		for _, p := range r {
			if math.Abs(p.Sub(d.Centre).Norm()-float64(d.Diameter)/2) > slack {
				return geom.Disc{}, false
			}
		}
	}
	return d, d.Diameter > 0 && math.Abs(o.AreaMM2()/d.AreaMM2()-1) < 0.02
}

// circleThrough returns the circle nearest to places on it, by the least squares of
// I. Kåsa (A circle fitting procedure and its error analysis, 1976).
func circleThrough(on []geom.Point) (geom.Point, geom.Length) {
	var mx, my float64
	for _, p := range on {
		mx += float64(p.X) / float64(len(on))
		my += float64(p.Y) / float64(len(on))
	}
	var xx, xy, yy, xz, yz, zz float64
	for _, p := range on {
		x, y := float64(p.X)-mx, float64(p.Y)-my
		z := x*x + y*y
		xx, xy, yy = xx+x*x, xy+x*y, yy+y*y
		xz, yz, zz = xz+x*z, yz+y*z, zz+z
	}
	det := xx*yy - xy*xy
	if det <= 1e-12*(xx+yy)*(xx+yy) {
		return on[0], 0
	}
	a, b := (xz*yy-yz*xy)/det/2, (yz*xx-xz*xy)/det/2
	r := math.Sqrt(a*a + b*b + zz/float64(len(on)))
	return place{mx + a, my + b}.grid(), geom.Length(math.Round(2 * r))
}
