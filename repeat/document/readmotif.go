package document

import (
	"slices"

	"tsugime/repeat/bench"
	"tsugime/repeat/geom"
	"tsugime/repeat/pattern"
	"tsugime/repeat/stencil"
)

// The keys of a motif, as bits of what was seen.
const (
	idKey = iota
	discKey
	outlineKey
	atKey
	turnKey
	mirroredKey
	methodKey
)

// motif reads one motif: {"id", "disc" or "outline", "at_mm"} with an optional
// "turn_deg", "mirrored" and "method".
func (r *reader) motif() pattern.Motif {
	var m pattern.Motif
	var extra, shapeExtra []member
	var method bench.Method
	from, seen := r.at, uint64(0)
	r.object(func(key []byte) {
		switch string(key) {
		case "id":
			r.once(&seen, idKey)
			m.ID = pattern.ID(r.integer())
		case "disc":
			r.once(&seen, discKey)
			m.Shape.Disc, shapeExtra = r.disc()
		case "outline":
			r.once(&seen, outlineKey)
			m.Shape.Outline, shapeExtra = r.outline()
		case "at_mm":
			r.once(&seen, atKey)
			m.At = r.point()
		case "turn_deg":
			r.once(&seen, turnKey)
			m.TurnDeg = r.float(0)
		case "mirrored":
			r.once(&seen, mirroredKey)
			m.Mirrored = r.truth()
		case "method":
			r.once(&seen, methodKey)
			method = bench.Method(r.text())
		default:
			extra = r.unknown(extra, string(key))
		}
	})
	has := func(key int) bool { return seen&(1<<key) != 0 }
	switch {
	case r.fault != nil:
	case !has(idKey):
		r.missing(from, "id")
	case !has(atKey):
		r.missing(from, "at_mm")
	case has(discKey) == has(outlineKey):
		r.failf(from, "a motif is a \"disc\" or an \"outline\"; give one of the two")
	case extra != nil || shapeExtra != nil:
		r.keep(motifPart(m.ID), extra)
		r.keep(motifPart(m.ID)+shapePart, shapeExtra)
	}
	if has(methodKey) {
		if r.order.Methods == nil {
			r.order.Methods = bench.Overrides{}
		}
		r.order.Methods[m.ID] = method
	}
	return m
}

// shapePart follows a motif's part in the name of its disc's or outline's part.
const shapePart = ".shape"

func (r *reader) disc() (geom.Disc, []member) {
	var d geom.Disc
	var extra []member
	from, seen := r.at, uint64(0)
	r.object(func(key []byte) {
		if string(key) != "diameter_mm" {
			extra = r.unknown(extra, string(key))
			return
		}
		r.once(&seen, 0)
		d.Diameter = r.length()
	})
	if seen == 0 {
		r.missing(from, "diameter_mm")
	}
	return d, extra
}

func (r *reader) outline() (geom.Outline, []member) {
	var o geom.Outline
	var extra []member
	from, seen := r.at, uint64(0)
	r.object(func(key []byte) {
		if string(key) != "path" {
			extra = r.unknown(extra, string(key))
			return
		}
		r.once(&seen, 0)
		start := r.at
		text := r.text()
		if r.fault != nil {
			return
		}
		var err error
		if o, err = geom.ParsePathData(string(text)); err != nil {
			r.failf(start, "%v", err)
			return
		}
		for _, c := range o {
			r.pieces += len(c.Segments)
		}
		if r.pieces > maxReadPieces {
			r.failf(start, "the outlines up to here have more than %d pieces; draw them plainer", maxReadPieces)
		}
	})
	if seen == 0 {
		r.missing(from, "path")
	}
	return o, extra
}

// punch reads one tool of the rack.
func (r *reader) punch() Punch {
	var p Punch
	var extra []member
	from, seen := r.at, uint64(0)
	r.object(func(key []byte) {
		switch string(key) {
		case "name":
			r.once(&seen, 0)
			p.Name = string(r.text())
		case "diameter_mm":
			r.once(&seen, 1)
			p.Diameter = r.length()
		default:
			extra = r.unknown(extra, string(key))
		}
	})
	if seen&1 == 0 {
		r.missing(from, "name")
	}
	if seen&2 == 0 {
		r.missing(from, "diameter_mm")
	}
	r.keep(punchPart(p.Name), extra)
	return p
}

// tie reads one tie: {"motif", "from_mm", "to_mm", "width_mm"}.
func (r *reader) tie() stencil.Tie {
	var t stencil.Tie
	var extra []member
	from, seen := r.at, uint64(0)
	keys := []string{"motif", "from_mm", "to_mm", "width_mm"}
	r.object(func(key []byte) {
		i := slices.Index(keys, string(key))
		if i < 0 {
			extra = r.unknown(extra, string(key))
			return
		}
		r.once(&seen, i)
		switch i {
		case 0:
			t.Motif = pattern.ID(r.integer())
		case 1:
			t.From = r.point()
		case 2:
			t.To = r.point()
		case 3:
			t.Width = r.length()
		}
	})
	for i, key := range keys {
		if seen&(1<<i) == 0 {
			r.missing(from, key)
		}
	}
	r.keep(tiePart(t), extra)
	return t
}

// recipe reads what a ground was made from: {"name", "seed", "values"} with an
// optional "width_mm", "columns" and "rows".
func (r *reader) recipe() pattern.Recipe {
	var g pattern.Recipe
	var extra []member
	from, seen := r.at, uint64(0)
	r.object(func(key []byte) {
		switch string(key) {
		case "name":
			r.once(&seen, 0)
			g.Ground = string(r.text())
		case "seed":
			r.once(&seen, 1)
			g.Seed = uint64(r.integer())
		case "values":
			r.once(&seen, 2)
			g.Values = r.values()
		case "width_mm":
			r.once(&seen, 3)
			g.Width = r.length()
		case "columns":
			r.once(&seen, 4)
			g.Columns = r.integer()
		case "rows":
			r.once(&seen, 5)
			g.Rows = r.integer()
		default:
			extra = r.unknown(extra, string(key))
		}
	})
	if seen&1 == 0 {
		r.missing(from, "name")
	}
	r.keep(groundPart, extra)
	return g
}

// values reads numbers by name; an object without any is nil.
func (r *reader) values() map[string]float64 {
	var v map[string]float64
	r.object(func(key []byte) {
		name := string(key)
		if _, twice := v[name]; twice {
			r.failf(r.at, "the key stands here twice; keep one of the two")
		}
		if len(v) == maxExtra {
			r.failf(r.at, "more than %d values; check the file", maxExtra)
			return
		}
		if v == nil {
			v = map[string]float64{}
		}
		v[name] = r.float(0)
	})
	return v
}
