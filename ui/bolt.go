package ui

import (
	"fmt"
	"strconv"

	"fyne.io/fyne/v2"

	"tsugime/export/raster"
	"tsugime/repeat/check"
	"tsugime/repeat/cloth"
	"tsugime/repeat/document"
	"tsugime/repeat/geom"
	"tsugime/ui/board"
)

// A boltStation is the third station: the whole bolt as it lies on the board, cut
// in the picture into lengths side by side.
type boltStation struct {
	onlooker
	form    *form
	content fyne.CanvasObject
}

func newBolt(w *Window) *boltStation {
	s := &boltStation{onlooker: onlooker{w: w}, form: &form{w: w}}
	s.place = s.along
	f := s.form
	s.boltFields()
	f.heading("Board")
	long := func(name string, pick func(b *cloth.Board) *geom.Length) {
		f.length(name, "Change Board", geom.KujiraShaku,
			func(o document.Order) geom.Length { return *pick(&o.Board) },
			func(o document.Order, l geom.Length) (document.Order, error) {
				b := o.Board
				*pick(&b) = l
				return document.SetBoard(o, b)
			})
	}
	long("Length of the board", func(b *cloth.Board) *geom.Length { return &b.Length })
	long("Lost at its turn", func(b *cloth.Board) *geom.Length { return &b.Turn })
	long("First placement at", func(b *cloth.Board) *geom.Length { return &b.Start })
	s.registerFields()
	s.content = f.content()
	return s
}

func (s *boltStation) boltFields() {
	f := s.form
	f.heading("Bolt")
	size := func(name string, family geom.Unit, pick func(b *cloth.Bolt) *geom.Length) {
		f.length(name, "Change Bolt", family,
			func(o document.Order) geom.Length { return *pick(&o.Cloth.Bolt) },
			func(o document.Order, l geom.Length) (document.Order, error) {
				c := o.Cloth
				*pick(&c.Bolt) = l
				return document.SetCloth(o, c)
			})
	}
	size("Width", geom.KujiraSun, func(b *cloth.Bolt) *geom.Length { return &b.Width })
	size("Length", geom.KujiraShaku, func(b *cloth.Bolt) *geom.Length { return &b.Length })
	changes := func(name string, pick func(b *cloth.Bolt) *float64) {
		f.number(name, "Change Cloth", "%",
			func(o document.Order) float64 { return 100 * *pick(&o.Cloth.Bolt) },
			func(o document.Order, v float64) (document.Order, error) {
				c := o.Cloth
				*pick(&c.Bolt) = v / 100
				return document.SetCloth(o, c)
			})
	}
	changes("Changes across", func(b *cloth.Bolt) *float64 { return &b.ChangeAcross })
	changes("Changes along", func(b *cloth.Bolt) *float64 { return &b.ChangeAlong })
	s.dyeField()
}

// A dye is a colour that a bolt is often asked for in; the names are our own
// plain words.
type dye struct {
	name   string
	colour document.Colour
}

var dyes = []dye{
	{"deep indigo", document.Colour{R: 0x1f, G: 0x2c, B: 0x4d}},
	{"indigo", document.Colour{R: 0x2f, G: 0x4f, B: 0x7f}},
	{"pine green", document.Colour{R: 0x2f, G: 0x4a, B: 0x3a}},
	{"madder", document.Colour{R: 0x8c, G: 0x33, B: 0x2b}},
	{"plum", document.Colour{R: 0x5a, G: 0x36, B: 0x58}},
	{"tea brown", document.Colour{R: 0x6a, G: 0x4a, B: 0x2f}},
	{"charcoal", document.Colour{R: 0x35, G: 0x34, B: 0x38}},
}

func (s *boltStation) dyeField() {
	const own = "its own"
	var names []string
	for _, d := range dyes {
		names = append(names, d.name)
	}
	s.form.choice("Dye", "Change Dye", append(names, own),
		func(o document.Order) string {
			for _, d := range dyes {
				if d.colour == o.Cloth.Dye {
					return d.name
				}
			}
			return own
		},
		func(o document.Order, v string) (document.Order, error) {
			c := o.Cloth
			for _, d := range dyes {
				if d.name == v {
					c.Dye = d.colour
				}
			}
			return document.SetCloth(o, c)
		})
}

