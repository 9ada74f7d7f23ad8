package cloth

import (
	"errors"
	"math/rand/v2"
	"strings"
	"testing"

	"tsugime/repeat/geom"
	"tsugime/repeat/pattern"
)

// roomy cloth has room for the widest hips.
var roomy = Bolt{Width: 420 * geom.Millimetre, Length: 13 * geom.Metre}

// wideBolt is a bolt of today's general kind, as the men's are cut from it.
var wideBolt = Bolt{Width: 400 * geom.Millimetre, Length: 13 * geom.Metre}

func dressed(t testing.TB, bolt Bolt, g Garment, l pattern.Lattice) Dressed {
	t.Helper()
	d, err := Dress(bolt, Run{Step: sixSun}, l, g, 500*geom.Micrometre)
	if err != nil {
		t.Fatal(err)
	}
	return d
}

// bodies returns, for every form, the usual body and both ends of all it asks.
func bodies(t testing.TB) []Body {
	t.Helper()
	var all []Body
	for _, kind := range GarmentKinds() {
		for _, end := range []int{0, 1, 2} {
			b := Body{Kind: kind, Height: 1600 * geom.Millimetre, Sizes: map[string]geom.Length{}, Counts: map[string]int{}}
			for _, a := range mustForm(t, kind).Asks {
				l, n := []geom.Length{a.Usual, a.Least, a.Most}[end], []int{a.Common, a.Fewest, a.Many}[end]
				switch {
				case a.Counted:
					b.Counts[a.Name] = n
				case a.Name == "height":
					b.Height = l
				default:
					b.Sizes[a.Name] = l
				}
			}
			all = append(all, b)
		}
	}
	return all
}

// Every form is cut at its usual sizes and at both ends of what it asks: pieces
// lie within their panels, beside each other in their views, and panels beside
// each other on the cloth.
func TestEveryFormIsCutAtAllItsSizes(t *testing.T) {
	for _, b := range bodies(t) {
		for _, bolt := range []Bolt{roomy, {Width: 440 * geom.Millimetre, Length: 13 * geom.Metre, ChangeAcross: -0.02}} {
			d := dressed(t, bolt, Garment{Body: b}, lattices()["half-drop"])
			box := map[string]geom.Box{}
			for _, p := range d.Panels {
				box[p.Name] = geom.BoxOf(geom.Point{X: p.X, Y: p.Y}, geom.Point{X: p.X + p.Width, Y: p.Y + p.Length})
			}
			for i, p := range d.Panels {
				for _, q := range d.Panels[:i] {
					if c := box[p.Name].Intersect(box[q.Name]); c.Width() > 0 && c.Height() > 0 {
						t.Errorf("%s: %s lies on %s", b.Kind, p.Name, q.Name)
					}
				}
			}
			for i, p := range d.Pieces() {
				if !box[p.Panel].HoldsBox(p.Window()) || p.Area.Width() <= 0 || p.Area.Height() <= 0 {
					t.Errorf("%s: %s shows %v of %v", b.Kind, p.Name, p.Window(), box[p.Panel])
				}
				for _, q := range d.Pieces()[:i] {
					c := p.Area.Intersect(q.Area)
					if p.View == q.View && p.View != CollarView && c.Width() > 0 && c.Height() > 0 {
						t.Errorf("%s: %s covers %s", b.Kind, p.Name, q.Name)
					}
				}
			}
		}
	}
}

// What is seen decides, for every form: the dots of the pattern, drawn through
// the maps of the two pieces at a seam, lie apart by its phase. Pieces that hang
// the same way are compared, their edges laid on each other.
func TestPhasesOfEveryFormAreWhatTheDotsShow(t *testing.T) {
	l := lattices()["leaning"]
	seen := 0
	for _, b := range bodies(t) {
		d := dressed(t, roomy, Garment{Body: b}, l)
		c, err := cutFor(b, roomy.Width)
		if err != nil {
			t.Fatal(err)
		}
		for _, s := range d.Seams {
			for _, form := range c.form.seams {
				j := form.joins[0]
				if form.name != s.Name || j.first.side == j.second.side && !j.first.upright() {
					continue
				}
				first, second := pieceNamed(t, d, j.first.piece), pieceNamed(t, d, j.second.piece)
				// The second piece's view, moved so that the two lines are one.
				over := s.Lines[0].From.Sub(s.Lines[1].From)
				dot := geom.Point{Y: d.Start}
				apart := l.Into(second.FromCloth(dot).Add(over).Sub(first.FromCloth(dot)))
				if s.PhaseAcross != apart.X || s.PhaseAlong != apart.Y {
					t.Errorf("%s, %s: phase %s across, %s along; the dots are %v apart", b.Kind, s.Name, s.PhaseAcross, s.PhaseAlong, apart)
				}
				seen++
			}
		}
	}
	if seen < 100 {
		t.Errorf("only %d seams were looked at", seen)
	}
}

