package stencil

import (
	"cmp"
	"math"
	"slices"
)

// Pockets are the fields of paper between webs. Pieces and webs make a plane map
// on the cloth: the map's fields are the pockets, and a line through the paper
// is a way from pocket to pocket across webs.
//
//	●───────●       ● piece
//	 \  1  / \      ─ web
//	  \   / 2 \     1, 2 pockets
//	   \ /     \
//	    ●───────●
//
// A pocket that goes all along the cloth is the margin on the left or right.
type pockets struct {
	webs   []link
	turns  []int // of each web: from where its piece b is drawn to the copy it ends on
	around [][]gate
	sides  [][2]int32 // of each web: the pockets it parts
	lifts  [][2]int   // and the turn of the web in the frame of each
	left   []int32    // the pockets that are the left margin
	right  []int32
}

// A gate is a web of a pocket, so many turns from where it is drawn. Side 0 is to
// the left of the way from its first end to its second, x to y being a turn to
// the left.
type gate struct {
	web  int32
	side int8 // on which the pocket lies
	turn int
}

// A turning is the webs about a piece: half 2i is web i seen from its first
// piece, half 2i+1 from its second. They are sorted about each piece.
type turning struct {
	halves []int32
	where  []int32 // of each half: its place in halves
	start  []int32 // the halves of piece p are halves[start[p]:start[p+1]]
}

// pocketsOf walks about every pocket of the pieces' webs.
func (c *cloth) pocketsOf(s *scene, webs []link) *pockets {
	k := &pockets{webs: webs, turns: make([]int, len(webs)), sides: make([][2]int32, len(webs)), lifts: make([][2]int, len(webs))}
	for i, l := range webs {
		k.turns[i] = c.turns(l.way)
	}
	t := s.turningOf(webs)
	walked := make([]bool, 2*len(webs))
	var gates []gate
	for h := range walked {
		if walked[h] {
			continue
		}
		begin, turn := len(gates), 0
		me := int32(len(k.around))
		for g := int32(h); !walked[g]; g = t.before(webs, g^1) {
			walked[g] = true
			web, at := g>>1, turn
			if g&1 == 0 {
				turn += k.turns[web]
			} else {
				turn -= k.turns[web]
				at = turn
			}
			gates = append(gates, gate{web, int8(g & 1), at})
			k.sides[web][g&1], k.lifts[web][g&1] = me, at
		}
		k.around = append(k.around, gates[begin:len(gates):len(gates)])
		// The walk keeps its pocket on the side of smaller x as it goes along.
		if turn > 0 {
			k.left = append(k.left, me)
		} else if turn < 0 {
			k.right = append(k.right, me)
		}
	}
	return k
}

// before returns the half that comes before h about the piece of h.
func (t *turning) before(webs []link, h int32) int32 {
	p := pieceOf(webs, h)
	if t.where[h] == t.start[p] {
		return t.halves[t.start[p+1]-1]
	}
	return t.halves[t.where[h]-1]
}

func pieceOf(webs []link, h int32) int32 {
	if h&1 == 0 {
		return webs[h>>1].a
	}
	return webs[h>>1].b
}

// turningOf sorts the webs about every piece as they lie along its rim.
func (s *scene) turningOf(webs []link) *turning {
	t := &turning{make([]int32, 2*len(webs)), make([]int32, 2*len(webs)), make([]int32, len(s.cuts)+1)}
	keys := make([]rimKey, 2*len(webs))
	for h := range keys {
		keys[h] = s.rimKey(webs, int32(h))
		t.start[pieceOf(webs, int32(h))+1]++
	}
	for p := 1; p < len(t.start); p++ {
		t.start[p] += t.start[p-1]
	}
	next := slices.Clone(t.start)
	for h := range keys {
		p := pieceOf(webs, int32(h))
		t.halves[next[p]] = int32(h)
		next[p]++
	}
	for p := range s.cuts {
		slices.SortFunc(t.halves[t.start[p]:t.start[p+1]], func(a, b int32) int {
			return cmp.Or(keys[a].compare(keys[b]), cmp.Compare(a, b))
		})
	}
	for i, h := range t.halves {
		t.where[h] = int32(i)
	}
	return t
}

// around grows with the angle of p, from −2 to 2, and is cheaper to tell.
func (p place) around() float64 {
	share := p.x / (math.Abs(p.x) + math.Abs(p.y))
	if p.y < 0 {
		return share - 1
	}
	return 1 - share
}

// A rimKey is where a web ends on a rim: how far around a disc, or how many
// sides on and what share of one. At a corner several webs may end; their
// directions part them.
type rimKey struct {
	at  float64
	dir place
}

func (k rimKey) compare(o rimKey) int {
	if k.at != o.at {
		return cmp.Compare(k.at, o.at)
	}
	// Less than half a turn lies between two webs of a corner.
	switch turn := k.dir.cross(o.dir); {
	case turn > 0:
		return -1
	case turn < 0:
		return 1
	}
	return 0
}

func (s *scene) rimKey(webs []link, h int32) rimKey {
	l := &webs[h>>1]
	end, other, side, cut := l.p, l.q, l.ea, l.a
	if h&1 == 1 {
		end, other, side, cut = l.q.sub(l.way), l.p.sub(l.way), l.eb, l.b
	}
	dir := other.sub(end)
	if side < 0 {
		out := end.sub(s.centre(cut))
		return rimKey{out.around(), dir}
	}
	e := &s.sides.sides[side]
	end = end.sub(e.drawn)
	along := e.b.sub(e.a)
	share := end.sub(e.a).dot(along) / along.dot(along)
	switch {
	case end.near(e.a, grain):
		share = 0
	case end.near(e.b, grain):
		side, share = e.next, 0
	}
	return rimKey{float64(side) + share, dir}
}
