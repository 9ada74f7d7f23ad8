package document

import (
	"fmt"
	"strings"
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
	return b.String()
}

// faultf returns the fault at path.
func faultf(path, format string, args ...any) *Fault {
	return &Fault{Path: path, Text: fmt.Sprintf(format, args...)}
}
