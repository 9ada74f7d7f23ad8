package pattern

import (
	"cmp"
	"math"
	"slices"

	"tsugime/repeat/geom"
)

// An Axis is one of the two ways by which a lattice repeats.
type Axis int

// Rows run along the first vector of a lattice, columns along the second.
const (
	Row Axis = iota
	Column
)

// along returns the vector of an axis and the coordinate along it of a place.
func (l Lattice) along(x Axis, p geom.Point) (way geom.Point, at float64) {
	u, v := l.coordinates(p)
	if x == Row {
		return l.A, u
	}
	return l.B, v
}

// InLine returns by which ways places must be moved so that they, or copies of them,
// lie in one row or column with the first: each across the line, the shorter way.
func (l Lattice) InLine(x Axis, places ...geom.Point) []geom.Point {
	ways := make([]geom.Point, len(places))
	for i, p := range places {
		way, at := l.along(1-x, p)
		_, first := l.along(1-x, places[0])
		ways[i] = share(way, first-at)
	}
	return ways
}

// Spread returns by which ways places must be moved along a row or column so that
// they and their copies follow each other in even steps, over the joint too: n places
// by one nth of the vector. The first one stays, the order along the line too, and
// none goes farther than it must.
func (l Lattice) Spread(x Axis, places ...geom.Point) []geom.Point {
	type beyond struct {
		i  int
		by float64 // from the first, 0 … 1
	}
	order := make([]beyond, len(places))
	for i, p := range places {
		_, at := l.along(x, p)
		_, first := l.along(x, places[0])
		order[i] = beyond{i, at - first - math.Floor(at-first)}
	}
	slices.SortStableFunc(order, func(a, b beyond) int { return cmp.Compare(a.by, b.by) })
	ways := make([]geom.Point, len(places))
	for k, o := range order {
		way, _ := l.along(x, places[o.i])
		ways[o.i] = share(way, float64(k)/float64(len(places))-o.by)
	}
	return ways
}

// share returns the part of a vector that remains when its whole multiples are taken
// away, the shorter way.
func share(way geom.Point, part float64) geom.Point {
	part -= math.Round(part)
	return geom.Point{X: way.X.Times(part), Y: way.Y.Times(part)}
}
