package ui

import (
	"sync"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/theme"

	"tsugime/assets"
)

// japaneseType is the type that comes with the program, so that Japanese is shown
// whatever fonts the system has.
var japaneseType = sync.OnceValue(func() fyne.Resource {
	return fyne.NewStaticResource("mplus-1p-japanese.ttf", assets.JapaneseType())
})

// Font returns the type that comes with the program, which has no Latin letters nor
// signs that the Latin face has: those Fyne takes from its own face of the style. Its
// lines are as high as that face's. It has a space, since Fyne takes a space from the
// face of the letter before. It stands first in every language, since names may be
// Japanese in any.
func (Theme) Font(s fyne.TextStyle) fyne.Resource {
	if s.Monospace || s.Symbol {
		return theme.DefaultTheme().Font(s)
	}
	return japaneseType()
}
