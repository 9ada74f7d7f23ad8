package cloth

import (
	"bytes"
	"encoding/json"
	"reflect"
	"slices"
	"strings"

	"tsugime/repeat/geom"
)

// Bounds of a form, far above any garment.
const (
	maxFormBytes   = 256 << 10
	maxViews       = 6
	maxAsks        = 20
	maxTables      = 10
	maxRows        = 50
	maxAllowances  = 40
	maxSizes       = 80
	maxPanels      = 24
	maxPieces      = 80
	maxSeams       = 60
	maxJoins       = 8
	maxWords       = 60  // characters of a name for people
	maxText        = 500 // characters of what is told
	maxAskCount    = 100
	lowestPriority = 5
)

// formFormat is the value of the key "format" of a form.
const formFormat = "tsugime garment"

// A formReader reads a form from JSON.
type formReader struct {
	jsonReader
	form  *Form
	unit  geom.Unit
	known values // the names so far, with values of their kinds
	read  map[formulaKey]formula
}

type formulaKey struct {
	text string
	kind reflect.Type
}

// ReadForm reads a form. Every error is a *FormFault with the place in the form,
// and what to do.
func ReadForm(data []byte) (*Form, error) {
	if len(data) > maxFormBytes {
		return nil, &FormFault{"", "the form is larger than 256 kB; leave out what it needn't have"}
	}
	if !json.Valid(data) {
		return nil, &FormFault{"", "the form is no sound JSON; write it as a form of the program is written"}
	}
	r := formReader{form: &Form{}, known: values{"cloth": length{}}, read: map[formulaKey]formula{}}
	r.top(jsonNode{raw: data})
	if r.fault != nil {
		return nil, r.fault
	}
	var text bytes.Buffer
	if err := json.Indent(&text, bytes.TrimSpace(data), "", "  "); err != nil {
		return nil, &FormFault{"", "the form can't be laid out: " + err.Error()}
	}
	r.form.Text = text.String()
	return r.form, nil
}

func (r *formReader) top(n jsonNode) {
	in := r.object(n, "format", "version", "name", "title", "about", "unit", "edge", "match",
		"views", "asks", "tables", "allowances", "sizes", "panels", "pieces", "seams")
	if got := r.word(in, n, "format", maxWords, true); r.fault == nil && got != formFormat {
		r.failf("format", "%q is no form of a garment; write %q", got, formFormat)
	}
	r.whole(in, n, "version", 1, 1)
	f := r.form
	name := r.word(in, n, "name", maxWords, true)
	if r.fault == nil && strings.Trim(name, "abcdefghijklmnopqrstuvwxyz0123456789-") != "" {
		r.failf("name", "%q is no name of a form; use small letters, digits and -", name)
	}
	f.Name = GarmentKind(name)
	f.Title, f.About = r.word(in, n, "title", maxWords, true), r.word(in, n, "about", maxText, false)
	r.unit = geom.MMUnit
	if text := r.word(in, n, "unit", maxWords, false); text != "" {
		u, ok := geom.UnitNamed(text)
		if !ok {
			r.failf("unit", "%q is no unit; write mm, cm, kujira sun or kujira bu", text)
		}
		r.unit = u
	}
	for _, e := range r.list(in["views"], maxViews) {
		r.view(e)
	}
	r.asks(in["asks"])
	for _, e := range r.list(in["tables"], maxTables) {
		r.table(e)
	}
	for _, e := range r.list(in["allowances"], maxAllowances) {
		r.allowance(e)
	}
	for _, e := range r.list(in["sizes"], maxSizes) {
		r.size(e)
	}
	r.edge(in, n)
	r.laid(in, n)
}

// edge is the name of the allowance that every selvedge keeps.
func (r *formReader) edge(in map[string]jsonNode, n jsonNode) {
	r.form.edge = r.word(in, n, "edge", maxWords, true)
	if r.fault == nil && !slices.ContainsFunc(r.form.Allowances, func(a Allowance) bool { return a.Name == r.form.edge }) {
		r.failf("edge", "there is no allowance %q; name one that every selvedge keeps", r.form.edge)
	}
}

// laid reads what lies on the cloth and how it is sewn.
func (r *formReader) laid(in map[string]jsonNode, n jsonNode) {
	for _, e := range r.list(in["panels"], maxPanels) {
		r.panel(e)
	}
	r.known["panel_width"], r.known["panel_length"] = length{}, length{}
	for _, e := range r.list(in["pieces"], maxPieces) {
		r.piece(e)
	}
	delete(r.known, "panel_width")
	delete(r.known, "panel_length")
	for _, e := range r.list(in["seams"], maxSeams) {
		r.seam(e)
	}
	f := r.form
	if r.fault == nil && (len(f.panels) == 0 || len(f.pieces) == 0) {
		r.failf("", "a form has panels and pieces; add them")
	}
	f.Matched = r.word(in, n, "match", maxWords, false)
	if r.fault == nil && f.Matched != "" && !slices.ContainsFunc(f.seams, func(s formSeam) bool { return s.name == f.Matched }) {
		r.failf("match", "there is no seam %q; name one of the form's", f.Matched)
	}
}

// formula reads the formula under a key.
func (r *formReader) formula(in map[string]jsonNode, of jsonNode, key string, kind reflect.Type) formula {
	return r.formulaAt(r.needed(in, of, key), kind)
}

// option reads the formula under a key that may be left out.
func (r *formReader) option(in map[string]jsonNode, key string, kind reflect.Type) *formula {
	n, ok := in[key]
	if !ok {
		return nil
	}
	f := r.formulaAt(n, kind)
	return &f
}

func (r *formReader) formulaAt(n jsonNode, kind reflect.Type) formula {
	text := r.formulaText(n)
	if r.fault != nil {
		return formula{}
	}
	if f, ok := r.read[formulaKey{text, kind}]; ok {
		return f
	}
	f, err := parseFormula(text, kind, r.known, r.unit)
	if err != nil {
		r.failf(n.path, "%v", err)
	}
	r.read[formulaKey{text, kind}] = f
	return f
}

// fixed reads a length that is no formula.
func (r *formReader) fixed(n jsonNode) geom.Length {
	text := r.formulaText(n)
	if r.fault != nil {
		return 0
	}
	l, err := geom.ParseLength(text, r.unit)
	if err != nil {
		r.failf(n.path, "%v", err)
	} else if l.Abs() > formulaReach {
		r.failf(n.path, "%s mm is out of reach; give less than 100 km", l)
	}
	return l
}
