package outlinefile

import (
	"bytes"
	"io"
	"strings"

	"tsugime/repeat/geom"
)

// ReadSVG reads the filled areas and the strokes of an SVG 1.1 file. Units are
// honoured, px counted 96 to the inch; a file that names none is in px. Every
// error that is not the reader's own is a *Fault.
func ReadSVG(r io.Reader, with Options) (Drawing, error) {
	data, err := readAll(r)
	if err != nil {
		return Drawing{}, err
	}
	data = bytes.TrimPrefix(data, []byte("\xef\xbb\xbf"))
	t, err := readTree(data)
	if err != nil {
		return Drawing{}, err
	}
	p := &painter{tree: t, with: with}
	p.rules = sheet(t.css, func(selector string) {
		p.log.add(0, "style %q: only elements, classes and ids are understood", short(selector))
	})
	base := geom.Scale(25.4/perInch*float64(geom.Millimetre), 25.4/perInch*float64(geom.Millimetre))
	at := spot{frame: base, port: port{100, 100}, outermost: true}
	if err := p.draw(t.root, at); err != nil {
		return Drawing{}, err
	}
	pieces := append(p.pieces, p.lines.pieces(&p.log)...)
	return Drawing{pieces, p.log.list()}, nil
}

func readAll(r io.Reader) ([]byte, error) {
	data, err := io.ReadAll(io.LimitReader(r, MaxBytes+1))
	if err != nil {
		return nil, err
	}
	if len(data) > MaxBytes {
		return nil, faultf(0, "the file is larger than %d MB; save only what is to be cut", MaxBytes>>20)
	}
	return data, nil
}

// A painter walks through the elements and collects what they paint.
type painter struct {
	tree     *tree
	rules    []rule
	log      logbook
	with     Options
	pieces   []Piece
	lines    assembly // strokes that are lines to cut along
	drawn    int      // elements, each copy counted
	segments int
}

// A spot is where an element stands: the map to nanometres, and what it inherits.
type spot struct {
	frame     geom.Affine
	port      port
	style     style
	layer     string
	copies    int // of copies in copies
	depth     int
	outermost bool // the first svg, whose size makes the port
	copied    bool // the root of a copy: a symbol is drawn only so
	size      [2]measure
	sized     [2]bool // the copy gives a symbol or svg its width, its height
}

// silent elements draw nothing and are no loss.
var silent = map[string]bool{
	"defs": true, "title": true, "desc": true, "metadata": true, "style": true, "symbol": true, "script": true,
	"linearGradient": true, "radialGradient": true, "pattern": true, "clipPath": true, "mask": true,
	"marker": true, "filter": true, "cursor": true, "view": true, "font": true, "font-face": true,
}

// draw draws n and what is inside of it.
func (p *painter) draw(n *node, at spot) error {
	if p.drawn++; p.drawn > maxElements {
		return faultf(n.line, "with its copies the file has more than %d elements; draw it plainer", maxElements)
	}
	if at.depth++; at.depth > maxDepth {
		return faultf(n.line, "copies and groups are nested more than %d deep; ungroup them", maxDepth)
	}
	if silent[n.name] && !(n.name == "symbol" && at.copied) || strings.HasPrefix(n.name, "foreign:") {
		return nil
	}
	at.style = p.style(n, at.style)
	if at.style.get("display") == "none" {
		p.log.add(n.line, "%s: it is not shown (display none) and was left out", n.name)
		return nil
	}
	if text := n.attrs["transform"]; text != "" && n.name != "svg" {
		m, ok := transform(text)
		if !ok {
			return faultf(n.line, "%s: transform=%q can't be read; write it as in matrix(1 0 0 1 0 0)", n.name, short(text))
		}
		at.frame = m.Then(at.frame)
	}
	p.unfollowed(n, at.style)
	switch n.name {
	case "svg", "symbol":
		return p.inPort(n, at)
	case "g", "a", "switch":
		if id := n.attrs["id"]; id != "" {
			at.layer = id
		}
		return p.drawAll(n, at)
	case "use":
		return p.copy(n, at)
	}
	return p.paint(n, at)
}

