package ui

import (
	"strings"

	"fyne.io/fyne/v2"

	"tsugime/export/raster"
	"tsugime/repeat/check"
	"tsugime/repeat/cloth"
	"tsugime/repeat/document"
	"tsugime/repeat/geom"
	"tsugime/ui/board"
)

// A garmentStation is the fourth station: the made-up garment from behind and
// laid open from the front, with the true pattern on every piece.
type garmentStation struct {
	onlooker
	form    *form
	content fyne.CanvasObject
}

func newGarment(w *Window) *garmentStation {
	s := &garmentStation{onlooker: onlooker{w: w}, form: &form{w: w}}
	f := s.form
	f.heading("Body")
	f.length("Height of the wearer", "Change Height", geom.KujiraShaku,
		func(o document.Order) geom.Length { return o.Garment.Body.Height },
		func(o document.Order, l geom.Length) (document.Order, error) {
			b := o.Garment.Body
			b.Height = l
			return document.SetBody(o, b)
		})
	f.heading("Matching")
	f.tick("Match the back centre", "Match the Back Centre",
		func(o document.Order) bool { return o.Garment.MatchBackCentre },
		func(o document.Order, v bool) (document.Order, error) {
			g := o.Garment
			g.MatchBackCentre = v
			return document.SetGarment(o, g)
		})
	f.words("The back panels are laid so that the pattern runs on over the back seam. It costs cloth, less than one step.")
	f.length("Matched within", "Change Limits", geom.KujiraRin,
		func(o document.Order) geom.Length { return o.Limits.SeamPhase },
		func(o document.Order, l geom.Length) (document.Order, error) {
			limits := o.Limits
			limits.SeamPhase = l
			return document.SetLimits(o, limits, o.Sheet.WebLimit)
		})
	s.content = f.content()
	return s
}

func (s *garmentStation) name() string              { return stationNames[garmentAt] }
func (s *garmentStation) bench() fyne.CanvasObject  { return s.content }
func (s *garmentStation) refresh()                  { s.form.refresh() }
func (s *garmentStation) view() string              { return "garment" }
func (s *garmentStation) owns(f check.Finding) bool { return ofGarment(f) }

// ofGarment reports whether a finding on the cloth is about the garment.
func ofGarment(f check.Finding) bool {
	return f.Code == "bolt-short" || f.Code == "back-centre-phase"
}

// look shows the back, where the seam is that is matched.
func (s *garmentStation) look(check.Finding) {
	var back geom.Box
	for _, p := range s.w.work.Dressed.Pieces() {
		if p.View == cloth.BackView && strings.Contains(p.Name, "back") && !strings.Contains(p.Name, "sleeve") {
			back = back.Union(p.Area)
		}
	}
	s.w.board.Frame(back.Moved(s.offset(cloth.BackView)))
}

// views stand side by side in this order.
var views = []cloth.View{cloth.BackView, cloth.FrontView, cloth.CollarView}

// viewGap is between two views, and pieceGap between the over-collar and the
// collar, which it covers when it is worn.
const (
	viewGap  = 220 * geom.Millimetre
	pieceGap = 60 * geom.Millimetre
)

// offset returns where a view's origin lies in the picture.
func (s *garmentStation) offset(view cloth.View) geom.Point {
	var x geom.Length
	for _, v := range views {
		var all geom.Box
		for _, p := range s.w.work.Dressed.Pieces() {
			if p.View == v {
				all = all.Union(p.Area)
			}
		}
		if all.Empty() {
			continue
		}
		if v == view {
			return geom.Point{X: x - all.Min.X, Y: -all.Min.Y}
		}
		x += all.Width() + viewGap
	}
	return geom.Point{X: x}
}

// offsetOf returns where a piece's view lies in the picture: the over-collar beside the
// collar, so that both are seen.
func (s *garmentStation) offsetOf(p cloth.Piece) geom.Point {
	at := s.offset(p.View)
	if p.Name == "over-collar" {
		at.X += p.Area.Width() + pieceGap
	}
	return at
}

func (s *garmentStation) scene() board.Scene {
	if s.w.built == 0 {
		return waiting(s.w)
	}
	sc := board.Scene{Desk: table, Plain: true, Pitch: s.w.pitch()}
	laid := board.Laid{Ground: s.w.grounds.cloth}
	for _, p := range s.w.work.Dressed.Pieces() {
		s.dress(&sc, &laid, p)
	}
	sc.Grounds = []board.Laid{laid}
	s.markSeams(&sc)
	headings := map[cloth.View]string{cloth.BackView: "Back", cloth.FrontView: "Front, laid open", cloth.CollarView: "Collar"}
	for _, v := range views {
		var all geom.Box
		for _, p := range s.w.work.Dressed.Pieces() {
			if p.View == v {
				all = all.Union(p.Area.Moved(s.offsetOf(p)))
			}
		}
		if !all.Empty() {
			sc.Labels = append(sc.Labels, board.Label{
				At: geom.Point{X: all.Centre().X, Y: all.Min.Y - 40*geom.Millimetre}, Align: board.Above, Text: say(headings[v]), Colour: ink, Bold: true, Size: 14,
			})
		}
	}
	sc.Extent = geom.BoxOf(sc.Extent.Min.Sub(geom.PtMM(60, 160)), sc.Extent.Max.Add(geom.PtMM(60, 60)))
	return sc
}

