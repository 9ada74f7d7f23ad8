package ui

import (
	"fmt"
	"strings"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/widget"

	"tsugime/repeat"
	"tsugime/repeat/bench"
	"tsugime/repeat/document"
	"tsugime/repeat/geom"
)

// A benchPlan is the view of the last station that shows how the sheets are cut: the
// passes in their order, and the walk through them.
type benchPlan struct {
	w       *Window
	s       *sheetsStation
	planner *planner
	number  int // of the sheet that is shown, from 0
	walk    workStep
	form    *form
	list    *passList
	reason  *widget.Label
	rates   *widget.Label
	day     *entry
	content fyne.CanvasObject
}

func newBenchPlan(s *sheetsStation) *benchPlan {
	b := &benchPlan{w: s.w, s: s, walk: wholeSheet, form: &form{w: s.w}}
	b.planner = &planner{w: s.w, shown: b.planned}
	b.list = newPassList(b)
	f := b.form
	f.heading("Passes")
	f.add(b.list.content)
	step := func(name string, do func(int), by int) fyne.CanvasObject {
		return widget.NewButton(say(name), func() { do(by) })
	}
	f.beside(step("‹ Pass", b.stepPass, -1), step("‹ Cut", b.stepCut, -1), step("Cut ›", b.stepCut, 1), step("Pass ›", b.stepPass, 1))
	f.heading("Methods")
	for _, m := range bench.Methods() {
		f.add(legendRow(m))
	}
	f.heading("Chosen cut")
	b.methodField()
	b.reason = quietLabel()
	f.add(b.reason)
	f.heading("Rack and rates")
	f.beside(widget.NewButton(say("The Rack…"), s.w.openRack), widget.NewButton(say("Finished Jobs…"), s.w.chooseJobs))
	b.day = newEntry(func(text string) {
		if !s.w.setDay(text) {
			b.showRates()
		}
	})
	f.row("Hours a day", b.day)
	b.rates = quietLabel()
	f.add(b.rates)
	b.content = f.content()
	return b
}

// byRule is the choice that leaves the method to the bench.
const byRule = "by the rule"

// methodField names the method of the motif whose cut-out is chosen.
func (b *benchPlan) methodField() {
	list := []worded{{"", byRule}}
	for _, m := range bench.Methods() {
		list = append(list, worded{string(m), string(m)})
	}
	b.form.choice("Its motif is cut by", "Name the Method", allWords(list),
		func(o document.Order) string {
			if len(b.w.chosen) == 0 {
				return ""
			}
			return wordsFor(list, string(o.Methods[b.w.chosen[0]]))
		},
		func(o document.Order, words string) (document.Order, error) {
			if len(b.w.chosen) == 0 {
				return o, fmt.Errorf("method: no motif is chosen; click a cut-out")
			}
			return document.SetMethod(o, bench.Method(valueOf(list, words)), b.w.chosen...)
		})
}

func legendRow(m bench.Method) fyne.CanvasObject {
	words := widget.NewLabel(say(string(m)) + " · " + say(methodInks[m].gloss))
	words.Truncation = fyne.TextTruncateEllipsis
	return container.NewBorder(nil, nil, swatchOf(m), nil, words)
}

// sheet is the sheet that is shown, as it was planned; empty before the first plan.
func (b *benchPlan) sheet() repeat.BenchSheet {
	if b.number >= len(b.planner.plan.bench.Sheets) {
		return repeat.BenchSheet{}
	}
	return b.planner.plan.bench.Sheets[b.number]
}

// refresh plans what is shown anew where it must be.
func (b *benchPlan) refresh() {
	b.planner.freshen()
	b.form.refresh()
	b.showReason()
	b.showRates()
}

// planned shows a new plan: the same pass, where there still is one.
func (b *benchPlan) planned() {
	b.number = min(b.number, len(b.planner.plan.bench.Sheets)-1)
	if passes := b.passes(); b.walk.pass >= len(passes) {
		b.walk = wholeSheet
	} else if b.walk.pass != none {
		b.walk.cut = min(b.walk.cut, passes[b.walk.pass].Count-1)
	}
	b.list.fill()
	if b.w.at == sheetsAt && b.s.benchShown() {
		b.w.refresh()
	}
}

// reasonWords say why a cut-out gets its method.
var reasonWords = map[bench.Reason]string{
	bench.RoundHole: "a round hole that an awl cuts",
	bench.LikePunch: "the rack has a punch of its shape",
	bench.LongStrip: "a long strip with two parallel sides",
	bench.EasyLine:  "long lines that bend little",
	bench.FreeLine:  "small, closely bent or full of corners",
	bench.Named:     "you named it",
}

// showReason tells why the chosen cut has its method.
func (b *benchPlan) showReason() {
	k, ok := b.cutOut()
	if !ok {
		b.reason.SetText(say("Click a cut-out, or step to one, to see why it is cut so."))
		return
	}
	c := b.sheet().Assignment.Choices[k]
	b.reason.SetText(say("%s.", say("%s: %s", say(string(c.Method)), say(reasonWords[c.Reason]))))
}

// showRates tells how fast the cutter is, and from what that is known.
func (b *benchPlan) showRates() {
	rates := b.w.cutterNow().Rates()
	day := rates.DayHours
	if day == 0 {
		day = bench.UsualDayHours
	}
	b.day.put(say("%g h", day))
	var lines []string
	for _, m := range bench.Methods() {
		if !b.uses(m) {
			continue
		}
		r := rates.Rate(m)
		line := say("%s: %.2f min a cut", say(string(m)), r.CutMin)
		if r.MMMin > 0 {
			line += say(", %.3f min a mm", r.MMMin)
		}
		if r.Jobs > 0 {
			line += say("; learnt from %d jobs", r.Jobs)
		} else {
			line += say("; guessed")
		}
		lines = append(lines, line)
	}
	b.rates.SetText(strings.Join(lines, "\n"))
}

func (b *benchPlan) uses(m bench.Method) bool {
	for _, s := range b.planner.plan.bench.Sheets {
		for _, p := range s.Plan.Passes {
			if p.Method == m {
				return true
			}
		}
	}
	return false
}

// cutScale is how much larger a dot is drawn than it is cut.
func (w *Window) cutScale(l geom.Length) geom.Length {
	x, y := w.work.Scale.Cut()
	return geom.DiscShape(geom.Point{}, l).Stretched(1/x, 1/y).Disc.Diameter
}
