package raster

import (
	"encoding/binary"
	"image"
	"image/color"
	"math"
)

// Colours are mixed as light, not as their sRGB numbers. A pixel that is half
// open sends half the light of an open one; only then is the tone of a fine
// ground the same whether its dots are seen one by one or lie ten to a pixel.
// Mixed as numbers, a pixel that a rim crosses would be darker than its share,
// more so where the pixels and the dots fall out of step: just the false bands
// that a designer must not be shown. The curve between light and number is that
// of IEC 61966-2-1, section 5.2.

// light returns the light of an sRGB number, 0 to 1.
func light(c uint8) float64 {
	v := float64(c) / 255
	if v <= 0.04045 {
		return v / 12.92
	}
	return math.Pow((v+0.055)/1.055, 2.4)
}

// number returns the sRGB number nearest to a light.
func number(l float64) uint8 {
	v := 12.92 * l
	if l > 0.0031308 {
		v = 1.055*math.Pow(l, 1/2.4) - 0.055
	}
	return uint8(math.Round(255 * math.Min(math.Max(v, 0), 1)))
}

// mixes returns the colours from paper (0) to open (255), four bytes each. Alpha is taken for
// opaque: a picture has no holes.
func mixes(paper, open color.RGBA) *[256]uint32 {
	var m [256]uint32
	from := [3]float64{light(paper.R), light(paper.G), light(paper.B)}
	to := [3]float64{light(open.R), light(open.G), light(open.B)}
	for i := range m {
		t := float64(i) / 255
		var px [4]uint8
		for c := range 3 {
			px[c] = number(from[c] + t*(to[c]-from[c]))
		}
		px[3] = 255
		m[i] = binary.LittleEndian.Uint32(px[:])
	}
	return &m
}

// Blend paints the plane's picture in two colours over all of img that the plane
// covers, its pixel (0, 0) at img's top left corner.
func (p *Plane) Blend(img *image.RGBA, paper, open color.RGBA) {
	m := mixes(paper, open)
	w := min(p.W, img.Rect.Dx())
	inBands(0, min(p.H, img.Rect.Dy()), func(y0, y1 int) {
		for y := y0; y < y1; y++ {
			row := img.Pix[y*img.Stride:][:4*w]
			for x, c := range p.Cover[y*p.W:][:w] {
				binary.LittleEndian.PutUint32(row[4*x:], m[c])
			}
		}
	})
}

// lights is light for each number.
var lights = func() (t [256]float64) {
	for i := range t {
		t[i] = light(uint8(i))
	}
	return t
}()

// Over paints colour c over img wherever the plane is open, and leaves what is
// there where it is paper. c's alpha is taken for opaque.
func (p *Plane) Over(img *image.RGBA, c color.RGBA) {
	w := min(p.W, img.Rect.Dx())
	inBands(0, min(p.H, img.Rect.Dy()), func(y0, y1 int) {
		m := mixer{ink: c}
		for y := y0; y < y1; y++ {
			row := img.Pix[y*img.Stride:][:4*w]
			for x, level := range p.Cover[y*p.W:][:w] {
				if level != 0 {
					m.over(row[4*x:4*x+4:4*x+4], level)
				}
			}
		}
	})
}

// A mixer paints one colour over pixels. Most of what lies below is one colour,
// the cloth or the paper, so the mixes with a colour that was met often in a row
// are kept.
type mixer struct {
	ink   color.RGBA
	kept  color.RGBA   // the colour below that mixed is for
	mixed *[256]uint32 // nil at first
	met   color.RGBA   // the colour below that was met last, if not kept
	times int          // how often in a row
}

// oftenMet is how often in a row a colour is met before its mixes are worth
// their making, which costs as much as some 250 pixels.
const oftenMet = 250

func (m *mixer) over(px []uint8, level uint8) {
	under := color.RGBA{px[0], px[1], px[2], 255}
	if m.mixed != nil && under == m.kept {
		binary.LittleEndian.PutUint32(px, m.mixed[level])
		return
	}
	if under != m.met {
		m.met, m.times = under, 0
	}
	if m.times++; m.times > oftenMet {
		m.kept, m.mixed = under, mixes(under, m.ink)
	}
	t := float64(level) / 255
	from, to := [3]uint8{under.R, under.G, under.B}, [3]uint8{m.ink.R, m.ink.G, m.ink.B}
	for c := range 3 {
		if from[c] != to[c] {
			px[c] = number(lights[from[c]] + t*(lights[to[c]]-lights[from[c]]))
		}
	}
	px[3] = 255
}
