package board

import (
	"image/color"
	"slices"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/canvas"
	"fyne.io/fyne/v2/theme"
)

// A labels keeps the words on the surface. Objects are used again, since each new
// one costs the renderer something.
type labels struct {
	texts   []*canvas.Text
	shields []*canvas.Rectangle
	used    int
	taken   []box // what the shields cover by now
}

// A box is a place on the surface from one corner to the other, in its own pixels.
type box struct{ from, to fyne.Position }

// overlaps reports whether two boxes share more than an edge.
func (b box) overlaps(c box) bool {
	return b.from.X < c.to.X && c.from.X < b.to.X && b.from.Y < c.to.Y && c.from.Y < b.to.Y
}

// most bounds how many labels are shown; more can't be read.
const mostLabels = 400

// shieldPx is how far a shield reaches beyond its words on either side.
const shieldPx = 4

// layLabels puts the scene's labels and the rulers' numbers in their places, the bold
// ones first: a shielded label that would cover another is left out until there is
// room for both.
func (b *Board) layLabels() {
	b.labels.used, b.labels.taken = 0, b.labels.taken[:0]
	size := b.Size()
	if b.view.zoom > 0 {
		for _, bold := range []bool{true, false} {
			for _, l := range b.scene.Labels {
				if l.Bold == bold {
					b.lay(l, size)
				}
			}
		}
		if !b.scene.Plain {
			b.layNumbers(size)
		}
	}
	for i := b.labels.used; i < len(b.labels.texts); i++ {
		b.labels.texts[i].Hide()
		b.labels.shields[i].Hide()
	}
}

func (b *Board) lay(l Label, size fyne.Size) {
	at := b.At(l.At).AddXY(l.Off[0], l.Off[1])
	edge := float32(b.inset())
	if at.X < edge-200 || at.Y < edge-20 || at.X > size.Width+200 || at.Y > size.Height+20 || b.labels.used >= mostLabels {
		return
	}
	text := l.Size
	if text == 0 {
		text = 12
	}
	words := fyne.MeasureText(l.Text, text, fyne.TextStyle{Bold: l.Bold})
	if l.Room > 0 && l.Room.MM()*b.view.zoom < float64(words.Width)+4 {
		return
	}
	pos := fyne.NewPos(at.X, at.Y-words.Height/2)
	switch l.Align {
	case Before:
		pos.X -= words.Width
	case Middle:
		pos.X -= words.Width / 2
	case Above:
		pos = fyne.NewPos(at.X-words.Width/2, at.Y-words.Height-2)
	case Below:
		pos = fyne.NewPos(at.X-words.Width/2, at.Y+2)
	}
	if l.Keep {
		pos.X = max(min(pos.X, size.Width-words.Width-2*shieldPx), edge+2*shieldPx)
		pos.Y = max(min(pos.Y, size.Height-words.Height-2*shieldPx), edge+2*shieldPx)
	}
	if pos.X < edge || pos.Y < edge {
		return
	}
	if l.Shield.A > 0 {
		covers := box{pos.SubtractXY(shieldPx, 0), pos.AddXY(words.Width+shieldPx, words.Height)}
		if slices.ContainsFunc(b.labels.taken, covers.overlaps) {
			return
		}
		b.labels.taken = append(b.labels.taken, covers)
	}
	b.put(l.Text, pos, words, text, l.Bold, l.Colour, l.Shield)
}

// layNumbers writes the numbers of both rulers.
func (b *Board) layNumbers(size fyne.Size) {
	const small = 10
	write := func(text string, pos fyne.Position) {
		words := fyne.MeasureText(text, small, fyne.TextStyle{})
		b.put(text, pos, words, small, false, b.look.Ink, color.RGBA{})
	}
	for _, t := range ticks(b.Unit, b.view.x, b.view.zoom, float64(size.Width)) {
		if t.text != "" && t.at > rulerPx {
			write(t.text, fyne.NewPos(float32(t.at)+3, 0))
		}
	}
	for _, t := range ticks(b.Unit, b.view.y, b.view.zoom, float64(size.Height)) {
		if t.text != "" && t.at > rulerPx {
			write(t.text, fyne.NewPos(2, float32(t.at)+1))
		}
	}
	write(b.Unit.Name, fyne.NewPos(3, 5))
}

// put shows one text with what is painted behind it.
func (b *Board) put(text string, pos fyne.Position, words fyne.Size, size float32, bold bool, c, shield color.RGBA) {
	i := b.labels.used
	if i == len(b.labels.texts) {
		b.labels.texts = append(b.labels.texts, canvas.NewText("", theme.Color(theme.ColorNameForeground)))
		r := canvas.NewRectangle(color.Transparent)
		r.CornerRadius = 3
		b.labels.shields = append(b.labels.shields, r)
	}
	t, r := b.labels.texts[i], b.labels.shields[i]
	b.labels.used++
	r.Hidden = shield.A == 0
	if !r.Hidden {
		r.FillColor = shield
		r.Move(fyne.NewPos(pos.X-shieldPx, pos.Y-1))
		r.Resize(fyne.NewSize(words.Width+2*shieldPx, words.Height+2))
	}
	t.Text, t.TextSize, t.TextStyle.Bold, t.Color = text, size, bold, c
	t.Hidden = false
	t.Move(pos)
	t.Resize(words)
}
