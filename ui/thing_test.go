package ui

import (
	"slices"
	"strings"
	"testing"
	"time"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/driver/desktop"
	"fyne.io/fyne/v2/test"

	"tsugime/repeat/check"
	"tsugime/repeat/cloth"
	"tsugime/repeat/document"
	"tsugime/repeat/geom"
	"tsugime/repeat/pattern"
	"tsugime/repeat/stencil"
	"tsugime/ui/session"
)

// hoverAt moves the pointer to a place of the scene.
func hoverAt(w *Window, p geom.Point) {
	at := w.board.At(p)
	w.board.MouseMoved(&desktop.MouseEvent{PointEvent: fyne.PointEvent{Position: at, AbsolutePosition: at}})
}

// goThrough goes by keys through all things of the station and fails where one is not
// shown, not named, or not found under the pointer; it returns how many there are of
// each kind.
func goThrough(t *testing.T, w *Window) map[thingKind]int {
	t.Helper()
	counts := map[thingKind]int{}
	w.letGo()
	keys := map[thingKey]bool{}
	for i := range len(w.things()) {
		w.typed(fyne.KeyF6, 0)
		all := w.things()
		want := all[i]
		if keys[want.key] {
			t.Fatalf("two things have the key %+v", want.key)
		}
		keys[want.key] = true
		counts[want.key.kind]++
		got, ok := w.pointed()
		if !ok || got.key != want.key {
			t.Fatalf("step %d points at %q, want %q", i, got.words, want.words)
		}
		if !strings.Contains(w.status.Text, want.words) || want.words == "" {
			t.Errorf("the line below says %q of %q", w.status.Text, want.words)
		}
		if seen := w.board.Seen(); !seen.Holds(want.anchor()) {
			t.Errorf("%q is out of sight", want.words)
		}
		hoverAt(w, want.anchor())
		under, ok := w.under(want.anchor(), w.reach())
		if !ok || under.rank() > want.rank() {
			t.Errorf("where %q is the pointer finds %q", want.words, under.words)
		}
		if !strings.Contains(w.pointer.Text, under.words) {
			t.Errorf("over %q stands %q", under.words, w.pointer.Text)
		}
	}
	first := w.things()
	w.typed(fyne.KeyF6, 0)
	if got, _ := w.pointed(); len(first) > 0 && got.key != first[0].key {
		t.Errorf("after the last thing comes %q", got.words)
	}
	w.typed(fyne.KeyF6, fyne.KeyModifierShift)
	if got, _ := w.pointed(); len(first) > 0 && got.key != first[len(first)-1].key {
		t.Errorf("before the first thing comes %q", got.words)
	}
	return counts
}

func wantKinds(t *testing.T, got map[thingKind]int, kinds ...thingKind) {
	t.Helper()
	for _, k := range kinds {
		if got[k] == 0 {
			t.Errorf("no thing of kind %d was met: %v", k, got)
		}
	}
}

// open lays an order on the bench.
func open(t *testing.T, o document.Order) *Window {
	t.Helper()
	a := test.NewTempApp(t)
	a.Preferences().SetString(languageKey, "en")
	a.Preferences().SetBool(stepsKey, true)
	w := New(a, o, "", session.In(t.TempDir(), time.Hour))
	w.win.Resize(fyne.NewSize(1440, 900))
	settle(t, w)
	return w
}

func TestEveryThingOfTheDraftIsPointedAt(t *testing.T) {
	w, _, _ := atStencil(t)
	w.GoTo(draftAt)
	w.Edit("Place Motif", func(o document.Order) (document.Order, error) {
		return document.AddMotif(o, pattern.Motif{Shape: geom.DiscShape(geom.Point{}, geom.MM(0.4)), At: geom.PtMM(7.3, 4)})
	})
	settle(t, w)
	wantKinds(t, goThrough(t, w), aMotif, aWeb, anIsland)
	// A copy far from the cell is named as the copy that it is, paper by its way to a hole.
	o := w.Order()
	at := o.Unit.Motifs[1].At.Add(o.Unit.Lattice.At(3, 2))
	if got, ok := w.under(at, w.reach()); !ok || got.key.n != 2 {
		t.Errorf("under a copy of motif 2 lies %q", got.words)
	}
	if got, ok := w.under(geom.PtMM(3, 4), w.reach()); !ok || got.key.kind != anIsland {
		t.Errorf("within the ring lies %q", got.words)
	}
	if got, _ := w.under(o.Unit.Motifs[1].At.Add(geom.PtMM(0.2+0.15, 0.35)), geom.MM(0.01)); got.key.kind != somePaper || !strings.Contains(got.words, "to the nearest cut-out") {
		t.Errorf("beside the dot lies %q", got.words)
	}
}

