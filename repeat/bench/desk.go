package bench

import (
	"math"
	"slices"

	"tsugime/repeat/geom"
	"tsugime/repeat/pattern"
)

// A desk is one assignment being made.
type desk struct {
	rack                         Rack
	own                          Overrides
	awls, pairs, knives, punches []int
	forms                        map[int]form // of the punches looked at
	made                         map[string]int
	kinds                        []kind
	key                          []byte
}

// A kind is what is chosen for cut-outs that are drawn alike.
type kind struct {
	choice Choice
	shape  geom.Shape
	motif  pattern.ID
	count  int
}

// kindOf returns the number of the kind of a cut-out.
func (d *desk) kindOf(c pattern.CutOut) int {
	drawn, _ := c.Motif.Drawn()
	own := d.own[drawn]
	d.key = shapeKey(append(d.key[:0], own...), c.Shape)
	n, ok := d.made[string(d.key)]
	if !ok {
		n = len(d.kinds)
		d.made[string(d.key)] = n
		d.kinds = append(d.kinds, kind{choice: d.choose(c.Shape, own), shape: c.Shape, motif: drawn})
	}
	return n
}

// shapeKey writes a shape down about its own start, to about a micrometre, so that
// copies of a motif mostly share one kind.
func shapeKey(key []byte, s geom.Shape) []byte {
	put := func(p geom.Point) {
		for _, v := range [2]geom.Length{p.X, p.Y} {
			u := uint32(int32((v + 500) >> 10))
			key = append(key, byte(u), byte(u>>8), byte(u>>16), byte(u>>24))
		}
	}
	if s.Round() {
		return append(key, 'o', byte(s.Disc.Diameter), byte(s.Disc.Diameter>>8), byte(s.Disc.Diameter>>16), byte(s.Disc.Diameter>>24), byte(s.Disc.Diameter>>32))
	}
	from := s.Outline[0].Start
	for _, c := range s.Outline {
		key = append(key, 'M')
		put(c.Start.Sub(from))
		for _, g := range c.Segments {
			key = append(key, 'a'+byte(g.Kind))
			put(g.End.Sub(from))
			switch g.Kind {
			case geom.Cubic:
				put(g.C1.Sub(from))
				put(g.C2.Sub(from))
			case geom.Arc:
				b := uint32(int32(math.Round(g.Bulge * 1e5)))
				key = append(key, byte(b), byte(b>>8), byte(b>>16), byte(b>>24))
			}
		}
	}
	return key
}

// choose gives a shape its method and tool; own is what the cutter named, or "".
func (d *desk) choose(s geom.Shape, own Method) Choice {
	if s.Round() {
		return d.chooseRound(s, own)
	}
	t := traitOf(s.Outline)
	c := Choice{Tool: -1, Size: t.length, Least: t.width, RimMM: t.rimMM}
	stripe := t.straight && t.length >= stripeLength && t.length >= stripeTimes*t.width
	if own == "" || own == Dogubori {
		if tool, likeness, ok := d.punch(s.Outline); ok {
			c.Method, c.Tool, c.Reason, c.Lies = Dogubori, tool, LikePunch, likeness
			c.Strain = Strain{likeness.Off, 100 * likeness.Off.MM() / c.Size.MM()}
		}
	}
	switch {
	case own != "":
		c.Method, c.Reason = own, Named
	case c.Method == Dogubori:
	case stripe:
		c.Method, c.Reason = Shimabori, LongStrip
	case (t.bend == 0 || t.bend >= easyBend) && t.length >= easySize && t.rimMM >= easyRun.MM()*float64(t.corners):
		c.Method, c.Reason = Hikibori, EasyLine
	default:
		c.Method, c.Reason = Tsukibori, FreeLine
	}
	d.blade(&c)
	return c
}

// blade gives a cut that is no punch's its tool.
func (d *desk) blade(c *Choice) {
	switch c.Method {
	case Shimabori:
		c.Size = c.Least
		if tool, strain := d.nearest(d.pairs, c.Size); tool >= 0 && math.Abs(strain.Pct) <= SnapPct {
			c.Tool, c.Strain = tool, strain
			return
		}
		c.Tool = d.knife(c.Least)
	case Tsukibori, Hikibori:
		c.Tool = d.knife(c.Least)
	}
}

