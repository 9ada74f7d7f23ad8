package report

import (
	"fmt"

	"tsugime/export"
	"tsugime/repeat"
	"tsugime/repeat/cloth"
	"tsugime/repeat/geom"
)

// The board as the card shows it: a bar for each face, as wide as the page.
const (
	faceBar = 7 * geom.Millimetre
	faceGap = 6 * geom.Millimetre
)

// boardSketch draws both faces of the board with a stroke at every placement, the
// turn hatched, and says which placements fall on which. Cloth that is not laid on
// a board has no sketch.
func boardSketch(fl *flow, w repeat.Work, f figures) {
	run := w.Run
	marks := cloth.Marks(run)
	if len(marks) == 0 {
		return
	}
	fl.figure(2*faceBar+faceGap+geom.MM(5), func(l *leaf, room geom.Box) {
		left := room.Min.X + geom.MM(8)
		k := float64(room.Max.X-left) / float64(run.Board.Length)
		for i, face := range []cloth.Face{cloth.FaceA, cloth.FaceB} {
			top := room.Min.Y + geom.MM(4) + geom.Length(i)*(faceBar+faceGap)
			bar := geom.BoxOf(geom.Point{X: left, Y: top}, geom.Point{X: room.Max.X, Y: top + faceBar})
			l.text(words, strongStyle, geom.Point{X: room.Min.X, Y: bar.Centre().Y + geom.MM(1.2)}, export.Start, string(face))
			for _, m := range marks {
				if m.Face == face && m.Stretch == 0 {
					x := left + m.At.Times(k)
					l.line(hairline, geom.Point{X: x, Y: bar.Min.Y}, geom.Point{X: x, Y: bar.Max.Y})
				}
			}
			l.turnHatch(geom.BoxOf(geom.Point{X: left + (run.Board.Length - run.Board.Turn/2).Times(k), Y: bar.Min.Y}, bar.Max))
			l.frame(rule, bar)
			l.text(captions, captionStyle, geom.Point{X: left, Y: bar.Min.Y - geom.MM(1.4)}, export.Start, faceText(run, face, f))
		}
	})
}

// turnHatch fills the turn, at least a millimetre wide.
func (l *leaf) turnHatch(b geom.Box) {
	b.Min.X = min(b.Min.X, b.Max.X-geom.Millimetre)
	l.area(accentArea, corners(b)...)
}

// faceText says which placements of the first laying fall on a face.
func faceText(run cloth.Run, face cloth.Face, f figures) string {
	first, last, n := 0, 0, 0
	var turned []int
	for _, p := range run.Placements {
		if p.Stretch > 0 {
			continue
		}
		switch p.Face {
		case face:
			if n == 0 {
				first = p.N + 1
			}
			last, n = p.N+1, n+1
		case cloth.Turn:
			turned = append(turned, p.N+1)
		}
	}
	if n == 0 {
		return f.say("face %s: none", string(face))
	}
	text := f.say("face %s: placements %d to %d", string(face), first, last)
	if len(turned) > 0 && face == cloth.FaceA {
		return f.say("%s; placement %s reaches into the turn", text, numbered(turned, f))
	}
	return text
}

// numbered writes numbers one after the other.
func numbered(numbers []int, f figures) string {
	var all []string
	for _, n := range numbers {
		all = append(all, fmt.Sprint(n))
	}
	return f.lang.Join(all)
}
