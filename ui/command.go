package ui

import (
	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/driver/desktop"

	"tsugime/repeat/geom"
)

// A command is one thing that can be done. The table of them feeds the menus,
// the keys and the page of keys.
type command struct {
	menu string // the menu it stands in
	name func(w *Window) string
	keys []*desktop.CustomShortcut
	when func(w *Window) bool // nil for always
	do   func(w *Window)
}

const (
	ctrl  = fyne.KeyModifierShortcutDefault
	shift = fyne.KeyModifierShift
	alt   = fyne.KeyModifierAlt
)

func key(name fyne.KeyName, m fyne.KeyModifier) *desktop.CustomShortcut {
	return &desktop.CustomShortcut{KeyName: name, Modifier: m}
}

func keys(k ...*desktop.CustomShortcut) []*desktop.CustomShortcut { return k }

func named(name string) func(*Window) string { return func(*Window) string { return say(name) } }

// menus stand in this order.
var menus = []string{"Order", "Edit", "Draw", "View", "Bench", "Help"}

// commands returns the table, in the order of the menus.
func commands() []command {
	table := append(orderCommands(), editCommands()...)
	table = append(table, clipboardCommands()...)
	table = append(table, nudgeCommands()...)
	table = append(table, fitCommands()...)
	table = append(table, holdCommands()...)
	table = append(table, boltCommands()...)
	table = append(table, penCommands()...)
	table = append(table, shelfCommands()...)
	table = append(table, garmentCommands()...)
	table = append(table, viewCommands()...)
	table = append(table, thingCommands()...)
	table = append(table, surfaceCommands()...)
	table = append(table, benchCommands()...)
	return append(table,
		command{"Help", named("Find a Command…"), keys(key(fyne.KeyF, ctrl)), nil, (*Window).findCommand},
		command{"Help", named("First Steps"), keys(key(fyne.KeyF1, shift)), nil, (*Window).takeSteps},
		command{"Help", named("Keys"), keys(key(fyne.KeyF1, 0)), nil, (*Window).showKeys})
}

func orderCommands() []command {
	return []command{
		{"Order", named("New from a Starter…"), keys(key(fyne.KeyN, ctrl)), nil, (*Window).chooseStarter},
		{"Order", named("Open…"), keys(key(fyne.KeyO, ctrl)), nil, (*Window).chooseFile},
		{"Order", named("Bring In Outlines…"), keys(key(fyne.KeyB, ctrl)), nil, (*Window).chooseOutlines},
		{"Order", named("Save"), keys(key(fyne.KeyS, ctrl)), nil, (*Window).Save},
		{"Order", named("Save As…"), keys(key(fyne.KeyS, ctrl|shift)), nil, (*Window).saveAs},
		{"Order", named("Save a Copy…"), keys(key(fyne.KeyS, ctrl|alt)), nil, (*Window).saveCopy},
		{"Order", named("Print…"), keys(key(fyne.KeyP, ctrl)), (*Window).Ready, (*Window).print},
		{"Order", named("Write the Job Folder…"), keys(key(fyne.KeyP, ctrl|shift)), (*Window).Ready, (*Window).chooseFolder},
		{"Order", named("Take Up What Was Kept…"), keys(key(fyne.KeyO, ctrl|alt)), func(w *Window) bool { return len(w.remains) > 0 }, (*Window).showLeft},
		{"Order", named("Another Window"), keys(key(fyne.KeyN, ctrl|shift)), nil, (*Window).another},
		{"Order", named("Close"), keys(key(fyne.KeyW, ctrl)), nil, (*Window).close},
		{"Order", named("Quit"), keys(key(fyne.KeyQ, ctrl)), nil, func(w *Window) { w.quit() }},
	}
}

func editCommands() []command {
	undo := func(w *Window) string { return undoWords("Undo", "Undo %s", w.undoName()) }
	redo := func(w *Window) string { return undoWords("Redo", "Redo %s", w.history.RedoName()) }
	return []command{
		{"Edit", undo, keys(key(fyne.KeyZ, ctrl)), func(w *Window) bool { return w.undoName() != "" }, (*Window).undo},
		{"Edit", redo, keys(key(fyne.KeyZ, ctrl|shift), key(fyne.KeyY, ctrl)),
			func(w *Window) bool { return w.history.RedoName() != "" }, (*Window).Redo},
		{"Edit", named("Choose All Motifs"), keys(key(fyne.KeyA, ctrl)), choosing, (*Window).chooseAll},
		{"Edit", named("Let Go of Everything"), keys(key(fyne.KeyEscape, 0)), nil, (*Window).letGo},
		{"Edit", func(w *Window) string { return say("Delete the Chosen %s", say(w.gripped())) },
			keys(key(fyne.KeyDelete, 0), key(fyne.KeyBackspace, 0)), (*Window).holding, (*Window).removeChosen},
		{"Edit", named("Mend the First Finding"), keys(key(fyne.KeyM, ctrl)), (*Window).mendable, (*Window).mendFirst},
	}
}

// undoWords name what undo or redo does, with nothing to do the bare word.
func undoWords(bare, of, edit string) string {
	if edit == "" {
		return say(bare)
	}
	return say(of, say(edit))
}

// nudgeCommands move what is chosen by the arrow keys.
func nudgeCommands() []command {
	var table []command
	for _, n := range []struct {
		name string
		key  fyne.KeyName
		way  geom.Point
	}{
		{"Left", fyne.KeyLeft, geom.Point{X: -nudge}}, {"Right", fyne.KeyRight, geom.Point{X: nudge}},
		{"Up", fyne.KeyUp, geom.Point{Y: -nudge}}, {"Down", fyne.KeyDown, geom.Point{Y: nudge}},
	} {
		table = append(table,
			command{"Edit", named("Nudge " + n.name), keys(key(n.key, 0)), (*Window).holding, func(w *Window) { w.nudge(n.way) }},
			command{"Edit", named("Nudge " + n.name + " Ten Times"), keys(key(n.key, shift)), (*Window).holding,
				func(w *Window) { w.nudge(n.way.Times(10)) }})
	}
	return table
}

