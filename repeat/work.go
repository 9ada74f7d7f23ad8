package repeat

import (
	"tsugime/repeat/check"
	"tsugime/repeat/cloth"
	"tsugime/repeat/document"
	"tsugime/repeat/stencil"
)

// A Work is everything that follows from an order. It is a value: an edit makes
// a new one.
type Work struct {
	Order    document.Order
	Sheet    stencil.Sheet
	Run      cloth.Run
	Dressed  cloth.Dressed
	Findings []check.Finding
}
