package raster

import (
	"math"
	"slices"
	"sort"
)

// A window is a rectangle of pixels through which one laying is seen: the edges
// of its columns and rows in millimetres of the tile, falling where it is turned.
type window struct {
	x0, y0 int // its first pixel
	xs, ys []float64
}

// A line is where an edge of a pixel lies among the lines of the sums, and how
// many whole repeats lie before it.
type line struct {
	at    int
	turns float64
}

// window returns the pixels of p that m shows inside shown, for tile t.
func (t *tile) window(m place, shown rect) window {
	xs, x0 := pixelEdges(shown.x0, shown.x1)
	ys, y0 := pixelEdges(shown.y0, shown.y1)
	for i, x := range xs {
		xs[i] = (x - m.e) / m.a
	}
	for i, y := range ys {
		ys[i] = (y - m.f) / m.a
	}
	w := window{x0, y0, xs, ys}
	if t.wide > 0 && t.high > 0 {
		// The true periods are taken from the middle of the window, so that what
		// they lean by is least at its rim.
		i := math.Round((xs[0] + xs[len(xs)-1]) / 2 / t.u.X.MM())
		j := math.Round((ys[0] + ys[len(ys)-1]) / 2 / t.v.Y.MM())
		shift(xs, -i*t.u.X.MM()-j*t.v.X.MM())
		shift(ys, -i*t.u.Y.MM()-j*t.v.Y.MM())
	}
	return w
}

func shift(v []float64, by float64) {
	for i := range v {
		v[i] += by
	}
}

// folded returns the edges of all windows along one axis as lines within lo and
// hi: what lies outside is brought back by whole periods or, without one, to the
// nearer end. Lines nearer than same are one.
func folded(edges [][]float64, lo, hi, period, same float64) ([]float64, [][]line) {
	rests := []float64{lo}
	turns := make([][]line, len(edges))
	rest := make([][]float64, len(edges))
	// Windows side by side have the same edges the other way: those are folded once.
	first := make([]int, len(edges))
	known := map[[3]float64]int{}
	for k, es := range edges {
		first[k] = k
		if len(es) > 0 {
			key := [3]float64{es[0], es[min(1, len(es)-1)], es[len(es)-1]}
			if j, ok := known[key]; ok && len(edges[j]) == len(es) {
				first[k] = j
				continue
			}
			known[key] = k
		}
		turns[k], rest[k] = make([]line, len(es)), make([]float64, len(es))
		for i, e := range es {
			n := 0.0
			if period > 0 {
				n = math.Floor((e - lo) / period)
				e -= n * period
				if e > hi-same {
					n, e = n+1, lo
				}
			} else if e > hi-same {
				e = hi
			}
			e = math.Max(e, lo)
			turns[k][i].turns, rest[k][i] = n, e
			rests = append(rests, e)
		}
	}
	slices.Sort(rests)
	lines := rests[:1]
	for _, r := range rests[1:] {
		if r > lines[len(lines)-1]+same {
			lines = append(lines, r)
		}
	}
	if lines[len(lines)-1] < hi {
		lines = append(lines, hi)
	}
	for k, rs := range rest {
		for i, r := range rs {
			turns[k][i].at = sort.Search(len(lines), func(j int) bool { return lines[j] > r }) - 1
		}
	}
	for k, j := range first {
		turns[k] = turns[j]
	}
	return lines, turns
}

// sums is the tile's cut area left of and above each crossing of the lines, and
// the windows' edges as such lines.
type sums struct {
	at     []float64 // row j at j·stride; row and column 0 are zero
	stride int
	xs, ys []float64
	xl, yl [][]line
}

// sameLine is how near two lines are one, in pixels: a four-thousandth of a level.
const sameLine = 1e-6

// fold brings the windows' edges into the tile; lines nearer than same are one.
func (t *tile) fold(windows []window, same float64) *sums {
	ex, ey := make([][]float64, len(windows)), make([][]float64, len(windows))
	for k, w := range windows {
		ex[k], ey[k] = w.xs, w.ys
	}
	s := &sums{}
	s.xs, s.xl = folded(ex, t.domain.x0, t.domain.x1, t.wide, same)
	s.ys, s.yl = folded(ey, t.domain.y0, t.domain.y1, t.high, same)
	s.stride = len(s.xs)
	return s
}

