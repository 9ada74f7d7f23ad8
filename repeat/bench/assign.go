package bench

import (
	"math"
	"slices"

	"tsugime/repeat/geom"
	"tsugime/repeat/pattern"
	"tsugime/repeat/stencil"
)

// By what the methods are told apart. None has a source; all are our
// recommendation from what the trade says each method is for.
const (
	// widestAwl is the largest round hole that is cut with an awl where the rack has
	// no awl of that size: what half a turn of a hand still cuts.
	widestAwl = 4 * geom.Millimetre
	// A strip is a stripe from this length and this many times its width on.
	stripeLength = 10 * geom.Millimetre
	stripeTimes  = 10
	// Lines are easy to pull where they bend by no less than easyBend, go on for
	// easyRun between corners, and the shape is at least easySize long.
	easyBend = 10 * geom.Millimetre
	easyRun  = 10 * geom.Millimetre
	easySize = 20 * geom.Millimetre
	// Of a shape up to worthSize that stands worthCount times on a sheet a punch
	// would be worth making.
	worthSize  = 12 * geom.Millimetre
	worthCount = 50
)

// Tolerances of tools, our recommendation; each choice shows how far it is off.
const (
	// PunchOff is the greatest distance between the rims of a punch and a motif, and
	// PunchOffPct what it may be of the motif's size.
	PunchOff    = 50 * geom.Micrometre
	PunchOffPct = 3.0
	// SnapPct is by how much an awl or a pair may differ from what is drawn; beyond
	// it the tool counts as missing. Up to farPct the nearest is still named.
	SnapPct = 5.0
	farPct  = 25.0
)

// A Reason says why a cut-out gets its method.
type Reason string

// The reasons.
const (
	RoundHole Reason = "round"  // a round hole that an awl cuts
	LikePunch Reason = "punch"  // the rack has a punch of its shape
	LongStrip Reason = "stripe" // a long strip with two parallel sides
	EasyLine  Reason = "easy"   // long lines that bend little
	FreeLine  Reason = "free"   // small, closely bent or full of corners
	Named     Reason = "named"  // the cutter named the method
)

// A Choice is how one cut-out is cut.
type Choice struct {
	Method Method
	Tool   int // in the rack; −1 where it has none
	Reason Reason
	// Size is the diameter of a round hole, the width of a stripe, else the larger
	// side of the shape.
	Size   geom.Length
	Strain Strain
	Lies   Likeness    // of a punch on the cut-out
	RimMM  float64     // the length of its rim
	Least  geom.Length // the smallest way across: what a limit is held against
}

// A Strain is by how much a tool differs from what is drawn: an awl's diameter or a
// pair's width less the drawn one, and in percent of it; of a punch how far the rims
// are apart at most, in percent of the size.
type Strain struct {
	By  geom.Length
	Pct float64
}

// An Assignment is how all cut-outs of one sheet are cut.
type Assignment struct {
	Rack    Rack
	Choices []Choice // of each cut-out of the sheet, in its order
	Star    Choice   // of the register holes
	Missing []Missing
}

// A Missing is a tool that the rack lacks and what would be made: an awl or a pair
// of a size, a punch of a shape, a knife.
type Missing struct {
	Kind    Kind
	Size    geom.Length
	Outline geom.Outline // of a punch
	Count   int          // cut-outs on the sheet that it would cut
	Motif   pattern.ID   // the first of them is of this motif; 0 for register holes
	// Nearest is the tool that stands in for it, −1 where none does, and Strain what
	// that means.
	Nearest int
	Strain  Strain
}

// Overrides names the method of some motifs, as the cutter wants it. What a plane
// group makes of a motif goes with it.
type Overrides map[pattern.ID]Method

// Assign gives each cut-out of a sheet its method and its tool, at the size that the
// sheet has; of a split each sheet is assigned by itself. With a rack without tools
// nothing is missing.
func Assign(s stencil.Sheet, r Rack, own Overrides) Assignment {
	d := &desk{
		rack: r, own: own, made: map[string]int{},
		awls: r.usable(Awl), pairs: r.usable(Pair), knives: r.usable(Knife), punches: r.usable(Punch),
		forms: map[int]form{},
	}
	a := Assignment{Rack: r, Choices: make([]Choice, len(s.CutOuts))}
	kinds := make([]int, len(s.CutOuts))
	for i, c := range s.CutOuts {
		kinds[i] = d.kindOf(c)
		a.Choices[i] = d.kinds[kinds[i]].choice
		d.kinds[kinds[i]].count++
	}
	if stars := len(s.Stars.Stars) + len(s.Stars.Match); stars > 0 {
		a.Star = d.round(s.Spec.Stars.Diameter)
		d.kinds = append(d.kinds, kind{choice: a.Star, count: stars})
	}
	a.Missing = d.missing()
	return a
}

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
