package report

import (
	"math"
	"slices"

	"tsugime/repeat/geom"
)

// The pile is held on its four sides by twisted-paper string (a craft body's
// text on the trade); where the holes stand is not told. These are our
// recommendations: in the margin, 10 mm or more from the nearest cut, off the
// star line, and far enough from the edge that the string doesn't tear out.
const (
	stringHole  = 3 * geom.Millimetre
	stringClear = 10 * geom.Millimetre
	stringEdge  = 7 * geom.Millimetre
	starLineOff = 5 * geom.Millimetre
)

// A side is one of the four sides of the paper.
type side string

const (
	leftSide   side = "left"
	rightSide  side = "right"
	topSide    side = "top"
	bottomSide side = "bottom"
)

func sides() []side { return []side{leftSide, rightSide, topSide, bottomSide} }

// A stringPlace is a hole for the string, measured from the paper's top left.
type stringPlace struct {
	side  side
	at    geom.Point
	clear geom.Length // from the hole's rim to the nearest cut or star
}

// A binding is where the strings go, and the sides where they find no room.
type binding struct {
	places []stringPlace
	bare   []side
}

// bind places two holes on every side of the paper, as near to the quarters of
// the side as the rules let them be; of a split, where they keep clear of the
// cuts and stars of both sheets, so that both piles are bound alike. A side without room for both stays bare
// and is told of.
func bind(s setSheet) binding {
	c := newClearing(s)
	var b binding
	for _, sd := range sides() {
		var found []stringPlace
		for _, quarter := range []float64{0.25, 0.75} {
			if at, ok := c.nearest(sd, quarter); ok {
				found = append(found, stringPlace{sd, at, c.clear(at)})
			}
		}
		if len(found) < 2 || found[0].at.Distance(found[1].at) < 4*stringHole {
			b.bare = append(b.bare, sd)
			continue
		}
		b.places = append(b.places, found...)
	}
	return b
}

// A clearing answers how far a place is from everything that is cut.
type clearing struct {
	paper     geom.Box
	field     geom.Box // of all that is cut
	shapes    []geom.Shape
	index     *geom.Index
	starLines []geom.Length
}

func newClearing(s setSheet) clearing {
	c := clearing{paper: s.Paper, field: s.cutField()}
	for _, sheet := range s.Set() {
		c.shapes = append(c.shapes, shapesOf(sheet.CutOuts)...)
	}
	for _, star := range s.marks() {
		c.shapes = append(c.shapes, geom.DiscShape(star.At, star.Diameter))
		if !slices.Contains(c.starLines, star.At.Y) {
			c.starLines = append(c.starLines, star.At.Y)
		}
	}
	boxes := make([]geom.Box, len(c.shapes))
	for i, shape := range c.shapes {
		boxes[i] = shape.Bounds()
	}
	c.index = geom.NewIndex(boxes)
	return c
}

// clear returns the distance from a hole's rim at p to the nearest cut, up to
// 100 mm, beyond which nothing is looked for.
func (c clearing) clear(p geom.Point) geom.Length {
	const far = 100 * geom.Millimetre
	for reach := 2 * stringClear; ; reach *= 2 {
		reach = min(reach, far)
		nearest := float64(reach)
		c.index.Visit(geom.BoxOf(p).Grown(reach), func(i int) bool {
			nearest = min(nearest, rimDistance(c.shapes[i], p))
			return true
		})
		if nearest < float64(reach) || reach == far {
			return geom.Length(math.Floor(nearest)) - stringHole/2
		}
	}
}

// nearest looks along the middle of a side's margin for the allowed place that
// is nearest to a fraction of the side, millimetre by millimetre.
func (c clearing) nearest(sd side, fraction float64) (geom.Point, bool) {
	paper, field := c.paper, c.field
	upright := sd == leftSide || sd == rightSide
	length := paper.Width()
	if upright {
		length = paper.Height()
	}
	for off := geom.Length(0); off < length; off += geom.Millimetre {
		for _, along := range []geom.Length{length.Times(fraction) - off, length.Times(fraction) + off} {
			var p geom.Point
			switch sd {
			case leftSide:
				p = geom.Point{X: (paper.Min.X + field.Min.X) / 2, Y: paper.Min.Y + along}
			case rightSide:
				p = geom.Point{X: (paper.Max.X + field.Max.X) / 2, Y: paper.Min.Y + along}
			case topSide:
				p = geom.Point{X: paper.Min.X + along, Y: (paper.Min.Y + field.Min.Y) / 2}
			case bottomSide:
				p = geom.Point{X: paper.Min.X + along, Y: (paper.Max.Y + field.Max.Y) / 2}
			}
			if c.allows(p) {
				return p, true
			}
		}
	}
	return geom.Point{}, false
}

// allows reports whether a string hole may stand at p.
func (c clearing) allows(p geom.Point) bool {
	if !c.paper.Grown(-stringEdge).Holds(p) {
		return false
	}
	for _, y := range c.starLines {
		if (p.Y - y).Abs() < starLineOff+stringHole/2 {
			return false
		}
	}
	return c.clear(p) >= stringClear
}

// rimDistance returns how far p is from a shape in nanometres, zero inside.
func rimDistance(s geom.Shape, p geom.Point) float64 {
	if s.Round() {
		return max(0, p.Sub(s.Disc.Centre).Norm()-float64(s.Disc.Diameter)/2)
	}
	if s.Contains(p) {
		return 0
	}
	nearest := math.Inf(1)
	for _, ring := range s.Rings(geom.Chord) {
		for i, b := range ring {
			nearest = min(nearest, pieceDistance(ring[(i+len(ring)-1)%len(ring)], b, p))
		}
	}
	return nearest
}

// pieceDistance returns the distance of p from the straight piece a to b.
func pieceDistance(a, b, p geom.Point) float64 {
	d, q := b.Sub(a), p.Sub(a)
	t := 0.0
	if n := float64(d.Dot(d)); n > 0 {
		t = min(1, max(0, float64(q.Dot(d))/n))
	}
	return math.Hypot(float64(q.X)-t*float64(d.X), float64(q.Y)-t*float64(d.Y))
}
