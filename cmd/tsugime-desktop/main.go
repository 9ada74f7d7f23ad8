// Command tsugime-desktop opens the window on an order:
//
//	tsugime-desktop [--version] [ORDER]
//
// Without an order it opens the first starter.
package main

import (
	"errors"
	"fmt"
	"os"
	"os/signal"
	"runtime/debug"
	"strings"
	"syscall"
	"time"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/app"
	"fyne.io/fyne/v2/driver"

	"tsugime/assets"
	"tsugime/cmd/tsugime-desktop/opening"
	"tsugime/ui"
	"tsugime/ui/session"
)

// leaveWithin is how long the program may take to put away what it was writing.
const leaveWithin = 1500 * time.Millisecond

func main() {
	err := run(os.Args[1:])
	if err == nil {
		return
	}
	fmt.Fprintln(os.Stderr, "tsugime-desktop:", err)
	code := opening.Failed
	if wrong := (*opening.Error)(nil); errors.As(err, &wrong) {
		code = wrong.Code
	}
	os.Exit(code)
}

// run opens the window and returns when it is closed.
func run(arguments []string) error {
	call, err := opening.Read(arguments, built())
	if err != nil {
		return err
	}
	if call.Text != "" {
		fmt.Print(call.Text)
		return nil
	}
	if err := opening.Display(os.Getenv); err != nil {
		return err
	}
	w, err := open(call)
	if err != nil {
		return err
	}
	if err := giveSigns(w); err != nil {
		return err
	}
	go func() {
		asked := make(chan os.Signal, 1)
		signal.Notify(asked, os.Interrupt, syscall.SIGTERM) // Fyne shuts the window on these
		<-asked
		w.Leave()
	}()
	w.Fyne().Show()
	if !isThere(w.Fyne()) {
		return fmt.Errorf("the display %s has no OpenGL to draw a window with; install a driver (Debian: libgl1-mesa-dri), or do the work in a terminal: tsugime --help", os.Getenv("DISPLAY"))
	}
	fyne.CurrentApp().Run()
	if !w.Rest(leaveWithin) {
		return errors.New("what was being written did not stop in time; look for files that begin with a dot in its folder")
	}
	return nil
}

// isThere reports whether the display has made a window that was to be shown. Fyne only
// writes what was lacking, and goes on without.
func isThere(w fyne.Window) bool {
	there := true
	if native, ok := w.(driver.NativeWindow); ok {
		native.RunNative(func(context any) {
			x11, ok := context.(driver.X11WindowContext)
			there = !ok || x11.WindowHandle != 0
		})
	}
	return there
}

// open makes the window. Fyne panics where the display can't be opened, and has
// then said on the error output what the display answered.
func open(call opening.Call) (w *ui.Window, err error) {
	defer func() {
		reason := recover()
		if reason == nil {
			return
		}
		if !strings.Contains(fmt.Sprint(reason), "GLFW library is not initialized") {
			panic(reason)
		}
		err = fmt.Errorf("the display %s can't be opened; the program tsugime does the same work in a terminal: tsugime --help", os.Getenv("DISPLAY"))
	}()
	store := session.Open()
	program := app.NewWithID("org.tsugime.Tsugime")
	program.SetIcon(fyne.NewStaticResource("org.tsugime.Tsugime.png", assets.IconPicture()))
	w = ui.New(program, call.Order, call.Path, store)
	w.OfferLeft()
	return w, nil
}

// built is the version that the binary was built from.
func built() string {
	if info, ok := debug.ReadBuildInfo(); ok {
		return info.Main.Version
	}
	return "(unknown)"
}
