package pattern

import (
	"fmt"
	"math"
	"math/rand/v2"
)

// A scale is one fan of a ground of scales, seen from its centre: rows stand half
// a radius apart, each half a width further than the one before, and a row covers
// those behind it. Up on the sheet is where the fan opens.
//
//	  ╭──╮  ╭──╮
//	╭─┴╮╭┴──┴╮╭┴─╮    the rim of each fan, and what the two rows before it leave
//	│  ╰┤    ├╯  │
type scale struct{ radius, row float64 }

func scaleOf(t tile) scale { return scale{t.w / 2, t.h / 2} }

// visible returns how far from straight up a point at radius r stays clear of the
// fans before it by the given margin: an angle in 0…π, or less than 0 where even
// the top is covered. Both sides are alike.
func (s scale) visible(r, margin float64) float64 {
	clear := func(a float64) bool {
		x, y := r*math.Sin(a), -r*math.Cos(a)
		reach := s.radius + margin
		return math.Hypot(x-s.radius, y-s.row) >= reach && math.Hypot(x, y-2*s.row) >= reach
	}
	if !clear(0) {
		return -1
	}
	const steps = 256
	for i := 1; i <= steps; i++ {
		low, high := float64(i-1)*math.Pi/steps, float64(i)*math.Pi/steps
		if clear(high) {
			continue
		}
		for range 50 {
			if mid := (low + high) / 2; clear(mid) {
				low = mid
			} else {
				high = mid
			}
		}
		return low
	}
	return math.Pi
}

// arcDots is the ground of fine dots along overlapping arcs. The pitch tells the
// density; the dots along an arc are set a little closer than that to make up for
// what the rims take.
var arcDots = Ground{
	Name: "arc-dots", Trade: "same",
	About: "Fine dots along the arcs of overlapping scales.",
	Params: append([]Param{
		length("pitch", "Pitch", 0.05, 50, 1.07, "The density is one dot on the square of the pitch."),
		length("dot", "Dot", 0.01, 40, 0.45, "Diameter of a dot."),
		length("scale", "Scale", 2, 400, 22, "Width of a scale."),
	}, swellParams()...),
	draft: draft{
		tile:  func(v values) (float64, float64) { return v.nm("scale"), v.nm("scale") / 2 },
		count: func(v values, t tile) float64 { return t.w * t.h / (v.nm("pitch") * v.nm("pitch")) },
		draw:  drawArcDots,
		dot:   roundDot,
		scale: "scale",
	},
}

func drawArcDots(v values, t tile, _ *rand.Rand) ([]mark, error) {
	pitch, dot, s := v.nm("pitch"), v.nm("dot"), scaleOf(t)
	arcs := math.Round(s.radius / pitch)
	if arcs < 4 {
		return nil, fmt.Errorf("a scale of %.3f mm has room for %.0f arcs at a pitch of %.3f mm; "+
			"make the scale larger or the pitch finer, so that there are 4", t.w/1e6, arcs, pitch/1e6)
	}
	if err := fits(dot, pitch); err != nil {
		return nil, err
	}
	var fan []arc
	for k := 0.0; k < arcs; k++ {
		if a := (arc{radius: s.radius * (arcs - k - 0.5) / arcs}); a.radius > 0 {
			// An arc seen all around ends a pitch before it begins.
			round := math.Max(0, math.Pi-pitch/(2*a.radius))
			if a.half = math.Min(s.visible(a.radius, s.radius/arcs/2), round); a.half >= 0 {
				fan = append(fan, a)
			}
		}
	}
	want := int(math.Round(t.w * t.h / 2 / (pitch * pitch)))
	along := alongArcs(fan, want, pitch)
	if err := fits(dot, math.Min(along, s.radius/arcs)); err != nil {
		return nil, err
	}
	var pieces []mark
	for _, c := range [2][2]float64{{0, 0}, {t.w / 2, t.h / 2}} {
		for _, a := range fan {
			n := a.dots(along)
			for i := range n {
				turn := 0.0
				if n > 1 {
					turn = a.half * (2*float64(i)/float64(n-1) - 1)
				}
				pieces = append(pieces, mark{
					x: c[0] + a.radius*math.Sin(turn), y: c[1] - a.radius*math.Cos(turn), size: dot,
				})
			}
		}
	}
	return pieces, nil
}

// An arc is what is seen of one arc of a fan.
type arc struct{ radius, half float64 }

// dots returns how many dots an arc holds, along apart at least, one at each end.
func (a arc) dots(along float64) int { return 1 + int(2*a.half*a.radius/along) }

// alongArcs returns the distance of dots along their arcs with which a fan holds
// about as many as wanted: the larger the distance, the fewer, so it is halved in.
func alongArcs(fan []arc, want int, pitch float64) float64 {
	low, high := pitch/2, 2*pitch
	for range 40 {
		mid, n := (low+high)/2, 0
		for _, a := range fan {
			n += a.dots(mid)
		}
		if n > want {
			low = mid
		} else {
			high = mid
		}
	}
	return high
}
