package pdf

import (
	"io"
	"testing"

	"tsugime/export/exporttest"
)

// A whole field: 63,500 holes.
func BenchmarkWriteField(b *testing.B) {
	d := exporttest.Field(63_500)
	for b.Loop() {
		if err := (Format{}).Write(io.Discard, d); err != nil {
			b.Fatal(err)
		}
	}
}
