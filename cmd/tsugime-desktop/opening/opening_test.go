package opening

import (
	"errors"
	"os"
	"path/filepath"
	"runtime"
	"strings"
	"testing"

	"tsugime/assets"
)

// files makes a folder with an order, a broken order and a folder in it.
func files(t *testing.T) string {
	t.Helper()
	folder := t.TempDir()
	whole, ok := assets.Starter("leaf")
	if !ok {
		t.Fatal("there is no starter leaf")
	}
	for name, data := range map[string][]byte{
		"leaf.tsugime": whole, "half.tsugime": whole[:len(whole)/2], "empty.tsugime": nil, "note.txt": []byte("three pieces of 13 m"),
	} {
		if err := os.WriteFile(filepath.Join(folder, name), data, 0o600); err != nil {
			t.Fatal(err)
		}
	}
	if err := os.Mkdir(filepath.Join(folder, "jobs"), 0o700); err != nil {
		t.Fatal(err)
	}
	return folder
}

func TestWhatIsWrongWithACallIsToldWithARemedyAndACode(t *testing.T) {
	folder := files(t)
	in := func(name string) string { return filepath.Join(folder, name) }
	for _, c := range []struct {
		name      string
		arguments []string
		code      int
		says      []string
	}{
		{"a file that is not there", []string{in("gone.tsugime")}, Failed, []string{"gone.tsugime", "no such file"}},
		{"a folder", []string{in("jobs")}, Failed, []string{"jobs", "is a folder", "give an order file"}},
		{"half an order", []string{in("half.tsugime")}, Failed, []string{"half.tsugime"}},
		{"an empty file", []string{in("empty.tsugime")}, Failed, []string{"empty.tsugime"}},
		{"no order", []string{in("note.txt")}, Failed, []string{"note.txt"}},
		{"two orders", []string{in("leaf.tsugime"), in("half.tsugime")}, Misuse, []string{"2 orders", "half.tsugime", "give one"}},
		{"a flag that is none", []string{"--stencil"}, Misuse, []string{"-stencil", "--help"}},
	} {
		t.Run(c.name, func(t *testing.T) {
			call, err := Read(c.arguments, "v1")
			var wrong *Error
			if !errors.As(err, &wrong) {
				t.Fatalf("got %+v, %v; want an error with a code", call, err)
			}
			if wrong.Code != c.code {
				t.Errorf("it leaves with %d; want %d", wrong.Code, c.code)
			}
			for _, word := range c.says {
				if !strings.Contains(err.Error(), word) {
					t.Errorf("it says %q, without %q", err, word)
				}
			}
			if strings.Contains(err.Error(), "\n") {
				t.Errorf("it says more than a line: %q", err)
			}
		})
	}
}

func TestHelpAndVersionArePrintedWithoutAWindow(t *testing.T) {
	for _, arguments := range [][]string{{"--help"}, {"-h"}, {"--version"}, {"--version", "gone.tsugime"}} {
		call, err := Read(arguments, "v1.2.3")
		if err != nil {
			t.Fatalf("%v: %v", arguments, err)
		}
		want := Usage
		if arguments[0] == "--version" {
			want = "tsugime-desktop v1.2.3\n"
		}
		if call.Text != want {
			t.Errorf("%v prints %q; want %q", arguments, call.Text, want)
		}
	}
}

func TestWithoutAnOrderTheFirstStarterIsOpened(t *testing.T) {
	call, err := Read(nil, "v1")
	if err != nil {
		t.Fatal(err)
	}
	if want := assets.Starters()[0].Title; call.Order.Title != want || call.Path != "" || call.Text != "" {
		t.Errorf("opened %q of file %q; want %q of none", call.Order.Title, call.Path, want)
	}
}

func TestAnOrderIsOpenedByItsWholePath(t *testing.T) {
	folder := files(t)
	t.Chdir(folder)
	call, err := Read([]string{"leaf.tsugime"}, "v1")
	if err != nil {
		t.Fatal(err)
	}
	if filepath.Base(call.Path) != "leaf.tsugime" || !filepath.IsAbs(call.Path) {
		t.Errorf("the path is %q; want the whole one", call.Path)
	}
	if len(call.Order.Unit.Motifs) == 0 {
		t.Error("the order has no motifs")
	}
}

func TestWithoutADisplayAWayWithoutOneIsNamed(t *testing.T) {
	if runtime.GOOS == "darwin" || runtime.GOOS == "windows" {
		if err := Display(func(string) string { return "" }); err != nil {
			t.Errorf("there is always a display here, but: %v", err)
		}
		return
	}
	err := Display(func(string) string { return "" })
	if err == nil || !strings.Contains(err.Error(), "DISPLAY") || !strings.Contains(err.Error(), "tsugime --help") {
		t.Errorf("without a display it says %v", err)
	}
	if err := Display(func(name string) string { return map[string]string{"DISPLAY": ":0"}[name] }); err != nil {
		t.Errorf("with a display it says %v", err)
	}
}
