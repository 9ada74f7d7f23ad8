package raster

// An axis is the edges of the columns (or rows) of a grid, ascending: column i
// lies between edge[i] and edge[i+1]. The columns need not be even.
type axis struct {
	edge []float64
	// pixels says that the edges between the first and the last are the whole
	// numbers after base.
	pixels bool
	base   float64

	first []int32 // where to begin to look, by even buckets
	per   float64 // buckets for one unit
}

func newAxis(edge []float64) axis {
	n := len(edge) - 1
	a := axis{edge: edge, first: make([]int32, n+1), per: float64(n) / (edge[n] - edge[0])}
	i := 0
	for b := range a.first {
		for x := edge[0] + float64(b)/a.per; i < n-1 && edge[i+1] <= x; {
			i++
		}
		// One back, since the bucket of a place is rounded too.
		a.first[b] = int32(max(i-1, 0))
	}
	return a
}

// find returns the column that holds x; what lies outside is counted to the
// outer columns.
func (a *axis) find(x float64) int {
	if a.pixels {
		return min(max(int(x-a.base), 0), len(a.edge)-2)
	}
	b := int((x - a.edge[0]) * a.per)
	if b < 0 {
		return 0
	}
	if b >= len(a.first) {
		return len(a.edge) - 2
	}
	i := int(a.first[b])
	for i+2 < len(a.edge) && a.edge[i+1] <= x {
		i++
	}
	return i
}

// pixelEdges returns the edges of the pixels between lo and hi, cut off at both,
// and the number of the first pixel. lo is not negative.
func pixelEdges(lo, hi float64) (edge []float64, first int) {
	first = int(lo)
	edge = make([]float64, 0, int(hi)-first+2)
	edge = append(edge, lo)
	for x := first + 1; float64(x) < hi; x++ {
		edge = append(edge, float64(x))
	}
	return append(edge, hi), first
}

// pixelAxis returns pixelEdges as an axis.
func pixelAxis(lo, hi float64) (a axis, first int) {
	edge, first := pixelEdges(lo, hi)
	return axis{edge: edge, pixels: true, base: float64(first)}, first
}
