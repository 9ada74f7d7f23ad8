package stencil

import (
	"cmp"
	"container/heap"
	"context"

	"tsugime/repeat/geom"
)

// A tying joins the pieces of a paper map by ties, one piece after another, the
// cheapest first: a piece is joined by all of its ties to pieces that are joined
// already. So any part of the paper that leaves out the first piece has as many
// ties out of it as each of its pieces: those of the one that was joined first.
type tying struct {
	*paperMap
	width geom.Length
	least int // ties of each island
	among [][]tieWay
	near  [][]int   // the pieces that have crossings to this one
	avoid *sideGrid // ties of another sheet
	room  *tieRoom  // ties laid so far
	// Of pieces that are joined: where the copy that belongs to the first piece's
	// own is, and the ways by which the joined paper comes to its own copies.
	joined []bool
	moved  []geom.Point
	loops  []geom.Point // one, or two that are not in line
	ties   []Tie
	ends   []int // of each piece
	queue  bids
	unheld []Unheld
}

// A bid is what it costs to join a piece with the crossings named.
type bid struct {
	piece, version int
	cost           float64
	by             []int
}

type bids []bid

func (b bids) Len() int           { return len(b) }
func (b bids) Less(i, j int) bool { return before(b[i], b[j]) < 0 }
func (b bids) Swap(i, j int)      { b[i], b[j] = b[j], b[i] }
func (b *bids) Push(x any)        { *b = append(*b, x.(bid)) }
func (b *bids) Pop() any {
	last := (*b)[len(*b)-1]
	*b = (*b)[:len(*b)-1]
	return last
}

func before(a, b bid) int { return cmp.Or(cmp.Compare(a.cost, b.cost), cmp.Compare(a.piece, b.piece)) }

// short makes a piece that gets fewer ties than it needs wait for all others.
const short = 1e9

// join joins all pieces that can be joined, starting beside those that are.
func (t *tying) join(ctx context.Context) error {
	version := make([]int, len(t.pieces))
	offer := func(k int) {
		version[k]++
		if by, cost := t.best(k); len(by) > 0 {
			heap.Push(&t.queue, bid{k, version[k], cost, by})
		}
	}
	offerAround := func(k int) {
		for _, o := range t.near[k] {
			if !t.joined[o] {
				offer(o)
			}
		}
	}
	for k, joined := range t.joined {
		if joined {
			offerAround(k)
		}
	}
	for len(t.queue) > 0 {
		if err := ctx.Err(); err != nil {
			return err
		}
		b := heap.Pop(&t.queue).(bid)
		k := b.piece
		if t.joined[k] || b.version != version[k] {
			continue
		}
		if !t.layAll(k, b.by) { // some don't fit: choose anew
			offer(k)
			continue
		}
		c := t.among[k][b.by[0]]
		t.hold(k, t.moved[c.to.piece].Sub(c.to.shift))
		for _, i := range b.by {
			t.take(k, i)
		}
		offerAround(k)
	}
	return nil
}

// squeeze lets ties come so near to each other: what had no room is looked at again.
func (t *tying) squeeze(apart float64) {
	t.room.apart = apart
	for k := range t.among {
		for i := range t.among[k] {
			t.among[k][i].tight = false
		}
	}
}

// hold counts a piece as joined.
func (t *tying) hold(k int, moved geom.Point) {
	t.joined[k], t.moved[k] = true, moved
	switch p := t.pieces[k]; p.kind {
	case body:
		t.loop(geom.Point{X: 1})
		t.loop(geom.Point{Y: 1})
	case ribbon:
		t.loop(p.along)
	}
}

// loop adds a way by which the joined paper comes to its own copy, and reports
// whether it is a new one.
func (t *tying) loop(way geom.Point) bool {
	if !t.opens(way) {
		return false
	}
	t.loops = append(t.loops, way)
	return true
}

// opens reports whether a loop would hold the paper in one more direction.
func (t *tying) opens(way geom.Point) bool {
	return len(t.loops) == 0 && way != geom.Point{} || len(t.loops) == 1 && t.loops[0].Cross(way) != 0
}

// around returns the way by which way c of a joined piece leads around.
func (t *tying) around(k int, c tieWay) geom.Point {
	return t.moved[k].Sub(t.moved[c.to.piece].Sub(c.to.shift))
}

// take adds the tie that was laid along a way across.
func (t *tying) take(k, i int) {
	c := &t.among[k][i]
	t.ties = append(t.ties, *c.laid)
	t.loop(t.around(k, *c))
	t.ends[k]++
	t.ends[c.to.piece]++
	c.bad = true // once is enough
}

// layAll lays a tie along each of the crossings and reports whether all fit.
func (t *tying) layAll(k int, by []int) bool {
	fit := true
	before := t.room.len()
	for _, i := range by {
		c := &t.among[k][i]
		tie, ok := t.lay(k, *c, t.width)
		switch {
		case !ok:
			c.bad, fit = true, false
		case !t.room.take(tie):
			c.tight, fit = true, false
		default:
			c.laid = &tie
		}
	}
	if !fit {
		t.room.giveBack(before)
		for _, i := range by {
			t.among[k][i].laid = nil
		}
	}
	return fit
}

// best returns the crossings that join piece k to the joined ones at least cost.
func (t *tying) best(k int) (by []int, cost float64) {
	return t.bestOf(k, t.need(k), func(c tieWay) bool { return t.joined[c.to.piece] })
}

// need returns how many ties piece k should have.
func (t *tying) need(k int) int {
	if p := t.pieces[k]; p.kind == ribbon {
		return ribbonTies(p.along, t.least)
	}
	return t.least
}

func (t *tying) bestOf(k, n int, accept func(tieWay) bool) (by []int, cost float64) {
	among := t.among[k]
	usable := make([]int, 0, len(among))
	for i, c := range among {
		if !c.bad && !c.tight && accept(c) {
			usable = append(usable, i)
		}
	}
	apart := t.width + t.width/2
	if t.pieces[k].kind == ribbon {
		by = evenly(among, usable, n, apart)
	} else {
		by = spread(among, usable, n, apart)
	}
	turns := make([]float64, len(by))
	for i, j := range by {
		cost += among[j].cost
		turns[i] = among[j].turn
	}
	if cost = spreadCost(cost, turns); len(by) < n {
		cost += short
	}
	return by, cost
}
