// Package board is the drawing surface: pixels out, gestures in. It holds no
// design. It is given a Scene, which is millimetres and colours, paints it at any
// zoom, and tells a Hand what the pointer does, in millimetres.
//
//	Scene ─► Painter ─► pixels          pointer ─► Board ─► Hand
//
// The picture is painted by export/raster, the painter of the proofs, so a band
// on the screen is a band in the design.
package board

import (
	"math"
	"time"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/canvas"
	"fyne.io/fyne/v2/driver/desktop"
	"fyne.io/fyne/v2/widget"

	"tsugime/repeat/geom"
)

// What the pointer and the eye are allowed on the screen.
const (
	reachPx  = 7.0  // how near to a thing a press takes it
	steadyPx = 3.0  // a press that moves less is a tap
	minZoom  = 0.01 // units of the screen for a millimetre
	maxZoom  = 2000.0
	marginPx = 36 // left free around the extent when all of it is shown
	rulerPx  = 26
)

// A Hand is told what the pointer does. Places and ways are in the scene's
// millimetres; reach is how near counts as on it. More asks to add to what is
// chosen (Shift or Ctrl held).
type Hand interface {
	// Press takes what is at p and reports whether there is anything; where there
	// is nothing a drag moves the view instead.
	Press(p geom.Point, reach geom.Length, more bool) bool
	Drag(by geom.Point) // what was taken, since it was pressed
	Drop(by geom.Point) // the drag ends
	Tap(p geom.Point, reach geom.Length, more bool)
	Hover(p geom.Point)
}

// A Board is the surface.
type Board struct {
	widget.BaseWidget

	// Unit is what the rulers count.
	Unit geom.Unit
	// Grid shows a grid where the rulers have their ticks.
	Grid bool
	// OnKey gets the keys that the surface has no use for itself.
	OnKey func(key fyne.KeyName, modifiers fyne.KeyModifier)
	// OnShown is told when another scene or another part of it is to be seen.
	OnShown func()
	// OnPainted is told how long the painting of a picture took.
	OnPainted func(time.Duration)

	scene Scene
	key   string
	view  window
	views map[string]window
	hand  Hand
	look  Look

	picture *canvas.Raster
	painter Painter
	labels  labels
	loupe   *loupe
	inlay   *inlay

	gesture gesture
	space   bool
	hovered fyne.Position
	over    bool // the pointer is over the surface
	mods    fyne.KeyModifier
}

// A window is the part of the scene that is seen: the millimetres at the top left
// corner, and screen units for a millimetre.
type window struct {
	x, y, zoom float64
	whole      bool // shows all there is, and goes on doing so in another size
}

// New returns a surface of a look that shows nothing yet.
func New(l Look) *Board {
	b := &Board{look: l, Unit: geom.MMUnit, views: map[string]window{}}
	b.picture = canvas.NewRaster(b.paint)
	b.picture.ScaleMode = canvas.ImageScalePixels
	b.inlay = newInlay()
	b.loupe = newLoupe(b)
	b.dress()
	b.ExtendBaseWidget(b)
	return b
}

var (
	_ fyne.Widget        = (*Board)(nil)
	_ fyne.Scrollable    = (*Board)(nil)
	_ fyne.Focusable     = (*Board)(nil)
	_ fyne.Draggable     = (*Board)(nil)
	_ fyne.Shortcutable  = (*Board)(nil)
	_ desktop.Mouseable  = (*Board)(nil)
	_ desktop.Hoverable  = (*Board)(nil)
	_ desktop.Keyable    = (*Board)(nil)
	_ desktop.Cursorable = (*Board)(nil)
)

// Present puts another scene on the surface. Scenes with the same key share the part
// that is seen; the first one of a key is shown whole.
func (b *Board) Present(key string, s Scene, h Hand) {
	if b.key != "" {
		b.views[b.key] = b.view
	}
	changed := key != b.key
	b.scene, b.key, b.hand = s, key, h
	if changed {
		b.gesture = gesture{}
		v, ok := b.views[key]
		if !ok || v.zoom == 0 || v.whole {
			b.Whole()
			return
		}
		b.view = v
	}
	b.refresh()
}

// Whole shows the whole extent.
func (b *Board) Whole() {
	b.Frame(b.scene.Extent)
	b.view.whole = true
}

