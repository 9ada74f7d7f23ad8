package ui

import "tsugime/repeat/document"

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

func dyeField(f *form) {
	const own = "its own"
	var names []string
	for _, d := range dyes {
		names = append(names, d.name)
	}
	f.choice("Dye", "Change Dye", append(names, own),
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
