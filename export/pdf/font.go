package pdf

import (
	"math"
	"strconv"
	"strings"

	"tsugime/export"
	"tsugime/repeat/geom"
)

// fonts writes the two that carry the words to be found: standard fonts, which
// need no file since nothing of them is painted, with the widths of the lettering
// that is, so that what a reader marks lies over what is seen. Their other
// measures are those of the standard fonts, from memory.
func (s *shelf) fonts() {
	s.fontObject(s.font, "Helvetica", false)
	s.fontObject(s.heavy, "Helvetica-Bold", true)
}

func (s *shelf) fontObject(o object, name string, bold bool) {
	descriptor := s.f.reserve()
	var widths strings.Builder
	for code := ' '; code <= 255; code++ {
		w := 0
		if r := winAnsi(byte(code)); r != 0 {
			// At an em of a metre a width is its thousandths in millimetres.
			w = int(math.Round(export.TextWidth(string(r), geom.Metre, bold).MM()))
		}
		widths.WriteString(strconv.Itoa(w) + " ")
	}
	s.f.put(o, "<< /Type /Font /Subtype /Type1 /BaseFont /%s /Encoding /WinAnsiEncoding /FirstChar 32 /LastChar 255 /Widths [%s] /FontDescriptor %v >>",
		name, &widths, descriptor)
	s.f.put(descriptor, "<< /Type /FontDescriptor /FontName /%s /Flags 32 /FontBBox [-170 -228 1003 962] /ItalicAngle 0 /Ascent 718 /Descent -207 /CapHeight 718 /StemV 88 >>", name)
}

// texts draws lettering and sets the same words over it, unseen.
func (c *content) texts(l export.Layer) {
	if len(l.Texts) == 0 {
		return
	}
	c.colour(l.Pen.Colour, "rg")
	for _, t := range l.Texts {
		outline := export.Lettering(t)
		if len(outline) == 0 {
			continue
		}
		c.outline(outline)
		c.end("f")
		c.words(t)
	}
}

// words sets t in render mode 3, which paints nothing. Letters beyond the font's
// encoding are given as the text that the run stands for (14.9.4).
func (c *content) words(t export.Text) {
	codes, whole := encode(t.Text)
	if !whole {
		c.op("/Span << /ActualText").op(utf16String(t.Text)).end(">> BDC")
	}
	font := "/F0"
	if t.Bold {
		font = "/F1"
	}
	c.op("BT").op(font).mm(t.Height).op("Tf 3 Tr")
	// The letters stand up against a y that points down.
	m := geom.Rotate(t.TurnDeg)
	c.real(m.A).real(m.C).real(-m.B).real(-m.D).at(t.Begin()).op("Tm")
	c.op(literal(codes)).end("Tj ET")
	if !whole {
		c.end("EMC")
	}
}