func (s *boltStation) registerFields() {
	f := s.form
	f.heading("Register")
	var ways []string
	for _, way := range cloth.Ways() {
		ways = append(ways, string(way))
	}
	f.choice("Laid by", "Change Register", ways,
		func(o document.Order) string { return string(o.Register.Way) },
		func(o document.Order, v string) (document.Order, error) {
			r := o.Register
			r.Way = cloth.Way(v)
			return document.SetRegister(o, r)
		})
	off := func(name string, pick func(r *document.Register) *geom.Length) {
		f.length(name, "Change Register", geom.KaneRin,
			func(o document.Order) geom.Length { return *pick(&o.Register) },
			func(o document.Order, l geom.Length) (document.Order, error) {
				r := o.Register
				*pick(&r) = l
				return document.SetRegister(o, r)
			})
	}
	off("A star is off by", func(r *document.Register) *geom.Length { return &r.StarError })
	off("A step is long by", func(r *document.Register) *geom.Length { return &r.PitchError })
}

func (s *boltStation) name() string             { return stationNames[boltAt] }
func (s *boltStation) bench() fyne.CanvasObject { return s.content }
func (s *boltStation) refresh()                 { s.form.refresh() }
func (s *boltStation) view() string             { return "bolt" }
func (s *boltStation) owns(f check.Finding) bool {
	return f.Domain == check.OnCloth && !ofGarment(f) && f.Code != "joint-step"
}
func (s *boltStation) look(f check.Finding) { s.w.board.Near(s.folds().put(f.At), 0.6) }

// A folded is a bolt cut into lengths that lie side by side, each a whole number
// of placements; gap is between two of them.
type folded struct {
	width, length, each, gap geom.Length
	columns                  int
}

// folds chooses the lengths: about as high as all of them are wide.
func (s *boltStation) folds() folded {
	r := s.w.work.Run
	f := folded{width: r.Bolt.Width, length: r.Bolt.Length, gap: r.Bolt.Width / 2}
	best := -1.0
	for n := 1; n <= 24; n++ {
		per := (len(r.Placements) + n) / n
		each := max(geom.Length(per)*r.Step, 1)
		across := float64(geom.Length(n) * (f.width + f.gap))
		// The larger the scale at which all of it fits a surface of 4 to 3, the better.
		if scale := min(4/across, 3/float64(each)); scale > best && geom.Length(n)*each >= f.length-r.Step {
			best, f.each, f.columns = scale, each, n
		}
	}
	if f.columns == 0 {
		f.each, f.columns = f.length, 1
	}
	return f
}

// put returns where a place of the bolt lies in the picture.
func (f folded) put(p geom.Point) geom.Point {
	n := min(max(p.Y/f.each, 0), geom.Length(f.columns-1))
	return geom.Point{X: p.X + n*(f.width+f.gap), Y: p.Y - n*f.each}
}

// column returns the part of the picture that holds length n of the bolt, and how
// the bolt is moved to lie in it.
func (f folded) column(n int) (box geom.Box, move geom.Point) {
	from := geom.Length(n) * f.each
	to := min(from+f.each, f.length)
	if n == f.columns-1 {
		to = f.length
	}
	x := geom.Length(n) * (f.width + f.gap)
	return geom.BoxOf(geom.Point{X: x}, geom.Point{X: x + f.width, Y: to - from}), geom.Point{X: x, Y: -from}
}

// back returns which place of the bolt lies at p of the picture.
func (f folded) back(p geom.Point) geom.Point {
	n := min(max(p.X/(f.width+f.gap), 0), geom.Length(f.columns-1))
	return geom.Point{X: p.X - n*(f.width+f.gap), Y: p.Y + n*f.each}
}

func (s *boltStation) along(p geom.Point) string {
	if s.w.built == 0 {
		return ""
	}
	at, r := s.folds().back(p), s.w.work.Run
	text := say("along the bolt") + " " + geom.MUnit.Format(at.Y, 3)
	if n := int((at.Y - r.Board.Start) / max(r.Step, 1)); at.Y >= r.Board.Start && n < len(r.Placements) {
		text = say("placement") + " " + strconv.Itoa(n) + ", " + say("face") + " " + string(r.Placements[n].Face) + "    " + text
	}
	return text
}

