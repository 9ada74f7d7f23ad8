package pattern

import (
	"fmt"
	"math"
	"math/rand/v2"

	"tsugime/repeat/geom"
)

// waves returns a ground of lines that swing as a cosine along the step: all alike,
// or each against its neighbour. A bridge stands at every wave, where the line runs
// straight along.
func waves(name, trade, about string, against bool, params ...Param) Ground {
	return Ground{
		Name: name, Trade: trade, About: about,
		Params: append(params,
			counted("bridged", "Bridges", 0, 1, 1, "Bridges at each wave; 0 leaves whole lines, which need threads or gauze."),
			bridgeParam(0.8)),
		draft: draft{
			tile:  func(v values) (float64, float64) { return 2 * v.nm("pitch"), v.nm("wave") },
			count: func(values, tile) float64 { return 2 },
			draw: func(v values, t tile, _ *rand.Rand) ([]mark, error) {
				return drawWaves(v, t, against)
			},
			apart: true,
		},
	}
}

var waveringStripes = waves("wavering-stripes", "yoroke", "Stripes that waver, all alike.", false,
	length("pitch", "Pitch", 0.1, 200, 5, "From one line to the next."),
	length("line", "Line", 0.05, 100, 2, "Width of a line across."),
	length("swing", "Swing", 0, 100, 1.5, "How far a line leaves its middle to each side."),
	length("wave", "Wave", 1, 400, 30, "Length of a wave along."))

var steamStripes = waves("steam-stripes", "tatewaku", "Lines that swell and narrow against each other like rising steam.", true,
	length("pitch", "Pitch", 0.1, 200, 10, "From one line to the next."),
	length("line", "Line", 0.05, 100, 1.2, "Width of a line across."),
	length("swing", "Swing", 0, 100, 3, "How far a line leaves its middle to each side."),
	length("wave", "Wave", 1, 400, 45, "Length of a wave along."))

func drawWaves(v values, t tile, against bool) ([]mark, error) {
	line, swing := v.nm("line"), v.nm("swing")
	// Lines that run side by side at a slope are nearer than they are across.
	left := (t.w/2 - line) * math.Cos(math.Atan(2*math.Pi*swing/t.h))
	if against {
		left = t.w/2 - line - 2*swing
	}
	if left < 1 {
		return nil, fmt.Errorf("lines of %.3f mm that swing by %.3f mm meet at a pitch of %.3f mm; "+
			"make the pitch larger or line or swing smaller", line/1e6, swing/1e6, t.w/2e6)
	}
	run := values{"every": v["bridged"], "bridge": v["bridge"]}
	from, to, err := slitRun(run, t)
	if err != nil {
		return nil, err
	}
	pieces := make([]mark, 2)
	for i := range pieces {
		begin, sway := from, swing
		if i == 1 {
			begin += t.h / 2
			if against {
				sway = -swing
			}
		}
		pieces[i] = boxed((float64(i)+0.5)*t.w/2, 0, waveSlit(line, sway, t.h, begin, begin+to-from))
	}
	return pieces, nil
}

// wavePieces is how many cubics stand for one wave: with twelve they are off by
// less than 5e-5 of the swing (the error of cubic Hermite pieces, step⁴/384 times
// the greatest fourth derivative: (2π/12)⁴/384 = 2e-4 at the very most).
const wavePieces = 12

// waveSlit returns the slit along x = sway·cos(2πy/wave) from y0 to y1, line wide
// across.
func waveSlit(line, sway, wave, y0, y1 float64) geom.Shape {
	k := 2 * math.Pi / wave
	n := max(2, int(math.Ceil((y1-y0)/wave*wavePieces)))
	step := (y1 - y0) / float64(n)
	x := func(y float64) float64 { return sway * math.Cos(k*y) }
	slope := func(y float64) float64 { return -sway * k * math.Sin(k*y) }
	side := func(off, y, step float64) geom.Segment {
		end := y + step
		return geom.Segment{
			Kind: geom.Cubic,
			C1:   onGrid(off+x(y)+slope(y)*step/3, y+step/3),
			C2:   onGrid(off+x(end)-slope(end)*step/3, end-step/3),
			End:  onGrid(off+x(end), end),
		}
	}
	c := geom.Contour{Start: onGrid(x(y0)+line/2, y0)}
	for i := range n {
		c.Segments = append(c.Segments, side(line/2, y0+float64(i)*step, step))
	}
	c.Segments = append(c.Segments, geom.Segment{End: onGrid(x(y1)-line/2, y1)})
	for i := range n {
		c.Segments = append(c.Segments, side(-line/2, y1-float64(i)*step, -step))
	}
	c.Segments = append(c.Segments, geom.Segment{End: c.Start})
	return geom.Shape{Outline: geom.Outline{c}}
}
