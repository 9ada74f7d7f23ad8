package cloth

import (
	"math/rand/v2"
	"strings"
	"testing"

	"tsugime/repeat/geom"
)

// faces writes the faces of one laying's placements.
func faces(r Run, l Stretch) string {
	var b strings.Builder
	for n := l.First; n < l.First+l.Count; n++ {
		b.WriteString(strings.ToUpper(string(r.Face(l, n)[:1])))
	}
	return b.String()
}

// Three cloths of 900 mm end to end on a board of 1.5 m, worked by hand: four
// placements of 200 mm each from 50 mm on; the fold of 100 mm lies at 1450 to
// 1550 mm, on the second cloth at 550 to 650, which reaches into its placements
// at 450 and 650 only by 450–650. The third begins at 1800, on face B.
func TestSeveralClothsLieEndToEnd(t *testing.T) {
	bolt := Bolt{Width: 370 * geom.Millimetre, Length: 900 * geom.Millimetre}
	board := Board{Length: 1500 * geom.Millimetre, Turn: 100 * geom.Millimetre, Start: 50 * geom.Millimetre, Cloths: 3}
	run := mustLay(t, bolt, board, design, geom.MM(200))
	want := []string{"AAAA", "AATB", "BBBB"}
	if len(run.Stretches) != len(want) {
		t.Fatalf("%d layings", len(run.Stretches))
	}
	for i, l := range run.Stretches {
		if got := faces(run, l); got != want[i] || l.Go != 0 || l.Cloth != i || l.Overhang != 0 {
			t.Errorf("cloth %d: faces %s, want %s: %+v", i, got, want[i], l)
		}
	}
	if turns := run.Stretches[1].Turns; len(turns) != 1 || turns[0] != (Span{550 * geom.Millimetre, 650 * geom.Millimetre}) {
		t.Errorf("the fold lies at %v of the second cloth", turns)
	}
	if len(run.Turns) != 0 || run.Count() != 12 {
		t.Errorf("turns %v on the first cloth, %d placements in all", run.Turns, run.Count())
	}
	board.Layings = 2 // two cloths, then one
	run = mustLay(t, bolt, board, design, geom.MM(200))
	if l := run.Stretches[2]; l.Go != 1 || l.On != 0 || faces(run, l) != "AAAA" {
		t.Errorf("the third cloth of two layings: %+v, faces %s", l, faces(run, l))
	}
}

// A bolt of 12.6 m on one face of 6.4 m: 69 placements of 6 kane sun; in two
// layings 35 and 34, each from the board's start, and none in the turn.
func TestABoltIsLaidInSeveralGoes(t *testing.T) {
	board := coatBoard
	board.Faces, board.Layings = 1, 2
	run := mustLay(t, coatBolt, board, design, sixSun)
	if len(run.Placements) != 69 || len(run.Stretches) != 2 {
		t.Fatalf("%d placements, %d layings", len(run.Placements), len(run.Stretches))
	}
	first, second := run.Stretches[0], run.Stretches[1]
	if first.Count != 35 || second.Count != 34 || second.Go != 1 || second.On+run.Placements[35].Y != board.Start {
		t.Errorf("%+v and %+v", first, second)
	}
	// 35 steps are 6364 mm: with the start they reach the board's last 20 mm.
	if got := faces(run, first); got != strings.Repeat("A", 34)+"T" {
		t.Errorf("first laying: %s", got)
	}
	if got := faces(run, second); got != strings.Repeat("A", 34) {
		t.Errorf("second laying: %s", got)
	}
	if l, ok := run.Of(0, 35); !ok || l.Go != 1 {
		t.Errorf("placement 35 is in %+v, %v", l, ok)
	}
	if _, ok := run.Of(1, 0); ok {
		t.Error("there is a second cloth")
	}
}

