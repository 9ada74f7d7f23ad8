package board

import (
	"math"

	"tsugime/export/raster"
	"tsugime/repeat/geom"
)

// Where holes can't be told apart, a lay that is turned a little is shown as strips
// that are only moved, and every lay falls on a part of a pixel: raster.PaintAll then
// paints all of them by one table. No hole is shown further from its place than
// the two parts of a pixel below together.
const (
	snapPx  = 0.25 // lays begin on whole multiples: off by an eighth at most
	slackPx = 0.25 // how far a turn may move what a strip shows
	mostAt  = 4096 // strips of one lay; one that is turned more is painted as it is
)

// calm returns the lays as strips on parts of pixels where the holes are so fine.
func calm(lays []raster.Lay, v raster.View, w, h int, pitch geom.Length) []raster.Lay {
	if pitch <= 0 || pitch.MM()*v.PxPerMM >= finePx {
		return lays
	}
	seen := geom.BoxOf(geom.PtMM(v.X, v.Y), geom.PtMM(v.X+float64(w)/v.PxPerMM, v.Y+float64(h)/v.PxPerMM))
	calmed := make([]raster.Lay, 0, len(lays))
	for _, l := range lays {
		shown := seen
		if !l.Clip.Empty() {
			if shown = l.Clip.Intersect(seen); shown.Empty() || shown.Width() == 0 || shown.Height() == 0 {
				continue
			}
		}
		if l.TurnDeg == 0 && l.Grown == 0 {
			l.Move = snapped(l.Move, v)
			calmed = append(calmed, l)
			continue
		}
		calmed = append(calmed, strips(l, shown, v)...)
	}
	return calmed
}

// snapped returns the move that begins on a part of a pixel.
func snapped(move geom.Point, v raster.View) geom.Point {
	at := func(mm, origin float64) geom.Length {
		px := math.Round((mm-origin)*v.PxPerMM/snapPx) * snapPx
		return geom.MM(px/v.PxPerMM + origin)
	}
	return geom.Point{X: at(move.X.MM(), v.X), Y: at(move.Y.MM(), v.Y)}
}

// strips cuts what is shown of a lay into pieces, each as large as a turn and a
// growth don't move its rim by more than the slack, and moves each as they move its
// middle. The edges between them fall on pixels.
func strips(l raster.Lay, shown geom.Box, v raster.View) []raster.Lay {
	sin, cos := math.Sincos(l.TurnDeg * math.Pi / 180)
	grown := 1 + l.Grown
	// The way by which a place of the plain lay is moved changes so much for a
	// millimetre along, and across.
	skew := math.Abs(grown*sin) + math.Abs(grown*cos-1)
	side := math.Inf(1)
	if skew > 0 {
		side = math.Max(math.Floor(2*slackPx/skew), 1) // pixels
	}
	x0, x1 := (shown.Min.X.MM()-v.X)*v.PxPerMM, (shown.Max.X.MM()-v.X)*v.PxPerMM
	y0, y1 := (shown.Min.Y.MM()-v.Y)*v.PxPerMM, (shown.Max.Y.MM()-v.Y)*v.PxPerMM
	across, along := math.Ceil((x1-x0)/side), math.Ceil((y1-y0)/side)
	if across*along > mostAt {
		return []raster.Lay{l}
	}
	edge := func(from, to, i, n float64) float64 {
		switch i {
		case 0:
			return from
		case n:
			return to
		}
		return math.Round(from + (to-from)*i/n)
	}
	var all []raster.Lay
	for j := range int(along) {
		for i := range int(across) {
			clip := geom.BoxOf(
				geom.PtMM(edge(x0, x1, float64(i), across)/v.PxPerMM+v.X, edge(y0, y1, float64(j), along)/v.PxPerMM+v.Y),
				geom.PtMM(edge(x0, x1, float64(i)+1, across)/v.PxPerMM+v.X, edge(y0, y1, float64(j)+1, along)/v.PxPerMM+v.Y))
			mid := clip.Centre()
			// The place of the ground that lies in the middle, as the plain lay has it.
			x, y := mid.X.MM()-l.Move.X.MM(), mid.Y.MM()-l.Move.Y.MM()
			gx, gy := (cos*x+sin*y)/grown, (cos*y-sin*x)/grown
			all = append(all, raster.Lay{
				Move: snapped(l.Move.Add(geom.PtMM(x-gx, y-gy)), v), Turned: l.Turned, Clip: clip,
			})
		}
	}
	return all
}
