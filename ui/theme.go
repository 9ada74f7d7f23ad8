package ui

import (
	"image/color"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/theme"
)

// Theme is how Fyne's own parts look in the window: the colours that are worn, the
// type and the sizes of the workshop.
type Theme struct{ wears *palette }

// palette is what the theme wears; the zero Theme is the workshop by day.
func (t Theme) palette() *palette {
	if t.wears == nil {
		return &byDay
	}
	return t.wears
}

// Color returns the workshop's colour for a name of Fyne's, whatever variant Fyne
// asks for: the window follows the system by wearing another palette.
func (t Theme) Color(name fyne.ThemeColorName, _ fyne.ThemeVariant) color.Color {
	p := t.palette()
	switch name {
	case theme.ColorNameBackground, theme.ColorNameMenuBackground, theme.ColorNameOverlayBackground, theme.ColorNameHeaderBackground:
		return p.card
	case theme.ColorNameInputBackground:
		return p.field
	case theme.ColorNameButton:
		return p.button
	case theme.ColorNameForeground:
		return p.ink
	case theme.ColorNamePrimary, theme.ColorNameHyperlink, theme.ColorNameSuccess:
		return p.vat
	case theme.ColorNameForegroundOnPrimary, theme.ColorNameForegroundOnError, theme.ColorNameForegroundOnWarning, theme.ColorNameForegroundOnSuccess:
		return p.onVat
	case theme.ColorNamePlaceHolder, theme.ColorNameDisabled:
		return p.faint
	case theme.ColorNameDisabledButton:
		return p.idle
	case theme.ColorNameSeparator:
		return p.rule
	case theme.ColorNameInputBorder, theme.ColorNameScrollBar:
		return p.edge
	case theme.ColorNameFocus:
		return seeThrough(p.hand, handShare)
	case theme.ColorNameSelection:
		return seeThrough(p.vat, 0x38)
	case theme.ColorNameHover:
		return seeThrough(p.ink, 0x14)
	case theme.ColorNamePressed:
		return seeThrough(p.ink, 0x28)
	case theme.ColorNameError:
		return p.fault
	case theme.ColorNameWarning:
		return p.warning
	}
	return theme.DefaultTheme().Color(name, p.variant())
}

// handShare is how much of the colour of what has the keys lies over it, of 255: words
// on it stay readable.
const handShare = 0xa0

// variant is which of Fyne's own two looks goes with a palette, for the colours that
// the workshop has none for: shadows.
func (p *palette) variant() fyne.ThemeVariant {
	if p == &byLamp {
		return theme.VariantDark
	}
	return theme.VariantLight
}

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
