package ui

import (
	"image/color"
	"math"
	"testing"

	"tsugime/repeat/check"
)

// contrast is the contrast ratio of WCAG 2.2, from the relative luminance of
// both colours.
func contrast(a, b color.RGBA) float64 {
	light := func(c uint8) float64 {
		v := float64(c) / 255
		if v <= 0.04045 {
			return v / 12.92
		}
		return math.Pow((v+0.055)/1.055, 2.4)
	}
	of := func(c color.RGBA) float64 { return 0.2126*light(c.R) + 0.7152*light(c.G) + 0.0722*light(c.B) }
	x, y := of(a), of(b)
	return (math.Max(x, y) + 0.05) / (math.Min(x, y) + 0.05)
}

func TestWordsStandOutFromTheirGround(t *testing.T) {
	for _, c := range []struct {
		name        string
		ink, ground color.RGBA
		least       float64
	}{
		{"words on a panel", ink, card, 4.5},
		{"quiet words on a panel", faint, card, 4.5},
		{"quiet words in a field", faint, field, 4.5},
		{"quiet words on the table", faint, table, 4.5},
		{"words on the chosen colour", field, indigo, 4.5},
		{"a fault", tone(check.Fault), field, 4.5},
		{"a warning", tone(check.Warning), field, 4.5},
		{"a note", tone(check.Note), field, 4.5},
		{"a web's measure", faultRed, shield, 4.5},
		// Marks and large shapes: 3 to 1 (1.4.11).
		{"marks on the paper", onPaper, tannin, 3},
		{"holes in the paper", light, tannin, 3},
		{"the unit's edge on the paper", cellLine, light, 3},
	} {
		if got := contrast(c.ink, c.ground); got < c.least {
			t.Errorf("%s: %.2f to 1, want %.1f", c.name, got, c.least)
		}
	}
	for _, d := range dyes {
		if got := contrast(dyed(d.colour), undyed); got < 3 {
			t.Errorf("%s: %.2f to 1 from the undyed cloth, want 3", d.name, got)
		}
	}
}
