package bench

import (
	"cmp"
	"slices"

	"tsugime/repeat/geom"
	"tsugime/repeat/stencil"
)

// A Stage is when in the work something is cut: guide holes first (the trade lays
// stripes out by them), ties and the joint edge last, since they hold the work (common
// practice, no source).
type Stage string

// The stages, in their order.
const (
	Stars  Stage = "stars"
	Inner  Stage = "enclosed" // what lies within another cut-out
	Centre Stage = "centre"   // small tools first
	Rim    Stage = "rim"      // so that the pile stays bound while the centre is cut
	Last   Stage = "last"     // beside ties and at the joint line
)

// Stages returns the stages in their order.
func Stages() []Stage { return []Stage{Stars, Inner, Centre, Rim, Last} }

// A Pass is what is cut with one tool in one stage.
type Pass struct {
	Stage    Stage
	Method   Method
	Tool     int         // in the rack; −1 where it has none
	Size     geom.Length // of the tool that it lacks; 0 where it has it or any blade will do
	Count    int
	LengthMM float64 // of the lines, each once
	Times    int     // how often each line is traced
	Hours    float64
	// Order names the cut-outs of the sheet in the order of the work; of the stars,
	// the feed stars in their order, then the match stars on this sheet.
	Order    []int
	TravelMM float64 // from each to the next
}

// A Plan is how one sheet of an order is cut: the passes in their order.
type Plan struct {
	Passes []Pass
	Pile   int // sheets that are cut together
	// PileMost is the most that the methods used allow, PileBy the one that allows
	// least; Pile is what the order asks for, or that where it is less.
	PileMost  int
	PileBy    Method
	Saleable  int // the bottom sheet is cut incompletely
	LengthMM  float64
	TravelMM  float64
	Hours     float64
	Days      float64
	DayHours  float64
	Exceeded  []Excess
	CutOuts   int
	StarHoles int
}

// An Excess is something that a method is not trusted with.
type Excess struct {
	Method Method
	What   What
	Got    geom.Length // of a hole or a web
	Count  int         // holes; for a web 0
	Pile   int         // sheets that are asked for
	Limit  Limit
	Own    bool       // the limit is the cutter's own word
	At     geom.Point // the worst of them
}

// A What names one of the limits of a method.
type What string

// The limits of a method.
const (
	HoleSize What = "hole"
	WebWidth What = "web"
	PileSize What = "pile"
)

// PlanSheet puts the cut-outs of sheet number (1, or 2 for the second of a split)
// into passes: by stage, then the finest tool first, each travelled on a short way.
// s is the sheet that a was made for.
func PlanSheet(s stencil.Sheet, number int, a Assignment, rates Rates) Plan {
	p := Plan{Pile: s.Spec.Paper.Pile, DayHours: rates.hoursADay(), CutOuts: len(s.CutOuts)}
	places := make([]geom.Point, len(s.CutOuts))
	for i, c := range s.CutOuts {
		places[i] = begins(c.Shape)
	}
	if stars := starPlaces(s, number); len(stars) > 0 {
		p.StarHoles = len(stars)
		p.Passes = append(p.Passes, starPass(a, stars))
	}
	for _, g := range grouped(stagesOf(s), a) {
		p.Passes = append(p.Passes, g.pass(a, places))
	}
	for i := range p.Passes {
		pass := &p.Passes[i]
		pass.Hours = rates.hours(*pass)
		p.Hours, p.LengthMM, p.TravelMM = p.Hours+pass.Hours, p.LengthMM+pass.LengthMM, p.TravelMM+pass.TravelMM
	}
	p.Days = p.Hours / p.DayHours
	p.limits(s, a)
	return p
}

// begins is the place at which the cutting of a shape starts.
func begins(s geom.Shape) geom.Point {
	if s.Round() {
		return s.Disc.Centre
	}
	return s.Outline[0].Start
}

// Places returns where the cuts of the pass begin, in the order of the work. s and
// number are what PlanSheet got.
func (p Pass) Places(s stencil.Sheet, number int) []geom.Point {
	at := make([]geom.Point, len(p.Order))
	if p.Stage == Stars {
		stars := starPlaces(s, number)
		for i, k := range p.Order {
			at[i] = stars[k]
		}
		return at
	}
	for i, k := range p.Order {
		at[i] = begins(s.CutOuts[k].Shape)
	}
	return at
}

// starPlaces returns the register holes that are on a sheet of the set.
func starPlaces(s stencil.Sheet, number int) []geom.Point {
	var at []geom.Point
	for _, star := range s.Stars.Stars {
		at = append(at, star.At)
	}
	for _, m := range s.Stars.Match {
		if m.On(number) {
			at = append(at, m.At)
		}
	}
	return at
}

func starPass(a Assignment, at []geom.Point) Pass {
	p := Pass{
		Stage: Stars, Method: a.Star.Method, Tool: a.Star.Tool, Size: sizeOf(a.Star),
		Count: len(at), LengthMM: float64(len(at)) * a.Star.RimMM, Times: 1,
	}
	for i := range at {
		p.Order = append(p.Order, i)
	}
	p.TravelMM = TravelMM(at, p.Order, false)
	return p
}

// A group is the cut-outs of one pass.
type group struct {
	stage  int
	depth  int // of what is enclosed: the innermost first
	method Method
	tool   int
	size   geom.Length
	cuts   []int
	mean   float64 // size of its cut-outs
}

// grouped sorts cut-outs into passes.
func grouped(stages []staged, a Assignment) []group {
	type key struct {
		stage, depth, tool int
		method             Method
		size               geom.Length
	}
	at := map[key]int{}
	var groups []group
	for i, c := range a.Choices {
		s := stages[i]
		k := key{s.stage, s.depth, c.Tool, c.Method, sizeOf(c)}
		n, ok := at[k]
		if !ok {
			n = len(groups)
			at[k] = n
			groups = append(groups, group{stage: k.stage, depth: k.depth, method: c.Method, tool: c.Tool, size: k.size})
		}
		g := &groups[n]
		g.cuts = append(g.cuts, i)
		g.mean += c.Size.MM()
	}
	for i := range groups {
		groups[i].mean /= float64(len(groups[i].cuts))
	}
	slices.SortFunc(groups, func(a, b group) int {
		return cmp.Or(cmp.Compare(a.stage, b.stage), cmp.Compare(b.depth, a.depth), cmp.Compare(a.mean, b.mean),
			cmp.Compare(a.tool, b.tool), cmp.Compare(a.method, b.method), cmp.Compare(a.size, b.size))
	})
	return groups
}

func (g group) pass(a Assignment, places []geom.Point) Pass {
	p := Pass{
		Stage: Stages()[g.stage], Method: g.method, Tool: g.tool, Size: g.size,
		Count: len(g.cuts), Times: g.method.Passes(), Order: make([]int, len(g.cuts)),
	}
	at := make([]geom.Point, len(g.cuts))
	for i, c := range g.cuts {
		at[i] = places[c]
		p.LengthMM += a.Choices[c].RimMM
	}
	order := Travel(at, false)
	p.TravelMM = TravelMM(at, order, false)
	for i, k := range order {
		p.Order[i] = g.cuts[k]
	}
	return p
}
