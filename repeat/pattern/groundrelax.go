package pattern

import (
	"math"
	"math/rand/v2"
)

// A scatter is dots on a torus as wide and high as the tile, with their sizes.
type scatter struct {
	tile
	x, y, size []float64
	// The dots sorted into boxes: those of box b are order[start[b]:start[b+1]].
	cols, rows   int
	start, order []int32
	boxOf        []int32
}

// slack is how much farther than asked dots are pushed, so that the last few
// pushes are not endlessly small.
const slack = 1.02

// relax pushes dots apart, pair by pair, until each keeps gap from all others, and
// tells whether they came to rest. What is pushed over one edge enters at the
// other.
func (f *scatter) relax(gap float64, random *rand.Rand) bool {
	var widest float64
	for _, s := range f.size {
		widest = math.Max(widest, s)
	}
	const sweeps = 2000
	for range sweeps {
		f.sort((widest + gap) * slack)
		if f.push(gap, random) {
			return true
		}
	}
	return false
}

// push moves every pair that is too near apart by half of what is missing each,
// and reports whether there was none.
func (f *scatter) push(gap float64, random *rand.Rand) bool {
	rest := true
	for b := range f.cols * f.rows {
		col, row := b%f.cols, b/f.cols
		for _, near := range [5][2]int{{0, 0}, {1, 0}, {-1, 1}, {0, 1}, {1, 1}} {
			c, r := (col+near[0]+f.cols)%f.cols, (row+near[1])%f.rows
			other := r*f.cols + c
			for k := f.start[b]; k < f.start[b+1]; k++ {
				from := f.start[other]
				if other == b {
					from = k + 1
				}
				for m := from; m < f.start[other+1]; m++ {
					if f.part(int(f.order[k]), int(f.order[m]), gap, random) {
						rest = false
					}
				}
			}
		}
	}
	return rest
}

// part pushes two dots apart and reports whether they were nearer than allowed.
func (f *scatter) part(i, j int, gap float64, random *rand.Rand) bool {
	dx, dy := apartBy(f.x[i], f.x[j], f.w), apartBy(f.y[i], f.y[j], f.h)
	keep := (f.size[i]+f.size[j])/2 + gap
	square := dx*dx + dy*dy
	if square >= keep*keep*slack*slack {
		return false
	}
	d := math.Sqrt(square)
	if d < keep/1024 {
		sin, cos := math.Sincos(2 * math.Pi * random.Float64())
		dx, dy, d = cos, sin, 1
		square = 0
	}
	push := (keep*slack - math.Sqrt(square)) / 2 / d
	f.x[i], f.y[i] = onto(f.x[i]-push*dx, f.w), onto(f.y[i]-push*dy, f.h)
	f.x[j], f.y[j] = onto(f.x[j]+push*dx, f.w), onto(f.y[j]+push*dy, f.h)
	return square < keep*keep
}

// sort puts the dots into boxes at least side wide and high, three each way at
// least, so that near pairs are in boxes that meet and no box meets one twice.
func (f *scatter) sort(side float64) {
	f.cols, f.rows = max(3, int(f.w/side)), max(3, int(f.h/side))
	if cap(f.start) < f.cols*f.rows+1 {
		f.start = make([]int32, f.cols*f.rows+1)
		f.order, f.boxOf = make([]int32, len(f.x)), make([]int32, len(f.x))
	}
	f.start = f.start[:f.cols*f.rows+1]
	clear(f.start)
	for i := range f.x {
		c := min(int(f.x[i]/f.w*float64(f.cols)), f.cols-1)
		r := min(int(f.y[i]/f.h*float64(f.rows)), f.rows-1)
		f.boxOf[i] = int32(r*f.cols + c)
		f.start[f.boxOf[i]]++
	}
	var sum int32
	for b, n := range f.start {
		sum += n
		f.start[b] = sum
	}
	for i := len(f.x) - 1; i >= 0; i-- {
		f.start[f.boxOf[i]]--
		f.order[f.start[f.boxOf[i]]] = int32(i)
	}
}

// spread chooses many of the dots by chance but evenly: it takes them in a random
// order where none chosen is near, and asks for less distance until there are
// enough.
func (f *scatter) spread(many int, random *rand.Rand) []int {
	turn := random.Perm(len(f.x))
	chosen := make([]int, 0, many)
	is := make([]bool, len(f.x))
	for apart := math.Sqrt(f.w * f.h / float64(many)); ; apart *= 0.9 {
		f.sort(math.Min(apart, math.Min(f.w, f.h)/3))
		for _, i := range turn {
			if len(chosen) == many {
				return chosen
			}
			if !is[i] && !f.taken(i, apart, is) {
				is[i] = true
				chosen = append(chosen, i)
			}
		}
	}
}

// taken reports whether one of those marked lies within apart of dot i.
func (f *scatter) taken(i int, apart float64, marked []bool) bool {
	col, row := int(f.boxOf[i])%f.cols, int(f.boxOf[i])/f.cols
	for r := row + f.rows - 1; r <= row+f.rows+1; r++ {
		for c := col + f.cols - 1; c <= col+f.cols+1; c++ {
			b := r%f.rows*f.cols + c%f.cols
			for _, j := range f.order[f.start[b]:f.start[b+1]] {
				if marked[j] && math.Hypot(apartBy(f.x[i], f.x[j], f.w), apartBy(f.y[i], f.y[j], f.h)) < apart {
					return true
				}
			}
		}
	}
	return false
}
