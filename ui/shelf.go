package ui

import (
	"image"
	"image/draw"
	"math"
	"slices"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/canvas"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/layout"
	"fyne.io/fyne/v2/widget"

	"tsugime/export/raster"
	"tsugime/repeat/document"
	"tsugime/repeat/geom"
	"tsugime/ui/board"
)

// A shelfBench shows the shapes that the order keeps on its shelf. The one that is
// taken in hand is what a click places.
type shelfBench struct {
	s     *draft
	taken string // its name; "" for none
	tiles *fyne.Container
	shown []document.ShelfMotif // for which the tiles were made
	hands []*widget.Button      // of the tiles
	empty *widget.Label
	name  *entry
	over  *geom.Point // where the pointer is, nil for nowhere
}

// Sizes of a tile, and of its picture.
const (
	tileWidth  = 78
	tileHeight = 96
	tilePx     = 120
)

func newShelfBench(s *draft) *shelfBench {
	b := &shelfBench{s: s, tiles: container.New(layout.NewGridWrapLayout(fyne.NewSize(tileWidth, tileHeight))), empty: quietLabel()}
	b.empty.SetText(say("Nothing yet: bring in outlines, or put a chosen motif here."))
	s.places.OnChanged = func(on bool) {
		if !on {
			b.drop()
		}
	}
	s.path.OnChanged = func(text string) {
		if text != "" {
			b.drop()
		}
	}
	f := s.form
	f.heading("Shelf")
	f.add(b.empty)
	f.add(b.tiles)
	b.name = newEntry(b.rename)
	b.name.SetPlaceHolder(say("none in hand"))
	f.row("Its name", b.name)
	f.beside(widget.NewButton(say("Bring In…"), s.w.chooseOutlines), widget.NewButton(say("Put Here"), b.put))
	f.button("Take It Off the Shelf", b.remove)
	return b
}

// shape returns what is in hand.
func (b *shelfBench) shape() (geom.Shape, bool) {
	o := b.s.w.Order()
	if i := o.OnShelf(b.taken); i >= 0 && b.taken != "" {
		return o.Shelf[i].Shape, true
	}
	return geom.Shape{}, false
}

// take takes a shape in hand, so that a click places it; "" puts it back.
func (b *shelfBench) take(name string) {
	b.taken, b.over = name, nil
	b.s.places.SetChecked(name != "")
	if name != "" {
		b.s.path.put("")
		b.s.w.choose()
		b.s.w.Say(say("Click where it is to stand. Escape puts it back."))
	}
	b.show()
	b.s.w.repaint()
}

// drop puts back what is in hand; what a click does stays as it is.
func (b *shelfBench) drop() {
	b.taken, b.over = "", nil
	b.show()
}

// takeNext takes the shape after the one in hand, or before.
func (b *shelfBench) takeNext(by int) {
	shelf := b.s.w.Order().Shelf
	if len(shelf) == 0 {
		b.s.w.Say(say("The shelf is empty: bring in outlines, or put a chosen motif there."))
		return
	}
	i := b.s.w.Order().OnShelf(b.taken)
	if i < 0 && by < 0 {
		i = 0
	}
	b.take(shelf[(i+by+len(shelf))%len(shelf)].Name)
}

// put keeps the chosen motifs as they stand, turned and mirrored.
func (b *shelfBench) put() {
	w := b.s.w
	if len(w.chosen) == 0 {
		w.Say(say("Choose a motif first: click it."))
		return
	}
	w.Edit("Put on Shelf", func(o document.Order) (document.Order, error) {
		for _, id := range w.chosen {
			m, _ := o.Motif(id)
			m.At = geom.Point{}
			var err error
			name := o.FreeShelfName(say("motif %d", int(id)))
			if o, err = document.PutOnShelf(o, document.ShelfMotif{Name: name, Shape: m.Placed()}); err != nil {
				return o, err
			}
		}
		return o, nil
	})
}

func (b *shelfBench) rename(to string) {
	from := b.taken
	if from == "" {
		b.show()
		return
	}
	b.taken = to
	if !b.s.w.Edit("Rename on Shelf", func(o document.Order) (document.Order, error) {
		return document.RenameOnShelf(o, from, to)
	}) {
		b.taken = from
	}
	b.show()
}

func (b *shelfBench) remove() {
	if b.taken == "" {
		b.s.w.Say(say("Take a shape in hand first: click it on the shelf."))
		return
	}
	name := b.taken
	b.take("")
	b.s.w.Edit("Take off Shelf", func(o document.Order) (document.Order, error) { return document.DeleteFromShelf(o, name) })
}

// refresh shows the shelf of the order.
func (b *shelfBench) refresh(o document.Order) {
	if b.taken != "" && o.OnShelf(b.taken) < 0 { // undone, or another order
		b.taken = ""
		b.s.places.SetChecked(false)
	}
	if !sameShelf(o.Shelf, b.shown) {
		b.shown = o.Shelf
		b.fill()
	}
	b.show()
}

