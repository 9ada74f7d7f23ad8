package assets_test

import (
	"bytes"
	"context"
	"testing"

	"tsugime/assets"
	"tsugime/export/report"
	"tsugime/repeat"
	"tsugime/repeat/check"
	"tsugime/repeat/document"
	"tsugime/repeat/repeattest"
)

// Whoever opens a starter may cut it: there is no fault on it, and what warns is
// listed here with its reason. Its picture is held to, so that a change of a
// ground is seen.
func TestEveryStarterChecksWithoutFault(t *testing.T) {
	// Bridges at every wave stand in rows: that is how the ground is held.
	warns := map[string]string{"wavering-stripes": "under-pattern"}
	for _, s := range assets.Starters() {
		t.Run(s.Name, func(t *testing.T) {
			t.Parallel()
			w := built(t, s.Name)
			seen := map[string]bool{}
			for _, f := range w.Findings {
				seen[f.Code] = true
				if f.Severity == check.Fault || f.Severity == check.Warning && f.Code != warns[s.Name] {
					t.Errorf("%s %s: %s", f.Severity, f.Code, f.Text)
				}
			}
			if code := warns[s.Name]; code != "" && !seen[code] {
				t.Errorf("it no longer warns of %s: take it off the list", code)
			}
			picture, err := report.Picture(w, "unit", 240)
			if err != nil {
				t.Fatal(err)
			}
			repeattest.GoldenPNG(t, s.Name+".png", picture)
		})
	}
}

func built(t *testing.T, name string) repeat.Work {
	t.Helper()
	text, ok := assets.Starter(name)
	if !ok {
		t.Fatalf("there is no starter %s", name)
	}
	o, err := document.Read(bytes.NewReader(text))
	if err != nil {
		t.Fatal(err)
	}
	w, err := repeat.Build(context.Background(), o)
	if err != nil {
		t.Fatal(err)
	}
	return w
}
