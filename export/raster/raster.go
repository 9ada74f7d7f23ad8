// Package raster turns cut-outs into pixels. The window and the proof pictures
// use the same code, so what is seen is what is printed.
//
// The grey of a pixel is the cut area under it: box coverage, worked out in
// closed form and not from samples. A screen shows fine grounds through a wider
// Footprint, and each pixel is exact for that: a band in the picture is a band in
// the design.
//
//	shapes ─► Ground ──Paint(View, Lay)──► Plane ──Blend──► image.RGBA
//	          ready    where on the cloth   0…255   two colours
//	            └────────Plane.Show──────────┘
//
// Two ways lead to the same numbers. Where few cut-outs are in view each one is
// painted on the pixels. Where there are more cut-outs than the eye could count,
// the edges of all pixels are brought back into one repeat, the repeat is painted
// once on that uneven grid, summed up, and each pixel is read off as a difference
// of four sums. Neither way rounds before the last step.
//
// Where holes can't be told apart on a screen there is a third: the ground is painted once
// on fine cells, weighed by the footprint at even places about half a pixel apart (a
// tone, kept for the zooms about it), and read off for every pixel of every laying.
package raster
