package document_test

import (
	"errors"
	"io"
	"strings"
	"testing"

	"tsugime/repeat/document"
)

// Each row breaks the full order in one place and names what the one line of
// error must say: where, and what.
func TestABadFileGetsOneClearLine(t *testing.T) {
	for _, row := range []struct{ old, new, want string }{
		{`"format": "tsugime order"`, `"format": "knitting"`, `line 2, column 13: format: this is a "knitting"`},
		{`"format": "tsugime order",`, ``, `line 1, column 1: "format" is missing; add it`},
		{"\n  \"version\": 1,", ``, `"version" is missing`},
		{"\n  \"version\": 1,", "\n  \"version\": 2,", `version: the file is version 2 of the order format, this program knows up to 1; open it with a newer`},
		{"\n  \"version\": 1,", "\n  \"version\": 0,", `line 3, column 14: version: there is no version 0`},
		{"\n  \"version\": 1,", "\n  \"version\": 1.0,", `1.0 is no whole number`},
		{`"step_mm": 181.818182`, `"step_mm": "6 sun"`, `line 7, column 16: sheet.step_mm: a number is wanted here, not "`},
		{`"step_mm": 181.818182`, `"step_mm": NaN`, `sheet.step_mm: a number is wanted here, not N`},
		{`"step_mm": 181.818182`, `"step_mm": -Infinity`, `sheet.step_mm: a number is wanted here, not -`},
		{`"step_mm": 181.818182`, `"step_mm": 1e999`, `sheet.step_mm: 1e999 mm is out of reach`},
		{`"step_mm": 181.818182`, `"step_mm": -5`, `line 7, column 16: sheet.step_mm: -5 mm is out of bounds; give 1 to 1500 mm`},
		{`"step_mm": 181.818182,`, ``, `line 6, column 12: sheet: "step_mm" is missing; add it`},
		{`"step_mm": 181.818182,`, `"step_mm": 181.818182, "step_mm": 3,`, `sheet.step_mm: the key stands here twice`},
		{`"method": "kiribori"`, `"method": "drill"`, `unit.motifs[0].method: there is no method "drill"; give one of`},
		{`"pile": 6`, `"pile": 2.5`, `sheet.paper.pile: 2.5 is no whole number`},
		{`"pile": 6`, `"pile": 99999999999`, `sheet.paper.pile: 99999999999 is no whole number up to`},
		{`"pile": 6`, `"pile": 51`, `sheet.paper.pile: 51 is out of bounds; give 1 to 50`},
		{`"growth_across_pct": 0.2`, `"growth_across_pct": 20`, `sheet.paper.growth_across_pct: 20 % is out of bounds; give −10 to 10 %`},
		{`"per_end": 2`, `"per_end": 3`, `sheet.stars.at_mm: 2 places for 3 stars an end`},
		{`[360, 3]`, `[360]`, `sheet.stars.at_mm[1]: a place has two numbers, [x, y]`},
		{`[360, 3]`, `[360, 3, 4]`, `sheet.stars.at_mm[1][2]: a place has two numbers, [x, y]`},
		{`[360, 3]`, `[36000, 3]`, `sheet.stars.at_mm[1]: 36000, 3 mm is out of reach`},
		{`"length_mm": 12600`, `"length_mm": 200001`, `cloth.length_mm: 200001 mm is out of bounds; give 100 to 200000 mm`},
		{`"#0180ff"`, `"blue"`, `cloth.dye: "blue" is no colour; write it like "#1f2c4d"`},
		{`"#0180ff"`, `"#+180ff"`, `cloth.dye: "#+180ff" is no colour`},
		{`"marked-line"`, `"by-eye"`, `register.way: there is no "by-eye"; choose from star-to-star, edge-line, marked-line`},
		{`"match_back_centre": true`, `"match_back_centre": null`, `garment.match_back_centre: true or false is wanted here`},
		{`"hip": 905.5`, `"hip": "wide"`, `garment.sizes_mm.hip: a number is wanted here`},
		{`"hip": 905.5`, `"arm": 905.5`, `garment.sizes_mm.arm: the key stands here twice`},
		{`"tuck": 151.515152`, `"tuck": 300000`, `garment.allowances_mm.tuck: 300000 mm is out of bounds`},
		{`"right half": true`, `"right half": 1`, `garment.turned.right half: a value is wanted here`},
		{`"counts": {"panels": 3}`, `"counts": {"panels": 3.5}`, `garment.counts.panels: 3.5 is no whole number`},
		{`"goal": "apart"`, `"goal": "near"`, `garment.match[1].goal: there is no "near"; choose from run-on, staggered, apart`},
		{`"seam": "collar"`, `"seam": "upper overlap"`, `garment.match[1].seam: the seam "upper overlap" stands here twice`},
		{`"share_pct": 25`, `"share_pct": 125`, `garment.match[0].share_pct: 125 % is out of bounds`},
		{`"within_mm": 7.5`, `"within_mm": 7500`, `garment.targets[0].within_mm: 7500 mm is out of bounds`},
		{`"piece": "left", `, ``, `garment.targets[0]: "piece" is missing`},
		{`"title": "Cape"`, `"titel": "Cape"`, `garment.form: there is no key "titel" here`},
		{`"x": "mm(20) - cloth"`, `"x": "mm(20) - clot"`, `garment.form.pieces[0].x: "mm(20) - clot" can't be worked out: unknown name clot`},
		{`"name": "punch 3"`, `"name": "awl"`, `rack[1].name: another punch is called "awl" too`},
		{`"name": "dot"`, `"name": "leaf"`, `shelf[1].name: another shape on the shelf is called "leaf" too`},
		{`"name": "dot", `, ``, `shelf[1]: "name" is missing`},
		{`"disc": {"diameter_mm": 1.25}`, `"at": 3`, `shelf[1]: a shape is a "disc" or an "outline"; give one of the two`},
		{`"diameter_mm": 1.25`, `"diameter_mm": 1600`, `shelf[1].disc.diameter_mm: 1600 mm is out of bounds`},
		{`"name": "punch 3"`, `"name": " "`, `rack[1].name: the punch has no name`},
		{`"page": "B4"`, `"page": "Z9"`, `sheets.page: there is no "Z9"; choose from A4, A3, B4, letter`},
		{`"a_mm": [20, 9.090909]`, `"a_mm": [0, 9.090909]`, `unit.lattice: lattice: the vectors 0, 9.090909 and 0, 18.181818 mm span no area`},
		{`"a_mm": [20, 9.090909],`, ``, `unit.lattice: "a_mm" is missing`},
		{`"id": 3,`, `"id": 1,`, `unit.motifs[1].id: another motif has the ID 1 too`},
		{`"id": 3,`, `"id": -1,`, `unit.motifs[0].id: -1 is out of bounds`},
		{`"id": 3,`, ``, `unit.motifs[0]: "id" is missing`},
		{`"next_id": 9`, `"next_id": 3`, `unit.next_id: 3 is taken`},
		{`"at_mm": [1.000001, -2]`, `"at_mm": [1.000001, -2], "at_mm": [0, 0]`, `unit.motifs[0].at_mm: the key stands here twice`},
		{`"disc": {"diameter_mm": 0.5}`, `"disc": {"diameter_mm": 0.000}`, `unit.motifs[0].disc.diameter_mm: 0 mm is out of bounds; give 0.01 to 1500 mm`},
		{`"disc": {"diameter_mm": 0.5}`, `"disc": {}`, `unit.motifs[0].disc: "diameter_mm" is missing`},
		{`"disc": {"diameter_mm": 0.5}, `, ``, `unit.motifs[0]: a motif is a "disc" or an "outline"; give one of the two`},
		{`"turn_deg": 22.5`, `"turn_deg": 1e400`, `unit.motifs[1].turn_deg: 1e400 is out of reach`},
		{`"turn_deg": 22.5`, `"turn_deg": 400`, `unit.motifs[1].turn_deg: 400° is out of bounds`},
		{`1, "outline": {"path": "M`, `1, "outline": {"path": "X`, `unit.motifs[1].outline.path: path data at character 1: `},
		{`1, "outline": {"path": "M`, `1, "outline": {"path": "M0 0L9999 0V1Z M`, `unit.motifs[1].outline.path: it reaches 9999 mm across`},
		{`"title": "Waves`, "\"title\": \"Wa\x07ves", `title: byte 0x07 stands in a string`},
		{`"title": "Waves`, `"title": "Wa\u0007ves`, `title: it holds the control character U+0007; delete it`},
		{`"title": "Waves`, `"title": "Wa\qves`, `title: the string has a \ that JSON doesn't know`},
		{`"title": "Waves`, "\"title\": \"Wa\xffves", `line 4, column 15: the file is not UTF-8 text`},
		{`"next_id": 9,`, `"next_id": 9`, `line 229, column 5: unit: a comma is missing before "`},
		{"\"motifs\": [\n", `"motifs": 5, "m": [`, `unit.motifs: a list […] is wanted here, not 5`},
	} {
		text := edited(t, row.old, row.new)
		_, err := document.Read(strings.NewReader(text))
		if err == nil {
			t.Errorf("%s → %s is read", row.old, row.new)
			continue
		}
		if got := err.Error(); !strings.Contains(got, row.want) || strings.ContainsAny(got, "\n\x07") {
			t.Errorf("%s → %s:\ngot  %s\nwant …%s…", row.old, row.new, got, row.want)
		}
		var fault *document.Fault
		if !errors.As(err, &fault) {
			t.Errorf("%s → %s: %v is no *Fault", row.old, row.new, err)
		}
	}
}

