package pattern

import "strings"

// parts is the denominator of an operation's shift and of the coordinates of
// symmetry elements: halves of thirds of quarters are whole in it.
const parts = 24

// An Op is one operation of a plane group in the coordinates of a conventional
// cell: (x, y) goes to M·(x, y) + T, T in 24ths of the cell's vectors.
type Op struct {
	M [2][2]int
	T [2]int
}

// then returns the operation that does o first and p after it, its shift taken
// into the cell.
func (o Op) then(p Op) Op {
	var q Op
	for i := range 2 {
		for j := range 2 {
			q.M[i][j] = p.M[i][0]*o.M[0][j] + p.M[i][1]*o.M[1][j]
		}
		q.T[i] = wrapped(p.M[i][0]*o.T[0] + p.M[i][1]*o.T[1] + p.T[i])
	}
	return q
}

// det is 1 for a turn and −1 for a mirror or glide.
func (o Op) det() int { return o.M[0][0]*o.M[1][1] - o.M[0][1]*o.M[1][0] }

// order returns how often o's linear part is done until all is back: 1, 2, 3, 4
// or 6, from its trace (crystallographic restriction).
func (o Op) order() int {
	if o.det() < 0 {
		return 2
	}
	return map[int]int{2: 1, -2: 2, -1: 3, 0: 4, 1: 6}[o.M[0][0]+o.M[1][1]]
}

// apply returns where a place goes, in fractions of the cell.
func (o Op) apply(x, y float64) (u, v float64) {
	return float64(o.M[0][0])*x + float64(o.M[0][1])*y + float64(o.T[0])/parts,
		float64(o.M[1][0])*x + float64(o.M[1][1])*y + float64(o.T[1])/parts
}

func wrapped(t int) int { return ((t % parts) + parts) % parts }

// opOf reads coordinates such as "-x+1/2,y+1/2".
func opOf(triplet string) Op {
	var o Op
	for i, text := range strings.Split(triplet, ",") {
		if rest, ok := strings.CutSuffix(text, "+1/2"); ok {
			o.T[i], text = parts/2, rest
		}
		sign := 1
		for _, c := range text {
			switch c {
			case '-':
				sign = -1
			case '+':
				sign = 1
			default:
				o.M[i][c-'x'] = sign
			}
		}
	}
	return o
}

// closed returns every operation that the generators make, the identity first.
func closed(generators []string) []Op {
	ops := []Op{{M: [2][2]int{{1, 0}, {0, 1}}}}
	seen := map[Op]bool{ops[0]: true}
	for i := 0; i < len(ops); i++ {
		for _, g := range generators {
			if next := ops[i].then(opOf(g)); !seen[next] {
				seen[next] = true
				ops = append(ops, next)
			}
		}
	}
	return ops
}