func TestEveryThingOfTheStencilIsPointedAt(t *testing.T) {
	w, s, _ := byHandAt(t)
	w.Edit("Add Tie", func(o document.Order) (document.Order, error) {
		return document.AddTies(o, false, stencil.Tie{Motif: 1, From: geom.PtMM(5.4, 4), To: geom.PtMM(7.4, 4), Width: geom.MM(0.8)})
	})
	settle(t, w)
	wantKinds(t, goThrough(t, w), aStar, aJointLine, aJointPoint, aTie, aWeb, anIsland, aField, aSheet)
	w.letGo()
	c := w.work.Sheet.CutOuts[len(w.work.Sheet.CutOuts)/2].Shape.Bounds()
	rim := geom.Point{X: c.Min.X + geom.MM(0.3), Y: c.Centre().Y}
	if got, ok := w.under(rim, geom.MM(0.05)); !ok || got.key.kind != aCutOut {
		t.Errorf("in a cut-out lies %q", got.words)
	}
	s.toView(theJoint)
	wantKinds(t, goThrough(t, w), aJointLine, aPlacement)
}

func TestEveryStarOfASplitIsPointedAt(t *testing.T) {
	w, s, _ := atStencil(t)
	w.proposeSplit()
	finish(t, w)
	for _, view := range []string{theSheet, theSecond} {
		s.toView(view)
		counts := goThrough(t, w)
		if n := len(w.work.Sheet.Stars.Stars); counts[aStar] <= n {
			t.Errorf("%s: %d stars, want %d and match stars", view, counts[aStar], n)
		}
	}
}

func TestEveryThingOfTheBoltIsPointedAt(t *testing.T) {
	w := onBench(t, "small-dot")
	w.GoTo(boltAt)
	w.Edit("Change Board", func(o document.Order) (document.Order, error) {
		b := o.Board
		b.Start, b.End = geom.MM(30), geom.MM(40)
		return document.SetBoard(o, b)
	})
	settle(t, w)
	counts := goThrough(t, w)
	wantKinds(t, counts, aPlacement, aTurn, someWaste)
	if n := len(w.work.Run.Placements); counts[aPlacement] < n {
		t.Errorf("%d of %d placements are met", counts[aPlacement], n)
	}
	w.boltStation().showNext()
	wantKinds(t, goThrough(t, w), aPlacement)
	w.Edit("Change Bolt", func(o document.Order) (document.Order, error) {
		c := o.Cloth
		c.Bolt.Length += o.Sheet.Step / 2
		return document.SetCloth(o, c)
	})
	settle(t, w)
	if w.work.Run.Partial.Printed > 0 {
		wantKinds(t, goThrough(t, w), maskedPart)
	}
}

func TestEveryThingOfTheGarmentIsPointedAt(t *testing.T) {
	w := onBench(t, "small-dot")
	s := w.garmentStation()
	w.GoTo(garmentAt)
	piece := w.work.Dressed.Pieces()[0]
	w.Edit("Ask for a Motif", func(o document.Order) (document.Order, error) {
		wishes := o.Garment.Wishes
		wishes.Targets = append(wishes.Targets, cloth.PlaceWish{
			Name: "chest", Piece: piece.Name, At: piece.Area.Centre(), Motif: o.Unit.Motifs[0].At, Within: geom.MM(10),
		})
		return document.SetWishes(o, wishes)
	})
	settle(t, w)
	counts := goThrough(t, w)
	wantKinds(t, counts, aSeam, anAskedFor, aClothPiece)
	if n := len(w.work.Dressed.Pieces()); counts[aClothPiece] != n {
		t.Errorf("%d of %d pieces are met", counts[aClothPiece], n)
	}
	s.show(true)
	counts = goThrough(t, w)
	if n := len(w.work.Dressed.Panels); counts[aPanel] != n {
		t.Errorf("%d of %d panels are met", counts[aPanel], n)
	}
	s.show(false)
	wantStars(t, w)
}

// wantStars goes through the marks of stars that a garment shows, if it shows any.
func wantStars(t *testing.T, w *Window) {
	t.Helper()
	if n := len(cloth.SeenStars(w.work.StarPrints())); n != goThrough(t, w)[aStar] {
		t.Errorf("%d marks of stars are seen, not all are met", n)
	}
}

