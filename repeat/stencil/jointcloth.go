package stencil

import (
	"context"
	"fmt"
	"math"

	"tsugime/repeat/geom"
	"tsugime/repeat/pattern"
)

// A cloth is the whole motifs of the field on the bolt, where they come again
// every period, as pieces that neither meet nor hold one another: free discs,
// and the outer lines of everything else.
type cloth struct {
	period   geom.Length
	farthest float64 // no web is wider: across the field and one period
	pieces   []pattern.CutOut
	drawn    loops // pieces of one motif, and of motifs that overlap, are in one set
	motifs   loops // the same, with the walls
}

// unitsAbout is how many heights of the unit the line is sought among. A unit
// without a shorter way along the bolt than that is looked at whole.
const unitsAbout = 8

// clothOf returns the field's motifs about y = 0. A step that is a lattice
// vector may be a multiple of a shorter one along, and that is the period. Where
// there is none, or none within a few units, a stretch of the pattern stands for
// all of it, four times as tall as any motif at least, and what lies in its outer
// quarters is a wall to the line. It tells too whether the field holds no motif.
func clothOf(ctx context.Context, u pattern.Unit, field Field, step geom.Length) (c *cloth, empty bool, err error) {
	l := u.Lattice.Reduced()
	tall := l.A.Y.Abs() + l.B.Y.Abs() + 2*u.Reach()
	c = &cloth{period: max(min(step, unitsAbout*tall), 8*u.Reach())}
	walled := true
	if m, n, rest := u.Lattice.Nearest(geom.Point{Y: step}); rest == (geom.Point{}) {
		if p := step / geom.Length(commonDivisor(m, n)); p <= unitsAbout*tall {
			c.period, walled = p, false
		}
	}
	c.farthest = math.Hypot(float64(field.Width), float64(c.period)) + 1
	half := c.period / 2
	var cuts []pattern.CutOut
	for _, cut := range fieldCuts(u, field, -half, c.period-half) {
		if y := cut.Shape.Bounds().Min.Y; y >= -half && y < c.period-half {
			cuts = append(cuts, cut)
		}
	}
	err = c.part(ctx, cuts)
	c.motifs = c.drawn.clone()
	if err == nil && walled {
		c.wall()
	}
	return c, len(cuts) == 0, err
}

// wall puts the pieces that reach into the outer quarters of the stretch in one
// set: those at its end hang together with the copies of those at its start.
func (c *cloth) wall() {
	first, lift := int32(-1), 0
	for i, p := range c.pieces {
		box, at := p.Shape.Bounds(), 0
		above, below := box.Min.Y < -c.period/4, box.Max.Y > c.period/4
		switch {
		case above && below:
			c.pieces = nil // no way between them
			return
		case below:
			at = -1
		case !above:
			continue
		}
		if first < 0 {
			first = int32(i)
			lift = at
			continue
		}
		c.motifs.join(first, int32(i), at-lift)
	}
}

func commonDivisor(a, b int) int {
	for b != 0 {
		a, b = b, a%b
	}
	return max(a, -a, 1)
}

// part keeps discs that are free and unites the rest.
func (c *cloth) part(ctx context.Context, cuts []pattern.CutOut) error {
	var met []pattern.CutOut
	if len(cuts) > 0 {
		free := sceneOf(cuts, float64(geom.Touch), geom.Point{Y: c.period}).freeDiscs()
		for i, cut := range cuts {
			if free[i] {
				c.pieces = append(c.pieces, cut)
			} else {
				met = append(met, cut)
			}
		}
	}
	if err := ctx.Err(); err != nil {
		return err
	}
	shapes := make([][]geom.Ring, len(met))
	for i, cut := range met {
		shapes[i] = cut.Shape.Rings(geom.Chord)
	}
	if err := ctx.Err(); err != nil {
		return err
	}
	r, err := geom.Union(shapes, geom.Point{Y: c.period})
	if err != nil {
		return fmt.Errorf("cut-outs that overlap: %w", err)
	}
	first := len(c.pieces)
	var lines []geom.Boundary
	for _, b := range r.Boundaries {
		// What lies within a cut-out, paper and all, is no way for the line.
		if b.Closed() && b.Area2() > 0 {
			lines = append(lines, b)
			c.pieces = append(c.pieces, pattern.CutOut{Shape: ringShape(b.Points)})
		} else if !b.Closed() {
			c.pieces = nil // the cut-outs go all along the cloth
			return nil
		}
	}
	c.drawn = newLoops(len(c.pieces) + len(met))
	c.bind(shapes, lines, first)
	return nil
}

