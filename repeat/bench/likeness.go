package bench

import (
	"cmp"
	"math"
	"slices"

	"tsugime/repeat/geom"
)

// A Likeness is how a punch lies on a shape that it is to cut: mirrored left to
// right or not, then turned, then moved.
type Likeness struct {
	TurnDeg  float64 // clockwise on the sheet, 0 to 360
	Mirrored bool
	// Off is the greatest distance from a rim of the one to the nearest of the other.
	Off geom.Length
}

// onto returns how g has to lie to be like f within off, as near as it comes.
func (f form) onto(g form, off float64) (Likeness, bool) {
	best, found := Likeness{}, false
	for _, mirrored := range []bool{false, true} {
		h := g
		if mirrored {
			h = g.mirrored()
		}
		for _, shift := range f.shifts(h, 2*off+f.step) {
			turn, move := f.settled(h, shift)
			c, s := math.Cos(turn), math.Sin(turn)
			most := departure(h.rings, f.rings, c, s, move, off)
			most = math.Max(most, departureBack(f.rings, h.rings, c, s, move, off))
			if l := geom.Length(math.Ceil(most)); most <= off && (!found || l < best.Off) {
				best, found = Likeness{degreesOf(turn), mirrored, l}, true
			}
			if found && float64(best.Off) < off/8 {
				return best, true
			}
		}
	}
	return best, found
}

// degreesOf returns radians as degrees from 0 to 360, to a millionth.
func degreesOf(turn float64) float64 {
	deg := math.Round(turn*180/math.Pi*1e6) / 1e6
	if deg = math.Mod(deg, 360); deg < 0 {
		deg += 360
	}
	return deg + 0
}

// shifts returns the few starts on h from which its distances from the middle are
// most like those of f, in the mean square within off; both senses of running are
// tried, and of starts side by side the best.
func (f form) shifts(h form, off float64) []int {
	const kept = 4
	most := off * off * looks
	var cost [2 * looks]float64
	for k := range cost {
		for i, p := range f.samples {
			d := p.norm() - h.sample(i, k).norm()
			if cost[k] += d * d; cost[k] > most {
				break
			}
		}
	}
	var best []int
	for k := range cost {
		sense := k / looks * looks
		before, after := sense+(k+looks-1)%looks, sense+(k+1)%looks
		if cost[k] <= most && cost[k] <= cost[before] && cost[k] < cost[after] {
			best = append(best, k)
		}
	}
	slices.SortStableFunc(best, func(i, j int) int { return cmp.Compare(cost[i], cost[j]) })
	return best[:min(len(best), kept)]
}

// sample is the i-th place of h begun at k; from looks on h runs the other way.
func (h form) sample(i, k int) place {
	if k >= looks {
		return h.samples[(k-i+2*looks)%looks]
	}
	return h.samples[(i+k)%looks]
}

// settled returns the turn and move that lay h on f best in the mean, first place
// by place, then each place on the nearest of the other rim.
func (f form) settled(h form, shift int) (turn float64, move place) {
	to := make([]place, looks)
	from := make([]place, looks)
	for i := range to {
		from[i], to[i] = h.sample(i, shift), f.samples[i]
	}
	turn, move = laid(from, to)
	for range 4 {
		c, s := math.Cos(turn), math.Sin(turn)
		for i, p := range from {
			q := p.turned(c, s)
			to[i], _ = nearestOn(f.rings, place{q.x + move.x, q.y + move.y})
		}
		turn, move = laid(from, to)
	}
	return turn, move
}

// laid returns the turn and move of least squares from places to places (the plane
// case of W. Kabsch, 1976).
func laid(from, to []place) (turn float64, move place) {
	n := float64(len(from))
	var a, b place
	for i := range from {
		a.x, a.y = a.x+from[i].x/n, a.y+from[i].y/n
		b.x, b.y = b.x+to[i].x/n, b.y+to[i].y/n
	}
	var dot, cross float64
	for i := range from {
		p, q := from[i].sub(a), to[i].sub(b)
		dot += p.x*q.x + p.y*q.y
		cross += p.x*q.y - p.y*q.x
	}
	turn = math.Atan2(cross, dot)
	at := a.turned(math.Cos(turn), math.Sin(turn))
	return turn, b.sub(at)
}

// departure is the greatest distance from the laid rings to the others; places
// along the pieces are looked at too. Beyond enough it looks no further.
func departure(rings, others [][]place, c, s float64, move place, enough float64) float64 {
	var most float64
	for _, line := range rings {
		for _, p := range sampled(line, around(line), max(looks, len(line))) {
			q := p.turned(c, s)
			_, d := nearestOn(others, place{q.x + move.x, q.y + move.y})
			if most = math.Max(most, d); most > enough {
				return most
			}
		}
	}
	return most
}

// departureBack is the same from the others to the laid rings.
func departureBack(others, rings [][]place, c, s float64, move place, enough float64) float64 {
	back := place{-move.x, -move.y}.turned(c, -s)
	return departure(others, rings, c, -s, back, enough)
}

// nearestOn returns the place on closed lines that is nearest to p, and how far.
func nearestOn(rings [][]place, p place) (place, float64) {
	var best place
	least := math.Inf(1)
	for _, line := range rings {
		a := line[len(line)-1]
		for _, b := range line {
			d := b.sub(a)
			t := 0.0
			if l := d.x*d.x + d.y*d.y; l > 0 {
				t = math.Min(math.Max(((p.x-a.x)*d.x+(p.y-a.y)*d.y)/l, 0), 1)
			}
			q := place{a.x + t*d.x, a.y + t*d.y}
			if r := (p.x-q.x)*(p.x-q.x) + (p.y-q.y)*(p.y-q.y); r < least {
				best, least = q, r
			}
			a = b
		}
	}
	return best, math.Sqrt(least)
}

// LikenessOf returns how a punch lies on a shape to be most like it, whatever the
// turn or mirror of either. Shapes of different numbers of contours, or of areas and
// reaches that can't fit within, are not compared and not like.
func LikenessOf(shape, punch geom.Outline, within geom.Length) (Likeness, bool) {
	if len(shape) == 0 || len(punch) == 0 {
		return Likeness{}, false
	}
	return formOf(shape).like(formOf(punch), within)
}

func (f form) like(g form, within geom.Length) (Likeness, bool) {
	if !f.mayBe(g, float64(within)) {
		return Likeness{}, false
	}
	return f.onto(g, float64(within))
}
