package outlinefile

import (
	"bytes"
	"encoding/xml"
	"errors"
	"io"
	"regexp"
	"strings"
)

// A node is one SVG element.
type node struct {
	name  string
	attrs map[string]string // without namespaces; href is xlink's or SVG 2's
	kids  []*node
	line  int
}

// A tree is an SVG file as it is read: its elements, and those with an id by it.
type tree struct {
	root *node
	byID map[string]*node
	css  string // of all style elements
}

const (
	svgSpace  = "http://www.w3.org/2000/svg"
	maxStyles = 1 << 20 // bytes of style sheets
)

// readTree reads the elements of an SVG file. Depth, number and the entities that it
// defines are bounded; nothing outside of the file is looked at.
func readTree(data []byte) (*tree, error) {
	d := xml.NewDecoder(bytes.NewReader(data))
	d.CharsetReader = charset
	d.Entity = map[string]string{}
	t := &tree{byID: map[string]*node{}}
	var open []*node
	count := 0
	for {
		token, err := d.Token()
		line, _ := d.InputPos()
		if errors.Is(err, io.EOF) {
			break
		}
		if err != nil {
			return nil, xmlFault(line, err)
		}
		switch token := token.(type) {
		case xml.Directive:
			if err := entities(d.Entity, token, line); err != nil {
				return nil, err
			}
		case xml.StartElement:
			if count++; count > maxElements {
				return nil, faultf(line, "more than %d elements; draw it plainer or part it", maxElements)
			}
			if len(open) >= maxDepth {
				return nil, faultf(line, "groups are nested more than %d deep; ungroup them", maxDepth)
			}
			n := t.element(token, line)
			if len(open) > 0 {
				parent := open[len(open)-1]
				parent.kids = append(parent.kids, n)
			} else if t.root == nil {
				t.root = n
			}
			open = append(open, n)
		case xml.EndElement:
			open = open[:len(open)-1]
		case xml.CharData:
			if len(open) > 0 && open[len(open)-1].name == "style" {
				if t.css += string(token); len(t.css) > maxStyles {
					return nil, faultf(line, "its style sheets are larger than %d kB; simplify them", maxStyles>>10)
				}
			}
		}
	}
	if t.root == nil || t.root.name != "svg" {
		return nil, faultf(0, "it is no SVG file; its first element must be svg")
	}
	return t, nil
}

// element takes an element over. Those of other namespaces keep their prefix in the
// name, so that they are told apart.
func (t *tree) element(e xml.StartElement, line int) *node {
	n := &node{name: e.Name.Local, line: line}
	if e.Name.Space != svgSpace && e.Name.Space != "" {
		n.name = "foreign:" + e.Name.Local
	}
	if len(e.Attr) > 0 {
		n.attrs = make(map[string]string, len(e.Attr))
	}
	for _, a := range e.Attr {
		switch a.Name.Space {
		case "", svgSpace, "http://www.w3.org/1999/xlink":
			n.attrs[a.Name.Local] = a.Value
		}
	}
	if id := n.attrs["id"]; id != "" && t.byID[id] == nil {
		t.byID[id] = n
	}
	return n
}

var entityRule = regexp.MustCompile(`<!ENTITY\s+([A-Za-z_][\w.-]*)\s+(?:"([^"]*)"|'([^']*)')\s*>`)

// entities keeps the plain entities that a document type defines: some programs name
// their namespaces so. One that refers to others or to a file stays unknown.
func entities(known map[string]string, directive []byte, line int) error {
	const most, longest = 200, 1000
	for _, m := range entityRule.FindAllSubmatch(directive, most+1) {
		value := string(m[2]) + string(m[3])
		if len(known) >= most || len(value) > longest {
			return faultf(line, "its document type defines too much; save it as plain SVG")
		}
		if !strings.ContainsAny(value, "&<%") {
			known[string(m[1])] = value
		}
	}
	return nil
}

// xmlFault says what is wrong with the XML.
func xmlFault(line int, err error) error {
	var fault *Fault
	if errors.As(err, &fault) {
		return fault
	}
	var syntax *xml.SyntaxError
	if errors.As(err, &syntax) {
		return faultf(syntax.Line, "the XML is broken: %s; save the file again", short(syntax.Msg))
	}
	return faultf(line, "the XML can't be read: %s", short(err.Error()))
}

// short keeps what a broken file holds from filling the terminal.
func short(text string) string {
	text = strings.Map(func(r rune) rune {
		if r < ' ' || r == 0x7f {
			return '\ufffd'
		}
		return r
	}, text)
	if runes := []rune(text); len(runes) > 60 {
		return string(runes[:60]) + " …"
	}
	return text
}

// charset reads the encodings that SVG files come in besides UTF-8.
func charset(label string, in io.Reader) (io.Reader, error) {
	switch strings.ToLower(label) {
	case "us-ascii", "ascii", "utf8":
		return in, nil
	case "iso-8859-1", "latin1", "windows-1252":
		data, err := io.ReadAll(in)
		if err != nil {
			return nil, err
		}
		runes := make([]rune, len(data))
		for i, b := range data {
			runes[i] = rune(b)
		}
		return strings.NewReader(string(runes)), nil
	}
	return nil, faultf(1, "it is written in %s; save it as UTF-8", short(label))
}
