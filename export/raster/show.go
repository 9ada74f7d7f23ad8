package raster

import "math"

// A Laid is a ground and how it is laid.
type Laid struct {
	Ground *Ground
	Lays   []Lay
}

// showRows is how many rows are shown at a time: what they take stays near the
// processor. It is the same on every machine, and so is the picture.
const showRows = 32

// Show makes the plane show grounds as a screen does, each through its Footprint at
// this zoom, and nothing else. It calls ready with rows as they are done, several at
// the same time.
func (p *Plane) Show(v View, laid []Laid, ready func(y0, y1 int)) {
	if p.W == 0 || p.H == 0 {
		return
	}
	var add []func(y0, y1 int)
	bare := true
	for i, l := range laid {
		if !(v.PxPerMM > 0) || len(l.Ground.unit.discs)+len(l.Ground.unit.curves) == 0 {
			continue
		}
		by, ok := l.Ground.inRows(p, i, v, l.Lays)
		if ok {
			add = append(add, by...)
			continue
		}
		if bare {
			p.clear()
			bare = false
		}
		if l.Ground.Footprint(v.PxPerMM) == Box {
			l.Ground.PaintAll(p, v, l.Lays...)
		} else {
			l.Ground.soft(p, v, l.Lays)
		}
	}
	inParts((p.H+showRows-1)/showRows, 0, p.H, func(y0, y1 int) {
		if bare {
			clear(p.sum[y0*p.W : y1*p.W])
		}
		for _, do := range add {
			do(y0, y1)
		}
		p.settle(0, y0, p.W, y1)
		ready(y0, y1)
	})
}

// inRows returns what adds layings of the n-th ground to rows of a plane, where that can
// be done rows by rows.
func (g *Ground) inRows(p *Plane, n int, v View, lays []Lay) (add []func(y0, y1 int), ok bool) {
	switch g.Footprint(v.PxPerMM) {
	case Wide:
		t := g.tone(v.PxPerMM)
		if t == nil {
			return nil, false
		}
		for _, lay := range lays {
			if s, ok := t.sight(p, v, lay); ok {
				add = append(add, func(y0, y1 int) { s.add(p, y0, y1) })
			}
		}
		return add, true
	case Box:
		if s, ok := g.bySums(p, v, lays); ok {
			if s.parts > 1 {
				return nil, false
			}
			for len(p.shown) <= n {
				p.shown = append(p.shown, nil)
			}
			p.shown[n] = s.whole.paint(s.tile, v.PxPerMM, p.shown[n])
			for k, w := range s.windows {
				add = append(add, func(y0, y1 int) { s.whole.read(p, w, k, v.PxPerMM*v.PxPerMM, y0, y1) })
			}
			return add, true
		}
		for _, lay := range lays {
			if s, ok := g.seen(p, v, lay); ok {
				add = append(add, func(y0, y1 int) { s.add(p, y0, y1) })
			}
		}
		return add, true
	}
	return nil, false
}

// A sight is a tone as a lay puts it on a plane: the middle of pixel (x, y) lies at
// line s + sx·x + sy·y across and t + tx·x + ty·y along.
type sight struct {
	tone      *tone
	shown     rect // pixels
	s, sx, sy float64
	t, tx, ty float64
}

// sight returns how a lay shows the tone, and whether it shows anything.
func (o *tone) sight(p *Plane, v View, lay Lay) (sight, bool) {
	m := v.place(lay)
	r := v.shown(p, lay)
	if r.empty() {
		return sight{}, false
	}
	// Pixels to millimetres of the ground, then upright, then lines.
	d := m.a*m.a + m.b*m.b
	gx, gy := m.a/d, m.b/d // x of the ground changes by gx across and gy along, y by −gy and gx
	u := o.of
	k := sight{
		tone: o, shown: r,
		sx: (u.xx*gx - u.xy*gy) / o.dx, sy: (u.xx*gy + u.xy*gx) / o.dx,
		tx: (u.yx*gx - u.yy*gy) / o.dy, ty: (u.yx*gy + u.yy*gx) / o.dy,
	}
	k.s = (0.5-m.e)*k.sx + (0.5-m.f)*k.sy - o.x0/o.dx
	k.t = (0.5-m.e)*k.tx + (0.5-m.f)*k.ty - o.y0/o.dy
	if u.wide == 0 || u.high == 0 {
		k.shown = k.shown.and(k.reach())
	}
	return k, !k.shown.empty()
}

