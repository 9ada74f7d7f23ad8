package pen

import (
	"fmt"
	"math"

	"tsugime/repeat/geom"
)

// LineTo returns the straight segment to a place.
func LineTo(to geom.Point) geom.Segment { return geom.Segment{Kind: geom.Line, End: to} }

// ArcThrough returns the circular arc from a through a place to b; a straight
// segment where the three are in line. The chord is seen from a place of the arc
// under the angle π − θ/2, where θ is the turn of the arc (Euclid, Elements III.20 and
// III.22), and tan(θ/4) is the bulge.
func ArcThrough(a, through, b geom.Point) (geom.Segment, error) {
	ux, uy := away(through, a)
	vx, vy := away(through, b)
	sin, cos := vx*uy-vy*ux, ux*vx+uy*vy
	size := math.Hypot(ux, uy) * math.Hypot(vx, vy)
	if size == 0 || a == b {
		return geom.Segment{}, fmt.Errorf("an arc needs three places apart from each other; move one")
	}
	// (1 + cos)/sin and sin/(1 − cos) are the same; the one that loses nothing.
	bulge := sin / (size - cos)
	if cos > 0 {
		bulge = (size + cos) / sin
	}
	return bent(a, b, bulge)
}

// ArcOn returns the circular arc from a that sets out in a direction and ends at b.
// Between the direction and the chord lies half the turn of the arc (Euclid, Elements
// III.32).
func ArcOn(a, heading, b geom.Point) (geom.Segment, error) {
	hx, hy := float64(heading.X), float64(heading.Y)
	cx, cy := away(a, b)
	size := math.Hypot(hx, hy) * math.Hypot(cx, cy)
	if size == 0 {
		return geom.Segment{}, fmt.Errorf("an arc that goes on smoothly needs a piece before it and another place; draw a line first")
	}
	return bent(a, b, (hx*cy-hy*cx)/(size+hx*cx+hy*cy))
}

// bent returns the arc of a bulge, a straight segment where it rises less than the
// grid, an error where it would reach out of bounds.
func bent(a, b geom.Point, bulge float64) (geom.Segment, error) {
	height := math.Abs(bulge) * b.Sub(a).Norm() / 2
	switch {
	case !(height <= float64(geom.MaxSpan)/8):
		return geom.Segment{}, fmt.Errorf("no arc goes there: it would have to turn right back; move its end aside")
	case height < float64(geom.Grid):
		return LineTo(b), nil
	}
	return geom.Segment{Kind: geom.Arc, Bulge: bulge, End: b}, nil
}

// away returns the way from p to q.
func away(p, q geom.Point) (x, y float64) {
	d := q.Sub(p)
	return float64(d.X), float64(d.Y)
}

// CurveTo returns the cubic from a to b with its handles at c1 and c2. A handle that
// was not pulled lies on its node; with both there it is a straight segment.
func CurveTo(a, c1, c2, b geom.Point) geom.Segment {
	if c1 == a && c2 == b {
		return LineTo(b)
	}
	return geom.Segment{Kind: geom.Cubic, C1: c1, C2: c2, End: b}
}

// Opposite returns the place as far from at as p is, on its other side.
func Opposite(at, p geom.Point) geom.Point { return at.Add(at.Sub(p)) }

// leaning returns the place that lies from at in a direction, so far.
func leaning(at, heading geom.Point, far float64) geom.Point {
	n := heading.Norm()
	if n == 0 {
		return at
	}
	return at.Add(geom.Point{
		X: geom.Length(math.Round(float64(heading.X) / n * far)),
		Y: geom.Length(math.Round(float64(heading.Y) / n * far)),
	})
}

// between returns the place at a share of the way from a to b.
func between(a, b geom.Point, share float64) geom.Point {
	d := b.Sub(a)
	return a.Add(geom.Point{X: d.X.Times(share), Y: d.Y.Times(share)})
}
