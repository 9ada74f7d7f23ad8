package report

import (
	"strings"
	"unicode/utf8"

	"tsugime/export"
	"tsugime/repeat/geom"
)

// A style is how a text is set.
type style struct {
	height geom.Length
	bold   bool
}

// The styles of the sheets. Reading distance at a bench is an arm's length,
// 0.6 m; 3.5 mm letters have an x-height of about 1.8 mm, ten arc minutes there,
// twice what the eye can just read (5 arc minutes, ISO 8596).
var (
	titleStyle   = style{geom.MM(7.5), true}
	headStyle    = style{geom.MM(4.2), true}
	bodyStyle    = style{geom.MM(3.5), false}
	strongStyle  = style{geom.MM(3.5), true}
	captionStyle = style{geom.MM(2.9), false}
	numberStyle  = style{geom.MM(4.2), true}
)

// leading is the distance between baselines.
func (s style) leading() geom.Length { return s.height.Times(1.4) }

// width measures a text.
func (s style) width(text string) geom.Length { return export.TextWidth(text, s.height, s.bold) }

// wrap parts a text into lines no wider than width, where pieces lets it be parted
// and between letters where a piece is wider than the line.
func wrap(text string, s style, width geom.Length) []string {
	var lines []string
	line := ""
	for _, p := range pieces(text) {
		if joined := p.behind(line); s.width(joined) <= width {
			line = joined
			continue
		}
		if line != "" {
			lines = append(lines, line)
		}
		for line = p.text; s.width(line) > width; {
			head := headThatFits(line, s, width)
			lines, line = append(lines, head), line[len(head):]
		}
	}
	if line != "" {
		lines = append(lines, line)
	}
	return lines
}

// unbroken keeps a text on one line.
func unbroken(text string) string { return strings.ReplaceAll(text, " ", "\u00a0") }

// headThatFits returns the longest beginning of a word that is no wider than
// width, one letter at least.
func headThatFits(word string, s style, width geom.Length) string {
	_, n := utf8.DecodeRuneInString(word)
	for n < len(word) {
		_, size := utf8.DecodeRuneInString(word[n:])
		if s.width(word[:n+size]) > width {
			break
		}
		n += size
	}
	return word[:n]
}

// fit returns a text and a style that stay within width: smaller letters down to
// 70 % first, then the end cut off with an ellipsis.
func fit(text string, s style, width geom.Length) (string, style) {
	text = strings.Join(strings.Fields(text), " ")
	least := s.height.Times(0.7)
	if w := s.width(text); w > width && w > 0 {
		s.height = max(least, s.height.Times(float64(width)/float64(w)*0.999))
	}
	if s.width(text) <= width {
		return text, s
	}
	room := width - s.width("…")
	return strings.TrimSpace(headThatFits(text, s, room)) + "…", s
}
