package ui

import (
	"fmt"
	"image/color"
	"strings"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/canvas"
	"fyne.io/fyne/v2/driver/desktop"
	"fyne.io/fyne/v2/theme"
	"fyne.io/fyne/v2/widget"

	"tsugime/repeat/check"
)

// A stationBar is the line of stations: knots on a thread, in the order of the
// work, each with its name and a count of what was found there.
type stationBar struct {
	widget.BaseWidget
	w     *Window
	knots []*knot
}

// A knot is one station on the thread.
type knot struct {
	ring  *canvas.Circle
	icon  *canvas.Image
	name  *canvas.Text
	found *canvas.Text
}

// Sizes of the thread, in screen units.
const (
	barHeight  = 52
	knotStep   = 182
	knotFirst  = 34
	knotRadius = 15
	knotIcon   = 18
)

func newStationBar(w *Window) *stationBar {
	b := &stationBar{w: w}
	for _, s := range w.stations {
		k := &knot{canvas.NewCircle(worn().card), &canvas.Image{FillMode: canvas.ImageFillContain}, canvas.NewText(say(s.name()), worn().ink), canvas.NewText("", worn().fault)}
		k.ring.StrokeWidth = 2
		k.name.TextSize, k.found.TextSize = 15, 12
		b.knots = append(b.knots, k)
	}
	b.ExtendBaseWidget(b)
	return b
}

// Tapped goes to the station under the pointer.
func (b *stationBar) Tapped(e *fyne.PointEvent) {
	i := int((e.Position.X - knotFirst + knotRadius + 10) / knotStep)
	if i >= 0 && i < len(b.knots) {
		b.w.GoTo(i)
	}
}

// Cursor is a hand over the stations.
func (b *stationBar) Cursor() desktop.Cursor { return desktop.PointerCursor }

// refresh shows which station is open and what was found in each.
func (b *stationBar) refresh() {
	for i, k := range b.knots {
		k.name.TextStyle.Bold = i == b.w.at
		k.name.Color, k.ring.StrokeColor, k.ring.FillColor = worn().faint, color.Color(worn().faint), color.Color(worn().card)
		in := theme.ColorNamePlaceHolder
		if i == b.w.at {
			k.name.Color, k.ring.StrokeColor, k.ring.FillColor = worn().ink, worn().vat, worn().vat
			in = theme.ColorNameForegroundOnPrimary
		}
		k.icon.Resource = worn().iconIn(stationIcon(stationNames[i]), in)
		k.icon.Refresh()
		k.found.Text, k.found.Color = b.count(b.w.stations[i])
		k.ring.Refresh()
		k.name.Refresh()
		k.found.Refresh()
	}
	b.Refresh()
}

// stationIcon is the drawn icon of a station, by its name in English.
func stationIcon(name string) string { return strings.ToLower(name) }

// count tells how many findings of a station need a look, by the worst's shape.
func (b *stationBar) count(s station) (string, color.Color) {
	var mine []check.Finding
	for _, f := range b.w.found() {
		if s.owns(f) && f.Severity != check.Note {
			mine = append(mine, f)
		}
	}
	if len(mine) == 0 {
		return "", worn().faint
	}
	worst := check.Worst(mine)
	return fmt.Sprintf("%s %d", severityShape(worst), len(mine)), worn().tone(worst)
}

// CreateRenderer is part of fyne.Widget.
func (b *stationBar) CreateRenderer() fyne.WidgetRenderer {
	thread := canvas.NewLine(worn().rule)
	thread.StrokeWidth = 2
	r := &barRenderer{b, thread, []fyne.CanvasObject{thread}}
	for _, k := range b.knots {
		r.objects = append(r.objects, k.ring, k.icon, k.name, k.found)
	}
	return r
}

type barRenderer struct {
	b       *stationBar
	thread  *canvas.Line
	objects []fyne.CanvasObject
}

func (r *barRenderer) Destroy()                     {}
func (r *barRenderer) Objects() []fyne.CanvasObject { return r.objects }
func (r *barRenderer) Refresh()                     { r.Layout(r.b.Size()) }
func (r *barRenderer) MinSize() fyne.Size {
	return fyne.NewSize(knotFirst+float32(len(r.b.knots))*knotStep, barHeight)
}

// Layout strings the knots on the thread, each name over its piece of it.
func (r *barRenderer) Layout(fyne.Size) {
	const y = barHeight - 22
	last := float32(len(r.b.knots)-1)*knotStep + knotFirst
	r.thread.Position1, r.thread.Position2 = fyne.NewPos(knotFirst, y), fyne.NewPos(last, y)
	for i, k := range r.b.knots {
		x := knotFirst + float32(i)*knotStep
		k.ring.Move(fyne.NewPos(x-knotRadius, y-knotRadius))
		k.ring.Resize(fyne.NewSize(2*knotRadius, 2*knotRadius))
		k.icon.Move(fyne.NewPos(x-knotIcon/2, y-knotIcon/2))
		k.icon.Resize(fyne.NewSquareSize(knotIcon))
		k.name.Move(fyne.NewPos(x+knotRadius+7, 5))
		k.name.Resize(k.name.MinSize())
		k.found.Move(fyne.NewPos(x+knotRadius+15+k.name.MinSize().Width, 8))
		k.found.Resize(k.found.MinSize())
	}
}
