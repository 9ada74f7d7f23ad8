package cloth

import (
	"math"
	"math/rand/v2"
	"strings"
	"testing"

	"tsugime/repeat/geom"
	"tsugime/repeat/pattern"
)

// A sewing school's worked example for 155 cm, bust 84, hip 90: finished body
// 4.25 shaku, (4.25 + 0.40 + 0.05) × 2 = 9.40 kujira shaku, 356 cm; two of them
// 712 cm. By the height table it is the body of 160 cm.
func TestCutBodyAsWorkedInTheBook(t *testing.T) {
	c := mustCut(t, 160)
	if got := c.length(t, "body"); got != bu(425) {
		t.Fatalf("the body is %s mm", got)
	}
	laid, _, err := c.panels()
	if err != nil {
		t.Fatal(err)
	}
	got := laid[leftBody].Length
	if want := geom.KujiraShaku; want.Number(got, 4) != "9.4" {
		t.Errorf("cut body %s kujira shaku, want 9.4", want.Number(got, 4))
	}
	within(t, "one body, cm", got.MM()/10, 356, 0.5)
	within(t, "two bodies, cm", (got+laid[rightBody].Length).MM()/10, 712, 0.5)
}

// A sewing page's worked example for 160 cm with a front edge of 76 cm.
func TestHalfCollarAsWorkedInTheBook(t *testing.T) {
	c := mustCut(t, 160)
	c.values["body"], c.values["front_edge"] = length{160 * geom.Centimetre}, length{76 * geom.Centimetre}
	for _, s := range c.form.sizes {
		if s.name != "half_collar" {
			continue
		}
		if got, err := s.is.length(c.values); err != nil || got != 1095*geom.Millimetre {
			t.Errorf("half collar %s mm, %v, want 1095", got, err)
		}
		return
	}
	t.Error("the form has no half collar")
}

// The centimetres that the shop's table gives beside its shaku.
func TestSizesAgreeWithTheTablesCentimetres(t *testing.T) {
	for _, row := range []struct{ height, body, sleeve, sleeveWidth, shoulder, frontEdge float64 }{
		{150, 152, 49, 32, 30, 76}, {155, 155, 49, 32, 32, 78}, {160, 161, 51, 34, 32, 81},
		{165, 165, 53, 34, 34, 82}, {170, 170, 55, 35, 35, 83},
	} {
		c := mustCut(t, row.height)
		for name, want := range map[string]float64{
			"body": row.body, "sleeve": row.sleeve, "wanted_sleeve_width": row.sleeveWidth, "wanted_shoulder": row.shoulder, "front_edge": row.frontEdge,
		} {
			within(t, name+", cm", c.length(t, name).MM()/10, want, 0.6)
		}
	}
}

// Rules of thumb: the body is as long as the wearer is tall, the sleeve about a
// third or 0.3 of it, the front edge about half.
func TestSizesKeepTheRulesOfThumb(t *testing.T) {
	before := map[string]geom.Length{}
	for cm := 140.0; cm <= 180; cm += 0.5 {
		c := mustCut(t, cm)
		// The table itself is within 1.6 %; carried on to 140 cm it is within 2.9 %.
		tol := 0.016
		if cm < 150 || cm > 170 {
			tol = 0.029
		}
		within(t, "body over height", c.length(t, "body").MM()/10/cm, 1, tol)
		within(t, "sleeve over height", c.length(t, "sleeve").MM()/10/cm, 0.32, 0.035)
		within(t, "front edge over height", c.length(t, "front_edge").MM()/10/cm, 0.5, 0.03)
		for _, name := range []string{"body", "sleeve", "wanted_shoulder", "front_edge"} {
			if now := c.length(t, name); now < before[name] {
				t.Errorf("at %g cm the %s gets smaller: %s after %s", cm, name, now, before[name])
			} else {
				before[name] = now
			}
		}
	}
	if got, want := mustCut(t, 157.5).length(t, "body"), (bu(410)+bu(425))/2; (got - want).Abs() > 1 {
		t.Errorf("body at 157.5 cm: %s, want %s", got, want)
	}
}

