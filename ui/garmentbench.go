package ui

import (
	"maps"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/layout"
	"fyne.io/fyne/v2/widget"

	"tsugime/repeat/cloth"
	"tsugime/repeat/document"
	"tsugime/repeat/geom"
)

// A garmentBench is where a garment is chosen and its sizes are given. Its rows
// are made from the form.
type garmentBench struct {
	w     *Window
	kinds *widget.Select
	about *widget.Label
	rows  *fyne.Container
	form  *form       // of the rows
	shown *cloth.Form // whose rows they are
}

// ownTitle stands in the list of garments for a form that the order brings.
const ownTitle = "The order's own form"

func newGarmentBench(w *Window, f *form) *garmentBench {
	g := &garmentBench{w: w, about: quietLabel(), rows: container.New(layout.NewCustomPaddedVBoxLayout(3))}
	f.heading("Garment")
	g.kinds = newSelect(nil, nil)
	f.add(g.kinds)
	f.add(g.about)
	f.add(g.rows)
	f.showing = append(f.showing, g.refresh)
	return g
}

// refresh shows the order's garment; new rows only for another form.
func (g *garmentBench) refresh(o document.Order) {
	f, err := o.Garment.Body.Form()
	if err != nil {
		return
	}
	g.kinds.OnChanged = nil
	titles, at := kindTitles(o)
	g.kinds.SetOptions(titles)
	g.kinds.SetSelectedIndex(at)
	g.kinds.OnChanged = func(string) { g.choose(g.kinds.SelectedIndex()) }
	if f != g.shown {
		g.shown = f
		g.about.SetText(say(f.About))
		g.form = &form{w: g.w}
		for _, a := range f.Asks {
			g.ask(a)
		}
		g.form.heading("Allowances")
		for _, a := range f.Allowances {
			g.allowance(a)
		}
		g.rows.Objects = g.form.rows
		g.rows.Refresh()
	}
	g.form.refresh()
}

// kindTitles are the garments to choose from, and the one that is chosen.
func kindTitles(o document.Order) (titles []string, at int) {
	for i, k := range cloth.GarmentKinds() {
		if f, err := cloth.FormOf(k); err == nil {
			titles = append(titles, say(f.Title))
		}
		if k == o.Garment.Body.Kind {
			at = i
		}
	}
	if o.Garment.Body.Own != "" {
		titles, at = append(titles, say(ownTitle)), len(titles)
	}
	return titles, at
}

func (g *garmentBench) choose(at int) {
	kinds := cloth.GarmentKinds()
	if at < 0 || at >= len(kinds) {
		return
	}
	g.w.Edit("Choose Garment", func(o document.Order) (document.Order, error) { return document.SetGarmentKind(o, kinds[at]) })
}

// ask is a row for a size or a count that the form asks for.
func (g *garmentBench) ask(a cloth.Ask) {
	if a.Counted {
		g.form.number(a.Title, "Change Sizes", "",
			func(o document.Order) float64 { return float64(o.Garment.Body.Count(a)) },
			func(o document.Order, v float64) (document.Order, error) {
				b := o.Garment.Body
				b.Counts = withName(b.Counts, a.Name, int(v))
				return document.SetBody(o, b)
			})
		return
	}
	g.form.length(a.Title, "Change Sizes", geom.KujiraShaku,
		func(o document.Order) geom.Length { return o.Garment.Body.Size(a) },
		func(o document.Order, l geom.Length) (document.Order, error) {
			return document.SetBody(o, o.Garment.Body.Sized(a, l))
		})
}

// allowance is a row for cloth that is sewn in.
func (g *garmentBench) allowance(a cloth.Allowance) {
	g.form.length(a.Title, "Change Allowances", geom.KujiraSun,
		func(o document.Order) geom.Length {
			l, _ := o.Garment.Body.Allowance(o.Cloth.Bolt, a.Name)
			return l
		},
		func(o document.Order, l geom.Length) (document.Order, error) {
			b := o.Garment.Body
			b.Allowances = withName(b.Allowances, a.Name, l)
			return document.SetBody(o, b)
		})
}

// withName returns a copy of all with one value more.
func withName[T any](all map[string]T, name string, v T) map[string]T {
	next := maps.Clone(all)
	if next == nil {
		next = map[string]T{}
	}
	next[name] = v
	return next
}
