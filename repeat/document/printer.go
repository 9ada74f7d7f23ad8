package document

import (
	"fmt"
	"strconv"

	"tsugime/repeat/cloth"
	"tsugime/repeat/geom"
	"tsugime/repeat/pattern"
	"tsugime/repeat/stencil"
)

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
