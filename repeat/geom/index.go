package geom

import "math"

// An Index finds which of many boxes meet a given one. It is a grid of cells as
// large as a usual box, at most two cells a box, so that building it and
// walking it take time in proportion to what is there.
type Index struct {
	boxes      []Box
	all        Box
	nx, ny     int
	cellW      Length
	cellH      Length
	start, ids []int32 // the boxes of cell c are ids[start[c]:start[c+1]]
}

// NewIndex returns the index of boxes. Empty boxes are never found.
func NewIndex(boxes []Box) *Index {
	x := &Index{boxes: boxes}
	var sum float64
	n := 0
	for _, b := range boxes {
		if b.Empty() {
			continue
		}
		x.all = x.all.Union(b)
		sum += float64(b.Width()) + float64(b.Height())
		n++
	}
	if n == 0 {
		x.nx, x.ny, x.cellW, x.cellH, x.start = 1, 1, 1, 1, make([]int32, 2)
		return x
	}
	w, h := float64(x.all.Width())+1, float64(x.all.Height())+1
	cell := math.Max(sum/float64(2*n), math.Sqrt(w/float64(2*n)*h))
	cell = math.Max(cell, math.Max(w, h)/float64(2*n))
	x.nx, x.ny = int(w/cell)+1, int(h/cell)+1
	x.cellW, x.cellH = Length(w/float64(x.nx))+1, Length(h/float64(x.ny))+1
	x.fill()
	return x
}

// fill sorts the boxes into cells: count, sum up, place.
func (x *Index) fill() {
	x.start = make([]int32, x.nx*x.ny+1)
	for _, b := range x.boxes {
		x.cells(b, func(c int) { x.start[c+1]++ })
	}
	for c := 1; c < len(x.start); c++ {
		x.start[c] += x.start[c-1]
	}
	x.ids = make([]int32, x.start[len(x.start)-1])
	next := append([]int32(nil), x.start...)
	for i, b := range x.boxes {
		x.cells(b, func(c int) {
			x.ids[next[c]] = int32(i)
			next[c]++
		})
	}
}

// span returns the cells that b covers, clamped to the grid.
func (x *Index) span(b Box) (x0, y0, x1, y1 int) {
	clamp := func(v Length, cell Length, n int) int { return int(min(max(v/cell, 0), Length(n-1))) }
	x0, x1 = clamp(b.Min.X-x.all.Min.X, x.cellW, x.nx), clamp(b.Max.X-x.all.Min.X, x.cellW, x.nx)
	y0, y1 = clamp(b.Min.Y-x.all.Min.Y, x.cellH, x.ny), clamp(b.Max.Y-x.all.Min.Y, x.cellH, x.ny)
	return x0, y0, x1, y1
}

func (x *Index) cells(b Box, visit func(c int)) {
	if b.Empty() {
		return
	}
	x0, y0, x1, y1 := x.span(b)
	for j := y0; j <= y1; j++ {
		for i := x0; i <= x1; i++ {
			visit(j*x.nx + i)
		}
	}
}

// Visit calls found with each box that meets b, once, in an order that depends
// only on the boxes. It stops early when found returns false.
func (x *Index) Visit(b Box, found func(i int) bool) {
	if !b.Meets(x.all) {
		return
	}
	x0, y0, x1, y1 := x.span(b)
	for cy := y0; cy <= y1; cy++ {
		for cx := x0; cx <= x1; cx++ {
			c := cy*x.nx + cx
			for _, id := range x.ids[x.start[c]:x.start[c+1]] {
				o := x.boxes[id]
				if !o.Meets(b) {
					continue
				}
				// A box in several cells is told of in the first one only.
				ox, oy, _, _ := x.span(o)
				if max(ox, x0) != cx || max(oy, y0) != cy {
					continue
				}
				if !found(int(id)) {
					return
				}
			}
		}
	}
}