// reach returns pixels that hold all that a tone without a period reaches.
func (k *sight) reach() rect {
	all := rect{math.Inf(-1), math.Inf(-1), math.Inf(1), math.Inf(1)}
	n, m := float64(k.tone.nx-1), float64(k.tone.ny-1)
	det := k.sx*k.ty - k.sy*k.tx
	across, along := k.tone.of.wide == 0, k.tone.of.high == 0
	if across && along {
		r := rect{math.Inf(1), math.Inf(1), math.Inf(-1), math.Inf(-1)}
		for _, c := range [4][2]float64{{0, 0}, {n, 0}, {0, m}, {n, m}} {
			s, t := c[0]-k.s, c[1]-k.t
			x, y := (k.ty*s-k.sy*t)/det, (k.sx*t-k.tx*s)/det
			r = r.with(rect{math.Floor(x), math.Floor(y), math.Ceil(x) + 1, math.Ceil(y) + 1})
		}
		return r
	}
	if across && k.sy == 0 {
		a, b := -k.s/k.sx, (n-k.s)/k.sx
		all.x0, all.x1 = math.Floor(math.Min(a, b)), math.Ceil(math.Max(a, b))+1
	}
	if along && k.tx == 0 {
		a, b := -k.t/k.ty, (m-k.t)/k.ty
		all.y0, all.y1 = math.Floor(math.Min(a, b)), math.Ceil(math.Max(a, b))+1
	}
	return all
}

// add adds rows y0 up to y1.
func (k *sight) add(p *Plane, y0, y1 int) {
	var row []int32 // room for one row of the tone
	y0, y1 = max(y0, int(k.shown.y0)), min(y1, int(math.Ceil(k.shown.y1)))
	for y := y0; y < y1; y++ {
		part := math.Min(k.shown.y1, float64(y+1)) - math.Max(k.shown.y0, float64(y))
		x0, x1 := k.columns(y)
		if x0 >= x1 {
			continue
		}
		to := p.sum[y*p.W+x0 : y*p.W+x1]
		s, t := k.s+k.sx*float64(x0)+k.sy*float64(y), k.t+k.tx*float64(x0)+k.ty*float64(y)
		// The pixels that the clip cuts are weighed by hand.
		first, last := to[0], to[len(to)-1]
		if math.Abs(k.tx)*float64(len(to)) < 1.0/1024 {
			if row == nil {
				row = make([]int32, k.tone.nx)
			}
			k.tone.level(to, row, s, k.sx, t, float32(part/whole/256/256))
		} else {
			k.tone.aslant(to, s, k.sx, t, k.tx, float32(part/whole/256/256))
		}
		left, right := math.Max(k.shown.x0-float64(x0), 0), math.Max(float64(x1)-k.shown.x1, 0)
		if len(to) == 1 {
			to[0] = first + (to[0]-first)*float32(1-left-right)
			continue
		}
		to[0] = first + (to[0]-first)*float32(1-left)
		to[len(to)-1] = last + (to[len(to)-1]-last)*float32(1-right)
	}
}

