package main

import (
	"encoding/json"
	"os"
	"path/filepath"
	"strings"
	"testing"
)

// changed writes a starter as it is with several words changed.
func changed(t *testing.T, changes ...string) string {
	t.Helper()
	data, err := os.ReadFile(order(t, "small-dot"))
	if err != nil {
		t.Fatal(err)
	}
	text := string(data)
	for i := 0; i < len(changes); i += 2 {
		if !strings.Contains(text, changes[i]) {
			t.Fatalf("the starter has no %s", changes[i])
		}
		text = strings.Replace(text, changes[i], changes[i+1], 1)
	}
	name := filepath.Join(t.TempDir(), "changed.tsugime")
	if err := os.WriteFile(name, []byte(text), 0o644); err != nil {
		t.Fatal(err)
	}
	return name
}

func boltOf(t *testing.T, args ...string) boltJSON {
	t.Helper()
	out, msg, code := call(t, "", append([]string{"bolt", "--json", "--bolts", "200"}, args...)...)
	var doc boltJSON
	if code != exitFine {
		t.Fatalf("exit %d: %s", code, msg)
	}
	if err := json.Unmarshal([]byte(out), &doc); err != nil {
		t.Fatal(err)
	}
	return doc
}

func (l *mm) UnmarshalJSON(text []byte) error {
	var v float64
	err := json.Unmarshal(text, &v)
	*l = mm(v * 1e6)
	return err
}

// A split or a set, both sides and two layings multiply what is printed: 69
// placements, three sheets, two sides.
func TestBoltCountsEveryPrinting(t *testing.T) {
	doc := boltOf(t, changed(t, `"sides": "one"`, `"sides": "both"`, `"sheets": 1`, `"sheets": 3`,
		`"layings": 1`, `"layings": 2`, `"order": "one-after-another"`, `"order": "every-other"`))
	if doc.Count != 69 || doc.Printings != 69*3*2 || doc.Sheets != 3 || doc.Order != "every-other" {
		t.Errorf("%d placements, %d printings, %d sheets, %s", doc.Count, doc.Printings, doc.Sheets, doc.Order)
	}
	if len(doc.Stretches) != 2 || doc.Stretches[0].Count+doc.Stretches[1].Count != 69 {
		t.Errorf("stretches %+v", doc.Stretches)
	}
	if doc.Set == nil || doc.Set.Prints != 138 || doc.Back == nil || doc.Back.Prints != 69 || doc.Reverse == nil || doc.Fold != nil {
		t.Errorf("set %+v, back %+v, reverse %+v, fold %+v", doc.Set, doc.Back, doc.Reverse, doc.Fold)
	}
	for name, o := range map[string]*overlayJSON{"set": doc.Set, "back": doc.Back} {
		if o.Bolts != 200 || o.LaidWorst > o.Worst*102/100 || o.LaidWorst < o.Worst*85/100 {
			t.Errorf("%s: by formula at most %v, by chance %v on %d bolts", name, o.Worst, o.LaidWorst, o.Bolts)
		}
	}
	if p := doc.Placements[1]; !p.Between || p.LaidAs != 35 {
		t.Errorf("placement 1 is laid as %d, between two: %v", p.LaidAs, p.Between)
	}
	if doc.Partial == nil || doc.Partial.Printed+doc.Partial.Masked != doc.Step || len(doc.Marks) != 69+1+2 {
		t.Errorf("partial %+v, %d marks", doc.Partial, len(doc.Marks))
	}
}

func TestBoltSaysWhatMeetsAtAFold(t *testing.T) {
	doc := boltOf(t, changed(t, `"folded": false`, `"folded": true`))
	if doc.Fold == nil || !doc.Fold.Found || doc.Fold.Off != 0 || len(doc.Marks) != 0 || !doc.Placements[1].Mirrored || doc.Drift.Way != "fold-line" {
		t.Errorf("fold %+v, %d marks, %+v, %s", doc.Fold, len(doc.Marks), doc.Placements[1], doc.Drift.Way)
	}
}

func TestTheSameSeedGivesTheSameBolts(t *testing.T) {
	name := order(t, "small-dot")
	a, b, c := boltOf(t, name, "--seed", "5"), boltOf(t, name, "--seed", "5"), boltOf(t, name, "--seed", "6")
	if a.Simulated == nil || *a.Simulated != *b.Simulated || a.Simulated.SpreadX == c.Simulated.SpreadX || a.Simulated.Bolts != 200 {
		t.Errorf("%+v, %+v, %+v", a.Simulated, b.Simulated, c.Simulated)
	}
}

// What a person reads names the walk that an edge line takes away, and its gain.
func TestBoltTextNamesWhatHelps(t *testing.T) {
	out, _, code := call(t, "", "bolt", changed(t, `"way": "edge-line"`, `"way": "star-to-star"`), "--bolts", "100")
	for _, want := range []string{"laid by chance (seed 1)", "lay to an edge line", "lay to a marked line", "plainly seen", "in part"} {
		if !strings.Contains(out, want) || code != exitFine {
			t.Errorf("exit %d, no %q in\n%s", code, want, out)
		}
	}
}

func TestBadBoltsAreToldWhatToChange(t *testing.T) {
	for _, c := range [][3]string{
		{`"selvedge_mm": 0`, `"selvedge_mm": 190`, "give less than 187.5 mm"},
		{`"end_mm": 0`, `"end_mm": 12600`, "give less than 12600 mm"},
		{`"faces": 2`, `"faces": 3`, "give 1 to 2"},
		{`"order": "one-after-another"`, `"order": "backwards"`, "choose from one-after-another, every-other"},
		{`"growth_start_pct": 0`, `"growth_start_pct": 11`, "out of bounds"},
		{`"sides": "one",` + "\n    " + `"folded": false`, `"sides": "both",` + "\n    " + `"folded": true`, "lay the cloth out flat"},
	} {
		_, msg, code := call(t, "", "bolt", changed(t, c[0], c[1]))
		if code != exitUnreadable || !strings.Contains(msg, c[2]) || strings.Count(msg, "\n") != 1 {
			t.Errorf("%s: exit %d, %q; want %q", c[1], code, msg, c[2])
		}
	}
}
