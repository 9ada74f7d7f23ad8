package stencil

// ahead is a node with the least cost of a way through it.
type ahead struct {
	cost float64
	node int32
}

func (a ahead) before(b ahead) bool {
	return a.cost < b.cost || a.cost == b.cost && a.node < b.node
}

// A frontier gives the cheapest node first, equal ones in the order of their
// numbers: a binary heap.
type frontier []ahead

func (f *frontier) push(a ahead) {
	*f = append(*f, a)
	q, i := *f, len(*f)-1
	for i > 0 {
		up := (i - 1) / 2
		if !a.before(q[up]) {
			break
		}
		q[i] = q[up]
		i = up
	}
	q[i] = a
}

func (f *frontier) pop() ahead {
	q := *f
	top, last := q[0], q[len(q)-1]
	q = q[:len(q)-1]
	*f = q
	i := 0
	for {
		down := 2*i + 1
		if down >= len(q) {
			break
		}
		if down+1 < len(q) && q[down+1].before(q[down]) {
			down++
		}
		if !q[down].before(last) {
			break
		}
		q[i] = q[down]
		i = down
	}
	if len(q) > 0 {
		q[i] = last
	}
	return top
}
