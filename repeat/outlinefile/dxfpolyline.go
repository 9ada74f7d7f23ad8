package outlinefile

import (
	"math"

	"tsugime/repeat/geom"
)

// A vertex is a corner of a polyline and how the piece after it bends: the tangent
// of a quarter of the angle it turns by, against the clock with y up.
type vertex struct {
	at    place
	bulge float64
}

// lightRun reads an LWPOLYLINE, whose vertices follow each other in one entity.
func lightRun(e entity) (run, error) {
	var vertices []vertex
	for _, p := range e.groups {
		switch p.code {
		case 10, 20, 42:
		default:
			continue
		}
		v, err := p.float()
		if err != nil {
			return run{}, err
		}
		switch {
		case p.code == 10:
			vertices = append(vertices, vertex{at: place{x: v}})
		case len(vertices) == 0:
		case p.code == 20:
			vertices[len(vertices)-1].at.y = v
		default:
			vertices[len(vertices)-1].bulge = v
		}
	}
	return bulged(vertices, e.int(70, 0)&1 != 0), nil
}

// heavyRun reads a POLYLINE and the vertices that follow it. What is no line in the
// drawing's plane has no run.
func (f *dxfFile) heavyRun(e entity) (run, error) {
	flags := e.int(70, 0)
	var vertices []vertex
	for {
		p, ok, err := f.next()
		if err != nil {
			return run{}, err
		}
		if !ok {
			break
		}
		if p.code != 0 || p.value != "VERTEX" {
			f.unread(p)
			break
		}
		v, err := f.entity(p)
		if err != nil {
			return run{}, err
		}
		const frame = 16 // a control point of a curve, not on it
		if v.int(70, 0)&frame != 0 {
			continue
		}
		at, err := v.place(10)
		if err != nil {
			return run{}, err
		}
		bulge, err := v.float(42, 0)
		if err != nil {
			return run{}, err
		}
		vertices = append(vertices, vertex{at, bulge})
	}
	const mesh = 16 | 64
	if flags&mesh != 0 {
		return run{}, nil
	}
	return bulged(vertices, flags&1 != 0), nil
}

// bulged returns the run through vertices.
func bulged(vertices []vertex, closed bool) run {
	if len(vertices) < 2 {
		return run{}
	}
	r := run{start: vertices[0].at, closed: closed}
	for i, v := range vertices {
		if i == len(vertices)-1 && !closed {
			break
		}
		to := vertices[(i+1)%len(vertices)].at
		if v.bulge == 0 || to == v.at {
			r.steps = append(r.steps, step{to: to})
			continue
		}
		r.steps = append(r.steps, bulgeStep(v.at, to, v.bulge))
	}
	return r
}

// bulgeStep returns the arc from a to b: its centre lies on the bisector, and its
// turn is four times the arc tangent of the bulge.
func bulgeStep(a, b place, bulge float64) step {
	dx, dy := b.x-a.x, b.y-a.y
	h := (1 - bulge*bulge) / (4 * bulge)
	cx, cy := (a.x+b.x)/2-dy*h, (a.y+b.y)/2+dx*h
	r := math.Hypot(a.x-cx, a.y-cy)
	s := arcStep(geom.Affine{A: r, D: r, E: cx, F: cy}, math.Atan2(a.y-cy, a.x-cx), 4*math.Atan(bulge))
	s.to = b
	return s
}
