// Command windowbench measures the window from outside, as a person meets it: it
// starts the program on a display, moves the pointer, turns the wheel and presses
// keys by the X Test extension, and counts what reaches the screen by the X Damage
// extension.
//
//	windowbench [-for 6s] [-soak 20000] PROGRAM ORDER
//
// A shown frame is a drawing of the program that the X server has put on the screen;
// a picture that was painted and not shown is none. What a monitor adds after that is
// not counted. Times from input to frame begin when the input is handed to the server.
// The program's own times (painting, work that is done) come from its signs.
//
// With still it only waits until nothing has been drawn for 300 ms, with close it
// asks the largest window to close as a window manager does.
package main

import (
	"errors"
	"flag"
	"fmt"
	"os"
	"time"
)

func main() {
	if err := do(); err != nil {
		fmt.Fprintln(os.Stderr, "windowbench:", err)
		os.Exit(1)
	}
}

func do() error {
	length := flag.Duration("for", 6*time.Second, "how long each station is panned, and zoomed")
	soak := flag.Int("soak", 20000, "how many frames the soak lasts")
	width := flag.Int("width", 1600, "of the window")
	height := flag.Int("height", 1000, "of the window")
	starts := flag.Int("starts", 7, "how often the program is started")
	flag.Parse()
	screen, err := look(os.Getenv("DISPLAY"))
	if err != nil {
		return err
	}
	switch flag.Arg(0) {
	case "still":
		return screen.still(300*time.Millisecond, 20*time.Second)
	case "close":
		id, err := screen.toplevel(time.Second)
		if err != nil {
			return err
		}
		if err := screen.askToClose(id); err != nil {
			return err
		}
		_, err = screen.atom("WM_NAME") // the message has arrived when this is answered
		return err
	}
	if flag.NArg() != 2 {
		return fmt.Errorf("give the program and an order, or still, or close")
	}
	b := &bench{screen: screen, binary: flag.Arg(0), order: flag.Arg(1), width: *width, height: *height}
	if b.folder, err = os.MkdirTemp("", "windowbench"); err != nil {
		return err
	}
	defer os.RemoveAll(b.folder)
	if other, err := screen.child(); other != 0 || err != nil {
		return errors.Join(err, errors.New("there is a window on the display already; give one of its own"))
	}
	defer b.stop()
	if err := b.starts(*starts); err != nil {
		return err
	}
	return b.stations(*length, *soak)
}
