package ui

import (
	"image"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/canvas"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/dialog"
	"fyne.io/fyne/v2/layout"
	"fyne.io/fyne/v2/widget"

	"tsugime/assets"
	"tsugime/export/raster"
	"tsugime/repeat/geom"
	"tsugime/repeat/pattern"
)

// The picture of a starter: its size on the screen, and what it shows.
const (
	starterSide    = 84
	starterPixels  = 168 // sharp on a fine screen too
	starterPitches = 9   // from hole to hole
)

// chooseStarter offers the starters with how they look and what they are.
// Their pictures come as they are drawn.
func (w *Window) chooseStarter() {
	var d *dialog.CustomDialog
	list := container.New(layout.NewCustomPaddedVBoxLayout(8))
	starters := assets.Starters()
	pictures := make([]*canvas.Image, len(starters))
	for i, s := range starters {
		pictures[i] = canvas.NewImageFromImage(image.NewRGBA(image.Rect(0, 0, 1, 1)))
		pictures[i].FillMode = canvas.ImageFillContain
		pictures[i].SetMinSize(fyne.NewSquareSize(starterSide))
		list.Add(starterRow(s, pictures[i], func() {
			d.Hide()
			w.askThen("Begin Anew", func() { w.begin(s.Name) })
		}))
	}
	scroll := container.NewVScroll(container.New(layout.NewCustomPaddedLayout(0, 0, 0, 14), list))
	scroll.SetMinSize(fyne.NewSize(640, 560))
	d = dialog.NewCustom(say("Begin with"), say("Cancel"), scroll, w.win)
	d.Show()
	go func() {
		for i, s := range starters {
			o, err := ReadStarter(s.Name)
			if err != nil {
				continue // told when it is chosen
			}
			picture := starterPicture(o.Design())
			later(func() {
				pictures[i].Image = picture
				pictures[i].Refresh()
			})
		}
	}()
}

// starterRow is one starter: its picture, its title to press, a sentence.
func starterRow(s assets.Start, picture fyne.CanvasObject, do func()) fyne.CanvasObject {
	about := quietLabel()
	about.SetText(told(s.About))
	title := widget.NewButton(told(s.Title), do)
	title.Alignment = widget.ButtonAlignLeading
	return container.NewBorder(nil, nil, picture, nil, container.NewVBox(title, about))
}

// begin lays a starter on the bench.
func (w *Window) begin(name string) {
	o, err := ReadStarter(name)
	if err != nil {
		w.fail(err)
		return
	}
	w.lay(o, "", true)
}

// starterPicture is a piece of a plain pattern, some holes wide.
func starterPicture(u pattern.Unit) image.Image {
	img := image.NewRGBA(image.Rect(0, 0, starterPixels, starterPixels))
	plane := raster.NewPlane(starterPixels, starterPixels)
	side := holePitch(u).MM() * starterPitches
	at := geom.BoxOf(geom.Point{}, u.Lattice.A.Add(u.Lattice.B)).Min
	view := raster.View{X: at.X.MM(), Y: at.Y.MM(), PxPerMM: starterPixels / side}
	groundOf(u.Lattice, u.Motifs).PaintAll(plane, view, raster.Lay{})
	plane.Blend(img, worn().tannin, worn().light)
	return img
}
