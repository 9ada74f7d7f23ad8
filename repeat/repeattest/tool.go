package repeattest

import (
	"bytes"
	"os"
	"os/exec"
	"path/filepath"
	"testing"
)

// Tool runs a program from outside the project on what was written and returns
// what it says. The test fails where the program is missing, with the Debian
// package to install, and where it ends with an error.
func Tool(tb testing.TB, debian, name string, args ...string) string {
	tb.Helper()
	path, err := exec.LookPath(name)
	if err != nil {
		tb.Fatalf("%s is missing, and this check needs it: apt-get install %s", name, debian)
	}
	var out, problems bytes.Buffer
	cmd := exec.Command(path, args...)
	cmd.Stdout, cmd.Stderr = &out, &problems
	if err := cmd.Run(); err != nil {
		tb.Fatalf("%s %q: %v\n%s%s", name, args, err, out.Bytes(), problems.Bytes())
	}
	return out.String()
}

// Put writes data to a file of that name in a folder of the test's own and
// returns its path.
func Put(tb testing.TB, name string, data []byte) string {
	tb.Helper()
	path := filepath.Join(tb.TempDir(), name)
	if err := os.WriteFile(path, data, 0o666); err != nil {
		tb.Fatal(err)
	}
	return path
}
