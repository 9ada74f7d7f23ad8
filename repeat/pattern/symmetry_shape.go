package pattern

import (
	"math"
	"strconv"

	"tsugime/repeat/geom"
)

// A stance is how a figure stands: mirrored left to right, then turned.
type stance struct {
	deg      float64
	mirrored bool
}

func (s stance) apply(x, y float64) (float64, float64) {
	if s.mirrored {
		x = -x
	}
	m := geom.Rotate(s.deg)
	return m.A*x + m.B*y, m.C*x + m.D*y
}

// under returns the stance after an operation that mirrors and turns by o:
// a mirror takes a turn to its opposite.
func (s stance) under(o stance) stance {
	if o.mirrored {
		return stance{degrees(o.deg - s.deg), !s.mirrored}
	}
	return stance{degrees(o.deg + s.deg), s.mirrored}
}

// from returns the stance that takes a figure in stance r, as it stands, to one
// in stance s, in the frame of r's drawing.
func (s stance) from(r stance) stance {
	turn := r.deg - s.deg
	if s.mirrored {
		turn = -turn
	}
	return stance{degrees(turn), s.mirrored != r.mirrored}
}

// degrees brings a turn into 0 … 360, to a billionth.
func degrees(d float64) float64 {
	d = math.Round(d*1e9) / 1e9
	if d = math.Mod(d, 360); d < 0 {
		d += 360
	}
	return d
}

// A figure is a shape about a point that goes with it wherever it is turned: the
// centre of a disc, or the middle of an outline's chords.
type figure struct {
	diameter geom.Length  // of a disc
	contours [][]rimPiece // of an outline
	x, y     float64      // the point, as drawn
}

// A rimPiece is one segment: start, controls (of a cubic) and end, and the bulge of
// an arc, in nanometres about the figure's point.
type rimPiece struct {
	kind  geom.Kind
	at    [4][2]float64
	bulge float64
}

func figureOf(s geom.Shape) figure {
	if s.Round() {
		return figure{diameter: s.Disc.Diameter, x: float64(s.Disc.Centre.X), y: float64(s.Disc.Centre.Y)}
	}
	var f figure
	for _, c := range s.Outline {
		f.contours = append(f.contours, rimPieces(c))
	}
	f.centre()
	return f
}

// rimPieces returns a contour closed, without segments that go nowhere.
func rimPieces(c geom.Contour) []rimPiece {
	var out []rimPiece
	at := c.Start
	put := func(s geom.Segment) {
		if s.Kind != geom.Cubic {
			s.C1, s.C2 = at, s.End
		}
		if s.Kind == geom.Arc && s.Bulge == 0 {
			s.Kind = geom.Line
		}
		if s.End != at || s.Kind == geom.Cubic && (s.C1 != at || s.C2 != at) {
			p := rimPiece{kind: s.Kind, bulge: s.Bulge}
			for i, q := range [4]geom.Point{at, s.C1, s.C2, s.End} {
				p.at[i] = [2]float64{float64(q.X), float64(q.Y)}
			}
			out = append(out, p)
		}
		at = s.End
	}
	for _, s := range c.Segments {
		put(s)
	}
	put(geom.Segment{End: c.Start})
	return out
}

// centre moves f's pieces about their middle, each weighing as much as its
// chord is long.
func (f *figure) centre() {
	var sum float64
	for _, c := range f.contours {
		for _, p := range c {
			w := math.Hypot(p.at[3][0]-p.at[0][0], p.at[3][1]-p.at[0][1])
			f.x += w * (p.at[0][0] + p.at[3][0]) / 2
			f.y += w * (p.at[0][1] + p.at[3][1]) / 2
			sum += w
		}
	}
	f.x, f.y = f.x/max(sum, 1), f.y/max(sum, 1)
	for _, c := range f.contours {
		for i := range c {
			for j := range c[i].at {
				c[i].at[j][0] -= f.x
				c[i].at[j][1] -= f.y
			}
		}
	}
}

// back is p run the other way.
func (p rimPiece) back() rimPiece {
	p.at = [4][2]float64{p.at[3], p.at[2], p.at[1], p.at[0]}
	p.bulge = -p.bulge
	return p
}

func (p rimPiece) under(s stance) rimPiece {
	for i, q := range p.at {
		p.at[i][0], p.at[i][1] = s.apply(q[0], q[1])
	}
	if s.mirrored {
		p.bulge = -p.bulge
	}
	return p
}

