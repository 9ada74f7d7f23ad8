package ui

import (
	"image/color"
	"math"
	"slices"
	"testing"

	"tsugime/ui/board"
)

// visions are how much red, green and blue light reaches an eye that lacks one kind of
// cone, in linear sRGB: Machado, Oliveira and Fernandes, A Physiologically-based Model
// for Simulation of Color Vision Deficiency, IEEE Transactions on Visualization and
// Computer Graphics 15 (6), 2009, at severity 1.0.
var visions = map[string][9]float64{
	"every cone": {1, 0, 0, 0, 1, 0, 0, 0, 1},
	"no red":     {0.152286, 1.052583, -0.204868, 0.114503, 0.786281, 0.099216, -0.003882, -0.048116, 1.051998},
	"no green":   {0.367322, 0.860646, -0.227968, 0.280085, 0.672501, 0.047413, -0.011820, 0.042940, 0.968881},
	"no blue":    {1.255528, -0.076749, -0.178779, -0.078411, 0.930809, 0.147602, 0.004733, 0.691367, 0.303900},
}

// seenBy is a colour in linear sRGB as an eye sees it.
func seenBy(m [9]float64, c color.RGBA) [3]float64 {
	r, g, b := linear(c.R), linear(c.G), linear(c.B)
	var out [3]float64
	for i := range out {
		out[i] = math.Min(math.Max(m[3*i]*r+m[3*i+1]*g+m[3*i+2]*b, 0), 1)
	}
	return out
}

// oklab is a colour of linear sRGB in Oklab (Björn Ottosson, A perceptual color space
// for image processing, 2020; the figures from memory, held to white and black below).
func oklab(c [3]float64) [3]float64 {
	l := math.Cbrt(0.4122214708*c[0] + 0.5363325363*c[1] + 0.0514459929*c[2])
	m := math.Cbrt(0.2119034982*c[0] + 0.6806995451*c[1] + 0.1073969566*c[2])
	s := math.Cbrt(0.0883024619*c[0] + 0.2817188376*c[1] + 0.6299787005*c[2])
	return [3]float64{
		0.2104542553*l + 0.7936177850*m - 0.0040720468*s,
		1.9779984951*l - 2.4285922050*m + 0.4505937099*s,
		0.0259040371*l + 0.7827717662*m - 0.8086757660*s,
	}
}

// apartFor is how far two colours are apart for an eye, in Oklab, where black and white
// are 1 apart.
func apartFor(vision [9]float64, a, b color.RGBA) float64 {
	x, y := oklab(seenBy(vision, a)), oklab(seenBy(vision, b))
	return math.Sqrt((x[0]-y[0])*(x[0]-y[0]) + (x[1]-y[1])*(x[1]-y[1]) + (x[2]-y[2])*(x[2]-y[2]))
}

func TestEveryEyeKeepsBlackGreyAndWhite(t *testing.T) {
	for name, m := range visions {
		black, white := color.RGBA{0, 0, 0, 255}, color.RGBA{255, 255, 255, 255}
		if d := apartFor(m, black, white); math.Abs(d-1) > 1e-3 {
			t.Errorf("%s: black and white are %.4f apart, want 1", name, d)
		}
		grey := color.RGBA{119, 119, 119, 255}
		got := seenBy(m, grey)
		for _, v := range got {
			if math.Abs(v-linear(119)) > 1e-4 {
				t.Errorf("%s: grey is seen as %v", name, got)
			}
		}
	}
}

// tellApart is the least distance in Oklab of marks of one shape. It is about six steps
// of lightness that are just seen side by side (0.02; common practice, no source).
const tellApart = 0.12

// A sign is a kind of mark: its colour and the shapes that it is drawn in.
type sign struct {
	name   string
	colour color.RGBA
	shapes []board.Shape
}

// signs are the marks that lie on one ground together.
func (p *palette) signs() map[string][]sign {
	return map[string][]sign{
		"the paper": {
			{"fault", p.madder, []board.Shape{board.Bar, board.Wedge, board.Hatch, board.Loop, board.Cross, board.Ring}},
			{"warning", p.ochre, []board.Shape{board.Bar, board.Dashes, board.Wedge, board.Cross}},
			{"chosen", p.indigo, []board.Shape{board.Loop, board.Line, board.Dashes, board.Ring, board.Star, board.Peg, board.Bead, board.Strip}},
			{"edge of the unit", p.cellLine, []board.Shape{board.Loop, board.Ring, board.Strip}},
			{"joint, star, symmetry", p.onPaper, []board.Shape{board.Line, board.Dashes, board.Loop, board.Star, board.Ring, board.Cross}},
			{"asymmetric part", p.onCloth, []board.Shape{board.Hatch, board.Loop}},
		},
		"the cloth": {
			{"joint", p.quiet, []board.Shape{board.Line, board.Dashes, board.Hatch}},
			{"seam, star, place", p.onCloth, []board.Shape{board.Line, board.Dashes, board.Hatch, board.Loop, board.Star, board.Ring, board.Wedge, board.Bar}},
			{"edge of a panel", p.undyed, []board.Shape{board.Loop, board.Hatch, board.Line}},
			{"shows dyed", p.madder, []board.Shape{board.Ring}},
		},
		"the printed sheet": {
			{"place", p.madder, []board.Shape{board.Wedge, board.Ring}},
			{"page, joint", p.indigo, []board.Shape{board.Loop, board.Dashes}},
			{"way that was cut", p.soot, []board.Shape{board.Dashes}},
			{"way to come", p.soot, []board.Shape{board.Line}},
		},
		"the table": {
			{"walk as laid, chosen panel", p.vat, []board.Shape{board.Line, board.Loop}},
			{"walk in other ways", p.faint, []board.Shape{board.Dashes}},
		},
	}
}

func TestMarksAreToldApartByEveryEye(t *testing.T) {
	for look, p := range both {
		for ground, signs := range p.signs() {
			for i, a := range signs {
				for _, b := range signs[:i] {
					if !slices.ContainsFunc(a.shapes, func(s board.Shape) bool { return slices.Contains(b.shapes, s) }) {
						continue // told apart by their shapes
					}
					for vision, m := range visions {
						if d := apartFor(m, a.colour, b.colour); d < tellApart {
							t.Errorf("%s, on %s: with %s, %q and %q are %.3f apart, want %.2f", look, ground, vision, a.name, b.name, d, tellApart)
						}
					}
				}
			}
		}
	}
}

// The methods on a printed sheet are told apart by their weaves, whatever their colours.
func TestNoTwoMethodsShareAWeave(t *testing.T) {
	taken := map[board.Weave]bool{}
	for m, ink := range methodInks {
		if taken[ink.weave] {
			t.Errorf("%s has the weave of another method", m)
		}
		taken[ink.weave] = true
		for look, p := range both {
			if got := contrast(p.methods[m], p.white); got < 3 {
				t.Errorf("%s, %s: %.2f to 1 from the sheet, want 3", look, m, got)
			}
		}
	}
}

// Severities have words and shapes of their own, not only colours.
func TestSeveritiesAreToldApartWithoutColour(t *testing.T) {
	taken := map[string]bool{}
	for _, s := range severities {
		shape := severityShape(s)
		if taken[shape] || say(string(s)) == "" {
			t.Errorf("%s has no shape or word of its own", s)
		}
		taken[shape] = true
	}
}
