package outlinefile

import (
	"math"

	"tsugime/repeat/geom"
)

// An entity is the groups of one entity of a DXF file, in their order.
type entity struct {
	kind   string
	line   int
	groups []pair
}

// entity reads the groups that follow the one that begins an entity.
func (f *dxfFile) entity(begin pair) (entity, error) {
	e := entity{kind: begin.value, line: begin.line}
	for {
		p, ok, err := f.next()
		if err != nil || !ok {
			return e, err
		}
		if p.code == 0 {
			f.unread(p)
			return e, nil
		}
		e.groups = append(e.groups, p)
	}
}

// has returns the first group of a code.
func (e entity) has(code int) (pair, bool) {
	for _, p := range e.groups {
		if p.code == code {
			return p, true
		}
	}
	return pair{}, false
}

func (e entity) text(code int) string {
	p, _ := e.has(code)
	return p.value
}

func (e entity) int(code, fallback int) int {
	if p, ok := e.has(code); ok {
		return p.int()
	}
	return fallback
}

func (e entity) float(code int, fallback float64) (float64, error) {
	if p, ok := e.has(code); ok {
		return p.float()
	}
	return fallback, nil
}

// floats reads several numbers, 0 where one is missing.
func (e entity) floats(codes ...int) ([]float64, error) {
	v := make([]float64, len(codes))
	for i, code := range codes {
		var err error
		if v[i], err = e.float(code, 0); err != nil {
			return nil, err
		}
	}
	return v, nil
}

// place reads a point: x under code, y under code + 10.
func (e entity) place(code int) (place, error) {
	v, err := e.floats(code, code+10)
	if err != nil {
		return place{}, err
	}
	return place{v[0], v[1]}, nil
}

// flip returns the map from the entity's own plane to the drawing's, and whether the
// entity lies in it: seen from below, x runs the other way (the arbitrary axis
// algorithm of the DXF Reference).
func (e entity) flip() (geom.Affine, bool) {
	v, err := e.floats(210, 220)
	z, errZ := e.float(230, 1)
	if err != nil || errZ != nil || math.Hypot(v[0], v[1]) > 1e-6*math.Abs(z) {
		return geom.Identity, false
	}
	if z < 0 {
		return geom.Scale(-1, 1), true
	}
	return geom.Identity, true
}

// entities reads entities up to the one that ends them.
func (f *dxfFile) entities(items []item, end string) ([]item, error) {
	for {
		p, ok, err := f.next()
		if err != nil || !ok {
			return items, err
		}
		if p.code != 0 {
			continue
		}
		if p.value == end || p.value == "ENDSEC" || p.value == "EOF" {
			return items, nil
		}
		e, err := f.entity(p)
		if err != nil {
			return nil, err
		}
		it, drawn, err := f.item(e)
		if err != nil {
			return nil, err
		}
		if drawn {
			items = append(items, it)
		}
		if len(items) > maxElements {
			return nil, faultf(p.line, "more than %d entities; draw it plainer or part it", maxElements)
		}
	}
}

// item reads one entity; drawn is false for what is no line, which is noted.
func (f *dxfFile) item(e entity) (it item, drawn bool, err error) {
	it = item{kind: e.kind, layer: e.text(8), line: e.line}
	if it.layer == "" {
		it.layer = "0"
	}
	flip, flat := e.flip()
	readers := map[string]func(entity) (run, error){
		"LINE": lineRun, "CIRCLE": circleRun, "ARC": arcRun, "ELLIPSE": ellipseEntity,
		"LWPOLYLINE": lightRun, "POLYLINE": f.heavyRun, "SPLINE": splineRun, "SOLID": solidRun, "TRACE": solidRun,
	}
	read, known := readers[e.kind]
	switch {
	case e.kind == "INSERT":
		it.insert, err = insertOf(e)
	case known:
		it.run, err = read(e)
	case e.kind == "VERTEX" || e.kind == "SEQEND" || e.kind == "ATTRIB":
		return it, false, nil // of what was left out
	default:
		f.log.add(e.line, "%s: it is no outline and was left out", short(e.kind))
		return it, false, nil
	}
	if err != nil {
		return it, false, err
	}
	switch {
	case e.int(67, 0) == 1:
		f.log.add(e.line, "%s: it stands on a layout page, not in the drawing, and was left out", e.kind)
		return it, false, nil
	case e.int(60, 0) == 1 || f.hidden[it.layer]:
		f.log.add(e.line, "%s: it is not shown (layer %s) and was left out", e.kind, short(it.layer))
		return it, false, nil
	case !flat:
		f.log.add(e.line, "%s: it is tilted out of the drawing's plane and was left out", e.kind)
		return it, false, nil
	case it.insert == nil && len(it.run.steps) == 0:
		f.log.add(e.line, "%s: it draws no line that can be read, and was left out", e.kind)
		return it, false, nil
	}
	f.widths(e)
	if flip != geom.Identity && e.kind != "LINE" && e.kind != "SPLINE" && e.kind != "ELLIPSE" {
		if it.insert != nil {
			it.insert.frame = it.insert.frame.Then(flip)
		} else {
			it.run = it.run.under(flip)
		}
	}
	return it, true, nil
}

