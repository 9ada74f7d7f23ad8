package document

import (
	"fmt"
	"io"
	"maps"
	"slices"
	"strconv"

	"tsugime/repeat/cloth"
	"tsugime/repeat/geom"
	"tsugime/repeat/pattern"
	"tsugime/repeat/stencil"
)

// Write writes o as an order file: UTF-8 JSON, keys in a fixed order, two spaces
// of indent, places and motifs on one line each, so that one edit changes few
// lines. Lengths are exact; Read gives back the same order. An order that Check
// refuses is not written.
func Write(w io.Writer, o Order) error {
	if fault := o.check(); fault != nil {
		return fmt.Errorf("write order: %w", fault)
	}
	p := printer{order: o, buf: make([]byte, 0, 4096+96*len(o.Unit.Motifs))}
	p.buf = append(p.buf, '{')
	p.depth++
	p.key("format")
	p.text(formatName)
	p.buf = append(p.buf, ',')
	p.key("version")
	p.buf = strconv.AppendInt(p.buf, int64(len(migrations)+1), 10)
	p.buf = append(p.buf, ',')
	p.members(layout, "")
	p.depth--
	p.line()
	p.buf = append(p.buf, "}\n"...)
	if _, err := w.Write(p.buf); err != nil {
		return fmt.Errorf("write order: %w", err)
	}
	return nil
}

// A printer lays an order out as text.
type printer struct {
	order Order
	buf   []byte
	depth int
}

func (p *printer) line() {
	p.buf = append(p.buf, '\n')
	for range p.depth {
		p.buf = append(p.buf, "  "...)
	}
}

// key begins a line with a key.
func (p *printer) key(key string) {
	p.line()
	p.text(key)
	p.buf = append(p.buf, ": "...)
}

// members writes the members of a part by its table, then what Extra kept of it.
func (p *printer) members(table []field, name string) {
	first := true
	for _, f := range table {
		if f.bare != nil && f.bare(&p.order) {
			continue
		}
		if !first {
			p.buf = append(p.buf, ',')
		}
		first = false
		p.key(f.key)
		if f.part == nil {
			p.value(f.at(&p.order))
			continue
		}
		p.buf = append(p.buf, '{')
		p.depth++
		p.members(f.part, under(name, f.key))
		p.depth--
		p.line()
		p.buf = append(p.buf, '}')
	}
	for _, m := range p.order.Extra.parts[name] {
		p.buf = append(p.buf, ',')
		p.key(m.key)
		p.buf = append(p.buf, m.value...)
	}
}

// value writes what a field points to.
func (p *printer) value(of any) {
	switch of := of.(type) {
	case *geom.Length:
		p.buf = of.AppendMM(p.buf, 6)
	case *percent:
		p.buf = appendFloat(p.buf, float64(*of), 2)
	case *int:
		p.buf = strconv.AppendInt(p.buf, int64(*of), 10)
	case *bool:
		p.buf = strconv.AppendBool(p.buf, *of)
	case *string:
		p.text(*of)
	case *lengths:
		writeNamed(p, *of, p.length)
	case *counts:
		writeNamed(p, *of, p.count)
	case *turns:
		writeNamed(p, *of, p.truth)
	case *names:
		lines(p, *of, p.text)
	case *[]cloth.SeamWish:
		lines(p, *of, p.seamWish)
	case *[]cloth.PlaceWish:
		lines(p, *of, p.placeWish)
	case *formText:
		p.form(*of)
	case *Colour:
		p.buf = fmt.Appendf(p.buf, "\"#%02x%02x%02x\"", of.R, of.G, of.B)
	case *geom.Point:
		p.point(*of)
	case *pattern.Recipe:
		p.recipe(*of)
	case *[]geom.Point:
		lines(p, *of, p.point)
	case *placeLine:
		lines(p, *of, p.point)
	case *[]Punch:
		lines(p, *of, p.punch)
	case *[]ShelfMotif:
		lines(p, *of, p.shelved)
	case *[]stencil.Tie:
		lines(p, *of, p.tie)
	case *[]pattern.ID:
		p.ids(*of)
	case *[]pattern.Motif:
		lines(p, *of, p.motif)
	default:
		panic(fmt.Sprintf("document: no way to write %T", of))
	}
}

// lines writes a list with one line for each entry.
func lines[T any](p *printer, entries []T, write func(T)) {
	p.buf = append(p.buf, '[')
	p.depth++
	for i, e := range entries {
		if i > 0 {
			p.buf = append(p.buf, ',')
		}
		p.line()
		write(e)
	}
	p.depth--
	if len(entries) > 0 {
		p.line()
	}
	p.buf = append(p.buf, ']')
}

// text writes a string; only what JSON demands is escaped.
func (p *printer) text(s string) {
	p.buf = append(p.buf, '"')
	for _, r := range s { // an invalid byte becomes U+FFFD; Check refuses it before
		switch {
		case r == '"' || r == '\\':
			p.buf = append(p.buf, '\\', byte(r))
		case r < ' ':
			p.buf = fmt.Appendf(p.buf, "\\u%04x", r)
		default:
			p.buf = append(p.buf, string(r)...)
		}
	}
	p.buf = append(p.buf, '"')
}

