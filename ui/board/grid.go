package board

import (
	"image"
	"math"
)

// How dense the lines of the grid are and how much they take of what lies under them: at
// the numbers of the rulers and, where they lie far enough apart, at the ticks between.
const (
	gridApart  = 9.0 // screen units
	gridStrong = 110
	gridWeak   = 44
)

// grid draws the grid of the rulers' unit. A line is light on dark ground and dark on
// light ground, so that it is seen on paper, cloth and holes alike.
func (b *Board) grid(img *image.RGBA, unit float64) {
	w, h := img.Rect.Dx(), img.Rect.Dy()
	thin := max(int(math.Round(unit)), 1)
	for _, t := range gridTicks(ticks(b.Unit, b.view.x, b.view.zoom, float64(w)/unit)) {
		x := int(math.Round(t.at * unit))
		shade(img, image.Rect(x, 0, x+thin, h), strength(t))
	}
	for _, t := range gridTicks(ticks(b.Unit, b.view.y, b.view.zoom, float64(h)/unit)) {
		y := int(math.Round(t.at * unit))
		shade(img, image.Rect(0, y, w, y+thin), strength(t))
	}
}

// gridTicks are those of a ruler that get a line.
func gridTicks(all []tick) []tick {
	if len(all) < 2 || all[1].at-all[0].at >= gridApart {
		return all
	}
	var numbered []tick
	for _, t := range all {
		if t.text != "" {
			numbered = append(numbered, t)
		}
	}
	return numbered
}

func strength(t tick) int {
	if t.text != "" {
		return gridStrong
	}
	return gridWeak
}

// shade takes a part, of 255, of each pixel towards white where it is dark and towards
// black where it is light.
func shade(img *image.RGBA, r image.Rectangle, part int) {
	r = r.Intersect(img.Rect)
	for y := r.Min.Y; y < r.Max.Y; y++ {
		row := img.Pix[img.PixOffset(r.Min.X, y):]
		for x := 0; x < r.Dx(); x++ {
			px := row[4*x : 4*x+3]
			towards := 255
			if 2*int(px[0])+5*int(px[1])+int(px[2]) > 8*150 {
				towards = 0
			}
			for i := range px {
				px[i] += uint8((towards - int(px[i])) * part / 255)
			}
		}
	}
}
