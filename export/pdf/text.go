package pdf

import (
	"fmt"
	"strconv"
	"strings"
	"unicode/utf16"

	"tsugime/repeat/geom"
)

// pointsPerMM is 72/25.4 to nine decimals: over 5 m off by less than a
// nanometre.
const pointsPerMM = "2.834645669"

// points writes a length in points to a hundred-thousandth, 3.5 nm.
func points(l geom.Length) string {
	s := strconv.FormatFloat(float64(l)*72/float64(geom.Inch), 'f', 5, 64)
	return strings.TrimRight(strings.TrimRight(s, "0"), ".")
}

// textString writes a title or a name (7.9.2.2): plain ASCII as it is, the rest
// as UTF-16 with its mark.
func textString(s string) string {
	for _, r := range s {
		if r < ' ' || r > '~' {
			return utf16String(s)
		}
	}
	return literal([]byte(s))
}

func utf16String(s string) string {
	var b strings.Builder
	b.WriteString("<FEFF")
	for _, u := range utf16.Encode([]rune(s)) {
		fmt.Fprintf(&b, "%04X", u)
	}
	b.WriteString(">")
	return b.String()
}

// literal writes bytes as a literal string (7.3.4.2).
func literal(s []byte) string {
	var b strings.Builder
	b.WriteByte('(')
	for _, c := range s {
		switch {
		case c == '(' || c == ')' || c == '\\':
			b.WriteByte('\\')
			b.WriteByte(c)
		case c < ' ' || c > '~':
			fmt.Fprintf(&b, "\\%03o", c)
		default:
			b.WriteByte(c)
		}
	}
	b.WriteByte(')')
	return b.String()
}
