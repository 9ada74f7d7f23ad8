package bench

// A Rate is how long a method takes: minutes for each cut-out and for each
// millimetre that the blade goes, all passes counted, through one pile.
type Rate struct {
	Method  Method
	CutMin  float64
	MMMin   float64
	Jobs    int     // finished jobs that it was learnt from; 0 for a guess
	Scatter float64 // how far jobs lie off it, as a fraction of their time
}

// Rates are a cutter's own rates.
type Rates struct {
	DayHours float64 // hours at the bench a day; 0 for UsualDayHours
	Of       []Rate  // methods that it lacks are guessed
}

// UsualDayHours is a day at the bench where the cutter has said nothing.
const UsualDayHours = 8

func (r Rates) hoursADay() float64 {
	if r.DayHours > 0 {
		return r.DayHours
	}
	return UsualDayHours
}

// guesses are rates to begin with. A dealer's page gives half a month to over a
// month for a sheet of small dots; with the 40,000 to 50,000 holes that another
// source counts that is about 2,000 holes a day (computed). The other rates have no
// source: finished jobs must replace them.
func guesses() []Rate {
	return []Rate{
		{Method: Kiribori, CutMin: 8 * 60.0 / 2000},
		{Method: Dogubori, CutMin: 0.3},
		{Method: Tsukibori, CutMin: 0.3, MMMin: 0.25},
		{Method: Hikibori, CutMin: 0.2, MMMin: 0.08},
		{Method: Shimabori, CutMin: 0.2, MMMin: 0.01},
	}
}

// Rate returns the rate of a method: the cutter's own, or a guess.
func (r Rates) Rate(m Method) Rate {
	for _, own := range r.Of {
		if own.Method == m {
			return own
		}
	}
	for _, g := range guesses() {
		if g.Method == m {
			return g
		}
	}
	return Rate{Method: m}
}

// hours is how long a pass takes.
func (r Rates) hours(p Pass) float64 {
	rate := r.Rate(p.Method)
	return (float64(p.Count)*rate.CutMin + p.LengthMM*float64(p.Times)*rate.MMMin) / 60
}
