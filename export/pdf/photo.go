package pdf

import (
	"fmt"
	"image"
	"io"

	"tsugime/repeat/geom"
)

// photo writes a picture as an image of 8 bits to a colour (ISO 32000-1, 8.9.5).
func (f *file) photo(p *image.RGBA) object {
	o := f.reserve()
	size := p.Bounds().Size()
	dict := fmt.Sprintf("/Type /XObject /Subtype /Image /Width %d /Height %d /ColorSpace /DeviceRGB /BitsPerComponent 8 ", size.X, size.Y)
	f.stream(o, dict, func(w io.Writer) {
		row := make([]byte, 3*size.X)
		for y := range size.Y {
			pixels := p.Pix[y*p.Stride:]
			for x := range size.X {
				copy(row[3*x:], pixels[4*x:4*x+3])
			}
			w.Write(row)
		}
	})
	return o
}

// photo shows a picture in a box; its own square stands upside down in a page whose
// y runs down.
func (c *content) photo(n int, b geom.Box) {
	c.end("q")
	c.mm(b.Width()).op("0 0").mm(-b.Height()).mm(b.Min.X).mm(b.Max.Y).end("cm")
	c.op(fmt.Sprintf("/I%d", n)).end("Do")
	c.end("Q")
}
