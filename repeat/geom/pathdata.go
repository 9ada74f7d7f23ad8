package geom

import (
	"fmt"
	"math"
)

// ParsePathData reads an outline from SVG path data (SVG 1.1, section 8.3) in
// millimetres. All commands are understood. Circular arcs stay arcs; elliptical
// ones become cubics. Each subpath is closed. What is drawn must lie within
// ±10 m and have at most 200,000 pieces.
func ParsePathData(data string) (Outline, error) {
	o := pathOutline{}
	p := pathReader{rest: data, pen: &o, reach: pathReach, radius: maxRadius, unit: " mm", fault: func() error { return o.err }}
	if err := p.read(o.end); err != nil {
		return nil, err
	}
	if len(o.out) == 0 {
		return nil, fmt.Errorf("path data draws nothing; it needs at least a move and a line, like M0 0H1V1Z")
	}
	return o.out, nil
}

// A Pen is moved as path data says, in the data's own unit; coordinates are
// absolute. It starts where Move takes it; after Close it stands where its line
// began.
type Pen interface {
	Move(x, y float64)
	Line(x, y float64)
	Cubic(x1, y1, x2, y2, x, y float64)
	// Arc goes along an ellipse with the radii rx and ry, whose first axis is
	// turned by degrees (SVG 1.1, section 8.3.8).
	Arc(rx, ry, degrees float64, large, sweep bool, x, y float64)
	Close()
}

// DrawPathData moves a pen as SVG path data says (SVG 1.1, section 8.3). No
// coordinate may be farther than reach from the origin. Quadratic curves come as
// the cubics that they are.
func DrawPathData(data string, reach float64, pen Pen) error {
	p := pathReader{rest: data, pen: pen, reach: reach, radius: reach, fault: func() error { return nil }}
	return p.read(func() {})
}

type pathReader struct {
	rest   string
	pen    Pen
	reach  float64 // the largest coordinate
	radius float64 // the largest radius of an arc
	unit   string  // of the numbers, with a space before
	fault  func() error
	err    error
	x, y   float64 // the present place
	sx, sy float64 // where the subpath began
	cx, cy float64 // last control, for the smooth commands
	last   byte    // the command before
	was    bool    // any command was read
}

// read reads all of it and calls done at its end.
func (p *pathReader) read(done func()) error {
	all := len(p.rest)
	for {
		command, ok := p.command()
		if !ok {
			break
		}
		if err := p.run(command); err != nil {
			return fmt.Errorf("path data at character %d: %w", all-len(p.rest)+1, err)
		}
	}
	if done(); p.err == nil {
		p.err = p.fault()
	}
	if p.err != nil {
		return fmt.Errorf("path data at character %d: %w", all-len(p.rest)+1, p.err)
	}
	return nil
}

// command returns the next command letter, or the repeated one before numbers.
func (p *pathReader) command() (byte, bool) {
	p.skip()
	if p.err == nil {
		p.err = p.fault()
	}
	if p.rest == "" || p.err != nil {
		return 0, false
	}
	c := p.rest[0]
	switch c {
	case 'M', 'm', 'L', 'l', 'H', 'h', 'V', 'v', 'C', 'c', 'S', 's', 'Q', 'q', 'T', 't', 'A', 'a', 'Z', 'z':
		if !p.was && c != 'M' && c != 'm' {
			p.err = fmt.Errorf("it must begin with M")
			return 0, false
		}
		p.rest = p.rest[1:]
		p.was = true
		return c, true
	}
	if !p.was || p.last == 'Z' || p.last == 'z' || numberLength(p.rest) == 0 {
		p.err = fmt.Errorf("%q is no command of path data", c)
		return 0, false
	}
	switch p.last {
	case 'M':
		return 'L', true
	case 'm':
		return 'l', true
	}
	return p.last, true
}

func (p *pathReader) run(command byte) error {
	relative := command >= 'a'
	upper := command &^ 0x20
	smooth := p.last &^ 0x20
	p.last = command
	if upper == 'Z' {
		p.pen.Close()
		p.x, p.y = p.sx, p.sy
		return nil
	}
	if upper == 'A' {
		return p.arc(relative)
	}
	want := map[byte]int{'M': 2, 'L': 2, 'H': 1, 'V': 1, 'C': 6, 'S': 4, 'Q': 4, 'T': 2}[upper]
	// V's single number is an ordinate, which numbers would take for an abscissa.
	v, err := p.numbers(want, relative && upper != 'V')
	if err != nil {
		return err
	}
	x, y := p.x, p.y
	switch upper {
	case 'M':
		p.x, p.y, p.sx, p.sy = v[0], v[1], v[0], v[1]
		p.pen.Move(v[0], v[1])
	case 'L':
		p.line(v[0], v[1])
	case 'H':
		p.line(v[0], y)
	case 'V':
		if relative {
			v[0] += y
		}
		p.line(x, v[0])
	case 'C':
		p.cubic(v[0], v[1], v[2], v[3], v[4], v[5])
	case 'S':
		c1x, c1y := x, y
		if smooth == 'C' || smooth == 'S' {
			c1x, c1y = 2*x-p.cx, 2*y-p.cy
		}
		p.cubic(c1x, c1y, v[0], v[1], v[2], v[3])
	case 'Q':
		p.quadratic(v[0], v[1], v[2], v[3])
	case 'T':
		qx, qy := x, y
		if smooth == 'Q' || smooth == 'T' {
			qx, qy = 2*x-p.cx, 2*y-p.cy
		}
		p.quadratic(qx, qy, v[0], v[1])
	}
	return nil
}

func (p *pathReader) line(x, y float64) {
	p.x, p.y = x, y
	p.pen.Line(x, y)
}

func (p *pathReader) cubic(x1, y1, x2, y2, x, y float64) {
	p.cx, p.cy, p.x, p.y = x2, y2, x, y
	p.pen.Cubic(x1, y1, x2, y2, x, y)
}

func (p *pathReader) quadratic(qx, qy, x, y float64) {
	x0, y0 := p.x, p.y
	p.cubic(x0+(qx-x0)*2/3, y0+(qy-y0)*2/3, x+(qx-x)*2/3, y+(qy-y)*2/3, x, y)
	p.cx, p.cy = qx, qy
}

// arc reads one elliptical arc.
func (p *pathReader) arc(relative bool) error {
	var in [3]float64
	for i := range in {
		v, err := p.numberWithin(p.radius)
		if err != nil {
			return err
		}
		in[i] = v
	}
	large, err := p.flag()
	if err != nil {
		return err
	}
	sweep, err := p.flag()
	if err != nil {
		return err
	}
	end, err := p.numbers(2, relative)
	if err != nil {
		return err
	}
	p.x, p.y = end[0], end[1]
	p.pen.Arc(math.Abs(in[0]), math.Abs(in[1]), in[2], large, sweep, end[0], end[1])
	return nil
}
