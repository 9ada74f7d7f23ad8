package stencil

import (
	"cmp"
	"context"
	"math"
	"slices"

	"tsugime/repeat/geom"
)

// A clothMap is the paper of a cloth as a line sees it: webs and the pockets
// between them.
type clothMap struct {
	*pockets
	widest float64 // the width of the web that every line must cross
	bound  loops   // pieces that no line may part
}

// mapped returns the map of the cloth, or none where cut-outs hang together all
// along it. wider is by how much more than the usual spacing webs are looked for
// at first.
func (c *cloth) mapped(ctx context.Context, wider float64) (*clothMap, error) {
	if len(c.pieces) == 0 {
		return nil, nil
	}
	f := frameAround(c.pieces, []geom.Point{{Y: c.period}})
	most := c.farthest
	for reach := wider * math.Sqrt(f.det/float64(len(c.pieces))); ; reach *= 2 {
		if err := ctx.Err(); err != nil {
			return nil, err
		}
		reach = min(reach, most)
		s := sceneOf(c.pieces, reach, geom.Point{Y: c.period})
		webs := s.links(reach)
		bound := c.bound(webs)
		widest, ok := c.bottleneck(webs, bound)
		if !ok || widest <= float64(geom.Touch) {
			bound = c.motifs
			widest, ok = c.bottleneck(webs, bound)
		}
		if ok && widest <= float64(geom.Touch) {
			return nil, nil
		}
		if k := c.pocketsOf(s, webs); ok && len(k.left) == 1 && len(k.right) == 1 {
			return &clothMap{k, widest, bound}, nil
		}
		if reach == most {
			return nil, nil
		}
	}
}

// bottleneck returns the width of the web that every line from left to right
// must cross, the widest line crossing no narrower one: pieces are joined over
// the narrowest webs first (Kruskal 1956) until they hang together all around
// the cloth.
func (c *cloth) bottleneck(webs []link, bound loops) (float64, bool) {
	type narrow struct {
		width float64
		web   int32
	}
	order := make([]narrow, len(webs))
	for i, l := range webs {
		order[i] = narrow{l.width, int32(i)}
	}
	slices.SortFunc(order, func(a, b narrow) int { return cmp.Or(cmp.Compare(a.width, b.width), cmp.Compare(a.web, b.web)) })
	sets := bound.clone()
	for _, o := range order {
		l := &webs[o.web]
		if sets.join(l.a, l.b, c.turns(l.way)) {
			return l.width, true
		}
	}
	return 0, false
}

// Costs of a route besides its length.
const (
	// offMiddle is what a start off y = 0 costs for its distance, so that the
	// sheet lies about where its placement does.
	offMiddle = 0.125
)

// A reached web is one that the search has a way to.
type reached struct {
	cost float64
	from int32 // the web before, −1 at the margin
	side int8  // on which it is entered
	turn int   // from where it is drawn
	done bool
}

// across finds the shortest way from the left margin to the right over the
// middles of webs at least so wide and no farther than band from y = 0 (A*; the
// way straight right is a lower bound). No motif's own webs are crossed. The way crosses no web twice, so it
// never meets its copy a period on: what both would have in common could be left
// out of the shorter of the two.
func (c *cloth) across(k *clothMap, field Field, width, band float64) ([]place, bool) {
	best := make([]reached, len(k.webs))
	for i := range best {
		best[i].cost = math.Inf(1)
	}
	left, right, period := float64(field.Left), float64(field.Right()), float64(c.period)
	open := frontier{}
	offer := func(g gate, r reached) {
		l := &k.webs[g.web]
		if r.cost >= best[g.web].cost || l.width < width || k.bound.hangs(l.a, l.b, k.turns[g.web]) {
			return
		}
		r.side = g.side
		best[g.web] = r
		open.push(ahead{r.cost + max(0, right-l.middle().x), g.web})
	}
	for _, g := range k.around[k.left[0]] {
		m := k.webs[g.web].middle()
		turn := -int(math.Round(m.y / period))
		y := m.y + float64(turn)*period
		if math.Abs(y) > band {
			continue
		}
		offer(g, reached{cost: max(0, m.x-left) + offMiddle*math.Abs(y), from: -1, turn: turn})
	}
	for len(open) > 0 {
		web := open.pop().node
		if best[web].done {
			continue
		}
		best[web].done = true
		at := k.webs[web].middle()
		for side, p := range k.sides[web] {
			switch p {
			case k.right[0]:
				return k.back(web, best, period), true
			case k.left[0]:
				continue
			}
			for _, g := range k.around[p] {
				if best[g.web].done {
					continue
				}
				turn := g.turn - k.lifts[web][side]
				to := k.webs[g.web].middle().add(place{0, float64(turn) * period})
				if math.Abs(to.y+float64(best[web].turn)*period) > band {
					continue
				}
				offer(g, reached{cost: best[web].cost + to.sub(at).norm(), from: web, turn: best[web].turn + turn})
			}
		}
	}
	return nil, false
}

// back follows a way from its last web to its first.
func (k *pockets) back(web int32, best []reached, period float64) []place {
	var at []place
	for ; web >= 0; web = best[web].from {
		l, r := &k.webs[web], &best[web]
		m := l.middle().add(place{0, float64(r.turn) * period})
		d := l.q.sub(l.p)
		into := place{-d.y, d.x}.times(0.25)
		if r.side == 1 {
			into = into.times(-1)
		}
		at = append(at, m.sub(into), m, m.add(into))
	}
	slices.Reverse(at)
	return at
}
