package board

import (
	"image"
	"time"

	"fyne.io/fyne/v2"

	"tsugime/export/raster"
)

// paint makes the surface's picture; w and h are real pixels.
func (b *Board) paint(w, h int) image.Image {
	if b.OnPainted != nil {
		begun := time.Now()
		defer func() { b.OnPainted(time.Since(begun)) }()
	}
	unit := 1.0
	if width := b.picture.Size().Width; width > 0 {
		unit = float64(w) / float64(width)
	}
	v := raster.View{X: b.view.x, Y: b.view.y, PxPerMM: b.view.zoom * unit}
	img := b.painter.Paint(b.scene, v, w, h, unit)
	if !b.scene.Plain && b.view.zoom > 0 {
		if b.Grid {
			b.grid(img, unit)
		}
		b.rulers(img, unit)
	}
	return img
}

// CreateRenderer is part of fyne.Widget.
func (b *Board) CreateRenderer() fyne.WidgetRenderer { return &renderer{b} }

type renderer struct{ b *Board }

func (r *renderer) Destroy() {}

func (r *renderer) MinSize() fyne.Size { return fyne.NewSize(240, 180) }

// Layout keeps the middle of the view where it is, or shows the whole as before.
func (r *renderer) Layout(size fyne.Size) {
	old := r.b.picture.Size()
	r.b.picture.Resize(size)
	r.b.loupe.layout(size)
	r.b.inlay.layout(size)
	if r.b.view.zoom == 0 || r.b.view.whole {
		r.b.Whole()
		return
	}
	r.b.view.x -= float64(size.Width-old.Width) / 2 / r.b.view.zoom
	r.b.view.y -= float64(size.Height-old.Height) / 2 / r.b.view.zoom
	r.b.refresh()
}

func (r *renderer) Refresh() { r.b.refresh() }

func (r *renderer) Objects() []fyne.CanvasObject {
	l := &r.b.labels
	all := []fyne.CanvasObject{r.b.picture}
	for i := range l.texts {
		all = append(all, l.shields[i], l.texts[i])
	}
	all = append(all, r.b.loupe.picture, r.b.loupe.frame)
	return append(all, r.b.inlay.objects()...)
}