// An old yukata, taken apart and measured, had 1,060 cm; the statutory piece of
// 3 jo is normally sold at 3 jo 1 shaku, 11 742 mm; bolts of today have 12.5 to
// 13 m. What a small woman needs lies about the old piece, what a tall one needs
// within a bolt of today.
func TestNeedAgreesWithTheBoltsOfTheTrade(t *testing.T) {
	jo3, jo3shaku1 := geom.MM(11_363.636364), geom.MM(11_742.424242)
	if got := 10 * bu(300); (got - jo3).Abs() > 10 {
		t.Fatalf("3 jo are %s mm", got)
	}
	bolt := Bolt{Width: 370 * geom.Millimetre, Length: 13 * geom.Metre}
	run := mustLay(t, bolt, Board{Length: 7 * geom.Metre}, design, sixSun)
	need := func(cm float64) geom.Length {
		return mustDress(t, bolt, run, pattern.Straight(sixSun, sixSun), cm, false).Used
	}
	if n := need(140); n < 10_600*geom.Millimetre || n > jo3shaku1 {
		t.Errorf("140 cm need %s mm", n)
	}
	within(t, "150 cm against 3 jo 1 shaku, mm", need(150).MM(), jo3shaku1.MM(), 20)
	if n := need(160); n < 12*geom.Metre || n > 12_500*geom.Millimetre {
		t.Errorf("160 cm need %s mm", n)
	}
	for cm := 140.0; cm <= 180; cm++ {
		d := mustDress(t, bolt, run, pattern.Straight(sixSun, sixSun), cm, false)
		if over, strip := 2*d.Panels[leftOverlap].Length, d.Panels[collarPanel].Length+d.Panels[overCollar].Length; over >= strip {
			t.Errorf("%g cm: overlaps of %s mm don't fit beside a collar of %s", cm, over, strip)
		}
	}
}

// What a 37 cm bolt leaves beside the pieces: back 6.7, front 12.4, overlap 3.3 cm.
func TestHiddenClothAsCountedByWidths(t *testing.T) {
	bolt := Bolt{Width: 370 * geom.Millimetre, Length: 13 * geom.Metre}
	run := mustLay(t, bolt, Board{Length: 7 * geom.Metre}, design, sixSun)
	d := mustDress(t, bolt, run, pattern.Straight(sixSun, sixSun), 155, false)
	for _, p := range d.Pieces() {
		want := map[string]float64{
			"left back below the tuck": 67, "right back below the tuck": 67,
			"left front below the tuck": 124, "right front below the tuck": 124,
		}[p.Name]
		if want > 0 {
			within(t, p.Name+": hidden, mm", bolt.Width.MM()-p.Area.Width().MM(), want, 1)
		}
		if strings.HasSuffix(p.Name, "overlap") {
			within(t, p.Name+": hidden, mm", bolt.Width.MM()/2-p.Area.Width().MM(), 33.5, 1)
		}
	}
	if d.Hidden != bu(2.5) {
		t.Errorf("hidden strip %s mm, want 2.5 kujira bu", d.Hidden)
	}
}

func TestPanelsLieOnTheBoltWithoutOverlapping(t *testing.T) {
	run := mustLay(t, coatBolt, coatBoard, design, sixSun)
	for _, match := range []bool{false, true} {
		d := mustDress(t, coatBolt, run, pattern.Diagonal(900*geom.Micrometre, 900*geom.Micrometre), 155, match)
		box := func(p Panel) geom.Box {
			return geom.BoxOf(geom.Point{X: p.X, Y: p.Y}, geom.Point{X: p.X + p.Width, Y: p.Y + p.Length})
		}
		var area, end geom.Length
		for i, p := range d.Panels {
			area += p.Length * (p.Width / geom.Micrometre)
			end = max(end, (p.Y + p.Length))
			if p.X < 0 || p.X+p.Width > d.laying.Width || p.Y < d.Start {
				t.Errorf("%s lies off the bolt: %+v", p.Name, p)
			}
			for _, q := range d.Panels[:i] {
				if both := box(p).Intersect(box(q)); both.Width() > 0 && both.Height() > 0 {
					t.Errorf("%s lies on %s", p.Name, q.Name)
				}
			}
		}
		if d.Used != end-d.Start || d.Panels[0].Y != d.Start {
			t.Errorf("used %s mm from %s, the last panel ends at %s", d.Used, d.Start, end)
		}
		if gap := d.Panels[rightBody].Y - (d.Panels[leftBody].Y + d.Panels[leftBody].Length); gap != d.Extra {
			t.Errorf("extra %s mm, the gap is %s", d.Extra, gap)
		}
	}
}

