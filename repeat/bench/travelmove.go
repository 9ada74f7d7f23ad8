package bench

// worthwhile is the least way in nanometres that a change must save: far above
// what sums of float64 lose, so that no change is made for ever.
const worthwhile = 1

// longestMoved is how many places a run may have that is moved whole.
const longestMoved = 3

// improve looks at every place in the order of the tour until no change saves way.
func (t *tour) improve() {
	t.look(t.run...)
	t.settle()
	t.undo = t.undo[:0]
}

// settle works the queue off and returns the way saved.
func (t *tour) settle() float64 {
	var saved float64
	for t.count > 0 {
		p := t.queue[t.head]
		t.head = (t.head + 1) % len(t.queue)
		t.count--
		t.in[p] = false
		for {
			gain := t.better(p)
			if gain == 0 {
				break
			}
			saved += gain
		}
	}
	return saved
}

// better makes one change at p that saves way and returns how much; zero where
// there is none.
func (t *tour) better(p int32) float64 {
	if gain := t.turnedRun(p); gain > 0 {
		return gain
	}
	return t.movedRun(p)
}

// turnedRun is 2-opt: the ways p–q and c–d become p–c and q–d.
func (t *tour) turnedRun(p int32) float64 {
	for _, forward := range [2]bool{true, false} {
		step := t.before
		if forward {
			step = t.next
		}
		q := step(p)
		pq := t.length(p, q)
		for _, c := range t.near[p] {
			pc := t.length(p, c)
			if pc >= pq {
				break
			}
			d := step(c)
			gain := pq + t.length(c, d) - pc - t.length(q, d)
			if gain <= worthwhile || c == q || d == p {
				continue
			}
			if forward {
				t.turn(q, c)
			} else {
				t.turn(c, q)
			}
			t.look(p, q, c, d)
			return gain
		}
	}
	return 0
}

// movedRun is Or-opt: a run of up to three places that ends at p is moved between
// a near neighbour of p and one of its own neighbours, either way round.
func (t *tour) movedRun(p int32) float64 {
	for _, forward := range [2]bool{true, false} {
		// The run goes from p away from the side that p will turn to c.
		far := p
		for range longestMoved {
			if gain := t.moved(p, far, forward); gain > 0 {
				return gain
			}
			if forward {
				far = t.next(far)
			} else {
				far = t.before(far)
			}
			if far == p {
				return 0
			}
		}
	}
	return 0
}

// moved tries to move the run from p to far, which follows p where forward is set
// and comes before it where not.
func (t *tour) moved(p, far int32, forward bool) float64 {
	first, last := p, far
	if !forward {
		first, last = far, p
	}
	left, right := t.before(first), t.next(last)
	if left == last || left == right {
		return 0
	}
	freed := t.length(left, first) + t.length(last, right) - t.length(left, right)
	if freed <= worthwhile {
		return 0
	}
	for _, c := range t.near[p] {
		pc := t.length(p, c)
		if pc >= freed {
			break
		}
		if t.within(c, first, last) {
			continue
		}
		for _, d := range [2]int32{t.next(c), t.before(c)} {
			if t.within(d, first, last) {
				continue
			}
			gain := freed - pc - t.length(far, d) + t.length(c, d)
			if gain <= worthwhile {
				continue
			}
			t.insert(first, last, c, d, p == first)
			t.look(left, right, first, last, c, d)
			return gain
		}
	}
	return 0
}

// within reports whether c stands in the short run from first on to last.
func (t *tour) within(c, first, last int32) bool {
	for q := first; ; q = t.next(q) {
		if q == c {
			return true
		}
		if q == last {
			return false
		}
	}
}

// insert moves the run first…last between c and d, which are neighbours: all by
// turning runs round. toC says that first comes to stand beside c, else last.
func (t *tour) insert(first, last, c, d int32, toC bool) {
	// Behind the run, up to the gap: either before … c|d or d|c, going forward.
	x, y := c, d // x stands before y
	if t.next(c) != d {
		x, y = d, c
	}
	right, left := t.next(last), t.before(first)
	// Which end shall meet x?
	firstAtX := toC == (x == c)
	n := int32(len(t.run))
	ahead := (t.pos[x] - t.pos[last] + n) % n
	behind := (t.pos[first] - t.pos[y] + n) % n
	runs := make([][2]int32, 0, 3)
	if ahead <= behind {
		// run, right…x becomes x…right after last…first, then right…x.
		runs = append(runs, [2]int32{first, x}, [2]int32{x, right})
	} else {
		// y…left, run becomes last…first, left…y, then y…left.
		runs = append(runs, [2]int32{y, last}, [2]int32{left, y})
	}
	if firstAtX {
		runs = append(runs, [2]int32{last, first})
	}
	t.turnAll(runs...)
}

// kick changes small stretches at chance places and keeps what comes out shorter.
func (t *tour) kick(times int) {
	n := len(t.run)
	if n < 8 {
		return
	}
	for range times {
		var cuts [3]int32
		start, span := t.rnd.IntN(n), min(n-2, 50)
		a := 1 + t.rnd.IntN(span-1)
		b := a + 1 + t.rnd.IntN(span-a)
		for k, off := range [3]int{0, a, b} {
			cuts[k] = t.run[(start+off)%n]
		}
		if t.bridged(cuts) < 0 {
			t.back()
		}
		t.undo = t.undo[:0]
	}
}

// bridged swaps the runs behind cuts 0 and 1 up to cut 2 (a double bridge),
// improves, and returns the way saved in all.
func (t *tour) bridged(cuts [3]int32) float64 {
	p, q, r := cuts[0], cuts[1], cuts[2]
	a, b, after := t.next(p), t.next(q), t.next(r)
	saved := t.length(p, a) + t.length(q, b) + t.length(r, after) -
		t.length(p, b) - t.length(r, a) - t.length(q, after)
	// a…q, b…r becomes r…b, q…a, then b…r, q…a, then b…r, a…q.
	t.turnAll([2]int32{a, r}, [2]int32{r, b}, [2]int32{q, a})
	t.look(p, a, q, b, r, after)
	return saved + t.settle()
}
