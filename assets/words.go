package assets

import (
	_ "embed"
	"slices"
)

//go:embed words/ja.json
var japaneseWords []byte

// JapaneseWords returns a JSON object: English sentences as the program has them,
// and what they are in Japanese. A sentence with places, %s and the like, has them
// numbered in Japanese, %[1]s, since they may stand in another order.
func JapaneseWords() []byte { return slices.Clone(japaneseWords) }
