package ui

import (
	"slices"

	"tsugime/repeat/cloth"
	"tsugime/repeat/geom"
)

// fold is how the cloth is cut into lengths in the picture.
func (b *panelBench) fold() panelFold {
	r := b.s.w.work.Run
	width, long := r.Bolt.FinishedSize()
	return foldOf(b.s.w.work.Dressed, width, long)
}

// under returns the panel at a place of the picture.
func (b *panelBench) under(p geom.Point) (cloth.Panel, bool) {
	f := b.fold()
	for _, panel := range b.s.w.work.Dressed.Panels {
		if f.put(boxOf(panel)).Holds(p) {
			return panel, true
		}
	}
	return cloth.Panel{}, false
}

// boxOf is where a panel lies on the finished cloth.
func boxOf(p cloth.Panel) geom.Box {
	return geom.BoxOf(geom.Point{X: p.X, Y: p.Y}, geom.Point{X: p.X + p.Width, Y: p.Y + p.Length})
}

// take takes the panel at a place.
func (b *panelBench) take(p geom.Point) bool {
	panel, ok := b.under(p)
	if !ok {
		return false
	}
	b.chosen = panel.Name
	b.drag = &panelDrag{name: panel.Name, from: p}
	return true
}

// pull moves it along.
func (b *panelBench) pull(by geom.Point) {
	if b.drag == nil {
		return
	}
	b.drag.by = by
	if next, ok := b.before(); ok {
		b.s.w.pointer.SetText(say("before the %s", next))
	} else {
		b.s.w.pointer.SetText(say("after all others"))
	}
	b.s.w.repaint()
}

// before returns the panel before which the one that is dragged would lie: the first
// of the others whose middle lies further along than its own.
func (b *panelBench) before() (string, bool) {
	p, ok := b.panel(b.drag.name)
	if !ok {
		return "", false
	}
	f := b.fold()
	middle := f.put(boxOf(p)).Centre().Add(b.drag.by)
	at := f.back(middle).Y
	for _, q := range b.along() {
		if q.Name != p.Name && q.Y+q.Length/2 > at {
			return q.Name, true
		}
	}
	return "", false
}

// drop lays the panel where it is let go.
func (b *panelBench) drop(by geom.Point) {
	if b.drag == nil {
		return
	}
	b.drag.by = by
	next, ok := b.before()
	name := b.drag.name
	b.drag = nil
	names := slices.DeleteFunc(b.names(), func(n string) bool { return n == name })
	i := len(names)
	if ok {
		i = slices.Index(names, next)
	}
	names = slices.Insert(names, i, name)
	b.s.w.refresh()
	b.lay(names)
}

// tap chooses the panel at a place.
func (b *panelBench) tap(p geom.Point) {
	b.drag = nil
	panel, _ := b.under(p)
	b.choose(panel.Name)
}
