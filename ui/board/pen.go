package board

import (
	"image"
	"image/color"
	"math"

	"tsugime/export/raster"
	"tsugime/repeat/geom"
)

// A pen draws marks on a picture, with soft edges. Marks are signs for the eye,
// not the design: their widths are in screen units and their edges are the
// distance to the middle line, cut off at half a pixel.
type pen struct {
	img  *image.RGBA
	view raster.View
	unit float64 // pixels in a screen unit
	// kept takes what is drawn, to be laid on the picture together; nil lays it at once.
	kept *[]touch
}

// A spot is a place in pixels.
type spot struct{ x, y float64 }

func (p pen) spot(at geom.Point) spot {
	return spot{(at.X.MM() - p.view.X) * p.view.PxPerMM, (at.Y.MM() - p.view.Y) * p.view.PxPerMM}
}

func (p pen) mark(m Mark) {
	width := float64(m.Width) * p.unit
	if m.Width == 0 {
		width = p.unit
	}
	r := m.Radius.MM() * p.view.PxPerMM
	switch m.Shape {
	case Line, Loop:
		p.run(m, m.Shape == Loop, func(a, b spot) { p.line(a, b, width, m.Colour) })
	case Dashes:
		p.dashes(m, width)
	case Star:
		for _, at := range m.Points {
			p.star(p.spot(at), math.Max(r, 5*p.unit), width, m.Colour)
		}
	case Ring:
		for _, at := range m.Points {
			p.ring(p.spot(at), math.Max(r+2*p.unit, 4*p.unit), width, m.Colour)
		}
	case Bar:
		for i := 0; i+1 < len(m.Points); i += 2 {
			p.bar(p.spot(m.Points[i]), p.spot(m.Points[i+1]), width, m.Colour)
		}
	case Wedge:
		for _, at := range m.Points {
			s := p.spot(at)
			d := 5 * p.unit
			p.line(s, spot{s.x - d, s.y - 2*d}, width, m.Colour)
			p.line(s, spot{s.x + d, s.y - 2*d}, width, m.Colour)
			p.line(spot{s.x - d, s.y - 2*d}, spot{s.x + d, s.y - 2*d}, width, m.Colour)
		}
	case Hatch:
		p.hatch(m, width)
	case Strip:
		p.strips(m, r, width)
	case Cross:
		for _, at := range m.Points {
			p.cross(p.spot(at), width, m.Colour)
		}
	case Knob:
		for i := 0; i+1 < len(m.Points); i += 2 {
			p.knobBeyond(p.spot(m.Points[i]), p.spot(m.Points[i+1]), width, m.Colour)
		}
	case Peg, Bead:
		for _, at := range m.Points {
			p.knob(p.spot(at), m.Shape == Bead, width, m.Colour)
		}
	}
}

// run calls do with each straight piece that can be seen. Points of a long line that
// stay on the way are left out.
func (p pen) run(m Mark, closed bool, do func(a, b spot)) {
	spots := p.straightened(m.Points)
	n := len(spots)
	for i := range spots {
		j := i + 1
		if j == n {
			if !closed {
				return
			}
			j = 0
		}
		if a, b, ok := p.seen(spots[i], spots[j]); ok {
			do(a, b)
		}
	}
}

// How far a line may be drawn beside its points, in pixels, and from how many
// points on.
const (
	besidePx  = 0.35
	manySpots = 16
)

// straightened returns where points are in pixels, of many those that can be told from
// a straight way.
func (p pen) straightened(points []geom.Point) []spot {
	if len(points) >= manySpots {
		points = geom.Straightened(points, geom.MM(besidePx/p.view.PxPerMM))
	}
	spots := make([]spot, len(points))
	for i, at := range points {
		spots[i] = p.spot(at)
	}
	return spots
}

// seen cuts a line to the picture and a little around it (Liang and Barsky, A New
// Concept and Method for Line Clipping, ACM Transactions on Graphics 3, 1984).
func (p pen) seen(a, b spot) (spot, spot, bool) {
	const around = 50
	w, h := float64(p.img.Rect.Dx())+around, float64(p.img.Rect.Dy())+around
	dx, dy := b.x-a.x, b.y-a.y
	from, to := 0.0, 1.0
	for _, e := range [4][2]float64{{-dx, a.x + around}, {dx, w - a.x}, {-dy, a.y + around}, {dy, h - a.y}} {
		switch {
		case e[0] == 0 && e[1] < 0:
			return a, b, false
		case e[0] < 0:
			from = math.Max(from, e[1]/e[0])
		case e[0] > 0:
			to = math.Min(to, e[1]/e[0])
		}
	}
	if from > to {
		return a, b, false
	}
	return spot{a.x + from*dx, a.y + from*dy}, spot{a.x + to*dx, a.y + to*dy}, true
}

