package ui

import (
	"tsugime/repeat/cloth"
	"tsugime/repeat/document"
	"tsugime/repeat/geom"
)

// clothFields are the bolt that is dyed.
func clothFields(f *form) {
	edit := func(o document.Order, change func(c *document.Cloth)) (document.Order, error) {
		c := o.Cloth
		change(&c)
		return document.SetCloth(o, c)
	}
	size := func(f *form, name string, family geom.Unit, pick func(b *cloth.Bolt) *geom.Length) {
		f.length(name, "Change Bolt", family,
			func(o document.Order) geom.Length { return *pick(&o.Cloth.Bolt) },
			func(o document.Order, l geom.Length) (document.Order, error) {
				return edit(o, func(c *document.Cloth) { *pick(&c.Bolt) = l })
			})
	}
	size(f, "Width", geom.KujiraSun, func(b *cloth.Bolt) *geom.Length { return &b.Width })
	size(f, "Length", geom.KujiraShaku, func(b *cloth.Bolt) *geom.Length { return &b.Length })
	dyeField(f)
	f.folded("Selvedges, sides, shrinking", func(f *form) {
		size(f, "Selvedge", geom.KujiraSun, func(b *cloth.Bolt) *geom.Length { return &b.Selvedge })
		changes := func(name string, pick func(b *cloth.Bolt) *float64) {
			f.number(name, "Change Cloth", "%",
				func(o document.Order) float64 { return 100 * *pick(&o.Cloth.Bolt) },
				func(o document.Order, v float64) (document.Order, error) {
					return edit(o, func(c *document.Cloth) { *pick(&c.Bolt) = v / 100 })
				})
		}
		changes("Changes across", func(b *cloth.Bolt) *float64 { return &b.ChangeAcross })
		changes("Changes along", func(b *cloth.Bolt) *float64 { return &b.ChangeAlong })
		choice(f, "Printed sides", "Change Sides", cloth.SidesOf(),
			func(o document.Order) cloth.Sides { return o.Cloth.Bolt.Sides },
			func(o document.Order, v cloth.Sides) (document.Order, error) {
				return edit(o, func(c *document.Cloth) { c.Bolt.Sides = v })
			})
		f.tick("Folded back, for poured dye", "Fold the Cloth",
			func(o document.Order) bool { return o.Cloth.Bolt.Folded },
			func(o document.Order, v bool) (document.Order, error) {
				return edit(o, func(c *document.Cloth) { c.Bolt.Folded = v })
			})
	})
}

// boardFields are the board, and how the cloth is laid on it.
func boardFields(f *form) {
	f.heading("Board")
	edit := func(o document.Order, change func(b *cloth.Board)) (document.Order, error) {
		b := o.Board
		change(&b)
		return document.SetBoard(o, b)
	}
	long := func(name string, pick func(b *cloth.Board) *geom.Length) {
		f.length(name, "Change Board", geom.KujiraShaku,
			func(o document.Order) geom.Length { return *pick(&o.Board) },
			func(o document.Order, l geom.Length) (document.Order, error) {
				return edit(o, func(b *cloth.Board) { *pick(b) = l })
			})
	}
	long("Length of the board", func(b *cloth.Board) *geom.Length { return &b.Length })
	long("Lost at its turn", func(b *cloth.Board) *geom.Length { return &b.Turn })
	long("First placement at", func(b *cloth.Board) *geom.Length { return &b.Start })
	long("Waste at the far end", func(b *cloth.Board) *geom.Length { return &b.End })
	f.folded("Faces, cloths, order of laying", func(f *form) {
		whole := func(name string, pick func(b *cloth.Board) *int) {
			f.number(name, "Change Board", "",
				func(o document.Order) float64 { return float64(max(*pick(&o.Board), 1)) },
				func(o document.Order, v float64) (document.Order, error) {
					return edit(o, func(b *cloth.Board) { *pick(b) = int(v) })
				})
		}
		f.number("Faces used", "Change Board", "",
			func(o document.Order) float64 { return float64(facesOf(o.Board)) },
			func(o document.Order, v float64) (document.Order, error) {
				return edit(o, func(b *cloth.Board) { b.Faces = int(v) })
			})
		whole("Cloths on it", func(b *cloth.Board) *int { return &b.Cloths })
		whole("Laid in so many goes", func(b *cloth.Board) *int { return &b.Layings })
		choice(f, "Order of laying", "Change Board", cloth.Sequences(),
			func(o document.Order) cloth.Sequence { return o.Board.Sequence },
			func(o document.Order, v cloth.Sequence) (document.Order, error) {
				return edit(o, func(b *cloth.Board) { b.Sequence = v })
			})
	})
}

