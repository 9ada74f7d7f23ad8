package main

import (
	"encoding/json"
	"math"
	"strings"
	"testing"

	"tsugime/repeat/pattern"
)

// Every ground becomes an order that meets its step, and says which plane group
// it has.
func TestEveryGroundMeetsTheStep(t *testing.T) {
	listed, _, _ := call(t, "", "ground", "--list")
	for _, g := range pattern.Grounds() {
		if !strings.Contains(listed, g.Name) {
			t.Errorf("%s is not listed", g.Name)
		}
		order, told, code := call(t, "", "ground", g.Name, "--step", "180", "-o", "-")
		if code != exitFine {
			t.Errorf("%s: exit %d, %s", g.Name, code, told)
			continue
		}
		text, _, _ := call(t, order, "check", "-", "--json")
		var doc struct {
			Measures struct {
				StepError float64 `json:"step_error_mm"`
				Group     string  `json:"plane_group"`
				Islands   int     `json:"islands"`
			} `json:"measures"`
		}
		if err := json.Unmarshal([]byte(text), &doc); err != nil {
			t.Fatal(err)
		}
		if m := doc.Measures; m.StepError != 0 || m.Islands != 0 || m.Group == "" {
			t.Errorf("%s: %+v", g.Name, m)
		}
		if about, _, code := call(t, "", "ground", "--list", g.Name); code != exitFine || !strings.Contains(about, "--set "+g.Params[0].Key+"=") {
			t.Errorf("%s is not explained (exit %d): %s", g.Name, code, about)
		}
	}
}

// A ground is laid from seam to seam, told, fitted to another step and laid again
// with other dots: the fit stays.
func TestAGroundKeepsItsWidthAndItsFit(t *testing.T) {
	laid, told, code := call(t, "", "ground", "diagonal-dots", "--width", "seam", "--step", "181.8", "-o", "-")
	if code != exitFine || !strings.Contains(told, "in the step and 235 in 356.061 mm") {
		t.Fatalf("exit %d, %s", code, told)
	}
	fitted, told, code := call(t, laid, "fit", "-", "--step", "180", "--seam", "--apply", "1", "-o", "-")
	if code != exitFine || told != "" {
		t.Fatalf("exit %d, %s", code, told)
	}
	measured := func(order string) (m struct {
		StepError float64 `json:"step_error_mm"`
		Ground    *struct {
			Width         float64 `json:"width_mm"`
			Rows, Columns int
			Bent          float64 `json:"bent_pct"`
		}
	}) {
		text, _, _ := call(t, order, "check", "-", "--json", "--fail-on", "never")
		doc := struct{ Measures any }{&m}
		if err := json.Unmarshal([]byte(text), &doc); err != nil {
			t.Fatal(err)
		}
		return m
	}
	m := measured(fitted)
	if m.StepError != 0 || m.Ground == nil || math.Abs(m.Ground.Width-356.0606) > 2e-3 || m.Ground.Columns != 235 || math.Abs(m.Ground.Bent) > 0.5 {
		t.Errorf("after the fit %+v, %+v", m, m.Ground)
	}
	again, _, code := call(t, fitted, "ground", "--again", "--set", "dot=0.45", "--in", "-", "-o", "-")
	if n := measured(again); code != exitFine || n.Ground == nil || *n.Ground != *m.Ground || !strings.Contains(again, `"diameter_mm": 0.45`) {
		t.Errorf("laid again: exit %d, %+v", code, n.Ground)
	}
	if _, told, code := call(t, "", "ground", "--again", "-o", "-"); code != exitWrongUse || !strings.Contains(told, "--in ORDER") {
		t.Errorf("again of nothing: exit %d, %s", code, told)
	}
}

// A ground that is bent is warned of, and eased.
func TestABentGroundIsWarnedOfAndEased(t *testing.T) {
	bent, told, _ := call(t, "", "ground", "hemp-leaf", "--width", "seam", "-o", "-")
	if !strings.Contains(told, "--ease") {
		t.Errorf("said %q", told)
	}
	if text, _, code := call(t, bent, "check", "-", "--fail-on", "warning"); code != exitFindings || !strings.Contains(text, "ground-bent") {
		t.Errorf("exit %d\n%s", code, text)
	}
	eased, told, code := call(t, "", "ground", "hemp-leaf", "--width", "seam", "--ease", "-o", "-")
	if text, _, _ := call(t, eased, "check", "-"); code != exitFine || strings.Contains(told, "--ease") || strings.Contains(text, "ground-bent") {
		t.Errorf("exit %d, %s\n%s", code, told, text)
	}
}
