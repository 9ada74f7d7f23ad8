package geom

import "math"

// Straightened returns a line without the points that lie within beside of the way
// from the last point that is kept to the next one; the ends are kept. The ways that
// pass all points so near are a wedge, which each point makes narrower (Sklansky and
// Gonzalez, Fast polygonal approximation of digitized curves, Pattern Recognition 12,
// 1980, 327–331).
func Straightened(line []Point, beside Length) []Point {
	if len(line) < 3 {
		return line
	}
	kept, last := line[0], line[0]
	straight := append(make([]Point, 0, min(len(line), 64)), kept)
	var w wedge
	near := float64(beside)
	for _, at := range line[1:] {
		if way := at.Sub(kept); !w.narrowed(float64(way.X), float64(way.Y), near) {
			straight, kept, w = append(straight, last), last, wedge{}
			way = at.Sub(kept)
			w.narrowed(float64(way.X), float64(way.Y), near)
		}
		last = at
	}
	return append(straight, last)
}

// A wedge is the ways between two that are one after the other clockwise, and how far
// it has been gone along; the zero wedge is all ways.
type wedge struct{ lx, ly, hx, hy, reach float64 }

// narrowed leaves the ways that pass within near of a place, and reports whether the
// way to it is one of those before.
func (w *wedge) narrowed(x, y, near float64) bool {
	far := math.Hypot(x, y)
	open := w.lx == 0 && w.ly == 0
	if far < w.reach-near { // a way back
		return false
	}
	w.reach = math.Max(w.reach, far)
	if far <= near {
		return open
	}
	if !open && (float64(w.lx*y)-float64(w.ly*x) < 0 || float64(x*w.hy)-float64(y*w.hx) < 0) {
		return false
	}
	sin := near / far
	cos := math.Sqrt(1 - sin*sin)
	lx, ly := (float64(x*cos)+float64(y*sin))/far, (float64(y*cos)-float64(x*sin))/far
	hx, hy := (float64(x*cos)-float64(y*sin))/far, (float64(y*cos)+float64(x*sin))/far
	if open || float64(w.lx*ly)-float64(w.ly*lx) > 0 {
		w.lx, w.ly = lx, ly
	}
	if open || float64(hx*w.hy)-float64(hy*w.hx) > 0 {
		w.hx, w.hy = hx, hy
	}
	return true
}
