package repeattest

import (
	"bytes"
	"flag"
	"fmt"
	"os"
	"path/filepath"
	"testing"
)

var update = flag.Bool("update", false, "write the goldens in testdata anew; look at the difference before it is kept")

// Golden compares got with the file testdata/name of the package under test,
// byte for byte. Where they differ the test fails, shows the first line that
// does, and got is left in testdata/failed/name. With -update the file is
// written instead.
func Golden(tb testing.TB, name string, got []byte) {
	tb.Helper()
	path := filepath.Join("testdata", name)
	if *update {
		put(tb, path, got)
		return
	}
	want, err := os.ReadFile(path)
	if err != nil {
		put(tb, failed(name), got)
		tb.Fatalf("no golden: %v; run the test with -update and look at what it writes", err)
	}
	if bytes.Equal(got, want) {
		return
	}
	put(tb, failed(name), got)
	tb.Errorf("%s differs %s\nall of it is in %s", path, firstDifference(got, want), failed(name))
}

// failed is where a result that is not its golden is left.
func failed(name string) string { return filepath.Join("testdata", "failed", name) }

func put(tb testing.TB, path string, data []byte) {
	tb.Helper()
	if err := os.MkdirAll(filepath.Dir(path), 0o777); err != nil {
		tb.Fatal(err)
	}
	if err := os.WriteFile(path, data, 0o666); err != nil {
		tb.Fatal(err)
	}
}

// firstDifference tells the first line that is not the same in both.
func firstDifference(got, want []byte) string {
	g, w := bytes.Split(got, []byte("\n")), bytes.Split(want, []byte("\n"))
	i := 0
	for i < len(g) && i < len(w) && bytes.Equal(g[i], w[i]) {
		i++
	}
	return fmt.Sprintf("from line %d on:\n got %s\nwant %s", i+1, lineOf(g, i), lineOf(w, i))
}

// lineOf quotes line i, cut to what a terminal shows.
func lineOf(lines [][]byte, i int) string {
	if i >= len(lines) {
		return "the end of the file"
	}
	line := lines[i]
	if len(line) > 200 {
		line = line[:200]
	}
	return fmt.Sprintf("%q", line)
}