func (p rimPiece) like(q rimPiece) bool {
	for i := range p.at {
		if math.Hypot(p.at[i][0]-q.at[i][0], p.at[i][1]-q.at[i][1]) > float64(geom.Alike) {
			return false
		}
	}
	rise := (p.bulge - q.bulge) * math.Hypot(p.at[3][0]-p.at[0][0], p.at[3][1]-p.at[0][1]) / 2
	return p.kind == q.kind && math.Abs(rise) <= float64(geom.Alike)
}

// same reports whether f in stance s is g as drawn: each contour of the one on a
// contour of the other wherever it starts, and all in the same direction or all
// against it, since a contour that turns the other way cuts a hole.
func (f figure) same(g figure, s stance) bool {
	if (f.diameter-g.diameter).Abs() > geom.Alike || len(f.contours) != len(g.contours) {
		return false
	}
	return len(f.contours) == 0 || f.runs(g, s, false) || f.runs(g, s, true)
}

func (f figure) runs(g figure, s stance, against bool) bool {
	taken := make([]bool, len(g.contours))
	for _, c := range f.contours {
		placed := make([]rimPiece, len(c))
		for i, p := range c {
			if p = p.under(s); against {
				placed[len(c)-1-i] = p.back()
			} else {
				placed[i] = p
			}
		}
		found := false
		for j, d := range g.contours {
			if !taken[j] && around(placed, d) {
				taken[j], found = true, true
				break
			}
		}
		if !found {
			return false
		}
	}
	return true
}

// around reports whether c is d from some other start.
func around(c, d []rimPiece) bool {
	if len(c) != len(d) {
		return false
	}
	for shift := range max(len(c), 1) {
		alike := true
		for i := 0; i < len(c) && alike; i++ {
			alike = c[i].like(d[(i+shift)%len(d)])
		}
		if alike {
			return true
		}
	}
	return false
}

// A gallery holds every figure of a pattern once, and what has been compared.
type gallery struct {
	figures []figure
	number  map[string]int
	known   map[comparison]bool
}

type comparison struct {
	from, to int
	stance   stance
}

func newGallery() *gallery {
	return &gallery{number: map[string]int{}, known: map[comparison]bool{}}
}

// add returns the number of the figure of s.
func (g *gallery) add(s geom.Shape) int {
	key := string(drawn(s))
	n, ok := g.number[key]
	if !ok {
		n = len(g.figures)
		g.number[key] = n
		g.figures = append(g.figures, figureOf(s))
	}
	return n
}

// drawn writes a shape down, so that equal drawings are equal bytes.
func drawn(s geom.Shape) []byte {
	var b []byte
	put := func(p geom.Point) {
		b = append(strconv.AppendInt(b, int64(p.X), 36), ',')
		b = append(strconv.AppendInt(b, int64(p.Y), 36), ',')
	}
	if s.Round() {
		put(s.Disc.Centre)
		return strconv.AppendInt(b, int64(s.Disc.Diameter), 36)
	}
	for _, c := range s.Outline {
		b = append(b, 'M')
		put(c.Start)
		for _, g := range c.Segments {
			b = append(b, 'a'+byte(g.Kind))
			put(g.C1)
			put(g.C2)
			put(g.End)
			b = strconv.AppendFloat(b, g.Bulge, 'g', -1, 64)
		}
	}
	return b
}

// same reports whether figure a in stance s looks like figure b in stance t.
func (g *gallery) same(a int, s stance, b int, t stance) bool {
	if len(g.figures[a].contours) == 0 {
		return g.figures[a].same(g.figures[b], stance{})
	}
	c := comparison{a, b, t.from(s)}
	same, ok := g.known[c]
	if !ok {
		same = g.figures[a].same(g.figures[b], c.stance)
		g.known[c] = same
	}
	return same
}

// congruent reports whether a may look like b in some stance: as many segments,
// or the same disc.
func (g *gallery) congruent(a, b int) bool {
	f, h := g.figures[a], g.figures[b]
	if (f.diameter-h.diameter).Abs() > geom.Alike || len(f.contours) != len(h.contours) {
		return false
	}
	for i := range f.contours {
		if len(f.contours[i]) != len(h.contours[i]) {
			return false
		}
	}
	return true
}
