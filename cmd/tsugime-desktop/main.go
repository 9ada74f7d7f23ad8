// Command tsugime-desktop opens the window on an order:
//
//	tsugime-desktop [-version] [ORDER]
//
// Without an order it opens the first starter.
package main

import (
	"flag"
	"fmt"
	"os"
	"path/filepath"
	"runtime/debug"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/app"

	"tsugime/assets"
	"tsugime/repeat/document"
	"tsugime/ui"
	"tsugime/ui/session"
)

func main() {
	version := flag.Bool("version", false, "print the version and leave")
	flag.Parse()
	if *version {
		fmt.Println("tsugime-desktop", built())
		return
	}
	order, path, err := first(flag.Args())
	if err != nil {
		fmt.Fprintln(os.Stderr, "tsugime-desktop:", err)
		os.Exit(3)
	}
	store := session.Open()
	program := app.NewWithID("org.tsugime.Tsugime")
	program.SetIcon(fyne.NewStaticResource("org.tsugime.Tsugime.svg", assets.Icon()))
	w := ui.New(program, order, path, store)
	if kept, ok := store.Kept(); ok {
		w.Recover(kept)
	}
	w.Fyne().ShowAndRun()
}

// first returns the order to begin with and the file it came from.
func first(names []string) (document.Order, string, error) {
	switch len(names) {
	case 0:
		o, err := ui.ReadStarter(assets.Starters()[0].Name)
		return o, "", err
	case 1:
		path, err := filepath.Abs(names[0])
		if err != nil {
			return document.Order{}, "", err
		}
		o, err := ui.ReadFile(path)
		return o, path, err
	}
	return document.Order{}, "", fmt.Errorf("one order at a time; give one file")
}

// built is the version that the binary was built from.
func built() string {
	if info, ok := debug.ReadBuildInfo(); ok {
		return info.Main.Version
	}
	return "(unknown)"
}
