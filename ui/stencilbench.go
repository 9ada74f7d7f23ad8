package ui

import (
	"strconv"

	"tsugime/repeat/document"
	"tsugime/repeat/geom"
	"tsugime/repeat/stencil"
)

// misplaced is a field of the joint view; it is no part of the order.
func (s *stencilStation) misplaced(name string, set func(geom.Length)) {
	e := newEntry(func(text string) {
		l, err := geom.ParseLength(text, s.w.unit())
		if err != nil {
			s.w.Say(sentence(err))
			return
		}
		set(l)
		if s.seen == theBoth {
			s.layBoth()
			return
		}
		s.laid()
	})
	e.put("0 mm")
	s.form.row(name, e)
}

func (s *stencilStation) paperFields() {
	f := s.form
	f.heading("Paper")
	paper := func(name string, pick func(p *stencil.Paper) *geom.Length) {
		f.length(name, "Change Paper", geom.KaneSun,
			func(o document.Order) geom.Length { return *pick(&o.Sheet.Paper) },
			func(o document.Order, l geom.Length) (document.Order, error) {
				p := o.Sheet.Paper
				*pick(&p) = l
				return document.SetPaper(o, p)
			})
	}
	paper("Width", func(p *stencil.Paper) *geom.Length { return &p.Width })
	paper("Height", func(p *stencil.Paper) *geom.Length { return &p.Height })
	grows := func(name string, pick func(p *stencil.Paper) *float64) {
		f.number(name, "Change Wet Growth", "%",
			func(o document.Order) float64 { return 100 * *pick(&o.Sheet.Paper) },
			func(o document.Order, v float64) (document.Order, error) {
				p := o.Sheet.Paper
				*pick(&p) = v / 100
				return document.SetPaper(o, p)
			})
	}
	grows("Grows wet across", func(p *stencil.Paper) *float64 { return &p.GrowthAcross })
	grows("Grows wet along", func(p *stencil.Paper) *float64 { return &p.GrowthAlong })
	f.number("Pile", "Change Pile", "sheets",
		func(o document.Order) float64 { return float64(o.Sheet.Paper.Pile) },
		func(o document.Order, v float64) (document.Order, error) {
			p := o.Sheet.Paper
			p.Pile = int(v)
			return document.SetPaper(o, p)
		})
}

func (s *stencilStation) starFields() {
	f := s.form
	f.heading("Stars")
	f.choice("An end", "Change Stars", []string{"2", "3", "4"},
		func(o document.Order) string { return strconv.Itoa(o.Sheet.Stars.PerEnd) },
		func(o document.Order, v string) (document.Order, error) {
			stars := o.Sheet.Stars
			stars.PerEnd, _ = strconv.Atoi(v)
			stars.At = nil
			return document.SetStars(o, stars)
		})
	star := func(name string, pick func(p *stencil.StarSpec) *geom.Length) {
		f.length(name, "Change Stars", geom.KaneBu,
			func(o document.Order) geom.Length { return *pick(&o.Sheet.Stars) },
			func(o document.Order, l geom.Length) (document.Order, error) {
				p := o.Sheet.Stars
				*pick(&p) = l
				return document.SetStars(o, p)
			})
	}
	star("Diameter", func(p *stencil.StarSpec) *geom.Length { return &p.Diameter })
	star("Seam hides", func(p *stencil.StarSpec) *geom.Length { return &p.Hidden })
}

// limitFields are what this cutter allows.
func (s *stencilStation) limitFields() {
	f := s.form
	f.heading("Limits")
	f.length("Web at least", "Change Limits", geom.KaneBu,
		func(o document.Order) geom.Length { return o.Sheet.WebLimit },
		func(o document.Order, l geom.Length) (document.Order, error) {
			return document.SetLimits(o, o.Limits, l)
		})
	limit := func(name string, pick func(l *document.Limits) *geom.Length) {
		f.length(name, "Change Limits", geom.KaneBu,
			func(o document.Order) geom.Length { return *pick(&o.Limits) },
			func(o document.Order, v geom.Length) (document.Order, error) {
				l := o.Limits
				*pick(&l) = v
				return document.SetLimits(o, l, o.Sheet.WebLimit)
			})
	}
	limit("Hole at least", func(l *document.Limits) *geom.Length { return &l.Hole })
	limit("Star clear of holes", func(l *document.Limits) *geom.Length { return &l.StarClear })
	limit("Joint off at most", func(l *document.Limits) *geom.Length { return &l.Joint })
}
