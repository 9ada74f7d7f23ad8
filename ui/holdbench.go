package ui

import (
	"fmt"
	"strconv"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/widget"

	"tsugime/repeat/document"
	"tsugime/repeat/geom"
	"tsugime/repeat/stencil"
)

// A worded is a value of the order and how it is written.
type worded struct{ value, words string }

var (
	wayWords = []worded{{string(stencil.AsDrawn), "as it is drawn"}, {string(stencil.WithTies), "ties"}, {string(stencil.Split), "split in two"}}
	cutWords = []worded{{string(stencil.TiePlaces), "tie places"}, {string(stencil.Whole), "all of it"}}
)

// wordsFor returns the words for a value.
func wordsFor(list []worded, value string) string {
	for _, w := range list {
		if w.value == value {
			return w.words
		}
	}
	return value
}

// valueSaid returns the value for its words in the language of the person.
func valueSaid(list []worded, said string) string {
	for _, w := range list {
		if say(w.words) == said {
			return w.value
		}
	}
	return said
}

// valueOf returns the value for its words.
func valueOf(list []worded, words string) string {
	for _, w := range list {
		if w.words == words {
			return w.value
		}
	}
	return words
}

func allWords(list []worded) []string {
	var all []string
	for _, w := range list {
		all = append(all, w.words)
	}
	return all
}

// holdFields are how the paper is held together.
func (s *stencilStation) holdFields() {
	f := s.form
	f.heading("Hold")
	f.choice("The paper holds", "Change the Way to Hold", allWords(wayWords),
		func(o document.Order) string { return wordsFor(wayWords, string(o.Sheet.Hold.Way)) },
		holding(func(h *stencil.Hold, words string) { h.Way = stencil.HoldWay(valueOf(wayWords, words)) }))
	f.length("Tie width", "Change Tie Width", geom.KaneBu,
		func(o document.Order) geom.Length { return o.Sheet.Hold.TieWidth },
		holding(func(h *stencil.Hold, l geom.Length) { h.TieWidth = l }))
	f.choice("Ties an island", "Change Ties an Island", []string{"1", "2", "3", "4", "5", "6"},
		func(o document.Order) string { return strconv.Itoa(o.Sheet.Hold.PerIsland) },
		holding(func(h *stencil.Hold, v string) { h.PerIsland, _ = strconv.Atoi(v) }))
	s.draws = widget.NewCheck(say("A drag draws a tie (T)"), func(bool) {
		s.letGo()
		s.w.win.SetMainMenu(s.w.mainMenu())
		s.w.repaint()
	})
	f.add(s.draws)
	f.add(container.NewGridWithColumns(2,
		widget.NewButton(say("Propose Ties"), s.w.proposeTies), widget.NewButton(say("Propose a Split"), s.w.proposeSplit)))
	s.told = widget.NewLabel("")
	s.told.Wrapping = fyne.TextWrapWord
	s.told.Hide()
	f.add(s.told)
	f.choice("Second opens", "Change the Second Sheet", allWords(cutWords),
		func(o document.Order) string { return wordsFor(cutWords, string(o.Sheet.Hold.Second.Cut)) },
		holding(func(h *stencil.Hold, words string) { h.Second.Cut = stencil.SecondCut(valueOf(cutWords, words)) }))
	f.length("Its lap", "Change Lap", geom.KaneRin,
		func(o document.Order) geom.Length { return o.Sheet.Hold.Second.Lap },
		holding(func(h *stencil.Hold, l geom.Length) { h.Second.Lap = l }))
	f.words("Click a tie to choose it; drag it or its ends. Arrows nudge it, Delete takes it away.")
	f.length("Chosen tie's width", "Change Tie", geom.KaneBu,
		func(o document.Order) geom.Length {
			if ties := s.ties(); s.tie.chosen >= 0 && s.tie.chosen < len(ties) {
				return ties[s.tie.chosen].Width
			}
			return 0
		}, s.widenTie)
}

// holding makes an edit of the order's hold.
func holding[T any](set func(h *stencil.Hold, to T)) func(o document.Order, to T) (document.Order, error) {
	return func(o document.Order, to T) (document.Order, error) {
		h := o.Sheet.Hold
		set(&h, to)
		return document.SetHold(o, h)
	}
}

// refreshHold tells what could not be held, while that is still so.
func (s *stencilStation) refreshHold() {
	s.inHand() // forgets a tie that is gone
	if s.unheldOf != s.w.history.Now().number {
		s.unheld = nil
	}
	was := s.told.Hidden
	s.told.Hidden = len(s.unheld) == 0
	if !s.told.Hidden {
		s.told.SetText(unheldWords(s.unheld))
	}
	if was != s.told.Hidden {
		s.content.Refresh()
	}
}

// holdMeasures are what holds the paper of the sheet that is shown, first of all
// what is chosen on it.
func (s *stencilStation) holdMeasures() []measure {
	u, sheet, hold := s.w.unit(), s.sheet(), s.w.work.Order.Sheet.Hold
	rows := s.chosenMeasures(sheet)
	rows = append(rows, s.pointMeasures()...)
	if s.seen == theBoth {
		rows = append(rows, s.bothMeasures()...)
	}
	if hold.Way == stencil.AsDrawn {
		return rows
	}
	held, swinging := 0, 0
	for _, p := range sheet.Ties.Islands {
		if len(p.Ties) > 0 {
			held++
		}
		if p.Hinges(hold.PerIsland) {
			swinging++
		}
	}
	rows = append(rows, measure{"ties in the unit", strconv.Itoa(len(sheet.Ties.Ties))})
	if n := len(sheet.Ties.Islands); n > 0 {
		rows = append(rows, measure{"islands tied", say("%d of %d", held, n)})
	}
	if swinging > 0 {
		rows = append(rows, measure{"with too few ties", strconv.Itoa(swinging)})
	}
	if s.w.work.Sheet.Second != nil {
		c := s.w.work.Sheet.Cover
		rows = append(rows,
			measure{"the two leave uncut", fmt.Sprintf("%.4f mm²", c.MissingMM2)},
			measure{"and cut too much", fmt.Sprintf("%.4f mm²", c.ExtraMM2)},
			measure{"the second laps by", u.Format(hold.Second.Lap, 3)})
	}
	return rows
}

// chosenMeasures are those of the tie that is chosen.
func (s *stencilStation) chosenMeasures(sheet stencil.Sheet) []measure {
	i := s.tie.chosen
	if i < 0 || i >= len(sheet.Ties.Ties) {
		return nil
	}
	u, t := s.w.unit(), sheet.Ties.Ties[i]
	ends := "in paper"
	switch {
	case !t.FromPaper && !t.ToPaper:
		ends = "both in the open"
	case !t.FromPaper || !t.ToPaper:
		ends = "one in the open"
	}
	return []measure{
		{"tie", say("%d of %d", i+1, len(sheet.Ties.Ties))},
		{"its width", u.Format(t.Tie.Width, 3)},
		{"its length", u.Format(t.Tie.From.Distance(t.Tie.To), 3)},
		{"crosses", u.Format(t.Crossed, 3)},
		{"takes", fmt.Sprintf("%.3f mm²", t.LostMM2)},
		{"its ends", say(ends)},
	}
}
