package ui

import (
	"fmt"
	"strconv"

	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/widget"

	"tsugime/repeat"
	"tsugime/repeat/cloth"
	"tsugime/repeat/document"
	"tsugime/repeat/geom"
)

// A chance is one bolt as it could come out: the errors of the register, so many
// times over, drawn by a seed. It is a way to look, no part of the order.
type chance struct {
	w     *Window
	times float64 // the order's errors; nought shows every placement where it belongs
	seed  uint64

	of     int // the state that prints belong to
	prints []cloth.Print
	pivot  geom.Point
	worst  repeat.Parting
	any    bool // of a worst joint

	slider *widget.Slider
	told   *widget.Label
	number *entry
}

// The slider goes to mostTimes the order's errors in steps of 1/20.
const (
	mostTimes = 3
	timesStep = 0.05
)

func newChance(w *Window, f *form) *chance {
	c := &chance{w: w, seed: 1, told: quietLabel()}
	f.heading("One bolt, by chance")
	c.slider = widget.NewSlider(0, mostTimes)
	c.slider.Step = timesStep
	c.slider.OnChanged = c.set
	f.add(c.told)
	f.add(c.slider)
	c.number = newEntry(c.setSeed)
	f.row("Number of the bolt", c.number)
	worst := widget.NewButton(say("Worst Joint"), func() { w.garmentStation().showWorst() })
	f.add(container.NewGridWithColumns(2, widget.NewButton(say("Another Bolt"), c.another), worst))
	f.words("Every placement is laid with errors drawn by chance, as the bolt bench has them. The same number is the same bolt. It is no part of the order.")
	f.showing = append(f.showing, func(o document.Order) { c.tell(o) })
	return c
}

// scattered reports whether placements lie off their places.
func (c *chance) scattered() bool { return c.times > 0 && c.w.work.Run.Register.Baseline > 0 }

// set lays the bolt with so many times the errors.
func (c *chance) set(times float64) {
	if times == c.times {
		return
	}
	c.times, c.of = times, 0
	c.w.refresh()
}

// another lays another bolt; with no errors at first as the order has them.
func (c *chance) another() {
	c.seed++
	c.of = 0
	if c.times == 0 {
		c.slider.SetValue(1) // which shows it
		return
	}
	c.w.refresh()
}

func (c *chance) setSeed(text string) {
	n, err := strconv.ParseUint(text, 10, 64)
	if err != nil {
		c.w.Say(say("%q is no number of a bolt; give a whole number from 0 on.", text))
		c.number.put(strconv.FormatUint(c.seed, 10))
		return
	}
	c.seed, c.of = n, 0
	c.w.refresh()
}

// lay lays the bolt of the work that is shown, once.
func (c *chance) lay() {
	if c.of == c.w.built || c.w.built == 0 {
		return
	}
	work := c.w.work
	prints, err := work.Run.ScatteredPrints(c.times, c.seed)
	if err != nil {
		c.w.Say(sentence(err))
		prints = work.Run.Prints()
	}
	c.of, c.prints, c.pivot = c.w.built, prints, work.Pivot()
	c.worst, c.any = work.WorstJoint(prints)
}

// shift returns how far what is printed at a place of the cloth lies off its place.
func (c *chance) shift(at geom.Point) geom.Point {
	for _, p := range c.prints {
		if at.Y < p.Y || at.Y >= p.Y+p.Step {
			continue
		}
		bare := p
		bare.Off, bare.Grown = cloth.Misplacement{}, 0
		on := at.Sub(geom.Point{Y: p.Y})
		if p.Mirrored {
			on.Y = p.Step - on.Y
		}
		return p.Place(on, c.pivot).Sub(bare.Place(on, c.pivot))
	}
	return geom.Point{}
}

// end is where print ends on the finished cloth.
func (c *chance) end() geom.Length {
	b, r := c.w.work.Run.Bolt, c.w.work.Run
	return b.Finished(geom.Point{Y: b.Length - r.Board.End}).Y
}

// tell writes how large the errors are.
func (c *chance) tell(o document.Order) {
	c.number.put(strconv.FormatUint(c.seed, 10))
	u, r := c.w.unit(), o.Register
	switch {
	case c.w.built > 0 && c.w.work.Run.Register.Baseline == 0:
		c.told.SetText(say("There are no stars to lay the sheet by."))
	case c.times == 0:
		c.told.SetText(say("Every placement where it belongs"))
	default:
		c.told.SetText(say("A star is off by %s (%s ×)",
			u.Format(r.StarError.Times(c.times), 3), strconv.FormatFloat(c.times, 'f', 2, 64)))
	}
}

// worstWords name the worst joint that the garment shows.
func (c *chance) worstWords() string {
	if !c.any {
		return say("none is off")
	}
	kind, along := say("gap"), c.worst.Off.Y
	if along < 0 {
		kind, along = say("lap"), -along
	}
	u := c.w.unit()
	return fmt.Sprintf("%s %s", kind, u.Format(along, 2))
}
