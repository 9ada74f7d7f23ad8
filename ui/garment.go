package ui

import (
	"slices"
	"strings"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/widget"

	"tsugime/repeat/check"
	"tsugime/repeat/cloth"
	"tsugime/repeat/document"
	"tsugime/repeat/geom"
	"tsugime/ui/board"
)

// A garmentStation is the fourth station: the made-up garment from behind and
// laid open from the front, with the true pattern on every piece, or its panels as
// they lie on the bolt.
type garmentStation struct {
	onlooker
	form    *form
	content fyne.CanvasObject
	shows   *widget.RadioGroup
	onBolt  bool // the panels are shown as they lie on the bolt
	hides   *widget.Check
	chance  *chance
	seams   *seamBench
	panels  *panelBench
	targets *targetBench
	star    int                       // which of the marks that are seen is shown next
	places  map[cloth.View]geom.Point // of the views in the picture
	placed  int                       // the state that they belong to
}

// What the surface can show at this station.
const (
	theMadeUp = "Made up"
	theOnBolt = "Laid on the bolt"
)

func newGarment(w *Window) *garmentStation {
	s := &garmentStation{onlooker: onlooker{w: w}, form: &form{w: w}}
	f := s.form
	f.heading("Show")
	s.shows = widget.NewRadioGroup([]string{say(theMadeUp), say(theOnBolt)}, nil)
	s.shows.Required, s.shows.Selected = true, say(theMadeUp)
	s.shows.OnChanged = func(name string) { s.show(name == say(theOnBolt)) }
	f.add(s.shows)
	s.hides = widget.NewCheck(say("What the seams hide"), func(on bool) { s.showHidden(on) })
	f.add(s.hides)
	s.seams = newSeamBench(s, f)
	s.chance = newChance(w, f)
	s.panels = newPanelBench(s, f)
	newGarmentBench(w, f)
	f.heading("Matching")
	s.wishFields()
	s.targets = newTargetBench(s, f)
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

func (w *Window) garmentStation() *garmentStation { return w.stations[garmentAt].(*garmentStation) }

// dressing reports whether the garment is shown.
func dressing(w *Window) bool { return w.at == garmentAt }

func (s *garmentStation) name() string             { return stationNames[garmentAt] }
func (s *garmentStation) bench() fyne.CanvasObject { return s.content }
func (s *garmentStation) refresh() {
	s.chance.lay()
	s.form.refresh()
}
func (s *garmentStation) owns(f check.Finding) bool { return ofGarment(f) }

func (s *garmentStation) view() string {
	if s.onBolt {
		return "garment on the bolt"
	}
	return "garment"
}

// ofGarment reports whether a finding on the cloth is about the garment.
func ofGarment(f check.Finding) bool {
	return slices.Contains([]string{"bolt-short", "back-centre-phase", "star-seen", "turn-unavoided", "motif-unplaced"}, f.Code) || strings.HasPrefix(f.Code, "garment-") || strings.HasPrefix(f.Code, "seam-")
}

// show shows the garment, or its panels on the bolt.
func (s *garmentStation) show(onBolt bool) {
	if s.onBolt == onBolt {
		return
	}
	s.onBolt = onBolt
	s.panels.drag = nil
	s.shows.SetSelected(say(map[bool]string{false: theMadeUp, true: theOnBolt}[onBolt]))
	if !onBolt {
		s.hides.SetChecked(false)
	}
	s.w.refresh()
}

// showHidden shows on the bolt what the seams hide of every panel, or no longer.
func (s *garmentStation) showHidden(on bool) {
	if s.hides.Checked != on {
		s.hides.SetChecked(on)
		return
	}
	if on {
		s.show(true)
	}
	s.w.repaint()
}

// look shows the place of a finding.
func (s *garmentStation) look(f check.Finding) {
	switch {
	case f.Code == "star-seen":
		s.nextStar()
	case f.Code == "motif-unplaced":
		s.targets.look()
	case f.Code == "bolt-short" || f.Code == "turn-unavoided" || strings.HasPrefix(f.Code, "garment-"):
		s.show(true)
		s.w.board.Whole()
	default:
		s.show(false)
		s.seams.choose(s.seams.at(f.At))
		s.lookAt(s.seams.chosen)
	}
}

// lookAt shows the view that has a seam.
func (s *garmentStation) lookAt(seam string) {
	for _, c := range s.w.work.Dressed.Seams {
		if c.Name != seam {
			continue
		}
		at := c.Lines[0].View
		var all geom.Box
		for _, p := range s.w.work.Dressed.Pieces() {
			if p.View == at {
				all = all.Union(p.Area)
			}
		}
		s.w.board.Frame(all.Moved(s.offset(at)))
	}
}

// nextStar shows the next mark of a star that the garment shows.
func (s *garmentStation) nextStar() {
	seen := cloth.SeenStars(s.w.work.StarPrints())
	if len(seen) == 0 {
		return
	}
	s.show(false)
	m := seen[s.star%len(seen)]
	s.star++
	if p, ok := s.piece(m.Piece); ok {
		s.w.board.Near(s.markedAt(m, p), 3)
	}
}

// showWorst shows the worst joint of the bolt that is laid by chance.
func (s *garmentStation) showWorst() {
	if !s.chance.any {
		s.w.Say(say("No joint is off: give the bolt errors by the slider."))
		return
	}
	s.show(false)
	if p, ok := s.piece(s.chance.worst.Piece); ok {
		s.w.board.Near(s.chance.worst.At.Add(s.offsetOf(p)), 12)
	}
}

func (s *garmentStation) piece(name string) (cloth.Piece, bool) {
	for _, p := range s.w.work.Dressed.Pieces() {
		if p.Name == name {
			return p, true
		}
	}
	return cloth.Piece{}, false
}

// Press takes a panel on the bolt.
func (s *garmentStation) Press(p geom.Point, _ geom.Length, _ bool) bool {
	return s.onBolt && s.w.Ready() && s.panels.take(p)
}

// Drag moves the panel that is taken.
func (s *garmentStation) Drag(by geom.Point) { s.panels.pull(by) }

// Drop lays it where it is let go.
func (s *garmentStation) Drop(by geom.Point) { s.panels.drop(by) }

// Tap chooses the seam or the panel there.
func (s *garmentStation) Tap(p geom.Point, reach geom.Length, _ bool) {
	if s.w.built == 0 {
		return
	}
	switch {
	case s.onBolt:
		s.panels.tap(p)
	case s.targets.places.Checked:
		s.targets.ask(p)
	default:
		s.seams.tap(p, reach)
	}
}

func (s *garmentStation) scene() board.Scene {
	if s.w.built == 0 {
		s.w.board.SetInset(nil)
		return waiting(s.w)
	}
	s.chance.lay()
	if s.onBolt {
		s.w.board.SetInset(nil)
		return s.panels.scene()
	}
	s.w.board.SetInset(s.seams.inset())
	return s.madeUp()
}

func (s *garmentStation) measures() []measure {
	if !s.w.Ready() {
		return []measure{{"", say("measuring…")}}
	}
	d, u := s.w.work.Dressed, s.w.unit()
	marks := s.w.work.StarPrints()
	rows := []measure{
		{"cloth used", geom.MUnit.Format(d.Used, 3)},
		{"cloth there is", geom.MUnit.Format(d.Length, 3)},
		{"extra for matching", u.Format(d.Extra, 1)},
		{"hidden at each edge", u.Format(d.Hidden, 1)},
		{"marks of stars seen", say("%d of %d", len(cloth.SeenStars(marks)), len(marks))},
	}
	if s.chance.scattered() {
		rows = append(rows, measure{"worst joint of this bolt", s.chance.worstWords()})
		if s.chance.any {
			rows = append(rows, measure{"where", s.chance.worst.Piece})
		}
	}
	rows = append(append(rows, s.seams.goals.measures()...), measure{"", ""}, measure{"Seam: pattern off", say("along, across")})
	for _, seam := range d.Seams {
		sign := "≠ "
		if seam.Matched {
			sign = "= "
		}
		rows = append(rows, measure{say(seam.Name), sign + u.Number(seam.PhaseAlong, 2) + ",  " + u.Format(seam.PhaseAcross, 2)})
	}
	return rows
}
