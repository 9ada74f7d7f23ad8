package board

import (
	"image"
	"image/color"
	"math"
	"runtime"
	"sync"
)

// A touch is a colour that is laid over the pixels of a box, as much as inside says for
// the middle of each: 1 or more is all of it.
type touch struct {
	x0, y0, x1, y1 int // the first and the last pixels
	colour         color.RGBA
	inside         func(x, y float64) float64
}

// soft lays colour c over the pixels of a box.
func (p pen) soft(x0, y0, x1, y1 float64, c color.RGBA, inside func(x, y float64) float64) {
	r := p.img.Rect
	t := touch{
		max(int(math.Floor(x0)), r.Min.X), max(int(math.Floor(y0)), r.Min.Y),
		min(int(math.Floor(x1)), r.Max.X-1), min(int(math.Floor(y1)), r.Max.Y-1), c, inside,
	}
	switch {
	case t.x0 > t.x1 || t.y0 > t.y1:
	case p.kept != nil:
		*p.kept = append(*p.kept, t)
	default:
		t.lay(p.img, t.y0, t.y1)
	}
}

// lay lays rows y0 to y1 of the touch.
func (t touch) lay(img *image.RGBA, y0, y1 int) {
	c := t.colour
	for y := max(t.y0, y0); y <= min(t.y1, y1); y++ {
		row := img.Pix[img.PixOffset(t.x0, y):][:4*(t.x1-t.x0+1)]
		for x := t.x0; x <= t.x1; x++ {
			by := t.inside(float64(x)+0.5, float64(y)+0.5)
			if by <= 0 {
				continue
			}
			a := int(math.Min(by, 1) * 255)
			px := row[4*(x-t.x0) : 4*(x-t.x0)+3]
			px[0] += uint8((int(c.R) - int(px[0])) * a / 255)
			px[1] += uint8((int(c.G) - int(px[1])) * a / 255)
			px[2] += uint8((int(c.B) - int(px[2])) * a / 255)
		}
	}
}

// layAll lays touches one over the other, strips of the picture side by side: each pixel
// gets them in their order, however many strips there are.
func layAll(img *image.RGBA, all []touch) {
	if len(all) == 0 {
		return
	}
	h := img.Rect.Dy()
	strips := min(runtime.GOMAXPROCS(0), h)
	var side sync.WaitGroup
	for k := range strips {
		side.Go(func() {
			y0, y1 := img.Rect.Min.Y+h*k/strips, img.Rect.Min.Y+h*(k+1)/strips-1
			for _, t := range all {
				t.lay(img, y0, y1)
			}
		})
	}
	side.Wait()
}
