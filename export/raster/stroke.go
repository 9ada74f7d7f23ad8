package raster

import (
	"math"

	"tsugime/export"
	"tsugime/repeat/geom"
)

// A stroke is the area of one drawn line: closed runs whose signed areas add up
// to it.
type stroke struct {
	rings [][]vec
	box   rect
	sign  float64
}

// drawStrokes adds the lines of a layer to the plane, and the rims of its discs
// and outlines.
func drawStrokes(p *Plane, l export.Layer, v View) {
	m := v.place(Lay{})
	width := l.Pen.Stroke.MM() * v.PxPerMM
	chord := max(geom.MM(chordPx/v.PxPerMM), 2)
	dash := dashes(l.Pen.Dash, v.PxPerMM)
	var strokes []stroke
	draw := func(run []vec, closed bool) { strokes = append(strokes, stroked(run, closed, width/2, dash)...) }
	for _, o := range l.Outlines {
		for _, r := range o.Rings(chord) {
			draw(m.run(r), true)
		}
	}
	for _, line := range l.Lines {
		draw(m.run(line.Points), line.Closed)
	}
	if dash != nil {
		for _, d := range l.Discs {
			draw(m.run(d.Ring(chord)), true)
		}
	}
	paintStrokes(p, strokes)
	if dash == nil {
		paintRims(p, l.Discs, m, width/2)
	}
}

// run returns points as pixels.
func (m place) run(points []geom.Point) []vec {
	run := make([]vec, len(points))
	for i, p := range points {
		run[i] = vec{m.a*p.X.MM() + m.e, m.a*p.Y.MM() + m.f}
	}
	return run
}

// paintStrokes adds strokes to the plane, in pixels.
func paintStrokes(p *Plane, strokes []stroke) {
	if len(strokes) == 0 {
		return
	}
	p.bands(func(g *grid[float32], band rect) {
		for _, s := range strokes {
			if !s.box.meets(band) {
				continue
			}
			g.room()
			for _, ring := range s.rings {
				g.ring(ring, s.sign)
			}
		}
	})
}

// paintRims adds the rims of discs: the disc outside the line less that inside.
func paintRims(p *Plane, discs []geom.Disc, m place, half float64) {
	if len(discs) == 0 {
		return
	}
	p.bands(func(g *grid[float32], _ rect) {
		g.exact = true
		for _, d := range discs {
			x, y, r := m.a*d.Centre.X.MM()+m.e, m.a*d.Centre.Y.MM()+m.f, m.a*d.RadiusMM()
			g.weigh(x, y, r+half, 1)
			if r > half {
				g.weigh(x, y, r-half, -1)
			}
		}
	})
}

// bands calls do with the plane in bands of rows and settles what it adds.
func (p *Plane) bands(do func(g *grid[float32], band rect)) {
	if p.W == 0 || p.H == 0 {
		return
	}
	x, _ := pixelAxis(0, float64(p.W))
	inBands(0, p.H, func(y0, y1 int) {
		y, _ := pixelAxis(float64(y0), float64(y1))
		g := &grid[float32]{x: x, y: y, cells: p.sum[y0*p.W:], width: p.W}
		do(g, rect{0, float64(y0), float64(p.W), float64(y1)})
		if g.rises != nil {
			g.raise()
		}
		p.settle(0, y0, p.W, y1)
	})
}

// dashes returns a dash pattern in pixels: marks and gaps in turn, an odd one
// taken twice; nil for a whole line.
func dashes(lengths []geom.Length, pxPerMM float64) []float64 {
	var dash []float64
	var sum float64
	for _, l := range lengths {
		if l < 0 {
			return nil
		}
		dash = append(dash, l.MM()*pxPerMM)
		sum += l.MM() * pxPerMM
	}
	// Dashes that a pixel holds a hundred of are a tone, and not worth the time.
	if sum < 0.01 {
		return nil
	}
	if len(dash)%2 == 1 {
		dash = append(dash, dash...)
	}
	return dash
}

