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

// A methodInk is how cut-outs of a method are shown beside their colour in the
// palette: the weaves differ without any colour.
type methodInk struct {
	weave board.Weave
	gloss string // what the trade name means
}

var methodInks = map[bench.Method]methodInk{
	bench.Kiribori:  {board.Full, "round holes by an awl"},
	bench.Dogubori:  {board.Lattice, "shapes by a punch"},
	bench.Tsukibori: {board.Rising, "lines, thrust"},
	bench.Hikibori:  {board.Falling, "lines, pulled"},
	bench.Shimabori: {board.Upright, "stripes along a ruler"},
}

// faded is a colour far on the way to the paper that it lies on.
func faded(c, paper color.RGBA) color.RGBA {
	to := func(v, p uint8) uint8 { return uint8(int(p) - (int(p)-int(v))*3/10) }
	return color.RGBA{to(c.R, paper.R), to(c.G, paper.G), to(c.B, paper.B), 0xff}
}

// Size of a swatch, in pixels.
const swatchPx = 36

// swatch is a piece of paper with a hole as a method's are shown.
func swatch(m bench.Method) image.Image {
	side := geom.Length(swatchPx) * geom.Millimetre
	hole := raster.NewGround([]geom.Shape{geom.DiscShape(geom.Point{X: side / 2, Y: side / 2}, side*5/6)})
	s := board.Scene{Desk: worn().white, Tints: []board.Tint{{Ground: hole, Colour: worn().methods[m], Weave: methodInks[m].weave}}}
	return new(board.Painter).Paint(s, raster.View{PxPerMM: 1}, swatchPx, swatchPx, 1.4)
}

// swatchSide is how large a swatch is shown, in screen units.
const swatchSide = 18

func swatchOf(m bench.Method) *fyne.Container {
	picture := canvas.NewImageFromImage(swatch(m))
	picture.FillMode = canvas.ImageFillContain
	picture.SetMinSize(fyne.NewSize(swatchSide, swatchSide))
	return container.NewCenter(picture)
}
