package ui

import (
	"tsugime/export/raster"
	"tsugime/repeat/cloth"
	"tsugime/repeat/geom"
	"tsugime/ui/board"
)

// A lie is how the finished cloth lies in a picture: as it is or turned half
// round, then moved.
type lie struct {
	turned bool
	move   geom.Point
}

// put returns where a place of the cloth lies in the picture.
func (s lie) put(at geom.Point) geom.Point {
	if s.turned {
		return s.move.Sub(at)
	}
	return s.move.Add(at)
}

// back returns which place of the cloth lies at p of the picture.
func (s lie) back(p geom.Point) geom.Point {
	if s.turned {
		return s.move.Sub(p)
	}
	return p.Sub(s.move)
}

func (s lie) box(b geom.Box) geom.Box { return geom.BoxOf(s.put(b.Min), s.put(b.Max)) }

// backBox returns which box of the cloth lies in a box of the picture.
func (s lie) backBox(b geom.Box) geom.Box { return geom.BoxOf(s.back(b.Min), s.back(b.Max)) }

// lieOf is how the cloth lies on a piece whose view's origin is at off.
func lieOf(p cloth.Piece, off geom.Point) lie {
	return lie{p.Turned, p.FromCloth(geom.Point{}).Add(off)}
}

// A printing collects how the grounds are laid in a picture.
type printing struct {
	of            *chance
	plain, images []raster.Lay
}

// onto lays what is printed on the cloth into a box of the picture, placement by
// placement.
func (g *printing) onto(on lie, clip geom.Box) {
	window := on.backBox(clip)
	prints := g.of.prints
	reach := g.of.w.grounds.reach
	window = window.Intersect(geom.BoxOf(geom.Point{X: window.Min.X, Y: window.Min.Y}, geom.Point{X: window.Max.X, Y: g.of.end()}))
	if window.Empty() || reach.Empty() {
		return
	}
	clip = on.box(window)
	for _, p := range prints {
		away := geom.Length(p.Off.By.Norm()) + p.Step/50 // by a turn and a growth
		if !window.Grown(away).Meets(p.Reach(reach).Moved(geom.Point{Y: p.Y})) {
			continue
		}
		lay := raster.Lay{Move: on.put(p.Move(g.of.pivot)), Turned: on.turned, TurnDeg: p.Off.TurnDeg, Grown: p.Grown, Clip: clip}
		if p.Mirrored {
			g.images = append(g.images, lay)
		} else {
			g.plain = append(g.plain, lay)
		}
	}
}

// grounds returns all that was laid.
func (g *printing) grounds() []board.Laid {
	all := g.of.w.grounds
	var laid []board.Laid
	for _, l := range []board.Laid{{Ground: all.print, Lays: g.plain}, {Ground: all.image, Lays: g.images}} {
		if len(l.Lays) > 0 && l.Ground != nil {
			laid = append(laid, l)
		}
	}
	return laid
}

// markTurn hatches where cloth from the turn of the board lies in a box of the
// picture.
func (g *printing) markTurn(sc *board.Scene, on lie, box geom.Box) {
	run := g.of.w.work.Run
	for _, t := range run.Turns {
		from, to := run.Bolt.Finished(geom.Point{Y: t.From}).Y, run.Bolt.Finished(geom.Point{Y: t.To}).Y
		window := on.backBox(box)
		lost := on.box(geom.BoxOf(geom.Point{X: window.Min.X, Y: from}, geom.Point{X: window.Max.X, Y: to})).Intersect(box)
		if !lost.Empty() && lost.Height() > 0 {
			sc.Marks = append(sc.Marks,
				board.Mark{Shape: board.Hatch, Points: []geom.Point{lost.Min, lost.Max}, Colour: worn().onCloth},
				board.Mark{Shape: board.Loop, Points: corners(lost), Colour: worn().onCloth, Width: 1.5})
		}
	}
}
