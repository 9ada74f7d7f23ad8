package ui

import (
	"image/color"
	"math"
	"testing"

	"tsugime/repeat/check"
)

// both are the two palettes by their names.
var both = map[string]*palette{"by day": &byDay, "by lamp": &byLamp}

// linear is a channel of sRGB as an amount of light (IEC 61966-2-1).
func linear(c uint8) float64 {
	v := float64(c) / 255
	if v <= 0.04045 {
		return v / 12.92
	}
	return math.Pow((v+0.055)/1.055, 2.4)
}

// contrast is the contrast ratio of WCAG 2.2, from the relative luminance of
// both colours.
func contrast(a, b color.RGBA) float64 {
	of := func(c color.RGBA) float64 { return 0.2126*linear(c.R) + 0.7152*linear(c.G) + 0.0722*linear(c.B) }
	x, y := of(a), of(b)
	return (math.Max(x, y) + 0.05) / (math.Min(x, y) + 0.05)
}

func TestWordsStandOutFromTheirGround(t *testing.T) {
	for look, p := range both {
		for _, c := range []struct {
			name        string
			ink, ground color.RGBA
			least       float64
		}{
			{"words on a panel", p.ink, p.card, 4.5},
			{"quiet words on a panel", p.faint, p.card, 4.5},
			{"quiet words in a field", p.faint, p.field, 4.5},
			{"quiet words on the table", p.faint, p.table, 4.5},
			{"words on the chosen colour", p.onVat, p.vat, 4.5},
			{"a fault", p.tone(check.Fault), p.field, 4.5},
			{"a warning", p.tone(check.Warning), p.field, 4.5},
			{"a note", p.tone(check.Note), p.field, 4.5},
			{"a web's measure", p.fault, p.shield, 4.5},
			// Marks and large shapes: 3 to 1 (1.4.11).
			{"marks on the paper", p.onPaper, p.tannin, 3},
			{"holes in the paper", p.light, p.tannin, 3},
			{"the unit's edge on the paper", p.cellLine, p.light, 3},
		} {
			if got := contrast(c.ink, c.ground); got < c.least {
				t.Errorf("%s, %s: %.2f to 1, want %.1f", look, c.name, got, c.least)
			}
		}
		for _, d := range dyes {
			if got := contrast(dyed(d.colour), p.undyed); got < 3 {
				t.Errorf("%s, %s: %.2f to 1 from the undyed cloth, want 3", look, d.name, got)
			}
		}
	}
}
