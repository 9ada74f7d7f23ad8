package board

import (
	"encoding/binary"
	"image"
	"image/color"
	"math"

	"tsugime/export/raster"
	"tsugime/repeat/geom"
)

// A Painter paints scenes. It keeps its room between pictures, so one belongs to
// one goroutine.
type Painter struct {
	plane *raster.Plane
	img   *image.RGBA
	mixed map[[2]color.RGBA]*[256]uint32

	touches []touch // of the marks
}

// Paint returns the scene at w by h pixels; unit is how many pixels a unit of the
// screen has, for the marks. The picture is valid until the next Paint.
func (p *Painter) Paint(s Scene, v raster.View, w, h int, unit float64) *image.RGBA {
	if p.img == nil || p.img.Rect.Dx() != w || p.img.Rect.Dy() != h {
		p.img = image.NewRGBA(image.Rect(0, 0, w, h))
		p.plane = raster.NewPlane(w, h)
		p.mixed = map[[2]color.RGBA]*[256]uint32{}
	}
	if w == 0 || h == 0 || !(v.PxPerMM > 0) {
		fill(p.img, p.img.Rect, s.Desk)
		return p.img
	}
	// Rows of the desk, of what lies on it and of its holes are painted together, while
	// they are at hand.
	mixes := make([]*[256]uint32, len(s.Areas))
	for i, a := range s.Areas {
		mixes[i] = p.mix(a.Shut, a.Open)
	}
	p.plane.Show(v, s.Grounds, func(y0, y1 int) {
		fill(p.img, image.Rect(0, y0, w, y1), s.Desk)
		for i, a := range s.Areas {
			p.area(a, mixes[i], v, y0, y1)
		}
	})
	for _, t := range s.Tints {
		p.tint(t, v, unit)
	}
	p.touches = p.touches[:0]
	pen := pen{p.img, v, unit, &p.touches}
	for _, m := range s.Casing.cased(s.Marks) {
		pen.mark(m)
	}
	for _, m := range s.Marks {
		pen.mark(m)
	}
	layAll(p.img, p.touches)
	return p.img
}

// area shows the plane's cover in an area, in its two colours, in rows y0 up to y1.
func (p *Painter) area(a Area, mix *[256]uint32, v raster.View, y0, y1 int) {
	r := image.Rect(0, y0, p.img.Rect.Dx(), y1)
	if !a.Box.Empty() {
		r = r.Intersect(pixels(a.Box, v))
	}
	for y := r.Min.Y; y < r.Max.Y; y++ {
		cover := p.plane.Cover[y*p.plane.W+r.Min.X : y*p.plane.W+r.Max.X]
		row := p.img.Pix[y*p.img.Stride+4*r.Min.X:][:4*len(cover)]
		for x, level := range cover {
			binary.LittleEndian.PutUint32(row[4*x:4*x+4], mix[level])
		}
	}
}

// mix returns the colours from shut to open as raster.Plane.Blend mixes them, the
// four bytes of each as they lie in a picture.
func (p *Painter) mix(shut, open color.RGBA) *[256]uint32 {
	key := [2]color.RGBA{shut, open}
	if m := p.mixed[key]; m != nil {
		return m
	}
	levels := raster.NewPlane(256, 1)
	for i := range levels.Cover {
		levels.Cover[i] = uint8(i)
	}
	row := image.NewRGBA(image.Rect(0, 0, 256, 1))
	levels.Blend(row, shut, open)
	m := new([256]uint32)
	for i := range m {
		m[i] = binary.LittleEndian.Uint32(row.Pix[4*i:])
	}
	p.mixed[key] = m
	return m
}

// pixels returns the pixels whose middles lie in a box.
func pixels(b geom.Box, v raster.View) image.Rectangle {
	at := func(mm, origin float64) int {
		return int(math.Round(math.Min(math.Max((mm-origin)*v.PxPerMM, -1e6), 1e6)))
	}
	return image.Rect(at(b.Min.X.MM(), v.X), at(b.Min.Y.MM(), v.Y), at(b.Max.X.MM(), v.X), at(b.Max.Y.MM(), v.Y))
}

// fill paints a rectangle of img in one colour.
func fill(img *image.RGBA, r image.Rectangle, c color.RGBA) {
	r = r.Intersect(img.Rect)
	if r.Empty() {
		return
	}
	first := img.Pix[r.Min.Y*img.Stride+4*r.Min.X:][:4*r.Dx()]
	for i := 0; i < len(first); i += 4 {
		first[i], first[i+1], first[i+2], first[i+3] = c.R, c.G, c.B, 255
	}
	for y := r.Min.Y + 1; y < r.Max.Y; y++ {
		copy(img.Pix[y*img.Stride+4*r.Min.X:], first)
	}
}
