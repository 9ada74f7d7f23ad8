package document

import (
	"fmt"
	"io"
	"maps"
	"slices"
	"strconv"

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
