package main

import (
	"encoding/json"
	"math"
	"os"
	"path/filepath"
	"strings"
	"testing"
)

// table writes a file of comma-separated values into a folder of the test.
func table(t *testing.T, text string) string {
	t.Helper()
	name := filepath.Join(t.TempDir(), "table.csv")
	if err := os.WriteFile(name, []byte(text), 0o644); err != nil {
		t.Fatal(err)
	}
	return name
}

func TestTheBenchPlansEveryCutOutWithTheCuttersTools(t *testing.T) {
	name := order(t, "small-dot")
	rack := table(t, "kind,number,size_mm,pile\nawl,7,0.49,\nawl,12,1,\nkiribori,,,5\n")
	jobs := table(t, "method,count,hours\nkiribori,30000,60\nkiribori,15000,30\n")
	text, msg, code := call(t, "", "bench", name, "--rack", rack, "--jobs", jobs, "--day", "6", "--json")
	if code != exitFine {
		t.Fatalf("exit %d, %s", code, msg)
	}
	var doc struct {
		Hours, Days float64
		Sheets      []struct {
			CutOuts  int `json:"cut_outs"`
			Pile     int
			Saleable int
			Hours    float64
			Passes   []struct {
				Stage string
				Tool  struct{ Number string }
				Count int
				Hours float64
			}
			Missing []struct{ Kind string }
		}
		Rates []struct {
			Method string
			Jobs   int
			Cut    float64 `json:"minutes_per_cut_out"`
		}
		Findings []struct{ Code string }
	}
	if err := json.Unmarshal([]byte(text), &doc); err != nil {
		t.Fatal(err)
	}
	s := doc.Sheets[0]
	count, hours := 0, 0.0
	for i, p := range s.Passes {
		if (p.Stage == "stars") != (i == 0) {
			t.Errorf("pass %d is %s", i+1, p.Stage)
		}
		if p.Stage != "stars" {
			count += p.Count
		}
		hours += p.Hours
	}
	if s.Passes[0].Tool.Number != "12" {
		t.Errorf("the stars are cut with %q, want 12", s.Passes[0].Tool.Number)
	}
	if count != s.CutOuts || count < 30_000 {
		t.Errorf("%d cut-outs in passes, %d on the sheet", count, s.CutOuts)
	}
	// 60 hours for 30,000 holes are 0.12 minutes each.
	if r := doc.Rates[0]; r.Method != "kiribori" || r.Jobs != 2 || math.Abs(r.Cut-0.12) > 1e-9 {
		t.Errorf("rate %+v, want 0.12 min from 2 jobs", r)
	}
	if want := float64(count+6) * 0.12 / 60; math.Abs(s.Hours-want) > 0.01 || math.Abs(hours-want) > 0.01 || math.Abs(doc.Days-want/6) > 0.01 {
		t.Errorf("%.3f hours, %.3f by passes, %.3f days; want %.3f and a sixth", s.Hours, hours, doc.Days, want)
	}
	if s.Pile != 5 || s.Saleable != 4 || len(doc.Findings) != 1 || doc.Findings[0].Code != "bench-pile" {
		t.Errorf("pile %d, %d saleable, findings %v; want 5 and 4 by the cutter's own limit", s.Pile, s.Saleable, doc.Findings)
	}
	words, _, code := call(t, "", "bench", name, "--rack", rack, "--jobs", jobs)
	if code != exitFine || !strings.Contains(words, "learnt from 2 jobs") || !strings.Contains(words, "of which 4 can be sold") {
		t.Errorf("exit %d: %s", code, words)
	}
}

func TestCheckFindsWhatTheRackLacks(t *testing.T) {
	name := order(t, "small-dot")
	plain, _, _ := call(t, "", "check", name, "--json")
	if strings.Contains(plain, `"bench-tool"`) {
		t.Error("without a rack a tool is missing")
	}
	text, _, code := call(t, "", "check", name, "--json", "--rack", table(t, "kind,number,size_mm\nknife,k,1\n"))
	if code != exitFine || !strings.Contains(text, `"bench-tool"`) || !strings.Contains(text, "an awl of 1 mm, for 6 register holes") {
		t.Errorf("exit %d, no awl for the stars is missing", code)
	}
}

func TestFilesOfToolsAndJobsAreRefusedByNameAndLine(t *testing.T) {
	name := order(t, "small-dot")
	for _, c := range []struct {
		args []string
		says string
		code int
	}{
		{[]string{"bench", name, "--rack", table(t, "kind,number,size_mm\nawl,1,wide\n")}, "table.csv: line 2, size_mm:", exitUnreadable},
		{[]string{"bench", name, "--jobs", table(t, "method,count,hours\ndrill,1,1\n")}, `table.csv: line 2, method: "drill" is no method`, exitUnreadable},
		{[]string{"bench", name, "--rack", "no-such.csv"}, "open no-such.csv:", exitUnreadable},
		{[]string{"bench", name, "--day", "25"}, "--day", exitWrongUse},
		{[]string{"sheets", name, "-o", t.TempDir(), "--rack", "no-such.csv"}, "open no-such.csv:", exitUnreadable},
		{[]string{"sheets", name, "-o", t.TempDir(), "--overcut", "wide"}, "--overcut", exitWrongUse},
		{[]string{"sheets", name, "-o", t.TempDir(), "--blade-offset", "9"}, "blade offset: 9 mm is out of bounds", exitWrongUse},
		{[]string{"check", name, "--rack", "no-such.csv"}, "open no-such.csv:", exitUnreadable},
	} {
		if _, msg, code := call(t, "", c.args...); code != c.code || !strings.Contains(msg, c.says) {
			t.Errorf("%v: exit %d, %s; want %d, %q", c.args, code, msg, c.code, c.says)
		}
	}
}
