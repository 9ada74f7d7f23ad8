package report

import (
	"cmp"
	"fmt"
	"slices"

	"tsugime/repeat"
	"tsugime/repeat/cloth"
	"tsugime/repeat/geom"
)

// A scale is what one laying of the board needs on its edge: the marks of both
// faces by how far they are from the board's near end.
type scale struct {
	laying, of int // from 1
	length     geom.Length
	marks      []cloth.Mark
	panels     []panelEnd
	turn       span // the stretch at the far end that can't be printed well; none where from is to
}

// A panelEnd is where panels of the garment begin.
type panelEnd struct {
	face cloth.Face
	at   geom.Length
	name string
}

// scales returns one scale for each time that the board is laid; none for poured
// dye.
func scales(w repeat.Work, f figures) []scale {
	run := w.Run
	times := 0
	for _, l := range run.Stretches {
		times = max(times, l.Go+1)
	}
	all := make([]scale, times)
	for _, m := range cloth.Marks(run) {
		s := &all[run.Stretches[m.Stretch].Go]
		s.marks = append(s.marks, m)
		s.length = max(s.length, m.At)
	}
	all = slices.DeleteFunc(all, func(s scale) bool { return len(s.marks) == 0 })
	for i := range all {
		s := &all[i]
		s.laying, s.of = i+1, len(all)
		if turns := run.Board.Length - run.Board.Turn/2; s.length > turns || slices.ContainsFunc(s.marks, func(m cloth.Mark) bool { return m.Turn }) {
			s.length, s.turn = run.Board.Length, span{turns, run.Board.Length}
		}
		slices.SortStableFunc(s.marks, func(a, b cloth.Mark) int { return cmp.Compare(a.At, b.At) })
	}
	for _, l := range run.Stretches {
		if l.Go < len(all) {
			all[l.Go].panels = append(all[l.Go].panels, panelEnds(w, l, f)...)
		}
	}
	return all
}

// panelEnds returns where the panels begin that are cut from a stretch, those
// that begin together under one name; the garment is cut from the first cloth.
func panelEnds(w repeat.Work, l cloth.Stretch, f figures) []panelEnd {
	if l.Cloth > 0 {
		return nil
	}
	var ends []panelEnd
	for _, p := range w.Dressed.Panels {
		y := p.Y.Times(1 / (1 + w.Run.Bolt.ChangeAlong))
		if y < l.Cover.From || y >= l.Cover.To {
			continue
		}
		face, at := w.Run.OnBoard(l, y)
		name := f.lang.Retell(p.Name)
		if n := len(ends) - 1; n >= 0 && ends[n].face == face && ends[n].at == at {
			ends[n].name += " / " + name
			continue
		}
		ends = append(ends, panelEnd{face, at, name})
	}
	return ends
}

// markName is what stands at a mark: its number from 1, before it that of its
// cloth where there are more.
func markName(m cloth.Mark, run cloth.Run, f figures) string {
	name := fmt.Sprint(m.N + 1)
	switch {
	case m.End:
		name = f.say("end")
	case m.Part:
		name = f.say("%s, in part", name)
	}
	if run.Board.Cloths > 1 {
		return fmt.Sprintf("%d · %s", m.Cloth+1, name)
	}
	return name
}
