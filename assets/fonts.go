package assets

import (
	_ "embed"
	"slices"
)

//go:embed fonts/mplus-1p-japanese.ttf
var japaneseType []byte

// JapaneseType returns a TrueType font with the kana, all kanji of JIS X 0208
// level 1, and half of those of level 2 (M+ 1p; fonts/LICENCE.txt). It has no
// Latin letters: those are set in the sheets' own face.
func JapaneseType() []byte { return slices.Clone(japaneseType) }
