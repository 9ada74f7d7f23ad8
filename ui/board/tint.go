package board

import (
	"image/color"
	"math"

	"tsugime/export/raster"
)

// A Tint is a ground whose holes are shown in a colour and a weave of their own, over
// the areas. Weaves tell tints apart without their colour; they lie still on the
// ground while it is panned.
type Tint struct {
	Ground *raster.Ground
	Colour color.RGBA
	Weave  Weave
}

// A Weave is how the colour of a tint is broken by lines.
type Weave int

// The weaves.
const (
	Full    Weave = iota // no lines
	Rising               // lines that rise to the right
	Falling              // lines that fall to the right
	Level                // lines across
	Upright              // lines up and down
	Lattice              // lines both ways, aslant
)

// weaveGap is how far the lines of a weave are apart, in screen units.
const weaveGap = 6

// lined reports whether a line of the weave covers a pixel; gap is in pixels.
func (w Weave) lined(x, y, gap int) bool {
	on := func(v int) bool { return ((v%gap)+gap)%gap < max(gap/4, 1) }
	switch w {
	case Rising:
		return on(x + y)
	case Falling:
		return on(x - y)
	case Level:
		return on(y)
	case Upright:
		return on(x)
	case Lattice:
		return on(x+y) || on(x-y)
	}
	return false
}

// lineShare is how much of a line of a weave is white.
const lineShare = 0.72

// lighter is a colour on the way to white.
func lighter(c color.RGBA, share float64) color.RGBA {
	to := func(v uint8) uint8 { return uint8(math.Round(float64(v) + (255-float64(v))*share)) }
	return color.RGBA{to(c.R), to(c.G), to(c.B), 0xff}
}

// tint paints the holes of a tint over the picture.
func (p *Painter) tint(t Tint, v raster.View, unit float64) {
	gap := max(int(math.Round(weaveGap*unit)), 3)
	ox, oy := int(math.Round(v.X*v.PxPerMM)), int(math.Round(v.Y*v.PxPerMM))
	line := lighter(t.Colour, lineShare)
	w := p.img.Rect.Dx()
	p.plane.Show(v, []Laid{{Ground: t.Ground, Lays: []raster.Lay{{}}}}, func(from, to int) {
		for y := from; y < to; y++ {
			row := p.img.Pix[y*p.img.Stride:][:4*w]
			for x, level := range p.plane.Cover[y*p.plane.W:][:w] {
				if level == 0 {
					continue
				}
				c := t.Colour
				if t.Weave != Full && t.Weave.lined(x+ox, y+oy, gap) {
					c = line
				}
				over(row[4*x:4*x+3:4*x+3], c, level)
			}
		}
	})
}

// over mixes a colour into a pixel by how much of it is covered.
func over(pixel []uint8, c color.RGBA, level uint8) {
	for i, v := range [3]uint8{c.R, c.G, c.B} {
		under := int(pixel[i])
		pixel[i] = uint8(under + ((int(v)-under)*int(level)+127*sign(int(v)-under))/255)
	}
}

func sign(v int) int {
	if v < 0 {
		return -1
	}
	return 1
}
