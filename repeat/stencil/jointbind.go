package stencil

import (
	"math"
	"slices"
)

// mostBound bounds the places that are looked at to bind the pieces of one motif.
const mostBound = 20_000

// bound returns the sets that no line may part: pieces of one motif, and where
// something else stands between them the pieces by which they hang together over
// the least paper. A line around what stands between is given up by that; it
// would have to come in and leave on one side. Where the pieces bound so would
// bar the cloth it returns the motifs alone.
func (c *cloth) bound(webs []link) loops {
	sets := c.motifs.clone()
	members := c.members()
	if len(members) == 0 {
		return sets
	}
	g := c.graphOf(webs)
	for _, m := range members {
		if !g.bind(sets, m) {
			return c.motifs.clone()
		}
	}
	return sets
}

// A copyOf is a piece, so many turns from where it is drawn.
type copyOf struct {
	piece int32
	turn  int
}

// members returns the pieces of every motif that has several, each where it
// stands relative to the first.
func (c *cloth) members() [][]copyOf {
	byRoot := map[int32][]copyOf{}
	var roots []int32
	for i := range c.pieces {
		root, turn := c.drawn.find(int32(i))
		if byRoot[root] == nil {
			roots = append(roots, root)
		}
		byRoot[root] = append(byRoot[root], copyOf{int32(i), turn})
	}
	var several [][]copyOf
	for _, root := range roots {
		if m := byRoot[root]; len(m) > 1 {
			several = append(several, m)
		}
	}
	return several
}

// A webGraph is the webs about every piece.
type webGraph struct {
	webs  []link
	turns []int
	about [][]int32
}

func (c *cloth) graphOf(webs []link) *webGraph {
	g := &webGraph{webs, make([]int, len(webs)), make([][]int32, len(c.pieces))}
	for i, l := range webs {
		g.turns[i] = c.turns(l.way)
		g.about[l.a] = append(g.about[l.a], int32(i))
		if l.b != l.a {
			g.about[l.b] = append(g.about[l.b], int32(i))
		}
	}
	return g
}

// bind hangs the pieces of one motif together in sets. It reports false where
// that would bar the cloth.
func (g *webGraph) bind(sets loops, motif []copyOf) bool {
	held := g.spread(map[copyOf]bool{motif[0]: true}, motif)
	for _, m := range motif {
		if held[m] {
			continue
		}
		way := g.way(held, m)
		for i := 1; i < len(way); i++ {
			if sets.join(way[i-1].piece, way[i].piece, way[i].turn-way[i-1].turn) {
				return false
			}
			held[way[i]] = true
		}
		held = g.spread(held, motif)
	}
	return true
}

// spread adds the pieces of a motif that webs of its own join to those held.
func (g *webGraph) spread(held map[copyOf]bool, motif []copyOf) map[copyOf]bool {
	open := slices.DeleteFunc(slices.Clone(motif), func(m copyOf) bool { return !held[m] })
	for len(open) > 0 {
		at := open[len(open)-1]
		open = open[:len(open)-1]
		g.visit(at, func(to copyOf, _ float64) {
			if !held[to] && slices.Contains(motif, to) {
				held[to] = true
				open = append(open, to)
			}
		})
	}
	return held
}

// visit tells the pieces across the webs of one, and how wide each web is.
func (g *webGraph) visit(at copyOf, found func(to copyOf, width float64)) {
	for _, w := range g.about[at.piece] {
		l := &g.webs[w]
		if l.a == at.piece {
			found(copyOf{l.b, at.turn + g.turns[w]}, l.width)
		}
		if l.b == at.piece {
			found(copyOf{l.a, at.turn - g.turns[w]}, l.width)
		}
	}
}

// way returns the way over the least paper from a piece to those held, both ends
// with it, or none within mostBound places (Dijkstra 1959).
func (g *webGraph) way(held map[copyOf]bool, from copyOf) []copyOf {
	type reached struct {
		cost   float64
		before int32
		done   bool
	}
	at, number := []copyOf{from}, map[copyOf]int32{from: 0}
	best := []reached{{before: -1}}
	open := frontier{}
	open.push(ahead{0, 0})
	for len(open) > 0 && len(at) < mostBound {
		now := open.pop().node
		if best[now].done {
			continue
		}
		best[now].done = true
		if held[at[now]] {
			var way []copyOf
			for k := now; k >= 0; k = best[k].before {
				way = append(way, at[k])
			}
			return way
		}
		g.visit(at[now], func(to copyOf, width float64) {
			k, known := number[to]
			if !known {
				k = int32(len(at))
				number[to] = k
				at = append(at, to)
				best = append(best, reached{cost: math.Inf(1)})
			}
			if cost := best[now].cost + width; cost < best[k].cost {
				best[k].cost, best[k].before = cost, now
				open.push(ahead{cost, k})
			}
		})
	}
	return nil
}