func TestPiecesShowTheirOwnPanels(t *testing.T) {
	run := mustLay(t, coatBolt, coatBoard, design, sixSun)
	for cm := 140.0; cm <= 180; cm += 2.5 {
		d := mustDress(t, coatBolt, run, pattern.Straight(sixSun, sixSun), cm, true)
		seen := map[string]bool{}
		for _, p := range d.Pieces() {
			if p.Area.Empty() || p.Area.Width() <= 0 || p.Area.Height() <= 0 {
				t.Errorf("%g cm: %s shows nothing", cm, p.Name)
			}
			seen[p.Panel] = true
			for _, q := range d.Panels {
				if q.Name != p.Panel {
					continue
				}
				all := geom.BoxOf(geom.Point{X: q.X, Y: q.Y}, geom.Point{X: q.X + q.Width, Y: q.Y + q.Length})
				if !all.HoldsBox(p.Window()) {
					t.Errorf("%g cm: %s shows %v of a panel %v", cm, p.Name, p.Window(), all)
				}
			}
			corner := p.Area.Min
			if p.FromCloth(p.ToCloth(corner)) != corner {
				t.Errorf("%s: there and back is %v", p.Name, p.FromCloth(p.ToCloth(corner)))
			}
		}
		if len(seen) != panelCount {
			t.Errorf("%g cm: pieces of %d panels, want %d", cm, len(seen), panelCount)
		}
	}
}

// Pieces of one view may touch but not cover each other, the over-collar apart.
func TestPiecesOfAViewLieBesideEachOther(t *testing.T) {
	run := mustLay(t, coatBolt, coatBoard, design, sixSun)
	pieces := mustDress(t, coatBolt, run, pattern.Straight(sixSun, sixSun), 162, false).Pieces()
	for i, p := range pieces {
		for _, q := range pieces[:i] {
			both := p.Area.Intersect(q.Area)
			if p.View == q.View && p.View != CollarView && both.Width() > 0 && both.Height() > 0 {
				t.Errorf("%s covers %s", p.Name, q.Name)
			}
		}
	}
}

// From the back a wearer's left is on the left; from the front on the right.
// The back hangs as the bolt is fed and the front upside down.
func TestPiecesHangTheWayTheyAreWorn(t *testing.T) {
	run := mustLay(t, coatBolt, coatBoard, design, sixSun)
	for _, p := range mustDress(t, coatBolt, run, pattern.Straight(sixSun, sixSun), 160, false).Pieces() {
		if p.View == CollarView {
			continue
		}
		left := strings.HasPrefix(p.Name, "left")
		onLeft := p.Area.Max.X <= 0
		if onLeft != (left == (p.View == BackView)) {
			t.Errorf("%s in the %s view lies at %v", p.Name, p.View, p.Area)
		}
		if p.Turned != (p.View == FrontView) {
			t.Errorf("%s: turned %v", p.Name, p.Turned)
		}
	}
}

// The shoulder is one piece of cloth: back and front begin at the same place.
func TestTheClothRunsOverTheShoulder(t *testing.T) {
	run := mustLay(t, coatBolt, coatBoard, design, sixSun)
	pieces := mustDress(t, coatBolt, run, pattern.Straight(sixSun, sixSun), 160, false).Pieces()
	at := map[string]geom.Box{}
	for _, p := range pieces {
		at[p.Name] = p.Window()
	}
	for _, c := range [][2]string{
		{"left back above the tuck", "left front above the tuck"}, {"right back above the tuck", "right front above the tuck"},
		{"left sleeve back", "left sleeve front"}, {"right sleeve back", "right sleeve front"},
	} {
		back, front := at[c[0]], at[c[1]]
		if back.Min.Y != front.Max.Y || back.Intersect(front).Width() <= 0 {
			t.Errorf("%s begins at %v, %s at %v", c[0], back, c[1], front)
		}
	}
	// The side seam takes the same strip from back and front.
	for _, s := range []string{"left", "right"} {
		back, front := at[s+" back below the tuck"], at[s+" front below the tuck"]
		if s == "left" && back.Min.X != front.Min.X || s == "right" && back.Max.X != front.Max.X {
			t.Errorf("%s side: back %v, front %v", s, back, front)
		}
	}
}

