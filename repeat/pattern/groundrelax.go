package pattern

import (
	"math"
	"sync"
)

// A scatter is dots on a torus as wide and high as the tile, with their radii.
// They stand in the order of the boxes that they are sorted into: those of box b
// are start[b] to start[b+1].
type scatter struct {
	tile
	x, y, radius []float64
	cols, rows   int
	start        []int32
	spare        [3][]float64 // what sort writes into
	boxOf        []int32
	sortedX      []float64 // where the dots stood when they were sorted
	sortedY      []float64
}

const (
	// slack is how much farther than asked dots are pushed, so that the last few
	// pushes are not endlessly small.
	slack = 1.02
	// eager is by how much more than what is missing a pair is pushed apart
	// (over-relaxation). With 1.4 the dots come to rest in half as many sweeps as with
	// 1, and their spectrum is nearer to that of thrown darts; both measured.
	eager = 1.4
	// roam is by how much boxes are larger than what two dots keep from each other,
	// so that they need not be sorted anew after each sweep.
	roam = 0.15
)

// relax pushes dots apart, pair by pair, until each keeps gap from all others, at
// most so many times, and tells whether they came to rest. What is pushed over one edge enters at the
// other. The same dots come to the same places on any number of cores.
func (f *scatter) relax(gap float64, sweeps int) bool {
	var widest float64
	for _, r := range f.radius {
		widest = math.Max(widest, 2*r)
	}
	side := (widest + gap) * slack
	if math.Min(f.w, f.h) < 3*side*(1+roam) {
		return false
	}
	f.sort(side * (1 + roam))
	for range sweeps {
		if f.push(gap) {
			f.sort(side * (1 + roam))
			return true
		}
		if f.roamed() > side*roam/2 {
			f.sort(side * (1 + roam))
		}
	}
	return false
}

// roamed returns how far at most a dot has come since it was sorted, each way.
func (f *scatter) roamed() float64 {
	var square float64
	for i, x := range f.x {
		dx, dy := x-f.sortedX[i], f.y[i]-f.sortedY[i]
		square = max(square, dx*dx+dy*dy)
	}
	return math.Sqrt(square)
}

// stripRows is how many rows of boxes a strip has at least. Strips are what is
// worked on at once, so their number must not follow from that of the cores.
const stripRows = 8

// push moves every pair that is too near apart, by somewhat more than is missing,
// and reports whether there was none. A strip reaches into the first row of the
// next one, so that every other strip can be worked on at the same time.
func (f *scatter) push(gap float64) bool {
	strips := f.rows / stripRows / 2 * 2
	if strips == 0 {
		return f.pushRows(0, f.rows, gap)
	}
	rest := make([]bool, strips)
	for first := range 2 {
		var all sync.WaitGroup
		for s := first; s < strips; s += 2 {
			all.Go(func() { rest[s] = f.pushRows(s*f.rows/strips, (s+1)*f.rows/strips, gap) })
		}
		all.Wait()
	}
	for _, r := range rest {
		if !r {
			return false
		}
	}
	return true
}

// pushRows does what push does for the boxes of some rows, each with itself, its
// neighbour to the right and the three below.
func (f *scatter) pushRows(from, to int, gap float64) bool {
	rest := true
	for row := from; row < to; row++ {
		below, down := row+1, 0.0
		if below == f.rows {
			below, down = 0, f.h
		}
		for col := range f.cols {
			b := row*f.cols + col
			for i := f.start[b]; i < f.start[b+1]; i++ {
				rest = f.part(i, i+1, f.start[b+1], 0, 0, gap) && rest
				rest = f.beside(i, row, col+1, 0, gap) && rest
				if col > 0 && col+1 < f.cols { // the three are one run
					n := below*f.cols + col
					rest = f.part(i, f.start[n-1], f.start[n+2], 0, down, gap) && rest
					continue
				}
				for c := col - 1; c <= col+1; c++ {
					rest = f.beside(i, below, c, down, gap) && rest
				}
			}
		}
	}
	return rest
}

// beside pushes dot i and those of a box apart, which lies down farther than it is
// counted, and may be a column past the edge.
func (f *scatter) beside(i int32, row, col int, down, gap float64) bool {
	across := 0.0
	switch col {
	case -1:
		col, across = f.cols-1, -f.w
	case f.cols:
		col, across = 0, f.w
	}
	b := row*f.cols + col
	return f.part(i, f.start[b], f.start[b+1], across, down, gap)
}

// part pushes dot i and each of a run apart, which stands across and down farther
// than it is written, and reports whether none was nearer than allowed.
func (f *scatter) part(i, from, to int32, across, down, gap float64) bool {
	rest := true
	x, y, own := f.x[i], f.y[i], f.radius[i]+gap
	xs, ys, radii := f.x[from:to], f.y[from:to], f.radius[from:to]
	for j, r := range radii {
		dx, dy := xs[j]+across-x, ys[j]+down-y
		keep := own + r
		square := dx*dx + dy*dy
		if square >= keep*keep*slack*slack {
			continue
		}
		d := math.Sqrt(square)
		rest = rest && square >= keep*keep
		push := (keep*slack - d) / 2 * eager
		if d < keep/1024 { // one on the other: any way will do
			dy, dx = math.Sincos(float64(i))
			d = 1
		}
		push /= d
		x, y = x-push*dx, y-push*dy
		xs[j] += push * dx
		ys[j] += push * dy
	}
	f.x[i], f.y[i] = x, y
	return rest
}

// sort puts the dots into boxes at least side wide and high, three each way at
// least, so that near pairs are in boxes that meet and no box meets one twice.
func (f *scatter) sort(side float64) {
	f.cols, f.rows = max(3, int(f.w/side)), max(3, int(f.h/side))
	n := len(f.x)
	if len(f.boxOf) != n {
		f.boxOf, f.sortedX, f.sortedY = make([]int32, n), make([]float64, n), make([]float64, n)
		f.spare = [3][]float64{make([]float64, n), make([]float64, n), make([]float64, n)}
	}
	if cap(f.start) < f.cols*f.rows+1 {
		f.start = make([]int32, f.cols*f.rows+1)
	}
	f.start = f.start[:f.cols*f.rows+1]
	clear(f.start)
	wide, high := float64(f.cols)/f.w, float64(f.rows)/f.h
	for i := range f.x {
		f.x[i], f.y[i] = onto(f.x[i], f.w), onto(f.y[i], f.h)
		b := int32(min(int(f.y[i]*high), f.rows-1)*f.cols + min(int(f.x[i]*wide), f.cols-1))
		f.boxOf[i] = b
		f.start[b]++
	}
	var sum int32
	for b, n := range f.start {
		sum += n
		f.start[b] = sum
	}
	x, y, radius := f.spare[0], f.spare[1], f.spare[2]
	for i := n - 1; i >= 0; i-- {
		b := f.boxOf[i]
		f.start[b]--
		x[f.start[b]], y[f.start[b]], radius[f.start[b]] = f.x[i], f.y[i], f.radius[i]
	}
	f.spare = [3][]float64{f.x, f.y, f.radius}
	f.x, f.y, f.radius = x, y, radius
	copy(f.sortedX, x)
	copy(f.sortedY, y)
}