// sameShelf reports whether two orders share their shelf: edits that don't touch it
// don't copy it.
func sameShelf(a, b []document.ShelfMotif) bool {
	return len(a) == len(b) && (len(a) == 0 || &a[0] == &b[0])
}

// fill makes a tile for each shape: a button with its picture and its name.
func (b *shelfBench) fill() {
	b.tiles.Objects, b.hands = nil, nil
	for _, m := range b.shown {
		hand := widget.NewButton("", nil)
		hand.OnTapped = func() {
			if b.taken == m.Name {
				b.take("")
				return
			}
			b.take(m.Name)
		}
		picture := canvas.NewImageFromImage(shapePicture(m.Shape, tilePx))
		picture.FillMode = canvas.ImageFillContain
		name := widget.NewLabel(m.Name)
		name.Truncation, name.Alignment = fyne.TextTruncateEllipsis, fyne.TextAlignCenter
		b.tiles.Add(container.NewBorder(nil, name, nil, nil, container.NewStack(hand, container.NewPadded(picture))))
		b.hands = append(b.hands, hand)
	}
	b.tiles.Refresh()
}

// show marks what is in hand.
func (b *shelfBench) show() {
	for i, hand := range b.hands {
		importance := widget.MediumImportance
		if b.shown[i].Name == b.taken {
			importance = widget.HighImportance
		}
		if hand.Importance != importance {
			hand.Importance = importance
			hand.Refresh()
		}
	}
	if b.name.put(b.taken); b.taken == "" {
		b.name.Disable()
	} else {
		b.name.Enable()
	}
	b.empty.Hidden, b.tiles.Hidden = len(b.shown) > 0, len(b.shown) == 0
}

// shapePicture draws a shape as a hole in the paper, with a little paper around it.
func shapePicture(s geom.Shape, px int) image.Image {
	box := s.Bounds()
	side := float64(max(box.Width(), box.Height())) / float64(geom.Millimetre)
	scale := float64(px) * 0.8 / math.Max(side, 1e-3)
	half := float64(px) / 2 / scale
	p := raster.NewPlane(px, px)
	raster.NewGround([]geom.Shape{s}).Paint(p, raster.View{X: box.Centre().X.MM() - half, Y: box.Centre().Y.MM() - half, PxPerMM: scale}, raster.Lay{})
	img := image.NewRGBA(image.Rect(0, 0, px, px))
	draw.Draw(img, img.Rect, image.NewUniform(worn().tannin), image.Point{}, draw.Src)
	p.Over(img, worn().light)
	return img
}

// hover follows the pointer with what is in hand.
func (b *shelfBench) hover(at geom.Point) {
	if _, ok := b.shape(); ok && b.s.places.Checked {
		b.over = &at
		b.s.w.repaint()
	}
}

// mark shows what is in hand under the pointer, with its copies around it.
func (b *shelfBench) mark(sc *board.Scene) {
	shape, ok := b.shape()
	if !ok || b.over == nil || !b.s.places.Checked {
		return
	}
	for _, r := range shape.Rings(max(geom.Chord, b.s.w.reach()/40)) {
		if len(r) < 2000 {
			sc.Marks = append(sc.Marks, board.Mark{Shape: board.Loop, Points: slices.Clone(r.Moved(snapped(*b.over))), Colour: worn().onPaper, Width: 1.5})
		}
	}
}

// putInTheMiddle places what a click would place in the middle of what is seen.
func (s *draft) putInTheMiddle() { s.put(s.w.board.Seen().Centre()) }

// shelfCommands are those of the shelf.
func shelfCommands() []command {
	shelf := func(f func(b *shelfBench)) func(w *Window) {
		return func(w *Window) { f(w.stations[draftAt].(*draft).shelf) }
	}
	free := func(w *Window) bool { return drafting(w) && w.craft() == nil }
	taken := func(w *Window) bool { return free(w) && w.stations[draftAt].(*draft).shelf.taken != "" }
	return []command{
		{"Draw", named("Put the Chosen Motifs on the Shelf"), keys(key(fyne.KeyU, ctrl)), arranging, shelf((*shelfBench).put)},
		{"Draw", named("Take the Next Shape of the Shelf"), keys(key(fyne.KeyQ, 0)), free, shelf(func(b *shelfBench) { b.takeNext(1) })},
		{"Draw", named("Take the Shape Before"), keys(key(fyne.KeyQ, shift)), free, shelf(func(b *shelfBench) { b.takeNext(-1) })},
		{"Draw", named("Place It in the Middle"), keys(key(fyne.KeyInsert, 0)), free, func(w *Window) { w.stations[draftAt].(*draft).putInTheMiddle() }},
		{"Draw", named("Name the Shape of the Shelf"), keys(key(fyne.KeyF2, 0)), taken, shelf(func(b *shelfBench) { b.s.w.win.Canvas().Focus(b.name) })},
		{"Draw", named("Take the Shape off the Shelf"), keys(key(fyne.KeyDelete, ctrl)), taken, shelf((*shelfBench).remove)},
	}
}
