package ui

import (
	"fmt"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/canvas"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/widget"

	"tsugime/repeat/bench"
)

// A passList is the passes of a sheet in the order of the work; the chosen one is
// walked.
type passList struct {
	b       *benchPlan
	list    *widget.List
	content fyne.CanvasObject
	telling bool // a choice that the walk made is no choice of a person
}

// passListHeight is how much of the bench the list takes.
const passListHeight = 270

func newPassList(b *benchPlan) *passList {
	l := &passList{b: b}
	l.list = widget.NewList(func() int { return len(b.passes()) }, newPassRow, l.fillRow)
	l.list.OnSelected = func(i widget.ListItemID) {
		if !l.telling {
			b.goTo(workStep{i, 0}, false)
		}
	}
	strut := canvas.NewRectangle(worn().field)
	strut.SetMinSize(fyne.NewSize(10, passListHeight))
	l.content = container.NewStack(strut, l.list)
	return l
}

// newPassRow is a row: the method's swatch, tool and stage, the hours at the right.
func newPassRow() fyne.CanvasObject {
	name, about := canvas.NewText("", worn().ink), canvas.NewText("", worn().faint)
	name.TextSize, name.TextStyle.Bold, about.TextSize = 13, true, 11.5
	hours := canvas.NewText("", worn().ink)
	hours.TextSize = 13
	return container.NewBorder(nil, nil, swatchOf(bench.Kiribori), container.NewCenter(hours), container.NewVBox(name, about))
}

func (l *passList) fillRow(i widget.ListItemID, o fyne.CanvasObject) {
	s, u := l.b.sheet(), l.b.w.unit()
	if i >= len(s.Plan.Passes) {
		return
	}
	p := s.Plan.Passes[i]
	parts := o.(*fyne.Container).Objects
	words := parts[0].(*fyne.Container).Objects
	picture := parts[1].(*fyne.Container).Objects[0].(*canvas.Image)
	picture.Image = swatch(p.Method)
	picture.Refresh()
	put := func(o fyne.CanvasObject, text string) {
		t := o.(*canvas.Text)
		t.Text = text
		t.Refresh()
	}
	put(words[0], fmt.Sprintf("%d  %s · %s", i+1, say(string(p.Method)), toolWords(s, p, u)))
	put(words[1], say("%s · %d cuts, %s", say(stageWords[p.Stage]), p.Count, timesWords(p.Times)))
	put(parts[2].(*fyne.Container).Objects[0], hoursWords(p.Hours))
}

// fill shows the passes of another plan.
func (l *passList) fill() {
	l.list.Refresh()
	l.show(l.b.walk.pass)
}

// show marks the pass that is walked.
func (l *passList) show(pass int) {
	l.telling = true
	if pass == none {
		l.list.UnselectAll()
	} else {
		l.list.Select(pass)
	}
	l.telling = false
}
