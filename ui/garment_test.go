package ui

import (
	"math"
	"strings"
	"testing"

	"fyne.io/fyne/v2"

	"tsugime/export/raster"
	"tsugime/repeat/check"
	"tsugime/repeat/cloth"
	"tsugime/repeat/document"
	"tsugime/repeat/geom"
	"tsugime/repeat/repeattest"
	"tsugime/ui/board"
)

// dressed shows a starter's garment, in a window of 1600 by 1000.
func dressed(t *testing.T, starter string) (*Window, *garmentStation) {
	t.Helper()
	w := onBench(t, starter)
	w.win.Resize(fyne.NewSize(1600, 1000))
	w.GoTo(garmentAt)
	return w, w.garmentStation()
}

func TestTheGarmentIsShownWithASeamUnderTheLoupe(t *testing.T) {
	w, s := dressed(t, "leaf")
	s.seams.choose("left side")
	repeattest.GoldenPNG(t, "garment.png", w.win.Canvas().Capture())
}

func TestThePanelsAreShownOnTheBolt(t *testing.T) {
	w, s := dressed(t, "leaf")
	w.typed(fyne.KeyH, fyne.KeyModifierShift)
	if !s.onBolt || !s.hides.Checked {
		t.Fatal("Shift+H doesn't show on the bolt what the seams hide")
	}
	repeattest.GoldenPNG(t, "garment-on-the-bolt.png", w.win.Canvas().Capture())
	w.typed(fyne.KeyV, fyne.KeyModifierShift)
	if s.onBolt || s.hides.Checked {
		t.Error("Shift+V doesn't lead back to the garment")
	}
}

// All joints in the picture are joint lines of the sheet, one after another, and
// none is a straight line.
func TestJointsOnTheGarmentWindAsTheSheetsDo(t *testing.T) {
	w, s := dressed(t, "leaf")
	joints := 0
	for _, m := range s.scene().Marks {
		if m.Colour != worn().quiet || m.Shape != board.Line {
			continue
		}
		joints++
		if len(m.Points) > 40 && geom.BoxOf(m.Points...).Height() == 0 {
			t.Fatal("a joint is a straight line")
		}
	}
	if line := w.work.Sheet.Joint.Line; joints < 40 || geom.BoxOf(line...).Height() == 0 {
		t.Errorf("%d joints are shown", joints)
	}
}

// Placement by placement the picture of a piece is that of the endless cloth, which
// repeats the print at every step.
func TestPlacementsOneByOneAreTheEndlessCloth(t *testing.T) {
	w, s := dressed(t, "leaf")
	s.chance.lay()
	var cut []geom.Shape
	for _, c := range w.work.Sheet.Printed {
		cut = append(cut, c.Shape)
	}
	endless := raster.NewGround(cut, geom.Point{Y: w.Order().Sheet.Step})
	for _, name := range []string{"right back", "left front"} {
		p, ok := s.piece(name)
		if !ok {
			name += " below the tuck"
			p, _ = s.piece(name)
		}
		const size = 300
		at := p.Area.Centre()
		view := raster.View{X: at.X.MM() - 40, Y: at.Y.MM() - 40, PxPerMM: size / 80.0}
		on := lieOf(p, geom.Point{})
		g := &printing{of: s.chance}
		g.onto(on, p.Area)
		got, want := raster.NewPlane(size, size), raster.NewPlane(size, size)
		for _, l := range g.grounds() {
			l.Ground.PaintAll(got, view, l.Lays...)
		}
		endless.Paint(want, view, raster.Lay{Move: on.put(geom.Point{Y: s.chance.prints[0].Y}), Turned: on.turned, Clip: p.Area})
		worst, open := 0, 0
		for i := range got.Cover {
			worst = max(worst, int(got.Cover[i])-int(want.Cover[i]), int(want.Cover[i])-int(got.Cover[i]))
			open += int(want.Cover[i])
		}
		if worst > 2 || open == 0 {
			t.Errorf("%s: laid one by one the picture differs by %d levels", name, worst)
		}
	}
}