func ringShape(r geom.Ring) geom.Shape {
	c := geom.Contour{Start: r[0]}
	for _, p := range r[1:] {
		c.Segments = append(c.Segments, geom.Segment{End: p})
	}
	return geom.Shape{Outline: geom.Outline{c}}
}

// bind puts the lines that come from one shape in one set: by the corners that
// they have in common.
func (c *cloth) bind(shapes [][]geom.Ring, lines []geom.Boundary, first int) {
	type corner struct {
		line int32
		turn int
	}
	home := func(p geom.Point) (geom.Point, int) {
		rest, turn := wrap(int(p.Y), int(c.period))
		return geom.Point{X: p.X, Y: geom.Length(rest)}, turn
	}
	at := map[geom.Point]corner{}
	for i, b := range lines {
		for _, p := range b.Points {
			h, turn := home(p)
			at[h] = corner{int32(i), turn}
		}
	}
	for s, rings := range shapes {
		for _, r := range rings {
			for _, p := range r {
				h, turn := home(p)
				if l, ok := at[h]; ok {
					c.drawn.join(int32(len(c.pieces)+s), int32(first)+l.line, turn-l.turn)
				}
			}
		}
	}
}

// freeDiscs reports which cut-outs are discs that neither touch nor overlap
// another cut-out.
func (s *scene) freeDiscs() []bool {
	free := make([]bool, len(s.cuts))
	touch := float64(geom.Touch)
	var near []hole
	for g := range s.discs {
		for _, h := range s.discs[g].holes {
			n := 0
			for k := range s.discs {
				near = s.discs[k].about(near[:0], h.c, h.r+touch)
				n += len(near)
			}
			alone := n == 1 && !s.covers.holds(h.c)
			if s.sides != nil && alone {
				s.sides.visit(s.sides.within(h.c, h.r+touch+grain), func(i int32, by place) bool {
					x, _ := s.sides.sides[i].nearest(h.c.sub(by))
					alone = !x.add(by).near(h.c, h.r+touch)
					return alone
				})
			}
			free[h.cut] = alone
		}
	}
	return free
}

// loops are sets of pieces on a cloth that know by how many periods their
// members lie apart: a union–find whose links carry the turns.
type loops struct {
	up   []int32
	turn []int // from the piece to up
}

func newLoops(n int) loops {
	l := loops{make([]int32, n), make([]int, n)}
	for i := range l.up {
		l.up[i] = int32(i)
	}
	return l
}

func (l loops) clone() loops {
	return loops{append([]int32(nil), l.up...), append([]int(nil), l.turn...)}
}

// find returns the set that holds i and how many turns from it i lies.
func (l loops) find(i int32) (root int32, turn int) {
	for l.up[i] != i {
		up := l.up[i]
		l.turn[i] += l.turn[up] // zero where up is a root
		l.up[i] = l.up[up]
		turn += l.turn[i]
		i = l.up[i]
	}
	return i, turn
}

// join says that copy turn of b hangs together with a. It reports whether they
// did already by another way around the cloth.
func (l loops) join(a, b int32, turn int) (around bool) {
	ra, ta := l.find(a)
	rb, tb := l.find(b)
	if ra == rb {
		return tb != ta+turn
	}
	l.up[rb], l.turn[rb] = ra, ta+turn-tb
	return false
}

// hangs reports whether copy turn of b is in one set with a.
func (l loops) hangs(a, b int32, turn int) bool {
	ra, ta := l.find(a)
	rb, tb := l.find(b)
	return ra == rb && tb == ta+turn
}

// turns returns by how many periods a way leads along the cloth.
func (c *cloth) turns(way place) int { return int(math.Round(way.y / float64(c.period))) }