// lattices are kinds of grounds whose step is a lattice vector, and one whose
// step is none.
func lattices() map[string]pattern.Lattice {
	row := sixSun / 160
	return map[string]pattern.Lattice{
		"straight":  pattern.Straight(1300*geom.Micrometre, sixSun/140),
		"half-drop": pattern.HalfDrop(22*geom.Millimetre, sixSun/8),
		"brick":     pattern.Brick(9*geom.Millimetre, sixSun/20),
		"diagonal":  pattern.Diagonal(1100*geom.Micrometre, row),
		"leaning":   {A: geom.PtMM(31.7, 12.3), B: geom.PtMM(-8.1, 44.4)},
		"one motif": pattern.Straight(356*geom.Millimetre, sixSun),
	}
}

func TestMatchingTheBackCentreClosesItAlong(t *testing.T) {
	run := mustLay(t, coatBolt, coatBoard, design, geom.MM(sixSun.MM()/0.97))
	for name, l := range lattices() {
		for _, cm := range []float64{147, 155, 163.3} {
			plain := mustDress(t, coatBolt, run, l, cm, false)
			d := mustDress(t, coatBolt, run, l, cm, true)
			s := d.Seams[0]
			if s.Name != BackCentre || s.Priority != 1 || s.Between != [2]string{"left body", "right body"} {
				t.Fatalf("first seam is %+v", s)
			}
			if s.PhaseAlong != 0 || d.Extra < 0 || d.Extra >= sixSun || plain.Extra != 0 {
				t.Errorf("%s, %g cm: phase along %s, extra %s (unmatched %s)", name, cm, s.PhaseAlong, d.Extra, plain.Extra)
			}
			if s.Matched != (s.PhaseAcross.Abs() <= 500*geom.Micrometre) {
				t.Errorf("%s: matched %v with %s across", name, s.Matched, s.PhaseAcross)
			}
			if d.Used != plain.Used+d.Extra {
				t.Errorf("%s: used %s, without the gap of %s it is %s", name, d.Used, d.Extra, plain.Used)
			}
		}
	}
}

// Trying every hundredth of a millimetre finds no shorter gap that closes the
// back to within one such step, and finds one at the gap that Dress takes.
func TestBackGapAgreesWithTryingAllGaps(t *testing.T) {
	const grain = 10 * geom.Micrometre
	run := mustLay(t, coatBolt, coatBoard, design, geom.MM(sixSun.MM()/0.97))
	for name, l := range lattices() {
		d := mustDress(t, coatBolt, run, l, 155, true)
		plain := mustDress(t, coatBolt, run, l, 155, false)
		at := func(gap geom.Length) geom.Point {
			gaps := make([]geom.Length, panelCount)
			gaps[rightBody] = gap
			lay := plain.laying.Laid(inOrder(panelCount), gaps)
			return lay.Phase(lay.Seams[0], l)
		}
		// Where some gap closes the back across too, those that don't are passed.
		closes := func(p geom.Point) bool { return p.X.Abs() <= 500*geom.Micrometre || !d.Seams[0].Matched }
		for gap := geom.Length(0); gap <= d.Extra; gap += grain {
			phase := at(gap)
			off := phase.Y.Abs()
			if gap < d.Extra-grain && off == 0 && closes(phase) {
				t.Errorf("%s: a gap of %s mm closes the back, %s was taken", name, gap, d.Extra)
			}
			if gap >= d.Extra-grain && off > grain {
				t.Errorf("%s: %s mm from the gap taken, the back is off by %s", name, d.Extra-gap, off)
			}
		}
		// Between two tried gaps the phase changes its sign only at a match: no
		// zero lies hidden between them.
		last := at(0).Y
		for gap := grain; gap < d.Extra; gap += grain {
			phase := at(gap)
			now := phase.Y
			if last > 0 && now < 0 && last-now <= 2*grain && closes(phase) {
				t.Errorf("%s: the phase passes zero at %s mm, %s was taken", name, gap, d.Extra)
			}
			last = now
		}
	}
}

