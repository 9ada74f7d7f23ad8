package pdf

import (
	"strings"
	"unicode/utf8"

	"tsugime/export"
	"tsugime/repeat/geom"
)

// texts sets the words of a layer in the faces that are embedded, so that they
// can be found and copied.
func (c *content) texts(l export.Layer) {
	if len(l.Texts) == 0 {
		return
	}
	c.colour(l.Pen.Colour, "rg")
	for _, t := range l.Texts {
		for _, run := range export.Runs(t) {
			switch {
			case run.Face == export.NoFace:
				c.framed(run, t)
			case run.Stroke > 0:
				c.end("q")
				c.colour(l.Pen.Colour, "RG")
				c.mm(run.Stroke).end("w")
				c.end("1 j [] 0 d")
				c.run(run, t.TurnDeg, 2)
				c.end("Q")
			default:
				c.run(run, t.TurnDeg, 0)
			}
		}
	}
}

// run sets letters: filled (0), filled and drawn around (2), or not seen (3).
func (c *content) run(run export.Run, turnDeg float64, mode int) {
	codes := c.cases[run.Face].set(run.Glyphs, []rune(run.Text))
	c.op("BT /F" + string(rune('0'+run.Face))).mm(run.Em).op("Tf " + string(rune('0'+mode)) + " Tr")
	// The letters stand up against a y that points down.
	m := geom.Rotate(turnDeg)
	c.real(m.A).real(m.C).real(-m.B).real(-m.D).at(run.At).op("Tm")
	c.op(codes).end("Tj ET")
}

// framed draws the frames of letters that no face has, and sets blanks over them
// that stand for what they say (14.9.4).
func (c *content) framed(run export.Run, t export.Text) {
	frames := export.Text{At: run.At, Height: t.Height, Text: run.Text, TurnDeg: t.TurnDeg}
	c.op("/Span << /ActualText").op(utf16String(run.Text)).end(">> BDC")
	c.outline(export.Lettering(frames))
	c.end("f")
	frames.Text = strings.Repeat(" ", utf8.RuneCountInString(run.Text))
	for _, blank := range export.Runs(frames) {
		c.run(blank, t.TurnDeg, 3)
	}
	c.end("EMC")
}
