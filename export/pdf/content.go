package pdf

import (
	"bufio"
	"io"
	"strconv"

	"tsugime/export"
	"tsugime/repeat/geom"
)

// places is the number of decimals of a millimetre: a tenth of a micrometre.
const places = 4

// A content is a stream of operators, in millimetres, y down.
type content struct {
	out   *bufio.Writer
	num   []byte
	layer map[string]int
	cases []*typeCase // by face
}

func newContent(w io.Writer, layer map[string]int, cases []*typeCase) *content {
	return &content{out: bufio.NewWriterSize(w, 1<<14), layer: layer, cases: cases}
}

func (c *content) flush() { c.out.Flush() }

// op writes an operand.
func (c *content) op(s string) *content {
	c.out.WriteString(s)
	c.out.WriteByte(' ')
	return c
}

// end writes an operator, and with it ends the line.
func (c *content) end(s string) {
	c.out.WriteString(s)
	c.out.WriteByte('\n')
}

func (c *content) mm(l geom.Length) *content {
	c.num = append(l.AppendMM(c.num[:0], places), ' ')
	c.out.Write(c.num)
	return c
}

func (c *content) at(p geom.Point) *content { return c.mm(p.X).mm(p.Y) }

// real writes a number without unit to six decimals.
func (c *content) real(v float64) *content {
	c.num = append(strconv.AppendFloat(c.num[:0], v, 'f', 6, 64), ' ')
	c.out.Write(c.num)
	return c
}

func (c *content) colour(k export.Colour, operator string) {
	for _, v := range [3]uint8{k.R, k.G, k.B} {
		c.num = append(strconv.AppendFloat(c.num[:0], float64(v)/255, 'f', 4, 64), ' ')
		c.out.Write(c.num)
	}
	c.end(operator)
}

// stretch enlarges what follows about the middle of the page.
func (c *content) stretch(p export.Page) {
	s := p.Stretch
	if s == (export.Stretch{}) {
		return
	}
	off := geom.Point{X: -(p.Drawing.Width / 2).Times(s.Across), Y: -(p.Drawing.Height / 2).Times(s.Along)}
	c.real(1 + s.Across).op("0 0").real(1 + s.Along).at(off).end("cm")
}

func (c *content) drawing(d export.Drawing) {
	for _, l := range d.Layers {
		c.out.WriteString("/OC /L")
		c.op(strconv.Itoa(c.layer[l.Name])).end("BDC")
		c.end("q")
		c.pen(l.Pen)
		paint := operator(l.Pen)
		c.discs(l.Discs, paint)
		for _, o := range l.Outlines {
			c.outline(o)
			c.end(paint)
		}
		for _, line := range l.Lines {
			c.line(line)
		}
		c.texts(l)
		c.end("Q")
		c.end("EMC")
	}
}

func (c *content) pen(p export.Pen) {
	if p.Filled {
		fill := p.Colour
		if p.Fill != nil {
			fill = *p.Fill
		}
		c.colour(fill, "rg")
	}
	if p.Stroke == 0 {
		return
	}
	c.colour(p.Colour, "RG")
	c.mm(p.Stroke).end("w")
	c.end("1 j")
	if len(p.Dash) > 0 {
		c.op("[")
		for _, dash := range p.Dash {
			c.mm(dash)
		}
		c.end("] 0 d")
	}
}

// operator paints a closed path with the pen: filled by the non-zero rule, drawn
// around, or both.
func operator(p export.Pen) string {
	switch {
	case p.Filled && p.Stroke > 0:
		return "B"
	case p.Filled:
		return "f"
	}
	return "S"
}

func (c *content) line(l export.Line) {
	if len(l.Points) == 0 {
		return
	}
	c.at(l.Points[0]).end("m")
	for _, p := range l.Points[1:] {
		c.at(p).end("l")
	}
	if l.Closed {
		c.end("s")
		return
	}
	c.end("S")
}
