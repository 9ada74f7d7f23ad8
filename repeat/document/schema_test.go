package document_test

import (
	"encoding/json"
	"maps"
	"os"
	"os/exec"
	"path/filepath"
	"slices"
	"strings"
	"testing"

	"tsugime/assets"
	"tsugime/repeat/bench"
	"tsugime/repeat/cloth"
	"tsugime/repeat/document"
	"tsugime/repeat/pattern"
	"tsugime/repeat/stencil"
)

// A schema is the part of a JSON Schema that the order's schema uses.
type schema struct {
	Ref        string            `json:"$ref"`
	Defs       map[string]schema `json:"$defs"`
	Properties map[string]schema
	Required   []string
	Items      *schema
	Enum       []string
	Minimum    *json.Number
	Maximum    *json.Number
	Type       string
}

func orderSchema(t *testing.T) schema {
	t.Helper()
	var s schema
	if err := json.Unmarshal(assets.OrderSchema(), &s); err != nil {
		t.Fatal(err)
	}
	return s
}

// leaves calls visit with the path of every key that s names, "[]" standing for
// an entry of a list.
func (s schema) leaves(top schema, path string, visit func(path string, s schema, required bool)) {
	if formsOwn[path] {
		return // TestAnOutsideValidatorAgrees holds it to the forms
	}
	if s.Ref != "" {
		s = top.Defs[strings.TrimPrefix(s.Ref, "#/$defs/")]
	}
	if s.Items != nil {
		s.Items.leaves(top, path+"[]", visit)
	}
	for key, p := range s.Properties {
		at := strings.TrimPrefix(path+"."+key, ".")
		resolved := p
		if p.Ref != "" {
			resolved = top.Defs[strings.TrimPrefix(p.Ref, "#/$defs/")]
		}
		visit(at, resolved, slices.Contains(s.Required, key))
		p.leaves(top, at, visit)
	}
}

// formsOwn are the objects whose keys a garment's form names, and the form.
var formsOwn = map[string]bool{
	"garment.sizes_mm": true, "garment.counts": true, "garment.allowances_mm": true,
	"garment.gaps_mm": true, "garment.shifts_mm": true, "garment.turned": true, "garment.form": true,
}

// keys adds the paths of every key in a JSON value to found.
func keys(value any, path string, found map[string]bool) {
	switch v := value.(type) {
	case map[string]any:
		for key, inner := range v {
			at := strings.TrimPrefix(path+"."+key, ".")
			if strings.HasPrefix(path, "unit.ground.values") || formsOwn[path] {
				continue // their names are the grounds' own, or the garment's
			}
			found[at] = true
			keys(inner, at, found)
		}
	case []any:
		for _, inner := range v {
			keys(inner, path+"[]", found)
		}
	}
}

func TestTheSchemaNamesEveryKeyThatIsWrittenAndNoOther(t *testing.T) {
	var file any
	if err := json.Unmarshal([]byte(written(t, full(t))), &file); err != nil {
		t.Fatal(err)
	}
	inFile, inSchema := map[string]bool{}, map[string]bool{}
	keys(file, "", inFile)
	s := orderSchema(t)
	s.leaves(s, "", func(path string, _ schema, _ bool) { inSchema[path] = true })
	for _, path := range slices.Sorted(maps.Keys(inFile)) {
		if !inSchema[path] {
			t.Errorf("%s is written, but the schema doesn't name it", path)
		}
	}
	for _, path := range slices.Sorted(maps.Keys(inSchema)) {
		if !inFile[path] {
			t.Errorf("the schema names %s, which a full order doesn't write", path)
		}
	}
}

// without returns a JSON value without the key at path, in every entry of a list
// on the way.
func without(value any, path []string) {
	switch v := value.(type) {
	case []any:
		for _, inner := range v {
			without(inner, path)
		}
	case map[string]any:
		key := strings.TrimSuffix(path[0], "[]")
		if len(path) == 1 {
			delete(v, key)
			return
		}
		if inner, ok := v[key]; ok {
			without(inner, path[1:])
		}
	}
}

func TestTheSchemaRequiresWhatTheReaderRequires(t *testing.T) {
	s := orderSchema(t)
	o := full(t)
	o.Sheet.Stars.At = nil // as many as per_end says, whose default is another
	s.leaves(s, "", func(path string, _ schema, required bool) {
		if shape, _ := strings.CutPrefix(path, "shelf[]."); path == "unit.motifs[].disc" || path == "unit.motifs[].outline" || shape == "disc" || shape == "outline" {
			return // one of the two, which oneOf says
		}
		var file any
		if err := json.Unmarshal([]byte(written(t, o)), &file); err != nil {
			t.Fatal(err)
		}
		without(file, strings.Split(path, "."))
		text, err := json.Marshal(file)
		if err != nil {
			t.Fatal(err)
		}
		if _, err = document.Read(strings.NewReader(string(text))); (err != nil) != required {
			t.Errorf("%s: required is %v in the schema; a file without it gives %v", path, required, err)
		}
	})
}

// replaced sets the value at path in every entry on the way.
func replaced(value any, path []string, by json.Number) {
	switch v := value.(type) {
	case []any:
		for _, inner := range v {
			replaced(inner, path, by)
		}
	case map[string]any:
		key := strings.TrimSuffix(path[0], "[]")
		inner, ok := v[key]
		switch {
		case ok && len(path) == 1:
			v[key] = by
		case ok:
			replaced(inner, path[1:], by)
		}
	}
}