func TestPhasesDontChangeByWholeRepeats(t *testing.T) {
	draw := rand.New(rand.NewPCG(1, 2))
	run := mustLay(t, coatBolt, coatBoard, design, sixSun)
	for name, l := range lattices() {
		lay := mustDress(t, coatBolt, run, l, 158, false).Laying()
		for i := range lay.Panels {
			moved := lay
			moved.Panels = append([]LaidPanel(nil), lay.Panels...)
			v := l.At(draw.IntN(41)-20, draw.IntN(41)-20)
			moved.Panels[i].X += v.X
			moved.Panels[i].Y += v.Y
			for _, s := range lay.Seams {
				if got, want := moved.Phase(s, l), lay.Phase(s, l); got != want {
					t.Errorf("%s: %s moved by %v: phase of %s %v, before %v", name, lay.Panels[i].Name, v, s.Name, got, want)
				}
			}
		}
	}
}

func TestSeamsReadTheSameFromBothSides(t *testing.T) {
	run := mustLay(t, coatBolt, coatBoard, design, sixSun)
	for name, l := range lattices() {
		lay := mustDress(t, coatBolt, run, l, 158, false).Laying()
		for _, s := range lay.Seams {
			back := s
			back.First, back.At, back.AtTurned = s.Second, s.On, s.OnTurned
			back.Second, back.On, back.OnTurned = s.First, s.At, s.AtTurned
			if sum := lay.Phase(s, l).Add(lay.Phase(back, l)); !l.Holds(sum) {
				t.Errorf("%s: %s is off by %v, from the other side by %v", name, s.Name, lay.Phase(s, l), lay.Phase(back, l))
			}
		}
	}
}

// What is seen decides: dots drawn through the pieces' own maps, on both sides
// of a seam, lie apart by the seam's phase.
func TestPhaseIsWhatTheDotsShow(t *testing.T) {
	run := mustLay(t, coatBolt, coatBoard, design, sixSun)
	l := lattices()["half-drop"]
	d := mustDress(t, coatBolt, run, l, 158, false)
	find := func(name string) Piece {
		for _, p := range d.Pieces() {
			if p.Name == name {
				return p
			}
		}
		t.Fatalf("no piece %q", name)
		return Piece{}
	}
	for seam, names := range map[string][2]string{
		BackCentre:      {"left back below the tuck", "right back below the tuck"},
		"upper overlap": {"left overlap", "left front below the tuck"},
		"under overlap": {"right front below the tuck", "right overlap"},
		"left sleeve":   {"left sleeve back", "left back above the tuck"},
		"right sleeve":  {"right back above the tuck", "right sleeve back"},
		"collar":        {"collar", "over-collar"},
	} {
		a, b := find(names[0]), find(names[1])
		// Where the pattern's first place and its copies lie, by each map.
		dot := geom.Point{Y: d.Start}
		apart := l.Into(b.FromCloth(dot).Sub(a.FromCloth(dot)))
		for _, s := range d.Seams {
			if s.Name == seam && (s.PhaseAcross != apart.X || s.PhaseAlong != apart.Y) {
				t.Errorf("%s: phase %s across, %s along; the dots are %v apart", seam, s.PhaseAcross, s.PhaseAlong, apart)
			}
		}
	}
}

func TestPatternsThatFitTheBackRunOnAcrossIt(t *testing.T) {
	// Between the two back seam lines lie the bolt's width less two allowances;
	// columns that divide it meet.
	bolt := Bolt{Width: 370 * geom.Millimetre, Length: 13 * geom.Metre}
	run := mustLay(t, bolt, Board{Length: 7 * geom.Metre}, design, sixSun)
	between := bolt.Width - 2*bu(2.5)
	l := pattern.Straight(between/27, sixSun/10)
	s := mustDress(t, bolt, run, l, 160, true).Seams[0]
	if !s.Matched || s.PhaseAcross.Abs() > 27 || s.PhaseAlong != 0 {
		t.Errorf("back centre %+v", s)
	}
}