func pieceNamed(t testing.TB, d Dressed, name string) Piece {
	t.Helper()
	for _, p := range d.Pieces() {
		if p.Name == name {
			return p
		}
	}
	t.Fatalf("no piece %q", name)
	return Piece{}
}

// A men's sewing page: body = height less 25 to 30 cm, front = hip/4 + 1 to 2 cm,
// back = hip/4 + 5 to 7 cm. At 92 cm the standard widths of a sewing course lie
// by: front 7 sun, 26.5 cm, and back 8 sun, 30.3 cm.
func TestMensSizesByTheSewingPage(t *testing.T) {
	for _, hip := range []float64{880, 920, 1000} {
		d := dressed(t, wideBolt, Garment{Body: Body{
			Kind: "mens-kimono", Height: 1700 * geom.Millimetre, Sizes: map[string]geom.Length{"hip": geom.MM(hip)},
		}}, lattices()["straight"])
		size := sizes(d)
		within(t, "body, cm", size["body"].MM()/10, 142.5, 2.5)
		within(t, "front, mm", size["front"].MM(), hip/4+15, 5)
		within(t, "back, mm", size["back"].MM(), hip/4+60, 10)
		if hip == 920 {
			within(t, "front by the course, cm", size["front"].MM()/10, 26.5, 2.5)
			within(t, "back by the course, cm", size["back"].MM()/10, 30.3, 1.5)
		}
		if s := size["sleeve"]; s < bu(130) || s > bu(150) {
			t.Errorf("sleeve %s mm, not 1.3 to 1.5 shaku", s)
		}
		within(t, "reach, cm", size["reach"].MM()/10, 170*0.4+2, 0.01)
	}
}

func sizes(d Dressed) map[string]geom.Length {
	all := map[string]geom.Length{}
	for _, s := range d.Sizes {
		all[s.Name] = s.Length
	}
	return all
}

// A user cut up an old yukata: bodies 720, sleeves 180 cm, 1,060 in all. The
// form's bodies for 160 cm lie by the first. Its sleeves are the longer ones of
// today, and the user's strip of 160 cm for collar and overlaps holds no two
// overlaps end to end, so the rest is compared as a band: see
// TestNeedAgreesWithTheBoltsOfTheTrade.
func TestAnOldYukataCutUpLiesByTheForm(t *testing.T) {
	d := dressed(t, wideBolt, Garment{Body: Body{Kind: WomensKimono, Height: 1600 * geom.Millimetre}}, lattices()["straight"])
	p := d.Panels
	within(t, "bodies, cm", (p[leftBody].Length+p[rightBody].Length).MM()/10, 720, 10)
	within(t, "sleeves, cm", (p[leftSleeve].Length+p[rightSleeve].Length).MM()/10, 180, 35)
}

