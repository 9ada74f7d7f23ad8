package ui

import (
	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/widget"

	"tsugime/repeat/check"
	"tsugime/repeat/geom"
)

// A boltStation is the third station: the whole bolt as it lies on the board, cut
// in the picture into lengths side by side, or the board with what lies on it.
type boltStation struct {
	onlooker
	form    *form
	shows   *widget.Select
	byBoard bool // the board is shown, not the bolt in lengths
	content fyne.CanvasObject
	chance  laidBolts      // the bolts that were laid last by chance
	found   *check.Finding // whose place was asked for
	foundOf int            // the number of the work that it belongs to
}

func newBolt(w *Window) *boltStation {
	s := &boltStation{onlooker: onlooker{w: w}, form: &form{w: w}}
	s.place = s.along
	f := s.form
	f.heading("Bolt")
	s.shows = newSelect([]string{say(asLengths), say(asBoard)}, nil)
	s.shows.SetSelected(say(asLengths))
	s.shows.OnChanged = s.show
	f.row("Shown as", s.shows)
	clothFields(f)
	boardFields(f)
	registerFields(f)
	f.folded("Limits", limitFields)
	s.content = f.content()
	return s
}

// What can be shown of the bolt.
const (
	asLengths = "lengths"
	asBoard   = "the board"
)

func (s *boltStation) show(as string) {
	s.byBoard = as == say(asBoard)
	s.w.refresh()
}

// showNext shows the other of the two.
func (s *boltStation) showNext() {
	if s.byBoard {
		s.shows.SetSelected(say(asLengths))
		return
	}
	s.shows.SetSelected(say(asBoard))
}

// laid is the bolt as it is shown. A folded cloth lies on no board.
func (s *boltStation) laid() laid {
	r := s.w.work.Run
	if s.byBoard && !r.Bolt.Folded {
		return onBoard(r)
	}
	return inLengths(r)
}

func (s *boltStation) name() string             { return stationNames[boltAt] }
func (s *boltStation) bench() fyne.CanvasObject { return s.content }
func (s *boltStation) refresh()                 { s.form.refresh() }
func (s *boltStation) owns(f check.Finding) bool {
	return f.Domain == check.OnCloth && !ofGarment(f) && f.Code != "joint-step"
}

func (s *boltStation) view() string {
	if s.byBoard {
		return "board"
	}
	return "bolt"
}

// look rings the place of a finding and shows it.
func (s *boltStation) look(f check.Finding) {
	s.found, s.foundOf = &f, s.w.built
	s.w.repaint()
	s.w.board.Near(s.placeOf(s.laid()), 0.6)
}

// along tells what lies under the pointer.
func (s *boltStation) along(p geom.Point) string {
	if s.w.built == 0 {
		return ""
	}
	r := s.w.work.Run
	at, part, ok := s.laid().back(p)
	if !ok {
		return ""
	}
	text := say("%s along the bolt", geom.MUnit.Format(at.Y, 3))
	st := r.Stretches[part.stretch]
	n := int((at.Y - r.Board.Start) / r.Step)
	if at.Y >= r.Board.Start && n >= st.First && n < st.First+st.Count {
		text = say("placement %d, face %s", n+1, say(string(r.Face(st, n)))) + "    " + text
	}
	if r.Board.Cloths > 1 {
		text = say("cloth %d", st.Cloth+1) + "    " + text
	}
	return text
}