func TestFilesThatAreNoOrdersAreRefused(t *testing.T) {
	for text, want := range map[string]string{
		"":                            "this is no order file: it should start with {, not the end of the file",
		"[]":                          "it should start with {, not [",
		"\x89PNG\r\n\x1a\n\x00\x00":   "the file is not UTF-8 text",
		"\x00\x00\x00\x00":            "not byte 0x00",
		"{":                           "a string in quotes is wanted here, not the end of the file",
		`{"format": "tsugime order"`:  "a comma is missing before the end of the file",
		strings.Repeat("[", 100_000):  "it should start with {",
		written(t, full(t)) + "{}":    "something follows the order: {",
		written(t, full(t)) + "\x00":  "something follows the order: byte 0x00",
		`{"a":` + deep(100_000) + `}`: "deeper than 64",
		`{"` + strings.Repeat("k", 100_000) + `": nul}`: "a value is wanted here, not n",
	} {
		_, err := document.Read(strings.NewReader(text))
		if err == nil || !strings.Contains(err.Error(), want) || len(err.Error()) > 2000 {
			t.Errorf("%.60q…: got %v\nwant …%s…", text, err, want)
		}
	}
}

func deep(n int) string { return strings.Repeat("[", n) + strings.Repeat("]", n) }

func TestAFileCutShortAnywhereIsRefused(t *testing.T) {
	text := strings.TrimSpace(written(t, full(t)))
	for n := range len(text) {
		if _, err := document.Read(strings.NewReader(text[:n])); err == nil {
			t.Fatalf("the first %d of %d bytes are read as an order", n, len(text))
		}
	}
}

