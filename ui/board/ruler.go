package board

import (
	"image"
	"math"

	"tsugime/repeat/geom"
)

// A tick is a line of a ruler: where, in screen units from the surface's edge,
// how long, and the number at it, if any.
type tick struct {
	at, long float64
	text     string
}

// ticks returns the ruler from origin (mm) over a length of screen units. The
// numbers stand at 1, 2 or 5 times a power of ten of the unit, at least 64 screen
// units apart.
func ticks(u geom.Unit, origin, zoom, length float64) []tick {
	one, _ := geom.ParseLength("1", u)
	size := one.MM() * zoom
	if size <= 0 {
		return nil
	}
	step, parts := 1.0, 5
	power := math.Pow(10, math.Floor(math.Log10(64/size)))
	for _, s := range []struct {
		step  float64
		parts int
	}{{1, 10}, {2, 4}, {5, 5}, {10, 10}} {
		step, parts = s.step*power, s.parts
		if step*size >= 64 {
			break
		}
	}
	fine := step / float64(parts)
	from := math.Ceil(origin / one.MM() / fine)
	var all []tick
	for n := from; ; n++ {
		at := (n*fine*one.MM() - origin) * zoom
		if at > length {
			return all
		}
		t := tick{at: at, long: 5}
		if math.Mod(math.Abs(n), float64(parts)) == 0 {
			t.long, t.text = 11, number(n*fine, step)
		}
		all = append(all, t)
	}
}

// number writes v with as many decimals as step has.
func number(v, step float64) string {
	places := 0
	for s := step; s < 0.999 && places < 6; s *= 10 {
		places++
	}
	return string(geom.MM(v).AppendMM(nil, places))
}

// rulers draws the ticks along the upper and the left edge.
func (b *Board) rulers(img *image.RGBA, unit float64) {
	w, h := img.Rect.Dx(), img.Rect.Dy()
	deep := int(math.Round(rulerPx * unit))
	fill(img, image.Rect(0, 0, w, deep), b.look.Paper)
	fill(img, image.Rect(0, 0, deep, h), b.look.Paper)
	thin := max(int(math.Round(unit)), 1)
	fill(img, image.Rect(deep, deep, w, deep+thin), b.look.Rim)
	fill(img, image.Rect(deep, deep, deep+thin, h), b.look.Rim)
	for _, t := range ticks(b.Unit, b.view.x, b.view.zoom, float64(w)/unit) {
		if x, l := int(math.Round(t.at*unit)), int(t.long*unit); x > deep {
			fill(img, image.Rect(x, deep-l, x+thin, deep), b.look.Ink)
		}
	}
	for _, t := range ticks(b.Unit, b.view.y, b.view.zoom, float64(h)/unit) {
		if y, l := int(math.Round(t.at*unit)), int(t.long*unit); y > deep {
			fill(img, image.Rect(deep-l, y, deep, y+thin), b.look.Ink)
		}
	}
	fill(img, image.Rect(0, 0, deep, deep), b.look.Paper)
}
