package cloth

import (
	"fmt"
	"math"
)

// A Growth is by how much the sheet is longer along than it was taken to be when
// it was cut, as it dries through the job: fractions of the step, negative where
// it is shorter. A sheet that is damped all the time keeps its start.
type Growth struct {
	Start, End float64
	// Half is after how many placements half of the way from Start to End is
	// done, as things dry by themselves: Start·2^(−n/Half) towards End. Zero
	// takes the way in a straight line, from the first placement to the last.
	Half int
}

// maxGrowth bounds a growth: ten times what wet paper of the trade is guessed to
// grow.
const maxGrowth = 0.1

func (g Growth) check() error {
	for _, v := range []float64{g.Start, g.End} {
		if !(math.Abs(v) <= maxGrowth) {
			return fmt.Errorf("register: a sheet that grows by %g %% is out of bounds; give −%g to %g %%", 100*v, 100*maxGrowth, 100*maxGrowth)
		}
	}
	if g.Half < 0 || g.Half > maxPlacements {
		return fmt.Errorf("register: half of the drying after %d placements is out of bounds; give 0 to %d", g.Half, maxPlacements)
	}
	return nil
}

// At returns the growth when placement n (from 0) of so many is laid.
func (g Growth) At(n, of int) float64 {
	switch {
	case g.Start == g.End:
		return g.Start
	case g.Half > 0:
		return g.End + (g.Start-g.End)*math.Exp2(-float64(n)/float64(g.Half))
	case of < 2:
		return g.Start
	}
	return g.Start + (g.End-g.Start)*float64(n)/float64(of-1)
}