// Frame shows a box of the scene as large as it fits.
func (b *Board) Frame(box geom.Box) {
	room, inset := b.Size(), b.inset()
	w, h := float64(room.Width)-inset-2*marginPx, float64(room.Height)-inset-2*marginPx
	if box.Empty() || w < 20 || h < 20 {
		b.view.zoom = 0 // no room yet; Resize tries again
		return
	}
	bw, bh := math.Max(box.Width().MM(), 0.01), math.Max(box.Height().MM(), 0.01)
	z := limited(math.Min(w/bw, h/bh))
	mid := box.Centre()
	b.view = window{
		x:    mid.X.MM() - (inset+(float64(room.Width)-inset)/2)/z,
		y:    mid.Y.MM() - (inset+(float64(room.Height)-inset)/2)/z,
		zoom: z,
	}
	b.refresh()
}

// Near shows p in the middle, with at least pxPerMM screen units to a millimetre.
func (b *Board) Near(p geom.Point, pxPerMM float64) {
	z := limited(math.Max(b.view.zoom, pxPerMM))
	size := b.Size()
	b.view = window{x: p.X.MM() - float64(size.Width)/2/z, y: p.Y.MM() - float64(size.Height)/2/z, zoom: z}
	b.refresh()
}

// Zoom makes what lies under the pointer larger by a factor; where the pointer is
// elsewhere, the middle of the surface.
func (b *Board) Zoom(factor float64) {
	size := b.Size()
	at := fyne.NewPos(size.Width/2, size.Height/2)
	if b.over {
		at = b.hovered
	}
	b.zoomAt(at, factor)
}

// Pan moves what is seen by a way on the surface, in screen units.
func (b *Board) Pan(dx, dy float32) { b.pan(dx, dy) }

// Ruled reports whether what is shown has rulers.
func (b *Board) Ruled() bool { return !b.scene.Plain }

// Scale returns how many screen units a millimetre takes.
func (b *Board) Scale() float64 { return b.view.zoom }

// Loupe shows or hides the loupe and reports whether it is shown.
func (b *Board) Loupe(on bool) bool {
	b.loupe.show(on)
	b.refresh()
	return on
}

// LoupeShown reports whether the loupe is shown.
func (b *Board) LoupeShown() bool { return b.loupe.frame.Visible() }

// Seen returns which box of the scene is on the surface.
func (b *Board) Seen() geom.Box {
	size := b.Size()
	return geom.BoxOf(b.at(fyne.NewPos(0, 0)), b.at(fyne.NewPos(size.Width, size.Height)))
}

// At returns where a place of the scene is on the surface.
func (b *Board) At(p geom.Point) fyne.Position {
	return fyne.NewPos(float32((p.X.MM()-b.view.x)*b.view.zoom), float32((p.Y.MM()-b.view.y)*b.view.zoom))
}

func (b *Board) at(p fyne.Position) geom.Point {
	return geom.PtMM(b.view.x+float64(p.X)/b.view.zoom, b.view.y+float64(p.Y)/b.view.zoom)
}

func (b *Board) zoomAt(p fyne.Position, factor float64) {
	if b.view.zoom == 0 {
		return
	}
	z := limited(b.view.zoom * factor)
	x, y := b.view.x+float64(p.X)/b.view.zoom, b.view.y+float64(p.Y)/b.view.zoom
	b.view = window{x: x - float64(p.X)/z, y: y - float64(p.Y)/z, zoom: z}
	b.refresh()
}

func (b *Board) pan(dx, dy float32) {
	if b.view.zoom == 0 {
		return
	}
	b.view.whole = false
	b.view.x -= float64(dx) / b.view.zoom
	b.view.y -= float64(dy) / b.view.zoom
	b.refresh()
}

func limited(zoom float64) float64 { return math.Min(math.Max(zoom, minZoom), maxZoom) }

// inset is how much of the left and upper edge the rulers take.
func (b *Board) inset() float64 {
	if b.scene.Plain {
		return 0
	}
	return rulerPx
}

func (b *Board) refresh() {
	b.layLabels()
	b.picture.Refresh()
	b.loupe.refresh()
	b.Tell()
}

// Tell tells whoever watches that what the window shows is about to change.
func (b *Board) Tell() {
	if b.OnShown != nil {
		b.OnShown()
	}
}
