package ui

import (
	"tsugime/repeat/cloth"
	"tsugime/repeat/geom"
)

// A laid is how the bolt is shown: cut into columns that stand side by side, each
// a length of it, or a face of the board with what lies there.
type laid struct {
	width, gap geom.Length // of a column, and between two
	columns    []column
}

// A column is one of them. On box the cloth lies, as wide as it is.
type column struct {
	title  string
	box    geom.Box
	wood   bool // there is a board under it
	pieces []piece
}

// A piece is a stretch of cloth in a column.
type piece struct {
	stretch  int // its number in Run.Stretches
	from, to geom.Length
	move     geom.Point // from the cloth to the picture
	back     bool       // it is seen from behind
}

// box is where a piece lies in the picture.
func (p piece) box(width geom.Length) geom.Box {
	return geom.BoxOf(p.move.Add(geom.Point{Y: p.from}), p.move.Add(geom.Point{X: width, Y: p.to}))
}

// inLengths lays the first cloth of a run in equal lengths, each a whole number of
// placements: as many as make it largest on a surface of 4 to 3.
func inLengths(r cloth.Run) laid {
	l := laid{width: r.Bolt.Width, gap: r.Bolt.Width}
	each, columns := r.Bolt.Length, 1
	best := -1.0
	for n := 1; n <= 24; n++ {
		per := (len(r.Placements) + n) / n
		long := max(geom.Length(per)*r.Step, 1)
		across := float64(geom.Length(n) * (l.width + l.gap))
		if scale := min(4/across, 3/float64(long)); scale > best && geom.Length(n)*long >= r.Bolt.Length-r.Step {
			best, each, columns = scale, long, n
		}
	}
	for n := range columns {
		from := geom.Length(n) * each
		to := min(from+each, r.Bolt.Length)
		if n == columns-1 {
			to = r.Bolt.Length
		}
		c := l.next(to - from)
		c.title = say("from") + " " + geom.MUnit.Format(from, 2)
		for i, s := range r.Stretches {
			if a, b := max(s.Cover.From, from), min(s.Cover.To, to); s.Cloth == 0 && a < b {
				c.pieces = append(c.pieces, piece{stretch: i, from: a, to: b, move: geom.Point{X: c.box.Min.X, Y: -from}})
			}
		}
		l.columns = append(l.columns, c)
	}
	if r.Bolt.Sides == cloth.BothSides {
		l.addBack()
	}
	return l
}

// next is an empty column beside the last one.
func (l laid) next(length geom.Length) column {
	x := geom.Length(len(l.columns)) * (l.width + l.gap)
	return column{box: geom.BoxOf(geom.Point{X: x}, geom.Point{X: x + l.width, Y: length})}
}

// addBack puts the back of the first column beside the last.
func (l *laid) addBack() {
	first := l.columns[0]
	c := l.next(first.box.Height())
	c.title = say("the back, turned over")
	for _, p := range first.pieces {
		p.back, p.move = true, p.move.Add(geom.Point{X: c.box.Min.X - first.box.Min.X})
		c.pieces = append(c.pieces, p)
	}
	l.columns = append(l.columns, c)
}

// onBoard lays all cloths of a run as they lie on the board: a column for each face
// at each time that it is laid, and for cloth that has no board under it.
func onBoard(r cloth.Run) laid {
	l := laid{width: r.Bolt.Width, gap: r.Bolt.Width * 5 / 2}
	goes := 0
	for _, s := range r.Stretches {
		goes = max(goes, s.Go+1)
	}
	faces := max(r.Board.Faces, 0)
	if faces == 0 {
		faces = 2
	}
	for g := range goes {
		end := geom.Length(0)
		for _, s := range r.Stretches {
			if s.Go == g {
				end = max(end, s.On+s.Cover.To)
			}
		}
		for k := 0; k == 0 || geom.Length(k)*r.Board.Length < end; k++ {
			from := geom.Length(k) * r.Board.Length
			length := r.Board.Length
			if k >= faces {
				length = min(length, end-from)
			}
			c := l.next(length)
			c.wood, c.title = k < faces, faceTitle(k, faces, g, goes)
			for i, s := range r.Stretches {
				a, b := max(s.On+s.Cover.From, from)-s.On, min(s.On+s.Cover.To, from+length)-s.On
				if s.Go == g && a < b {
					c.pieces = append(c.pieces, piece{stretch: i, from: a, to: b, move: geom.Point{X: c.box.Min.X, Y: s.On - from}})
				}
			}
			l.columns = append(l.columns, c)
		}
	}
	return l
}

// faceTitle names the k-th length of the board at one of the times it is laid.
func faceTitle(k, faces, g, goes int) string {
	title := say("no board under it")
	switch {
	case k >= faces:
	case k == 0:
		title = say("face A, to the turn")
	default:
		title = say("face B, back from the turn")
	}
	if goes > 1 && k < faces {
		return say("laying %d, face %s", g+1, []cloth.Face{cloth.FaceA, cloth.FaceB}[k%2])
	}
	return title
}

// put returns where a place of the first cloth lies in the picture.
func (l laid) put(r cloth.Run, p geom.Point) geom.Point {
	best := p
	for _, c := range l.columns {
		for _, part := range c.pieces {
			if r.Stretches[part.stretch].Cloth == 0 && !part.back && p.Y >= part.from {
				best = p.Add(part.move)
				if p.Y < part.to {
					return best
				}
			}
		}
	}
	return best
}

// back returns which place of which stretch lies at p of the picture, or beside it.
func (l laid) back(p geom.Point) (at geom.Point, part piece, ok bool) {
	for _, c := range l.columns {
		if p.X < c.box.Min.X-l.gap/2 || p.X >= c.box.Max.X+l.gap/2 {
			continue
		}
		for _, part := range c.pieces {
			at := p.Sub(part.move)
			if at.Y >= part.from && at.Y < part.to {
				return at, part, true
			}
		}
	}
	return at, part, false
}
