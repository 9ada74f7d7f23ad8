package ui

import (
	"image/color"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/theme"

	"tsugime/repeat/check"
	"tsugime/repeat/document"
)

// The colours of the workshop: tannin paper and what lies around it. Text on
// every ground keeps 4.5 to 1 (WCAG 2.2, 1.4.3), measured in theme_test.go.
var (
	table    = color.RGBA{0xe9, 0xe1, 0xd2, 0xff} // the bench, under everything
	card     = color.RGBA{0xf8, 0xf3, 0xe8, 0xff} // the panels at both sides
	field    = color.RGBA{0xff, 0xfc, 0xf5, 0xff} // what can be written in
	ink      = color.RGBA{0x2b, 0x23, 0x1b, 0xff} // words
	faint    = color.RGBA{0x6b, 0x5d, 0x4c, 0xff} // words that explain
	rule     = color.RGBA{0xc9, 0xbc, 0xa6, 0xff} // lines between things
	indigo   = color.RGBA{0x27, 0x3a, 0x6b, 0xff} // what is chosen
	tannin   = color.RGBA{0x9a, 0x6b, 0x3f, 0xff} // the paper of a sheet
	white    = color.RGBA{0xff, 0xfe, 0xfb, 0xff} // a sheet from the printer
	undyed   = color.RGBA{0xf6, 0xf2, 0xe6, 0xff} // cloth where the paste lay
	faultRed = color.RGBA{0xa1, 0x2e, 0x1c, 0xff}
	light    = color.RGBA{0xfb, 0xf3, 0xdd, 0xff} // what shines through a hole
	cellLine = color.RGBA{0x1d, 0x2d, 0x57, 0xff} // the edge of the unit
	onPaper  = color.RGBA{0xff, 0xf6, 0xe2, 0xff} // marks on tannin paper
	onCloth  = color.RGBA{0xe8, 0xb4, 0x5a, 0xff} // marks on dyed cloth
	quiet    = color.RGBA{0xb5, 0x92, 0x59, 0xff} // joint lines on dyed cloth
	shield   = color.RGBA{0xfd, 0xf9, 0xf0, 0xff} // behind words on a picture
)

// dyed is the colour of the dyed cloth.
func dyed(c document.Colour) color.RGBA { return color.RGBA{c.R, c.G, c.B, 0xff} }

// tone is the colour that goes with a severity's shape and word.
func tone(s check.Severity) color.RGBA {
	switch s {
	case check.Fault:
		return faultRed
	case check.Warning:
		return color.RGBA{0x8a, 0x55, 0x1c, 0xff}
	}
	return faint
}

// Theme is the look of the window.
type Theme struct{}

// Color returns the workshop's colour for a name of Fyne's.
func (Theme) Color(name fyne.ThemeColorName, _ fyne.ThemeVariant) color.Color {
	switch name {
	case theme.ColorNameBackground, theme.ColorNameMenuBackground, theme.ColorNameOverlayBackground, theme.ColorNameHeaderBackground:
		return card
	case theme.ColorNameInputBackground:
		return field
	case theme.ColorNameButton:
		return color.RGBA{0xee, 0xe5, 0xd3, 0xff}
	case theme.ColorNameForeground:
		return ink
	case theme.ColorNamePrimary, theme.ColorNameHyperlink:
		return indigo
	case theme.ColorNameForegroundOnPrimary:
		return field
	case theme.ColorNamePlaceHolder, theme.ColorNameDisabled:
		return faint
	case theme.ColorNameDisabledButton:
		return color.RGBA{0xf0, 0xe9, 0xdb, 0xff}
	case theme.ColorNameSeparator, theme.ColorNameInputBorder, theme.ColorNameScrollBar:
		return rule
	case theme.ColorNameFocus:
		return color.NRGBA{0x27, 0x3a, 0x6b, 0x60}
	case theme.ColorNameSelection:
		return color.NRGBA{0x27, 0x3a, 0x6b, 0x38}
	case theme.ColorNameHover:
		return color.NRGBA{0x2b, 0x23, 0x1b, 0x14}
	case theme.ColorNamePressed:
		return color.NRGBA{0x2b, 0x23, 0x1b, 0x28}
	case theme.ColorNameError:
		return faultRed
	}
	return theme.DefaultTheme().Color(name, theme.VariantLight)
}

// Icon returns Fyne's icons for its own dialogs; the stations have none.
func (Theme) Icon(n fyne.ThemeIconName) fyne.Resource { return theme.DefaultTheme().Icon(n) }

// Size returns Fyne's sizes with rounder air between things.
func (Theme) Size(n fyne.ThemeSizeName) float32 {
	switch n {
	case theme.SizeNamePadding:
		return 5
	case theme.SizeNameInputRadius, theme.SizeNameSelectionRadius:
		return 3
	case theme.SizeNameText:
		return 13.5
	case theme.SizeNameCaptionText:
		return 11.5
	}
	return theme.DefaultTheme().Size(n)
}
