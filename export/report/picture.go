package report

import (
	"fmt"
	"image"
	"image/color"
	"image/draw"
	"math"
	"strings"

	"tsugime/export"
	"tsugime/export/raster"
	"tsugime/repeat"
	"tsugime/repeat/geom"
)

// A subject is one of the proof pictures.
type subject struct {
	name string
	draw func(w repeat.Work, pxWidth int) (*plate, error)
	// ofSet is set where the order must be cut as two sheets.
	ofSet bool
}

func subjects() []subject {
	return []subject{
		{"unit", unitPlate, false}, {"sheet", sheetPlate, false}, {"sheet-second", secondPlate, true}, {"set", setPlate, true},
		{"joint", jointPlate, false}, {"bolt", boltPlate, false}, {"garment", garmentPlate, false},
	}
}

// Pictures lists what Picture can show of w.
func Pictures(w repeat.Work) []string {
	var names []string
	for _, s := range subjects() {
		if !s.ofSet || w.Sheet.Second != nil {
			names = append(names, s.name)
		}
	}
	return names
}

// Picture draws one of Pictures, pxWidth pixels wide, with a strip below that
// says what is seen and at which scale. Colours are the cloth's and the paper's;
// the grey of a fine ground is its exact cut area.
func Picture(w repeat.Work, of string, pxWidth int) (*image.RGBA, error) {
	if pxWidth < 100 || pxWidth > 20_000 {
		return nil, fmt.Errorf("picture: %d pixels can't be drawn; give a width of 100 to 20000", pxWidth)
	}
	for _, s := range subjects() {
		if s.name == of {
			p, err := s.draw(w, pxWidth)
			if err != nil {
				return nil, fmt.Errorf("picture of the %s: %w", of, err)
			}
			return p.img, p.finish(w)
		}
	}
	return nil, fmt.Errorf("picture: there is none of %q; choose %s", of, strings.Join(Pictures(w), ", "))
}

// A plate is a picture in the making. Words and lines are placed on it in
// millimetres, of which every plate is 200 wide.
type plate struct {
	img    *image.RGBA
	scale  float64 // pixels to a millimetre of the plate
	over   *leaf   // drawn on top
	f      figures
	name   string  // what is seen
	about  string  // one line of figures
	sample float64 // millimetres of the plate to one of what is seen
}

const (
	plateWidth  = 200 * geom.Millimetre
	plateMargin = 8 * geom.Millimetre
	plateStrip  = 21 * geom.Millimetre
)

// newPlate returns an empty plate whose picture is inner high, margins and strip
// not counted.
func newPlate(w repeat.Work, pxWidth int, inner geom.Length, name string) *plate {
	height := plateMargin + inner + plateStrip
	scale := float64(pxWidth) / plateWidth.MM()
	p := &plate{
		img:   image.NewRGBA(image.Rect(0, 0, pxWidth, int(height.MM()*scale+0.5))),
		scale: scale, over: newLeaf(plateWidth, height), f: figuresOf(w),
	}
	p.name = p.f.say(name)
	draw.Draw(p.img, p.img.Bounds(), image.NewUniform(inks(export.White)), image.Point{}, draw.Src)
	return p
}

// inner returns the room of the picture.
func (p *plate) inner() geom.Box {
	return geom.BoxOf(geom.Point{X: plateMargin, Y: plateMargin},
		geom.Point{X: plateWidth - plateMargin, Y: p.over.height - plateStrip})
}

// A glass shows a window of the cloth, or of the paper, in a room of the plate.
type glass struct {
	window geom.Box
	room   geom.Box
	k      float64 // millimetres of the plate to one of the window
}

// glassOn returns the glass through which a window fills a room's width.
func glassOn(window, room geom.Box) glass {
	return glass{window, room, float64(room.Width()) / float64(window.Width())}
}

// put returns where a place of the window lies on the plate.
func (g glass) put(at geom.Point) geom.Point {
	d := at.Sub(g.window.Min)
	return g.room.Min.Add(geom.Point{X: d.X.Times(g.k), Y: d.Y.Times(g.k)})
}

// pixels returns the whole pixels that the glass covers.
func (g glass) pixels(p *plate) image.Rectangle {
	down := func(l geom.Length) int { return int(math.Floor(l.MM() * p.scale)) }
	up := func(l geom.Length) int { return int(math.Ceil(l.MM() * p.scale)) }
	r := image.Rect(down(g.room.Min.X), down(g.room.Min.Y), up(g.room.Max.X), up(g.room.Max.Y))
	return r.Intersect(p.img.Rect)
}

