//go:build unix

package export_test

import (
	"errors"
	"io"
	"io/fs"
	"os"
	"path/filepath"
	"strings"
	"syscall"
	"testing"

	"tsugime/export"
	"tsugime/export/exporttest"
)

// inFull writes size bytes.
func inFull(size int) func(io.Writer) error {
	return func(w io.Writer) error {
		_, err := w.Write(make([]byte, size))
		return err
	}
}

// alone fails unless a folder holds one file, a.svg, with what was in it before.
func alone(t *testing.T, folder string) {
	t.Helper()
	entries, err := os.ReadDir(folder)
	if err != nil || len(entries) != 1 {
		t.Errorf("the folder holds %v (%v), want a.svg alone", entries, err)
	}
	if got, err := os.ReadFile(filepath.Join(folder, "a.svg")); err != nil || string(got) != "old" {
		t.Errorf("a.svg holds %d bytes (%v), want what it held before", len(got), err)
	}
}

// oneLine fails unless an error names the file, says the remedy, and nothing of the
// temporary file.
func oneLine(t *testing.T, err error, path, remedy string) {
	t.Helper()
	if err == nil {
		t.Fatal("it was saved")
	}
	if text := err.Error(); !strings.Contains(text, path) || !strings.Contains(text, remedy) || strings.Contains(text, ".part") || strings.Contains(text, "\n") {
		t.Errorf("%q; want one line with %s and %q", text, path, remedy)
	}
}

func TestADiskThatRunsFullLeavesTheOldFile(t *testing.T) {
	exporttest.InOwnProcess(t, func() {
		folder := t.TempDir()
		path := filepath.Join(folder, "a.svg")
		if err := os.WriteFile(path, []byte("old"), 0o666); err != nil {
			t.Fatal(err)
		}
		exporttest.SmallFiles(t, 100_000)
		err := export.Save(path, true, inFull(300_000))
		oneLine(t, err, path, "choose another folder")
		if !errors.Is(err, syscall.EFBIG) {
			t.Errorf("%v doesn't wrap the system's own error", err)
		}
		alone(t, folder)
		full := &fs.PathError{Op: "write", Path: "x", Err: syscall.ENOSPC}
		oneLine(t, export.Save(path, true, func(io.Writer) error { return full }), path, "make room on the disk")
		alone(t, folder)
	})
}

func TestAFolderThatMayNotBeWrittenToIsLeftAlone(t *testing.T) {
	exporttest.InOwnProcess(t, func() {
		folder := t.TempDir()
		path := filepath.Join(folder, "a.svg")
		if err := os.WriteFile(path, []byte("old"), 0o666); err != nil {
			t.Fatal(err)
		}
		exporttest.ReadOnly(t, folder)
		err := export.Save(path, true, inFull(3))
		oneLine(t, err, path, "choose a folder that you may write to")
		if !errors.Is(err, fs.ErrPermission) {
			t.Errorf("%v is no refusal", err)
		}
		alone(t, folder)
	})
}

func TestAPendingFileChangesNothingBeforeItIsKept(t *testing.T) {
	folder := t.TempDir()
	path := filepath.Join(folder, "a.svg")
	if err := os.WriteFile(path, []byte("old"), 0o666); err != nil {
		t.Fatal(err)
	}
	for _, keep := range []bool{false, true} {
		d, err := export.Prepare(path, true, inFull(3))
		if err != nil {
			t.Fatal(err)
		}
		if got, err := os.ReadFile(path); err != nil || string(got) != "old" {
			t.Errorf("before it is kept a.svg holds %q (%v)", got, err)
		}
		if keep {
			if err := d.Keep(); err != nil {
				t.Fatal(err)
			}
		}
		d.Drop()
		if !keep {
			alone(t, folder)
		} else if got, err := os.ReadFile(path); err != nil || len(got) != 3 || got[0] != 0 {
			t.Errorf("after it is kept a.svg holds %q (%v)", got, err)
		}
	}
}
