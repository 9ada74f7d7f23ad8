package pdf

import "slices"

// upper holds the letters 128 to 159 of the Windows encoding of the Latin
// alphabet (ISO 32000-1, annex D.2); a space where there is none. From 160 on it
// is that of ISO 8859-1.
var upper = []rune("€ ‚ƒ„…†‡ˆ‰Š‹Œ Ž  ‘’“”•–—˜™š›œ žŸ")

// winAnsi returns the letter of a code, zero where there is none.
func winAnsi(code byte) rune {
	switch {
	case code < ' ' || code == 127:
		return 0
	case code < 128 || code >= 160:
		return rune(code)
	case upper[code-128] == ' ':
		return 0
	}
	return upper[code-128]
}

// encode returns the codes of a text, a question mark where there is none, and
// whether all have one.
func encode(text string) (codes []byte, whole bool) {
	whole = true
	for _, r := range text {
		code, ok := codeOf(r)
		codes = append(codes, code)
		whole = whole && ok
	}
	return codes, whole
}

func codeOf(r rune) (byte, bool) {
	if r >= ' ' && r < 127 || r >= 160 && r <= 255 {
		return byte(r), true
	}
	if i := slices.Index(upper, r); i >= 0 {
		return byte(128 + i), true
	}
	return '?', false
}