// dashes draws the run of m in marks and gaps, measured along the run from where
// it enters the picture.
func (p pen) dashes(m Mark, width float64) {
	mark, gap := 7*p.unit, 5*p.unit
	at := 0.0
	p.run(m, false, func(a, b spot) {
		length := math.Hypot(b.x-a.x, b.y-a.y)
		if length == 0 {
			return
		}
		on := func(t float64) spot { return spot{a.x + (b.x-a.x)*t/length, a.y + (b.y-a.y)*t/length} }
		for t := -math.Mod(at, mark+gap); t < length; t += mark + gap {
			if from, to := math.Max(t, 0), math.Min(t+mark, length); from < to {
				p.line(on(from), on(to), width, m.Colour)
			}
		}
		at += length
	})
}

// star is a register star: a ring with a cross that stands out of it.
func (p pen) star(s spot, r, width float64, c color.RGBA) {
	p.ring(s, r, width, c)
	out := r + 4*p.unit
	p.line(spot{s.x - out, s.y}, spot{s.x + out, s.y}, width, c)
	p.line(spot{s.x, s.y - out}, spot{s.x, s.y + out}, width, c)
}

// bar is a measured distance: a line with a foot at each end.
func (p pen) bar(a, b spot, width float64, c color.RGBA) {
	p.line(a, b, width, c)
	dx, dy := b.x-a.x, b.y-a.y
	l := math.Hypot(dx, dy)
	nx, ny := 0.0, 1.0
	if l > 0 {
		nx, ny = -dy/l, dx/l
	}
	foot := 4 * p.unit
	for _, e := range [2]spot{a, b} {
		p.line(spot{e.x - nx*foot, e.y - ny*foot}, spot{e.x + nx*foot, e.y + ny*foot}, width, c)
	}
}

// ring draws a circle.
func (p pen) ring(s spot, r, width float64, c color.RGBA) {
	p.soft(s.x-r-width, s.y-r-width, s.x+r+width, s.y+r+width, c, func(x, y float64) float64 {
		return width/2 + 0.5 - math.Abs(math.Hypot(x-s.x, y-s.y)-r)
	})
}

// line draws a straight line with round ends.
func (p pen) line(a, b spot, width float64, c color.RGBA) {
	half := width / 2
	dx, dy := b.x-a.x, b.y-a.y
	l2 := dx*dx + dy*dy
	far := func(x, y float64) float64 {
		t := 0.0
		if l2 > 0 {
			t = math.Min(math.Max(((x-a.x)*dx+(y-a.y)*dy)/l2, 0), 1)
		}
		x, y = x-a.x-t*dx, y-a.y-t*dy
		return half + 0.5 - math.Sqrt(x*x+y*y)
	}
	// A long slanting line fills little of its box: draw it in short boxes.
	pieces := int(math.Ceil(math.Min(math.Abs(dx), math.Abs(dy))/24)) + 1
	for i := range pieces {
		t0, t1 := float64(i)/float64(pieces), float64(i+1)/float64(pieces)
		x0, y0, x1, y1 := a.x+t0*dx, a.y+t0*dy, a.x+t1*dx, a.y+t1*dy
		p.box(x0, y0, x1, y1, half+1, i, pieces, math.Abs(dx) >= math.Abs(dy), c, far)
	}
}

// box draws piece i of a line: the columns (or rows) between its ends, so that no
// pixel is drawn twice.
func (p pen) box(x0, y0, x1, y1, around float64, i, pieces int, wide bool, c color.RGBA, far func(x, y float64) float64) {
	minX, maxX := math.Min(x0, x1)-around, math.Max(x0, x1)+around
	minY, maxY := math.Min(y0, y1)-around, math.Max(y0, y1)+around
	cutLow := func(from, to float64, low *float64, high *float64) {
		first, last := i == 0, i == pieces-1
		if to < from {
			from, to, first, last = to, from, last, first
		}
		if !first {
			*low = math.Round(from)
		}
		if !last {
			*high = math.Round(to) - 1
		}
	}
	if wide {
		cutLow(x0, x1, &minX, &maxX)
	} else {
		cutLow(y0, y1, &minY, &maxY)
	}
	p.soft(minX, minY, maxX, maxY, c, far)
}