// Each bound of the schema is the reader's: a number at the bound is not refused
// for it, one just beyond is.
func TestTheSchemasBoundsAreTheReaders(t *testing.T) {
	s := orderSchema(t)
	s.leaves(s, "", func(path string, p schema, _ bool) {
		for _, bound := range []struct {
			at     *json.Number
			beyond string
		}{{p.Minimum, "under"}, {p.Maximum, "over"}} {
			if bound.at == nil {
				continue
			}
			for _, out := range []bool{false, true} {
				var file any
				if err := json.Unmarshal([]byte(written(t, full(t))), &file); err != nil {
					t.Fatal(err)
				}
				v := *bound.at
				if out {
					v = beyond(t, v, bound.beyond == "over", p.Type == "integer")
				}
				replaced(file, strings.Split(path, "."), v)
				text, err := json.Marshal(file)
				if err != nil {
					t.Fatal(err)
				}
				_, err = document.Read(strings.NewReader(string(text)))
				refused := err != nil && strings.Contains(err.Error(), "out of bounds")
				if refused != out {
					t.Errorf("%s = %s, %s the bound: %v: %v", path, v, bound.beyond, out, err)
				}
			}
		}
	})
}

// beyond returns a number a little past a bound.
func beyond(t *testing.T, v json.Number, over, whole bool) json.Number {
	t.Helper()
	step := 0.0001
	if whole {
		step = 1
	}
	f, err := v.Float64()
	if err != nil {
		t.Fatal(err)
	}
	if !over {
		step = -step
	}
	text, err := json.Marshal(f + step)
	if err != nil {
		t.Fatal(err)
	}
	return json.Number(text)
}

func names[T ~string](choices []T) []string {
	var all []string
	for _, c := range choices {
		all = append(all, string(c))
	}
	return all
}

func TestTheSchemasChoicesAreTheReaders(t *testing.T) {
	s := orderSchema(t)
	for path, want := range map[string][]string{
		"board.order": names(cloth.Sequences()), "cloth.sides": names(cloth.SidesOf()), "sheets.page": document.PageNames, "sheets.units": document.UnitNames,
		"sheets.language": document.LanguageNames, "garment.kind": document.GarmentKinds,
		"unit.group": names(pattern.Groups()), "sheet.hold.way": names(stencil.HoldWays()), "sheet.hold.second.cut": names(stencil.SecondCuts()),
	} {
		part := s
		for key := range strings.SplitSeq(path, ".") {
			part = part.Properties[key]
		}
		if got := part.Enum; !slices.Equal(got, want) {
			t.Errorf("%s: the schema has %v, the reader %v", path, got, want)
		}
	}
	if got := s.Defs["motif"].Properties["method"].Enum; !slices.Equal(got, names(bench.Methods())) {
		t.Errorf("a motif's method: the schema has %v, the reader %v", got, bench.Methods())
	}
}

// The jsonschema package of Python, which knows draft 2020-12, takes the schema
// itself, every starter and the full order, and refuses broken ones.
func TestAnOutsideValidatorAgrees(t *testing.T) {
	const program = `
import json, sys
from jsonschema import Draft202012Validator
schema = json.load(open(sys.argv[1], encoding="utf-8"))
Draft202012Validator.check_schema(schema)
v = Draft202012Validator(schema)
for name in sys.argv[2:]:
    bad = next(iter(v.iter_errors(json.load(open(name, encoding="utf-8")))), None)
    print("sound" if bad is None else "broken")
`
	dir := t.TempDir()
	put := func(name, text string) string {
		path := filepath.Join(dir, name)
		if err := os.WriteFile(path, []byte(text), 0o600); err != nil {
			t.Fatal(err)
		}
		return path
	}
	args := []string{"-c", program, put("schema.json", string(assets.OrderSchema())), put("full.json", written(t, full(t)))}
	want := []string{"sound"}
	for _, s := range assets.Starters() {
		args = append(args, put(s.Name, written(t, starter(t, s.Name))))
		want = append(want, "sound")
	}
	for _, kind := range cloth.GarmentKinds() {
		text, _ := assets.Garment(string(kind))
		o := full(t)
		o.Garment.Body.Own = string(text)
		o, err := document.SetGarment(o, o.Garment)
		if err != nil {
			t.Fatal(err)
		}
		args, want = append(args, put(string(kind), written(t, o))), append(want, "sound")
	}
	for name, row := range map[string][2]string{
		"form key": {`"title": "Cape"`, `"titel": "Cape"`}, "lane": {`"priority": 1`, `"priority": 6`}, "side": {`"priority": 1`, `"side": 1`},
		"step": {`"step_mm": 181.818182`, `"step_mm": 0`}, "kind": {`"womens-kimono"`, `"cape"`},
		"both": {`"disc": {"diameter_mm": 0.5}`, `"disc": {"diameter_mm": 0.5}, "outline": {"path": "M0 0"}`},
	} {
		args = append(args, put(name, edited(t, row[0], row[1])))
		want = append(want, "broken")
	}
	out, err := exec.Command("python3", args...).CombinedOutput()
	if err != nil {
		t.Fatalf("%v: %s\ninstall it with: apt-get install -y --no-install-recommends python3-jsonschema", err, out)
	}
	if got := strings.Fields(string(out)); !slices.Equal(got, want) {
		t.Errorf("got  %v\nwant %v", got, want)
	}
}
