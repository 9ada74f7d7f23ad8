package document

import (
	"bytes"
	"encoding/json"
	"fmt"
	"io"
	"maps"
	"strconv"
	"unicode/utf8"

	"tsugime/repeat/geom"
	"tsugime/repeat/pattern"
)

// MaxBytes is the largest file that Read takes: room for 700,000 dots each
// drawn by itself.
const MaxBytes = 64 << 20

// Read reads an order from a file and checks it. What the file leaves out is as
// in Defaults; what it has beyond this version's keys is kept in Extra. Every
// error that is not the reader's own is a *Fault on one line; the caller adds
// the file's name.
func Read(r io.Reader) (Order, error) {
	data, err := io.ReadAll(io.LimitReader(r, MaxBytes+1))
	if err != nil {
		return Order{}, fmt.Errorf("read order: %w", err)
	}
	return decode(data, migrations)
}

// decode reads an order; steps are the ways from each older version to the next.
func decode(data []byte, steps []migration) (Order, error) {
	if len(data) > MaxBytes {
		return Order{}, faultf("", "the file is larger than %d MB; an order is far smaller, so check the file", MaxBytes>>20)
	}
	data = bytes.TrimPrefix(data, []byte("\xef\xbb\xbf"))
	if at := firstInvalid(data); at >= 0 {
		line, column := place(data, at)
		return Order{}, &Fault{line, column, "", "the file is not UTF-8 text; an order file is JSON in UTF-8"}
	}
	data, err := migrate(data, steps)
	if err != nil {
		return Order{}, err
	}
	r := reader{scan: scan{data: data}, order: Defaults()}
	r.order.NextID = 0
	r.part(layout, "", true)
	r.end()
	if r.fault != nil {
		return Order{}, r.fault
	}
	if r.order.NextID == 0 {
		r.order.NextID = nextID(r.order.Unit.Motifs)
	}
	if fault := r.order.check(); fault != nil {
		fault.Line, fault.Column = locate(data, fault.Path)
		return Order{}, fault
	}
	return r.order, nil
}

// firstInvalid returns where data stops being UTF-8, or −1.
func firstInvalid(data []byte) int {
	if utf8.Valid(data) {
		return -1
	}
	for i := 0; i < len(data); {
		r, size := utf8.DecodeRune(data[i:])
		if r == utf8.RuneError && size <= 1 {
			return i
		}
		i += size
	}
	return -1
}

// A reader fills an order from a scan.
type reader struct {
	scan
	order Order
}

// part reads an object by its table and keeps what the table doesn't know. name
// is the part's for Extra; top is set for the order itself, whose first two keys
// migrate has read.
func (r *reader) part(table []field, name string, top bool) {
	from := r.at
	seen := uint64(0)
	var extra []member
	r.object(func(key []byte) {
		if top && (string(key) == "format" || string(key) == "version") {
			r.skip()
			return
		}
		for i, f := range table {
			if f.key != string(key) {
				continue
			}
			r.once(&seen, i)
			if f.part != nil {
				r.part(f.part, under(name, f.key), false)
			} else {
				r.value(f.at(&r.order))
			}
			return
		}
		extra = r.unknown(extra, string(key))
	})
	for i, f := range table {
		if f.must && seen&(1<<i) == 0 {
			r.missing(from, f.key)
		}
	}
	r.keep(name, extra)
}

func under(part, key string) string {
	if part == "" {
		return key
	}
	return part + "." + key
}

// once marks key number i as seen and fails where it was seen before.
func (r *reader) once(seen *uint64, i int) {
	if *seen&(1<<i) != 0 {
		r.failf(r.at, "the key stands here twice; keep one of the two")
	}
	*seen |= 1 << i
}

func (r *reader) missing(from int, key string) {
	r.failf(from, "%q is missing; add it", key)
}

// unknown reads a member that no table has and adds it to extra.
func (r *reader) unknown(extra []member, key string) []member {
	for _, m := range extra {
		if m.key == key {
			r.failf(r.at, "the key stands here twice; keep one of the two")
			return extra
		}
	}
	if len(extra) == maxExtra {
		r.failf(r.at, "more than %d keys that this version doesn't know; check the file", maxExtra)
		return extra
	}
	var compact bytes.Buffer
	if err := json.Compact(&compact, r.skip()); err != nil {
		r.failf(r.at, "the value can't be read: %v", err)
	}
	return append(extra, member{key, compact.String()})
}

// maxExtra is how many unknown keys one part may hold.
const maxExtra = 1000

func (r *reader) keep(part string, extra []member) {
	if len(extra) == 0 || r.fault != nil {
		return
	}
	if r.order.Extra.parts == nil {
		r.order.Extra.parts = map[string][]member{}
	}
	r.order.Extra.parts[part] = extra
}

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
	case *geom.Point:
		*to = r.point()
	case *[]geom.Point:
		*to = nil
		r.list(func(int) { *to = append(*to, r.point()) })
	case *[]Punch:
		*to = nil
		r.list(func(int) { *to = append(*to, r.punch()) })
	case *[]pattern.Motif:
		*to = nil
		r.list(func(i int) {
			if i == maxMotifs {
				r.failf(r.at, "the unit has more than %d motifs; split the order", maxMotifs)
				return
			}
			*to = append(*to, r.motif())
		})
	default:
		panic(fmt.Sprintf("document: no way to read %T", to))
	}
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

// Equal reports whether both hold the same.
func (e Extra) Equal(f Extra) bool {
	return maps.EqualFunc(e.parts, f.parts, func(a, b []member) bool {
		if len(a) != len(b) {
			return false
		}
		for i := range a {
			if a[i] != b[i] {
				return false
			}
		}
		return true
	})
}
