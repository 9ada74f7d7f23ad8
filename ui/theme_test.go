package ui

import (
	"image/color"
	"math"
	"testing"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/theme"

	"tsugime/repeat/check"
)

// both are the two palettes by their names.
var both = map[string]*palette{"by day": &byDay, "by lamp": &byLamp}

var severities = []check.Severity{check.Fault, check.Warning, check.Note}

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

// over is a colour seen through another.
func over(ground color.RGBA, c color.NRGBA) color.RGBA {
	mix := func(g, v uint8) uint8 { return uint8((int(g)*(255-int(c.A)) + int(v)*int(c.A)) / 255) }
	return color.RGBA{mix(ground.R, c.R), mix(ground.G, c.G), mix(ground.B, c.B), 255}
}

// between is a colour a share of the way from one to another.
func between(a, b color.RGBA, share float64) color.RGBA {
	return over(a, color.NRGBA{b.R, b.G, b.B, uint8(share * 255)})
}

// Words on everything that they stand on: 4.5 to 1 (WCAG 2.2, 1.4.3).
func TestWordsStandOutFromTheirGround(t *testing.T) {
	for look, p := range both {
		quiet := map[string]color.RGBA{"panel": p.card, "field": p.field, "table": p.table, "shield": p.shield, "idle button": p.idle, "button": p.button}
		loud := map[string]color.RGBA{"field with chosen words": over(p.field, seeThrough(p.vat, 0x38)), "button with the focus": over(p.button, seeThrough(p.hand, handShare)),
			"button under the pointer": over(p.button, seeThrough(p.ink, 0x14)), "button that is pressed": over(p.button, seeThrough(p.ink, 0x28))}
		for ground, under := range quiet {
			loud[ground] = under
			if got := contrast(p.faint, under); got < 4.5 {
				t.Errorf("%s: quiet words on a %s: %.2f to 1, want 4.5", look, ground, got)
			}
		}
		for ground, under := range loud {
			if got := contrast(p.ink, under); got < 4.5 {
				t.Errorf("%s: words on a %s: %.2f to 1, want 4.5", look, ground, got)
			}
		}
		for _, ground := range []color.RGBA{p.card, p.field, p.shield} {
			for _, s := range severities {
				if got := contrast(p.tone(s), ground); got < 4.5 {
					t.Errorf("%s: a %s on %v: %.2f to 1, want 4.5", look, s, ground, got)
				}
			}
			if got := contrast(p.vat, ground); got < 4.5 {
				t.Errorf("%s: chosen words on %v: %.2f to 1, want 4.5", look, ground, got)
			}
		}
		for name, c := range map[string][2]color.RGBA{"words on the chosen colour": {p.onVat, p.vat}, "words on the paper": {p.onPaper, p.tannin},
			"numbers of the rulers": {p.faint, p.strip}, "the walk's words": {p.vat, p.table}} {
			if got := contrast(c[0], c[1]); got < 4.5 {
				t.Errorf("%s: %s: %.2f to 1, want 4.5", look, name, got)
			}
		}
	}
}

// What can be used is seen by its edge or its ground: 3 to 1 (WCAG 2.2, 1.4.11).
func TestWhatCanBeUsedIsSeen(t *testing.T) {
	for look, p := range both {
		for name, c := range map[string][2]color.RGBA{
			"edge of a field on a panel": {p.edge, p.card}, "edge of a field": {p.edge, p.field}, "bar that scrolls": {p.edge, p.card},
			"station": {p.faint, p.card}, "open station": {p.vat, p.card}, "button that matters": {p.vat, p.card},
			"frame of the loupe": {p.faint, p.table}, "ticks of the rulers": {p.faint, p.strip},
		} {
			if got := contrast(c[0], c[1]); got < 3 {
				t.Errorf("%s: %s: %.2f to 1, want 3", look, name, got)
			}
		}
	}
}