// view says what of the window a plane shows that begins at a pixel.
func (g glass) view(p *plate, from image.Point) raster.View {
	mm := func(px int, room, window geom.Length) float64 {
		return window.MM() + (float64(px)/p.scale-room.MM())/g.k
	}
	return raster.View{
		X:       mm(from.X, g.room.Min.X, g.window.Min.X),
		Y:       mm(from.Y, g.room.Min.Y, g.window.Min.Y),
		PxPerMM: p.scale * g.k,
	}
}

// fill paints a window of the glass in one colour.
func (p *plate) fill(g glass, window geom.Box, c color.RGBA) {
	px := func(l geom.Length) int { return int(l.MM()*p.scale + 0.5) }
	a, b := g.put(window.Min), g.put(window.Max)
	r := image.Rect(px(a.X), px(a.Y), px(b.X), px(b.Y))
	draw.Draw(p.img, r, image.NewUniform(c), image.Point{}, draw.Src)
}

// paint lays a ground through the glass; every lay must say where it shows.
func (p *plate) paint(g glass, ground *raster.Ground, c color.RGBA, lays ...raster.Lay) {
	r := g.pixels(p)
	part, ok := p.img.SubImage(r).(*image.RGBA)
	if !ok || r.Empty() {
		return
	}
	plane := raster.NewPlane(r.Dx(), r.Dy())
	ground.PaintAll(plane, g.view(p, r.Min), lays...)
	plane.Over(part, c)
}

// finish letters the strip and draws what lies on top.
func (p *plate) finish(w repeat.Work) error {
	l := p.over
	y := l.height - plateStrip + geom.MM(9)
	right := plateWidth - plateMargin
	bar := p.scaleBar(right, y)
	room := bar - plateMargin - geom.MM(8)
	name, s := fit(p.name, captionStyle, room/2)
	l.text(accentWord, s, geom.Point{X: plateMargin + room, Y: y}, export.End, name)
	text, s := fit(p.f.title(w), headStyle, room-export.TextWidth(name, s.height, false)-geom.MM(5))
	l.text(words, s, geom.Point{X: plateMargin, Y: y}, export.Start, text)
	text, s = fit(p.about, captionStyle, right-plateMargin)
	l.text(captions, s, geom.Point{X: plateMargin, Y: y + geom.MM(6.4)}, export.Start, text)
	return raster.Draw(p.img, l.drawing(p.f.title(w)), raster.View{PxPerMM: p.scale})
}

// scaleBar draws a round length of what is seen, right-aligned, and returns
// where it begins.
func (p *plate) scaleBar(right, y geom.Length) geom.Length {
	length := roundBelow(30 / p.sample)
	drawn := length.Times(p.sample)
	x := right - drawn
	p.over.line(rule, geom.Point{X: x, Y: y}, geom.Point{X: right, Y: y})
	for _, end := range []geom.Length{x, right} {
		p.over.line(rule, geom.Point{X: end, Y: y - geom.MM(1.2)}, geom.Point{X: end, Y: y})
	}
	text := length.String() + " mm"
	p.over.text(captions, captionStyle, geom.Point{X: right, Y: y - geom.MM(2.2)}, export.End, text)
	return right - max(drawn, captionStyle.width(text))
}

// roundBelow returns the greatest of 1, 2, 5 · 10ⁿ mm that is at most v.
func roundBelow(v float64) geom.Length {
	power := 1e-3
	for power*10 <= v {
		power *= 10
	}
	for _, step := range []float64{5, 2} {
		if step*power <= v {
			return geom.MM(step * power)
		}
	}
	return geom.MM(power)
}

// The colours of the craft: light paper with tannin in it, what shines through
// its holes, and cloth that paste kept white.
var (
	tannin = color.RGBA{0xb4, 0x86, 0x57, 0xff}
	shine  = color.RGBA{0xff, 0xfb, 0xf0, 0xff}
	undyed = color.RGBA{0xf7, 0xf4, 0xec, 0xff}
)

func inks(c export.Colour) color.RGBA { return color.RGBA{c.R, c.G, c.B, 0xff} }

func dye(w repeat.Work) color.RGBA {
	d := w.Order.Cloth.Dye
	return color.RGBA{d.R, d.G, d.B, 0xff}
}
