package raster

import (
	"bytes"
	"encoding/binary"
	"fmt"
	"hash/crc32"
	"image"
	"image/draw"
	"image/png"
	"io"
	"math"

	"tsugime/export"
)

// PNG writes a drawing as a picture on white, at DPI pixels to the inch, with its
// true size in the file.
type PNG struct{ DPI float64 }

var _ export.Format = PNG{}

// Name returns "PNG".
func (PNG) Name() string { return "PNG" }

// Extension returns ".png".
func (PNG) Extension() string { return ".png" }

// mostPixels bounds a picture: a sheet of A2 at 400 dpi, about a gigabyte of work.
const mostPixels = 100_000_000

const mmPerInch = 25.4

// Write writes d. The same drawing gives the same bytes.
func (f PNG) Write(w io.Writer, d export.Drawing) error {
	if !(f.DPI > 0) || math.IsInf(f.DPI, 0) {
		return fmt.Errorf("png: %g dots to the inch can't be drawn; give more than 0", f.DPI)
	}
	if err := d.Check(); err != nil {
		return fmt.Errorf("png: %w", err)
	}
	scale := f.DPI / mmPerInch
	wide, high := math.Ceil(d.Width.MM()*scale), math.Ceil(d.Height.MM()*scale)
	if wide < 1 || high < 1 || wide*high > mostPixels {
		return fmt.Errorf("png: %q would have %.0f × %.0f pixels; choose a resolution that gives 1 to %d million",
			d.Title, wide, high, mostPixels/1_000_000)
	}
	img := image.NewRGBA(image.Rect(0, 0, int(wide), int(high)))
	draw.Draw(img, img.Rect, image.White, image.Point{}, draw.Src)
	if err := Draw(img, d, View{PxPerMM: scale}); err != nil {
		return fmt.Errorf("png: %w", err)
	}
	return Encode(w, img, f.DPI)
}

// Encode writes img as a PNG that says how large it is: dpi pixels to the inch.
func Encode(w io.Writer, img image.Image, dpi float64) error {
	var b bytes.Buffer
	if err := png.Encode(&b, img); err != nil {
		return fmt.Errorf("png: %w", err)
	}
	// The size comes after the header, which ends at byte 33, and before the
	// pixels (PNG specification, third edition, 11.3.4.3 pHYs).
	const header = 33
	for _, part := range [][]byte{b.Bytes()[:header], sizeChunk(dpi), b.Bytes()[header:]} {
		if _, err := w.Write(part); err != nil {
			return fmt.Errorf("png: %w", err)
		}
	}
	return nil
}

// sizeChunk returns a pHYs chunk: pixels to the metre, both ways.
func sizeChunk(dpi float64) []byte {
	const metre = 1
	perMetre := uint32(math.Round(dpi * 1000 / mmPerInch))
	c := binary.BigEndian.AppendUint32(nil, 9)
	c = append(c, "pHYs"...)
	c = binary.BigEndian.AppendUint32(c, perMetre)
	c = binary.BigEndian.AppendUint32(c, perMetre)
	c = append(c, metre)
	return binary.BigEndian.AppendUint32(c, crc32.ChecksumIEEE(c[4:]))
}
