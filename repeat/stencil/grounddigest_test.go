package stencil

import (
	"fmt"
	"hash/fnv"
	"strings"
	"testing"

	"tsugime/repeat/geom"
	"tsugime/repeat/pattern"
	"tsugime/repeat/repeattest"
)

// digested are the grounds as they are offered and with other values, coarser,
// finer or of another rule: settings as the command line takes them.
var digested = map[string][]string{
	"arc-dots":            {"", "pitch=1.6 dot=0.7 scale=30", "swell=along sizes=3"},
	"diagonal-dots":       {"", "pitch=2.4 dot=1", "pitch=4 dot=1.6 swell=round"},
	"row-dots":            {"", "pitch=0.87 dot=0.4", "pitch=3 dot=1.2 swell=along"},
	"row-squares":         {"", "pitch=2 dot=1", "pitch=4 dot=2 swell=along small=40"},
	"scattered-dots":      {"", "pitch=3.2 dot=1.2 patch=60", "pitch=1.6 dot=0.5 patch=30 seed=7"},
	"scattered-two-sizes": {"", "share=60", "pitch=2 dot=0.5 large=1.2 patch=30 seed=7"},
	"even-stripes":        {"", "cut=ground slit=30", "every=0"},
	"thread-stripes":      {"", "thread=0.3 every=20", "cut=ground"},
	"fine-stripes":        {"", "every=0 cut=ground", "pitch=2.5 every=25"},
	"finest-stripes":      {"", "pitch=0.98 slit=45 every=15", "every=0"},
	"companion-stripes":   {"", "sides=both", "sides=both cut=ground thick=6"},
	"cascade-stripes":     {"", "sides=both lines=7", "lines=2 cut=ground"},
	"paired-stripes":      {"", "line=0.5 inner=0.5 gap=3 every=25", "cut=ground"},
	"wavering-stripes":    {"", "bridged=0", "pitch=8 swing=3 wave=60"},
	"steam-stripes":       {"", "bridged=0 swing=2", "pitch=6 swing=1.5 wave=30"},
	"wave-scales":         {"", "arcs=3 scale=40 spacing=4", "web=0"},
	"hemp-leaf":           {"", "side=10 line=0.5", "web=0"},
	"linked-circles":      {"", "figure=lines", "figure=lines web=0 line=1.2"},
	"fish-scales":         {"", "side=6 web=0.6", "web=0"},
	"checker":             {"", "side=4", "web=0"},
	"tortoise-shell":      {"", "inset=0", "side=12 inset=4"},
}

// TestGroundsAreWhatTheyWere keeps the figures of every ground: what a change of a
// generator does is read off the line that differs. All meet a step of 180 mm.
func TestGroundsAreWhatTheyWere(t *testing.T) {
	var b strings.Builder
	b.WriteString("ground, settings: cut-outs; lattice; open area; narrowest web; bounds of one cell; coordinates\n")
	for _, g := range pattern.Grounds() {
		if len(digested[g.Name]) < 3 {
			t.Errorf("%s has %d digests, want 3", g.Name, len(digested[g.Name]))
		}
		for _, settings := range digested[g.Name] {
			fmt.Fprintf(&b, "%s %s: %s\n", g.Name, settings, digest(t, g, settings))
		}
	}
	repeattest.Golden(t, "grounds.txt", []byte(b.String()))
}

func digest(t *testing.T, g pattern.Ground, settings string) string {
	t.Helper()
	r := g.Recipe()
	for _, s := range strings.Fields(settings) {
		key, value, _ := strings.Cut(s, "=")
		if key == "seed" {
			r.Seed = 7
			continue
		}
		var err error
		if r, err = r.With(key, value); err != nil {
			t.Fatal(err)
		}
	}
	u, err := r.Unit(geom.MM(180))
	if err != nil {
		t.Fatal(err)
	}
	a, o := u.Lattice.A, u.Lattice.B
	cuts := u.CutOuts()
	open, err := OpenAreaPct(cuts, a, o)
	if err != nil {
		t.Fatal(err)
	}
	web := "none"
	if w := Webs(cuts, geom.MM(0.4), a, o); w.Found {
		web = w.Narrowest.Width.String() + " mm"
	}
	var bounds geom.Box
	hash := fnv.New64a()
	for _, m := range u.Motifs {
		box := m.Placed().Bounds()
		bounds = bounds.Union(box)
		fmt.Fprintln(hash, m.At, m.TurnDeg, m.Mirrored, box, string(m.Shape.Outline.AppendPathData(nil, 6)))
	}
	return fmt.Sprintf("%d; %s,%s %s,%s; %.4f %%; %s; %s,%s to %s,%s; %016x", len(u.Motifs), a.X, a.Y, o.X, o.Y,
		open, web, bounds.Min.X, bounds.Min.Y, bounds.Max.X, bounds.Max.Y, hash.Sum64())
}
