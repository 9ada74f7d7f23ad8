// Package raster turns cut-outs into pixels. The window and the proof pictures
// use the same code, so what is seen is what is printed.
//
// The grey of a pixel is the cut area under it: box coverage, worked out in
// closed form and not from samples. A fine ground therefore never beats with
// the pixels: a band in the picture is a band in the design.
//
//	shapes ─► Ground ──Paint(View, Lay)──► Plane ──Blend──► image.RGBA
//	          ready    where on the cloth   0…255   two colours
//
// Two ways lead to the same numbers. Where few cut-outs are in view each one is
// painted on the pixels. Where there are more cut-outs than the eye could count,
// the edges of all pixels are brought back into one repeat, the repeat is painted
// once on that uneven grid, summed up, and each pixel is read off as a difference
// of four sums. Neither way rounds before the last step.
package raster
