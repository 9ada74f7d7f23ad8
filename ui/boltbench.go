package ui

import (
	"tsugime/repeat/cloth"
	"tsugime/repeat/document"
	"tsugime/repeat/geom"
)

func (s *boltStation) boltFields() {
	f := s.form
	f.heading("Bolt")
	size := func(name string, family geom.Unit, pick func(b *cloth.Bolt) *geom.Length) {
		f.length(name, "Change Bolt", family,
			func(o document.Order) geom.Length { return *pick(&o.Cloth.Bolt) },
			func(o document.Order, l geom.Length) (document.Order, error) {
				c := o.Cloth
				*pick(&c.Bolt) = l
				return document.SetCloth(o, c)
			})
	}
	size("Width", geom.KujiraSun, func(b *cloth.Bolt) *geom.Length { return &b.Width })
	size("Length", geom.KujiraShaku, func(b *cloth.Bolt) *geom.Length { return &b.Length })
	changes := func(name string, pick func(b *cloth.Bolt) *float64) {
		f.number(name, "Change Cloth", "%",
			func(o document.Order) float64 { return 100 * *pick(&o.Cloth.Bolt) },
			func(o document.Order, v float64) (document.Order, error) {
				c := o.Cloth
				*pick(&c.Bolt) = v / 100
				return document.SetCloth(o, c)
			})
	}
	changes("Changes across", func(b *cloth.Bolt) *float64 { return &b.ChangeAcross })
	changes("Changes along", func(b *cloth.Bolt) *float64 { return &b.ChangeAlong })
	size("Selvedge", geom.KujiraSun, func(b *cloth.Bolt) *geom.Length { return &b.Selvedge })
	s.sidesFields()
	s.dyeField()
}

// A dye is a colour that a bolt is often asked for in; the names are our own
// plain words.
type dye struct {
	name   string
	colour document.Colour
}

var dyes = []dye{
	{"deep indigo", document.Colour{R: 0x1f, G: 0x2c, B: 0x4d}},
	{"indigo", document.Colour{R: 0x2f, G: 0x4f, B: 0x7f}},
	{"pine green", document.Colour{R: 0x2f, G: 0x4a, B: 0x3a}},
	{"madder", document.Colour{R: 0x8c, G: 0x33, B: 0x2b}},
	{"plum", document.Colour{R: 0x5a, G: 0x36, B: 0x58}},
	{"tea brown", document.Colour{R: 0x6a, G: 0x4a, B: 0x2f}},
	{"charcoal", document.Colour{R: 0x35, G: 0x34, B: 0x38}},
}

func (s *boltStation) dyeField() {
	const own = "its own"
	var names []string
	for _, d := range dyes {
		names = append(names, d.name)
	}
	s.form.choice("Dye", "Change Dye", append(names, own),
		func(o document.Order) string {
			for _, d := range dyes {
				if d.colour == o.Cloth.Dye {
					return d.name
				}
			}
			return own
		},
		func(o document.Order, v string) (document.Order, error) {
			c := o.Cloth
			for _, d := range dyes {
				if d.name == v {
					c.Dye = d.colour
				}
			}
			return document.SetCloth(o, c)
		})
}

func (s *boltStation) registerFields() {
	f := s.form
	f.heading("Register")
	f.choice("Laid by", "Change Register", choices(cloth.Ways()),
		func(o document.Order) string { return string(o.Register.Way) },
		func(o document.Order, v string) (document.Order, error) {
			r := o.Register
			r.Way = cloth.Way(v)
			return document.SetRegister(o, r)
		})
	off := func(name string, pick func(r *document.Register) *geom.Length) {
		f.length(name, "Change Register", geom.KaneRin,
			func(o document.Order) geom.Length { return *pick(&o.Register) },
			func(o document.Order, l geom.Length) (document.Order, error) {
				r := o.Register
				*pick(&r) = l
				return document.SetRegister(o, r)
			})
	}
	off("A star is off by", func(r *document.Register) *geom.Length { return &r.StarError })
	off("A star is off across by", func(r *document.Register) *geom.Length { return &r.StarErrorAcross })
	off("A step is long by", func(r *document.Register) *geom.Length { return &r.PitchError })
	s.dryingFields()
}

// sidesFields are which sides of the cloth are printed, and whether it is folded.
func (s *boltStation) sidesFields() {
	bolt := func(o document.Order, edit func(b *cloth.Bolt)) (document.Order, error) {
		c := o.Cloth
		edit(&c.Bolt)
		return document.SetCloth(o, c)
	}
	s.form.choice("Printed sides", "Change Sides", choices(cloth.SidesOf()),
		func(o document.Order) string { return string(o.Cloth.Bolt.Sides) },
		func(o document.Order, v string) (document.Order, error) {
			return bolt(o, func(b *cloth.Bolt) { b.Sides = cloth.Sides(v) })
		})
	s.form.tick("Folded back at every step, for poured dye", "Fold the Cloth",
		func(o document.Order) bool { return o.Cloth.Bolt.Folded },
		func(o document.Order, v bool) (document.Order, error) {
			return bolt(o, func(b *cloth.Bolt) { b.Folded = v })
		})
}

// layingFields are how the cloth is laid on the board.
func (s *boltStation) layingFields() {
	whole := func(name string, pick func(b *cloth.Board) *int) {
		s.form.number(name, "Change Board", "",
			func(o document.Order) float64 { return float64(*pick(&o.Board)) },
			func(o document.Order, v float64) (document.Order, error) {
				b := o.Board
				*pick(&b) = int(v)
				return document.SetBoard(o, b)
			})
	}
	whole("Faces used", func(b *cloth.Board) *int { return &b.Faces })
	whole("Cloths on it", func(b *cloth.Board) *int { return &b.Cloths })
	whole("Laid in so many goes", func(b *cloth.Board) *int { return &b.Layings })
	s.form.choice("Order of laying", "Change Board", choices(cloth.Sequences()),
		func(o document.Order) string { return string(o.Board.Sequence) },
		func(o document.Order, v string) (document.Order, error) {
			b := o.Board
			b.Sequence = cloth.Sequence(v)
			return document.SetBoard(o, b)
		})
}

// dryingFields are how the sheet dries through the job, and how many there are.
func (s *boltStation) dryingFields() {
	number := func(name, unit string, get func(r document.Register) float64, set func(r *document.Register, v float64)) {
		s.form.number(name, "Change Register", unit,
			func(o document.Order) float64 { return get(o.Register) },
			func(o document.Order, v float64) (document.Order, error) {
				r := o.Register
				set(&r, v)
				return document.SetRegister(o, r)
			})
	}
	number("Sheet too long at the start", "%",
		func(r document.Register) float64 { return 100 * r.Growth.Start },
		func(r *document.Register, v float64) { r.Growth.Start = v / 100 })
	number("Sheet too long at the end", "%",
		func(r document.Register) float64 { return 100 * r.Growth.End },
		func(r *document.Register, v float64) { r.Growth.End = v / 100 })
	number("Half dried after placements", "",
		func(r document.Register) float64 { return float64(r.Growth.Half) },
		func(r *document.Register, v float64) { r.Growth.Half = int(v) })
	number("Sheets and colours", "",
		func(r document.Register) float64 { return float64(r.Sheets) },
		func(r *document.Register, v float64) { r.Sheets = int(v) })
}

// choices are the words of a choice.
func choices[T ~string](of []T) []string {
	var words []string
	for _, c := range of {
		words = append(words, string(c))
	}
	return words
}
