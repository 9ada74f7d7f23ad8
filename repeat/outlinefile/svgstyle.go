package outlinefile

import (
	"slices"
	"strings"
)

// A style is what of CSS and presentation attributes says how an element is painted.
type style map[string]string

// properties are those that matter here; inherited ones pass to what is inside.
var properties = map[string]struct {
	inherited bool
	initial   string
}{
	"fill": {true, "black"}, "fill-rule": {true, "nonzero"}, "fill-opacity": {true, "1"},
	"stroke": {true, "none"}, "stroke-width": {true, "1"}, "stroke-opacity": {true, "1"},
	"stroke-linecap": {true, "butt"}, "stroke-linejoin": {true, "miter"}, "stroke-miterlimit": {true, "4"},
	"stroke-dasharray": {true, "none"}, "stroke-dashoffset": {true, "0"},
	"visibility": {true, "visible"}, "display": {false, "inline"}, "opacity": {false, "1"},
	"font-size":     {true, "16px"},
	"clip-path":     {false, "none"},
	"mask":          {false, "none"},
	"filter":        {false, "none"},
	"marker":        {true, "none"},
	"marker-start":  {true, "none"},
	"marker-mid":    {true, "none"},
	"marker-end":    {true, "none"},
	"vector-effect": {false, "none"},
}

// get returns a property, its initial value where it isn't set.
func (s style) get(name string) string {
	if v, ok := s[name]; ok {
		return v
	}
	return properties[name].initial
}

// A rule is one selector of a style sheet and what it sets.
type rule struct {
	element, id string // empty for any
	classes     []string
	sets        []declaration
	weight      int // specificity: ids, then classes, then elements (CSS 2.1, section 6.4.3)
}

type declaration struct{ name, value string }

// sheet reads a style sheet. Selectors of elements, classes and ids are understood;
// what else there is goes to unknown.
func sheet(css string, unknown func(selector string)) []rule {
	var rules []rule
	css = withoutComments(css)
	for css != "" {
		selectors, rest, ok := strings.Cut(css, "{")
		if !ok {
			break
		}
		body, rest, _ := strings.Cut(rest, "}")
		css = rest
		sets := declarations(body)
		if strings.HasPrefix(strings.TrimSpace(selectors), "@") {
			unknown(strings.TrimSpace(selectors))
			continue
		}
		for selector := range strings.SplitSeq(selectors, ",") {
			r, ok := selected(strings.TrimSpace(selector))
			if !ok {
				unknown(strings.TrimSpace(selector))
				continue
			}
			r.sets = sets
			rules = append(rules, r)
		}
	}
	slices.SortStableFunc(rules, func(a, b rule) int { return a.weight - b.weight })
	return rules
}

func withoutComments(css string) string {
	var b strings.Builder
	for {
		before, after, found := strings.Cut(css, "/*")
		b.WriteString(before)
		if !found {
			break
		}
		_, css, _ = strings.Cut(after, "*/")
	}
	return strings.NewReplacer("<!--", "", "-->", "").Replace(b.String())
}

func declarations(body string) []declaration {
	var sets []declaration
	for set := range strings.SplitSeq(body, ";") {
		name, value, ok := strings.Cut(set, ":")
		if !ok {
			continue
		}
		name = strings.ToLower(strings.TrimSpace(name))
		value = strings.TrimSpace(strings.TrimSuffix(strings.TrimSpace(value), "!important"))
		if _, known := properties[name]; known && value != "" {
			sets = append(sets, declaration{name, value})
		}
	}
	return sets
}

// selected reads one selector: a name, .class and #id, in any number, of one element.
func selected(selector string) (rule, bool) {
	var r rule
	if selector == "" || strings.ContainsAny(selector, " \t\n\r>+~:[\"'") {
		return r, false
	}
	for selector != "" {
		end := strings.IndexAny(selector[1:], ".#") + 1
		if end == 0 {
			end = len(selector)
		}
		part := selector[:end]
		selector = selector[end:]
		switch part[0] {
		case '.':
			r.classes = append(r.classes, part[1:])
			r.weight += 100
		case '#':
			r.id = part[1:]
			r.weight += 10_000
		case '*':
		default:
			r.element = part
			r.weight++
		}
	}
	return r, true
}

func (r rule) fits(n *node) bool {
	if r.element != "" && r.element != n.name || r.id != "" && r.id != n.attrs["id"] {
		return false
	}
	if len(r.classes) == 0 {
		return true
	}
	has := strings.Fields(n.attrs["class"])
	for _, c := range r.classes {
		if !slices.Contains(has, c) {
			return false
		}
	}
	return true
}

// of returns the style of n inside of what has the style outer: attributes, then
// style sheets, then its own style attribute, each over the one before.
func (p *painter) style(n *node, outer style) style {
	if p.plain(n) && outer.passes() {
		return outer
	}
	s := make(style, len(outer)+4)
	for name, value := range outer {
		if properties[name].inherited {
			s[name] = value
		}
	}
	set := func(name, value string) {
		if value = strings.TrimSpace(value); value != "inherit" {
			s[name] = value
		} else if v, ok := outer[name]; ok {
			s[name] = v
		}
	}
	for name, value := range n.attrs {
		if _, known := properties[name]; known && name != "style" {
			set(name, value)
		}
	}
	for _, r := range p.rules {
		if r.fits(n) {
			for _, d := range r.sets {
				set(d.name, d.value)
			}
		}
	}
	for _, d := range declarations(n.attrs["style"]) {
		set(d.name, d.value)
	}
	return s
}

// plain reports whether nothing says how n is painted.
func (p *painter) plain(n *node) bool {
	for name := range n.attrs {
		if _, known := properties[name]; known || name == "style" {
			return false
		}
	}
	return !slices.ContainsFunc(p.rules, func(r rule) bool { return r.fits(n) })
}

// passes reports whether all of s goes to what is inside.
func (s style) passes() bool {
	for name := range s {
		if !properties[name].inherited {
			return false
		}
	}
	return true
}

// paints reports whether a colour paints anything.
func paints(colour string) bool {
	switch strings.ToLower(colour) {
	case "none", "transparent", "":
		return false
	}
	return true
}
