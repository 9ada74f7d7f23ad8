package cloth

import (
	"bytes"
	"fmt"
	"math/rand/v2"
	"os"
	"path/filepath"
	"strconv"
	"strings"
	"testing"

	"tsugime/repeat/geom"
	"tsugime/repeat/repeattest"
)

// program writes a question as a mixed-integer programme in the CPLEX LP
// language, in units along. Panels keep their turn and don't shift. A seam has a
// yes-or-no for each column of the lattice within the tolerance, and a whole
// number of repeats. It knows the lattice only as columns and repeats.
func program(m Matching) []byte {
	var rows, bounds, wholes, choices bytes.Buffer
	whole := int(m.Limit / unit)
	panels := m.Laying.Panels
	for i, p := range panels {
		fmt.Fprintf(&rows, " end%d: used - y%d >= %d\n", i, i, p.Length/unit)
		fmt.Fprintf(&bounds, " 0 <= y%d <= %d\n", i, whole)
		for j := range i {
			if q := panels[j]; q.X >= p.X+p.Width || p.X >= q.X+q.Width {
				continue
			}
			fmt.Fprintf(&rows, " after%d_%d: y%d - y%d + %d b%d_%d >= %d\n", i, j, i, j, whole, i, j, panels[j].Length/unit)
			fmt.Fprintf(&rows, " before%d_%d: y%d - y%d - %d b%d_%d >= %d\n", i, j, j, i, whole, i, j, int(p.Length/unit)-whole)
			fmt.Fprintf(&choices, " b%d_%d\n", i, j)
		}
	}
	for x := range m.Laying.Seams {
		writeSeam(m, x, whole, &rows, &bounds, &wholes, &choices)
	}
	for lane, need := range laneNeeds(panels) {
		fmt.Fprintf(&rows, " lane%d: used >= %d\n", lane, need/unit)
	}
	return fmt.Appendf(nil, "Minimize\n cloth: used\nSubject To\n%sBounds\n%sGenerals\n%sBinary\n%sEnd\n",
		rows.String(), bounds.String(), wholes.String(), choices.String())
}

// laneNeeds is cut from the millimetre up: what each millimetre of the width
// must hold. It only helps the optimiser to see when it is done.
func laneNeeds(panels []LaidPanel) []geom.Length {
	var needs []geom.Length
	for x := geom.Length(0); x < 40*geom.Millimetre; x += 20 * geom.Millimetre {
		var need geom.Length
		for _, p := range panels {
			if p.X <= x && x < p.X+p.Width {
				need += p.Length
			}
		}
		needs = append(needs, need)
	}
	return needs
}

// writeSeam ties the places of a seam: for one of the columns that are near
// enough across, along is a place of it and a whole number of repeats.
func writeSeam(m Matching, x, whole int, rows, bounds, wholes, choices *bytes.Buffer) {
	s := m.Laying.Seams[x]
	a, b := m.Laying.Panels[s.First], m.Laying.Panels[s.Second]
	a.Y, b.Y = 0, 0
	at, on := a.OnCloth(s.At), b.OnCloth(s.On)
	sa, sb := geom.Length(1), geom.Length(1)
	if s.AtTurned != a.Turned {
		sa = -1
	}
	if s.OnTurned != b.Turned {
		sb = -1
	}
	period := m.Lattice.Along()
	across := sa*at.X - sb*on.X
	var sum, one strings.Builder
	for k, p := range m.Lattice.Places(geom.BoxOf(
		geom.Point{X: across - m.Tolerance}, geom.Point{X: across + m.Tolerance, Y: period - 1})) {
		fmt.Fprintf(&sum, " - %d c%d_%d", p.Y/unit, x, k)
		fmt.Fprintf(&one, " + c%d_%d", x, k)
		fmt.Fprintf(choices, " c%d_%d\n", x, k)
	}
	terms := fmt.Sprintf("%+d y%d %+d y%d", sa, s.First, -sb, s.Second)
	if s.First == s.Second {
		terms = fmt.Sprintf("%+d y%d", sa-sb, s.First)
	}
	fmt.Fprintf(rows, " seam%d: %s%s - %d k%d = %d\n", x, terms, sum.String(), period/unit, x, (sb*on.Y-sa*at.Y)/unit)
	if one.Len() > 0 {
		fmt.Fprintf(rows, " one%d:%s = 1\n", x, one.String())
	} else {
		fmt.Fprintf(rows, " none%d: used <= -1\n", x)
	}
	repeats := 3*whole/int(period/unit) + 3
	fmt.Fprintf(bounds, " -%d <= k%d <= %d\n", repeats, x, repeats)
	fmt.Fprintf(wholes, " k%d\n", x)
}

