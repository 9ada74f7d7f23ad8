package raster

import (
	"runtime"
	"sync"
	"sync/atomic"
)

// A Plane holds the cut area under each pixel, row by row. A Plane belongs to
// one goroutine at a time.
type Plane struct {
	W, H  int
	Cover []uint8 // 0 is paper, 255 is open; to the nearest level

	sum   []float32   // what Cover is rounded from: pixels, 1 is open
	table []float64   // room for the repeat's sums, kept between pictures
	shown [][]float64 // the same for grounds that are shown together
	half  *Plane      // room for halves of pixels, which have no Cover
}

// NewPlane returns a plane of w by h pixels, all paper.
func NewPlane(w, h int) *Plane {
	w, h = max(w, 0), max(h, 0)
	return &Plane{W: w, H: h, Cover: make([]uint8, w*h), sum: make([]float32, w*h)}
}

// Reset makes the plane all paper again.
func (p *Plane) Reset() {
	clear(p.Cover)
	p.clear()
}

func (p *Plane) clear() {
	inBands(0, p.H, func(y0, y1 int) { clear(p.sum[y0*p.W : y1*p.W]) })
}

// settle rounds the sums of the pixels from (x0, y0) up to (x1, y1) to levels.
// Where shapes lie over one another a sum can exceed the pixel: it is open.
func (p *Plane) settle(x0, y0, x1, y1 int) {
	if p.Cover == nil {
		return
	}
	for y := y0; y < y1; y++ {
		sum := p.sum[y*p.W+x0 : y*p.W+x1]
		cover := p.Cover[y*p.W+x0 : y*p.W+x1][:len(sum)]
		for i, s := range sum {
			v := uint32(int32(s*255 + 0.5))
			if v > 255 { // or below nought
				v = 255 &^ uint32(int32(v)>>31)
			}
			cover[i] = uint8(v)
		}
	}
}

// mostBands is into how many bands a picture is cut at most. It is the same on
// every machine, and so is the picture, whatever a sum's last bit owes to where
// a band ends.
const mostBands = 16

// inBands calls do with bands of the rows from y0 up to y1, as many at a time as
// there are processors.
func inBands(y0, y1 int, do func(y0, y1 int)) { inParts(mostBands, y0, y1, do) }

// inParts is inBands with a number of bands at most.
func inParts(most, y0, y1 int, do func(y0, y1 int)) {
	bands := min(most, y1-y0)
	if bands <= 0 {
		return
	}
	var next atomic.Int32
	work := func() {
		for b := int(next.Add(1)) - 1; b < bands; b = int(next.Add(1)) - 1 {
			do(y0+(y1-y0)*b/bands, y0+(y1-y0)*(b+1)/bands)
		}
	}
	var wait sync.WaitGroup
	for range min(runtime.GOMAXPROCS(0), bands) - 1 {
		wait.Go(work)
	}
	work()
	wait.Wait()
}