// stroked returns the area within half of a run, with straight ends and mitred
// corners, dash by dash.
func stroked(run []vec, closed bool, half float64, dash []float64) []stroke {
	run = distinct(run, closed)
	if len(run) < 2 {
		return nil
	}
	if dash == nil {
		return []stroke{strokeOf(run, closed, half)}
	}
	if closed {
		run = append(run, run[0])
	}
	var strokes []stroke
	for _, piece := range dashed(run, dash) {
		strokes = append(strokes, strokeOf(piece, false, half))
	}
	return strokes
}

// distinct returns the run without points that repeat the one before.
func distinct(run []vec, closed bool) []vec {
	var out []vec
	for _, p := range run {
		if len(out) == 0 || p != out[len(out)-1] {
			out = append(out, p)
		}
	}
	if n := len(out); closed && n > 1 && out[0] == out[n-1] {
		out = out[:n-1]
	}
	return out
}

// dashed returns the marks of a run.
func dashed(run []vec, dash []float64) [][]vec {
	var pieces [][]vec
	var piece []vec
	k, left := 0, dash[0]
	piece = []vec{run[0]}
	for i := 1; i < len(run); i++ {
		a, b := run[i-1], run[i]
		length := math.Hypot(b.x-a.x, b.y-a.y)
		at := 0.0
		for left <= length-at {
			at += left
			p := vec{a.x + (b.x-a.x)*at/length, a.y + (b.y-a.y)*at/length}
			if k%2 == 0 {
				pieces = append(pieces, append(piece, p))
			}
			piece = []vec{p}
			k = (k + 1) % len(dash)
			left = dash[k]
		}
		left -= length - at
		piece = append(piece, b)
	}
	if k%2 == 0 {
		pieces = append(pieces, piece)
	}
	marks := pieces[:0]
	for _, p := range pieces {
		if p = distinct(p, false); len(p) > 1 {
			marks = append(marks, p)
		}
	}
	return marks
}

// strokeOf returns the stroke along a run of points, none equal to the one before.
func strokeOf(run []vec, closed bool, half float64) stroke {
	var rings [][]vec
	left, right := side(run, closed, half), side(run, closed, -half)
	for i, j := 0, len(right)-1; i < j; i, j = i+1, j-1 {
		right[i], right[j] = right[j], right[i]
	}
	if closed {
		rings = [][]vec{left, right}
	} else {
		rings = [][]vec{append(left, right...)}
	}
	s := stroke{rings: rings, sign: 1, box: rect{math.Inf(1), math.Inf(1), math.Inf(-1), math.Inf(-1)}}
	var area float64
	for _, r := range rings {
		for i, b := range r {
			a := r[(i+len(r)-1)%len(r)]
			area += a.x*b.y - a.y*b.x
			s.box = s.box.with(rect{b.x, b.y, b.x, b.y})
		}
	}
	if area < 0 {
		s.sign = -1
	}
	return s
}

// mitreLimit is how many half widths a corner may reach out before it is cut
// off: 4, as in SVG 1.1, section 11.4.
const mitreLimit = 4

// side returns the run moved sideways by off, to the right of its way where off
// is positive (y down).
func side(run []vec, closed bool, off float64) []vec {
	n := len(run)
	normal := func(i int) vec {
		a, b := run[i%n], run[(i+1)%n]
		l := math.Hypot(b.x-a.x, b.y-a.y)
		return vec{-(b.y - a.y) / l * off, (b.x - a.x) / l * off}
	}
	var out []vec
	for i, p := range run {
		if !closed && (i == 0 || i == n-1) {
			k := normal(min(i, n-2))
			out = append(out, vec{p.x + k.x, p.y + k.y})
			continue
		}
		k0, k1 := normal(i+n-1), normal(i)
		// 1 + cos of the turn; the mitre reaches √(2/that) half widths.
		t := 1 + (k0.x*k1.x+k0.y*k1.y)/(off*off)
		if t*mitreLimit*mitreLimit < 2 {
			out = append(out, vec{p.x + k0.x, p.y + k0.y}, vec{p.x + k1.x, p.y + k1.y})
			continue
		}
		out = append(out, vec{p.x + (k0.x+k1.x)/t, p.y + (k0.y+k1.y)/t})
	}
	return out
}
