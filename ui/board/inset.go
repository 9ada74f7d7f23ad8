package board

import (
	"image"
	"image/color"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/canvas"

	"tsugime/export/raster"
	"tsugime/repeat/geom"
)

// An Inset is another scene shown in the lower right corner, at a scale of its own.
// Its labels are not shown; Lines are written below it.
type Inset struct {
	Scene Scene
	At    geom.Point  // in its middle
	Side  geom.Length // of what it shows
	Lines []string    // the first one bold
}

const (
	insetSize   = 264.0 // screen units
	insetLine   = 18
	insetMargin = 16
	insetText   = 12
)

// An inlay keeps the inset's picture, its frame and its words.
type inlay struct {
	of      *Inset
	picture *canvas.Raster
	frame   *canvas.Rectangle
	back    *canvas.Rectangle
	words   [6]*canvas.Text
	painter Painter
}

func newInlay() *inlay {
	i := &inlay{frame: canvas.NewRectangle(color.Transparent), back: canvas.NewRectangle(color.Transparent)}
	i.picture = canvas.NewRaster(i.paint)
	i.picture.ScaleMode = canvas.ImageScalePixels
	i.frame.StrokeWidth = 2
	i.back.StrokeWidth, i.back.CornerRadius = 1, 3
	for n := range i.words {
		i.words[n] = canvas.NewText("", color.Transparent)
		i.words[n].TextSize, i.words[n].TextStyle.Bold = insetText, n == 0
	}
	i.put(nil, fyne.NewSize(0, 0))
	return i
}

// SetInset shows an inset, or none for nil. The loupe makes room for it.
func (b *Board) SetInset(in *Inset) {
	b.inlay.put(in, b.Size())
	b.loupe.layout(b.Size())
}

// InsetShown returns the inset that is shown, nil for none.
func (b *Board) InsetShown() *Inset { return b.inlay.of }

// put shows an inset on a surface of that size.
func (i *inlay) put(in *Inset, size fyne.Size) {
	i.of = in
	hidden := in == nil
	for _, o := range i.objects() {
		if hidden {
			o.Hide()
		} else {
			o.Show()
		}
	}
	if hidden {
		return
	}
	for n, t := range i.words {
		t.Text = ""
		if n < len(in.Lines) {
			t.Text = in.Lines[n]
		}
		t.Refresh()
	}
	i.layout(size)
	i.picture.Refresh()
}

// layout puts the inset into the lower right corner.
func (i *inlay) layout(size fyne.Size) {
	if i.of == nil {
		return
	}
	tall := insetSize + 8 + insetLine*float32(len(i.of.Lines))
	at := fyne.NewPos(size.Width-insetSize-insetMargin, size.Height-tall-insetMargin)
	for _, o := range []fyne.CanvasObject{i.picture, i.frame} {
		o.Move(at)
		o.Resize(fyne.NewSize(insetSize, insetSize))
	}
	i.back.Move(at)
	i.back.Resize(fyne.NewSize(insetSize, tall))
	for n, t := range i.words {
		t.Move(fyne.NewPos(at.X+10, at.Y+insetSize+3+insetLine*float32(n)))
		t.Resize(fyne.NewSize(insetSize-20, insetLine))
	}
}

func (i *inlay) objects() []fyne.CanvasObject {
	all := []fyne.CanvasObject{i.back, i.picture, i.frame}
	for _, t := range i.words {
		all = append(all, t)
	}
	return all
}

func (i *inlay) paint(w, h int) image.Image {
	if i.of == nil || i.of.Side <= 0 {
		return image.NewRGBA(image.Rect(0, 0, w, h))
	}
	zoom := float64(w) / i.of.Side.MM()
	v := raster.View{
		X: i.of.At.X.MM() - float64(w)/2/zoom, Y: i.of.At.Y.MM() - float64(h)/2/zoom, PxPerMM: zoom,
	}
	return i.painter.Paint(i.of.Scene, v, w, h, float64(w)/insetSize)
}
