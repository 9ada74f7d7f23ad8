package report

import (
	"strings"

	"tsugime/export/wording"
	"tsugime/repeat"
	"tsugime/repeat/geom"
)

// A ruler writes one kind of length: in one unit, with a fixed number of
// decimals, so that the figures of a column stand under each other.
type ruler struct {
	unit   geom.Unit
	places int
	name   string // of the unit, as the sheet's language has it
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
func (r ruler) with(l geom.Length) string { return r.number(l) + " " + r.name }

// plain writes l and the unit for a sentence, without trailing zeros.
func (r ruler) plain(l geom.Length) string { return r.unit.Number(l, r.places) + " " + r.name }

// apart writes two lengths that differ with as many decimals as show it.
func (r ruler) apart(a, b geom.Length) (string, string) {
	for most := r.places + 4; a != b && r.number(a) == r.number(b) && r.places < most; {
		r.places++
	}
	return r.with(a), r.with(b)
}

// figures are the rulers of a set of sheets and the language they are worded in.
// The stencil is measured in kane and the cloth in kujira, as the trade does (a
// stencil of 31 stripes to the sun means the kane sun, also where the garment is
// sewn in kujira).
type figures struct {
	lang  wording.Language
	sheet ruler // places and sizes on the paper
	fine  ruler // holes, webs, errors
	cloth ruler // places and sizes on the cloth
	walk  ruler // how far a placement strays
	arm   ruler // reading distance
}

// figuresIn returns the rulers for "mm" or "sun". The last decimal is 0.01 mm or
// finer where the paper is cut and 0.1 mm or finer on the cloth.
func figuresIn(units string, lang wording.Language) figures {
	f := figures{lang: lang}
	if units == inSun {
		f.sheet, f.fine = f.ruler(geom.KaneSun, 4), f.ruler(geom.KaneBu, 3)
		f.cloth, f.walk = f.ruler(geom.KujiraSun, 3), f.ruler(geom.KujiraBu, 3)
		f.arm = f.ruler(geom.KujiraSun, 1)
		return f
	}
	f.sheet, f.fine = f.ruler(geom.MMUnit, 2), f.ruler(geom.MMUnit, 2)
	f.cloth, f.walk = f.ruler(geom.MMUnit, 1), f.ruler(geom.MMUnit, 2)
	f.arm = f.ruler(geom.CMUnit, 0)
	return f
}

// figuresOf returns the rulers and the language that the order asks for.
func figuresOf(w repeat.Work) figures { return Options{}.with(w).figures() }

func (f figures) ruler(unit geom.Unit, places int) ruler {
	return ruler{unit, places, f.lang.Say(unit.Name)}
}

// say words a sentence in the language of the sheets (wording.Language.Say).
func (f figures) say(text string, places ...any) string { return f.lang.Say(text, places...) }

// count writes a number with its noun: "1 sheet", "7 sheets".
func (f figures) count(n int, noun string) string { return f.lang.Count(n, noun) }

// head is what stands over a column of lengths: what they are, and their unit.
func (f figures) head(what string, r ruler) string { return f.say("%s, %s", f.say(what), r.name) }

// title is the order's title, or what stands in its place. The titles of the
// orders to start from have their Japanese too.
func (f figures) title(w repeat.Work) string {
	if t := strings.Join(strings.Fields(w.Order.Title), " "); t != "" {
		return f.say(t)
	}
	return f.say("untitled order")
}

// sentences sets sentences one behind the other.
func (f figures) sentences(all []string) string {
	if f.lang == wording.Japanese {
		return strings.Join(all, "")
	}
	return strings.Join(all, " ")
}

// both writes a length of the paper in millimetres and in kane sun: the step is
// asked for in either at every bench.
func (f figures) both(l geom.Length) string {
	return f.ruler(geom.MMUnit, 2).with(l) + " = " + f.ruler(geom.KaneSun, 4).with(l)
}

// checkLength is the side of the check square: 100 mm, which is 3.3 kane sun to
// the nanometre, since a kane shaku is 10/33 m.
const checkLength = 100 * geom.Millimetre

// checkText says what the check square measures.
func (f figures) checkText() string { return f.say("100 mm = 3.3 kane sun") }

// signed writes l with its sign, also where it is positive.
func (r ruler) signed(l geom.Length) string {
	if l > 0 {
		return "+" + r.with(l)
	}
	return strings.Replace(r.with(l), "-", "−", 1)
}
