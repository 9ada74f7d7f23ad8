package ui

import (
	"image/color"
	"sync/atomic"

	"tsugime/repeat/bench"
	"tsugime/repeat/check"
	"tsugime/repeat/document"
	"tsugime/ui/board"
)

// A palette is the colours of one look: the bench and what is written about the
// work, what is real, and the marks that lie on it. What is real keeps its colour
// in every look; by lamp light the white of it is dimmed a little.
type palette struct {
	// The bench.
	table   color.RGBA // under everything
	card    color.RGBA // the panels at both sides
	field   color.RGBA // what can be written in
	button  color.RGBA
	idle    color.RGBA // a button that can't be pressed
	ink     color.RGBA // words
	faint   color.RGBA // words that explain
	rule    color.RGBA // lines between things
	edge    color.RGBA // of what is written in, and of a bar that scrolls
	vat     color.RGBA // what is chosen, and the button that matters
	onVat   color.RGBA // words on it
	hand    color.RGBA // laid thinly over what has the keys
	fault   color.RGBA // words about a fault
	warning color.RGBA
	shield  color.RGBA // behind words on a picture
	outline color.RGBA // of a sheet on the table
	strip   color.RGBA // the rulers
	rim     color.RGBA // of the rulers

	// What is real.
	tannin color.RGBA // the paper of a sheet
	light  color.RGBA // what shines through a hole
	white  color.RGBA // a sheet from the printer
	undyed color.RGBA // cloth where the paste lay
	wood   color.RGBA // the board

	// Marks on what is real.
	soot     color.RGBA // lines on paper, and what is printed
	indigo   color.RGBA // what is chosen
	madder   color.RGBA // faults
	ochre    color.RGBA // warnings
	cellLine color.RGBA // the edge of the unit
	onPaper  color.RGBA // marks on tannin paper
	onCloth  color.RGBA // marks on dyed cloth
	quiet    color.RGBA // joint lines on dyed cloth: the palest blue of the vat
	grid     color.RGBA // a little lighter than the paper, behind what is drawn

	methods map[bench.Method]color.RGBA // cut-outs on a printed sheet
}

// byDay is the workshop with its windows open.
var byDay = palette{
	table:   color.RGBA{0xe9, 0xe1, 0xd2, 0xff},
	card:    color.RGBA{0xf8, 0xf3, 0xe8, 0xff},
	field:   color.RGBA{0xff, 0xfc, 0xf5, 0xff},
	button:  color.RGBA{0xee, 0xe5, 0xd3, 0xff},
	idle:    color.RGBA{0xf0, 0xe9, 0xdb, 0xff},
	ink:     color.RGBA{0x2b, 0x23, 0x1b, 0xff},
	faint:   color.RGBA{0x6b, 0x5d, 0x4c, 0xff},
	rule:    color.RGBA{0xc9, 0xbc, 0xa6, 0xff},
	edge:    color.RGBA{0x8c, 0x7f, 0x69, 0xff},
	vat:     color.RGBA{0x27, 0x3a, 0x6b, 0xff},
	onVat:   color.RGBA{0xff, 0xfc, 0xf5, 0xff},
	hand:    color.RGBA{0xb0, 0x78, 0x20, 0xff},
	fault:   color.RGBA{0xa1, 0x2e, 0x1c, 0xff},
	warning: color.RGBA{0x8a, 0x55, 0x1c, 0xff},
	shield:  color.RGBA{0xfd, 0xf9, 0xf0, 0xff},
	outline: color.RGBA{0x2b, 0x23, 0x1b, 0xff},
	strip:   color.RGBA{0xf6, 0xf1, 0xe6, 0xff},
	rim:     color.RGBA{0xd3, 0xc7, 0xb2, 0xff},

	tannin: color.RGBA{0x93, 0x65, 0x3a, 0xff},
	light:  color.RGBA{0xfb, 0xf3, 0xdd, 0xff},
	white:  color.RGBA{0xff, 0xfe, 0xfb, 0xff},
	undyed: color.RGBA{0xf6, 0xf2, 0xe6, 0xff},
	wood:   color.RGBA{0xd3, 0xbd, 0x98, 0xff},

	soot:     color.RGBA{0x1c, 0x16, 0x11, 0xff},
	indigo:   color.RGBA{0x1f, 0x3d, 0x8f, 0xff},
	madder:   color.RGBA{0x86, 0x19, 0x0c, 0xff},
	ochre:    color.RGBA{0xe2, 0xa2, 0x3a, 0xff},
	cellLine: color.RGBA{0x1a, 0x1a, 0x22, 0xff},
	onPaper:  color.RGBA{0xff, 0xf6, 0xe2, 0xff},
	onCloth:  color.RGBA{0xe8, 0xb4, 0x5a, 0xff},
	quiet:    color.RGBA{0x92, 0xbc, 0xda, 0xff},
	grid:     color.RGBA{0xa9, 0x7d, 0x52, 0xff},

	methods: map[bench.Method]color.RGBA{
		bench.Kiribori:  {0x27, 0x3a, 0x6b, 0xff},
		bench.Dogubori:  {0xb0, 0x4a, 0x22, 0xff},
		bench.Tsukibori: {0x1c, 0x7a, 0x68, 0xff},
		bench.Hikibori:  {0x7c, 0x3a, 0x78, 0xff},
		bench.Shimabori: {0x8a, 0x6a, 0x08, 0xff},
	},
}