// facesOf is how many faces of a board are used: both, where it doesn't say.
func facesOf(b cloth.Board) int {
	if b.Faces == 1 {
		return 1
	}
	return 2
}

// registerFields are how each placement is laid to the one before, and how well.
func registerFields(f *form) {
	f.heading("Register")
	edit := func(o document.Order, change func(r *document.Register)) (document.Order, error) {
		r := o.Register
		change(&r)
		return document.SetRegister(o, r)
	}
	choice(f, "Laid by", "Change Register", cloth.Ways(),
		func(o document.Order) cloth.Way { return o.Register.Way },
		func(o document.Order, v cloth.Way) (document.Order, error) {
			return edit(o, func(r *document.Register) { r.Way = v })
		})
	off := func(f *form, name string, pick func(r *document.Register) *geom.Length) {
		f.length(name, "Change Register", geom.KaneRin,
			func(o document.Order) geom.Length { return *pick(&o.Register) },
			func(o document.Order, l geom.Length) (document.Order, error) {
				return edit(o, func(r *document.Register) { *pick(r) = l })
			})
	}
	off(f, "A star is off by", func(r *document.Register) *geom.Length { return &r.StarError })
	f.folded("Steps, drying, sheets", func(f *form) {
		off(f, "A star is off across by", func(r *document.Register) *geom.Length { return &r.StarErrorAcross })
		off(f, "A step is long by", func(r *document.Register) *geom.Length { return &r.PitchError })
		number := func(name, unit string, get func(r document.Register) float64, set func(r *document.Register, v float64)) {
			f.number(name, "Change Register", unit,
				func(o document.Order) float64 { return get(o.Register) },
				func(o document.Order, v float64) (document.Order, error) {
					return edit(o, func(r *document.Register) { set(r, v) })
				})
		}
		number("Too long at first", "%",
			func(r document.Register) float64 { return 100 * r.Growth.Start },
			func(r *document.Register, v float64) { r.Growth.Start = v / 100 })
		number("Too long at the end", "%",
			func(r document.Register) float64 { return 100 * r.Growth.End },
			func(r *document.Register, v float64) { r.Growth.End = v / 100 })
		number("Half dried after", "laid",
			func(r document.Register) float64 { return float64(r.Growth.Half) },
			func(r *document.Register, v float64) { r.Growth.Half = int(v) })
		number("Sheets and colours", "",
			func(r document.Register) float64 { return float64(max(r.Sheets, 1)) },
			func(r *document.Register, v float64) { r.Sheets = int(v) })
	})
}

// limitFields are what a bolt is held to.
func limitFields(f *form) {
	limit := func(name string, family geom.Unit, pick func(l *document.Limits) *geom.Length) {
		f.length(name, "Change Limits", family,
			func(o document.Order) geom.Length { return *pick(&o.Limits) },
			func(o document.Order, v geom.Length) (document.Order, error) {
				l := o.Limits
				*pick(&l) = v
				return document.SetLimits(o, l, o.Sheet.WebLimit)
			})
	}
	limit("A joint opens by", geom.KaneRin, func(l *document.Limits) *geom.Length { return &l.Joint })
	limit("Prints miss by", geom.KaneRin, func(l *document.Limits) *geom.Length { return &l.Misfit })
	limit("Prints spoil it at", geom.KaneRin, func(l *document.Limits) *geom.Length { return &l.MostMisfit })
	limit("Looked at from", geom.KujiraShaku, func(l *document.Limits) *geom.Length { return &l.Look })
}

// choice is a choice of values that are words, shown with spaces between them. The
// empty one is the first.
func choice[T ~string](f *form, name, edit string, of []T, get func(document.Order) T, set func(document.Order, T) (document.Order, error)) {
	value := map[string]T{}
	var words []string
	for _, v := range of {
		value[plainWords(v)] = v
		words = append(words, plainWords(v))
	}
	f.choice(name, edit, words,
		func(o document.Order) string {
			if v := get(o); v != "" {
				return plainWords(v)
			}
			return words[0]
		},
		func(o document.Order, v string) (document.Order, error) { return set(o, value[v]) })
}