// A ring round a cushion: cut so that the far end meets the near one after whole
// repeats, every seam of a pattern whose columns divide the width is closed.
func TestACushionClosesWhereWholeRepeatsGoRound(t *testing.T) {
	end := 15 * geom.Millimetre
	face := 600 * geom.Millimetre
	width := 300 * geom.Millimetre
	for _, panels := range []int{1, 2} {
		l := pattern.Straight(width/30, 2*face/60)
		d := dressed(t, wideBolt, Garment{
			Body: Body{Kind: "floor-cushion", Sizes: map[string]geom.Length{"length": face, "width": width * geom.Length(panels)},
				Counts: map[string]int{"panels": panels}},
		}, l)
		if d.Panels[0].Length != 2*(face+end) || d.Panels[0].Width != wideBolt.Width {
			t.Errorf("the panel is cut %s by %s", d.Panels[0].Width, d.Panels[0].Length)
		}
		for _, s := range d.Seams {
			if !strings.HasSuffix(s.Name, "end") {
				continue
			}
			if s.PhaseAlong != 0 || s.PhaseAcross != 0 || s.Opposite {
				t.Errorf("%d panels: %s is off by %s, %s, opposite %v", panels, s.Name, s.PhaseAlong, s.PhaseAcross, s.Opposite)
			}
		}
		if want := map[int]int{1: 3, 2: 6}[panels]; len(d.Seams) != want {
			t.Errorf("%d panels have %d seams", panels, len(d.Seams))
		}
		if got := d.Panels[0].UpsideDown; len(got) != 1 || got[0] != BackView {
			t.Errorf("upside down in %v", got)
		}
	}
}

func TestFreePanelsAreAsManyAndLieAbreast(t *testing.T) {
	for panels := 1; panels <= 12; panels++ {
		for abreast := 1; abreast <= 3; abreast++ {
			for sewn := 0; sewn <= 2; sewn++ {
				d := dressed(t, wideBolt, Garment{Body: Body{
					Kind: "panels", Sizes: map[string]geom.Length{"gap": 7 * geom.Millimetre},
					Counts: map[string]int{"panels": panels, "abreast": abreast, "sewn": sewn},
				}}, lattices()["brick"])
				rows := (panels + abreast - 1) / abreast
				if want := geom.Length(rows) * (1047 * geom.Millimetre); len(d.Panels) != panels || d.Used != want {
					t.Errorf("%d panels, %d abreast: %d, %s used, want %s", panels, abreast, len(d.Panels), d.Used, want)
				}
				want := []int{0, panels - 1, panels - 1}[sewn]
				if sewn == 2 && panels > 1 {
					want++
				}
				if len(d.Seams) != want || d.Extra != 0 {
					t.Errorf("%d panels, sewn %d: %d seams, want %d; extra %s", panels, sewn, len(d.Seams), want, d.Extra)
				}
			}
		}
	}
}

// The order's own layout is kept: order, gaps, turns and shifts; phases are those
// of the laying with the same wishes.
func TestTheLayoutOfTheOrderIsKept(t *testing.T) {
	draw := rand.New(rand.NewPCG(11, 5))
	l := lattices()["leaning"]
	for _, kind := range GarmentKinds() {
		g := Garment{Body: Body{Kind: kind, Height: 1600 * geom.Millimetre}}
		plain := dressed(t, wideBolt, g, l).Laying()
		for range 20 {
			order := draw.Perm(len(plain.Panels))
			want := plain
			want.Panels = append([]LaidPanel(nil), plain.Panels...)
			gaps := make([]geom.Length, len(order))
			g.Layout = Layout{Gaps: map[string]geom.Length{}, Shifts: map[string]geom.Length{}, Turned: map[string]bool{}}
			for _, i := range order {
				p := &want.Panels[i]
				gaps[i] = geom.Length(draw.Int64N(int64(90 * geom.Millimetre)))
				p.Turned = p.MayTurn && draw.IntN(2) == 1
				p.Shift = p.ShiftLeast + geom.Length(draw.Int64N(int64(p.ShiftMost-p.ShiftLeast)+1))
				g.Layout.Order = append(g.Layout.Order, p.Name)
				g.Layout.Gaps[p.Name], g.Layout.Shifts[p.Name], g.Layout.Turned[p.Name] = gaps[i], p.Shift, p.Turned
			}
			want = want.Laid(order, gaps)
			d := dressed(t, wideBolt, g, l)
			for i, p := range d.Laying().Panels {
				if p != want.Panels[i] {
					t.Fatalf("%s: %s lies as %+v, want %+v", kind, p.Name, p, want.Panels[i])
				}
			}
			for i, s := range want.Seams {
				if p := want.Phase(s, l); p.X != d.Seams[i].PhaseAcross || p.Y != d.Seams[i].PhaseAlong {
					t.Fatalf("%s: %s is off by %v as laid, by %s, %s as dressed", kind, s.Name, p, d.Seams[i].PhaseAcross, d.Seams[i].PhaseAlong)
				}
			}
		}
	}
}