// The slider lays a bolt by chance: its worst joint is named and shown, another
// number is another bolt, and the order stays.
func TestABoltIsLaidByChance(t *testing.T) {
	w, s := dressed(t, "small-dot")
	if s.chance.any {
		t.Fatal("without errors a joint is off")
	}
	s.chance.slider.SetValue(2)
	first := s.chance.worst
	if !s.chance.any || first.Off == (geom.Point{}) {
		t.Fatal("with twice the errors no joint is off")
	}
	prints, _ := w.work.Run.ScatteredPrints(2, s.chance.seed)
	if want, _ := w.work.WorstJoint(prints); want != first {
		t.Errorf("the worst joint is %+v, shown %+v", want, first)
	}
	w.typed(fyne.KeyW, fyne.KeyModifierShift)
	p, _ := s.piece(first.Piece)
	if at := first.At.Add(s.offsetOf(p)); !w.board.Seen().Holds(at) || w.board.Scale() < 12 {
		t.Errorf("the worst joint at %v isn't shown large", at)
	}
	w.typed(fyne.KeyB, fyne.KeyModifierShift)
	if s.chance.worst == first || s.chance.seed != 2 {
		t.Error("another bolt is the same")
	}
	s.chance.setSeed("1")
	if s.chance.worst != first {
		t.Error("the first bolt doesn't come back by its number")
	}
	if w.Changed() || w.history.UndoName() != "" {
		t.Error("looking at bolts has changed the order")
	}
}

// A joint that is off in the picture is off as far as the bolt says: both rims are
// drawn so far apart.
func TestTheRimsOfAJointStandApartAsFarAsItIsOff(t *testing.T) {
	_, s := dressed(t, "small-dot")
	s.chance.slider.SetValue(3)
	worst := s.chance.worst
	p, _ := s.piece(worst.Piece)
	nearest := math.Inf(1)
	for _, j := range s.w.work.JointsOn(p, s.chance.prints) {
		if j.N != worst.N || !j.Ends {
			continue
		}
		for _, at := range j.Line {
			way := worst.Off
			if p.Turned {
				way = way.Neg()
			}
			nearest = math.Min(nearest, worst.At.Sub(way).Distance(at).MM())
		}
	}
	if nearest > 0.02 {
		t.Errorf("the placement before ends %.3f mm from where the worst joint says", nearest)
	}
}

func TestSeamsAreChosenByClickAndByKey(t *testing.T) {
	w, s := dressed(t, "small-dot")
	if w.board.InsetShown() != nil {
		t.Fatal("no seam is chosen, yet one is under the loupe")
	}
	all := w.work.Dressed.Seams
	for _, c := range all {
		w.typed(fyne.KeyN, fyne.KeyModifierShift)
		in := w.board.InsetShown()
		if s.seams.chosen != c.Name || in == nil || in.Lines[0] != c.Name {
			t.Fatalf("next is %q, want %q", s.seams.chosen, c.Name)
		}
		if len(in.Scene.Areas) != 2 {
			t.Errorf("%s: the loupe shows %d sides", c.Name, len(in.Scene.Areas))
		}
	}
	line := s.seams.lines(all[0].Meeting)[0]
	click(w.board, along(line, 0.25))
	if s.seams.chosen != all[0].Name || math.Abs(s.seams.down-0.25) > 0.02 {
		t.Errorf("a click a quarter down %q chose %q at %.2f", all[0].Name, s.seams.chosen, s.seams.down)
	}
	click(w.board, s.offset(line.View).Add(geom.PtMM(0, -100)))
	if s.seams.chosen != "" || w.board.InsetShown() != nil {
		t.Errorf("a click beside all seams keeps %q", s.seams.chosen)
	}
}

// Under the loupe a seam whose pattern runs on shows the plain pattern: the picture of
// both sides is that of the unit on its lattice, without a seam, level by level. The
// dots on the seam itself lie at the edges of the cut field and are in neither.
func TestAMatchedSeamRunsOnUnderTheLoupe(t *testing.T) {
	w, s := dressed(t, "small-dot")
	s.seams.choose(cloth.BackCentre)
	c, _ := s.seams.seam()
	if !c.Matched || c.PhaseAlong != 0 {
		t.Fatalf("the back centre is %+v", c)
	}
	s.seams.down = 0.37
	in := s.seams.inset()
	const size = 200
	view := raster.View{X: -in.Side.MM() / 2, Y: -in.Side.MM() / 2, PxPerMM: size / in.Side.MM()}
	both, one := raster.NewPlane(size, size), raster.NewPlane(size, size)
	var cut []geom.Shape
	for _, c := range w.work.Printed().CutOuts() {
		cut = append(cut, c.Shape)
	}
	plain := raster.NewGround(cut, w.Order().Unit.Lattice.A, w.Order().Unit.Lattice.B)
	for _, g := range in.Scene.Grounds {
		g.Ground.PaintAll(both, view, g.Lays...)
		lay := g.Lays[0]
		lay.Clip = geom.Box{}
		plain.Paint(one, view, lay)
	}
	worst := 0
	beside := int(w.pitch().MM() * view.PxPerMM)
	for i := range both.Cover {
		if x := i % size; x > size/2-beside && x < size/2+beside {
			continue
		}
		worst = max(worst, int(both.Cover[i])-int(one.Cover[i]), int(one.Cover[i])-int(both.Cover[i]))
	}
	// The pattern is off across by what the seam says: a few levels for a hundredth of
	// a pixel.
	if most := 4 + int(300*c.PhaseAcross.Abs().MM()*view.PxPerMM); worst > most {
		t.Errorf("both sides differ from one by %d levels; want %d at most", worst, most)
	}
}

