package main

import (
	"encoding/json"
	"strings"
	"testing"
)

// rings is an order whose paper falls out as it is drawn.
const rings = `{"format":"tsugime order","version":1,"sheet":{"step_mm":180},
"unit":{"lattice":{"a_mm":[10,0],"b_mm":[0,10]},"motifs":[{"id":1,"at_mm":[3,4],
"outline":{"path":"M4 0A4 4 0 0 1 -4 0A4 4 0 0 1 4 0ZM3 0A3 3 0 0 0 -3 0A3 3 0 0 0 3 0Z"}}]}}`

func TestHoldingByTiesOrASplitMendsTheIslands(t *testing.T) {
	for _, c := range []struct {
		flags  []string
		sheets int
	}{
		{nil, 1}, {[]string{"--by", "ties", "--width", "1"}, 1},
		{[]string{"--by", "split"}, 2}, {[]string{"--by", "split", "--second", "whole", "--lap", "0.3"}, 2},
	} {
		tied, told, code := call(t, rings, append([]string{"hold", "-", "-o", "-"}, c.flags...)...)
		if code != exitFine || !strings.Contains(told, "ties") {
			t.Fatalf("%v: exit %d, %s", c.flags, code, told)
		}
		text, _, _ := call(t, tied, "check", "-", "--json")
		var doc struct {
			Measures struct {
				Hold struct {
					Sheets  []struct{ Ties, Islands, Bands int }
					Missing float64 `json:"missing_mm2"`
					Extra   float64 `json:"extra_mm2"`
				}
			}
		}
		if err := json.Unmarshal([]byte(text), &doc); err != nil {
			t.Fatal(err)
		}
		h := doc.Measures.Hold
		if len(h.Sheets) != c.sheets || h.Sheets[0].Ties != 2 || h.Missing != 0 || h.Extra != 0 {
			t.Errorf("%v: held as %+v", c.flags, h)
		}
		for _, s := range h.Sheets {
			if s.Islands != 0 || s.Bands != 0 {
				t.Errorf("%v: a sheet still has %d islands and %d bands", c.flags, s.Islands, s.Bands)
			}
		}
		loose, _, code := call(t, tied, "hold", "-", "--by", "as-drawn", "-o", "-")
		if code != exitFine || strings.Contains(loose, `{"motif"`) {
			t.Errorf("%v: held as drawn it still has ties (exit %d)", c.flags, code)
		}
	}
}

func TestJointLinesKeepTheirShareOfTheClearance(t *testing.T) {
	text, _, code := call(t, "", "joint", order(t, "small-dot"), "--json")
	var doc struct {
		Choices []struct {
			Share     float64 `json:"share_pct"`
			Clearance float64 `json:"clearance_mm"`
			Length    float64 `json:"length_mm"`
		} `json:"choices"`
	}
	if err := json.Unmarshal([]byte(text), &doc); err != nil || code != exitFine || len(doc.Choices) < 5 {
		t.Fatalf("exit %d, %v: %s", code, err, text)
	}
	for _, c := range doc.Choices {
		if least := doc.Choices[0].Clearance * c.Share / 100; c.Clearance < least-0.002 || c.Length < 356 {
			t.Errorf("at %g %% the line is %g mm clear and %g mm long; %g mm is asked for", c.Share, c.Clearance, c.Length, least)
		}
	}
}
