package geom

import (
	"math"
	"slices"
)

// A clipping is what is kept of a clipper's parts: contours that met nothing, and
// stretches to be joined.
type clipping struct {
	whole     Outline
	stretches []stretch
}

// kept returns the stretches of the outline and of the rings that bound what is
// kept: inside the rings or outside of them. Where both run along the same line,
// that of the outline is taken once, if what lies on its inner side is kept.
func (c *clipper) kept(inside bool) (clipping, bool) {
	var k clipping
	taken := map[[2]Point]bool{}
	for i, nodes := range c.nodes {
		if len(nodes) == 0 {
			if c.holds(c.contours[i]) == inside {
				k.whole = append(k.whole, c.o[i])
			}
			continue
		}
		for j, a := range nodes {
			part := c.between(i, a, nodes[(j+1)%len(nodes)])
			if len(part) == 0 {
				return k, false
			}
			s := stretchOf(part)
			keep, shared := c.keeps(part, s, inside)
			if shared {
				taken[[2]Point{s.from, s.to}], taken[[2]Point{s.to, s.from}] = true, true
			}
			if keep {
				k.stretches = append(k.stretches, s)
			}
		}
	}
	c.eachRim(func(p, q Point) {
		if taken[[2]Point{p, q}] || !c.covers(p, q) {
			return
		}
		if !inside {
			p, q = q, p
		}
		k.stretches = append(k.stretches, lineStretch(p, q))
	})
	return k, true
}

// keeps reports whether a part of the outline is kept, and whether a rim runs
// along it.
func (c *clipper) keeps(part []curve, s stretch, inside bool) (keep, shared bool) {
	best, in := -1.0, false
	try := func(v curve, t float64) {
		x, y := v.at(v.from, t)
		if d, w := c.depth(x, y); d > best {
			best, in = d, w
		}
	}
	for _, t := range [3]float64{0.5, 0.25, 0.75} {
		if try(part[len(part)/2], t); best > 100*float64(joint) {
			break
		}
	}
	for i := 0; i < len(part) && best <= float64(joint); i++ {
		try(part[i], 0.5)
	}
	if best > float64(joint) {
		return in == inside, false
	}
	c.eachRim(func(p, q Point) {
		switch {
		case p == s.from && q == s.to:
			keep, shared = inside, true
		case q == s.from && p == s.to && !shared:
			keep, shared = !inside, true
		}
	})
	if shared {
		return keep, true
	}
	return in == inside, false
}

// eachRim calls visit with the parts of the rings' edges between their stops.
func (c *clipper) eachRim(visit func(p, q Point)) {
	for i := range c.rims {
		e := &c.rims[i]
		slices.SortFunc(e.stops, func(a, b stop) int {
			switch {
			case a.along < b.along:
				return -1
			case a.along > b.along:
				return 1
			case a.at.Less(b.at):
				return -1
			case b.at.Less(a.at):
				return 1
			}
			return 0
		})
		p := e.p
		for _, s := range append(e.stops[:len(e.stops):len(e.stops)], stop{at: e.q}) {
			if s.at != p {
				visit(p, s.at)
				p = s.at
			}
		}
	}
}

// depth returns how far x, y is from the rings' edges, and whether it is in one.
func (c *clipper) depth(x, y float64) (far float64, inside bool) {
	far = math.Inf(1)
	n := 0
	for i := range c.rims {
		e := &c.rims[i]
		px, py := x-float64(e.p.X), y-float64(e.p.Y)
		wx, wy := float64(e.q.X-e.p.X), float64(e.q.Y-e.p.Y)
		t := max(0, min(1, (px*wx+py*wy)/(e.length*e.length)))
		far = min(far, math.Hypot(px-t*wx, py-t*wy))
		if down := py >= 0 && py < wy; down || py < 0 && py >= wy {
			if side := float64(wx*py) - float64(wy*px); down && side > 0 {
				n++
			} else if !down && side < 0 {
				n--
			}
		}
	}
	return far, n != 0
}

// holds reports whether a contour that meets no edge lies in the rings.
func (c *clipper) holds(contour []curve) bool {
	if len(contour) == 0 {
		return false
	}
	_, in := c.depth(contour[0].at(contour[0].from, 0.5))
	return in
}

// covers reports whether the outline covers the middle of p and q.
func (c *clipper) covers(p, q Point) bool {
	x, y := (float64(p.X)+float64(q.X))/2, (float64(p.Y)+float64(q.Y))/2
	n := 0
	for _, contour := range c.contours {
		for _, v := range contour {
			n += v.winding(x, y)
		}
	}
	return n != 0
}
