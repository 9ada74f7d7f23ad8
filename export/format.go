package export

import "io"

// A Format is one kind of file that a Drawing can be written as.
type Format interface {
	Name() string      // as people say it: "SVG"
	Extension() string // with the dot: ".svg"
	Write(w io.Writer, d Drawing) error
}
