package main

import (
	"bytes"
	"context"
	"encoding/json"
	"os"
	"path/filepath"
	"strings"
	"testing"
)

// call runs a command line and returns its streams and exit code.
func call(t *testing.T, stdin string, args ...string) (stdout, stderr string, code int) {
	t.Helper()
	var out, err bytes.Buffer
	p := program{in: strings.NewReader(stdin), out: &out, err: &err}
	code = p.run(context.Background(), args)
	return out.String(), err.String(), code
}

// order writes a starter into a folder of the test and returns its name.
func order(t *testing.T, kind string) string {
	t.Helper()
	name := filepath.Join(t.TempDir(), kind+".tsugime")
	if _, msg, code := call(t, "", "start", kind, "-o", name); code != exitFine {
		t.Fatalf("start %s: %s", kind, msg)
	}
	return name
}

// spoiled writes a starter with one text in it replaced.
func spoiled(t *testing.T, old, new string) string {
	t.Helper()
	name := order(t, "small-dot")
	data, err := os.ReadFile(name)
	if err != nil {
		t.Fatal(err)
	}
	if !bytes.Contains(data, []byte(old)) {
		t.Fatalf("the starter has no %q", old)
	}
	if err := os.WriteFile(name, bytes.Replace(data, []byte(old), []byte(new), 1), 0o644); err != nil {
		t.Fatal(err)
	}
	return name
}

func TestWrongUseIsToldInOneLineWithExitTwo(t *testing.T) {
	name := order(t, "small-dot")
	for _, c := range []struct {
		args []string
		says string
	}{
		{[]string{"chek", name}, `did you mean "check"`},
		{[]string{"check"}, "one word"},
		{[]string{"check", name, name}, "one word"},
		{[]string{"check", name, "--nonsense"}, "nonsense"},
		{[]string{"check", name, "--fail-on", "often"}, "often"},
		{[]string{"start", "no-such-kind", "-o", "x"}, "--list"},
		{[]string{"start", "small-dot"}, "-o FILE"},
		{[]string{"fit", name, "--step", "a mile"}, "number is missing"},
		{[]string{"fit", name, "--step", "-3"}, "more than zero"},
		{[]string{"fit", name, "--apply", "99", "-o", "x"}, "number of a fit"},
		{[]string{"fit", name, "--apply", "0", "-o", "x"}, "number of a fit"},
		{[]string{"fit", name, "--snap", "-o", "x"}, "number of a fit"},
		{[]string{"fit", name, "--width", "1.6 m"}, "width: 1600 mm can't be fitted"},
		{[]string{"ground", "checker", "--width", "8", "--step", "160", "-o", "x"}, "give a width near 16.000 mm"},
		{[]string{"ground", "hemp-leaf", "--set", "side=200", "-o", "x"}, "of its length; give a side near"},
		{[]string{"ground", "row-dots", "--set", "pitch=0", "-o", "x"}, "pitch: 0 mm is out of bounds"},
		{[]string{"ground", "row-dots", "--set", "dot=3", "-o", "x"}, "dots of 3 mm meet"},
		{[]string{"ground", "row-dots", "--set", "pitch", "-o", "x"}, "KEY=VALUE"},
		{[]string{"ground", "scattered-dots", "--set", "pitch=0.05", "--set", "dot=0.01", "--set", "patch=500", "-o", "x"}, "200000 are the most"},
		{[]string{"hold", name, "--by", "glue", "-o", "x"}, "as-drawn, ties, split"},
		{[]string{"hold", name, "--width", "0", "-o", "x"}, "more than zero"},
		{[]string{"hold", name}, "-o FILE"},
		{[]string{"bring", "none.svg", "--as", "two", "-o", "x"}, "each, one, shelf"},
		{[]string{"bring", "none.svg", "--unit", "cubit", "-o", "x"}, "no unit"},
		{[]string{"ground"}, "--list"},
		{[]string{"ground", "no-such", "-o", "x"}, "--list"},
		{[]string{"ground", "row-dots", "--set", "pitch", "-o", "x"}, "KEY=VALUE"},
		{[]string{"ground", "row-dots", "--set", "pitch=0", "-o", "x"}, "pitch"},
		{[]string{"ground", "row-dots", "--seed", "-1", "-o", "x"}, "out of bounds"},
		{[]string{"bolt", name, "--json", "--csv"}, "give one"},
		{[]string{"bolt", name, "--bolts", "0"}, "1 or more"},
		{[]string{"bolt", name, "--bolts", "9000000000"}, "bolts"},
		{[]string{"picture", name, "--of", "moon", "-o", "x.png"}, "moon"},
		{[]string{"sheets", name}, "-o FOLDER"},
		{[]string{"sheets", name, "-o", t.TempDir(), "--paper", "A99"}, "A99"},
		{[]string{"completion", "abacus"}, "abacus"},
	} {
		out, msg, code := call(t, "", c.args...)
		if code != exitWrongUse || out != "" || strings.Count(msg, "\n") != 1 || !strings.Contains(msg, c.says) {
			t.Errorf("%v: exit %d, out %q, message %q; want exit 2 and %q", c.args[:1], code, out, msg, c.says)
		}
	}
}

