package report

import (
	"strings"

	"tsugime/repeat/geom"
)

// A ruler writes one kind of length: in one unit, with a fixed number of
// decimals, so that the figures of a column stand under each other.
type ruler struct {
	unit   geom.Unit
	places int
}

// number writes l without the unit.
func (r ruler) number(l geom.Length) string {
	s := r.unit.Number(l, r.places)
	whole, decimals, _ := strings.Cut(s, ".")
	if r.places == 0 {
		return whole
	}
	return whole + "." + decimals + strings.Repeat("0", r.places-len(decimals))
}

// with writes l and the unit.
func (r ruler) with(l geom.Length) string { return r.number(l) + " " + r.unit.Name }

// plain writes l and the unit for a sentence, without trailing zeros.
func (r ruler) plain(l geom.Length) string { return r.unit.Format(l, r.places) }

// figures are the rulers of a set of sheets. The stencil is measured in kane and
// the cloth in kujira, as the trade does (a stencil of 31 stripes to the sun
// means the kane sun, also where the garment is sewn in kujira).
type figures struct {
	sheet ruler // places and sizes on the paper
	fine  ruler // holes, webs, errors
	cloth ruler // places and sizes on the cloth
	walk  ruler // how far a placement strays
	arm   ruler // reading distance
}

// figuresIn returns the rulers for "mm" or "sun". The last decimal is 0.01 mm or
// finer where the paper is cut and 0.1 mm or finer on the cloth.
func figuresIn(units string) figures {
	if units == inSun {
		return figures{
			sheet: ruler{geom.KaneSun, 4}, fine: ruler{geom.KaneBu, 3},
			cloth: ruler{geom.KujiraSun, 3}, walk: ruler{geom.KujiraBu, 3},
			arm: ruler{geom.KujiraSun, 1},
		}
	}
	return figures{
		sheet: ruler{geom.MMUnit, 2}, fine: ruler{geom.MMUnit, 2},
		cloth: ruler{geom.MMUnit, 1}, walk: ruler{geom.MMUnit, 2},
		arm: ruler{geom.CMUnit, 0},
	}
}

// both writes a length of the paper in millimetres and in kane sun: the step is
// asked for in either at every bench.
func both(l geom.Length) string {
	return ruler{geom.MMUnit, 2}.with(l) + " = " + ruler{geom.KaneSun, 4}.with(l)
}

// checkLength is the side of the check square: 100 mm, which is 3.3 kane sun to
// the nanometre, since a kane shaku is 10/33 m.
const checkLength = 100 * geom.Millimetre

// checkText says what the check square measures.
const checkText = "100 mm = 3.3 kane sun"

// signed writes l with its sign, also where it is positive.
func (r ruler) signed(l geom.Length) string {
	if l > 0 {
		return "+" + r.with(l)
	}
	return strings.Replace(r.with(l), "-", "−", 1)
}
