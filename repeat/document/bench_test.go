package document_test

import (
	"bytes"
	"io"
	"testing"

	"tsugime/repeat/document"
	"tsugime/repeat/geom"
)

// dots is how many dots a fine ground has on one sheet.
const dots = 63_500

func BenchmarkReadGround(b *testing.B) {
	text := []byte(written(b, ground(b, dots)))
	b.SetBytes(int64(len(text)))
	for b.Loop() {
		if _, err := document.Read(bytes.NewReader(text)); err != nil {
			b.Fatal(err)
		}
	}
}

func BenchmarkWriteGround(b *testing.B) {
	o := ground(b, dots)
	for b.Loop() {
		if err := document.Write(io.Discard, o); err != nil {
			b.Fatal(err)
		}
	}
}

func BenchmarkMoveOneOfAGround(b *testing.B) {
	o := ground(b, dots)
	for b.Loop() {
		if _, err := document.MoveMotif(o, 31_000, geom.PtMM(0.1, 0)); err != nil {
			b.Fatal(err)
		}
	}
}
