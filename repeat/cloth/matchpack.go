package cloth

import (
	"math/bits"
	"slices"

	"tsugime/repeat/geom"
)

// A packer lays panels one after another, each as early as its lanes, its phase
// and the avoided stretches allow.
type packer struct {
	period geom.Length
	length []geom.Length
	lanes  [][2]int        // by panel, the first lane that it takes and the next after it
	rest   []front         // by set of panels, what those not in it still need of each lane
	inLane []int           // by lane, the set of panels that take it
	sums   [][]geom.Length // by set of panels, the lengths of all its parts; for avoided stretches
	head   geom.Length     // how far a panel may reach into a stretch behind it at most
	tail   geom.Length     // and into one before it
	seen   [][2]Span       // by panel and turn: what must keep off the avoided stretches, from its corner
	slides [][2]Span       // by panel and turn: z − y
	sets   [][]packState   // by set of panels
	count  int             // of lanes
	turned []int8          // by panel, how it lies where nothing speaks for a turn
}

// An allowed is where a panel may lie: y in the windows modulo the period, nil
// for anywhere, and how it may be turned.
type allowed struct {
	windows []berth
	turn    int8 // −1 is either
}

func newPacker(m Matching, period geom.Length) packer {
	p := packer{period: period}
	var edges []geom.Length
	for _, l := range m.Laying.Panels {
		edges = append(edges, l.X, l.X+l.Width)
	}
	slices.Sort(edges)
	edges = slices.Compact(edges)
	lane := func(x geom.Length) int { i, _ := slices.BinarySearch(edges, x); return i }
	p.count = len(edges) - 1
	for i, l := range m.Laying.Panels {
		p.length = append(p.length, l.Length)
		p.lanes = append(p.lanes, [2]int{lane(l.X), lane(l.X + l.Width)})
		seen, slide := Span{0, l.Length}, Span{}
		if m.Seen != nil {
			seen = m.Seen[i]
		}
		if m.Slides != nil {
			slide = m.Slides[i]
		}
		p.turned = append(p.turned, asDrawn(l.Turned))
		// The seen part slides too; where it may come to be is avoided as a whole.
		seen = Span{seen.From + slide.From, seen.To + slide.To}
		p.seen = append(p.seen, [2]Span{seen, {l.Length - seen.To, l.Length - seen.From}})
		p.slides = append(p.slides, [2]Span{slide, {-slide.To, -slide.From}})
	}
	if n := len(p.length); n <= exactPanels {
		p.sets = make([][]packState, 1<<n)
		p.addRests(n)
		if len(m.Avoid) > 0 {
			p.addSums(n)
		}
	}
	return p
}

func (p *packer) addRests(n int) {
	p.rest = make([]front, 1<<n)
	p.inLane = make([]int, p.count)
	for i := range n {
		for c := p.lanes[i][0]; c < p.lanes[i][1]; c++ {
			p.inLane[c] |= 1 << i
			for set := range p.rest {
				if set>>i&1 == 0 {
					p.rest[set][c] += p.length[i]
				}
			}
		}
	}
}

func (p *packer) addSums(n int) {
	p.sums = make([][]geom.Length, 1<<n)
	p.sums[0] = []geom.Length{0}
	for set := 1; set < 1<<n; set++ {
		i := bits.TrailingZeros(uint(set))
		without := p.sums[set&(set-1)]
		both := slices.Clone(without)
		for _, s := range without {
			both = append(both, s+p.length[i])
		}
		slices.Sort(both)
		p.sums[set] = slices.Compact(both)
	}
	for i, seen := range p.seen {
		for _, s := range seen {
			p.head, p.tail = max(p.head, s.From), max(p.tail, p.length[i]-s.To)
		}
	}
}

// next returns the least y from the given one on at which panel i may lie and
// how it is turned there.
func (p *packer) next(i int, a allowed, from geom.Length, avoid []Span) (y geom.Length, turn int8) {
	if a.turn >= 0 {
		return p.clear(i, a.turn, a, from, avoid), a.turn
	}
	turn = p.turned[i]
	y = p.clear(i, turn, a, from, avoid)
	if len(avoid) > 0 {
		if other := p.clear(i, 1-turn, a, from, avoid); other < y {
			return other, 1 - turn
		}
	}
	return y, turn
}

// clear returns the least y from the given one on in the windows at which the
// seen part keeps off the avoided stretches, which are in their order.
func (p *packer) clear(i int, turn int8, a allowed, y geom.Length, avoid []Span) geom.Length {
	y = p.inWindows(a.windows, y)
	seen := p.seen[i][turn]
	for k := 0; k < len(avoid); k++ {
		if avoid[k].reaches(y+seen.From, seen.To-seen.From) {
			y = p.inWindows(a.windows, avoid[k].To-seen.From)
		}
	}
	return y
}

func (p *packer) inWindows(windows []berth, y geom.Length) geom.Length {
	if windows == nil {
		return y
	}
	least := far
	for _, w := range windows {
		k := (y - w.from) % p.period
		if k < 0 {
			k += p.period
		}
		if k <= w.wide {
			return y
		}
		least = min(least, p.period-k)
	}
	return y + least
}

// A packed is panels that have been laid.
type packed struct {
	order []int
	y     []geom.Length // by panel
	turn  []int8        // by panel
}

// inOrder lays the panels in the given order.
func (p *packer) inOrder(order []int, a []allowed, avoid []Span) (packed, geom.Length) {
	n := len(p.length)
	d := packed{slices.Clone(order), make([]geom.Length, n), make([]int8, n)}
	var f front
	for _, i := range order {
		d.y[i], d.turn[i] = p.next(i, a[i], p.free(&f, i), avoid)
		f = p.laid(f, i, d.y[i])
	}
	return d, p.end(f)
}
