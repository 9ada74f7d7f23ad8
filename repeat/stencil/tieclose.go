package stencil

// close adds ties until the joined paper hangs together in both directions, and
// reports whether it does.
func (t *tying) close() bool {
	for len(t.loops) < 2 {
		k, by := t.closing()
		if k < 0 {
			return false
		}
		if t.layAll(k, by) {
			for _, i := range by {
				t.take(k, i)
			}
		}
	}
	return true
}

// closing returns the cheapest crossings of one piece that open a new direction.
func (t *tying) closing() (piece int, by []int) {
	piece = none
	var least float64
	for k := range t.pieces {
		if !t.joined[k] {
			continue
		}
		n := 1
		if t.pieces[k].kind == ribbon {
			n = t.need(k)
		}
		opens := func(c tieWay) bool { return t.joined[c.to.piece] && t.opens(t.around(k, c)) }
		if some, cost := t.bestOf(k, n, opens); len(some) > 0 && (piece == none || cost < least) {
			piece, by, least = k, some, cost
		}
	}
	return piece, by
}

// topUp adds ties to islands that have too few, to any paper that is joined.
func (t *tying) topUp() {
	for k, p := range t.pieces {
		for p.kind == island && t.joined[k] && t.ends[k] < t.least {
			by, _ := t.bestOf(k, t.least-t.ends[k], func(c tieWay) bool { return t.joined[c.to.piece] && t.clear(k, c) })
			if len(by) == 0 {
				break
			}
			if !t.layAll(k, by[:1]) {
				continue
			}
			t.take(k, by[0])
		}
	}
}

// clear reports whether a way across keeps off the ties that piece k has.
func (t *tying) clear(k int, c tieWay) bool {
	for i := range t.among[k] {
		if d := &t.among[k][i]; d.laid != nil && d.bad && tooNear(&c, d, t.width+t.width/2) {
			return false
		}
	}
	return true
}
