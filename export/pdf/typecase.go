package pdf

import (
	"fmt"
	"io"
	"strings"
	"unicode/utf16"

	"tsugime/export"
	"tsugime/repeat/geom"
)

// A typeCase holds the letters of one face that a book uses, numbered in the order
// in which they are first set: the only ones that are embedded.
type typeCase struct {
	face    export.Face
	file    *file
	object  object // zero while nothing was set
	glyphs  []uint16
	letters []rune // what each glyph says
	number  map[uint16]int
}

// cases returns an empty case for every face.
func cases(f *file) []*typeCase {
	var all []*typeCase
	for _, face := range export.Faces() {
		all = append(all, &typeCase{face: face, file: f, number: map[uint16]int{}})
	}
	return all
}

// set returns the codes of letters, two bytes each; glyph 0 stands for none.
func (c *typeCase) set(glyphs []uint16, letters []rune) string {
	if c.object == 0 {
		c.object = c.file.reserve()
	}
	var codes strings.Builder
	codes.WriteByte('<')
	for i, g := range glyphs {
		if _, ok := c.number[g]; !ok {
			r := letters[i]
			if r == '\u00a0' { // it has the glyph of a space
				r = ' '
			}
			c.glyphs, c.letters = append(c.glyphs, g), append(c.letters, r)
			c.number[g] = len(c.glyphs)
		}
		fmt.Fprintf(&codes, "%04X", c.number[g])
	}
	codes.WriteByte('>')
	return codes.String()
}

// names are the names of the faces in a file; six letters before a plus sign mark
// a part of a font (ISO 32000-1, 9.6.4).
var names = map[export.Face]string{
	export.Plain: "TSUGIM+Go-Regular", export.Bold: "TSUGIM+Go-Bold", export.Japanese: "TSUGIM+Mplus1p-Regular",
}

// fonts writes the faces with the letters that were set (9.7.4), when all pages
// are written.
func (s *shelf) fonts() {
	for _, c := range s.cases {
		if c.object != 0 {
			s.font(c)
		}
	}
}

func (s *shelf) font(c *typeCase) {
	name := names[c.face]
	heir, about, program, says := s.f.reserve(), s.f.reserve(), s.f.reserve(), s.f.reserve()
	s.f.put(c.object, "<< /Type /Font /Subtype /Type0 /BaseFont /%s /Encoding /Identity-H /DescendantFonts [%v] /ToUnicode %v >>", name, heir, says)
	s.f.put(heir, "<< /Type /Font /Subtype /CIDFontType2 /BaseFont /%s /CIDSystemInfo << /Registry (Adobe) /Ordering (Identity) /Supplement 0 >> "+
		"/CIDToGIDMap /Identity /DW 0 /W [1 [%s]] /FontDescriptor %v >>", name, c.widths(), about)
	// Ascent and the like serve a reader that lacks the font; ours is there.
	s.f.put(about, "<< /Type /FontDescriptor /FontName /%s /Flags 4 /FontBBox [-200 -320 1200 1075] /ItalicAngle 0 /Ascent 880 /Descent -120 /CapHeight 720 /StemV 80 /FontFile2 %v >>", name, program)
	ttf := c.face.Subset(c.glyphs)
	s.f.stream(program, fmt.Sprintf("/Length1 %d ", len(ttf)), func(w io.Writer) { w.Write(ttf) })
	s.f.stream(says, "", func(w io.Writer) { io.WriteString(w, c.unicode()) })
}

// widths lists the widths in thousandths of the em, to the ten thousandth of one:
// over a line they add up to what the lettering has.
func (c *typeCase) widths() string {
	words := make([]string, len(c.glyphs))
	for i, g := range c.glyphs {
		// At an em of a metre a width is its thousandths in millimetres.
		words[i] = string(c.face.Advance(g, geom.Metre).AppendMM(nil, 4))
	}
	return strings.Join(words, " ")
}

// unicode writes what the letters say, at most a hundred to a block (9.10.3).
func (c *typeCase) unicode() string {
	var b strings.Builder
	b.WriteString("/CIDInit /ProcSet findresource begin\n12 dict begin\nbegincmap\n" +
		"/CIDSystemInfo << /Registry (Adobe) /Ordering (UCS) /Supplement 0 >> def\n/CMapName /Adobe-Identity-UCS def\n/CMapType 2 def\n" +
		"1 begincodespacerange\n<0000> <FFFF>\nendcodespacerange\n")
	for from := 0; from < len(c.letters); from += 100 {
		block := c.letters[from:min(from+100, len(c.letters))]
		fmt.Fprintf(&b, "%d beginbfchar\n", len(block))
		for i, r := range block {
			fmt.Fprintf(&b, "<%04X> <", from+i+1)
			for _, u := range utf16.Encode([]rune{r}) {
				fmt.Fprintf(&b, "%04X", u)
			}
			b.WriteString(">\n")
		}
		b.WriteString("endbfchar\n")
	}
	b.WriteString("endcmap\nCMapName currentdict /CMap defineresource pop\nend\nend\n")
	return b.String()
}