// optimum asks the GNU Linear Programming Kit's solver for the least cloth of a
// programme; false where it says that there is none.
func optimum(t *testing.T, programme []byte) (geom.Length, bool) {
	t.Helper()
	in := repeattest.Put(t, "match.lp", programme)
	out := filepath.Join(t.TempDir(), "match.txt")
	said := repeattest.Tool(t, "glpk-utils", "glpsol", "--lp", in, "--cuts", "-o", out)
	if strings.Contains(said, "PROBLEM HAS NO") || strings.Contains(said, "INTEGER OPTIMAL SOLUTION FOUND") == false {
		if !strings.Contains(said, "NO INTEGER FEASIBLE") && !strings.Contains(said, "NO PRIMAL FEASIBLE") {
			t.Fatalf("glpsol came to no end:\n%s", said)
		}
		return 0, false
	}
	data, err := os.ReadFile(out)
	if err != nil {
		t.Fatal(err)
	}
	_, rest, ok := strings.Cut(string(data), "Objective:  cloth = ")
	if !ok {
		t.Fatalf("no objective in\n%s", data)
	}
	v, err := strconv.ParseFloat(strings.Fields(rest)[0], 64)
	if err != nil {
		t.Fatal(err)
	}
	return geom.Length(v+0.5) * unit, true
}

// A general optimiser finds the same least cloth for 6 to 10 panels: glpsol of
// GLPK, by simplex and branch and cut, from the same data. Told our answer as
// the most that is needed, it comes to an end; these questions are such that it
// does so soon.
func TestSolverAgreesWithAGeneralOptimiser(t *testing.T) {
	matched, dear := 0, 0
	for _, c := range []struct {
		more int // seams above two
		seed []int
	}{
		{0, []int{0, 1, 2, 3, 6, 9, 12, 15, 18, 19, 22, 31, 34, 36, 39, 41, 45, 49, 52, 53, 54}},
		{1, []int{0, 10, 21, 25, 47, 53}},
	} {
		for _, k := range c.seed {
			ok, cost := compared(t, k, 2+k%3+c.more)
			if ok {
				matched++
			}
			if cost > 0 {
				dear++
			}
		}
	}
	if matched < 20 || dear < 6 {
		t.Errorf("only %d questions can be matched, %d of them at the cost of cloth", matched, dear)
	}
}

// compared asks both about one question of 6 to 10 panels.
func compared(t *testing.T, seed, seams int) (ok bool, cost geom.Length) {
	t.Helper()
	n := 6 + seed%5
	z := puzzle{draw: rand.New(rand.NewPCG(5, uint64(seed)))}
	m := z.question(n, seams, seed%2 == 1, false)
	q := newMatcher(m)
	a, ok := q.solve(numbers(len(q.goals)))
	if ok {
		plain, _ := q.solve(nil)
		m.Limit, cost = a.used, a.used-plain.used
	}
	want, can := optimum(t, program(m))
	if ok != can || ok && a.used != want || ok && !a.exact {
		t.Errorf("seed %d, %d panels: %v %s, the optimiser %v %s", seed, n, ok, a.used, can, want)
	}
	return ok, cost
}
