package board

import "tsugime/export/raster"

// finePx is below how many pixels from hole to hole a ground is shown as a tone.
const finePx = 3.0

// soften gives each pixel the mean of the nine about it.
//
// A pixel's cover is the exact area that is cut under it, which alone shows no
// band where a pixel holds a whole number of repeats. In between, what is left of
// the repeat beats with the pixels: a texture a few pixels wide and a few levels
// deep that is in no cloth. Where single holes can't be told apart anyway, the
// mean of three by three takes it away and leaves the tone as it is.
func soften(p *raster.Plane) {
	w, h := p.W, p.H
	if w < 3 || h < 3 {
		return
	}
	// What a half reads of the other half is summed before either is written.
	middle := h / 2
	last, next := make([]uint16, w), make([]uint16, w)
	sumAcross(last, p.Cover[(middle-1)*w:middle*w])
	sumAcross(next, p.Cover[middle*w:(middle+1)*w])
	inHalves(0, h, func(from, to int) {
		if from == 0 {
			softenRows(p.Cover[:to*w], w, nil, next)
		} else {
			softenRows(p.Cover[from*w:to*w], w, last, nil)
		}
	})
}

// sumAcross adds up each pixel of a row and its two neighbours; at the ends the
// pixel itself stands in for the one that is not there.
func sumAcross(sum []uint16, row []uint8) {
	w := len(row)
	sum[0], sum[w-1] = uint16(row[0])*2+uint16(row[1]), uint16(row[w-1])*2+uint16(row[w-2])
	for x := 1; x < w-1; x++ {
		sum[x] = uint16(row[x-1]) + uint16(row[x]) + uint16(row[x+1])
	}
}

// softenRows softens rows of w pixels between the sums of the row above and the
// row below; nil is the edge of the picture.
func softenRows(cover []uint8, w int, above, below []uint16) {
	h := len(cover) / w
	sums := [3][]uint16{make([]uint16, w), make([]uint16, w), make([]uint16, w)}
	sumAcross(sums[1], cover[:w])
	if above == nil {
		above = sums[1]
	}
	copy(sums[0], above)
	for y := range h {
		// The row below is summed before this one is written.
		switch {
		case y+1 < h:
			sumAcross(sums[2], cover[(y+1)*w:(y+2)*w])
		case below != nil:
			copy(sums[2], below)
		default:
			copy(sums[2], sums[1])
		}
		a, b, c := sums[0][:w], sums[1][:w], sums[2][:w]
		out := cover[y*w : (y+1)*w]
		for x := range out {
			out[x] = uint8((a[x] + b[x] + c[x] + 4) / 9)
		}
		sums[0], sums[1], sums[2] = sums[1], sums[2], sums[0]
	}
}
