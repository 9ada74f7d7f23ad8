package board

import "image/color"

// A Casing is what edges the marks of a scene, a unit of the screen at each side, so
// that they are seen on any ground: dark marks have a pale edge, pale ones a dark one.
// The zero Casing is none.
type Casing struct{ Pale, Dark color.RGBA }

// casingPx is how much wider a mark's edge is than the mark, in screen units.
const casingPx = 2

// Of returns the edge of a mark of a colour: the one of the two that stands out more.
func (c Casing) Of(mark color.RGBA) color.RGBA {
	if lightness(mark) > 0.18 {
		return c.Dark
	}
	return c.Pale
}

// lightness is about the relative luminance of a colour, 0 to 1, with 2 for sRGB's
// exponent. At 0.18 black and white stand out alike (WCAG 2.2: (1.05)/(0.18+0.05) and
// (0.18+0.05)/0.05).
func lightness(c color.RGBA) float64 {
	square := func(v uint8) float64 { return float64(v) * float64(v) / (255 * 255) }
	return 0.2126*square(c.R) + 0.7152*square(c.G) + 0.0722*square(c.B)
}

// cased returns the edges of marks, to be drawn before the marks themselves. What is
// hatched has none, which would fill it.
func (c Casing) cased(marks []Mark) []Mark {
	var edges []Mark
	for _, m := range marks {
		edge := c.Of(m.Colour)
		if edge.A == 0 || m.Bare || m.Shape == Hatch {
			continue
		}
		m.Colour, m.Width = edge, max(m.Width, 1)+casingPx
		edges = append(edges, m)
	}
	return edges
}
