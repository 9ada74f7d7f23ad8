package report

import (
	"errors"
	"image"

	"tsugime/repeat"
)

// Pictures lists what Picture can show.
func Pictures() []string { return []string{"unit", "sheet", "joint", "bolt", "garment"} }

// Picture draws one of Pictures, pxWidth pixels wide.
func Picture(w repeat.Work, of string, pxWidth int) (image.Image, error) {
	return nil, errors.New("picture: not drawn yet")
}
