package cloth

import (
	"encoding/json"
	"strings"
	"testing"

	"tsugime/assets"
	"tsugime/repeat/geom"
)

func mustForm(t testing.TB, kind GarmentKind) *Form {
	t.Helper()
	f, err := FormOf(kind)
	if err != nil {
		t.Fatal(err)
	}
	return f
}

// Every form of the program is read, goes by its file's name, and names a source
// for each number that it asks for or sews in.
func TestEveryFormIsReadAndNamesItsSources(t *testing.T) {
	for _, kind := range GarmentKinds() {
		f := mustForm(t, kind)
		if f.Name != kind || f.Title == "" || f.About == "" {
			t.Errorf("the form %s is %q, %q, %q", kind, f.Name, f.Title, f.About)
		}
		for _, a := range f.Asks {
			if a.Source == "" || a.Title == "" {
				t.Errorf("%s: %s has no source or title", kind, a.Name)
			}
		}
		for _, a := range f.Allowances {
			if a.Source == "" || a.Title == "" {
				t.Errorf("%s: the allowance %s has no source or title", kind, a.Name)
			}
		}
		// A size that is a bare number says where it comes from.
		for _, s := range f.sizes {
			if s.source == "" && s.is.program == nil {
				t.Errorf("%s: the size %s has no source", kind, s.name)
			}
		}
	}
	if _, err := FormOf("tent"); err == nil || !strings.Contains(err.Error(), "use womens-kimono") {
		t.Errorf("a tent: %v", err)
	}
}

// A form's own text makes the same form.
func TestAFormIsReadAgainFromItsText(t *testing.T) {
	for _, kind := range GarmentKinds() {
		f := mustForm(t, kind)
		again, err := ReadForm([]byte(f.Text))
		if err != nil {
			t.Errorf("%s: %v", kind, err)
		} else if again.Text != f.Text {
			t.Errorf("%s: its text changes", kind)
		}
	}
}

