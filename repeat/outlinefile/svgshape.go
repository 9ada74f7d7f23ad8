package outlinefile

import (
	"math"
	"strings"

	"tsugime/repeat/geom"
)

// em is the size of the letters, which lengths may count in.
func (at spot) em() float64 {
	m, ok := parseMeasure(at.style.get("font-size"))
	if !ok {
		return 16
	}
	v, _ := m.px(16, 16)
	return v
}

// length reads an attribute that is a length, in user units; across and along take
// their share of the width and the height, others of the diagonal.
func (p *painter) length(n *node, name, fallback string, at spot) (float64, error) {
	text := n.attrs[name]
	if text == "" {
		text = fallback
	}
	return p.lengthOf(n, name, text, at)
}

func (p *painter) lengthOf(n *node, name, text string, at spot) (float64, error) {
	whole := at.port.diagonal()
	switch name {
	case "x", "x1", "x2", "cx", "width", "rx":
		whole = at.port.width
	case "y", "y1", "y2", "cy", "height", "ry":
		whole = at.port.height
	}
	m, ok := parseMeasure(text)
	if ok {
		var v float64
		if v, ok = m.px(whole, at.em()); ok {
			return v, nil
		}
	}
	return 0, faultf(n.line, "%s: %s=%q is no length; write it as in 2.5mm", n.name, name, short(text))
}

// lengths reads several attributes at once, zero where one is missing.
func (p *painter) lengths(n *node, at spot, names ...string) ([]float64, error) {
	all := make([]float64, len(names))
	for i, name := range names {
		v, err := p.length(n, name, "0", at)
		if err != nil {
			return nil, err
		}
		all[i] = v
	}
	return all, nil
}

// runsOf returns the lines that an element is drawn with, in user units, and
// whether it is an element that draws lines at all.
func (p *painter) runsOf(n *node, at spot) (runs []run, known bool, err error) {
	switch n.name {
	case "path":
		runs, err := pathRuns(n.attrs["d"])
		if err != nil {
			return nil, true, faultf(n.line, "path: %s", short120(err.Error()))
		}
		return runs, true, nil
	case "rect":
		runs, err := p.rect(n, at)
		return runs, true, err
	case "circle":
		v, err := p.lengths(n, at, "cx", "cy", "r")
		if err != nil || v[2] <= 0 {
			return nil, true, err
		}
		return []run{ellipseRun(geom.Affine{A: v[2], D: v[2], E: v[0], F: v[1]})}, true, nil
	case "ellipse":
		v, err := p.lengths(n, at, "cx", "cy", "rx", "ry")
		if err != nil || v[2] <= 0 || v[3] <= 0 {
			return nil, true, err
		}
		return []run{ellipseRun(geom.Affine{A: v[2], D: v[3], E: v[0], F: v[1]})}, true, nil
	case "line":
		v, err := p.lengths(n, at, "x1", "y1", "x2", "y2")
		if err != nil {
			return nil, true, err
		}
		return []run{{start: place{v[0], v[1]}, steps: []step{{to: place{v[2], v[3]}}}}}, true, nil
	case "polyline", "polygon":
		runs, err := polyline(n)
		return runs, true, err
	}
	return nil, false, nil
}

func polyline(n *node) ([]run, error) {
	v, ok := numbers(n.attrs["points"])
	if !ok {
		return nil, faultf(n.line, "%s: points=%q… holds something that is no number", n.name, short(n.attrs["points"]))
	}
	if len(v) < 4 {
		return nil, nil
	}
	r := run{start: place{v[0], v[1]}, closed: n.name == "polygon"}
	for i := 2; i+1 < len(v); i += 2 {
		r.steps = append(r.steps, step{to: place{v[i], v[i+1]}})
	}
	return []run{r}, nil
}

