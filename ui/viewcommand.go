package ui

import (
	"slices"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/widget"

	"tsugime/repeat/geom"
)

// How far a key moves the view, in screen units.
const panPx = 80

// surfaceCommands move what is seen, show the grid, and take the keys from one part of the
// window to another.
func surfaceCommands() []command {
	pan := func(name string, k fyne.KeyName, dx, dy float32) command {
		return command{"View", named(name), keys(key(k, ctrl)), nil, func(w *Window) { w.board.Pan(dx*panPx, dy*panPx) }}
	}
	return []command{
		pan("See Further to the Left", fyne.KeyLeft, 1, 0), pan("See Further to the Right", fyne.KeyRight, -1, 0),
		pan("See Further Up", fyne.KeyUp, 0, 1), pan("See Further Down", fyne.KeyDown, 0, -1),
		{"View", gridName, keys(key(fyne.KeyG, ctrl)), func(w *Window) bool { return w.board.Ruled() }, (*Window).turnGrid},
		{"View", nextUnitName, keys(key(fyne.KeyU, 0)), nil, (*Window).countInNext},
		{"View", named("Keys to the Surface"), keys(key(fyne.KeyK, ctrl)), nil, func(w *Window) { w.win.Canvas().Focus(w.board) }},
		{"View", named("Keys to the Bench"), keys(key(fyne.KeyH, ctrl)), nil, func(w *Window) { w.focusIn(w.left.Content) }},
		{"View", named("Keys to What Was Found"), keys(key(fyne.KeyH, ctrl|shift)), nil, func(w *Window) { w.focusIn(w.right.content) }},
	}
}

func gridName(w *Window) string {
	if w.board.Grid {
		return say("Hide the Grid")
	}
	return say("Show the Grid")
}

// turnGrid shows the grid in the unit of the rulers, or hides it.
func (w *Window) turnGrid() {
	w.board.Grid = !w.board.Grid
	w.win.SetMainMenu(w.mainMenu())
	w.repaint()
}

// focusIn gives the keys to the first part of a panel that takes them.
func (w *Window) focusIn(o fyne.CanvasObject) {
	if f := firstFocusable(o); f != nil {
		w.win.Canvas().Focus(f)
		return
	}
	w.Say(say("There is nothing there that takes keys."))
}

// firstFocusable is the first part of an object that can be seen and takes keys, nil for
// none.
func firstFocusable(o fyne.CanvasObject) fyne.Focusable {
	if !o.Visible() {
		return nil
	}
	if d, ok := o.(fyne.Disableable); ok && d.Disabled() {
		return nil
	}
	if f, ok := o.(fyne.Focusable); ok {
		return f
	}
	for _, part := range partsOf(o) {
		if f := firstFocusable(part); f != nil {
			return f
		}
	}
	return nil
}

// partsOf are what an object holds.
func partsOf(o fyne.CanvasObject) []fyne.CanvasObject {
	switch o := o.(type) {
	case *fyne.Container:
		return o.Objects
	case *container.Scroll:
		return []fyne.CanvasObject{o.Content}
	case *widget.Accordion:
		var parts []fyne.CanvasObject
		for _, item := range o.Items {
			if item.Open {
				parts = append(parts, item.Detail)
			}
		}
		return parts
	}
	return nil
}

// unitKey is where the preferences keep the unit of the window.
const unitKey = "unit"

// units are those that lengths can be shown in, each about as finely as the millimetre.
func units() []geom.Unit {
	return []geom.Unit{geom.MMUnit, geom.CMUnit.Finer(1), geom.InchUnit.Finer(2), geom.KaneSun.Finer(2), geom.KujiraSun.Finer(2)}
}

// unit is what lengths are shown in: as it was chosen for the window or, before that, as
// the sheets of the order are to be printed.
func (w *Window) unit() geom.Unit {
	if u, ok := w.chosenUnit(); ok {
		return u
	}
	if w.Order().Sheets.Units == "sun" {
		return geom.KaneSun
	}
	return geom.MMUnit
}

// chosenUnit is the unit that was chosen for the window, if one was.
func (w *Window) chosenUnit() (geom.Unit, bool) {
	name := w.app.Preferences().String(unitKey)
	for _, u := range units() {
		if u.Name == name {
			return u, true
		}
	}
	return geom.Unit{}, false
}

func (w *Window) nextUnit() geom.Unit {
	all, now := units(), w.unit()
	i := slices.IndexFunc(all, func(u geom.Unit) bool { return u.Name == now.Name })
	return all[(i+1)%len(all)]
}

func nextUnitName(w *Window) string { return say("Count in %s", w.nextUnit().Name) }

// countInNext shows every length, the rulers and the grid in the next unit.
func (w *Window) countInNext() {
	w.app.Preferences().SetString(unitKey, w.nextUnit().Name)
	w.win.SetMainMenu(w.mainMenu())
	w.refresh()
	w.Say(say("Lengths are shown in %s.", w.unit().Name))
}