// The pattern on the second side is off what the first side's would be by the seam's
// phase: moved back by it, both are one.
func TestTheLoupeShowsAPhaseAsItIsWritten(t *testing.T) {
	w, s := dressed(t, "small-dot")
	for _, c := range w.work.Dressed.Seams {
		s.seams.choose(c.Name)
		h := s.seams.halves(c.Meeting)
		var at [2]geom.Point
		for i, name := range s.seams.pieces(c.Meeting) {
			p, ok := s.piece(name)
			if !ok {
				t.Fatalf("%s has no piece on side %d", c.Name, i)
			}
			on := lieOf(p, geom.Point{})
			if h[i].view.turned {
				on = lie{!on.turned, h[i].view.move.Sub(on.move)}
			} else {
				on.move = on.move.Add(h[i].view.move)
			}
			at[i] = on.put(geom.Point{Y: s.chance.prints[0].Y}) // a place of the lattice
		}
		_, _, rest := w.Order().Unit.Lattice.Nearest(at[1].Sub(at[0]).Sub(geom.Point{X: c.PhaseAcross, Y: c.PhaseAlong}))
		if rest.Norm() > 3000 {
			t.Errorf("%s is off by %v, %v; the loupe shows %v more", c.Name, c.PhaseAcross, c.PhaseAlong, rest)
		}
	}
}

func TestASeamsGoalIsOneEditAndTellsItsCost(t *testing.T) {
	w, s := dressed(t, "small-dot")
	seam := w.work.Dressed.Seams[1].Name
	s.seams.choose(seam)
	before := written(t, w.Order())
	s.seams.goals.goals.SetSelected(say("staggered"))
	settle(t, w)
	wish, ok := w.Order().Wished(seam)
	if !ok || wish.Goal != cloth.Staggered || wish.Share != halfStep {
		t.Fatalf("the seam's wish is %+v; %s", wish, w.status.Text)
	}
	m, ok := s.seams.goals.match(seam)
	if !ok {
		t.Fatal("nothing is told of the wish")
	}
	if text := s.seams.goals.cost.Text; m.Reached && !strings.Contains(text, w.unit().Format(m.Cost, 1)) {
		t.Errorf("a cost of %v is told as %q", m.Cost, text)
	}
	s.seams.goals.setBy("25 %")
	settle(t, w)
	if wish, _ = w.Order().Wished(seam); wish.Share != 0.25 {
		t.Errorf("staggered by %g", wish.Share)
	}
	w.Undo()
	w.Undo()
	if written(t, w.Order()) != before {
		t.Error("two undos did not lead back")
	}
}

// Marks that the garment shows are drawn as stars where they are seen, and their
// finding leads from one to the next.
func TestStarsThatAreSeenAreShown(t *testing.T) {
	w, s := dressed(t, "small-dot")
	w.Edit("Move Stars", func(o document.Order) (document.Order, error) {
		stars := o.Sheet.Stars
		stars.PerEnd, stars.At = 2, []geom.Point{geom.PtMM(60.3, 3.1), geom.PtMM(290.2, 3.1)}
		return document.SetStars(o, stars)
	})
	settle(t, w)
	seen := cloth.SeenStars(w.work.StarPrints())
	if len(seen) == 0 {
		t.Fatal("stars in the middle of the cloth are all hidden")
	}
	drawn := 0
	for _, m := range s.scene().Marks {
		if m.Shape == board.Star {
			drawn++
		}
	}
	if drawn != len(seen) {
		t.Errorf("%d stars are drawn, %d are seen", drawn, len(seen))
	}
	var found *check.Finding
	for i, f := range w.work.Findings {
		if f.Code == "star-seen" {
			found = &w.work.Findings[i]
		}
	}
	if found == nil || !s.owns(*found) {
		t.Fatal("nothing is found about stars that are seen")
	}
	s.look(*found)
	p, _ := s.piece(seen[0].Piece)
	if !w.board.Seen().Holds(s.markedAt(seen[0], p)) {
		t.Error("the first one isn't shown")
	}
}

