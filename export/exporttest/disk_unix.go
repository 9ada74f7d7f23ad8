//go:build unix

package exporttest

import (
	"os"
	"path/filepath"
	"syscall"
	"testing"
)

// SmallFiles makes the system refuse to write any file beyond most bytes, in the
// middle of it, until the test ends: a disk that runs full, for every user alike.
func SmallFiles(t *testing.T, most uint64) {
	t.Helper()
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
