package document_test

import (
	"slices"
	"testing"

	"tsugime/repeat/cloth"
	"tsugime/repeat/document"
	"tsugime/repeat/geom"
)

// Each edit of the layout sets one thing, leaves the order before as it was, and is
// read back from the file.
func TestPanelsAreOrderedTurnedAndGivenGaps(t *testing.T) {
	o := document.Defaults()
	before := written(t, o)
	next, err := document.LayPanels(o, []string{"left body", "right body"})
	if err == nil {
		next, err = document.LeaveGap(next, "left body", geom.MM(12.5))
	}
	one := next
	if err == nil {
		next, err = document.TurnPanel(next, "right body", true)
	}
	if err != nil {
		t.Fatal(err)
	}
	l := read(t, written(t, next)).Garment.Layout
	if !slices.Equal(l.Order, []string{"left body", "right body"}) || l.Gaps["left body"] != geom.MM(12.5) || !l.Turned["right body"] {
		t.Errorf("read back as %+v", l)
	}
	if len(one.Garment.Layout.Turned) != 0 || written(t, o) != before {
		t.Error("an edit has changed an order before it")
	}
	bare, err := document.LayAsFormHasIt(next)
	if err != nil || written(t, bare) != before {
		t.Errorf("as the form has it: %v", err)
	}
}

func TestASeamsWishStandsByItsImportance(t *testing.T) {
	o := document.Defaults()
	seams := []string{cloth.BackCentre, "collar", "left side"}
	o.Garment.MatchBackCentre = false
	for _, w := range []cloth.SeamWish{
		{Seam: "left side", Goal: cloth.Staggered, Share: 0.5}, {Seam: "collar", Goal: cloth.RunOn}, {Seam: cloth.BackCentre, Goal: cloth.RunOn},
	} {
		next, err := document.WishSeam(o, w, seams)
		if err != nil {
			t.Fatal(err)
		}
		o = next
		if got, ok := o.Wished(w.Seam); !ok || got != w {
			t.Errorf("wished %+v, got %+v", w, got)
		}
	}
	if s := o.Garment.Wishes.Seams; len(s) != 2 || s[0].Seam != "collar" || s[1].Seam != "left side" || !o.Garment.MatchBackCentre {
		t.Errorf("the wishes are %+v, the main seam matched %v", s, o.Garment.MatchBackCentre)
	}
	for _, seam := range seams {
		next, err := document.WishSeam(o, cloth.SeamWish{Seam: seam}, seams)
		if err != nil {
			t.Fatal(err)
		}
		if _, ok := next.Wished(seam); ok {
			t.Errorf("%s is still wished for", seam)
		}
		if len(o.Garment.Wishes.Seams) != 2 {
			t.Fatal("an edit has changed the order before it")
		}
	}
}
