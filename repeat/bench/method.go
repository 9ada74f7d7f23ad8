package bench

import (
	"slices"

	"tsugime/repeat/geom"
)

// A Method is one of the five ways to cut, under its trade name. They are the five
// that the ministry's listing of the craft names.
type Method string

// The methods.
const (
	Kiribori  Method = "kiribori"  // a round hole by half a turn of an awl's curved blade
	Dogubori  Method = "dogubori"  // a shape by one push of a punch forged to it
	Tsukibori Method = "tsukibori" // any line, thrust by a narrow knife
	Hikibori  Method = "hikibori"  // long easy lines, pulled
	Shimabori Method = "shimabori" // stripes, pulled along a steel ruler
)

// Methods returns the methods, those of single cuts first.
func Methods() []Method { return []Method{Kiribori, Dogubori, Tsukibori, Hikibori, Shimabori} }

// Known reports whether m is one of the five.
func (m Method) Known() bool { return slices.Contains(Methods(), m) }

// Passes returns how often a line is traced: a stripe's three times, so that the
// sheets of the pile don't slide (a maker's page on the technique; how often is
// common practice, no other source), any other once.
func (m Method) Passes() int {
	if m == Shimabori {
		return 3
	}
	return 1
}

// Single reports whether the work is one cut for each cut-out, so that its length
// takes no time.
func (m Method) Single() bool { return m == Kiribori || m == Dogubori }

// tool returns the kind of tool that m is cut with.
func (m Method) tool() Kind {
	switch m {
	case Kiribori:
		return Awl
	case Dogubori:
		return Punch
	case Shimabori:
		return Pair
	}
	return Knife
}

// A Limit is what a method is trusted with. Zero means that nothing is known.
type Limit struct {
	Method Method
	Hole   geom.Length // the smallest size of a cut-out
	Web    geom.Length // the finest paper left beside it
	Pile   int         // the most sheets that are cut together
	Source string      // where the figures come from
}

// Own is the source of a limit that stands in the cutter's rack.
const Own = "your own"

// usualLimits are the limits without a word of the cutter's:
//
//   - kiribori: 0.4 mm is the finest blade that a page on the craft names; webs of
//     0.4 to 0.6 mm follow from recorded grounds (computed); piles of 8 to 10 are
//     told of punched small patterns, 12 and more as exceptions
//   - dogubori: the same piles; sizes are our recommendation, no source
//   - tsukibori: knife tips are 1 to 2 mm; 5 to 8 sheets (ministry listing and
//     three workshops); the web is our recommendation, no source
//   - hikibori: no figures found; our recommendation
//   - shimabori: 31 stripes to a kane sun leave about 0.5 mm and cut as much
//     (computed); no number of sheets was found, two is our recommendation, since a
//     forced pile slides
func usualLimits() []Limit {
	mm := geom.MM
	return []Limit{
		{Kiribori, mm(0.4), mm(0.4), 10, "finest blade told of 0.4 mm; webs computed from recorded grounds; piles of 8 to 10"},
		{Dogubori, mm(1), mm(0.5), 10, "piles of 8 to 10; sizes our recommendation, no source"},
		{Tsukibori, mm(1), mm(0.8), 8, "knife tips of 1 to 2 mm, piles of 5 to 8; web our recommendation, no source"},
		{Hikibori, mm(1), mm(1.5), 6, "our recommendation, no source"},
		{Shimabori, mm(0.45), mm(0.45), 2, "computed from 31 stripes to a kane sun; pile our recommendation, no source"},
	}
}