// What is real: the holes and the pattern are seen on their ground.
func TestThePatternStandsOutFromPaperAndCloth(t *testing.T) {
	for look, p := range both {
		for name, c := range map[string][2]color.RGBA{"holes in the paper": {p.light, p.tannin}, "holes on the printed sheet": {p.soot, p.white}} {
			if got := contrast(c[0], c[1]); got < 3 {
				t.Errorf("%s: %s: %.2f to 1, want 3", look, name, got)
			}
		}
		for _, d := range dyes {
			if got := contrast(dyed(d.colour), p.undyed); got < 3 {
				t.Errorf("%s, %s: %.2f to 1 from the undyed cloth, want 3", look, d.name, got)
			}
		}
	}
}

// grounds are what marks lie on: paper, cloth and sheet, with anything from none to
// all of it open, and what is around it.
func (p *palette) grounds(of string) []color.RGBA {
	mixed := func(shut, open color.RGBA) []color.RGBA {
		var all []color.RGBA
		for i := range 9 {
			all = append(all, between(shut, open, float64(i)/8))
		}
		return all
	}
	switch of {
	case "the paper":
		return append(mixed(p.tannin, p.light), p.table)
	case "the printed sheet":
		return append(mixed(p.white, p.soot), p.table)
	case "the table":
		return []color.RGBA{p.table, p.wood}
	}
	all := []color.RGBA{p.table}
	for _, d := range dyes {
		all = append(all, mixed(dyed(d.colour), p.undyed)...)
	}
	return all
}

// Of a mark and its casing at least one has 3 to 1 from any ground that it lies on
// (WCAG 2.2, 1.4.11), and they have it from each other.
func TestMarksAreSeenOnAnyGround(t *testing.T) {
	for look, p := range both {
		worst := 21.0
		for ground, signs := range p.signs() {
			for _, s := range signs {
				edge := p.casing().Of(s.colour)
				if got := contrast(s.colour, edge); got < 3 {
					t.Errorf("%s: the mark of %s is %.2f to 1 from its casing, want 3", look, s.name, got)
				}
				for _, under := range p.grounds(ground) {
					got := math.Max(contrast(s.colour, under), contrast(edge, under))
					worst = math.Min(worst, got)
					if got < 3 {
						t.Errorf("%s: the mark of %s on %s %v: %.2f to 1, want 3", look, s.name, ground, under, got)
					}
				}
			}
		}
		t.Logf("%s: the least is %.2f to 1", look, worst)
	}
}

// The colours that Fyne asks for are the palette's, in both looks.
func TestFynesPartsWearThePalette(t *testing.T) {
	for look, p := range both {
		for _, name := range []fyne.ThemeColorName{theme.ColorNameBackground, theme.ColorNameForeground, theme.ColorNameInputBackground, theme.ColorNameButton,
			theme.ColorNamePrimary, theme.ColorNameError, theme.ColorNameWarning, theme.ColorNameSuccess, theme.ColorNameForegroundOnError, theme.ColorNameForegroundOnWarning,
			theme.ColorNameForegroundOnSuccess, theme.ColorNameInputBorder, theme.ColorNameSeparator} {
			c, ok := (Theme{p}).Color(name, 1-p.variant()).(color.RGBA)
			if !ok {
				t.Errorf("%s: %s is not of the palette", look, name)
			} else if c != (Theme{p}).Color(name, p.variant()) {
				t.Errorf("%s: %s follows Fyne's variant", look, name)
			}
		}
	}
}

// What has the keys is seen (WCAG 2.2, 2.4.7), on a button like any other and on the one
// that matters: the fill gets lighter or darker by half at least, in another hue, and
// words on it stay readable.
func TestWhatHasTheKeysIsSeen(t *testing.T) {
	for look, p := range both {
		for name, c := range map[string]struct{ ground, words color.RGBA }{
			"a button": {p.button, p.ink}, "the button that matters": {p.vat, p.onVat}, "a row": {p.card, p.ink},
		} {
			with := over(c.ground, seeThrough(p.hand, handShare))
			if got := contrast(with, c.ground); got < 1.5 {
				t.Errorf("%s: %s with the keys is %.2f to 1 from one without, want 1.5", look, name, got)
			}
			if got := contrast(with, c.words); got < 4.5 {
				t.Errorf("%s: the words of %s with the keys are %.2f to 1, want 4.5", look, name, got)
			}
		}
	}
}
