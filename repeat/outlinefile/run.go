package outlinefile

import (
	"math"

	"tsugime/repeat/geom"
)

// A place is a point in the file's own unit.
type place struct{ x, y float64 }

// under returns p mapped by m.
func (p place) under(m geom.Affine) place {
	return place{m.A*p.x + m.B*p.y + m.E, m.C*p.x + m.D*p.y + m.F}
}

// grid puts p, in nanometres, on the grid.
func (p place) grid() geom.Point {
	return geom.Point{X: geom.Length(math.Round(p.x)), Y: geom.Length(math.Round(p.y))}
}

// A step is one piece of a run, in the file's own unit.
type step struct {
	kind   geom.Kind
	to     place
	c1, c2 place // of a cubic
	// An arc is the image of the unit circle under frame, from an angle by a turn,
	// in radians; so is an elliptical one.
	frame      geom.Affine
	from, turn float64
}

// A run is one line of a drawing, in the file's own unit.
type run struct {
	start  place
	steps  []step
	closed bool
}

// ellipseRun returns a whole ellipse.
func ellipseRun(frame geom.Affine) run {
	start := place{1, 0}.under(frame)
	return run{start, []step{{kind: geom.Arc, to: start, frame: frame, turn: 2 * math.Pi}}, true}
}

// arcStep returns part of the ellipse under frame.
func arcStep(frame geom.Affine, from, turn float64) step {
	s, c := math.Sincos(from + turn)
	return step{kind: geom.Arc, to: place{c, s}.under(frame), frame: frame, from: from, turn: turn}
}

// under returns r mapped by m.
func (r run) under(m geom.Affine) run {
	mapped := run{r.start.under(m), make([]step, len(r.steps)), r.closed}
	for i, s := range r.steps {
		s.to, s.c1, s.c2, s.frame = s.to.under(m), s.c1.under(m), s.c2.under(m), s.frame.Then(m)
		mapped.steps[i] = s
	}
	return mapped
}

// wild reports whether r, in nanometres, reaches too far or nowhere at all.
func (r run) wild() bool {
	far := func(p place) bool {
		return !(math.Abs(p.x) <= float64(maxReach) && math.Abs(p.y) <= float64(maxReach))
	}
	if far(r.start) {
		return true
	}
	for _, s := range r.steps {
		if far(s.to) || s.kind == geom.Cubic && (far(s.c1) || far(s.c2)) {
			return true
		}
		if s.kind == geom.Arc && (far(place{s.frame.E, s.frame.F}) || far(place{s.frame.A, s.frame.C}) || far(place{s.frame.B, s.frame.D})) {
			return true
		}
	}
	return false
}

// track returns r, in nanometres, on the grid.
func (r run) track() geom.Track {
	t := geom.Track{Contour: geom.Contour{Start: r.start.grid()}, Open: !r.closed}
	for _, s := range r.steps {
		switch s.kind {
		case geom.Cubic:
			t.Segments = append(t.Segments, geom.Segment{Kind: geom.Cubic, C1: s.c1.grid(), C2: s.c2.grid(), End: s.to.grid()})
		case geom.Arc:
			t.Segments = append(t.Segments, s.arc()...)
		default:
			t.Segments = append(t.Segments, geom.Segment{End: s.to.grid()})
		}
	}
	return t
}

// arc returns a step along an ellipse as arcs of half a turn at most, or, where the
// ellipse is not round, as cubics.
func (s step) arc() []geom.Segment {
	f := s.frame
	round := math.Hypot(math.Hypot(f.A, f.C)-math.Hypot(f.B, f.D), (f.A*f.B+f.C*f.D)/max(1, math.Hypot(f.A, f.C)))
	if round > float64(geom.Chord)/10 {
		return s.cubics()
	}
	n := max(1, int(math.Ceil(math.Abs(s.turn)/math.Pi-1e-9)))
	turn := s.turn / float64(n)
	bulge := math.Tan(turn / 4)
	if f.Det() < 0 {
		bulge = -bulge
	}
	segments := make([]geom.Segment, n)
	for i := range segments {
		sin, cos := math.Sincos(s.from + turn*float64(i+1))
		segments[i] = geom.Segment{Kind: geom.Arc, Bulge: bulge, End: place{cos, sin}.under(f).grid()}
	}
	segments[n-1].End = s.to.grid()
	return segments
}

