package bench

import (
	"math"

	"tsugime/repeat/geom"
)

// looks is at how many places along its longest contour a shape is looked at. The
// turn is found to a fraction of such a step, then settled.
const looks = 128

// A form is a shape in a frame of its own, for being compared: its contours as
// straight pieces, evenly spaced places along the longest, about their middle.
type form struct {
	areaMM2, rimMM float64
	rings          [][]place
	samples        []place
	step           float64 // between two samples, along the rim
	far, mean      float64 // from the middle to the rim: the most, and of the samples
}

// A place is a point in nanometres.
type place struct{ x, y float64 }

func (p place) sub(q place) place         { return place{p.x - q.x, p.y - q.y} }
func (p place) norm() float64             { return math.Hypot(p.x, p.y) }
func (p place) turned(c, s float64) place { return place{p.x*c - p.y*s, p.x*s + p.y*c} }

// formOf looks at an outline. It has at least one contour.
func formOf(o geom.Outline) form {
	f := form{areaMM2: o.AreaMM2(), rimMM: o.RimMM()}
	longest, most := 0, -1.0
	for i, ring := range o.Rings(2 * geom.Chord) {
		line := make([]place, len(ring))
		for k, p := range ring {
			line[k] = place{float64(p.X), float64(p.Y)}
		}
		f.rings = append(f.rings, line)
		if l := around(line); l > most {
			longest, most = i, l
		}
	}
	f.samples, f.step = sampled(f.rings[longest], most, looks), most/looks
	c := middleOf(f.rings[longest], most)
	shift := func(line []place) {
		for i := range line {
			line[i] = line[i].sub(c)
		}
	}
	for _, line := range f.rings {
		shift(line)
	}
	shift(f.samples)
	for _, p := range f.rings[longest] {
		f.far = max(f.far, p.norm())
	}
	for _, p := range f.samples {
		f.mean += p.norm() / looks
	}
	return f
}

// middleOf is the middle of a closed line of that length.
func middleOf(line []place, length float64) (c place) {
	for i, p := range line {
		q := line[(i+1)%len(line)]
		w := q.sub(p).norm() / length / 2
		c.x, c.y = c.x+w*(p.x+q.x), c.y+w*(p.y+q.y)
	}
	return c
}

// around is the length of a closed line.
func around(line []place) (sum float64) {
	for i, p := range line {
		sum += line[(i+1)%len(line)].sub(p).norm()
	}
	return sum
}

// sampled returns n evenly spaced places along a closed line of that length.
func sampled(line []place, length float64, n int) []place {
	out := make([]place, 0, n)
	gone := 0.0 // where line[i] stands
	for i, p := range line {
		q := line[(i+1)%len(line)]
		piece := q.sub(p).norm()
		for len(out) < n {
			t := (float64(len(out))*length/float64(n) - gone) / piece
			if !(t < 1) { // also where a piece has no length
				break
			}
			out = append(out, place{p.x + t*(q.x-p.x), p.y + t*(q.y-p.y)})
		}
		gone += piece
	}
	for len(out) < n {
		out = append(out, line[0])
	}
	return out
}

// mayBe reports whether two forms can lie within off of each other at all: then
// their areas differ by no more than a strip along the rim, and their reaches by
// little more than twice off, since the middles may differ too.
func (f form) mayBe(g form, off float64) bool {
	return len(f.rings) == len(g.rings) && f.nearArea(g.areaMM2, geom.Length(off)) &&
		math.Abs(f.far-g.far) <= 2.5*off && math.Abs(f.mean-g.mean) <= 2*off+f.step/8
}

// nearArea reports whether a shape of that area can lie within off of f: a strip
// along the rim, half as much again for its bends.
func (f form) nearArea(areaMM2 float64, off geom.Length) bool {
	return math.Abs(f.areaMM2-areaMM2) <= 1.5*off.MM()*f.rimMM+7*off.MM()*off.MM()
}

// mirrored is the form mirrored left to right, its contours run the other way.
func (f form) mirrored() form {
	flip := func(line []place) []place {
		out := make([]place, len(line))
		for i, p := range line {
			out[(len(line)-i)%len(line)] = place{-p.x, p.y}
		}
		return out
	}
	m := f
	m.samples, m.rings = flip(f.samples), nil
	for _, line := range f.rings {
		m.rings = append(m.rings, flip(line))
	}
	return m
}
