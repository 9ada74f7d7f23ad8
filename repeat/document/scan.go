package document

import (
	"bytes"
	"fmt"
	"strconv"
	"unicode/utf8"
)

// A scan pulls values out of JSON text (RFC 8259) one after another. It keeps
// the numbers as they are written, so that a length never passes through a
// float64, and it knows where it is. The first fault sticks: every call after it
// returns nothing.
type scan struct {
	data  []byte
	at    int
	depth int
	path  []byte // of the value at hand, for faults
	fault *Fault
	done  bool // the caller knows enough; nothing more is read
}

// maxDepth bounds how far objects and lists may lie in each other.
const maxDepth = 64

// failf keeps the first fault, at the byte from.
func (s *scan) failf(from int, format string, args ...any) {
	if s.fault != nil {
		return
	}
	s.fault = faultf(string(s.path), format, args...)
	s.fault.Line, s.fault.Column = place(s.data, from)
}

// place returns line and column of a byte, the column counted in characters.
func place(data []byte, at int) (line, column int) {
	before := data[:min(at, len(data))]
	start := bytes.LastIndexByte(before, '\n') + 1
	return bytes.Count(before, []byte{'\n'}) + 1, utf8.RuneCount(before[start:]) + 1
}

// peek returns the next byte that is no white space, or 0 at the end.
func (s *scan) peek() byte {
	for s.fault == nil && s.at < len(s.data) {
		switch c := s.data[s.at]; c {
		case ' ', '\t', '\n', '\r':
			s.at++
		default:
			return c
		}
	}
	return 0
}

// take passes the byte c where it comes next.
func (s *scan) take(c byte) bool {
	if s.peek() != c {
		return false
	}
	s.at++
	return true
}

// need passes the byte c or fails.
func (s *scan) need(c byte, what string) {
	if !s.take(c) {
		s.failf(s.at, "%s is missing before %s", what, s.next())
	}
}

// next says what comes next, for a fault.
func (s *scan) next() string {
	if s.at >= len(s.data) {
		return "the end of the file"
	}
	r, size := utf8.DecodeRune(s.data[s.at:])
	if r == utf8.RuneError || r < ' ' {
		return fmt.Sprintf("byte 0x%02x", s.data[s.at])
	}
	return string(s.data[s.at : s.at+size])
}

// open enters an object or a list.
func (s *scan) open(c byte, what string) bool {
	if !s.take(c) {
		s.failf(s.at, "%s is wanted here, not %s", what, s.next())
		return false
	}
	if s.depth++; s.depth > maxDepth {
		s.failf(s.at, "lists and objects lie deeper than %d; flatten them", maxDepth)
		return false
	}
	return true
}

// object calls member with each key; member must read the value.
func (s *scan) object(member func(key []byte)) {
	if !s.open('{', "an object {…}") {
		return
	}
	base := len(s.path)
	for first := true; s.fault == nil && !s.take('}'); first = false {
		if !first {
			s.need(',', "a comma")
		}
		key := s.text()
		s.need(':', "a colon")
		if s.fault != nil {
			return
		}
		if base > 0 {
			s.path = append(s.path, '.')
		}
		s.path = append(s.path, key...)
		s.peek()
		member(key)
		if s.fault != nil || s.done {
			return
		}
		s.path = s.path[:base]
	}
	s.depth--
}

// list calls entry with the number of each value; entry must read it.
func (s *scan) list(entry func(i int)) {
	if !s.open('[', "a list […]") {
		return
	}
	base := len(s.path)
	for i := 0; s.fault == nil && !s.take(']'); i++ {
		if i > 0 {
			s.need(',', "a comma")
		}
		if s.fault != nil {
			return
		}
		s.path = appendIndex(s.path, i)
		s.peek()
		entry(i)
		if s.fault != nil {
			return
		}
		s.path = s.path[:base]
	}
	s.depth--
}

// word passes one of the words true, false and null.
func (s *scan) word() string {
	s.peek()
	for _, w := range []string{"true", "false", "null"} {
		if s.fault == nil && bytes.HasPrefix(s.data[s.at:], []byte(w)) {
			s.at += len(w)
			return w
		}
	}
	s.failf(s.at, "a value is wanted here, not %s", s.next())
	return ""
}

// skip passes any value and returns it as it is written.
func (s *scan) skip() []byte {
	s.peek()
	from := s.at
	switch c := s.peek(); {
	case c == '{':
		s.object(func([]byte) { s.skip() })
	case c == '[':
		s.list(func(int) { s.skip() })
	case c == '"':
		s.text()
	case c == '-' || c >= '0' && c <= '9':
		s.number()
	default:
		s.word()
	}
	if s.fault != nil {
		return nil
	}
	return s.data[from:s.at]
}

// end fails where anything but white space is left.
func (s *scan) end() {
	if s.peek() != 0 || s.fault == nil && s.at < len(s.data) {
		s.failf(s.at, "something follows the order: %s; one file holds one order", s.next())
	}
}

// appendIndex appends the number of a list's entry: "[3]".
func appendIndex(path []byte, i int) []byte {
	path = append(path, '[')
	path = strconv.AppendInt(path, int64(i), 10)
	return append(path, ']')
}
