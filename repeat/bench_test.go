package repeat_test

import (
	"bytes"
	"context"
	"testing"

	"tsugime/assets"
	"tsugime/repeat"
	"tsugime/repeat/document"
)

func starter(tb testing.TB, name string) document.Order {
	tb.Helper()
	data, ok := assets.Starter(name)
	if !ok {
		tb.Fatalf("there is no starter %s", name)
	}
	o, err := document.Read(bytes.NewReader(data))
	if err != nil {
		tb.Fatal(err)
	}
	return o
}

// The whole line for a ground of 63,500 holes: what a person waits for after an
// edit.
func BenchmarkBuildOf63500Holes(b *testing.B) {
	o := starter(b, "fine-dot")
	for b.Loop() {
		if _, err := repeat.Build(context.Background(), o); err != nil {
			b.Fatal(err)
		}
	}
}