func (s *boltStation) scene() board.Scene {
	if s.w.built == 0 {
		return waiting(s.w)
	}
	w, f := s.w.work, s.folds()
	sc := board.Scene{Desk: table, Plain: true, Pitch: s.w.pitch()}
	start, end := w.Run.Board.Start, w.Run.Board.Start+geom.Length(len(w.Run.Placements))*w.Run.Step
	laid := board.Laid{Ground: s.w.grounds.board}
	for n := range f.columns {
		box, move := f.column(n)
		sc.Extent = sc.Extent.Union(box)
		sc.Areas = append(sc.Areas, board.Area{Box: box, Shut: dyed(s.w.Order().Cloth.Dye), Open: undyed})
		printed := geom.BoxOf(geom.Point{X: box.Min.X, Y: start + move.Y}, geom.Point{X: box.Max.X, Y: end + move.Y}).Intersect(box)
		if !printed.Empty() {
			laid.Lays = append(laid.Lays, raster.Lay{Move: move.Add(geom.Point{Y: start}), Clip: printed})
		}
		s.markLength(&sc, box, move)
	}
	sc.Grounds = []board.Laid{laid}
	sc.Extent = geom.BoxOf(
		sc.Extent.Min.Sub(geom.Point{X: f.gap, Y: f.gap * 2 / 3}),
		sc.Extent.Max.Add(geom.Point{X: f.gap / 3, Y: f.gap / 3}))
	return sc
}

// markLength shows the placements, the faces and the turn of one length.
func (s *boltStation) markLength(sc *board.Scene, box geom.Box, move geom.Point) {
	r := s.w.work.Run
	from := box.Min.Y - move.Y
	sc.Labels = append(sc.Labels, board.Label{
		At: geom.Point{X: box.Centre().X, Y: box.Min.Y}, Align: board.Above, Colour: ink, Bold: true, Size: 12,
		Text: "from " + geom.MUnit.Format(from, 2),
	})
	for _, p := range r.Placements {
		y := p.Y + move.Y
		if y < box.Min.Y || y >= box.Max.Y {
			continue
		}
		line := []geom.Point{{X: box.Min.X - r.Bolt.Width/12, Y: y}, {X: box.Min.X, Y: y}}
		joint := []geom.Point{{X: box.Min.X, Y: y}, {X: box.Max.X, Y: y}}
		sc.Marks = append(sc.Marks,
			board.Mark{Shape: board.Line, Points: line, Colour: faint},
			board.Mark{Shape: board.Dashes, Points: joint, Colour: quiet})
		face := string(p.Face)
		if p.Face == cloth.Turn {
			face = say("turn")
		}
		sc.Labels = append(sc.Labels, board.Label{
			At: geom.Point{X: box.Min.X - r.Bolt.Width/20, Y: y + r.Step/2}, Align: board.Before,
			Text: strconv.Itoa(p.N) + " " + face, Colour: faint, Size: 11, Room: r.Bolt.Width / 2,
		})
	}
	for _, t := range r.Turns {
		lost := geom.BoxOf(geom.Point{X: box.Min.X, Y: t.From + move.Y}, geom.Point{X: box.Max.X, Y: t.To + move.Y}).Intersect(box)
		if !lost.Empty() && lost.Height() > 0 {
			sc.Marks = append(sc.Marks,
				board.Mark{Shape: board.Hatch, Points: []geom.Point{lost.Min, lost.Max}, Colour: onCloth},
				board.Mark{Shape: board.Loop, Points: corners(lost), Colour: onCloth, Width: 1.5})
		}
	}
}

func (s *boltStation) measures() []measure {
	if !s.w.Ready() {
		return []measure{{"", say("measuring…")}}
	}
	u, r := s.w.unit(), s.w.work.Run
	return []measure{
		{"placements", strconv.Itoa(len(r.Placements))},
		{"on face A", strconv.Itoa(r.OnFace(cloth.FaceA))},
		{"on face B", strconv.Itoa(r.OnFace(cloth.FaceB))},
		{"reaching the turn", strconv.Itoa(r.OnFace(cloth.Turn))},
		{"step on the board", u.Format(r.Step, 3)},
		{"cloth left over", u.Format(r.Remainder, 1)},
		{"laid by", string(r.Drift.Way)},
		{"walks across by the end", fmt.Sprintf("± %s", u.Format(r.Drift.EndX, 2))},
		{"walks along by the end", fmt.Sprintf("± %s", u.Format(r.Drift.EndY, 2))},
		{"worst joint expected", u.Format(r.Drift.WorstJoint, 2)},
	}
}
