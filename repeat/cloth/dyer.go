package cloth

import (
	"math"
	"math/rand/v2"

	"tsugime/repeat/geom"
)

// A laid sheet: the middle between its leading stars in millimetres, and its
// turn in radians, clockwise.
type laid struct{ x, y, turn float64 }

// trailing returns the middle between the trailing stars of a sheet that is so
// long.
func (l laid) trailing(length float64) (x, y float64) {
	s, c := math.Sincos(l.turn)
	return l.x - s*length, l.y + c*length
}

// A dyer lays sheets with drawn errors, one bolt after the other.
type dyer struct {
	course
	way                              Way
	sigmaX, sigmaY, base, step, half float64 // mm
	draw                             *rand.Rand
	sheets                           []laid // of the present bolt
}

func newDyer(reg Register, step geom.Length, n int, seed uint64) *dyer {
	across, along := reg.errors()
	return &dyer{
		course: reg.course(step.MM(), n), way: reg.Way,
		sigmaX: across, sigmaY: along, base: reg.Baseline.MM(),
		step: step.MM(), half: reg.Width.MM() / 2,
		draw: rand.New(rand.NewPCG(seed, 0)), sheets: make([]laid, n),
	}
}

// bolt lays one bolt; what it returns is good until the next.
func (d *dyer) bolt() []laid {
	n := len(d.sheets)
	// The trailing stars that the first placement is laid on are where they belong.
	before, length := laid{y: -d.step}, d.step
	for k := range d.sheets {
		if d.way == MarkedLine && d.seq.between(k, n) {
			continue
		}
		d.sheets[k] = d.lay(k, before, length)
		before, length = d.sheets[k], d.step+d.carried(k)
	}
	if d.seq == EveryOther && d.way != FoldLine {
		for k := 1; k+1 < n; k += 2 {
			d.sheets[k] = d.fit(k, d.sheets[k-1], d.sheets[k+1])
		}
	}
	return d.sheets
}

func (d *dyer) missAcross() float64 { return d.sigmaX * d.draw.NormFloat64() }
func (d *dyer) missAlong() float64  { return d.sigmaY * d.draw.NormFloat64() }

// lay returns placement k (from 0) as laid after prev, which is so long.
func (d *dyer) lay(k int, prev laid, length float64) laid {
	left, right := d.missAlong(), d.missAlong() // along, at the two stars
	along, turn := (left+right)/2, (right-left)/d.base
	one, two := d.missAcross(), d.missAcross() // across
	across := (one + two) / 2
	switch d.way {
	case MarkedLine:
		return laid{across, float64(k)*d.step + along, turn}
	case FoldLine:
		return laid{across, prev.y + d.step + along, turn}
	}
	// The trailing stars that prev has printed.
	x, y := prev.trailing(length)
	if d.way == StarToStar {
		return laid{x + across, y + along, prev.turn + turn}
	}
	// One and two are misses on the edge line, at the sheet's two ends.
	turn = d.weighed(prev.turn+turn, (one-two)/d.step, 1)
	return laid{across + d.step/2*turn, y + along, turn}
}

// weighed returns the turn that least squares finds from the turn by so many
// pairs of stars and from the turn by two marks a step apart.
func (d *dyer) weighed(byStars, byLine, pairs float64) float64 {
	fx, fy, _ := relative(d.sigmaX, d.sigmaY)
	b2, s2 := pairs*d.base*d.base*fx, d.step*d.step*fy
	return (b2*byStars + s2*byLine) / (b2 + s2)
}

// fit returns placement k as laid between two finished ones: on the trailing
// stars of the one, on the leading stars of the other.
func (d *dyer) fit(k int, prev, next laid) laid {
	length := d.step + d.over[k]
	px, py := prev.trailing(d.step + d.over[k-1])
	ps, ns := math.Sin(prev.turn), math.Sin(next.turn)
	b := d.base / 2
	// Where the four marks are found along, less the sheet's own length.
	lead := [2]float64{py - b*ps + d.missAlong(), py + b*ps + d.missAlong()}
	tail := [2]float64{next.y - length - b*ns + d.missAlong(), next.y - length + b*ns + d.missAlong()}
	y := (lead[0] + lead[1] + tail[0] + tail[1]) / 4
	byStars := (lead[1] - lead[0] + tail[1] - tail[0]) / (2 * d.base)
	if d.way == EdgeLine {
		one, two := d.missAcross(), d.missAcross()
		turn := d.weighed(byStars, (one-two)/d.step, 2)
		return laid{(one+two)/2 + d.step/2*turn, y, turn}
	}
	near := px + (d.missAcross()+d.missAcross())/2
	far := next.x + (d.missAcross()+d.missAcross())/2
	turn := d.weighed(byStars, (near-far)/d.step, 1)
	return laid{(near+far)/2 + d.step/2*turn, y, turn}
}

// widest returns the widest gap or lap among the joints of a bolt, at the edge of
// the field where it is wider.
func (d *dyer) widest(sheets []laid) float64 {
	widest := 0.0
	for k := 1; k < len(sheets); k++ {
		widest = math.Max(widest, d.opens(k, sheets[k-1], sheets[k]))
	}
	return widest
}

// opens returns the gap or lap between prev and placement k.
func (d *dyer) opens(k int, prev, next laid) float64 {
	if d.way == FoldLine {
		// Both sections mirror what the fold is off by, and by what the sheet
		// reaches over it.
		fold := next.y - prev.y - d.step
		if k%2 == 1 {
			fold -= d.over[k-1]
		}
		return 2*math.Abs(fold) + 2*d.half*math.Abs(next.turn)
	}
	s, c := math.Sincos(prev.turn)
	middle := c*(next.y-prev.y) - s*(next.x-prev.x) - (d.step + d.over[k-1])
	return math.Abs(middle) + d.half*math.Abs(next.turn-prev.turn)
}
