package main

import (
	"encoding/json"
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
