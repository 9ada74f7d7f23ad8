package printer

import (
	"context"
	"errors"
	"fmt"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"testing"

	"tsugime/export"
	"tsugime/repeat/geom"
)

// stands puts a command of a name in place of the system's: it writes its arguments to a
// file and says and ends as it is told.
func stands(t *testing.T, name, says string, code int) (given func() []string) {
	t.Helper()
	folder := t.TempDir()
	log := filepath.Join(folder, "given")
	script := fmt.Sprintf("#!/bin/sh\nprintf '%%s\\n' \"$@\" >'%s'\necho '%s'\nexit %d\n", log, says, code)
	if err := os.WriteFile(filepath.Join(folder, name), []byte(script), 0o755); err != nil {
		t.Fatal(err)
	}
	t.Setenv("PATH", folder+":/bin:/usr/bin")
	return func() []string {
		data, err := os.ReadFile(log)
		if err != nil {
			t.Fatal(err)
		}
		return strings.Split(strings.TrimSpace(string(data)), "\n")
	}
}

// The options of lp(1), CUPS 2.4: -d printer, -n copies, -P pages, -o option; from memory.
func TestAJobIsGivenToThePrinterAsItIs(t *testing.T) {
	given := stands(t, "lp", "request id is bench-7 (1 file(s))", 0)
	said, err := Print(t.Context(), Job{File: "/tmp/a b.pdf", Printer: "bench", Pages: "1-3,5", Copies: 2, Media: "iso_a4_210x297mm"})
	if err != nil || said != "request id is bench-7 (1 file(s))" {
		t.Fatal(said, err)
	}
	want := []string{"-d", "bench", "-n", "2", "-P", "1-3,5", "-o", "media=iso_a4_210x297mm", "-o", "print-scaling=none", "--", "/tmp/a b.pdf"}
	if got := given(); !slices.Equal(got, want) {
		t.Errorf("lp was given\n%q\nwant\n%q", got, want)
	}
	if _, err := Print(t.Context(), Job{File: "-x.pdf"}); err != nil {
		t.Fatal(err)
	}
	if got, want := given(), []string{"-n", "1", "-o", "print-scaling=none", "--", "-x.pdf"}; !slices.Equal(got, want) {
		t.Errorf("lp was given\n%q\nwant\n%q", got, want)
	}
}

func TestAPrinterThatRefusesIsToldWithItsWords(t *testing.T) {
	stands(t, "lp", "lp: The printer or class does not exist.", 1)
	_, err := Print(t.Context(), Job{File: "a.pdf", Printer: "gone"})
	if err == nil || !strings.Contains(err.Error(), "The printer or class does not exist") {
		t.Error(err)
	}
	t.Setenv("PATH", t.TempDir())
	if _, err := Print(t.Context(), Job{File: "a.pdf"}); !errors.Is(err, ErrNone) {
		t.Error(err)
	}
	if got := Printers(t.Context()); got != nil {
		t.Errorf("without lpstat there are printers: %q", got)
	}
	if err := View(t.Context(), "a.pdf"); err == nil || !strings.Contains(err.Error(), "by hand") {
		t.Error(err)
	}
}

func TestTheSystemsPrintersAreListed(t *testing.T) {
	stands(t, "lpstat", "window\nbench", 0)
	if got := Printers(t.Context()); !slices.Equal(got, []string{"bench", "window"}) {
		t.Errorf("printers %q", got)
	}
}

func TestAFileIsShownByTheSystemsViewer(t *testing.T) {
	given := stands(t, "xdg-open", "", 0)
	if err := View(t.Context(), "/tmp/marking strip.pdf"); err != nil {
		t.Fatal(err)
	}
	if got := given(); !slices.Equal(got, []string{"/tmp/marking strip.pdf"}) {
		t.Errorf("xdg-open was given %q", got)
	}
	ctx, stop := context.WithCancel(t.Context())
	stop()
	if err := View(ctx, "a.pdf"); err == nil {
		t.Error("a viewer was opened that nobody waits for")
	}
	for system, want := range map[string]string{"linux": "xdg-open", "darwin": "open", "windows": "rundll32"} {
		if got, _ := viewer(system, "a.pdf"); got != want {
			t.Errorf("%s: %s, want %s", system, got, want)
		}
	}
}

func TestPagesAreReadAsPeopleWriteThem(t *testing.T) {
	for text, want := range map[string]string{
		"": "", "  ": "", "3": "3", "1-3, 5": "1-3,5", "1 – 3": "1-3", "４、６〜８": "4,6-8", "2;4": "2,4", "5-5": "5-5",
	} {
		if got, err := Ranges(text); got != want || err != nil {
			t.Errorf("%q: %q, %v; want %q", text, got, err, want)
		}
	}
	for _, text := range []string{"0", "-3", "3-", "a", "1,,2", "1.5", "3-1", "1-2-3"} {
		if got, err := Ranges(text); err == nil {
			t.Errorf("%q was read as %q", text, got)
		}
	}
}

// A name of PWG 5101.1 ends with the size that it means.
func TestMediaNamesSayTheSizeOfThePage(t *testing.T) {
	for _, p := range export.Pages() {
		name := Media(p)
		size := name[strings.LastIndex(name, "_")+1:]
		want := fmt.Sprintf("%gx%gmm", p.Width.MM(), p.Height.MM())
		if strings.HasSuffix(size, "in") {
			inch := float64(geom.Inch)
			want = fmt.Sprintf("%gx%gin", float64(p.Width)/inch, float64(p.Height)/inch)
		}
		if size != want {
			t.Errorf("%s is called %q, want its size %s", p.Name, name, want)
		}
	}
	if got := Media(export.PageSize{Name: "scroll"}); got != "" {
		t.Errorf("a page without a name is called %q", got)
	}
}