// F7 goes from kind to kind, over a thousand motifs in one step, and Shift+F7 back to the
// first of the kind before.
func TestKindsAreGoneThroughInOneStepEach(t *testing.T) {
	w, _, _ := byHandAt(t)
	var kinds []thingKind
	for _, g := range w.things() {
		if len(kinds) == 0 || kinds[len(kinds)-1] != g.key.kind {
			kinds = append(kinds, g.key.kind)
		}
	}
	first := map[thingKind]thingKey{}
	for _, g := range slices.Backward(w.things()) {
		first[g.key.kind] = g.key
	}
	for _, k := range kinds {
		w.typed(fyne.KeyF7, 0)
		if got, _ := w.pointed(); got.key != first[k] {
			t.Fatalf("F7 points at %+v, want %+v", got.key, first[k])
		}
	}
	for _, k := range slices.Backward(kinds[:len(kinds)-1]) {
		w.typed(fyne.KeyF7, fyne.KeyModifierShift)
		if got, _ := w.pointed(); got.key != first[k] {
			t.Fatalf("Shift+F7 points at %+v, want %+v", got.key, first[k])
		}
	}
}

// A click chooses what lies there: what can be taken is in hand, what can't is marked with
// its words, until Escape.
func TestAClickChoosesWhatLiesThere(t *testing.T) {
	w, s, _ := atStencil(t)
	star := w.work.Sheet.Stars.Stars[0]
	w.board.Near(star.At, 20)
	click(w.board, star.At)
	words := "leading star L1"
	if got, ok := w.pointed(); !ok || got.key.kind != aStar || !strings.HasPrefix(w.status.Text, words) {
		t.Errorf("a click on a star chose %q and said %q", got.words, w.status.Text)
	}
	scene := s.scene()
	w.markPointed(&scene)
	if last := scene.Labels[0]; !strings.HasPrefix(last.Text, words) {
		t.Errorf("the surface says %q at the star", last.Text)
	}
	w.typed(fyne.KeyEscape, 0)
	if _, ok := w.pointed(); ok {
		t.Error("Escape doesn't let it go")
	}
	w.GoTo(draftAt)
	w.typed(fyne.KeyF6, 0)
	if !slices.Equal(w.chosen, []pattern.ID{1}) {
		t.Errorf("F6 chose %v, want motif 1", w.chosen)
	}
}

// Every finding of a station leads to a place that is then seen, by its button and by F8.
func TestEveryFindingLeadsToItsPlace(t *testing.T) {
	for name, o := range faultyOrders(t) {
		w := open(t, o)
		met := 0
		for at := range w.stations {
			w.GoTo(at)
			found := w.shownFindings()
			for i, f := range found {
				w.GoTo(at)
				w.board.Near(geom.PtMM(-5000, -5000), 1)
				if i > 0 {
					w.foundAt = found[i-1]
				} else {
					w.foundAt = check.Finding{}
				}
				w.typed(fyne.KeyF8, 0)
				met++
				if w.foundAt != f || !strings.Contains(w.status.Text, f.Text) && speaks().Knows(f.Text) {
					t.Errorf("%s: F8 shows %s, want %s", name, w.foundAt.Code, f.Code)
				}
				if w.board.Seen().Holds(geom.PtMM(-5000, -5000)) {
					t.Errorf("%s: the finding %s of station %d leads nowhere", name, f.Code, at)
				}
			}
		}
		if met == 0 {
			t.Errorf("%s: nothing was found", name)
		}
	}
}

// faultyOrders are orders in which much is to be found.
func faultyOrders(t *testing.T) map[string]document.Order {
	t.Helper()
	read := func(text string) document.Order {
		o, err := document.Read(strings.NewReader(text))
		if err != nil {
			t.Fatal(err)
		}
		return o
	}
	dots, err := ReadStarter("small-dot")
	if err != nil {
		t.Fatal(err)
	}
	off, err := document.SetStep(dots, dots.Sheet.Step+geom.MM(0.3))
	if err != nil {
		t.Fatal(err)
	}
	large, err := document.ResizeDiscs(dots, geom.MM(1.2), dots.Unit.Motifs[0].ID)
	if err != nil {
		t.Fatal(err)
	}
	short := dots
	short.Cloth.Bolt.Length /= 3
	short.Garment.Wishes.Targets = []cloth.PlaceWish{{Name: "chest", Piece: "no such piece", Within: geom.Millimetre}}
	return map[string]document.Order{"rings": read(rings), "a step that is off": off, "webs too thin": large, "a short bolt": short}
}