// paint paints the tile on the grid of the lines and sums it up, in room, which it
// returns, larger where it has to be.
func (s *sums) paint(t *tile, pxPerMM float64, room []float64) []float64 {
	if n := s.stride * len(s.ys); len(room) < n {
		room = make([]float64, n)
	}
	s.at = room[:s.stride*len(s.ys)]
	clear(s.at)
	x := newAxis(s.xs)
	columns := s.stride - 1
	inBands(0, len(s.ys)-1, func(j0, j1 int) {
		g := &grid[float64]{
			x: x, y: newAxis(s.ys[j0 : j1+1]), cells: s.at[(j0+1)*s.stride+1:], width: s.stride,
			exact: t.reach*pxPerMM > tableRadius,
		}
		t.around(rect{s.xs[0], s.ys[j0], s.xs[columns], s.ys[j1]}, func(dx, dy float64, w rect) {
			g.store(t.store, place{a: 1, e: dx, f: dy}, w, pxPerMM)
		})
		if g.rises != nil {
			g.raise()
		}
		for j := j0 + 1; j <= j1; j++ {
			row, sum := s.at[j*s.stride:][:s.stride], 0.0
			for i, v := range row {
				sum += v
				row[i] = sum
			}
		}
	})
	inBands(0, columns, func(i0, i1 int) {
		above := s.at[i0+1 : i1+1]
		for j := 1; j < len(s.ys); j++ {
			row := s.at[j*s.stride:][i0+1 : i1+1]
			for i, v := range above {
				row[i] += v
			}
			above = row
		}
	})
	return room
}

// around calls do with each repeat of the tile that reaches into w, and with w as
// that repeat sees it.
func (t *tile) around(w rect, do func(dx, dy float64, w rect)) {
	span := func(lo, hi, from, to, period float64) (int, int) {
		if period == 0 {
			return 0, 0
		}
		return int(math.Floor((lo - to) / period)), int(math.Ceil((hi - from) / period))
	}
	i0, i1 := span(w.x0, w.x1, t.box.x0, t.box.x1, t.wide)
	j0, j1 := span(w.y0, w.y1, t.box.y0, t.box.y1, t.high)
	for j := j0; j <= j1; j++ {
		for i := i0; i <= i1; i++ {
			dx, dy := float64(i)*t.wide, float64(j)*t.high
			if r := (rect{w.x0 - dx, w.y0 - dy, w.x1 - dx, w.y1 - dy}); r.meets(t.box) {
				do(dx, dy, r)
			}
		}
	}
}

// read adds the pixels of window k, rows y0 up to y1 of the plane.
func (s *sums) read(p *Plane, w window, k int, scale float64, y0, y1 int) {
	y0, y1 = w.rows(y0, y1)
	if y0 >= y1 {
		return
	}
	n := len(w.xs) - 1
	above, below := make([]float64, n), make([]float64, n)
	foot := s.foot(s.xl[k])
	s.strip(above, s.xl[k], foot, s.yl[k][y0-w.y0])
	for y := y0; y < y1; y++ {
		s.strip(below, s.xl[k], foot, s.yl[k][y-w.y0+1])
		row := p.sum[y*p.W+w.x0:][:n]
		for i, b := range below {
			row[i] += float32((b - above[i]) * scale)
		}
		above, below = below, above
	}
}

// foot returns, for each of a window's edges, the area left of it in a whole
// period along y.
func (s *sums) foot(xs []line) []float64 {
	row := s.at[len(s.at)-s.stride:]
	foot := make([]float64, len(xs))
	for i, x := range xs {
		foot[i] = row[x.at] + x.turns*row[s.stride-1]
	}
	return foot
}

// strip fills to with the cut area between neighbouring columns above line y.
func (s *sums) strip(to []float64, xs []line, foot []float64, y line) {
	row := s.at[y.at*s.stride:][:s.stride]
	all := row[s.stride-1]
	foot = foot[:len(xs)]
	last := row[xs[0].at] + xs[0].turns*all + y.turns*foot[0]
	xs, foot = xs[1:], foot[1:]
	to = to[:len(xs)]
	for i, x := range xs {
		v := row[x.at] + x.turns*all + y.turns*foot[i]
		to[i] = v - last
		last = v
	}
}
