package dxf

import (
	"fmt"
	"strings"

	"tsugime/export"
)

// capital is the height of a capital as a part of the em: what a TEXT calls its
// height. The built-in fonts have 1480 of 2048 (measured in the tests).
const capital = 0.72

// lettering writes a TEXT: it stays a word that a reader can find, change or
// leave out of the cut, and is small where outlines would be thousands of
// corners. Its letters are the reader's own; place, height, turn and anchor are
// ours.
func (f *file) lettering(layer string, t export.Text) {
	if t.Text == "" {
		return
	}
	f.entity("TEXT", layer)
	f.text(100, "AcDbText")
	f.at(10, t.Begin())
	f.int(30, 0)
	f.mm(40, t.Height.Times(capital))
	f.text(1, escaped(t.Text))
	if t.TurnDeg != 0 {
		f.real(50, -t.TurnDeg)
	}
	f.text(7, styleName)
	if t.Anchor != export.Start {
		// 1 is the middle, 2 the right end; the second point is the one meant.
		f.int(72, int(t.Anchor))
		f.at(11, t.At)
		f.int(31, 0)
	}
	f.text(100, "AcDbText")
}

// escaped writes a line of text in ASCII. A letter beyond it is \U+ and four
// hexadecimal digits; one beyond those, or a control character, is the empty
// square. A doubled percent sign would be a command, so it is set apart; a caret is one
// unless a space follows.
func escaped(s string) string {
	var b strings.Builder
	for _, r := range strings.ReplaceAll(s, "%%", "% %") {
		switch {
		case r == '^':
			b.WriteString("^ ")
		case r >= ' ' && r < 0x7f:
			b.WriteRune(r)
		case r < ' ' || r == 0x7f || r > 0xffff:
			b.WriteString(`\U+25A1`)
		default:
			fmt.Fprintf(&b, `\U+%04X`, r)
		}
	}
	return b.String()
}
