//go:build unix

package exporttest

import (
	"os"
	"os/exec"
	"path/filepath"
	"strings"
	"syscall"
	"testing"
)

// ownProcess names, in the environment of a test's own process, that test.
const ownProcess = "EXPORTTEST_OWN_PROCESS"

// InOwnProcess runs a test that bends the limits of its process in one that does
// nothing else: go test writes a log of its own beside the tests, and a limit would
// hold for that log too. Body is what the test does.
func InOwnProcess(t *testing.T, body func()) {
	t.Helper()
	if os.Getenv(ownProcess) == t.Name() {
		body()
		return
	}
	own := exec.Command(os.Args[0], "-test.v", "-test.run=^"+t.Name()+"$")
	own.Env = append(os.Environ(), ownProcess+"="+t.Name())
	said, err := own.CombinedOutput()
	if err != nil || !strings.Contains(string(said), "--- PASS: "+t.Name()) {
		t.Errorf("in its own process (%v):\n%s", err, said)
	}
}

// alone ends a test that would bend the limits of the process of all tests.
func alone(t *testing.T) {
	t.Helper()
	if os.Getenv(ownProcess) == "" {
		t.Fatal("this bends the whole process: wrap the test in exporttest.InOwnProcess")
	}
}

// SmallFiles makes the system refuse to write any file beyond most bytes, in the
// middle of it, until the test ends: a disk that runs full, for every user alike.
func SmallFiles(t *testing.T, most uint64) {
	t.Helper()
	alone(t)
	var old syscall.Rlimit
	if err := syscall.Getrlimit(syscall.RLIMIT_FSIZE, &old); err != nil {
		t.Fatal(err)
	}
	less := old
	less.Cur = most
	if err := syscall.Setrlimit(syscall.RLIMIT_FSIZE, &less); err != nil {
		t.Fatal(err)
	}
	t.Cleanup(func() {
		if err := syscall.Setrlimit(syscall.RLIMIT_FSIZE, &old); err != nil {
			t.Error(err)
		}
	})
}

// nobody is a user that owns nothing.
const nobody = 65534

// ReadOnly makes a folder of t.TempDir one that may be looked into and not be
// written to, until the test ends, by whoever runs the test: root becomes nobody.
func ReadOnly(t *testing.T, folder string) {
	t.Helper()
	alone(t)
	modes := map[string]os.FileMode{folder: 0o555, filepath.Dir(folder): 0o755}
	for path, mode := range modes {
		if err := os.Chmod(path, mode); err != nil {
			t.Fatal(err)
		}
	}
	t.Cleanup(func() {
		if err := os.Chmod(folder, 0o755); err != nil {
			t.Error(err)
		}
	})
	if os.Geteuid() != 0 {
		return
	}
	if err := syscall.Setreuid(-1, nobody); err != nil {
		t.Fatal(err)
	}
	t.Cleanup(func() {
		if err := syscall.Setreuid(-1, 0); err != nil {
			t.Fatal(err)
		}
	})
}
