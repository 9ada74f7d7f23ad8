package cloth

import (
	"math/bits"
	"slices"

	"tsugime/repeat/geom"
)

// A front is how far each lane of the cloth is taken.
type front [maxLanes]geom.Length

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

// A packState is one way to have laid a set of panels.
type packState struct {
	front front
	panel int8  // the last one laid
	prev  int32 // its state in the set without that panel
	turn  int8
	y     geom.Length
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

// laid returns f once panel i lies at y.
func (p *packer) laid(f front, i int, y geom.Length) front {
	for c := p.lanes[i][0]; c < p.lanes[i][1]; c++ {
		f[c] = y + p.length[i]
	}
	return f
}

// free returns how far all lanes of panel i are taken.
func (p *packer) free(f *front, i int) geom.Length {
	y := f[p.lanes[i][0]]
	for c := p.lanes[i][0] + 1; c < p.lanes[i][1]; c++ {
		y = max(y, f[c])
	}
	return y
}

// under reports whether f and what is still to be laid beside the set may end
// before best.
func (p *packer) under(f *front, set int, avoid []Span, best geom.Length) bool {
	rest := &p.rest[set]
	for c := range p.count {
		if f[c]+rest[c] >= best {
			return false
		}
	}
	for _, a := range avoid {
		for c := range p.count {
			if p.past(f[c], c, set, a) >= best {
				return false
			}
		}
	}
	return true
}

// past returns before what no laying that goes on from a front in lane c can end
// where a stretch is avoided: panels before it end where it begins, and what is
// left then starts where it ends.
func (p *packer) past(f geom.Length, c, set int, a Span) geom.Length {
	rest := p.rest[set][c]
	room := a.From + p.tail - f
	if room < 0 || rest <= room {
		return f + rest
	}
	sums := p.sums[p.inLane[c]&^set]
	k, ok := slices.BinarySearch(sums, room)
	if !ok {
		k--
	}
	return max(f+rest, a.To-p.head+rest-sums[k])
}

func (p *packer) end(f front) geom.Length { return slices.Max(f[:p.count]) }

// fill finds the least cloth below best by dynamic programming over sets of
// panels: of two ways to lay a set the one is dropped that is no farther forward
// in any lane. It returns best where there is none, and the steps taken.
func (p *packer) fill(a []allowed, avoid []Span, best geom.Length) (used geom.Length, work int) {
	n := len(p.length)
	for i := range p.sets {
		p.sets[i] = p.sets[i][:0]
	}
	p.sets[0] = append(p.sets[0], packState{panel: -1})
	twin := p.twins(a)
	full := len(p.sets) - 1
	for set := range full {
		for k := range p.sets[set] {
			at := &p.sets[set][k]
			for i := range n {
				if set>>i&1 == 1 || twin[i] >= 0 && set>>twin[i]&1 == 0 {
					continue
				}
				work++
				y, turn := p.next(i, a[i], p.free(&at.front, i), avoid)
				f := p.laid(at.front, i, y)
				to := set | 1<<i
				if p.under(&f, to, avoid, best) {
					p.keep(to, packState{front: f, panel: int8(i), prev: int32(k), turn: turn, y: y})
				}
			}
		}
	}
	for _, s := range p.sets[full] {
		best = min(best, p.end(s.front))
	}
	return best, work
}

// twins returns, by panel, an earlier one that might as well lie in its place and
// is laid first; −1 where there is none.
func (p *packer) twins(a []allowed) []int {
	twin := make([]int, len(a))
	for i := range a {
		twin[i] = -1
		for j := range i {
			if a[i].windows == nil && a[j].windows == nil && a[i].turn == a[j].turn && p.length[i] == p.length[j] &&
				p.lanes[i] == p.lanes[j] && p.seen[i] == p.seen[j] && p.turned[i] == p.turned[j] {
				twin[i] = j
			}
		}
	}
	return twin
}

// keep adds a state to a set unless one of its states is as good, and drops
// those that it beats.
func (p *packer) keep(set int, s packState) {
	states := p.sets[set]
	for k := range states {
		if p.before(&states[k].front, &s.front) {
			return
		}
	}
	// Nobody has gone on from here yet: sets are filled from small to large.
	states = slices.DeleteFunc(states, func(t packState) bool { return p.before(&s.front, &t.front) })
	p.sets[set] = append(states, s)
}

// before reports whether f is no farther than g in any lane.
func (p *packer) before(f, g *front) bool {
	for c := range p.count {
		if f[c] > g[c] {
			return false
		}
	}
	return true
}

// A packed is panels that have been laid.
type packed struct {
	order []int
	y     []geom.Length // by panel
	turn  []int8        // by panel
}

// last returns the best way that fill has found.
func (p *packer) last(used geom.Length) packed {
	n := len(p.length)
	d := packed{make([]int, n), make([]geom.Length, n), make([]int8, n)}
	set, at := len(p.sets)-1, 0
	for k, s := range p.sets[set] {
		if p.end(s.front) == used {
			at = k
			break
		}
	}
	for k := n - 1; k >= 0; k-- {
		s := p.sets[set][at]
		i := int(s.panel)
		d.order[k], d.y[i], d.turn[i] = i, s.y, s.turn
		set, at = set&^(1<<i), int(s.prev)
	}
	return d
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