// dress shows one piece: its cloth, the pattern that the placements leave on it,
// and the joint lines.
func (s *garmentStation) dress(sc *board.Scene, laid *board.Laid, p cloth.Piece) {
	w, off := s.w.work, s.offsetOf(p)
	box := p.Area.Moved(off)
	sc.Extent = sc.Extent.Union(box)
	sc.Areas = append(sc.Areas, board.Area{Box: box, Shut: dyed(s.w.Order().Cloth.Dye), Open: undyed})
	step := w.Order.Sheet.Step
	start := w.Run.Board.Start.Times(1 + w.Run.Bolt.ChangeAlong)
	end := start + step*geom.Length(len(w.Run.Placements))
	window := p.Window()
	printed := geom.BoxOf(geom.Point{X: window.Min.X, Y: start}, geom.Point{X: window.Max.X, Y: end}).Intersect(window)
	if !printed.Empty() {
		// A place of the ground lies start further along the cloth.
		lay := raster.Lay{Move: off.Add(p.FromCloth(geom.Point{Y: start})), Turned: p.Turned}
		lay.Clip = geom.BoxOf(p.FromCloth(printed.Min), p.FromCloth(printed.Max)).Moved(off)
		laid.Lays = append(laid.Lays, lay)
	}
	for n := max((window.Min.Y-start)/step, 0); n <= geom.Length(len(w.Run.Placements)); n++ {
		y := start + n*step
		if y > window.Max.Y {
			break
		}
		if y <= window.Min.Y {
			continue
		}
		a, b := p.FromCloth(geom.Point{X: window.Min.X, Y: y}).Add(off), p.FromCloth(geom.Point{X: window.Max.X, Y: y}).Add(off)
		sc.Marks = append(sc.Marks, board.Mark{Shape: board.Dashes, Points: []geom.Point{a, b}, Colour: quiet})
	}
	sc.Marks = append(sc.Marks, board.Mark{Shape: board.Loop, Points: corners(box), Colour: undyed, Width: 1.5})
	sc.Labels = append(sc.Labels, board.Label{
		At: box.Centre(), Align: board.Middle, Text: say(p.Name), Colour: ink, Shield: shield, Size: 11, Room: box.Width(),
	})
}

// seamPlaces says beside which piece a seam lies, on which of its edges, and how
// far down the seam its phase is written, so that neighbours stand clear.
var seamPlaces = map[string]struct {
	piece string
	right bool
	down  float64
}{
	cloth.BackCentre: {"left back below the tuck", true, 0.3},
	"upper overlap":  {"left overlap", true, 0.82},
	"under overlap":  {"right front below the tuck", true, 0.66},
	"left side":      {"left back below the tuck", false, 0.6},
	"right side":     {"right back below the tuck", true, 0.6},
	"left sleeve":    {"left sleeve back", true, 0.7},
	"right sleeve":   {"right back above the tuck", true, 0.7},
	"collar":         {"over-collar", false, 0.5},
}

// markSeams writes the phase of the pattern at each seam.
func (s *garmentStation) markSeams(sc *board.Scene) {
	pieces := map[string]cloth.Piece{}
	for _, p := range s.w.work.Dressed.Pieces() {
		pieces[p.Name] = p
	}
	for _, seam := range s.w.work.Dressed.Seams {
		place, known := seamPlaces[seam.Name]
		p, there := pieces[place.piece]
		if !known || !there {
			continue
		}
		box := p.Area.Moved(s.offsetOf(p))
		x := box.Min.X
		if place.right {
			x = box.Max.X
		}
		line := []geom.Point{{X: x, Y: box.Min.Y}, {X: x, Y: box.Max.Y}}
		c, text := onCloth, s.phase(seam)
		if !seam.Matched {
			text = "≠ " + text
		} else {
			text = "= " + text
		}
		sc.Marks = append(sc.Marks, board.Mark{Shape: board.Line, Points: line, Colour: c, Width: 2.5})
		sc.Labels = append(sc.Labels, board.Label{
			At: geom.Point{X: x, Y: box.Min.Y + box.Height().Times(place.down)}, Align: board.Middle,
			Text: text, Colour: ink, Shield: shield, Size: 11, Bold: seam.Priority,
		})
	}
}

func (s *garmentStation) phase(seam cloth.Seam) string {
	u := s.w.unit()
	return u.Number(seam.PhaseAlong, 2) + ", " + u.Number(seam.PhaseAcross, 2)
}

func (s *garmentStation) measures() []measure {
	if !s.w.Ready() {
		return []measure{{"", say("measuring…")}}
	}
	d := s.w.work.Dressed
	rows := []measure{
		{"cloth used", geom.MUnit.Format(d.Used, 3)},
		{"cloth there is", geom.MUnit.Format(d.Length, 3)},
		{"extra for matching", s.w.unit().Format(d.Extra, 1)},
		{"hidden at each edge", s.w.unit().Format(d.Hidden, 1)},
		{"", ""},
		{"Seam: pattern off", say("along, across")},
	}
	for _, seam := range d.Seams {
		sign := "≠ "
		if seam.Matched {
			sign = "= "
		}
		rows = append(rows, measure{seam.Name, sign + s.w.unit().Number(seam.PhaseAlong, 2) + ",  " + s.w.unit().Format(seam.PhaseAcross, 2)})
	}
	return rows
}
