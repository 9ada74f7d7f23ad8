package stencil

import (
	"errors"
	"fmt"
	"math"
	"math/bits"

	"tsugime/repeat/geom"
	"tsugime/repeat/pattern"
)

// OpenAreaPct returns how much of the plain pattern is cut, in percent of the
// cell that the two periods span; what cut-outs share is counted once.
//
// Discs and outlines enter by their closed forms. From these goes what they share:
// of two discs by the closed form of their lens, otherwise as straight pieces
// (geom.Chord), so that these matter only in what is shared.
func OpenAreaPct(cuts []pattern.CutOut, periods ...geom.Point) (float64, error) {
	if len(periods) != 2 || periods[0].Cross(periods[1]) == 0 {
		return 0, errors.New("open area: it takes two periods that differ in direction; give the lattice's vectors")
	}
	cell := pattern.Lattice{A: periods[0], B: periods[1]}.CellMM2()
	near, err := contacts(cuts, periods)
	if err != nil {
		return 0, err
	}
	var discs squares
	var area float64
	for _, c := range cuts {
		if c.Shape.Round() {
			discs = discs.plus(c.Shape.Disc.Diameter)
		} else {
			area += c.Shape.AreaMM2()
		}
	}
	area += discs.discsMM2()
	if len(near) == 0 && allRound(cuts) {
		return openPct(area, cell), nil
	}
	tangled := tangles(cuts, near)
	for _, n := range near {
		if !tangled[n.i] {
			area -= lensMM2(cuts[n.i].Shape.Disc, cuts[n.j].Shape.Disc, n.shift)
		}
	}
	shared, err := sharedMM2(cuts, tangled, periods)
	if err != nil {
		return 0, fmt.Errorf("open area: %w", err)
	}
	return openPct(area-shared, cell), nil
}

func openPct(areaMM2, cellMM2 float64) float64 {
	return math.Max(0, math.Min(100, 100*areaMM2/cellMM2))
}

// squares is a sum of squares of lengths in square nanometres, exact: what comes
// and goes again leaves no trace.
type squares struct{ hi, lo uint64 }

func (s squares) plus(l geom.Length) squares {
	hi, lo := bits.Mul64(uint64(l.Abs()), uint64(l.Abs()))
	lo, carry := bits.Add64(s.lo, lo, 0)
	hi, _ = bits.Add64(s.hi, hi, carry)
	return squares{hi, lo}
}

func (s squares) minus(l geom.Length) squares {
	hi, lo := bits.Mul64(uint64(l.Abs()), uint64(l.Abs()))
	lo, borrow := bits.Sub64(s.lo, lo, 0)
	hi, _ = bits.Sub64(s.hi, hi, borrow)
	return squares{hi, lo}
}

// discsMM2 returns the area of discs in square millimetres, s being the sum of
// their diameters' squares.
func (s squares) discsMM2() float64 {
	sum := math.Ldexp(float64(s.hi), 64) + float64(s.lo)
	return math.Pi / 4 * sum / float64(geom.Millimetre*geom.Millimetre)
}

// sharedMM2 returns by how much the closed forms of the chosen cut-outs overstate
// what they cover together.
func sharedMM2(cuts []pattern.CutOut, chosen []bool, periods []geom.Point) (float64, error) {
	var shapes [][]geom.Ring
	var single float64
	for i, c := range cuts {
		if !chosen[i] {
			continue
		}
		rings := fairRings(c.Shape)
		var area float64
		for _, r := range rings {
			area += r.AreaMM2()
		}
		single += math.Abs(area)
		shapes = append(shapes, rings)
	}
	if len(shapes) == 0 {
		return 0, nil
	}
	together, err := geom.Union(shapes, periods...)
	if err != nil {
		return 0, err
	}
	return single - together.AreaMM2(), nil
}

// fairRings returns s as straight pieces. Those of a disc are moved outwards so
// far that they enclose as much as the disc does: its rim then runs on both sides
// of them, and what they share with others is right to the second order.
func fairRings(s geom.Shape) []geom.Ring {
	rings := s.Rings(geom.Chord)
	if !s.Round() || s.Disc.Diameter == 0 {
		return rings
	}
	step := 2 * math.Pi / float64(len(rings[0]))
	d := s.Disc
	d.Diameter = d.Diameter.Times(math.Sqrt(step / math.Sin(step)))
	return []geom.Ring{d.Ring(geom.Chord)}
}

// tangles marks the cut-outs of which the closed forms alone can't tell what they
// cover: outlines, which may cross themselves, and discs that meet an outline, or
// three of which meet in pairs, with all that hang on to them.
func tangles(cuts []pattern.CutOut, near []contact) []bool {
	neighbours := make([][]contact, len(cuts))
	for _, n := range near {
		neighbours[n.i] = append(neighbours[n.i], n)
		neighbours[n.j] = append(neighbours[n.j], contact{n.j, n.i, n.shift.Neg()})
	}
	tangled := make([]bool, len(cuts))
	var stack []int
	for i, c := range cuts {
		if !c.Shape.Round() || threeMeet(cuts, neighbours[i]) {
			tangled[i] = true
			stack = append(stack, i)
		}
	}
	for len(stack) > 0 {
		i := stack[len(stack)-1]
		stack = stack[:len(stack)-1]
		for _, n := range neighbours[i] {
			if !tangled[n.j] {
				tangled[n.j] = true
				stack = append(stack, n.j)
			}
		}
	}
	return tangled
}

// threeMeet reports whether two of a disc's neighbours meet each other.
func threeMeet(cuts []pattern.CutOut, neighbours []contact) bool {
	for k, n := range neighbours {
		c := cuts[n.j].Shape
		for _, m := range neighbours[:k] {
			d := cuts[m.j].Shape
			if !c.Round() || !d.Round() || discGap(c.Disc, d.Disc, m.shift.Sub(n.shift)) <= 0 {
				return true
			}
		}
	}
	return false
}

// lensMM2 returns the area in square millimetres that c and d moved by shift have
// in common: the two circular segments over the common chord (closed form).
func lensMM2(c, d geom.Disc, shift geom.Point) float64 {
	r, s := c.RadiusMM(), d.RadiusMM()
	l := d.Centre.Add(shift).Sub(c.Centre).Norm() / float64(geom.Millimetre)
	switch {
	case l >= r+s:
		return 0
	case l <= math.Abs(r-s):
		return math.Min(c.AreaMM2(), d.AreaMM2())
	}
	x := (l*l + r*r - s*s) / (2 * l)
	return circularSegment(r, x) + circularSegment(s, l-x)
}

// circularSegment returns the area of a disc of radius r beyond a chord x from its
// centre.
func circularSegment(r, x float64) float64 {
	return r*r*math.Acos(x/r) - x*math.Sqrt(math.Max(0, r*r-x*x))
}