// By chance: every placement of every cloth is in one stretch, stretches don't
// reach beyond their cover, and marks name each placement.
func TestStretchesShareOutTheCloth(t *testing.T) {
	random := rand.New(rand.NewPCG(4, 4))
	for range 400 {
		bolt := Bolt{Width: 370 * geom.Millimetre, Length: geom.Length(1+random.IntN(14_000)) * geom.Millimetre}
		board := Board{
			Length: geom.Length(1000+random.IntN(6000)) * geom.Millimetre, Turn: geom.Length(random.IntN(100)) * geom.Millimetre,
			Cloths: random.IntN(4), Layings: random.IntN(4), Faces: random.IntN(3),
		}
		board.Start = geom.Length(random.IntN(int(bolt.Length)))
		board.End = geom.Length(random.IntN(int(bolt.Length)))
		run := mustLay(t, bolt, board, Register{}, geom.Length(100+random.IntN(300))*geom.Millimetre)
		for cloth := range max(board.Cloths, 1) {
			for n := range run.Placements {
				l, ok := run.Of(cloth, n)
				if !ok || run.placed(n) < l.Cover.From || run.placed(n+1) > l.Cover.To || l.On+run.placed(n) < 0 {
					t.Fatalf("placement %d of cloth %d: %v %+v in %+v", n, cloth, ok, l, run)
				}
			}
		}
		counts := 0
		for _, m := range Marks(run) {
			if m.At < 0 || m.At > board.Length || m.Face == Turn {
				t.Fatalf("mark %+v", m)
			}
			if !m.End {
				counts++
			}
		}
		want := len(run.Placements) * max(board.Cloths, 1)
		if run.Partial.Printed > 0 {
			want += max(board.Cloths, 1)
		}
		if counts != want {
			t.Fatalf("%d marks of %d placements: %+v", counts, want, run)
		}
		if rest := run.Partial; rest.Printed+rest.Masked != 0 && (rest.Printed+rest.Masked != run.Step || rest.Y+rest.Printed != bolt.Length-board.End) {
			t.Fatalf("partial %+v of %+v", rest, run)
		}
	}
}

// A board of 1 m with 100 mm steps from 30 mm on, 1.5 m of cloth: worked by hand.
func TestMarksAreMeasuredFromTheBoardsNearEnd(t *testing.T) {
	bolt := Bolt{Width: 370 * geom.Millimetre, Length: 1500 * geom.Millimetre}
	run := mustLay(t, bolt, Board{Length: geom.Metre, Start: 30 * geom.Millimetre, End: 20 * geom.Millimetre}, design, geom.MM(100))
	marks := Marks(run)
	if len(marks) != 16 {
		t.Fatalf("%d marks", len(marks))
	}
	for _, c := range []struct {
		i    int
		want Mark
	}{
		{0, Mark{N: 0, Face: FaceA, At: geom.MM(30), Y: geom.MM(30)}},
		{9, Mark{N: 9, Face: FaceA, At: geom.MM(930), Y: geom.MM(930), Turn: true}},
		{10, Mark{N: 10, Face: FaceB, At: geom.MM(970), Y: geom.MM(1030)}},
		{14, Mark{N: 14, Face: FaceB, At: geom.MM(570), Y: geom.MM(1430), Part: true}},
		{15, Mark{N: 14, Face: FaceB, At: geom.MM(520), Y: geom.MM(1480), End: true}},
	} {
		if marks[c.i] != c.want {
			t.Errorf("mark %d: %+v, want %+v", c.i, marks[c.i], c.want)
		}
	}
}

// The statutory piece of old is 9 kujira sun 5 bu wide, 36 cm, and 2 jo 6 to 8
// shaku or 3 jo long, the latter 11.4 m; pieces of 3 jo were sold at 3 jo 1 shaku;
// a launderer's list of widths in kujira sun: 9.3 is 35.5 cm, 9.5 36, 10 38, 10.5
// 39.8, 11.5 43.7 (figures of the trade, each rounded there).
func TestStatutoryBoltsAreTheirOwnSize(t *testing.T) {
	for text, cm := range map[string]float64{
		"9.3 kujira sun": 35.5, "9.5 kujira sun": 36, "1 kujira shaku": 38, "10.5 kujira sun": 39.8, "11.5 kujira sun": 43.7, "30 kujira shaku": 1140,
	} {
		l, err := geom.ParseLength(text, geom.MMUnit)
		if err != nil {
			t.Fatal(err)
		}
		// Rounded there by up to 3 mm, lengths by 5 cm.
		slack := .3
		if cm > 100 {
			slack = 5
		}
		within(t, text, l.MM()/10, cm, slack)
		width, length := l, 12*geom.Metre
		if cm > 100 {
			width, length = 360*geom.Millimetre, l
		}
		if err := (Bolt{Width: width, Length: length}).Check(); err != nil {
			t.Error(err)
		}
	}
}