// Whatever the order wishes of the panels, the matched seam is closed along.
func TestTheMainSeamIsClosedInAnyLayout(t *testing.T) {
	draw := rand.New(rand.NewPCG(2, 9))
	for name, l := range lattices() {
		if name == "leaning" {
			continue // the step is no place of it, so there may be no gap
		}
		for _, kind := range []GarmentKind{WomensKimono, "mens-kimono", "light-coat", "work-jacket", "door-curtain", "panels"} {
			f := mustForm(t, kind)
			g := Garment{Body: Body{Kind: kind, Height: 1600 * geom.Millimetre}, MatchBackCentre: true}
			plain := dressed(t, wideBolt, g, l).Laying()
			for range 5 {
				turned := draw.IntN(2) == 1
				g.Layout = Layout{Turned: map[string]bool{}}
				for _, i := range draw.Perm(len(plain.Panels)) {
					g.Layout.Order = append(g.Layout.Order, plain.Panels[i].Name)
				}
				for _, s := range plain.Seams {
					if s.Name == f.Matched { // both, or the pattern would meet itself upside down
						g.Layout.Turned[plain.Panels[s.First].Name], g.Layout.Turned[plain.Panels[s.Second].Name] = turned, turned
					}
				}
				for _, s := range dressed(t, wideBolt, g, l).Seams {
					if s.Name == f.Matched && s.PhaseAlong != 0 {
						t.Errorf("%s, %s: %s is off by %s along, turned %v", kind, name, s.Name, s.PhaseAlong, turned)
					}
				}
			}
		}
	}
}

// Turning a panel half round turns all its pieces.
func TestATurnedPanelHangsTheOtherWay(t *testing.T) {
	g := Garment{Body: Body{Kind: WomensKimono, Height: 1600 * geom.Millimetre}}
	plain := dressed(t, wideBolt, g, lattices()["brick"])
	g.Layout.Turned = map[string]bool{"left body": true, "left overlap": false}
	d := dressed(t, wideBolt, g, lattices()["brick"])
	for i, p := range d.Pieces() {
		turned := p.Panel == "left body" || p.Panel == "left overlap"
		if (p.Turned != plain.Pieces()[i].Turned) != turned {
			t.Errorf("%s: turned %v, before %v", p.Name, p.Turned, plain.Pieces()[i].Turned)
		}
	}
	if got := d.Panels[leftBody].UpsideDown; len(got) != 1 || got[0] != BackView {
		t.Errorf("the turned body is upside down in %v", got)
	}
	for _, s := range d.Seams {
		// A side seam joins the front, upside down, to the back of the same panel.
		side := strings.HasSuffix(s.Name, "side")
		if s.Opposite != (side || s.Name == BackCentre || s.Name == "left sleeve") {
			t.Errorf("%s: opposite %v", s.Name, s.Opposite)
		}
	}
}

// A tuck on one side only moves the pattern past it; a tuck that both sides have
// doesn't.
func TestPastATuckThePatternIsToldWhereItDiffers(t *testing.T) {
	l := pattern.Straight(40*geom.Millimetre, 100*geom.Millimetre)
	d := dressed(t, wideBolt, Garment{Body: Body{Kind: WomensKimono, Height: 1600 * geom.Millimetre}}, l)
	for _, s := range d.Seams {
		switch s.Name {
		case BackCentre:
			if len(s.Also) != 0 {
				t.Errorf("%s differs past the tuck: %+v", s.Name, s.Also)
			}
		case "upper overlap":
			if len(s.Also) != 1 {
				t.Fatalf("%s: %d other stretches", s.Name, len(s.Also))
			}
			// The front's tuck of 4 sun is passed by the overlap.
			along := l.Into(geom.Point{Y: s.Also[0].PhaseAlong - s.PhaseAlong - bu(40)})
			if along.Y != 0 {
				t.Errorf("past the tuck the phase is %s, below it %s", s.Also[0].PhaseAlong, s.PhaseAlong)
			}
		}
	}
}

