package export

import (
	"image"

	"tsugime/repeat/geom"
)

// A Book is what a PDF is made of: pages that share drawings.
type Book struct {
	Title   string
	Subject string
	Pages   []Page
}

// A Page is a sheet from the printer: windows on shared drawings below, its own
// drawing (frames, crosses, words) on top.
type Page struct {
	Drawing Drawing // its size is the page's
	Views   []View
	Photos  []Photo // under the page's own drawing
	Stretch Stretch // of all that is on it, to make up for the printer
}

// A Stretch makes what is on a page larger about its middle, by a share of one in
// each direction, so that a printer that prints too small prints it true. The zero
// Stretch leaves it as it is.
type Stretch struct{ Across, Along float64 }

// A Photo is a picture of pixels that fills a box of a page.
type Photo struct {
	Pixels *image.RGBA // opaque
	Box    geom.Box
}

// A View shows the part of a drawing inside Window with the window's top left
// corner at At on the page, at true scale, turned or not at all. Two views of the same
// *Drawing cost a writer one copy of it.
type View struct {
	Of     *Drawing
	Window geom.Box
	At     geom.Point
}

// Single returns a book of one page that is the drawing itself.
func Single(d *Drawing) Book {
	return Book{Title: d.Title, Pages: []Page{{
		Drawing: Drawing{Title: d.Title, Width: d.Width, Height: d.Height},
		Views:   []View{{Of: d, Window: geom.BoxOf(geom.Point{}, geom.Point{X: d.Width, Y: d.Height})}},
	}}}
}
