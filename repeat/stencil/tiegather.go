package stencil

import (
	"math"
	"runtime"
	"sync"
)

// gather finds the crossings of all pieces, on all processors.
func (p *proposal) gather(finer int) [][]tieWay {
	n := len(p.pieces)
	among := make([][]tieWay, n)
	var together sync.WaitGroup
	workers := runtime.GOMAXPROCS(0)
	for w := range workers {
		together.Go(func() {
			for k := w; k < n; k += workers {
				if p.pieces[k].kind == body || p.beyond[p.pieces[k].rim].piece != k {
					continue
				}
				among[k] = p.crossings(k, p.width, finer)
				if p.pieces[k].kind == island {
					p.preferLines(k, among[k])
				}
			}
		})
	}
	together.Wait()
	p.mirror(among)
	for k := range among {
		p.setTurns(k, among[k])
	}
	return among
}

// neighbours returns the pieces that have crossings to each piece.
func neighbours(among [][]tieWay) [][]int {
	near := make([][]int, len(among))
	for k := range among {
		for i := range among[k] {
			to := among[k][i].to.piece
			if l := len(near[to]); l == 0 || near[to][l-1] != k {
				near[to] = append(near[to], k)
			}
		}
	}
	return near
}

// preferLines makes crossings on the lines of symmetry of an island cheaper.
func (p *proposal) preferLines(k int, among []tieWay) {
	if len(among) == 0 {
		return
	}
	id, _, _ := p.owner(among[0].middle())
	p.preferred(among, centreOf(p.lines[p.pieces[k].rim]), p.width, p.turns[id])
}

// mirror tells every piece of the crossings that others have to it.
func (m *paperMap) mirror(all [][]tieWay) {
	back := make([][]tieWay, len(m.pieces))
	for k, among := range all {
		for _, c := range among {
			if to := c.to.piece; m.pieces[to].kind != body && to != k {
				back[to] = append(back[to], c.back(k))
			}
		}
	}
	for k, more := range back {
		all[k] = append(all[k], more...)
	}
}

// setTurns tells where around or along a piece its crossings lie.
func (m *paperMap) setTurns(k int, among []tieWay) {
	if len(among) == 0 {
		return
	}
	p := m.pieces[k]
	from := m.lines[p.rim].Points[0]
	if p.kind == island {
		from = centreOf(m.lines[p.rim])
	}
	for i := range among {
		c := &among[i]
		way := placeOf(c.p.Sub(from))
		if p.kind == island {
			c.turn = math.Atan2(way.y, way.x) * 180 / math.Pi
		} else {
			along := placeOf(p.along)
			c.turn = 360 * way.dot(along) / along.dot(along)
		}
	}
}
