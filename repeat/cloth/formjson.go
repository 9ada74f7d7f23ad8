package cloth

import (
	"bytes"
	"encoding/json"
	"fmt"
	"regexp"
	"slices"
	"strings"
	"unicode"
	"unicode/utf8"
)

// A FormFault is what is wrong with a form, and where: the path of the value from
// the form's top, such as "panels[3].length".
type FormFault struct{ Path, Text string }

// Error puts place and text on one line.
func (f *FormFault) Error() string {
	if f.Path == "" {
		return f.Text
	}
	return f.Path + ": " + f.Text
}

// A jsonReader takes a form's JSON apart. The first fault sticks; after it every
// call returns nothing.
type jsonReader struct{ fault *FormFault }

// A jsonNode is a value with its path.
type jsonNode struct {
	path string
	raw  json.RawMessage
}

func (r *jsonReader) failf(path, format string, args ...any) {
	if r.fault == nil {
		r.fault = &FormFault{path, fmt.Sprintf(format, args...)}
	}
}

func (n jsonNode) at(key string) string { return strings.TrimPrefix(n.path+"."+key, ".") }

// object returns the members of an object, of the keys that are known.
func (r *jsonReader) object(n jsonNode, keys ...string) map[string]jsonNode {
	d := json.NewDecoder(bytes.NewReader(n.raw))
	if open, err := d.Token(); r.fault != nil || err != nil || open != json.Delim('{') {
		r.failf(n.path, "an object {…} is wanted here")
		return nil
	}
	members := map[string]jsonNode{}
	for d.More() {
		token, err := d.Token()
		key, ok := token.(string)
		m := jsonNode{path: n.at(key)}
		if err != nil || !ok || d.Decode(&m.raw) != nil {
			r.failf(n.path, "the object can't be read; write {\"key\": value}")
			return nil
		}
		if !slices.Contains(keys, key) {
			r.failf(n.path, "there is no key %.40q here; there is %s", key, strings.Join(keys, ", "))
			return nil
		}
		if _, twice := members[key]; twice {
			r.failf(m.path, "the key stands here twice; keep one of the two")
			return nil
		}
		members[key] = m
	}
	return members
}

// list returns the entries of a list of at most so many; a list that isn't there
// has none.
func (r *jsonReader) list(n jsonNode, most int) []jsonNode {
	if n.raw == nil || r.fault != nil {
		return nil
	}
	var raw []json.RawMessage
	if json.Unmarshal(n.raw, &raw) != nil || raw == nil {
		r.failf(n.path, "a list […] is wanted here")
		return nil
	}
	if len(raw) > most {
		r.failf(n.path, "%d entries; a form has %d here at most", len(raw), most)
		return nil
	}
	entries := make([]jsonNode, len(raw))
	for i := range raw {
		entries[i] = jsonNode{fmt.Sprintf("%s[%d]", n.path, i), raw[i]}
	}
	return entries
}

// word returns a text of at most so many characters; one that must be there has
// more than white space.
func (r *jsonReader) word(in map[string]jsonNode, of jsonNode, key string, most int, must bool) string {
	if _, ok := in[key]; r.fault != nil || !ok && !must {
		return ""
	}
	return r.text(r.needed(in, of, key), most, must)
}

func (r *jsonReader) text(n jsonNode, most int, must bool) string {
	var s string
	if r.fault != nil {
		return ""
	}
	if len(n.raw) == 0 || n.raw[0] != '"' || json.Unmarshal(n.raw, &s) != nil {
		r.failf(n.path, "a text in quotes is wanted here")
		return ""
	}
	switch {
	case utf8.RuneCountInString(s) > most:
		r.failf(n.path, "more than %d characters; keep it shorter", most)
	case strings.ContainsFunc(s, unicode.IsControl):
		r.failf(n.path, "it holds a control character; delete it")
	case must && strings.TrimSpace(s) == "":
		r.failf(n.path, "it is empty; write it")
	}
	return s
}

// truth returns true or false, or what holds where the key isn't there.
func (r *jsonReader) truth(in map[string]jsonNode, key string, otherwise bool) bool {
	n, ok := in[key]
	if !ok || r.fault != nil {
		return otherwise
	}
	switch string(n.raw) {
	case "true":
		return true
	case "false":
		return false
	}
	r.failf(n.path, "true or false is wanted here")
	return otherwise
}

// whole returns a whole number within bounds.
func (r *jsonReader) whole(in map[string]jsonNode, of jsonNode, key string, least, most int) int {
	n, v := r.needed(in, of, key), 0
	if r.fault != nil {
		return least
	}
	if json.Unmarshal(n.raw, &v) != nil || v < least || v > most {
		r.failf(n.path, "a whole number from %d to %d is wanted here", least, most)
		return least
	}
	return v
}

// formulaText returns the text of a formula, which may be a bare number.
func (r *jsonReader) formulaText(n jsonNode) string {
	if r.fault != nil {
		return ""
	}
	if len(n.raw) > 0 && (n.raw[0] == '-' || n.raw[0] >= '0' && n.raw[0] <= '9') {
		return string(n.raw)
	}
	return r.text(n, maxFormula, true)
}

var plainName = regexp.MustCompile(`^[a-z][a-z0-9_]{0,39}$`)

// needed returns the value under a key that must be there.
func (r *jsonReader) needed(in map[string]jsonNode, of jsonNode, key string) jsonNode {
	n, ok := in[key]
	if !ok {
		r.failf(of.path, "%q is missing; add it", key)
	}
	return n
}

// name returns a name that formulas may use, new to the form.
func (r *jsonReader) name(n jsonNode, known values) string {
	s := r.text(n, 40, true)
	_, twice := known[s]
	switch {
	case r.fault != nil:
	case !plainName.MatchString(s):
		r.failf(n.path, "%q is no name; use small letters, digits and _, a letter first", s)
	case twice || slices.Contains(reservedNames, s):
		r.failf(n.path, "%q stands for something else already; choose another name", s)
	}
	return s
}