// An endless file is given up after MaxBytes.
func TestAnEndlessFileIsGivenUp(t *testing.T) {
	r := &spaces{}
	_, err := document.Read(r)
	if err == nil || !strings.Contains(err.Error(), "larger than 64 MB") {
		t.Errorf("got %v", err)
	}
	if r.given > document.MaxBytes+1<<20 {
		t.Errorf("%d bytes were read", r.given)
	}
}

type spaces struct{ given int }

func (s *spaces) Read(p []byte) (int, error) {
	if s.given > 10*document.MaxBytes {
		return 0, io.ErrUnexpectedEOF
	}
	for i := range p {
		p[i] = ' '
	}
	s.given += len(p)
	return len(p), nil
}

// Orders that would fill the memory are refused before anything is made.
func TestOrdersTooLargeToBuildAreRefused(t *testing.T) {
	const lattice = `"a_mm": [20, 9.090909],
      "b_mm": [0, 18.181818]`
	for text, want := range map[string]string{
		// 10 µm apart over 356 mm × 1.5 m: 5·10⁹ holes a motif.
		strings.Replace(edited(t, lattice, `"a_mm": [0.01, 0], "b_mm": [0, 0.01]`), "181.818182", "1500", 1): "unit.lattice: the sheet would have about",
		edited(t, lattice, `"a_mm": [0.000001, 0], "b_mm": [0, 0.000001]`):                                   "unit.lattice: ",
		edited(t, lattice, `"a_mm": [1501, 0], "b_mm": [0, 20]`):                                             "keep it within 1500 mm",
		// A few large motifs on a fine lattice reach over everything.
		strings.Replace(edited(t, lattice, `"a_mm": [0.5, 0], "b_mm": [0, 0.5]`), `{"diameter_mm": 0.5}`, `{"diameter_mm": 1500}`, 1): "cut-outs; widen the lattice",
		edited(t, `1, "outline": {"path": "M`, `1, "outline": {"path": "`+strings.Repeat("M0 0L1 0L1 1Z", 60_000)+`M`):                "the outlines on the sheet would have about",
	} {
		_, err := document.Read(strings.NewReader(text))
		if err == nil || !strings.Contains(err.Error(), want) {
			t.Errorf("got %v\nwant …%s…", err, want)
		}
	}
}
