package document

import (
	"encoding/json"
)

// text reads a string and returns its characters without the quotes.
func (s *scan) text() []byte {
	if !s.take('"') {
		s.failf(s.at, "a string in quotes is wanted here, not %s", s.next())
		return nil
	}
	from := s.at
	escaped := false
	for ; s.at < len(s.data); s.at++ {
		switch c := s.data[s.at]; {
		case c == '"':
			s.at++
			if !escaped {
				return s.data[from : s.at-1]
			}
			var plain string
			if json.Unmarshal(s.data[from-1:s.at], &plain) != nil {
				s.failf(from-1, "the string has a \\ that JSON doesn't know; write \\\\ for a backslash")
				return nil
			}
			return []byte(plain)
		case c == '\\':
			escaped = true
			s.at++
		case c < ' ':
			s.failf(s.at, "byte 0x%02x stands in a string; write it as \\u%04x", c, c)
			return nil
		}
	}
	s.failf(from-1, "the string has no closing quote")
	return nil
}

// number reads a number and returns it as it is written.
func (s *scan) number() []byte {
	s.peek()
	if s.fault != nil {
		return nil
	}
	from := s.at
	if n := numberLength(s.data[from:]); n > 0 {
		s.at += n
		return s.data[from:s.at]
	}
	s.failf(from, "a number is wanted here, not %s", s.next())
	return nil
}

// numberLength returns how many bytes at the start of b are a JSON number, 0 for
// none: -?(0|[1-9][0-9]*)(\.[0-9]+)?([eE][+-]?[0-9]+)?
func numberLength(b []byte) int {
	i := 0
	digits := func() bool {
		from := i
		for i < len(b) && b[i] >= '0' && b[i] <= '9' {
			i++
		}
		return i > from
	}
	pass := func(c, d byte) bool {
		if i < len(b) && (b[i] == c || b[i] == d) {
			i++
			return true
		}
		return false
	}
	pass('-', '-')
	from := i
	if !digits() || b[from] == '0' && i > from+1 {
		return 0
	}
	if pass('.', '.') && !digits() {
		return 0
	}
	if pass('e', 'E') {
		pass('+', '-')
		if !digits() {
			return 0
		}
	}
	return i
}
