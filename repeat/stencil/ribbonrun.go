package stencil

import (
	"math"
	"slices"

	"tsugime/repeat/geom"
)

// bands returns a ribbon for each band: the paper to the left of each line that
// runs around the torus forwards.
func (b *banks) bands(spec RibbonSpec) []Ribbon {
	var all []Ribbon
	for i, line := range b.lines {
		if line.Closed() || forwards(line.Wrap) != line.Wrap {
			continue
		}
		least, at := math.Inf(1), place{}
		over, _ := b.across(i, b.a.norm()+b.b.norm())
		for _, r := range over {
			if b.lines[r.line].Closed() {
				continue
			}
			if d := math.Min(r.d0, r.d1); d < least {
				u := r.u0
				if r.d1 < r.d0 {
					u += r.to - r.from
				}
				least, at = d, b.middle(r.side, u, d)
			}
		}
		if math.IsInf(least, 1) {
			continue
		}
		span := math.Inf(1)
		length := line.Wrap.Norm()
		if line.Wrap.X != 0 {
			span = float64(spec.Width) * length / math.Abs(float64(line.Wrap.X))
		}
		if line.Wrap.Y != 0 {
			span = math.Min(span, float64(spec.Height)*length/math.Abs(float64(line.Wrap.Y)))
		}
		all = append(all, Ribbon{At: at.point(), Along: line.Wrap, Span: geom.Length(math.Round(span)), Width: geom.Length(math.Round(least))})
	}
	return all
}

// middle returns the place half across from u along a side, where that is drawn.
func (b *banks) middle(v int32, u, across float64) place {
	s := &b.sides[v]
	d := s.b.sub(s.a)
	d = d.times(1 / d.norm())
	return s.a.add(s.drawn).add(d.times(u)).add(place{d.y, -d.x}.times(across / 2))
}

// strips returns the ribbons between slits that end.
func (b *banks) strips() []Ribbon {
	var all []Ribbon
	for i, line := range b.lines {
		length := 0.0
		for v := b.first[i]; v < b.first[i+1]; v++ {
			length += b.sides[v].b.sub(b.sides[v].a).norm()
		}
		reach := math.Min(float64(RibbonWidth), length/(2*RibbonRatio))
		if !line.Closed() {
			reach = float64(RibbonWidth)
		}
		over, length := b.across(i, reach)
		for _, run := range b.runs(i, over, length) {
			all = b.narrows(all, run)
		}
	}
	return all
}

// runs parts what lies across line i into runs that end on the same line all along,
// nowhere at more than 45° to it.
// A ribbon is told once, from the first of its two lines.
func (b *banks) runs(i int, over []reachOver, length float64) [][]reachOver {
	var all [][]reachOver
	for _, r := range over {
		if int(r.line) < i || int(r.line) == i && !(place{}).less(r.shift) ||
			!b.lines[i].Closed() && !b.lines[r.line].Closed() || math.Abs(r.d1-r.d0) > r.to-r.from {
			continue
		}
		if n := len(all); n > 0 {
			last := all[n-1][len(all[n-1])-1]
			if last.goesOn(r) {
				all[n-1] = append(all[n-1], r)
				continue
			}
		}
		all = append(all, []reachOver{r})
	}
	// A run may go on over where the line begins.
	if n := len(all); n > 1 && b.lines[i].Closed() {
		head, tail := all[0], all[n-1]
		first := head[0]
		first.from += length
		if tail[len(tail)-1].goesOn(first) {
			for _, r := range head {
				r.from, r.to = r.from+length, r.to+length
				tail = append(tail, r)
			}
			all = append(all[1:n-1], tail)
		}
	}
	return all
}

// goesOn reports whether next begins where r ends, across to the same line.
func (r reachOver) goesOn(next reachOver) bool {
	const touch = float64(geom.Touch)
	return next.line == r.line && next.shift.near(r.shift, 1) && next.from-r.to <= touch &&
		math.Abs(next.d0-r.d1) <= touch+0.1*r.d1
}

// narrows appends the ribbon about the narrowest place of a run, and those of what
// is left of the run on either side.
func (b *banks) narrows(all []Ribbon, run []reachOver) []Ribbon {
	if len(run) == 0 {
		return all
	}
	k, least := 0, math.Inf(1)
	for i, r := range run {
		if d := math.Min(r.d0, r.d1); d < least {
			k, least = i, d
		}
	}
	most := RibbonWiden * least
	lo, hi := k, k
	for lo > 0 && run[lo].d0 <= most && run[lo-1].d1 <= most {
		lo--
	}
	for hi+1 < len(run) && run[hi].d1 <= most && run[hi+1].d0 <= most {
		hi++
	}
	strip := slices.Clone(run[lo : hi+1])
	if r := &strip[0]; r.d0 > most {
		by := (r.to - r.from) * (r.d0 - most) / (r.d0 - r.d1)
		r.from, r.u0, r.d0 = r.from+by, r.u0+by, most
	}
	if r := &strip[hi-lo]; r.d1 > most {
		r.to, r.d1 = r.from+(r.to-r.from)*(most-r.d0)/(r.d1-r.d0), most
	}
	if at, span := b.centreLine(strip); least > grain && span >= RibbonRatio*least {
		all = append(all, Ribbon{At: at.point(), Span: geom.Length(math.Round(span)), Width: geom.Length(math.Round(least))})
	}
	return b.narrows(b.narrows(all, run[:lo]), run[hi+1:])
}

// centreLine returns how long the line halfway across a strip is, and its middle.
func (b *banks) centreLine(strip []reachOver) (at place, length float64) {
	line := make([]place, 0, 2*len(strip))
	for _, r := range strip {
		line = append(line, b.middle(r.side, r.u0, r.d0), b.middle(r.side, r.u0+r.to-r.from, r.d1))
	}
	for k := 1; k < len(line); k++ {
		length += line[k].sub(line[k-1]).norm()
	}
	left := length / 2
	for k := 1; k < len(line); k++ {
		d := line[k].sub(line[k-1])
		l := d.norm()
		if l >= left {
			return line[k-1].add(d.times(left / max(l, 1))), length
		}
		left -= l
	}
	return line[0], length
}
