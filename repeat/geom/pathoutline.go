package geom

import (
	"fmt"
	"math"
)

// A pathOutline is the pen that draws path data in millimetres as an outline.
type pathOutline struct {
	err     error
	out     Outline
	contour Contour
	x, y    float64 // the present place, mm
	sx, sy  float64 // where the subpath began
	began   bool    // a subpath is open
	pieces  int     // added so far
}

// Bounds of path data: the farthest coordinate in mm, and the most pieces.
const (
	pathReach  = 10_000
	pathPieces = 200_000
)

func (p *pathOutline) Move(x, y float64) {
	p.end()
	p.x, p.y, p.sx, p.sy = x, y, x, y
}

func (p *pathOutline) Close() {
	p.end()
	p.x, p.y = p.sx, p.sy
}

// end ends the open subpath.
func (p *pathOutline) end() {
	if p.began && len(p.contour.Segments) > 0 {
		n := len(p.contour.Segments)
		if p.contour.Segments[n-1].End != p.contour.Start {
			p.contour.Segments = append(p.contour.Segments, Segment{End: p.contour.Start})
		}
		p.out = append(p.out, p.contour)
		// An arc may bulge farther than its ends.
		p.within(Outline{p.contour}.Bounds())
	}
	p.began = false
}

// within keeps an error where b reaches too far.
func (p *pathOutline) within(b Box) {
	most := BoxOf(PtMM(-pathReach, -pathReach), PtMM(pathReach, pathReach))
	if p.err == nil && !most.HoldsBox(b) {
		p.err = fmt.Errorf("it reaches out of ±%d mm; draw it smaller", pathReach)
	}
}

func (p *pathOutline) add(s Segment, x, y float64) {
	if !p.began {
		p.began = true
		p.contour = Contour{Start: PtMM(p.x, p.y)}
	}
	s.End = PtMM(x, y)
	p.x, p.y = x, y
	at := p.contour.Start
	if n := len(p.contour.Segments); n > 0 {
		at = p.contour.Segments[n-1].End
	}
	if s.End == at && s.straight(at) {
		return // it has no extent
	}
	p.contour.Segments = append(p.contour.Segments, s)
	if s.Kind == Cubic {
		p.within(BoxOf(s.C1, s.C2))
	}
	if p.pieces++; p.err == nil && p.pieces > pathPieces {
		p.err = fmt.Errorf("it has more than %d pieces; draw it plainer", pathPieces)
	}
}

func (p *pathOutline) Line(x, y float64) { p.add(Segment{}, x, y) }

func (p *pathOutline) Cubic(x1, y1, x2, y2, x, y float64) {
	p.add(Segment{Kind: Cubic, C1: PtMM(x1, y1), C2: PtMM(x2, y2)}, x, y)
}

// Arc draws circular arcs as they are, others as cubics.
func (p *pathOutline) Arc(rx, ry, degrees float64, large, sweep bool, x, y float64) {
	switch {
	case rx == 0 || ry == 0:
		p.Line(x, y)
		return
	case x == p.x && y == p.y:
		return
	case math.Abs(rx-ry) <= 1e-9*rx:
		p.circle(rx, large, sweep, x, y)
		return
	}
	e := EllipseBetween(p.x, p.y, rx, ry, degrees, large, sweep, x, y)
	sin, cos := sincosDegrees(degrees)
	at := func(px, py float64) (float64, float64) {
		return e.X + cos*e.RX*px - sin*e.RY*py, e.Y + sin*e.RX*px + cos*e.RY*py
	}
	n := int(math.Ceil(math.Abs(e.Turn)/(math.Pi/2) - 1e-9))
	step := e.Turn / float64(n)
	k := 4.0 / 3 * math.Tan(step/4)
	for i := range n {
		s0, c0 := math.Sincos(e.From + float64(i)*step)
		s1, c1 := math.Sincos(e.From + float64(i+1)*step)
		x1, y1 := at(c0-k*s0, s0+k*c0)
		x2, y2 := at(c1+k*s1, s1-k*c1)
		x3, y3 := at(c1, s1)
		if i == n-1 {
			x3, y3 = x, y
		}
		p.Cubic(x1, y1, x2, y2, x3, y3)
	}
}

// circle goes along a circular arc to x, y. It works on the grid that the ends
// are put on, so that what PathData writes comes back to the bit.
func (p *pathOutline) circle(r float64, large, sweep bool, x, y float64) {
	half := PtMM(x, y).Sub(PtMM(p.x, p.y)).Norm() / 2
	bulge := flatBulge(half, r*float64(Millimetre))
	if large {
		bulge = 1 / bulge
	}
	if !sweep {
		bulge = -bulge
	}
	if half == 0 { // both ends on one grid point: the arc has no extent
		bulge = 0
	}
	p.add(Segment{Kind: Arc, Bulge: bulge}, x, y)
}

// flatBulge returns tan(θ/4) of the arc of radius r over half a chord that turns
// by at most a half circle; a radius that is too small counts as half the chord.
// With q = half/r = sin(θ/2) it is q/(1+√(1−q²)), which loses nothing to rounding
// where the arc is flat.
func flatBulge(half, r float64) float64 {
	q := math.Min(half/r, 1)
	return q / (1 + math.Sqrt((1-q)*(1+q)))
}