func viewCommands() []command {
	table := []command{
		{"View", named("Zoom In"), keys(key(fyne.KeyEqual, ctrl), key(fyne.KeyPlus, ctrl), key(fyne.KeyEqual, ctrl|shift)), nil, func(w *Window) { w.board.Zoom(1.25) }},
		{"View", named("Zoom Out"), keys(key(fyne.KeyMinus, ctrl)), nil, func(w *Window) { w.board.Zoom(0.8) }},
		{"View", named("Show All"), keys(key(fyne.Key0, ctrl)), nil, func(w *Window) { w.board.Whole() }},
		{"View", named("Loupe"), keys(key(fyne.KeyL, ctrl)), nil, func(w *Window) { w.board.Loupe(!w.board.LoupeShown()) }},
		{"View", symmetryName, keys(key(fyne.KeyS, 0)), drafting, func(w *Window) { w.turnSymmetry() }},
		{"View", named("The Next View"), keys(key(fyne.KeyV, 0)), manyViews, (*Window).showNextView},
	}
	for i, name := range stationNames {
		digit := fyne.KeyName(rune('1' + i))
		table = append(table, command{"View", func(*Window) string { return say("Go to %s", say(name)) }, keys(key(digit, ctrl)), nil, func(w *Window) { w.GoTo(i) }})
	}
	return append(append(table, lookCommands()...), languageCommands()...)
}

// drafting reports whether the draft is shown, where motifs are.
func drafting(w *Window) bool { return w.at == draftAt }

// manyViews reports whether there is more than one view of what is shown.
func manyViews(w *Window) bool { return stencilling(w) || bolting(w) || w.at == sheetsAt }

func (w *Window) showNextView() {
	switch {
	case bolting(w):
		w.boltStation().showNext()
	case w.at == sheetsAt:
		w.sheetsStation().showNext()
	default:
		w.stencilStation().showNext()
	}
}

// choosing reports whether all can be chosen: the motifs, or what stands in the
// field that is written in.
func choosing(w *Window) bool {
	_, writing := w.win.Canvas().Focused().(*entry)
	return writing || drafting(w)
}

// run does a command if it can be done now; a key may ask for one that can't.
// While a dialog waits for its answer only letting go of it can be done.
func (w *Window) run(c command) {
	if w.fieldTakes(c) {
		return
	}
	if top := w.win.Canvas().Overlays().Top(); top != nil {
		if c.leaves() && w.writes.stop.Load() != nil {
			c.do(w)
			return
		}
		if c.keys[0].KeyName == fyne.KeyEscape {
			top.Hide()
		}
		w.rack.typed(c)
		return
	}
	if c.when == nil || c.when(w) {
		c.do(w)
	}
}

// typed does what a key asks for that no field wants.
func (w *Window) typed(name fyne.KeyName, m fyne.KeyModifier) {
	for _, c := range commands() {
		for _, k := range c.keys {
			if k.KeyName == name && k.Modifier == m && plain(k) {
				w.run(c)
				return
			}
		}
	}
}

// plain reports whether a key is one that a field could want: with no modifier,
// or Shift alone. Fyne takes the others for shortcuts.
func plain(k *desktop.CustomShortcut) bool { return k.Modifier&^shift == 0 }

// mainMenu makes the menus of the table, with the names that hold now.
func (w *Window) mainMenu() *fyne.MainMenu {
	var main []*fyne.Menu
	for _, name := range menus {
		menu := fyne.NewMenu(say(name))
		for _, c := range commands() {
			if c.menu != name {
				continue
			}
			item := fyne.NewMenuItem(c.name(w), func() { w.run(c) })
			item.Disabled = c.when != nil && !c.when(w)
			if !plain(c.keys[0]) {
				item.Shortcut = asFyneSends(c.keys[0])
			}
			menu.Items = append(menu.Items, item)
		}
		if name == "Order" {
			menu.Items = w.withRecent(menu.Items)
		}
		main = append(main, menu)
	}
	return fyne.NewMainMenu(main...)
}

// bindKeys lets every command's keys work wherever the window has the focus. In a
// field the plain ones are the field's.
func (w *Window) bindKeys() {
	canvas := w.win.Canvas()
	for _, c := range commands() {
		for _, k := range c.keys {
			if !plain(k) {
				canvas.AddShortcut(asFyneSends(k), func(fyne.Shortcut) { w.run(c) })
			}
		}
	}
	canvas.SetOnTypedKey(func(e *fyne.KeyEvent) { w.typed(e.Name, 0) })
}

// asFyneSends returns the shortcut that Fyne makes of a key: some have names of
// their own, so that a field can have them too.
func asFyneSends(k *desktop.CustomShortcut) fyne.Shortcut {
	if k.Modifier != ctrl {
		return k
	}
	switch k.KeyName {
	case fyne.KeyZ:
		return &fyne.ShortcutUndo{}
	case fyne.KeyY:
		return &fyne.ShortcutRedo{}
	case fyne.KeyA:
		return &fyne.ShortcutSelectAll{}
	case fyne.KeyX:
		return &fyne.ShortcutCut{}
	case fyne.KeyC:
		return &fyne.ShortcutCopy{}
	case fyne.KeyV:
		return &fyne.ShortcutPaste{}
	}
	return k
}