// cubics returns cubics that are at most a tenth of geom.Chord off: 2.7·10⁻⁴ of the
// radius for a quarter turn, and with the sixth power of the turn (M. Goldapp,
// Approximation of circular arcs by cubic polynomials, 1991).
func (s step) cubics() []geom.Segment {
	f := s.frame
	radius := max(math.Hypot(f.A, f.C), math.Hypot(f.B, f.D))
	quarters := math.Pow(2.7e-4*radius/(float64(geom.Chord)/10), 1.0/6)
	n := min(max(1, int(math.Ceil(math.Abs(s.turn)/(math.Pi/2)*max(1, quarters)-1e-9))), 256)
	turn := s.turn / float64(n)
	k := 4.0 / 3 * math.Tan(turn/4)
	segments := make([]geom.Segment, n)
	for i := range segments {
		s0, c0 := math.Sincos(s.from + turn*float64(i))
		s1, c1 := math.Sincos(s.from + turn*float64(i+1))
		segments[i] = geom.Segment{
			Kind: geom.Cubic,
			C1:   place{c0 - k*s0, s0 + k*c0}.under(f).grid(),
			C2:   place{c1 + k*s1, s1 - k*c1}.under(f).grid(),
			End:  place{c1, s1}.under(f).grid(),
		}
	}
	segments[n-1].End = s.to.grid()
	return segments
}

// A pen collects the runs of path data.
type pen struct {
	runs   []run
	open   run
	at     place
	began  bool
	pieces int
}

func (p *pen) Move(x, y float64) {
	p.end(false)
	p.at = place{x, y}
	p.open, p.began = run{start: p.at}, true
}

func (p *pen) end(closed bool) {
	if p.began && (len(p.open.steps) > 0 || closed) {
		p.open.closed = closed
		p.runs = append(p.runs, p.open)
	}
	p.began = false
}

func (p *pen) Close() {
	start := p.open.start
	p.end(true)
	p.at, p.open = start, run{start: start}
}

func (p *pen) add(s step) {
	if !p.began { // a line after Z begins where the one before began
		p.open, p.began = run{start: p.at}, true
	}
	p.pieces++
	p.open.steps = append(p.open.steps, s)
	p.at = s.to
}

func (p *pen) Line(x, y float64) { p.add(step{to: place{x, y}}) }

func (p *pen) Cubic(x1, y1, x2, y2, x, y float64) {
	p.add(step{kind: geom.Cubic, c1: place{x1, y1}, c2: place{x2, y2}, to: place{x, y}})
}

func (p *pen) Arc(rx, ry, degrees float64, large, sweep bool, x, y float64) {
	to := place{x, y}
	switch {
	case to == p.at:
		return
	case rx == 0 || ry == 0:
		p.Line(x, y)
		return
	}
	e := geom.EllipseBetween(p.at.x, p.at.y, rx, ry, degrees, large, sweep, x, y)
	r := geom.Rotate(e.Degrees)
	frame := geom.Affine{A: r.A * e.RX, B: r.B * e.RY, C: r.C * e.RX, D: r.D * e.RY, E: e.X, F: e.Y}
	p.add(step{kind: geom.Arc, to: to, frame: frame, from: e.From, turn: e.Turn})
}

// pathRuns reads path data, in the file's own unit.
func pathRuns(data string) ([]run, error) {
	var p pen
	if err := geom.DrawPathData(data, farthest, &p); err != nil {
		return nil, err
	}
	p.end(false)
	return p.runs, nil
}

// farthest is the largest number of a file, in its own unit.
const farthest = 1e9