// widths notes a polyline that is drawn as a band.
func (f *dxfFile) widths(e entity) {
	for _, p := range e.groups {
		if p.code == 43 && e.kind == "LWPOLYLINE" || (p.code == 40 || p.code == 41) && (e.kind == "LWPOLYLINE" || e.kind == "POLYLINE") {
			if v, err := p.float(); err == nil && v > 0 {
				f.log.add(e.line, "%s: its width is not followed; its middle line was taken", e.kind)
				return
			}
		}
	}
}

func lineRun(e entity) (run, error) {
	a, err := e.place(10)
	if err != nil {
		return run{}, err
	}
	b, err := e.place(11)
	return run{start: a, steps: []step{{to: b}}}, err
}

func circleRun(e entity) (run, error) {
	v, err := e.floats(10, 20, 40)
	if err != nil || v[2] <= 0 {
		return run{}, err
	}
	return ellipseRun(geom.Affine{A: v[2], D: v[2], E: v[0], F: v[1]}), nil
}

// arcRun reads an arc, which runs against the clock with y up.
func arcRun(e entity) (run, error) {
	v, err := e.floats(10, 20, 40, 50, 51)
	if err != nil || v[2] <= 0 {
		return run{}, err
	}
	from, turn := v[3]*math.Pi/180, math.Mod(v[4]-v[3], 360)
	if turn <= 0 {
		turn += 360
	}
	return partOf(geom.Affine{A: v[2], D: v[2], E: v[0], F: v[1]}, from, turn*math.Pi/180), nil
}

// partOf returns a part of an ellipse; a whole turn is closed.
func partOf(frame geom.Affine, from, turn float64) run {
	s, c := math.Sincos(from)
	r := run{start: place{c, s}.under(frame), steps: []step{arcStep(frame, from, turn)}}
	if turn >= 2*math.Pi-1e-9 {
		r.closed = true
		r.steps[0].to = r.start
	}
	return r
}

// ellipseEntity reads an ellipse by its centre, its long axis and the ratio of the
// short one, which lies a quarter turn on as seen from its own side.
func ellipseEntity(e entity) (run, error) {
	v, err := e.floats(10, 20, 11, 21, 40)
	if err != nil {
		return run{}, err
	}
	from, err := e.float(41, 0)
	if err != nil {
		return run{}, err
	}
	to, err := e.float(42, 2*math.Pi)
	if err != nil {
		return run{}, err
	}
	ratio := v[4]
	if flip, _ := e.flip(); flip != geom.Identity {
		ratio = -ratio
	}
	if ratio == 0 || v[2] == 0 && v[3] == 0 {
		return run{}, nil
	}
	turn := math.Mod(to-from, 2*math.Pi)
	if turn <= 1e-9 {
		turn += 2 * math.Pi
	}
	return partOf(geom.Affine{A: v[2], C: v[3], B: -v[3] * ratio, D: v[2] * ratio, E: v[0], F: v[1]}, from, turn), nil
}

// solidRun reads a filled triangle or quadrangle, whose third and fourth corners
// stand crosswise.
func solidRun(e entity) (run, error) {
	r := run{closed: true}
	for i, code := range [...]int{10, 11, 13, 12} {
		if _, ok := e.has(code); !ok {
			continue
		}
		p, err := e.place(code)
		if err != nil {
			return run{}, err
		}
		if i == 0 {
			r.start = p
		} else {
			r.steps = append(r.steps, step{to: p})
		}
	}
	return r, nil
}