// What can't be read is told in one line with the file, the place in it and what
// to do; nothing appears on standard output.
func TestBadOrdersAreRefusedInOneLineWithExitThree(t *testing.T) {
	junk := filepath.Join(t.TempDir(), "junk.tsugime")
	if err := os.WriteFile(junk, []byte{0xff, 0x00, 0x12, 0x80}, 0o644); err != nil {
		t.Fatal(err)
	}
	for name, says := range map[string]string{
		junk:                                  "UTF-8",
		filepath.Join(t.TempDir(), "missing"): "no such file",
		spoiled(t, `"version": 1`, `"version": 99`):           "version 99",
		spoiled(t, `"width_mm": 356`, `"width_mm": NaN`):      "number",
		spoiled(t, `"width_mm": 356`, `"width_mm": 1e300`):    "width_mm",
		spoiled(t, `"width_mm": 356`, `"width_mm": -1`):       "width_mm",
		spoiled(t, `"width_mm": 356`, `"width_mm": "wide"`):   "number",
		spoiled(t, `"width_mm": 356`, `"width_mm": 10000000`): "width_mm",
		spoiled(t, `"pile": 7`, `"pile": 1e12`):               "pile",
		spoiled(t, `"title"`, `"title`):                       "line",
	} {
		out, msg, code := call(t, "", "check", name)
		if code != exitUnreadable || out != "" || strings.Count(msg, "\n") != 1 || !strings.Contains(msg, says) {
			t.Errorf("exit %d, out %q, message %q; want exit 3 and %q", code, out, msg, says)
		}
	}
}

func TestCheckDocumentHasEveryKeyOfSchemaOne(t *testing.T) {
	out, _, _ := call(t, "", "check", "--json", order(t, "small-dot"))
	var doc struct {
		Schema   int                          `json:"schema"`
		Measures map[string]json.RawMessage   `json:"measures"`
		Findings []map[string]json.RawMessage `json:"findings"`
	}
	if err := json.Unmarshal([]byte(out), &doc); err != nil || doc.Schema != 1 {
		t.Fatalf("%v: schema %d", err, doc.Schema)
	}
	wantKeys(t, doc.Measures, "cut_outs", "cut_outs_per_cm2", "open_area_pct", "narrowest_web_mm", "webs_below_limit",
		"islands", "bands", "step_mm", "step_error_mm", "joint_clearance_mm", "joint_widest_mm", "joint_crossed_mm", "hold", "plane_group", "under_patterns", "stars", "star_baseline_mm", "star_turned_misfit_mm")
	for _, f := range doc.Findings {
		wantKeys(t, f, "code", "severity", "at_mm", "text", "remedy")
	}
}

func TestOtherDocumentsHaveEveryKeyOfSchemaOne(t *testing.T) {
	name := order(t, "small-dot")
	for command, keys := range map[string][]string{
		"bolt": {"schema", "count", "step_mm", "remainder_mm", "placements", "drift",
			"needed", "printings", "order", "sheets", "usable_mm", "partial", "stretches", "simulated", "eye", "gains", "set", "back", "reverse", "fold", "marks", "clear_turn"},
		"garment": {"schema", "kind", "title", "sizes", "panels", "seams", "extra_cloth_mm", "cloth_used_mm", "cloth_there_is_mm", "hidden_mm", "matches", "lower_bound_mm", "proven"},
		"fit":     {"schema", "fits", "seam_width_mm"},
	} {
		out, msg, code := call(t, "", command, name, "--json")
		var doc map[string]json.RawMessage
		if err := json.Unmarshal([]byte(out), &doc); err != nil || code != exitFine || msg != "" {
			t.Errorf("%s: %v, exit %d, %q", command, err, code, msg)
			continue
		}
		wantKeys(t, doc, keys...)
		for list, inner := range map[string][]string{
			"placements": {"n", "y_mm", "face", "walk_x_mm", "walk_y_mm", "laid_as", "between", "mirrored", "stretch"},
			"stretches":  {"go", "cloth", "from_mm", "to_mm", "on_board_mm", "first", "count", "on_face_a", "on_face_b", "in_turn", "turns_mm", "overhang_mm"},
			"eye":        {"distance_mm", "plain_mm", "crisp_mm", "worst_joint"},
			"gains":      {"remedy", "joint_before_mm", "joint_after_mm", "end_before_mm", "end_after_mm", "gain_mm"},
			"marks":      {"cloth", "stretch", "n", "face", "at_mm", "y_mm", "in_turn", "in_part", "end"},
			"panels":     {"name", "x_mm", "y_mm", "length_mm", "width_mm", "turned", "lane", "worn_upside_down", "shift_mm", "shift_range_mm"},
			"seams": {"name", "between", "phase_along_mm", "phase_across_mm", "matched",
				"finished_mm", "finished_x_mm", "stretch_mm", "also", "visible", "priority", "opposite_ways"},
			"sizes": {"name", "title", "size_mm", "source"},
			"fits": {"m", "n", "p", "q", "strain_x_pct", "strain_y_pct", "shear_pct", "turn_deg", "pitch_mm", "cut_outs_per_cm2",
				"cut_outs_per_square_kane_sun", "step_mm", "width_mm", "width_off_mm", "seam_off_mm", "dot_mm", "nearest_punch_mm",
				"punch_change_pct", "keeps_ground", "bent_pct", "a_mm", "b_mm"},
		} {
			var items []map[string]json.RawMessage
			if doc[list] == nil {
				continue
			}
			if err := json.Unmarshal(doc[list], &items); err != nil || len(items) == 0 {
				t.Errorf("%s: %s is %v, %d long", command, list, err, len(items))
				continue
			}
			wantKeys(t, items[0], inner...)
		}
	}
}

