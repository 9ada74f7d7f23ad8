package document

import (
	"fmt"
	"strings"
	"unicode"
	"unicode/utf8"
)

// A Fault is what is wrong with an order, and where: the path of the value from
// the order's top ("unit.motifs[3].disc.diameter_mm") and, where it was read
// from a file, its line and column, both from 1.
type Fault struct {
	Line, Column int // zero where there is no file
	Path         string
	Text         string // what is wrong and what to do
}

// Error puts place and text on one line.
func (f *Fault) Error() string {
	var b strings.Builder
	if f.Line > 0 {
		fmt.Fprintf(&b, "line %d, column %d: ", f.Line, f.Column)
	}
	if f.Path != "" {
		b.WriteString(f.Path)
		b.WriteString(": ")
	}
	b.WriteString(f.Text)
	return oneLine(b.String())
}

// maxMessage keeps what a broken file holds from filling the terminal.
const maxMessage = 400

// oneLine replaces what would break a line or steer a terminal, and cuts what is
// too long.
func oneLine(s string) string {
	s = strings.Map(func(r rune) rune {
		if unicode.IsControl(r) {
			return '\ufffd'
		}
		return r
	}, s)
	if utf8.RuneCountInString(s) <= maxMessage {
		return s
	}
	runes := []rune(s)
	return string(runes[:maxMessage/2]) + " … " + string(runes[len(runes)-maxMessage/2:])
}

// faultf returns the fault at path.
func faultf(path, format string, args ...any) *Fault {
	return &Fault{Path: path, Text: fmt.Sprintf(format, args...)}
}
