// Package assets holds what is shipped inside the program: the orders to start
// from, the schema of the order file, the Japanese type and words, the program's
// icon. The folder desktop has what make install tells a desktop of the program.
package assets

import (
	"embed"
	"slices"
)

//go:embed starters/*.tsugime
var starters embed.FS

//go:embed order.schema.json
var orderSchema []byte

//go:embed desktop/org.tsugime.Tsugime.svg
var icon []byte

//go:embed desktop/org.tsugime.Tsugime.png
var iconPicture []byte

// Icon returns the program's picture as SVG.
func Icon() []byte { return slices.Clone(icon) }

// IconPicture returns Icon drawn on 128 × 128 pixels, as PNG: a window needs it at
// once, and drawing it takes longer than all else that a window begins with.
func IconPicture() []byte { return slices.Clone(iconPicture) }

// OrderSchema returns the JSON Schema (draft 2020-12) of the order file.
func OrderSchema() []byte { return slices.Clone(orderSchema) }

// A Start is an order to start from.
type Start struct {
	Name  string // as the command line says it: "small-dot"
	Title string
	About string // one sentence
}

// Starters lists the orders to start from, the default one first; after the five
// drawn for themselves there is one for each traditional ground, by its name.
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
		{"arc-dots", "Dots along arcs",
			"Fine dots along the arcs of overlapping scales."},
		{"diagonal-dots", "Dots in crossing rows",
			"Round dots in rows that cross at 45°."},
		{"row-dots", "Dots in upright rows",
			"Round dots in rows that cross at 90°."},
		{"row-squares", "Squares in upright rows",
			"Square dots in rows that cross at 90°."},
		{"scattered-dots", "Scattered dots",
			"Dots strewn by chance, evenly spaced, without a seam."},
		{"scattered-two-sizes", "Scattered dots, large and small",
			"Dots of two sizes strewn by chance, evenly spaced, without a seam."},
		{"even-stripes", "Broad even stripes",
			"Wide stripes as broad as the ground between them."},
		{"thread-stripes", "Thread stripes",
			"Narrow stripes of two threads on a ground of six."},
		{"fine-stripes", "Fine stripes",
			"Fine even stripes, ten to the kane sun."},
		{"finest-stripes", "Finest stripes",
			"Very fine even stripes, twenty to the kane sun."},
		{"companion-stripes", "Stripes with companions",
			"A thick stripe with a thin one beside it."},
		{"cascade-stripes", "Cascade of stripes",
			"Stripes that taper, to one side or from the middle to both."},
		{"paired-stripes", "Stripes in pairs",
			"Two lines as a pair, a gap, and again."},
		{"wavering-stripes", "Wavering stripes",
			"Stripes that waver, all alike."},
		{"steam-stripes", "Rising steam",
			"Lines that swell and narrow against each other like rising steam."},
		{"wave-scales", "Waves of scales",
			"Overlapping scales of concentric arcs, like waves of the sea."},
		{"hemp-leaf", "Hemp leaves",
			"Triangles with a line from their middle to each corner: leaves of six points."},
		{"linked-circles", "Linked circles",
			"Circles that each share a quarter with four others: petals and four-pointed stars."},
		{"fish-scales", "Fish scales",
			"Triangles in rows, every other one cut."},
		{"checker", "Checker with held corners",
			"Squares that meet corner to corner, held by a web at each."},
		{"tortoise-shell", "Tortoise shell",
			"Hexagons side by side, with a smaller one inside each."},
	}
}

// Starter returns the order file of the starter called name, and whether there is
// one.
func Starter(name string) (order []byte, ok bool) {
	order, err := starters.ReadFile("starters/" + name + ".tsugime")
	return order, err == nil
}

//go:embed garments/*.json
var garments embed.FS

// Garments lists the forms of garments by name, the one that orders begin with
// first.
func Garments() []string {
	return []string{
		"womens-kimono", "mens-kimono", "light-coat", "work-jacket",
		"door-curtain", "floor-cushion", "scarf", "panels",
	}
}

// Garment returns the form called name, and whether there is one.
func Garment(name string) (form []byte, ok bool) {
	form, err := garments.ReadFile("garments/" + name + ".json")
	return form, err == nil
}