func wantKeys(t *testing.T, doc map[string]json.RawMessage, keys ...string) {
	t.Helper()
	for _, k := range keys {
		if _, ok := doc[k]; !ok {
			t.Errorf("there is no %q", k)
		}
	}
}

func TestFindingsAtTheAskedSeverityExitOne(t *testing.T) {
	faulty := spoiled(t, `"step_mm": 181.8182`, `"step_mm": 181.5`)
	for flag, want := range map[string]int{"fault": exitFindings, "never": exitFine, "note": exitFindings} {
		out, _, code := call(t, "", "check", faulty, "--fail-on", flag)
		if code != want || !strings.Contains(out, "joint-step") {
			t.Errorf("--fail-on %s: exit %d, want %d", flag, code, want)
		}
	}
}

// A fit that is applied leaves no joint fault.
func TestAnAppliedFitMendsTheStep(t *testing.T) {
	fitted := filepath.Join(t.TempDir(), "fitted.tsugime")
	if _, msg, code := call(t, "", "fit", order(t, "square-dot"), "--step", "5 kane sun", "--apply", "1", "-o", fitted); code != exitFine {
		t.Fatal(msg)
	}
	out, _, code := call(t, "", "check", fitted)
	if strings.Contains(out, "joint-step") || code == exitUnreadable {
		t.Errorf("after the fit: exit %d\n%s", code, out)
	}
	if !strings.Contains(out, "5 kane sun") {
		t.Errorf("the step is not 5 kane sun:\n%s", out)
	}
}

func TestAnOrderIsReadFromStandardInputAndWrittenToStandardOutput(t *testing.T) {
	text, _, code := call(t, "", "start", "small-dot", "-o", "-")
	if code != exitFine {
		t.Fatalf("exit %d", code)
	}
	out, msg, code := call(t, text, "check", "-")
	if code != exitFine || !strings.Contains(out, "cut-outs") {
		t.Errorf("exit %d: %s%s", code, out, msg)
	}
}

func TestNothingIsOverwrittenWithoutForce(t *testing.T) {
	name := order(t, "small-dot")
	before, err := os.ReadFile(name)
	if err != nil {
		t.Fatal(err)
	}
	if _, msg, code := call(t, "", "start", "leaf", "-o", name); code != exitUnreadable || !strings.Contains(msg, "--force") {
		t.Errorf("exit %d: %s", code, msg)
	}
	if after, err := os.ReadFile(name); err != nil || !bytes.Equal(before, after) {
		t.Error("the file was changed")
	}
	if _, msg, code := call(t, "", "start", "leaf", "-o", name, "--force"); code != exitFine {
		t.Errorf("with --force: exit %d: %s", code, msg)
	}
}

func TestAnInterruptedCommandExits130AndLeavesNothing(t *testing.T) {
	ctx, cancel := context.WithCancel(context.Background())
	cancel()
	var out, msg bytes.Buffer
	folder := filepath.Join(t.TempDir(), "job")
	code := program{in: strings.NewReader(""), out: &out, err: &msg}.run(ctx, []string{"sheets", order(t, "small-dot"), "-o", folder})
	if code != exitInterrupted {
		t.Errorf("exit %d: %s", code, msg.String())
	}
	if entries, err := os.ReadDir(folder); err == nil && len(entries) > 0 {
		t.Errorf("%d files were left", len(entries))
	}
}

func TestEveryCommandExplainsItselfAndIsCompleted(t *testing.T) {
	for _, c := range commands() {
		out, _, code := call(t, "", "help", c.name)
		if code != exitFine || !strings.Contains(out, c.about) || !strings.Contains(out, c.example) {
			t.Errorf("help %s: exit %d", c.name, code)
		}
		for _, shell := range []string{"bash", "zsh", "fish", "powershell"} {
			script, _, code := call(t, "", "completion", shell)
			if code != exitFine || !strings.Contains(script, c.name) {
				t.Errorf("%s does not complete %s", shell, c.name)
			}
		}
	}
}
