package raster

import "math"

// A Footprint is what of the ground a pixel weighs, and how much: the same curve across
// and along. Every pixel is exact for its footprint.
//
// Points that lie a pixel apart hold no wave shorter than two pixels; of such a wave
// they show a longer one that is not in the ground (the sampling theorem: C. E. Shannon,
// Communication in the Presence of Noise, Proc. IRE 37, 1949). So the footprint itself
// must take short waves away, and none of one pixel's width does: the spectrum of what
// is so narrow reaches on without end. The box leaves |sin(πf)/πf| of a wave that goes
// f times to the pixel, which is 11 % for f = 0.9, shown as a false band of ten pixels.
// So the exact area under one pixel and a picture without false bands can't both be
// had, except where the ground has next to no such waves.
type Footprint int

// The footprints, from narrow to wide. Each ground is shown through the narrowest that
// keeps false bands, of waves of five pixels and longer, within two levels of 255.
const (
	// Box is the pixel itself. It serves where holes are many pixels apart, and for discs
	// already where they can be told apart: a round rim has few short waves.
	Box Footprint = iota
	// Soft is two pixels wide: it weighs the exact areas of four halves of a pixel as 1, 3,
	// 3, 1. Of a wave of f to the pixel it leaves |cos³(πf/2)·sin(πf/2)/(πf/2)|, which
	// is next to nothing where the box's false bands are longest, about f = 1.
	Soft
	// Wide is the cubic B-spline of knots that are 1.6 pixels apart or up to √2 times
	// that: four boxes of a knot's width drawn over one another, six and a half to nine
	// pixels in all, half of it within two. It leaves (sin(πfw)/πfw)⁴, with w the knots
	// in pixels: at most 0.3 % of any wave that the picture can't hold. It is never
	// negative, so no hole is shown as paper. The knots are 3·2^(−k/2) mm apart, k whole,
	// so that what is made for one zoom serves the next ones.
	Wide
)

// How many pixels lie from hole to hole where a footprint ends.
const (
	finePx  = 3.0  // below, holes can't be told apart: Wide
	edgedPx = 26.0 // below, outlines need Soft
)

// Footprint returns through which footprint the ground is shown at a zoom.
func (g *Ground) Footprint(pxPerMM float64) Footprint {
	switch px := g.pitch * pxPerMM; {
	case px < finePx:
		return Wide
	case px < edgedPx && len(g.unit.curves) > 0:
		return Soft
	}
	return Box
}

// knotCells is how many cells of a tone lie between two knots. The least knots are
// leastKnot pixels apart.
const (
	knotCells = 4
	leastKnot = 1.6
)

// stage returns for which k a tone is made, at a zoom, and how far apart its knots
// are, in millimetres.
func stage(pxPerMM float64) (k int, knot float64) {
	k = int(math.Floor(2 * math.Log2(3/leastKnot*pxPerMM)))
	return k, 3 * math.Exp2(-float64(k)/2)
}

// spline is the cubic B-spline of knots one apart, about nought, with area one.
func spline(x float64) float64 {
	x = math.Abs(x)
	switch {
	case x < 1:
		return (4 - 6*x*x + 3*x*x*x) / 6
	case x < 2:
		return (2 - x) * (2 - x) * (2 - x) / 6
	}
	return 0
}

// bend is the second derivative of spline.
func bend(x float64) float64 {
	x = math.Abs(x)
	switch {
	case x < 1:
		return 3*x - 2
	case x < 2:
		return 2 - x
	}
	return 0
}

// weights is what of one axis's fine cells a place weighs: by[j] of cell from + j.
type weights struct {
	from int
	by   []float32
}

// weigh returns the weights of n places that begin at origin and lie step apart, on
// cells of a width that begin at nought. Cells of a period are counted on past its
// end, those of none are left out where there are none.
//
// What is lost on the way to the picture is made up for: a fine cell is the mean of
// its area, and between two places the picture goes straight. Both take of a wave
// what a second derivative does, a 24th of a cell's square and a 12th of a step's.
func weigh(n int, origin, step float64, cells int, width, knot float64, periodic bool) []weights {
	all := make([]weights, n)
	less := (width*width/24 + step*step/12) / (knot * knot)
	for i := range all {
		at := origin + float64(i)*step
		from, to := int(math.Floor((at-2*knot)/width)), int(math.Ceil((at+2*knot)/width))
		full := make([]float64, to-from)
		sum := 0.0
		for j := range full {
			x := ((float64(from+j)+0.5)*width - at) / knot
			full[j] = spline(x) - less*bend(x)
			sum += full[j]
		}
		switch {
		case !periodic:
			cut := max(-from, 0)
			full = full[min(cut, len(full)):]
			from += cut
			full = full[:max(min(len(full), cells-from), 0)]
		case len(full) > cells:
			folded := make([]float64, cells)
			for j, v := range full {
				folded[modulo(from+j, cells)] += v
			}
			from, full = 0, folded
		default:
			from = modulo(from, cells)
		}
		w := weights{from: from, by: make([]float32, len(full))}
		for j, v := range full {
			w.by[j] = float32(v / sum)
		}
		all[i] = w
	}
	return all
}

func modulo(i, n int) int { return ((i % n) + n) % n }
