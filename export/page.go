package export

import (
	"fmt"
	"strings"

	"tsugime/repeat/geom"
)

// A PageSize is a sheet for the printer, upright.
type PageSize struct {
	Name          string // as it is written in an order or a flag: "A4"
	Title         string // as people read it: "A4, 210 × 297 mm"
	Width, Height geom.Length
}

// Pages lists the sizes that can be printed on, the usual one first.
//
// A4, A3, A2: ISO 216:2007, A series. B4: the Japanese B4 of JIS P 0138, 257 ×
// 364 mm as the PWG name jis_b4_257x364mm of Debian's libcups has it; the B4 of
// ISO 216 is smaller, 250 × 353 mm. Letter: 8.5 × 11 in (ANSI/ASME Y14.1, size A).
func Pages() []PageSize {
	return []PageSize{
		{"A4", "A4, 210 × 297 mm", 210 * geom.Millimetre, 297 * geom.Millimetre},
		{"A3", "A3, 297 × 420 mm", 297 * geom.Millimetre, 420 * geom.Millimetre},
		{"A2", "A2, 420 × 594 mm", 420 * geom.Millimetre, 594 * geom.Millimetre},
		{"B4", "B4 (JIS), 257 × 364 mm", 257 * geom.Millimetre, 364 * geom.Millimetre},
		{"letter", "letter, 8.5 × 11 in", geom.Inch * 17 / 2, geom.Inch * 11},
	}
}

// PageNamed returns the size of that name, whichever way it is capitalised.
func PageNamed(name string) (PageSize, error) {
	var names []string
	for _, p := range Pages() {
		if strings.EqualFold(p.Name, strings.TrimSpace(name)) {
			return p, nil
		}
		names = append(names, p.Name)
	}
	return PageSize{}, fmt.Errorf("%q is no paper size; use one of %s", name, strings.Join(names, ", "))
}

// Turned returns the size on its long side.
func (p PageSize) Turned() PageSize {
	p.Width, p.Height = p.Height, p.Width
	return p
}
