package cloth

import (
	"math"

	"tsugime/repeat/geom"
)

// PlaceViews returns where the origins of the views lie in one picture, from its upper
// left corner: in the given order down one column after another, gap apart, so that
// they are drawn as large as a room allows that is shape times as wide as it is high;
// of equally large ones the picture of the least area. A view without pieces takes no
// room.
func PlaceViews(pieces []Piece, views []View, gap geom.Length, shape float64) map[View]geom.Point {
	bounds := make([]geom.Box, len(views))
	for i, v := range views {
		for _, p := range pieces {
			if p.View == v {
				bounds[i] = bounds[i].Union(p.Area)
			}
		}
	}
	var best map[View]geom.Point
	least, smallest := math.Inf(1), math.Inf(1)
	for i := range bounds {
		var tall geom.Length
		for _, b := range bounds[i:] { // a column may be as tall as any run of views
			tall += b.Height()
			places, size := inColumns(views, bounds, tall, gap)
			tall += gap
			room, area := max(size.X.MM()/shape, size.Y.MM()), size.X.MM()*size.Y.MM()
			if room < least || room == least && area < smallest {
				best, least, smallest = places, room, area
			}
		}
	}
	return best
}

// inColumns fills columns with views while they stay as low as tall; a view that is
// taller by itself has a column of its own. It returns the picture's size too.
func inColumns(views []View, bounds []geom.Box, tall, gap geom.Length) (map[View]geom.Point, geom.Point) {
	places := map[View]geom.Point{}
	var at, size geom.Point
	var wide geom.Length // of the column
	for i, b := range bounds {
		if b.Empty() {
			continue
		}
		if at.Y > 0 && at.Y+b.Height() > tall {
			at, wide = geom.Point{X: at.X + wide + gap}, 0
		}
		places[views[i]] = at.Sub(b.Min)
		size = geom.Point{X: max(size.X, at.X+b.Width()), Y: max(size.Y, at.Y+b.Height())}
		wide = max(wide, b.Width())
		at.Y += b.Height() + gap
	}
	return places, size
}
