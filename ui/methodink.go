package ui

import (
	"image"
	"image/color"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/canvas"
	"fyne.io/fyne/v2/container"

	"tsugime/export/raster"
	"tsugime/repeat/bench"
	"tsugime/repeat/geom"
	"tsugime/ui/board"
)

// A methodInk is how cut-outs of a method are shown: its colour and its weave. The
// colours differ in lightness too, the weaves without any colour.
type methodInk struct {
	colour color.RGBA
	weave  board.Weave
	gloss  string // what the trade name means
}

var methodInks = map[bench.Method]methodInk{
	bench.Kiribori:  {color.RGBA{0x27, 0x3a, 0x6b, 0xff}, board.Full, "round holes by an awl"},
	bench.Dogubori:  {color.RGBA{0xb0, 0x4a, 0x22, 0xff}, board.Lattice, "shapes by a punch"},
	bench.Tsukibori: {color.RGBA{0x1c, 0x7a, 0x68, 0xff}, board.Rising, "lines, thrust"},
	bench.Hikibori:  {color.RGBA{0x7c, 0x3a, 0x78, 0xff}, board.Falling, "lines, pulled"},
	bench.Shimabori: {color.RGBA{0x8a, 0x6a, 0x08, 0xff}, board.Upright, "stripes along a ruler"},
}

// faded is a colour far on the way to white.
func faded(c color.RGBA) color.RGBA {
	to := func(v uint8) uint8 { return uint8(255 - (255-int(v))*3/10) }
	return color.RGBA{to(c.R), to(c.G), to(c.B), 0xff}
}

// Size of a swatch, in pixels.
const swatchPx = 36

// swatch is a piece of paper with a hole as a method's are shown.
func swatch(m bench.Method) image.Image {
	side := geom.Length(swatchPx) * geom.Millimetre
	hole := raster.NewGround([]geom.Shape{geom.DiscShape(geom.Point{X: side / 2, Y: side / 2}, side*5/6)})
	i := methodInks[m]
	s := board.Scene{Desk: white, Tints: []board.Tint{{Ground: hole, Colour: i.colour, Weave: i.weave}}, Pitch: side}
	return new(board.Painter).Paint(s, raster.View{PxPerMM: 1}, swatchPx, swatchPx, 1.4)
}

// swatches are the swatch of each method.
var swatches = func() map[bench.Method]image.Image {
	all := map[bench.Method]image.Image{}
	for m := range methodInks {
		all[m] = swatch(m)
	}
	return all
}()

// swatchSide is how large a swatch is shown, in screen units.
const swatchSide = 18

func swatchOf(m bench.Method) *fyne.Container {
	picture := canvas.NewImageFromImage(swatches[m])
	picture.FillMode = canvas.ImageFillContain
	picture.SetMinSize(fyne.NewSize(swatchSide, swatchSide))
	return container.NewCenter(picture)
}