func (d *desk) chooseRound(s geom.Shape, own Method) Choice {
	c := d.round(s.Disc.Diameter)
	switch {
	case own == Kiribori:
		c.Reason = Named
	case own != "":
		c = Choice{Method: own, Tool: -1, Reason: Named}
	case c.Tool >= 0 && math.Abs(c.Strain.Pct) <= SnapPct || s.Disc.Diameter <= widestAwl:
	case s.Disc.Diameter >= 2*easyBend:
		c = Choice{Method: Hikibori, Tool: -1, Reason: EasyLine}
	default:
		c = Choice{Method: Tsukibori, Tool: -1, Reason: FreeLine}
	}
	c.Size, c.Least, c.RimMM = s.Disc.Diameter, s.Disc.Diameter, s.RimMM()
	if c.Method != Kiribori {
		d.blade(&c)
	}
	return c
}

// round is the choice of an awl.
func (d *desk) round(diameter geom.Length) Choice {
	c := Choice{Method: Kiribori, Reason: RoundHole, Size: diameter, Least: diameter, RimMM: math.Pi * diameter.MM()}
	c.Tool, c.Strain = d.nearest(d.awls, diameter)
	return c
}

// nearest returns the tool whose size is nearest, the finer of two as near, and its
// strain; −1 where none is within farPct.
func (d *desk) nearest(tools []int, size geom.Length) (int, Strain) {
	at, _ := slices.BinarySearchFunc(tools, size, func(i int, size geom.Length) int { return int(d.rack.Tools[i].Size - size) })
	best, off := -1, geom.Length(math.MaxInt64)
	for _, k := range []int{at - 1, at} {
		if k < 0 || k >= len(tools) {
			continue
		}
		// The first of those of one size is the sharpest.
		for k > 0 && d.rack.Tools[tools[k-1]].Size == d.rack.Tools[tools[k]].Size {
			k--
		}
		if away := (d.rack.Tools[tools[k]].Size - size).Abs(); away < off {
			best, off = tools[k], away
		}
	}
	if best < 0 || size <= 0 {
		return -1, Strain{}
	}
	by := d.rack.Tools[best].Size - size
	s := Strain{by, 100 * by.MM() / size.MM()}
	if math.Abs(s.Pct) > farPct {
		return -1, Strain{}
	}
	return best, s
}

// knife returns the widest knife whose tip goes into a way of that width, or the
// narrowest of all; −1 where there is none.
func (d *desk) knife(least geom.Length) int {
	best := -1
	for _, i := range d.knives {
		if best < 0 || d.rack.Tools[i].Size <= least && d.rack.Tools[i].Size > d.rack.Tools[best].Size {
			best = i
		}
	}
	return best
}

// punch returns the punch most like a shape, where one is within PunchOff.
func (d *desk) punch(o geom.Outline) (tool int, best Likeness, ok bool) {
	if len(d.punches) == 0 || max(o.Bounds().Width(), o.Bounds().Height()) > mostSize {
		return -1, Likeness{}, false
	}
	shape := formOf(o)
	within := punchOff(o)
	tool = -1
	for _, i := range d.punches {
		f, seen := d.forms[i]
		if !seen && !shape.nearArea(d.rack.Tools[i].Outline.AreaMM2(), within) {
			continue
		}
		if !seen {
			f = formOf(d.rack.Tools[i].Outline)
			d.forms[i] = f
		}
		if l, like := shape.like(f, within); like && (tool < 0 || l.Off < best.Off) {
			tool, best = i, l
		}
	}
	return tool, best, tool >= 0
}

// punchOff is how far a punch's rim may be off a shape's.
func punchOff(o geom.Outline) geom.Length {
	b := o.Bounds()
	return min(PunchOff, max(b.Width(), b.Height()).Times(PunchOffPct/100))
}
