package export

import (
	"context"
	"errors"
	"io"
	"io/fs"
	"os"
	"path/filepath"
	"runtime"
	"strings"
	"testing"
)

func says(text string) func(io.Writer) error {
	return func(w io.Writer) error {
		_, err := io.WriteString(w, text)
		return err
	}
}

// holds fails unless the folder holds exactly these files, by name and content.
func holds(t *testing.T, folder string, want map[string]string) {
	t.Helper()
	entries, err := os.ReadDir(folder)
	if err != nil {
		t.Fatal(err)
	}
	for _, e := range entries {
		if _, ok := want[e.Name()]; !ok {
			t.Errorf("%s was left behind", e.Name())
		}
	}
	for name, text := range want {
		if got, err := os.ReadFile(filepath.Join(folder, name)); err != nil || string(got) != text {
			t.Errorf("%s holds %q (%v), want %q", name, got, err, text)
		}
	}
}

func TestANewFileIsWritten(t *testing.T) {
	folder := t.TempDir()
	for _, force := range []bool{false, true} {
		name := map[bool]string{false: "a.svg", true: "b.svg"}[force]
		if err := Save(filepath.Join(folder, name), force, says("new")); err != nil {
			t.Fatal(err)
		}
	}
	holds(t, folder, map[string]string{"a.svg": "new", "b.svg": "new"})
}

// The mode is what any new file gets here, not the private one of a temporary.
func TestANewFileHasTheUsualMode(t *testing.T) {
	folder := t.TempDir()
	usual, saved := filepath.Join(folder, "usual"), filepath.Join(folder, "saved")
	if err := os.WriteFile(usual, nil, 0o666); err != nil {
		t.Fatal(err)
	}
	if err := Save(saved, false, says("x")); err != nil {
		t.Fatal(err)
	}
	if got, want := mode(t, saved), mode(t, usual); got != want {
		t.Errorf("mode %v, want %v", got, want)
	}
}

func mode(t *testing.T, path string) fs.FileMode {
	t.Helper()
	info, err := os.Stat(path)
	if err != nil {
		t.Fatal(err)
	}
	return info.Mode()
}

func TestNothingIsOverwrittenUnasked(t *testing.T) {
	folder := t.TempDir()
	path := filepath.Join(folder, "a.svg")
	if err := os.WriteFile(path, []byte("old"), 0o640); err != nil {
		t.Fatal(err)
	}
	called := false
	err := Save(path, false, func(io.Writer) error { called = true; return nil })
	if err == nil || !strings.Contains(err.Error(), "--force") || called {
		t.Errorf("got %v, called %t; want a refusal that names the way out", err, called)
	}
	holds(t, folder, map[string]string{"a.svg": "old"})
	if err := Save(path, true, says("new")); err != nil {
		t.Fatal(err)
	}
	holds(t, folder, map[string]string{"a.svg": "new"})
	if got := mode(t, path); runtime.GOOS != "windows" && got != 0o640 {
		t.Errorf("mode %v, want that of the old file, -rw-r-----", got)
	}
}

func TestAFileThatCameUpMeanwhileIsNotOverwritten(t *testing.T) {
	folder := t.TempDir()
	path := filepath.Join(folder, "a.svg")
	err := Save(path, false, func(w io.Writer) error {
		if err := os.WriteFile(path, []byte("theirs"), 0o666); err != nil {
			t.Fatal(err)
		}
		return says("ours")(w)
	})
	if !errors.Is(err, errExists) {
		t.Errorf("got %v, want a refusal", err)
	}
	holds(t, folder, map[string]string{"a.svg": "theirs"})
}

func TestNoHalfFileIsLeft(t *testing.T) {
	full := errors.New("full")
	for name, failing := range map[string]func(io.Writer) error{
		"an error after much": func(w io.Writer) error {
			if _, err := w.Write(make([]byte, 1<<20)); err != nil {
				return err
			}
			return full
		},
		"a cancelled run": func(w io.Writer) error {
			ctx, cancel := context.WithCancelCause(t.Context())
			cancel(full)
			return context.Cause(ctx)
		},
	} {
		folder := t.TempDir()
		path := filepath.Join(folder, "a.svg")
		if err := os.WriteFile(path, []byte("old"), 0o666); err != nil {
			t.Fatal(err)
		}
		if err := Save(path, true, failing); !errors.Is(err, full) {
			t.Errorf("%s: got %v, want it to wrap the cause", name, err)
		}
		holds(t, folder, map[string]string{"a.svg": "old"})
	}
}

func TestAPanicLeavesNoHalfFile(t *testing.T) {
	folder := t.TempDir()
	func() {
		defer func() {
			if recover() == nil {
				t.Error("the panic was swallowed")
			}
		}()
		Save(filepath.Join(folder, "a.svg"), false, func(io.Writer) error { panic("broken") })
	}()
	holds(t, folder, map[string]string{})
}

func TestALinkStaysALink(t *testing.T) {
	folder := t.TempDir()
	path, link := filepath.Join(folder, "a.svg"), filepath.Join(folder, "link.svg")
	if err := os.WriteFile(path, []byte("old"), 0o666); err != nil {
		t.Fatal(err)
	}
	if err := os.Symlink("a.svg", link); err != nil {
		t.Fatal(err)
	}
	if err := Save(link, true, says("new")); err != nil {
		t.Fatal(err)
	}
	if info, err := os.Lstat(link); err != nil || info.Mode()&fs.ModeSymlink == 0 {
		t.Errorf("the link is now %v (%v)", info.Mode(), err)
	}
	holds(t, folder, map[string]string{"a.svg": "new", "link.svg": "new"})
}

func TestWhatCanNotBeSavedIsToldInOneLine(t *testing.T) {
	folder := t.TempDir()
	file := filepath.Join(folder, "file")
	if err := os.WriteFile(file, nil, 0o666); err != nil {
		t.Fatal(err)
	}
	nowhere := filepath.Join(folder, "nowhere")
	if err := os.Symlink(filepath.Join(folder, "gone"), nowhere); err != nil {
		t.Fatal(err)
	}
	for path, want := range map[string]string{
		filepath.Join(folder, "none", "a.svg"): "make the folder first",
		filepath.Join(file, "a.svg"):           "not a file, to save in",
		folder:                                 "a folder has that name",
		nowhere:                                "leads nowhere",
		os.DevNull:                             "no ordinary file",
	} {
		err := Save(path, true, says("x"))
		if err == nil {
			t.Errorf("%s was saved", path)
			continue
		}
		if got := err.Error(); !strings.Contains(got, want) || !strings.Contains(got, path) || strings.Contains(got, "\n") || strings.Contains(got, ".part") {
			t.Errorf("%s: %q, want one line with the path and %q", path, got, want)
		}
	}
}
