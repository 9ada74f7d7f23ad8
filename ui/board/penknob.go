package board

import (
	"image/color"
	"math"
)

// knob draws a small filled square or disc, width larger than it is by itself.
func (p pen) knob(s spot, round bool, width float64, c color.RGBA) {
	r := 3*p.unit + width/2
	p.soft(s.x-r-1, s.y-r-1, s.x+r+1, s.y+r+1, c, func(x, y float64) float64 {
		if round {
			return r + 0.5 - math.Hypot(x-s.x, y-s.y)
		}
		return r + 0.5 - math.Max(math.Abs(x-s.x), math.Abs(y-s.y))
	})
}

// knobBeyond draws a square beyond b on the way from a, and a line out to it.
func (p pen) knobBeyond(a, b spot, width float64, c color.RGBA) {
	dx, dy := b.x-a.x, b.y-a.y
	l := math.Hypot(dx, dy)
	if l == 0 {
		return
	}
	at := spot{b.x + dx/l*KnobPx*p.unit, b.y + dy/l*KnobPx*p.unit}
	if from, to, ok := p.seen(b, at); ok {
		p.line(from, to, p.unit, c)
		p.knob(at, false, width, c)
	}
}
