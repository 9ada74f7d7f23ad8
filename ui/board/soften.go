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
	rows := [3][]uint16{make([]uint16, w), make([]uint16, w), make([]uint16, w)}
	across := func(sum []uint16, y int) {
		row := p.Cover[y*w : (y+1)*w]
		sum[0], sum[w-1] = uint16(row[0])*2+uint16(row[1]), uint16(row[w-1])*2+uint16(row[w-2])
		for x := 1; x < w-1; x++ {
			sum[x] = uint16(row[x-1]) + uint16(row[x]) + uint16(row[x+1])
		}
	}
	across(rows[1], 0)
	copy(rows[0], rows[1])
	for y := range h {
		// The row below is summed before this one is written.
		if y+1 < h {
			across(rows[2], y+1)
		} else {
			copy(rows[2], rows[1])
		}
		above, here, below := rows[0][:w], rows[1][:w], rows[2][:w]
		out := p.Cover[y*w : (y+1)*w]
		for x := range out {
			out[x] = uint8((above[x] + here[x] + below[x] + 4) / 9)
		}
		rows[0], rows[1], rows[2] = rows[1], rows[2], rows[0]
	}
}
