package document

import (
	"maps"
	"slices"

	"tsugime/repeat/cloth"
)

// SetGarment sets what the cloth becomes.
func SetGarment(o Order, g Garment) (Order, error) {
	next := o
	next.Garment = owned(g)
	return o.checked(next)
}

// SetBody sets for whom the garment is cut.
func SetBody(o Order, b cloth.Body) (Order, error) {
	g := o.Garment
	g.Body = b
	return SetGarment(o, g)
}

// SetLayout sets how the panels lie on the cloth.
func SetLayout(o Order, l cloth.Layout) (Order, error) {
	g := o.Garment
	g.Layout = l
	return SetGarment(o, g)
}

// SetGarmentKind has another garment cut by a form of the program's. Sizes and
// allowances stay where that form knows them too; how panels were laid goes.
func SetGarmentKind(o Order, kind cloth.GarmentKind) (Order, error) {
	f, err := cloth.FormOf(kind)
	if err != nil {
		return o, faultf("garment.kind", "%v", err)
	}
	g := owned(o.Garment)
	g.Body.Kind, g.Body.Own, g.Layout = kind, "", cloth.Layout{}
	return SetGarment(o, f.Keep(g))
}

// owned returns g with maps and lists of its own, and its form as Read has it.
func owned(g Garment) Garment {
	b, l := &g.Body, &g.Layout
	if b.Own != "" {
		if f, err := b.Form(); err == nil {
			b.Own = f.Text
		}
	}
	b.Sizes, b.Counts, b.Allowances = maps.Clone(b.Sizes), maps.Clone(b.Counts), maps.Clone(b.Allowances)
	l.Order, l.Gaps = slices.Clone(l.Order), maps.Clone(l.Gaps)
	l.Shifts, l.Turned = maps.Clone(l.Shifts), maps.Clone(l.Turned)
	return g
}