// columns returns which pixels of row y lie on the tone.
func (k *sight) columns(y int) (x0, x1 int) {
	lo, hi := math.Floor(k.shown.x0), math.Ceil(k.shown.x1)
	within := func(at, by, n float64) {
		switch {
		case by > 0:
			lo, hi = math.Max(lo, math.Ceil(-at/by+0.01)), math.Min(hi, math.Floor((n-at)/by-0.01)+1)
		case by < 0:
			lo, hi = math.Max(lo, math.Ceil((n-at)/by+0.01)), math.Min(hi, math.Floor(-at/by-0.01)+1)
		case at < 0 || at >= n:
			hi = lo
		}
	}
	if k.tone.of.wide == 0 {
		within(k.s+k.sy*float64(y), k.sx, float64(k.tone.nx-1))
	}
	if k.tone.of.high == 0 {
		within(k.t+k.ty*float64(y), k.tx, float64(k.tone.ny-1))
	}
	return int(lo), int(math.Max(lo, hi))
}

// A place on the tone is counted in 2^−32 of a line, so that adding up a row's steps
// loses nothing; of a place between two lines 8 bits are used.
const places = 1 << 32

// level adds pixels that lie on one line along: s and by are where across, t is where along.
func (o *tone) level(to []float32, row []int32, s, by, t float64, scale float32) {
	n := o.nx - 1
	s, t = o.within(s, t)
	j := min(int(t), o.ny-2)
	down := int32((t - float64(j)) * 256)
	upper, lower := o.at[j*o.nx:][:o.nx], o.at[(j+1)*o.nx:][:o.nx]
	from, upto := 0, o.nx
	if end := s + by*float64(len(to)-1); end < float64(n) && end >= 0 {
		from, upto = int(math.Min(s, end)), min(int(math.Max(s, end))+3, o.nx)
	}
	row = row[:o.nx]
	for i, a := range upper[from:upto] {
		row[from+i] = int32(a)<<8 + (int32(lower[from+i])-int32(a))*down
	}
	at, step, all := int64(s*places), o.stride(by, n, o.of.wide), int64(n)*places
	for x := range to {
		r := row[at>>32:]
		a, b := r[0], r[1]
		to[x] += float32(a<<8+(b-a)*int32(at>>24&255)) * scale
		if at += step; uint64(at) >= uint64(all) {
			if at < 0 {
				at += all
			} else {
				at -= all
			}
		}
	}
}

// aslant adds pixels that lie on a slanting line of the tone.
func (o *tone) aslant(to []float32, s, by, t, down float64, scale float32) {
	s, t = o.within(s, t)
	at, step, across := int64(s*places), o.stride(by, o.nx-1, o.of.wide), int64(o.nx-1)*places
	on, fall, along := int64(t*places), o.stride(down, o.ny-1, o.of.high), int64(o.ny-1)*places
	for x := range to {
		k := int(on>>32)*o.nx + int(at>>32)
		f, g := int32(at>>24&255), int32(on>>24&255)
		upper, lower := o.at[k:k+2:k+2], o.at[k+o.nx:k+o.nx+2:k+o.nx+2]
		a := int32(upper[0])<<8 + (int32(upper[1])-int32(upper[0]))*f
		b := int32(lower[0])<<8 + (int32(lower[1])-int32(lower[0]))*f
		to[x] += float32(a<<8+(b-a)*g) * scale
		if at += step; at >= across {
			at -= across
		} else if at < 0 {
			at += across
		}
		if on += fall; on >= along {
			on -= along
		} else if on < 0 {
			on += along
		}
	}
}

// stride returns how many places a step goes on an axis of n cells, whole periods
// left out.
func (o *tone) stride(by float64, n int, period float64) int64 {
	if period > 0 {
		by = math.Mod(by, float64(n))
	}
	return int64(by * places)
}

// within brings a place into the tone by whole periods.
func (o *tone) within(s, t float64) (float64, float64) {
	back := func(v, n float64) float64 {
		if v -= math.Floor(v/n) * n; v >= n {
			return 0
		}
		return v
	}
	if o.of.wide > 0 {
		s = back(s, float64(o.nx-1))
	}
	if o.of.high > 0 {
		t = back(t, float64(o.ny-1))
	}
	return s, t
}
