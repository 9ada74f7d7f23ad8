// Command tsugime-desktop is the window.
package main

import (
	"fyne.io/fyne/v2/app"
	"fyne.io/fyne/v2/widget"
	_ "github.com/fogleman/gg"
	_ "github.com/tdewolff/canvas"
	_ "golang.org/x/image/font/gofont/goregular"
)

func main() {
	w := app.NewWithID("tsugime").NewWindow("Tsugime")
	w.SetContent(widget.NewLabel("Tsugime"))
	w.ShowAndRun()
}
