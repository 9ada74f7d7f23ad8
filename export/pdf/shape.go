package pdf

import (
	"math"

	"tsugime/export"
	"tsugime/repeat/geom"
)

// round is how far along the tangent, in radii, the controls of the four cubics
// stand that make a disc: 2 − √((22 − 5π)/3), for which the four enclose exactly
// the area of the disc (Green's theorem on a quarter). The rim is then nowhere
// farther off than 2.7 parts in ten thousand of the radius, as little as with
// the usual 0.5523, which prints each hole 0.028 % too large.
var round = 2 - math.Sqrt((22-5*math.Pi)/3)

// discs writes discs, each as a path around the origin moved to its place: for
// all discs of a size the same bytes, which compress to almost nothing.
func (c *content) discs(discs []geom.Disc, paint string) {
	var path []byte
	var diameter geom.Length
	for _, d := range discs {
		if d.Diameter != diameter {
			diameter = d.Diameter
			path = append(appendDisc(path[:0], diameter), paint...)
		}
		c.op("q 1 0 0 1").at(d.Centre).op("cm")
		c.out.Write(path)
		c.end(" Q")
	}
}

// appendDisc appends a disc around the origin to the nanometre.
func appendDisc(dst []byte, diameter geom.Length) []byte {
	r := diameter / 2
	k := diameter.Times(round / 2)
	put := func(operator byte, numbers ...geom.Length) {
		for _, v := range numbers {
			dst = append(v.AppendMM(dst, 6), ' ')
		}
		dst = append(dst, operator, ' ')
	}
	put('m', r, 0)
	put('c', r, k, k, r, 0, r)
	put('c', -k, r, -r, k, -r, 0)
	put('c', -r, -k, -k, -r, 0, -r)
	put('c', k, -r, r, -k, r, 0)
	put('h')
	return dst
}

// outline writes the path of o.
func (c *content) outline(o geom.Outline) {
	for _, contour := range o {
		c.at(contour.Start).end("m")
		at := contour.Start
		for _, s := range contour.Segments {
			for _, arc := range export.ArcPieces(at, s, arcStep(at, s)) {
				for _, piece := range arc.Cubics(at) {
					c.segment(piece)
				}
				at = arc.End
			}
		}
		c.end("h")
	}
}

func (c *content) segment(s geom.Segment) {
	if s.Kind == geom.Cubic {
		c.at(s.C1).at(s.C2).at(s.End).end("c")
		return
	}
	c.at(s.End).end("l")
}

// arcStep is by how many degrees one cubic may turn to stay within geom.Chord of
// an arc: its error is 2/27 · sin⁶(θ/4) / cos²(θ/4) of the radius (T. Dokken et
// al., Good approximation of circles by curvature-continuous Bézier curves, CAGD
// 7, 1990), of which the cosine is left out, being near one, and made up for by a
// tenth.
func arcStep(at geom.Point, s geom.Segment) float64 {
	if s.Kind != geom.Arc {
		return 90
	}
	off := float64(geom.Chord) / export.ArcRadius(at, s)
	sine := math.Pow(off*27/2, 1.0/6)
	return math.Min(90, 0.9*4*math.Asin(math.Min(sine, 1))*180/math.Pi)
}
