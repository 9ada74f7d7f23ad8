package board

import (
	"math"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/driver/desktop"

	"tsugime/repeat/geom"
)

// A gesture is a button that is held.
type gesture struct {
	from   fyne.Position
	held   bool
	moves  bool // the view moves with the pointer
	taken  bool // the hand has something
	begun  bool // the pointer has left the place where it was pressed
	button desktop.MouseButton
	more   bool
}

// MouseDown begins a gesture: the hand takes what is there, or the view is taken
// by the middle button, with space held, or where there is nothing.
func (b *Board) MouseDown(e *desktop.MouseEvent) {
	if c := fyne.CurrentApp().Driver().CanvasForObject(b); c != nil {
		c.Focus(b)
	}
	more := e.Modifier&(fyne.KeyModifierShift|fyne.KeyModifierControl) != 0
	g := gesture{from: e.Position, held: true, button: e.Button, more: more}
	switch {
	case e.Button == desktop.MouseButtonTertiary || b.space:
		g.moves = true
	case e.Button == desktop.MouseButtonPrimary && b.hand != nil && b.view.zoom > 0:
		g.taken = b.hand.Press(b.at(e.Position), b.reach(), more)
		g.moves = !g.taken
	}
	b.gesture = g
}

// MouseUp ends a gesture.
func (b *Board) MouseUp(e *desktop.MouseEvent) {
	g := b.gesture
	b.gesture = gesture{}
	switch {
	case !g.held || b.hand == nil || b.view.zoom == 0:
	case g.taken && g.begun:
		b.hand.Drop(b.way(g.from, e.Position))
	case g.button == desktop.MouseButtonPrimary && !g.begun && !b.space:
		b.hand.Tap(b.at(e.Position), b.reach(), g.more)
	}
}

// Dragged moves what was taken, or the view.
func (b *Board) Dragged(e *fyne.DragEvent) {
	g := &b.gesture
	if !g.held {
		return
	}
	if !g.begun && math.Hypot(float64(e.Position.X-g.from.X), float64(e.Position.Y-g.from.Y)) < steadyPx {
		return
	}
	first := !g.begun
	g.begun = true
	switch {
	case g.taken:
		b.hand.Drag(b.way(g.from, e.Position))
	case g.moves && first:
		b.pan(e.Position.X-g.from.X, e.Position.Y-g.from.Y)
	case g.moves:
		b.pan(e.Dragged.DX, e.Dragged.DY)
	}
}

// DragEnd comes after MouseUp, which has ended the gesture already.
func (b *Board) DragEnd() {}

// Held reports whether something of the design is being dragged.
func (b *Board) Held() bool { return b.gesture.taken && b.gesture.begun }

// Holds reports whether a modifier key is held while the surface has the focus.
func (b *Board) Holds(m fyne.KeyModifier) bool { return b.mods&m != 0 }

// Release gives up a drag: the hand is not told of it again.
func (b *Board) Release() { b.gesture = gesture{} }

// MouseIn, MouseMoved and MouseOut follow the pointer.
func (b *Board) MouseIn(e *desktop.MouseEvent) { b.MouseMoved(e) }

// MouseMoved tells the hand and the loupe where the pointer is.
func (b *Board) MouseMoved(e *desktop.MouseEvent) {
	b.hovered, b.over = e.Position, true
	if b.view.zoom == 0 {
		return
	}
	if b.hand != nil {
		b.hand.Hover(b.at(e.Position))
	}
	b.loupe.refresh()
}

// MouseOut is part of desktop.Hoverable.
func (b *Board) MouseOut() { b.over = false }

// Scrolled zooms to the pointer; Shift moves sideways, Ctrl zooms finely.
func (b *Board) Scrolled(e *fyne.ScrollEvent) {
	switch {
	case b.mods&fyne.KeyModifierShift != 0 || e.Scrolled.DX != 0:
		b.pan(e.Scrolled.DX+e.Scrolled.DY, 0)
	case b.mods&fyne.KeyModifierControl != 0:
		b.zoomAt(e.Position, math.Exp(float64(e.Scrolled.DY)/500))
	default:
		b.zoomAt(e.Position, math.Exp(float64(e.Scrolled.DY)/100))
	}
}

// Cursor is the pointer's shape.
func (b *Board) Cursor() desktop.Cursor {
	if b.space || b.gesture.moves && b.gesture.begun {
		return desktop.PointerCursor
	}
	return desktop.CrosshairCursor
}

// FocusGained is part of fyne.Focusable.
func (b *Board) FocusGained() {}

// FocusLost forgets the keys that were held.
func (b *Board) FocusLost() { b.space, b.mods = false, 0 }

// TypedRune is part of fyne.Focusable: letters come as keys.
func (b *Board) TypedRune(rune) {}

// TypedKey hands a key on.
func (b *Board) TypedKey(e *fyne.KeyEvent) {
	if b.OnKey != nil && e.Name != fyne.KeySpace {
		b.OnKey(e.Name, b.mods)
	}
}

// KeyDown notes space and the modifiers.
func (b *Board) KeyDown(e *fyne.KeyEvent) { b.hold(e.Name, true) }

// KeyUp notes space and the modifiers.
func (b *Board) KeyUp(e *fyne.KeyEvent) { b.hold(e.Name, false) }

func (b *Board) hold(name fyne.KeyName, down bool) {
	set := func(m fyne.KeyModifier) {
		if down {
			b.mods |= m
		} else {
			b.mods &^= m
		}
	}
	switch name {
	case fyne.KeySpace:
		b.space = down
	case desktop.KeyShiftLeft, desktop.KeyShiftRight:
		set(fyne.KeyModifierShift)
	case desktop.KeyControlLeft, desktop.KeyControlRight:
		set(fyne.KeyModifierControl)
	case desktop.KeyAltLeft, desktop.KeyAltRight:
		set(fyne.KeyModifierAlt)
	}
}

// TypedShortcut hands a shortcut on to the window: a focused widget would
// otherwise keep it for itself.
func (b *Board) TypedShortcut(s fyne.Shortcut) {
	c := fyne.CurrentApp().Driver().CanvasForObject(b)
	if taker, ok := c.(interface{ TypedShortcut(fyne.Shortcut) }); ok {
		taker.TypedShortcut(s)
	}
}

func (b *Board) reach() geom.Length { return geom.MM(reachPx / b.view.zoom) }

func (b *Board) way(from, to fyne.Position) geom.Point {
	return geom.PtMM(float64(to.X-from.X)/b.view.zoom, float64(to.Y-from.Y)/b.view.zoom)
}
