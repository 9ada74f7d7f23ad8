// Package assets holds what is shipped inside the program: the orders to start
// from and the schema of the order file.
package assets

import (
	"embed"
	"slices"
)

//go:embed starters/*.tsugime
var starters embed.FS

//go:embed order.schema.json
var orderSchema []byte

// OrderSchema returns the JSON Schema (draft 2020-12) of the order file.
func OrderSchema() []byte { return slices.Clone(orderSchema) }

// A Start is an order to start from.
type Start struct {
	Name  string // as the command line says it: "small-dot"
	Title string
	About string // one sentence
}

// Starters lists the orders to start from, the default one first.
func Starters() []Start {
	return []Start{
		{"small-dot", "Small dots at 45°",
			"Dots of 0.5 mm at 45°, about 60 on a square centimetre, for a light indoor coat."},
		{"square-dot", "Small dots in rows",
			"Dots of 0.5 mm in upright rows, about 63 on a square centimetre."},
		{"fine-dot", "Fine dots at 45°",
			"Dots of 0.4 mm at 45°, about 98 on a square centimetre: 63,000 on a sheet."},
		{"scale-dot", "Scales of dots",
			"Dots of 0.6 mm along six arcs, scale beside scale, each column half a scale lower."},
		{"leaf", "Drifting leaves",
			"A small leaf and two dots, each column half a height lower."},
	}
}

// Starter returns the order file of the starter called name, and whether there is
// one.
func Starter(name string) (order []byte, ok bool) {
	order, err := starters.ReadFile("starters/" + name + ".tsugime")
	return order, err == nil
}
