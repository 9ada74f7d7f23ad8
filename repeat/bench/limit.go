package bench

import (
	"math"
	"tsugime/repeat/geom"

	"tsugime/repeat/pattern"
	"tsugime/repeat/stencil"
)

// limits settles the pile and lists what the methods are not trusted with.
func (p *Plan) limits(s stencil.Sheet, a Assignment) {
	p.PileMost = math.MaxInt
	worst := map[Method]*Excess{}
	webs := narrowest(s)
	web := map[Method]stencil.Web{}
	used := map[Method]Limit{}
	for i, c := range a.Choices {
		limit, ok := used[c.Method]
		if !ok {
			limit = a.Rack.Limit(c.Method)
			used[c.Method] = limit
		}
		if c.Least < limit.Hole {
			e := worst[c.Method]
			if e == nil {
				e = &Excess{Method: c.Method, What: HoleSize, Got: c.Least, Limit: limit, At: begins(s.CutOuts[i].Shape)}
				worst[c.Method] = e
			}
			if e.Count++; c.Least < e.Got {
				e.Got, e.At = c.Least, begins(s.CutOuts[i].Shape)
			}
		}
		if w, found := webs[s.CutOuts[i].Motif]; found {
			if least, any := web[c.Method]; !any || w.Width < least.Width {
				web[c.Method] = w
			}
		}
	}
	for _, m := range Methods() {
		limit, ok := used[m]
		if !ok {
			continue
		}
		if limit.Pile > 0 && limit.Pile < p.PileMost {
			p.PileMost, p.PileBy = limit.Pile, m
		}
		if e := worst[m]; e != nil {
			p.Exceeded = append(p.Exceeded, *e)
		}
		// Both ends of a web lie on the grid, so one that is as wide as asked for may
		// measure a nanometre or two less.
		if w, found := web[m]; found && w.Width+2*geom.Grid < limit.Web {
			p.Exceeded = append(p.Exceeded, Excess{Method: m, What: WebWidth, Got: w.Width, Limit: limit, At: w.P})
		}
	}
	p.pile(a.Rack)
	for i := range p.Exceeded {
		e := &p.Exceeded[i]
		e.Own = a.Rack.Owns(e.Method, e.What)
	}
}

// pile settles how many sheets are cut together. Without cut-outs that is what the
// order asks for.
func (p *Plan) pile(r Rack) {
	if p.PileBy == "" {
		p.PileMost = p.Pile
	}
	if p.Pile > p.PileMost {
		p.Exceeded = append(p.Exceeded, Excess{Method: p.PileBy, What: PileSize, Pile: p.Pile, Limit: r.Limit(p.PileBy)})
		p.Pile = p.PileMost
	}
	p.Saleable = max(0, p.Pile-1)
}

// narrowest returns the narrowest web beside each motif, of those that the sheet
// lists and its narrowest. They are of the plain pattern, at finished size.
func narrowest(s stencil.Sheet) map[pattern.ID]stencil.Web {
	webs := map[pattern.ID]stencil.Web{}
	put := func(w stencil.Web) {
		for _, id := range [2]pattern.ID{w.A, w.B} {
			if least, ok := webs[id]; !ok || w.Width < least.Width {
				webs[id] = w
			}
		}
	}
	if s.Webs.Found {
		put(s.Webs.Narrowest)
	}
	for _, w := range s.Webs.Below {
		put(w)
	}
	return webs
}