func TestDressRefusesWhatCantBeCut(t *testing.T) {
	run := mustLay(t, coatBolt, coatBoard, design, sixSun)
	l := pattern.Straight(sixSun, sixSun)
	woman := Body{Kind: WomensKimono, Height: 160 * geom.Centimetre}
	narrow := coatBolt
	narrow.Width = 300 * geom.Millimetre
	early := run
	early.Board.Start = -1
	for name, c := range map[string]struct {
		bolt Bolt
		run  Run
		l    pattern.Lattice
		body Body
		say  string
	}{
		"too small":       {coatBolt, run, l, Body{Kind: WomensKimono, Height: 1399 * geom.Millimetre}, "between 1400 and 1800"},
		"too tall":        {coatBolt, run, l, Body{Kind: WomensKimono, Height: math.MaxInt64}, "between 1400 and 1800"},
		"no garment":      {coatBolt, run, l, Body{Kind: "tent", Height: woman.Height}, "tent"},
		"too narrow":      {narrow, run, l, woman, "too narrow"},
		"no lattice":      {coatBolt, run, pattern.Lattice{}, woman, "lattice"},
		"no bolt":         {Bolt{}, run, l, woman, "bolt"},
		"no run":          {coatBolt, Run{}, l, woman, "step"},
		"start before it": {coatBolt, early, l, woman, "start"},
	} {
		d, err := Dress(c.bolt, c.run, c.l, Garment{Body: c.body, MatchBackCentre: true}, 0)
		if err == nil || !strings.Contains(err.Error(), c.say) {
			t.Errorf("%s: error %v, want one that says %q", name, err, c.say)
		}
		if len(d.Pieces()) != 0 {
			t.Errorf("%s: %d pieces in spite of the error", name, len(d.Pieces()))
		}
	}
}

func TestAShortBoltIsStillLaid(t *testing.T) {
	bolt := coatBolt
	bolt.Length = 5 * geom.Metre
	run := mustLay(t, bolt, coatBoard, design, sixSun)
	d := mustDress(t, bolt, run, pattern.Straight(sixSun, sixSun), 160, true)
	if len(d.Panels) != panelCount || d.Used <= d.Length {
		t.Errorf("%d panels, %s mm used of %s", len(d.Panels), d.Used, d.Length)
	}
	// Lengths are of the finished cloth: 5 m less 30 mm, less three percent.
	if want := geom.MM((5000 - 30) * 0.97); d.Length != want {
		t.Errorf("finished length %s mm, want %s", d.Length, want)
	}
}

func FuzzDressNeverPanics(f *testing.F) {
	f.Add(int64(375e6), -0.03, int64(160e7), int64(1e6), int64(0), int64(0), int64(1e6), int64(181818182))
	f.Add(int64(335e6), 0.5, int64(140e7), int64(1e4), int64(15e8), int64(1e4), int64(-15e8), int64(3e9))
	f.Add(int64(2e9), -0.5, int64(180e7), int64(0), int64(1e4), int64(15e8), int64(0), int64(1e6))
	f.Fuzz(func(t *testing.T, width int64, change float64, height, ax, ay, bx, by, step int64) {
		bolt := Bolt{Width: geom.Length(width), Length: 13 * geom.Metre, ChangeAcross: change, ChangeAlong: change}
		run := Run{Step: geom.Length(step)}
		l := pattern.Lattice{A: geom.Point{X: geom.Length(ax), Y: geom.Length(ay)}, B: geom.Point{X: geom.Length(bx), Y: geom.Length(by)}}
		d, err := Dress(bolt, run, l, Garment{Body: Body{Kind: WomensKimono, Height: geom.Length(height)}, MatchBackCentre: true}, geom.Millimetre)
		if err != nil {
			return
		}
		if len(d.Panels) != panelCount || len(d.Seams) != 8 || d.Extra < 0 || d.Hidden < 0 {
			t.Errorf("%d panels, %d seams, extra %s, hidden %s", len(d.Panels), len(d.Seams), d.Extra, d.Hidden)
		}
	})
}

func BenchmarkLayAndDress(b *testing.B) {
	l := pattern.Diagonal(900*geom.Micrometre, sixSun/200)
	for b.Loop() {
		run := mustLay(b, coatBolt, coatBoard, design, sixSun)
		mustDress(b, coatBolt, run, l, 155, true)
	}
}
