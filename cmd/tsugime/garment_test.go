package main

import (
	"encoding/json"
	"strings"
	"testing"

	"tsugime/assets"
	"tsugime/repeat/cloth"
)

func TestGarmentListTellsWhatEachTakes(t *testing.T) {
	out, msg, code := call(t, "", "garment", "--list")
	if code != exitFine || msg != "" || strings.Count(out, "\n") != len(cloth.GarmentKinds()) {
		t.Fatalf("exit %d, %q, %q", code, msg, out)
	}
	for _, line := range []string{
		"womens-kimono   Women's kimono; takes height_mm 1400 to 1800",
		"sizes_mm.hip 700 to 1300", "counts.panels 2 to 5",
	} {
		if !strings.Contains(out, line) {
			t.Errorf("%q is not in\n%s", line, out)
		}
	}
	for _, kind := range cloth.GarmentKinds() {
		out, _, code := call(t, "", "garment", "--list", string(kind))
		if code != exitFine || !strings.Contains(out, "source: ") || !strings.Contains(out, "allowances_mm.") {
			t.Errorf("%s: exit %d\n%s", kind, code, out)
		}
	}
	if _, msg, code := call(t, "", "garment", "--list", "tent"); code != exitWrongUse || !strings.Contains(msg, `no garment "tent"`) {
		t.Errorf("a tent: exit %d, %q", code, msg)
	}
	if _, msg, code := call(t, "", "garment"); code != exitWrongUse || !strings.Contains(msg, "--list") {
		t.Errorf("nothing: exit %d, %q", code, msg)
	}
}

// An order that asks for another garment, its sizes and its layout gets them.
func TestGarmentFollowsTheOrder(t *testing.T) {
	leaf, _ := assets.Starter("leaf")
	before, rest, _ := strings.Cut(string(leaf), `"garment": {`)
	_, after, _ := strings.Cut(rest, "}")
	garment := `"garment": {"kind": "door-curtain", "height_mm": 1600, "match_back_centre": true, "counts": {"panels": 2},
		"sizes_mm": {"drop": 900}, "allowances_mm": {"hem": 55}, "panel_order": ["loops", "second", "first"], "gaps_mm": {"second": 30}, "turned": {"first": true, "second": true}}`
	out, msg, code := call(t, before+garment+after, "garment", "-", "--json")
	var raw struct {
		Panels []struct {
			Name   string
			Y      float64 `json:"y_mm"`
			Length float64 `json:"length_mm"`
			Turned bool
		}
		Seams []struct {
			Along float64 `json:"phase_along_mm"`
		}
	}
	if err := json.Unmarshal([]byte(out), &raw); err != nil || code != exitFine {
		t.Fatalf("%v, exit %d, %q", err, code, msg)
	}
	if len(raw.Panels) != 3 || len(raw.Seams) != 1 || raw.Seams[0].Along != 0 {
		t.Fatalf("%+v", raw)
	}
	first, second, loops := raw.Panels[0], raw.Panels[1], raw.Panels[2]
	// 900 less a loop of 60, 30 turned in, a hem of 55.
	if first.Length != 925 || !first.Turned || second.Y != loops.Y+loops.Length+30 || first.Y < second.Y+925 {
		t.Errorf("%+v", raw.Panels)
	}
}