func TestAPanelIsDraggedToAnotherPlace(t *testing.T) {
	w, s := dressed(t, "small-dot")
	s.show(true)
	before, start := s.panels.names(), written(t, w.Order())
	f := s.panels.fold()
	p, _ := s.panels.panel(before[3])
	q, _ := s.panels.panel(before[0])
	from, to := f.put(boxOf(p)).Centre(), f.put(boxOf(q)).Centre()
	pull(w.board, from, to.Sub(geom.PtMM(0, 200)), 9)
	settle(t, w)
	want := []string{before[3], before[0], before[1], before[2]}
	if got := s.panels.names()[:4]; strings.Join(got, ",") != strings.Join(want, ",") {
		t.Errorf("the panels lie %v; want %v", got, want)
	}
	if name := w.history.UndoName(); name != "Move Panel" {
		t.Errorf("the menu would undo %q", name)
	}
	w.Undo()
	settle(t, w)
	if written(t, w.Order()) != start {
		t.Error("one undo did not lead back")
	}
}

func TestAPanelIsTurnedGivenAGapAndLaidLaterByKeys(t *testing.T) {
	w, s := dressed(t, "small-dot")
	s.panels.choose("right sleeve")
	was, _ := s.panels.panel("right sleeve")
	w.run(garmentCommands()[7])
	settle(t, w)
	if p, _ := s.panels.panel("right sleeve"); p.Turned == was.Turned {
		t.Error("the sleeve wasn't turned")
	}
	s.panels.setGap("31 mm")
	settle(t, w)
	if p, _ := s.panels.panel("right sleeve"); p.Y != was.Y+31*geom.Millimetre {
		t.Errorf("the sleeve lies at %v, before at %v", p.Y, was.Y)
	}
	w.run(garmentCommands()[5])
	settle(t, w)
	if names := s.panels.names(); names[0] != "right sleeve" {
		t.Errorf("the panels lie %v", names)
	}
	for range 3 {
		w.Undo()
	}
	if w.Changed() {
		t.Error("three undos did not lead back")
	}
}

// A click asks for a motif at a place of a piece; the solver lays the panels for it,
// and one undo takes the wish back.
func TestAMotifIsAskedForByAClick(t *testing.T) {
	w, s := dressed(t, "leaf")
	before := written(t, w.Order())
	s.targets.places.SetChecked(true)
	p := w.work.Dressed.Pieces()[0]
	at := p.Area.Centre()
	click(w.board, at.Add(s.offsetOf(p)))
	settle(t, w)
	all := w.Order().Garment.Wishes.Targets
	if len(all) != 1 || all[0].Piece != p.Name || all[0].At.Distance(at) > 4*geom.Millimetre {
		t.Fatalf("asked for %+v; %s", all, w.status.Text)
	}
	told := false
	for _, m := range w.work.Dressed.Matches {
		told = told || m.Name == all[0].Name && m.Goal == ""
	}
	if !told {
		t.Error("nothing is told of the place")
	}
	s.targets.setWithin("4 mm")
	settle(t, w)
	if got := w.Order().Garment.Wishes.Targets[0].Within; got != 4*geom.Millimetre {
		t.Errorf("within %v", got)
	}
	s.targets.remove()
	settle(t, w)
	if written(t, w.Order()) != before {
		t.Error("taken away, the order isn't as it was")
	}
}

// What a finding of the laying offers is one edit that changes the wish it names.
func TestFindingsOfTheLayingHaveRemedies(t *testing.T) {
	w, _ := dressed(t, "leaf")
	for code, done := range map[string]func(x cloth.Wishes) bool{
		"bolt-turn":      func(x cloth.Wishes) bool { return x.AvoidTurn },
		"seam-unmatched": func(x cloth.Wishes) bool { return x.AnyOrder },
	} {
		was := w.Order().Garment.Wishes
		can := w.remediesOf(check.Finding{Code: code})
		if len(can) != 1 {
			t.Fatalf("%s has %d remedies", code, len(can))
		}
		can[0].do(w)
		settle(t, w)
		if now := w.Order().Garment.Wishes; done(was) || !done(now) {
			t.Errorf("%s: the wishes were %+v and are %+v", code, was, now)
		}
		if len(w.remediesOf(check.Finding{Code: code})) != 0 {
			t.Errorf("%s still offers what is done", code)
		}
	}
}
