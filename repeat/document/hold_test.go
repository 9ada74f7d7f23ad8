package document_test

import (
	"math/rand/v2"
	"reflect"
	"strings"
	"testing"

	"tsugime/repeat/document"
	"tsugime/repeat/geom"
	"tsugime/repeat/pattern"
	"tsugime/repeat/stencil"
)

// A tie is drawn on its motif: seen from the motif's own frame it stays where it
// was, whatever is done to the motif.
func TestTiesGoWithTheirMotif(t *testing.T) {
	random := rand.New(rand.NewPCG(3, 9))
	for range 300 {
		o := full(t)
		was, _ := o.Motif(1)
		tie := o.Sheet.Hold.Ties[0]
		from, to := was.Placing().Inverse().Apply(tie.From), was.Placing().Inverse().Apply(tie.To)
		for range 4 {
			var err error
			switch random.IntN(3) {
			case 0:
				o, err = document.MoveMotif(o, 1, geom.Point{X: geom.Length(random.IntN(5_000_000)), Y: -geom.Length(random.IntN(5_000_000))})
			case 1:
				o, err = document.TurnMotif(o, 1, float64(random.IntN(3600))/10)
			case 2:
				o, err = document.MirrorMotif(o, 1)
			}
			if err != nil {
				t.Fatal(err)
			}
		}
		is, _ := o.Motif(1)
		for i, end := range []struct{ own, at geom.Point }{{from, o.Sheet.Hold.Ties[0].From}, {to, o.Sheet.Hold.Ties[0].To}} {
			if want := is.Placing().Apply(end.own); want.Distance(end.at) > 8 {
				t.Fatalf("end %d of the tie is at %v, with its motif it is at %v", i, end.at, want)
			}
		}
		if other := o.Sheet.Hold.Ties[1]; other != full(t).Sheet.Hold.Ties[1] {
			t.Fatalf("the other motif's tie became %v", other)
		}
	}
}

func TestTiesAreDroppedWithTheirMotif(t *testing.T) {
	o, err := document.DeleteMotifs(full(t), 1)
	if err != nil {
		t.Fatal(err)
	}
	h := o.Sheet.Hold
	if len(h.Ties) != 1 || h.Ties[0].Motif != 3 || len(h.Second.Ties) != 0 || len(h.Second.Motifs) != 1 {
		t.Errorf("ties of a motif that is gone are left: %+v", h)
	}
	if o, err = document.DeleteMotifs(o, 3); err != nil || len(o.Sheet.Hold.Second.Motifs) != 0 {
		t.Errorf("the second sheet still cuts a motif that is gone: %v, %v", o.Sheet.Hold.Second.Motifs, err)
	}
}

func TestTheFirstTieHoldsWhatWasAsDrawn(t *testing.T) {
	o, err := document.SetHold(full(t), document.Defaults().Sheet.Hold)
	if err != nil {
		t.Fatal(err)
	}
	if o, err = document.AddTies(o, false, tieAcross(1)); err != nil || o.Sheet.Hold.Way != stencil.WithTies {
		t.Errorf("the way to hold is %q, %v", o.Sheet.Hold.Way, err)
	}
}

func TestTiesOfAFitMoveWithTheirMotif(t *testing.T) {
	o, err := document.SetLattice(full(t), pattern.HalfDrop(geom.MM(21.3), geom.MM(17.7)))
	if err != nil {
		t.Fatal(err)
	}
	fits, err := o.Fits(document.FitWish{Step: o.Sheet.Step})
	if err != nil {
		t.Fatal(err)
	}
	after, err := document.ApplyFit(o, fits[0])
	if err != nil {
		t.Fatal(err)
	}
	was, _ := o.Motif(1)
	is, _ := after.Motif(1)
	want := o.Sheet.Hold.Ties[0].From.Add(is.At.Sub(was.At))
	if got := after.Sheet.Hold.Ties[0].From; got != want || was.At == is.At {
		t.Errorf("the tie starts at %v, want %v; the motif went from %v to %v", got, want, was.At, is.At)
	}
}

func TestBadTiesAreRefusedByName(t *testing.T) {
	for _, row := range []struct{ old, new, want string }{
		{`{"motif": 1, "from_mm": [6, 8]`, `{"motif": 2, "from_mm": [6, 8]`, "sheet.hold.ties[0].motif: there is no motif 2"},
		{`"from_mm": [6, 8], `, ``, `sheet.hold.ties[0]: "from_mm" is missing; add it`},
		{`"to_mm": [12, 8.5]`, `"to_mm": [6, 8]`, "sheet.hold.ties[0].to_mm: the tie has no length"},
		{`"motifs": [3]`, `"motifs": [3, 3]`, "sheet.hold.second.motifs[1]: motif 3 is named twice"},
		{`"motifs": [3]`, `"motifs": [2]`, "sheet.hold.second.motifs[0]: there is no motif 2"},
		{`"way": "split"`, `"way": "glue"`, `sheet.hold.way: there is no "glue"; choose from as-drawn, ties, split`},
		{`"cut": "whole"`, `"cut": "all"`, `sheet.hold.second.cut: there is no "all"`},
		{`"share_pct": 62.5`, `"share_pct": 4`, "sheet.joint.share_pct: 4 % is out of bounds; give 5 to 100 %"},
		{"[100, -2],\n        [365.5, 1]", "[100, -2], [365.5, 5000]", "sheet.joint.line_mm[2]: "},
	} {
		_, err := document.Read(strings.NewReader(edited(t, row.old, row.new)))
		if err == nil || !strings.Contains(err.Error(), row.want) {
			t.Errorf("%s → %s:\ngot  %v\nwant …%s…", row.old, row.new, err, row.want)
		}
	}
}

func TestKeysOfOthersOnATieAreKept(t *testing.T) {
	o := read(t, edited(t, `"width_mm": 0.9}`, `"width_mm": 0.9, "of": "others"}`))
	if !strings.Contains(written(t, o), `"width_mm": 0.9, "of": "others"}`) {
		t.Error("the key on the tie is lost")
	}
	if h := full(t).Sheet.Hold; !reflect.DeepEqual(o.Sheet.Hold, h) {
		t.Errorf("the hold became %+v", o.Sheet.Hold)
	}
}
