package document_test

import (
	"bytes"
	"reflect"
	"strings"
	"testing"

	"tsugime/assets"
	"tsugime/repeat/document"
)

// Whatever the bytes, Read returns an order that Check takes, or an error on one
// line; and an order that was read is written and read again as the same.
func FuzzRead(f *testing.F) {
	for _, s := range assets.Starters() {
		text, _ := assets.Starter(s.Name)
		f.Add(text)
	}
	f.Add([]byte(written(f, full(f))))
	f.Add([]byte(`{"format":"tsugime order","version":1,"x":[{"y":1e5}],"sheet":{"step_mm":1.5e2},"unit":{"lattice":{"a_mm":[3,0],"b_mm":[0,3]},"motifs":[]}}`))
	f.Fuzz(func(t *testing.T, data []byte) {
		o, err := document.Read(bytes.NewReader(data))
		if err != nil {
			if text := err.Error(); strings.ContainsAny(text, "\n\r\x00\x1b") || len(text) > 4000 {
				t.Fatalf("the error is %q", text)
			}
			return
		}
		if err := o.Check(); err != nil {
			t.Fatalf("read, yet refused: %v", err)
		}
		first := written(t, o)
		again := read(t, first)
		if second := written(t, again); second != first {
			t.Fatalf("written again it is\n%s\nit was\n%s", second, first)
		}
		// An arc of more than half a circle is written as two, so the outlines may
		// differ in form once, all else never.
		for i, m := range o.Unit.Motifs {
			if !m.Shape.Round() {
				again.Unit.Motifs[i].Shape.Outline = m.Shape.Outline
			}
		}
		if !reflect.DeepEqual(again, o) {
			t.Fatalf("read again it is\n%+v\nit was\n%+v", again, o)
		}
	})
}
