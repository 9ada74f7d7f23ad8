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
	newGarmentBench(w, f)
	f.heading("Matching")
	f.tick("Match the main seam", "Match the Main Seam",
		func(o document.Order) bool { return o.Garment.MatchBackCentre },
		func(o document.Order, v bool) (document.Order, error) {
			g := o.Garment
			g.MatchBackCentre = v
			return document.SetGarment(o, g)
		})
	f.words("The later of its two panels is laid so that the pattern runs on over it: at the back centre of what is worn. It costs cloth, less than one step.")
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
	return f.Code == "bolt-short" || f.Code == "back-centre-phase" || strings.HasPrefix(f.Code, "garment-")
}

// look shows the view with the main seam, the back of what is worn.
func (s *garmentStation) look(check.Finding) {
	views := s.w.work.Dressed.Views()
	if len(views) == 0 {
		return
	}
	at := views[0].Name
	for _, seam := range s.w.work.Dressed.Seams {
		if seam.Name == s.w.work.Dressed.Form.Matched {
			at = seam.Lines[0].View
		}
	}
	var all geom.Box
	for _, p := range s.w.work.Dressed.Pieces() {
		if p.View == at {
			all = all.Union(p.Area)
		}
	}
	s.w.board.Frame(all.Moved(s.offset(at)))
}

// viewGap is between two views, and pieceGap between the over-collar and the
// collar, which it covers when it is worn.
const (
	viewGap  = 220 * geom.Millimetre
	pieceGap = 60 * geom.Millimetre
)

// offset returns where a view's origin lies in the picture.
func (s *garmentStation) offset(view cloth.View) geom.Point {
	var x geom.Length
	for _, v := range s.w.work.Dressed.Views() {
		var all geom.Box
		for _, p := range s.w.work.Dressed.Pieces() {
			if p.View == v.Name {
				all = all.Union(p.Area)
			}
		}
		if v.Name == view {
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
	for _, v := range s.w.work.Dressed.Views() {
		var all geom.Box
		for _, p := range s.w.work.Dressed.Pieces() {
			if p.View == v.Name {
				all = all.Union(p.Area.Moved(s.offsetOf(p)))
			}
		}
		if !all.Empty() {
			sc.Labels = append(sc.Labels, board.Label{
				At: geom.Point{X: all.Centre().X, Y: all.Min.Y - 40*geom.Millimetre}, Align: board.Above, Text: say(v.Title), Colour: ink, Bold: true, Size: 14,
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

// phasePlaces are how far down its line each seam's phase is written, one after
// another, so that neighbours stand clear.
var phasePlaces = []float64{0.3, 0.82, 0.5, 0.66, 0.6, 0.6, 0.7, 0.7}

// markSeams draws the seams where they are seen, and writes the phase of the
// pattern at each.
func (s *garmentStation) markSeams(sc *board.Scene) {
	for i, seam := range s.w.work.Dressed.Seams {
		line := seam.Lines[0]
		off := s.offset(line.View)
		from, to := line.From.Add(off), line.To.Add(off)
		text := "≠ " + s.phase(seam)
		if seam.Matched {
			text = "= " + s.phase(seam)
		}
		down := phasePlaces[i%len(phasePlaces)]
		sc.Marks = append(sc.Marks, board.Mark{Shape: board.Line, Points: []geom.Point{from, to}, Colour: onCloth, Width: 2.5})
		sc.Labels = append(sc.Labels, board.Label{
			At:    geom.Point{X: from.X + (to.X - from.X).Times(down), Y: from.Y + (to.Y - from.Y).Times(down)},
			Align: board.Middle, Text: text, Colour: ink, Shield: shield, Size: 11, Bold: seam.Priority == 1,
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
