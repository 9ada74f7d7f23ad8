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
	var ways []string
	for _, way := range cloth.Ways() {
		ways = append(ways, string(way))
	}
	f.choice("Laid by", "Change Register", ways,
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
	off("A step is long by", func(r *document.Register) *geom.Length { return &r.PitchError })
}
