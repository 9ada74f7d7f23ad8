package document

import (
	"bytes"
	"fmt"
	"strconv"

	"tsugime/repeat/cloth"
	"tsugime/repeat/geom"
	"tsugime/repeat/pattern"
	"tsugime/repeat/stencil"
)

// value reads into what a field points to.
func (r *reader) value(to any) {
	switch to := to.(type) {
	case *geom.Length:
		*to = r.length()
	case *percent:
		*to = percent(r.float(-2))
	case *int:
		*to = r.integer()
	case *bool:
		*to = r.truth()
	case *string:
		*to = string(r.text())
	case *Colour:
		*to = r.colour()
	case *lengths:
		*to = byName(r, r.length)
	case *counts:
		*to = byName(r, r.integer)
	case *turns:
		*to = byName(r, r.truth)
	case *names:
		*to = entries(r, maxNamed, "panels; a form has %d at most", func() string { return string(r.text()) })
	case *[]cloth.SeamWish:
		*to = entries(r, maxWishes, "seams; keep to %d", r.seamWish)
	case *[]cloth.PlaceWish:
		*to = entries(r, maxWishes, "places; keep to %d", r.placeWish)
	case *formText:
		*to = r.form()
	case *geom.Point:
		*to = r.point()
	case *pattern.Recipe:
		*to = r.recipe()
	case *[]geom.Point:
		*to = entries(r, maxStars, "places; an end has at most %d stars", r.point)
	case *placeLine:
		*to = entries(r, maxJointLine, "places; draw the line with %d at most", r.point)
	case *[]Punch:
		*to = entries(r, maxRack, "punches; keep the rack to %d", r.punch)
	case *[]ShelfMotif:
		*to = entries(r, maxShelf, "shapes on the shelf; keep it to %d", r.shelved)
	case *[]stencil.Tie:
		*to = entries(r, maxTies, "ties; the unit may have %d", r.tie)
	case *[]pattern.ID:
		*to = entries(r, maxMotifs, "motifs; the unit may have %d", func() pattern.ID { return pattern.ID(r.integer()) })
	case *[]pattern.Motif:
		*to = entries(r, maxMotifs, "motifs; split the order, it may have %d", r.motif)
	default:
		panic(fmt.Sprintf("document: no way to read %T", to))
	}
}

// entries reads a list of at most so many entries; tooMany says what they are and
// what to do, with one verb for the number.
func entries[T any](r *reader, most int, tooMany string, read func() T) []T {
	var all []T
	r.list(func(i int) {
		if i == most {
			r.failf(r.at, "more than %d "+tooMany, most, most)
			return
		}
		all = append(all, read())
	})
	return all
}

func (r *reader) length() geom.Length {
	from := r.at
	number := r.number()
	if r.fault != nil {
		return 0
	}
	l, ok := parseMM(number)
	if !ok {
		r.failf(from, "%s mm is out of reach; no length here exceeds %s mm", number, maxLength)
	}
	return l
}

func (r *reader) float(shift int) float64 {
	from := r.at
	number := r.number()
	if r.fault != nil {
		return 0
	}
	v, ok := parseFloat(number, shift)
	if !ok {
		r.failf(from, "%s is out of reach; give a smaller number", number)
	}
	return v
}

func (r *reader) integer() int {
	from := r.at
	number := r.number()
	if r.fault != nil {
		return 0
	}
	n, err := strconv.ParseInt(string(number), 10, 32)
	if err != nil {
		r.failf(from, "%s is no whole number up to 2147483647", number)
	}
	return int(n)
}

func (r *reader) truth() bool {
	from := r.at
	word := r.word()
	if word == "null" {
		r.failf(from, "true or false is wanted here, not null")
	}
	return word == "true"
}

func (r *reader) colour() Colour {
	from := r.at
	text := r.text()
	if r.fault != nil {
		return Colour{}
	}
	n, err := strconv.ParseUint(string(bytes.TrimPrefix(text, []byte("#"))), 16, 24)
	if len(text) != 7 || text[0] != '#' || err != nil {
		r.failf(from, "%.20q is no colour; write it like \"#1f2c4d\"", text)
	}
	return Colour{uint8(n >> 16), uint8(n >> 8), uint8(n)}
}

// point reads [x, y].
func (r *reader) point() geom.Point {
	var p geom.Point
	from, n := r.at, 0
	r.list(func(i int) {
		switch n = i + 1; i {
		case 0:
			p.X = r.length()
		case 1:
			p.Y = r.length()
		default:
			r.failf(from, "a place has two numbers, [x, y]")
		}
	})
	if n < 2 {
		r.failf(from, "a place has two numbers, [x, y]")
	}
	return p
}
