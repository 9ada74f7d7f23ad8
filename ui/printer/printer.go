// Package printer hands finished PDF files to the system: to the program that shows
// PDF files, or to a printer by CUPS. It knows no window and never scales a page.
package printer

import (
	"context"
	"errors"
	"fmt"
	"os/exec"
	"runtime"
	"slices"
	"strconv"
	"strings"
)

// ErrNone is the error where the system has no way to print.
var ErrNone = errors.New("this system has no lp to print with; open the sheets in the viewer and print from there, at 100 %")

// A Job is one PDF file on its way to a printer.
type Job struct {
	File    string
	Printer string // "" for the system's own choice
	Pages   string // as Ranges returns them; "" for all
	Copies  int    // at least 1
	Media   string // the paper's name of PWG 5101.1; "" for what lies in the printer
}

// Arguments are what lp(1) of CUPS is given: pages stay as large as they are, by the
// IPP attribute print-scaling of PWG 5100.16.
func (j Job) Arguments() []string {
	var a []string
	if j.Printer != "" {
		a = append(a, "-d", j.Printer)
	}
	a = append(a, "-n", strconv.Itoa(max(j.Copies, 1)))
	if j.Pages != "" {
		a = append(a, "-P", j.Pages)
	}
	if j.Media != "" {
		a = append(a, "-o", "media="+j.Media)
	}
	return append(a, "-o", "print-scaling=none", "--", j.File)
}

// Print gives a job to the printer and returns what the system calls it.
func Print(ctx context.Context, j Job) (string, error) {
	if _, err := exec.LookPath("lp"); err != nil {
		return "", ErrNone
	}
	out, err := exec.CommandContext(ctx, "lp", j.Arguments()...).CombinedOutput()
	if err != nil {
		return "", fmt.Errorf("print %s: %s; look whether the printer is on and known to the system", j.File, saidBy(out, err))
	}
	return strings.TrimSpace(string(out)), nil
}

// Printers lists the printers that the system knows, sorted; none where it has no CUPS.
func Printers(ctx context.Context) []string {
	out, err := exec.CommandContext(ctx, "lpstat", "-e").Output()
	if err != nil {
		return nil
	}
	names := strings.Fields(string(out))
	slices.Sort(names)
	return names
}

// View opens a file in the program that the system shows such files with.
func View(ctx context.Context, file string) error {
	name, arguments := viewer(runtime.GOOS, file)
	if _, err := exec.LookPath(name); err != nil {
		return fmt.Errorf("this system has no %s to open %s with; open it by hand", name, file)
	}
	if out, err := exec.CommandContext(ctx, name, arguments...).CombinedOutput(); err != nil {
		return fmt.Errorf("open %s: %s; open it by hand", file, saidBy(out, err))
	}
	return nil
}

// viewer is the command that opens a file on a system: xdg-open of freedesktop.org,
// open of macOS, the file protocol handler of Windows.
func viewer(system, file string) (name string, arguments []string) {
	switch system {
	case "darwin":
		return "open", []string{file}
	case "windows":
		return "rundll32", []string{"url.dll,FileProtocolHandler", file}
	}
	return "xdg-open", []string{file}
}

// saidBy is what a command said last, or else its error.
func saidBy(out []byte, err error) string {
	lines := strings.Split(strings.TrimSpace(string(out)), "\n")
	if last := strings.TrimSpace(lines[len(lines)-1]); last != "" {
		return last
	}
	return err.Error()
}
