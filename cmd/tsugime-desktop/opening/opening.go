// Package opening reads what the window is asked to open by its command line. It
// knows no window, so that what is wrong is told before one is opened.
package opening

import (
	"errors"
	"flag"
	"fmt"
	"io"
	"os"
	"path/filepath"
	"runtime"
	"strings"

	"tsugime/assets"
	"tsugime/repeat/document"
	"tsugime/ui"
)

// Usage is what --help prints.
const Usage = `Use: tsugime-desktop [ORDER.tsugime]

Opens a window on an order; without one, on the first starter. More windows are
opened from the window itself.

  --help      print this and leave
  --version   print the version and leave

FYNE_SCALE=1.5 makes all in the window larger by half.
`

// The codes that the program leaves with, those of the command line's program.
const (
	Done   = 0
	Misuse = 2 // an unknown flag, too many orders
	Failed = 3 // an order that can't be read, no display
)

// A Call is what the command line asks for.
type Call struct {
	Text  string // to be printed, and then leave; "" for a window
	Order document.Order
	Path  string // of the order's file, absolute; "" for the starter
}

// An Error is what is wrong with a call, and the code to leave with.
type Error struct {
	Code int
	Err  error
}

// Error tells what is wrong and what to do about it.
func (e *Error) Error() string { return e.Err.Error() }

// Unwrap is part of error.
func (e *Error) Unwrap() error { return e.Err }

// Read returns what some arguments ask for. The errors are of type *Error.
func Read(arguments []string, version string) (Call, error) {
	flags := flag.NewFlagSet("tsugime-desktop", flag.ContinueOnError)
	flags.SetOutput(io.Discard)
	wantsVersion := flags.Bool("version", false, "")
	err := flags.Parse(arguments)
	switch {
	case errors.Is(err, flag.ErrHelp):
		return Call{Text: Usage}, nil
	case err != nil:
		return Call{}, &Error{Misuse, fmt.Errorf("%w; tsugime-desktop --help tells which there are", err)}
	case *wantsVersion:
		return Call{Text: "tsugime-desktop " + version + "\n"}, nil
	}
	switch flags.NArg() {
	case 0:
		o, err := ui.ReadStarter(assets.Starters()[0].Name)
		if err != nil {
			return Call{}, &Error{Failed, err}
		}
		return Call{Order: o}, nil
	case 1:
		return readOrder(flags.Arg(0))
	}
	return Call{}, &Error{Misuse, fmt.Errorf("%d orders were given: %s; give one, and open the others from the window", flags.NArg(), strings.Join(flags.Args(), ", "))}
}

// readOrder reads the order in a file.
func readOrder(name string) (Call, error) {
	path, err := filepath.Abs(name)
	if err != nil {
		return Call{}, &Error{Failed, err}
	}
	if info, err := os.Stat(path); err == nil && info.IsDir() {
		return Call{}, &Error{Failed, fmt.Errorf("%s is a folder; give an order file (.tsugime)", name)}
	}
	o, err := ui.ReadFile(path)
	if err != nil {
		return Call{}, &Error{Failed, err}
	}
	return Call{Order: o, Path: path}, nil
}

// Display returns an error where there is no screen to open a window on, judged by
// the environment.
func Display(getenv func(string) string) error {
	switch runtime.GOOS {
	case "darwin", "windows":
		return nil
	}
	if getenv("DISPLAY") == "" {
		return &Error{Failed, errors.New("there is no display to open a window on (DISPLAY is not set); the program tsugime does the same work in a terminal: tsugime --help")}
	}
	return nil
}