func TestBadSizesSayWhatToChange(t *testing.T) {
	woman := Body{Kind: WomensKimono, Height: 1600 * geom.Millimetre}
	with := func(change func(*Garment)) Garment {
		g := Garment{Body: woman}
		change(&g)
		return g
	}
	lengths := func(name string, mm float64) map[string]geom.Length { return map[string]geom.Length{name: geom.MM(mm)} }
	for _, row := range []struct {
		g           Garment
		say, remedy string
	}{
		{with(func(g *Garment) { g.Body.Allowances = lengths("tuck", -5) }), "an allowance of -5 mm can't be sewn: tuck at the waist", "give between 0 and 1000 mm"},
		{with(func(g *Garment) { g.Body.Allowances = lengths("pleat", 5) }), `no allowance "pleat"`, "set one of seam, tuck, hem"},
		{with(func(g *Garment) { g.Body.Sizes = lengths("hip", 900) }), `no size "hip"`, "give height"},
		{with(func(g *Garment) { g.Body.Allowances = lengths("seam", 60) }), "too narrow for the", "finished width"},
		{with(func(g *Garment) { g.Layout.Order = []string{"left body", "left body"} }), `"left body" is laid twice`, "once"},
		{with(func(g *Garment) { g.Layout.Order = []string{"hood"} }), `no panel "hood"`, "left sleeve, right sleeve"},
		{with(func(g *Garment) { g.Layout.Gaps = lengths("collar", -1) }), "a gap of -1 mm", "between 0"},
		{with(func(g *Garment) { g.Layout.Shifts = lengths("left body", 500) }), "shifted by 500 mm", "give between"},
		{with(func(g *Garment) { g.Body.Kind, g.Layout.Turned = "door-curtain", map[string]bool{"loops": true} }), "can't be turned", "leave it"},
		{with(func(g *Garment) { g.Body.Kind, g.Body.Counts = "door-curtain", map[string]int{"panels": 6} }), "6 is out of bounds for the panels", "between 2 and 5"},
		{with(func(g *Garment) { g.Body.Kind, g.Body.Sizes = "mens-kimono", lengths("hip", 69) }), "69 mm is no hip", "between 700 and 1300"},
	} {
		_, err := Dress(wideBolt, Run{Step: sixSun}, lattices()["brick"], row.g, 0)
		var m *Misfit
		if !errors.As(err, &m) || !strings.Contains(m.Text, row.say) || !strings.Contains(m.Remedy, row.remedy) {
			t.Errorf("got %v\nwant …%s…; …%s…", err, row.say, row.remedy)
		}
	}
}

// A sleeve that is wider than the cloth is as wide as the cloth allows, and that
// is told; the remedy of cloth that is too narrow for the back is just enough.
func TestNarrowClothIsTold(t *testing.T) {
	g := Garment{Body: Body{Kind: WomensKimono, Height: 1700 * geom.Millimetre}}
	bolt := wideBolt
	bolt.Width = 355 * geom.Millimetre
	d := dressed(t, bolt, g, lattices()["brick"])
	if len(d.Narrowed) != 2 || d.Narrowed[0].Name != "sleeve_width" || d.Narrowed[0].Wanted != bu(93) ||
		d.Narrowed[0].Length != bolt.Width-2*bu(2.5) {
		t.Errorf("narrowed: %+v", d.Narrowed)
	}
	if d := dressed(t, wideBolt, g, lattices()["brick"]); len(d.Narrowed) != 0 {
		t.Errorf("wide cloth narrows %+v", d.Narrowed)
	}
	need := bu(80) + 2*bu(2.5)
	bolt.Width = need
	dressed(t, bolt, g, lattices()["brick"])
	bolt.Width--
	_, err := Dress(bolt, Run{Step: sixSun}, lattices()["brick"], g, 0)
	if err == nil || !strings.Contains(err.Error(), "at least "+need.String()) {
		t.Errorf("a nanometre too narrow: %v, want at least %s", err, need)
	}
}

func BenchmarkDress(b *testing.B) {
	run := mustLay(b, coatBolt, coatBoard, design, sixSun)
	l := pattern.Diagonal(900*geom.Micrometre, sixSun/200)
	for b.Loop() {
		mustDress(b, coatBolt, run, l, 155, true)
	}
}
