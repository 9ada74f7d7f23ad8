package report

import (
	"slices"
	"strings"
	"unicode"
	"unicode/utf8"
)

// A piece is as much of a text as stays on one line.
type piece struct {
	text   string
	spaced bool // a space parts it from the piece before, where both are on a line
}

// behind returns a line with the piece set behind it.
func (p piece) behind(line string) string {
	if p.spaced && line != "" {
		return line + " " + p.text
	}
	return line + p.text
}

// pieces parts a text where a line may end: at spaces, but not between a figure
// and its unit; and beside any Japanese letter, but not before a sign that ends
// something or behind one that begins something (the common rule of Japanese
// typesetting, JIS X 4051), nor between a figure and what it counts.
func pieces(text string) []piece {
	var all []piece
	for i, word := range strings.FieldsFunc(text, breaks) {
		first := true
		for word != "" {
			n := pieceLength(word)
			p := piece{word[:n], i > 0 && first}
			if last := len(all) - 1; p.spaced && sticks(all[last].text, p.text) {
				all[last].text += " " + p.text
			} else {
				all = append(all, p)
			}
			word, first = word[n:], false
		}
	}
	return all
}

// pieceLength returns how many bytes of a word stay together at its beginning.
func pieceLength(word string) int {
	a, n := utf8.DecodeRuneInString(word)
	for _, unit := range unitWords {
		if strings.HasPrefix(word, unit) {
			a, n = utf8.RuneError, max(n, len(unit))
		}
	}
	for n < len(word) {
		b, size := utf8.DecodeRuneInString(word[n:])
		if mayPart(a, b) {
			return n
		}
		a, n = b, n+size
	}
	return n
}

// Signs that no line begins with, and those that no line ends with.
const (
	closing = "、。，．・：；？！）」』】〕ー々…,.:;?!)%ぁぃぅぇぉっゃゅょァィゥェォッャュョ"
	opening = "（「『【〔("
)

func mayPart(a, b rune) bool {
	if !eastern(a) && !eastern(b) || strings.ContainsRune(closing, b) || strings.ContainsRune(opening, a) {
		return false
	}
	return !unicode.IsDigit(a) || !unicode.Is(unicode.Han, b)
}

// eastern reports whether r is a Japanese letter or sign.
func eastern(r rune) bool {
	return unicode.In(r, unicode.Han, unicode.Hiragana, unicode.Katakana) || r >= 0x3000 && r <= 0x303f || r >= 0xff00 && r <= 0xffef
}

// unitWords begin what follows a figure on the same line.
var unitWords = []string{"mm", "cm", "m", "kane", "kujira", "曲尺寸", "曲尺分", "鯨尺寸", "鯨尺分"}

// sticks reports whether a figure and its unit would be parted between a and b.
func sticks(a, b string) bool {
	last, _ := utf8.DecodeLastRuneInString(a)
	if !unicode.IsDigit(last) {
		return false
	}
	return strings.HasPrefix(b, "%") || slices.ContainsFunc(unitWords, func(unit string) bool {
		rest, ok := strings.CutPrefix(b, unit)
		next, _ := utf8.DecodeRuneInString(rest)
		return ok && (rest == "" || !unicode.IsLetter(next) || eastern(next))
	})
}

// breaks reports whether a line may end at r: at a space that is not a no-break
// space (U+00A0).
func breaks(r rune) bool { return unicode.IsSpace(r) && r != '\u00a0' }