// rect returns a rectangle, its corners rounded by quarters of an ellipse (SVG 1.1,
// section 9.2).
func (p *painter) rect(n *node, at spot) ([]run, error) {
	v, err := p.lengths(n, at, "x", "y", "width", "height", "rx", "ry")
	if err != nil {
		return nil, err
	}
	x, y, w, h, rx, ry := v[0], v[1], v[2], v[3], v[4], v[5]
	if w <= 0 || h <= 0 {
		return nil, nil
	}
	auto := func(name string) bool { return n.attrs[name] == "" || n.attrs[name] == "auto" }
	switch {
	case auto("rx"):
		rx = ry
	case auto("ry"):
		ry = rx
	}
	rx, ry = min(max(rx, 0), w/2), min(max(ry, 0), h/2)
	if rx == 0 || ry == 0 {
		return []run{{start: place{x, y}, closed: true, steps: []step{{to: place{x + w, y}}, {to: place{x + w, y + h}}, {to: place{x, y + h}}, {to: place{x, y}}}}}, nil
	}
	corner := func(cx, cy, from float64) step {
		return arcStep(geom.Affine{A: rx, D: ry, E: cx, F: cy}, from, math.Pi/2)
	}
	r := run{start: place{x + rx, y}, closed: true}
	line := func(to place) { r.steps = append(r.steps, step{to: to}) }
	line(place{x + w - rx, y})
	r.steps = append(r.steps, corner(x+w-rx, y+ry, -math.Pi/2))
	line(place{x + w, y + h - ry})
	r.steps = append(r.steps, corner(x+w-rx, y+h-ry, 0))
	line(place{x + rx, y + h})
	r.steps = append(r.steps, corner(x+rx, y+h-ry, math.Pi/2))
	line(place{x, y + ry})
	r.steps = append(r.steps, corner(x+rx, y+ry, math.Pi))
	return []run{r}, nil
}

// paint takes what an element fills and strokes.
func (p *painter) paint(n *node, at spot) error {
	runs, known, err := p.runsOf(n, at)
	if err != nil {
		return err
	}
	if !known {
		p.log.add(n.line, "%s: it is no outline and was left out", short(n.name))
		return nil
	}
	if len(runs) == 0 {
		p.log.add(n.line, "%s: it has no size and was left out", n.name)
		return nil
	}
	if at.style.get("visibility") != "visible" {
		p.log.add(n.line, "%s: it is hidden and was left out", n.name)
		return nil
	}
	filled, stroked := p.seen(n, at.style, "fill"), p.seen(n, at.style, "stroke")
	if n.name == "line" {
		filled = false
	}
	if filled {
		if err := p.fill(n, at, runs); err != nil {
			return err
		}
	}
	if stroked {
		if err := p.stroke(n, at, runs, filled); err != nil {
			return err
		}
	}
	if !filled && !stroked {
		p.log.add(n.line, "%s: it is neither filled nor stroked and was left out", n.name)
	}
	return nil
}

// seen reports whether an element's fill or stroke shows, and notes what was not.
func (p *painter) seen(n *node, s style, which string) bool {
	colour := s.get(which)
	if !paints(colour) {
		return false
	}
	for _, name := range [...]string{which + "-opacity", "opacity"} {
		if m, ok := parseMeasure(s.get(name)); ok && m.value == 0 {
			p.log.add(n.line, "%s: its %s is clear (%s 0) and was left out", n.name, which, name)
			return false
		}
	}
	if strings.HasPrefix(colour, "url(") {
		p.log.add(n.line, "%s: its %s is a gradient or pattern and was taken as plain", n.name, which)
	}
	return true
}

func (p *painter) fill(n *node, at spot, runs []run) error {
	var o geom.Outline
	for _, r := range runs {
		r = r.under(at.frame)
		if r.wild() {
			return outOfReach(n)
		}
		r.closed = true
		o = append(o, r.track().Contour)
	}
	return p.take(n, at, n.name, o, at.style.get("fill-rule") == "evenodd")
}

func outOfReach(n *node) error {
	return faultf(n.line, "%s: it reaches farther than %s mm from the corner; draw it smaller or nearer", n.name, maxReach)
}

// short120 keeps messages of path data to a line.
func short120(text string) string {
	if runes := []rune(text); len(runes) > 120 {
		return string(runes[:120]) + " …"
	}
	return text
}

// take adds an outline, made sound, each of its parts as a shape of its own.
func (p *painter) take(n *node, at spot, kind string, o geom.Outline, evenOdd bool) error {
	o, ok := sound(o, evenOdd)
	if !ok {
		tooWide(&p.log, n.line, kind, o)
		return nil
	}
	var loops []loop
	for _, c := range o {
		if p.segments += len(c.Segments); p.segments > maxSegments {
			return faultf(n.line, "the outlines up to here have more than %d pieces; draw them plainer", maxSegments)
		}
		loops = append(loops, loopOf(c))
	}
	if len(loops) == 0 {
		p.log.add(n.line, "%s: it encloses nothing and was left out", kind)
	}
	shapes, _ := nested(loops)
	for _, s := range shapes {
		if cuttable(&p.log, n.line, kind, s) {
			p.pieces = append(p.pieces, Piece{s, kind, at.layer, n.line})
		}
	}
	return nil
}
