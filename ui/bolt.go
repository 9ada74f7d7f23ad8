package ui

import (
	"fmt"
	"strconv"

	"fyne.io/fyne/v2"

	"tsugime/repeat/check"
	"tsugime/repeat/cloth"
	"tsugime/repeat/document"
	"tsugime/repeat/geom"
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
	long("Waste at the far end", func(b *cloth.Board) *geom.Length { return &b.End })
	s.layingFields()
	s.registerFields()
	s.content = f.content()
	return s
}

func (s *boltStation) name() string             { return stationNames[boltAt] }
func (s *boltStation) bench() fyne.CanvasObject { return s.content }
func (s *boltStation) refresh()                 { s.form.refresh() }
func (s *boltStation) view() string             { return "bolt" }
func (s *boltStation) owns(f check.Finding) bool {
	return f.Domain == check.OnCloth && !ofGarment(f) && f.Code != "joint-step"
}
func (s *boltStation) look(f check.Finding) { s.w.board.Near(s.folds().put(f.At), 0.6) }

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

func (s *boltStation) measures() []measure {
	if !s.w.Ready() {
		return []measure{{"", say("measuring…")}}
	}
	u, r := s.w.unit(), s.w.work.Run
	list := []measure{
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
	return append(list, s.boltMeasures(u)...)
}