func (p *printer) point(at geom.Point) {
	p.buf = append(p.buf, '[')
	p.buf = at.X.AppendMM(p.buf, 6)
	p.buf = append(p.buf, ", "...)
	p.buf = at.Y.AppendMM(p.buf, 6)
	p.buf = append(p.buf, ']')
}

func (p *printer) motif(m pattern.Motif) {
	p.buf = append(p.buf, `{"id": `...)
	p.buf = strconv.AppendInt(p.buf, int64(m.ID), 10)
	p.shape(m.Shape)
	part := ""
	if p.order.Extra.parts != nil {
		part = motifPart(m.ID)
		p.extra(part + shapePart)
	}
	p.buf = append(p.buf, `}, "at_mm": `...)
	p.point(m.At)
	if m.TurnDeg != 0 {
		p.buf = append(p.buf, `, "turn_deg": `...)
		p.buf = appendFloat(p.buf, m.TurnDeg, 0)
	}
	if m.Mirrored {
		p.buf = append(p.buf, `, "mirrored": true`...)
	}
	if method, named := p.order.Methods[m.ID]; named {
		p.buf = append(p.buf, `, "method": `...)
		p.text(string(method))
	}
	if part != "" {
		p.extra(part)
	}
	p.buf = append(p.buf, '}')
}

// shape writes a disc or an outline, its brace still open.
func (p *printer) shape(s geom.Shape) {
	if s.Round() {
		p.buf = append(p.buf, `, "disc": {"diameter_mm": `...)
		p.buf = s.Disc.Diameter.AppendMM(p.buf, 6)
		return
	}
	p.buf = append(p.buf, `, "outline": {"path": "`...)
	p.buf = s.Outline.AppendPathData(p.buf, 6)
	p.buf = append(p.buf, '"')
}

func (p *printer) shelved(m ShelfMotif) {
	p.buf = append(p.buf, `{"name": `...)
	p.text(m.Name)
	p.shape(m.Shape)
	p.extra(shelfPart(m.Name) + shapePart)
	p.buf = append(p.buf, '}')
	p.extra(shelfPart(m.Name))
	p.buf = append(p.buf, '}')
}

func (p *printer) tie(t stencil.Tie) {
	p.buf = append(p.buf, `{"motif": `...)
	p.buf = strconv.AppendInt(p.buf, int64(t.Motif), 10)
	p.buf = append(p.buf, `, "from_mm": `...)
	p.point(t.From)
	p.buf = append(p.buf, `, "to_mm": `...)
	p.point(t.To)
	p.buf = append(p.buf, `, "width_mm": `...)
	p.buf = t.Width.AppendMM(p.buf, 6)
	if p.order.Extra.parts != nil {
		p.extra(tiePart(t))
	}
	p.buf = append(p.buf, '}')
}

// recipe writes what a ground was made from; its name is empty for nothing.
func (p *printer) recipe(r pattern.Recipe) {
	p.buf = append(p.buf, `{"name": `...)
	p.text(r.Ground)
	p.buf = append(p.buf, `, "seed": `...)
	p.buf = strconv.AppendUint(p.buf, r.Seed, 10)
	if r.Width != 0 {
		p.buf = append(p.buf, `, "width_mm": `...)
		p.buf = r.Width.AppendMM(p.buf, 6)
	}
	if r.Columns != 0 {
		p.buf = append(p.buf, `, "columns": `...)
		p.buf = strconv.AppendInt(p.buf, int64(r.Columns), 10)
	}
	if r.Rows != 0 {
		p.buf = append(p.buf, `, "rows": `...)
		p.buf = strconv.AppendInt(p.buf, int64(r.Rows), 10)
	}
	p.buf = append(p.buf, `, "values": {`...)
	for i, key := range slices.Sorted(maps.Keys(r.Values)) {
		if i > 0 {
			p.buf = append(p.buf, ", "...)
		}
		p.text(key)
		p.buf = append(p.buf, ": "...)
		p.buf = appendFloat(p.buf, r.Values[key], 0)
	}
	p.buf = append(p.buf, '}')
	if p.order.Extra.parts != nil {
		p.extra(groundPart)
	}
	p.buf = append(p.buf, '}')
}

// ids writes a list of IDs on one line.
func (p *printer) ids(ids []pattern.ID) {
	p.buf = append(p.buf, '[')
	for i, id := range ids {
		if i > 0 {
			p.buf = append(p.buf, ", "...)
		}
		p.buf = strconv.AppendInt(p.buf, int64(id), 10)
	}
	p.buf = append(p.buf, ']')
}

func (p *printer) punch(t Punch) {
	p.buf = append(p.buf, `{"name": `...)
	p.text(t.Name)
	p.buf = append(p.buf, `, "diameter_mm": `...)
	p.buf = t.Diameter.AppendMM(p.buf, 6)
	p.extra(punchPart(t.Name))
	p.buf = append(p.buf, '}')
}

// extra writes on the same line what Extra kept of a part.
func (p *printer) extra(part string) {
	for _, m := range p.order.Extra.parts[part] {
		p.buf = append(p.buf, ", "...)
		p.text(m.key)
		p.buf = append(p.buf, ": "...)
		p.buf = append(p.buf, m.value...)
	}
}
