package geom

import (
	"fmt"
	"math"
	"strconv"
)

// ParsePathData reads an outline from SVG path data (SVG 1.1, section 8.3) in
// millimetres. All commands are understood. Circular arcs stay arcs; elliptical
// ones become cubics. Each subpath is closed. What is drawn must lie within
// ±10 m and have at most 200,000 pieces.
func ParsePathData(data string) (Outline, error) {
	p := pathReader{rest: data}
	for {
		command, ok := p.command()
		if !ok {
			break
		}
		if err := p.run(command); err != nil {
			return nil, fmt.Errorf("path data at character %d: %w", len(data)-len(p.rest)+1, err)
		}
	}
	p.close()
	if p.err != nil {
		return nil, fmt.Errorf("path data at character %d: %w", len(data)-len(p.rest)+1, p.err)
	}
	if len(p.out) == 0 {
		return nil, fmt.Errorf("path data draws nothing; it needs at least a move and a line, like M0 0H1V1Z")
	}
	return p.out, nil
}

type pathReader struct {
	rest       string
	err        error
	out        Outline
	contour    Contour
	x, y       float64 // the present place, mm
	sx, sy     float64 // where the subpath began
	cx, cy     float64 // last control, for the smooth commands
	last       byte    // the command before
	began, was bool    // a subpath is open; any command was read
	pieces     int     // added so far
}

// Bounds of path data: the farthest coordinate in mm, and the most pieces.
const (
	pathReach  = 10_000
	pathPieces = 200_000
)

func (p *pathReader) skip() {
	for p.rest != "" {
		switch p.rest[0] {
		case ' ', '\t', '\n', '\r', ',':
			p.rest = p.rest[1:]
		default:
			return
		}
	}
}

// command returns the next command letter, or the repeated one before numbers.
func (p *pathReader) command() (byte, bool) {
	p.skip()
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

func (p *pathReader) number() (float64, error) { return p.numberWithin(pathReach) }

func (p *pathReader) numberWithin(most float64) (float64, error) {
	p.skip()
	n := numberLength(p.rest)
	if n == 0 {
		return 0, fmt.Errorf("a number is missing")
	}
	v, err := strconv.ParseFloat(p.rest[:n], 64)
	if err != nil {
		return 0, fmt.Errorf("%s is no number", p.rest[:n])
	}
	if math.Abs(v) > most {
		return 0, fmt.Errorf("%s mm is out of reach; stay within ±%.0f mm", p.rest[:n], most)
	}
	p.rest = p.rest[n:]
	return v, nil
}

// numberLength returns how many bytes at the start of s are a number of the SVG
// grammar.
func numberLength(s string) int {
	i, digits := 0, 0
	if i < len(s) && (s[i] == '+' || s[i] == '-') {
		i++
	}
	for dot := false; i < len(s) && (s[i] >= '0' && s[i] <= '9' || s[i] == '.' && !dot); i++ {
		if s[i] == '.' {
			dot = true
		} else {
			digits++
		}
	}
	if digits == 0 {
		return 0
	}
	if i < len(s) && (s[i] == 'e' || s[i] == 'E') {
		j := i + 1
		if j < len(s) && (s[j] == '+' || s[j] == '-') {
			j++
		}
		from := j
		for j < len(s) && s[j] >= '0' && s[j] <= '9' {
			j++
		}
		if j > from {
			return j
		}
	}
	return i
}

// flag reads a 0 or 1 of an arc, which may stand without a space after it.
func (p *pathReader) flag() (bool, error) {
	p.skip()
	if p.rest == "" || p.rest[0] != '0' && p.rest[0] != '1' {
		return false, fmt.Errorf("an arc's flag must be 0 or 1")
	}
	on := p.rest[0] == '1'
	p.rest = p.rest[1:]
	return on, nil
}

// numbers reads n coordinates; pairs are made absolute where relative is set.
func (p *pathReader) numbers(n int, relative bool) ([6]float64, error) {
	var v [6]float64
	for i := range n {
		x, err := p.number()
		if err != nil {
			return v, err
		}
		if relative && i%2 == 0 {
			x += p.x
		} else if relative {
			x += p.y
		}
		v[i] = x
	}
	return v, nil
}

func (p *pathReader) run(command byte) error {
	relative := command >= 'a'
	upper := command &^ 0x20
	smooth := p.last &^ 0x20
	p.last = command
	if upper == 'Z' {
		p.close()
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
		p.close()
		p.x, p.y, p.sx, p.sy = v[0], v[1], v[0], v[1]
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

func (p *pathReader) begin() {
	if !p.began {
		p.began = true
		p.contour = Contour{Start: PtMM(p.x, p.y)}
	}
}

// close ends the open subpath.
func (p *pathReader) close() {
	if p.began && len(p.contour.Segments) > 0 {
		n := len(p.contour.Segments)
		if p.contour.Segments[n-1].End != p.contour.Start {
			p.contour.Segments = append(p.contour.Segments, Segment{End: p.contour.Start})
		}
		p.out = append(p.out, p.contour)
		// An arc may bulge farther than its ends.
		p.within(Outline{p.contour}.Bounds())
	}
	p.began = false
}

// within keeps an error where b reaches too far.
func (p *pathReader) within(b Box) {
	most := BoxOf(PtMM(-pathReach, -pathReach), PtMM(pathReach, pathReach))
	if p.err == nil && !most.HoldsBox(b) {
		p.err = fmt.Errorf("it reaches out of ±%d mm; draw it smaller", pathReach)
	}
}

func (p *pathReader) add(s Segment, x, y float64) {
	p.begin()
	s.End = PtMM(x, y)
	p.x, p.y = x, y
	at := p.contour.Start
	if n := len(p.contour.Segments); n > 0 {
		at = p.contour.Segments[n-1].End
	}
	if s.End == at && s.straight(at) {
		return // it has no extent
	}
	p.contour.Segments = append(p.contour.Segments, s)
	if s.Kind == Cubic {
		p.within(BoxOf(s.C1, s.C2))
	}
	if p.pieces++; p.err == nil && p.pieces > pathPieces {
		p.err = fmt.Errorf("it has more than %d pieces; draw it plainer", pathPieces)
	}
}

func (p *pathReader) line(x, y float64) { p.add(Segment{}, x, y) }

func (p *pathReader) cubic(x1, y1, x2, y2, x, y float64) {
	p.cx, p.cy = x2, y2
	p.add(Segment{Kind: Cubic, C1: PtMM(x1, y1), C2: PtMM(x2, y2)}, x, y)
}

func (p *pathReader) quadratic(qx, qy, x, y float64) {
	x0, y0 := p.x, p.y
	p.cubic(x0+(qx-x0)*2/3, y0+(qy-y0)*2/3, x+(qx-x)*2/3, y+(qy-y)*2/3, x, y)
	p.cx, p.cy = qx, qy
}