// Each row breaks the women's form in one place.
func TestABrokenFormSaysWhereAndWhatToDo(t *testing.T) {
	text, _ := assets.Garment(string(WomensKimono))
	for _, row := range []struct{ old, new, path, say string }{
		{`"tsugime garment"`, `"tsugime order"`, "format", "write \"tsugime garment\""},
		{`"version": 1`, `"version": 2`, "version", "from 1 to 1"},
		{`"name": "womens-kimono"`, `"name": "Womens"`, "name", "small letters"},
		{`"title": "Women's kimono"`, `"titel": "x"`, "", `no key "titel" here`},
		{`"title": "Women's kimono"`, `"title": " "`, "title", "it is empty"},
		{`"unit": "kujira bu"`, `"unit": "ell"`, "unit", "no unit"},
		{`"edge": "seam"`, `"edge": "rim"`, "edge", `no allowance "rim"`},
		{`"match": "back centre"`, `"match": "crown"`, "match", `no seam "crown"`},
		{`{"name": "back", "title": "Back"},`, `{"name": "front", "title": "Back"},`, "views[1].name", "own name"},
		{`"least": "1400 mm"`, `"least": "1700 mm"`, "asks[0]", "in order"},
		{`"least": "1400 mm"`, `"least": "wide"`, "asks[0].least", "write it before the unit"},
		{`"least": "1400 mm", `, ``, "asks[0]", `"least" is missing`},
		{`"by": "height"`, `"by": "weight"`, "tables[0].by", `no length "weight"`},
		{`["155 cm", 410, 130, 85, 85, 205]`, `["155 cm", 410, 130, 85, 85]`, "tables[0].rows[1]", "5 lengths"},
		{`["155 cm", 410, 130, 85, 85, 205]`, `["149 cm", 410, 130, 85, 85, 205]`, "tables[0].rows[1]", "put the rows in order"},
		{`"columns": ["body"`, `"columns": ["cloth"`, "tables[0].columns[0]", "stands for something else"},
		{`"columns": ["body"`, `"columns": ["Body"`, "tables[0].columns[0]", "small letters"},
		{`"is": "2.5 bu"`, `"is": true`, "allowances[0].is", "text in quotes"},
		{`"is": "sleeve + sun(1)"`, `"is": "sleeve + 1"`, "sizes[12].is", "mismatched types length and int"},
		{`"is": "sleeve + sun(1)"`, `"is": "front_tuck_at"`, "sizes[12].is", "unknown name front_tuck_at"},
		{`"length": "2 * half_collar"`, `"length": "2 * half_colar"`, "panels[6].length", "unknown name half_colar"},
		{`"length": "2 * half_collar"`, `"length": "panel_width"`, "panels[6].length", "unknown name panel_width"},
		{`{"name": "right sleeve", "trade": "袖 sode", "lane": [0, "cloth"]`, `{"name": "right sleeve", "lane": [0]`, "panels[1].lane", "where across the cloth"},
		{`{"name": "right sleeve", "trade"`, `{"name": "left sleeve", "trade"`, "panels[1].name", "own name"},
		{`{"name": "left sleeve back", "panel": "left sleeve"`, `{"name": "left sleeve back", "panel": "cuff"`, "pieces[4].panel", `no panel "cuff"`},
		{`{"name": "left sleeve back", "panel": "left sleeve", "view": "back"`, `{"name": "left sleeve back", "panel": "left sleeve", "view": "top"`, "pieces[4].view", `no view "top"`},
		{`{"name": "left sleeve back", "panel"`, `{"name": "left overlap", "panel"`, "pieces[6].name", "own name"},
		{`"joins": [{"first": ["collar", "left"], "second": ["over-collar", "left"]}]`, `"joins": []`, "seams[2]", "joins nothing"},
		{`"first": ["collar", "left"]`, `"first": ["collar", "top"]`, "seams[2].joins[0]", "left and right, or top and bottom"},
		{`"first": ["collar", "left"]`, `"first": ["colar", "left"]`, "seams[2].joins[0].first[0]", `no piece "colar"`},
		{`"first": ["collar", "left"]`, `"first": ["collar", "upper"]`, "seams[2].joins[0].first[1]", `"upper" is no side`},
		{`"first": ["collar", "left"]`, `"first": "collar"`, "seams[2].joins[0].first", "a list"},
		{`{"name": "collar", "priority": 1`, `{"name": "collar", "priority": 9`, "seams[2].priority", "from 1 to 5"},
		{`{"name": "collar", "priority": 1`, `{"name": "collar", "priority": 1, "priority": 1`, "seams[2].priority", "twice"},
	} {
		if n := strings.Count(string(text), row.old); n != 1 {
			t.Errorf("%q stands %d times in the form", row.old, n)
			continue
		}
		_, err := ReadForm([]byte(strings.Replace(string(text), row.old, row.new, 1)))
		fault, ok := err.(*FormFault)
		if !ok || fault.Path != row.path || !strings.Contains(fault.Text, row.say) {
			t.Errorf("%s → %s: got %v\nwant %s: …%s…", row.old, row.new, err, row.path, row.say)
		}
	}
	for text, say := range map[string]string{
		`{"format": `: "no sound JSON", `[]`: "an object", `{}`: `"format" is missing`, strings.Repeat(" ", maxFormBytes+1): "larger",
		`{"format": "tsugime garment", "version": 1, "name": "a", "title": "A", "edge": "e", "allowances": [{"name": "e", "title": "E", "is": 0, "source": "none"}]}`: "panels and pieces",
	} {
		if _, err := ReadForm([]byte(text)); err == nil || !strings.Contains(err.Error(), say) {
			t.Errorf("%.40s: %v, want one that says %q", text, err, say)
		}
	}
}

// Whatever is put in the place of any value of a form, reading it comes to an end
// without a panic, and a form that is read can be dressed or tells why not.
func FuzzFormsNeverPanic(f *testing.F) {
	for _, kind := range GarmentKinds() {
		text, _ := assets.Garment(string(kind))
		f.Add(text, int64(375e6), int64(160e7))
	}
	f.Fuzz(func(t *testing.T, text []byte, width, height int64) {
		form, err := ReadForm(text)
		if err != nil {
			return
		}
		if !json.Valid([]byte(form.Text)) {
			t.Errorf("the text of the form is no JSON")
		}
		bolt := Bolt{Width: geom.Length(width), Length: 13 * geom.Metre}
		d, err := Dress(bolt, Run{Step: sixSun}, lattices()["half-drop"],
			Garment{Body: Body{Own: form.Text, Height: geom.Length(height)}, MatchBackCentre: true}, geom.Millimetre)
		if err == nil && (len(d.Panels) == 0 || d.Used < 0 || d.Extra < 0) {
			t.Errorf("%d panels, %s used, %s extra", len(d.Panels), d.Used, d.Extra)
		}
	})
}

func BenchmarkReadForm(b *testing.B) {
	text, _ := assets.Garment(string(WomensKimono))
	for b.Loop() {
		if _, err := ReadForm(text); err != nil {
			b.Fatal(err)
		}
	}
}
