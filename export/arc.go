package export

import (
	"math"

	"tsugime/repeat/geom"
)

// ArcPieces cuts an arc that starts at a into even arcs that turn by at most
// mostDeg each. A format that gives an arc by its radius needs them short: the
// height of an arc over its chord depends on the radius so strongly near a half
// circle that the last written decimal shows. Other segments come back alone.
func ArcPieces(a geom.Point, s geom.Segment, mostDeg float64) []geom.Segment {
	if s.Kind != geom.Arc || s.Bulge == 0 || s.End == a {
		return []geom.Segment{s}
	}
	turn := 4 * math.Atan(s.Bulge)
	n := int(math.Ceil(math.Abs(turn)/(mostDeg*math.Pi/180) - 1e-9))
	if n <= 1 {
		return []geom.Segment{s}
	}
	// The centre, in steps from a: half the chord along, and across it what is
	// left of the radius (Bulge is the tangent of a quarter of the turn).
	chord := s.End.Sub(a)
	dx, dy := float64(chord.X), float64(chord.Y)
	h := (1 - s.Bulge*s.Bulge) / (4 * s.Bulge)
	cx, cy := dx/2-float64(dy*h), dy/2+float64(dx*h)
	pieces := make([]geom.Segment, n)
	bulge := math.Tan(turn / float64(n) / 4)
	for i := range pieces {
		sin, cos := math.Sincos(turn * float64(i+1) / float64(n))
		pieces[i] = geom.Segment{Kind: geom.Arc, Bulge: bulge, End: a.Add(geom.Point{
			X: geom.Length(math.Round(cx - float64(cos*cx) + float64(sin*cy))),
			Y: geom.Length(math.Round(cy - float64(sin*cx) - float64(cos*cy))),
		})}
	}
	pieces[n-1].End = s.End
	return pieces
}

// ArcRadius returns the radius of an arc from a, in nanometres.
func ArcRadius(a geom.Point, s geom.Segment) float64 {
	b := math.Abs(s.Bulge)
	return s.End.Sub(a).Norm() * (1 + b*b) / (4 * b)
}
