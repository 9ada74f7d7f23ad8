package board

import (
	"image"
	"image/color"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/canvas"

	"tsugime/export/raster"
)

// A loupe shows what is under the pointer, larger.
type loupe struct {
	board   *Board
	picture *canvas.Raster
	frame   *canvas.Rectangle
	painter Painter
}

const (
	loupeSize  = 240.0 // screen units
	loupeGlass = 6.0   // times the scale of the surface
)

func newLoupe(b *Board) *loupe {
	l := &loupe{board: b, frame: canvas.NewRectangle(color.Transparent)}
	l.picture = canvas.NewRaster(l.paint)
	l.picture.ScaleMode = canvas.ImageScalePixels
	l.frame.StrokeWidth = 2
	l.show(false)
	return l
}

func (l *loupe) show(on bool) {
	l.frame.Hidden, l.picture.Hidden = !on, !on
}

func (l *loupe) refresh() {
	if !l.frame.Hidden {
		l.picture.Refresh()
	}
}

// layout puts the loupe in the lower right corner, or in the left one where an inset is
// shown.
func (l *loupe) layout(size fyne.Size) {
	pos, own := fyne.NewPos(size.Width-loupeSize-16, size.Height-loupeSize-16), fyne.NewSize(loupeSize, loupeSize)
	if l.board.inlay.of != nil {
		pos.X = 16
	}
	for _, o := range []fyne.CanvasObject{l.picture, l.frame} {
		o.Move(pos)
		o.Resize(own)
	}
}

func (l *loupe) paint(w, h int) image.Image {
	unit := float64(w) / loupeSize
	zoom := limited(l.board.view.zoom * loupeGlass)
	at := l.board.at(l.board.hovered)
	v := raster.View{
		X: at.X.MM() - loupeSize/2/zoom, Y: at.Y.MM() - loupeSize/2/zoom, PxPerMM: zoom * unit,
	}
	img := l.painter.Paint(l.board.scene, v, w, h, unit)
	p := pen{img: img, view: v, unit: unit}
	mid := spot{float64(w) / 2, float64(h) / 2}
	for _, way := range []spot{{6, 0}, {-6, 0}, {0, 6}, {0, -6}} {
		p.line(spot{mid.x + way.x*unit, mid.y + way.y*unit}, spot{mid.x + 2*way.x*unit, mid.y + 2*way.y*unit}, unit, l.board.look.Ink)
	}
	return img
}