// byLamp is the workshop at night: smoked paper and the vat, and one lamp over the
// work.
var byLamp = palette{
	table:   color.RGBA{0x0f, 0x13, 0x1e, 0xff},
	card:    color.RGBA{0x1a, 0x20, 0x30, 0xff},
	field:   color.RGBA{0x24, 0x2c, 0x40, 0xff},
	button:  color.RGBA{0x2e, 0x37, 0x50, 0xff},
	idle:    color.RGBA{0x21, 0x28, 0x39, 0xff},
	ink:     color.RGBA{0xee, 0xe4, 0xd0, 0xff},
	faint:   color.RGBA{0xb5, 0xa8, 0x92, 0xff},
	rule:    color.RGBA{0x3b, 0x44, 0x5c, 0xff},
	edge:    color.RGBA{0x7c, 0x84, 0x99, 0xff},
	vat:     color.RGBA{0x9f, 0xb8, 0xea, 0xff},
	onVat:   color.RGBA{0x10, 0x18, 0x28, 0xff},
	hand:    color.RGBA{0x8c, 0x5e, 0x24, 0xff},
	fault:   color.RGBA{0xff, 0x9a, 0x80, 0xff},
	warning: color.RGBA{0xe8, 0xb4, 0x5a, 0xff},
	shield:  color.RGBA{0x16, 0x1c, 0x2b, 0xff},
	outline: color.RGBA{0x75, 0x69, 0x5a, 0xff},
	strip:   color.RGBA{0x15, 0x1b, 0x29, 0xff},
	rim:     color.RGBA{0x3b, 0x44, 0x5c, 0xff},

	tannin: color.RGBA{0x8a, 0x5f, 0x37, 0xff},
	light:  color.RGBA{0xee, 0xe0, 0xbf, 0xff},
	white:  color.RGBA{0xe9, 0xe4, 0xd8, 0xff},
	undyed: color.RGBA{0xe4, 0xdd, 0xcb, 0xff},
	wood:   color.RGBA{0xa8, 0x92, 0x70, 0xff},

	soot:     color.RGBA{0x17, 0x12, 0x0d, 0xff},
	indigo:   color.RGBA{0x1d, 0x3a, 0x86, 0xff},
	madder:   color.RGBA{0x7e, 0x17, 0x0b, 0xff},
	ochre:    color.RGBA{0xe2, 0xa2, 0x3a, 0xff},
	cellLine: color.RGBA{0x16, 0x16, 0x1d, 0xff},
	onPaper:  color.RGBA{0xff, 0xf6, 0xe2, 0xff},
	onCloth:  color.RGBA{0xe8, 0xb4, 0x5a, 0xff},
	quiet:    color.RGBA{0x92, 0xbc, 0xda, 0xff},
	grid:     color.RGBA{0x9d, 0x72, 0x49, 0xff},

	methods: map[bench.Method]color.RGBA{
		bench.Kiribori:  {0x27, 0x3a, 0x6b, 0xff},
		bench.Dogubori:  {0xa2, 0x40, 0x1a, 0xff},
		bench.Tsukibori: {0x17, 0x6c, 0x5c, 0xff},
		bench.Hikibori:  {0x72, 0x32, 0x6e, 0xff},
		bench.Shimabori: {0x7c, 0x5e, 0x06, 0xff},
	},
}

// inUse is the palette that the windows of the program wear; nil for byDay. Pictures
// in the background are painted in it too.
var inUse atomic.Pointer[palette]

// worn is the palette that the windows wear now. Every colour that is shown is asked
// of it.
func worn() *palette {
	if p := inUse.Load(); p != nil {
		return p
	}
	return &byDay
}

// tone is the colour of words that goes with a severity's shape and word.
func (p *palette) tone(s check.Severity) color.RGBA {
	switch s {
	case check.Fault:
		return p.fault
	case check.Warning:
		return p.warning
	}
	return p.faint
}

// frame is what the surface's own parts wear: rulers, loupe, inset.
func (p *palette) frame() board.Look {
	return board.Look{Paper: p.strip, Ink: p.faint, Rim: p.rim}
}

// casing edges the marks on what is real.
func (p *palette) casing() board.Casing { return board.Casing{Pale: p.onPaper, Dark: p.soot} }

// dyed is the colour of the dyed cloth.
func dyed(c document.Colour) color.RGBA { return color.RGBA{c.R, c.G, c.B, 0xff} }

// seeThrough is a colour through which its ground is seen; alpha of 255 hides it.
func seeThrough(c color.RGBA, alpha uint8) color.NRGBA { return color.NRGBA{c.R, c.G, c.B, alpha} }
