package document

import (
	"bytes"
	"encoding/json"
	"fmt"
	"io"
	"math"
	"unicode/utf8"
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
	data, changed, err := migrate(data, steps)
	if err != nil {
		return Order{}, err
	}
	o, fault := readOrder(data)
	if fault != nil {
		if changed { // places in the text that migrate wrote help nobody
			fault.Line, fault.Column = 0, 0
		}
		return Order{}, fault
	}
	return o, nil
}

// noID stands for a next ID that the file leaves out; no file can name it.
const noID = math.MinInt

// readOrder reads and checks an order of the present version.
func readOrder(data []byte) (Order, *Fault) {
	r := reader{scan: scan{data: data}, order: Defaults()}
	r.order.NextID = noID
	r.part(layout, "", true)
	r.end()
	if r.fault != nil {
		return Order{}, r.fault
	}
	if r.order.NextID == noID {
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
	order  Order
	pieces int // of the outlines read so far
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
