package document

import (
	"maps"
	"slices"

	"tsugime/repeat/cloth"
	"tsugime/repeat/geom"
)

// LayPanels lays the panels in an order along the cloth, by their names.
func LayPanels(o Order, names []string) (Order, error) {
	l := o.Garment.Layout
	l.Order = slices.Clone(names)
	return SetLayout(o, l)
}

// LeaveGap leaves so much cloth before a panel.
func LeaveGap(o Order, panel string, gap geom.Length) (Order, error) {
	l := o.Garment.Layout
	l.Gaps = maps.Clone(l.Gaps)
	if l.Gaps == nil {
		l.Gaps = map[string]geom.Length{}
	}
	l.Gaps[panel] = gap
	return SetLayout(o, l)
}

// TurnPanel lays a panel turned half round on the cloth, or as it is drawn.
func TurnPanel(o Order, panel string, turned bool) (Order, error) {
	l := o.Garment.Layout
	l.Turned = maps.Clone(l.Turned)
	if l.Turned == nil {
		l.Turned = map[string]bool{}
	}
	l.Turned[panel] = turned
	return SetLayout(o, l)
}

// LayAsFormHasIt lays all panels as the form has them.
func LayAsFormHasIt(o Order) (Order, error) { return SetLayout(o, cloth.Layout{}) }
