package document_test

import (
	"bytes"
	"context"
	"encoding/json"
	"maps"
	"strings"
	"testing"

	"tsugime/assets"
	"tsugime/repeat"
	"tsugime/repeat/cloth"
	"tsugime/repeat/document"
	"tsugime/repeat/geom"
)

// An order of before names a kind and a height and nothing else; it is read the
// same and written the same.
func TestGarmentsOfOldOrdersStayAsTheyWere(t *testing.T) {
	for _, s := range assets.Starters() {
		text, _ := assets.Starter(s.Name)
		g := read(t, string(text)).Garment
		b := g.Body
		if b.Kind == "" || b.Own != "" || len(b.Sizes)+len(b.Counts)+len(b.Allowances) != 0 || len(g.Layout.Order) != 0 {
			t.Errorf("%s: the garment is %+v", s.Name, g)
		}
		for _, key := range []string{"sizes_mm", "counts", "allowances_mm", "panel_order", "gaps_mm", "shifts_mm", `"turned"`, `"form"`} {
			if strings.Contains(written(t, read(t, string(text))), key) {
				t.Errorf("%s: %s is written, which was not there", s.Name, key)
			}
		}
	}
}

// Another garment keeps the sizes and allowances that it knows too.
func TestAnotherGarmentKeepsWhatItKnows(t *testing.T) {
	o := full(t)
	before := written(t, o)
	next, err := document.SetGarmentKind(o, "mens-kimono")
	if err != nil {
		t.Fatal(err)
	}
	b := next.Garment.Body
	if b.Kind != "mens-kimono" || b.Own != "" || b.Height != o.Garment.Body.Height {
		t.Errorf("the body is %+v", b)
	}
	if !maps.Equal(b.Sizes, map[string]geom.Length{"hip": geom.MM(905.5)}) || len(b.Counts) != 0 ||
		!maps.Equal(b.Allowances, o.Garment.Body.Allowances) {
		t.Errorf("kept: %v, %v, %v", b.Sizes, b.Counts, b.Allowances)
	}
	if l := next.Garment.Layout; len(l.Order)+len(l.Gaps)+len(l.Shifts)+len(l.Turned) != 0 {
		t.Errorf("the layout stays: %+v", l)
	}
	if written(t, o) != before {
		t.Error("the order before has changed")
	}
	if _, err := document.SetGarmentKind(o, "tent"); err == nil || !strings.Contains(err.Error(), "no garment that can be cut") {
		t.Errorf("a tent: %v", err)
	}
}

// Maps that were handed over can be written on without changing the order.
func TestAGarmentHasItsOwnMaps(t *testing.T) {
	gaps := map[string]geom.Length{"left body": geom.MM(3)}
	o, err := document.SetLayout(document.Defaults(), cloth.Layout{Gaps: gaps})
	if err != nil {
		t.Fatal(err)
	}
	gaps["left body"] = geom.MM(99)
	if got := o.Garment.Layout.Gaps["left body"]; got != geom.MM(3) {
		t.Errorf("the gap is %s", got)
	}
}

// A form that the order brings along is the one that is cut, and it comes back
// from the file to the byte; one written on a single line is laid out.
func TestAnOrdersOwnFormIsCut(t *testing.T) {
	o := read(t, written(t, full(t)))
	if f, err := o.Garment.Body.Form(); err != nil || f.Title != "Cape" {
		t.Fatalf("the form is %v, %v", f, err)
	}
	var line bytes.Buffer
	if err := json.Compact(&line, []byte(ownForm(t))); err != nil {
		t.Fatal(err)
	}
	g := o.Garment
	g.Body.Own = line.String()
	again, err := document.SetGarment(o, g)
	if err != nil || again.Garment.Body.Own != ownForm(t) {
		t.Errorf("%v; the form is %s", err, again.Garment.Body.Own)
	}
	g.Body.Own = `{"format": "tsugime garment"}`
	if _, err := document.SetGarment(o, g); err == nil || !strings.Contains(err.Error(), `garment.form: "version" is missing`) {
		t.Errorf("half a form: %v", err)
	}
	// Through the whole line: the demo order with a cape.
	text, _ := assets.Starter("leaf")
	demo := read(t, string(text))
	g = demo.Garment
	g.Body.Own = ownForm(t)
	demo, err = document.SetGarment(demo, g)
	if err != nil {
		t.Fatal(err)
	}
	w, err := repeat.Build(context.Background(), demo)
	if err != nil {
		t.Fatal(err)
	}
	d := w.Dressed
	if len(d.Panels) != 2 || d.Panels[0].Name != "left half" || len(d.Seams) != 1 || d.Seams[0].PhaseAlong != 0 {
		t.Errorf("%d panels, seams %+v", len(d.Panels), d.Seams)
	}
}