func (p *painter) drawAll(n *node, at spot) error {
	at.copied, at.outermost = false, false
	for _, kid := range n.kids {
		if err := p.draw(kid, at); err != nil {
			return err
		}
		if n.name == "switch" && !silent[kid.name] {
			break // the first that can be drawn
		}
	}
	return nil
}

// unfollowed notes what of a style is not looked at.
func (p *painter) unfollowed(n *node, s style) {
	for _, name := range [...]string{"clip-path", "mask", "filter"} {
		if v := s.get(name); v != "none" {
			p.log.add(n.line, "%s: its %s is not followed; the whole shape was taken", n.name, name)
		}
	}
}

// copy draws what a use element names.
func (p *painter) copy(n *node, at spot) error {
	ref := strings.TrimSpace(n.attrs["href"])
	id, own := strings.CutPrefix(ref, "#")
	of := p.tree.byID[id]
	if !own || of == nil {
		p.log.add(n.line, "use: there is no %q in the file; it was left out", short(ref))
		return nil
	}
	if at.copies++; at.copies > maxCopies {
		return faultf(n.line, "use: %q leads to copies of copies, more than %d deep; draw it out", short(ref), maxCopies)
	}
	x, err := p.length(n, "x", "0", at)
	if err != nil {
		return err
	}
	y, err := p.length(n, "y", "0", at)
	if err != nil {
		return err
	}
	at.frame = geom.Affine{A: 1, D: 1, E: x, F: y}.Then(at.frame)
	for i, name := range [...]string{"width", "height"} {
		at.size[i], at.sized[i] = parseMeasure(n.attrs[name])
	}
	at.copied, at.outermost = true, false
	return p.draw(of, at)
}

// inPort draws what is in an svg or a symbol, in its own units.
func (p *painter) inPort(n *node, at spot) error {
	box, boxed := numbers(n.attrs["viewBox"])
	if n.attrs["viewBox"] != "" && (!boxed || len(box) != 4 || box[2] < 0 || box[3] < 0) {
		return faultf(n.line, "%s: viewBox=%q can't be read; it has four numbers: left, top, width, height", n.name, short(n.attrs["viewBox"]))
	}
	boxed = boxed && len(box) == 4 && box[2] > 0 && box[3] > 0
	var size [2]float64
	for i, name := range [...]string{"width", "height"} {
		whole := [2]float64{at.port.width, at.port.height}[i]
		if at.outermost && boxed { // a share of the screen: the box in px, as if it were all
			whole = box[2+i]
		}
		m, ok := parseMeasure(n.attrs[name])
		if !ok {
			if n.attrs[name] != "" && n.attrs[name] != "auto" {
				return faultf(n.line, "%s: %s=%q is no length; write it as in 120mm", n.name, name, short(n.attrs[name]))
			}
			m = measure{100, "%"}
		}
		if at.copied && at.sized[i] {
			m = at.size[i]
		}
		if size[i], ok = m.px(whole, at.em()); !ok {
			return faultf(n.line, "%s: %s is in %q, which is no unit here; use mm, cm, in, pt, pc or px", n.name, name, m.unit)
		}
	}
	if size[0] <= 0 || size[1] <= 0 {
		p.log.add(n.line, "%s: it has no size and was left out", n.name)
		return nil
	}
	if !at.outermost {
		x, err := p.length(n, "x", "0", at)
		if err != nil {
			return err
		}
		y, err := p.length(n, "y", "0", at)
		if err != nil {
			return err
		}
		if n.name == "svg" {
			at.frame = geom.Affine{A: 1, D: 1, E: x, F: y}.Then(at.frame)
		}
	}
	at.port = port{size[0], size[1]}
	if boxed {
		at.frame = fitted([4]float64(box), size[0], size[1], n.attrs["preserveAspectRatio"]).Then(at.frame)
		at.port = port{box[2], box[3]}
	}
	return p.drawAll(n, at)
}
