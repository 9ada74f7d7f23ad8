package main

import (
	"tsugime/repeat"
	"tsugime/repeat/bench"
)

type toolJSON struct {
	Kind   string `json:"kind"`
	Number string `json:"number"`
	Size   *mm    `json:"size_mm,omitempty"` // a punch has a shape instead
}

type passJSON struct {
	Stage  string    `json:"stage"`
	Method string    `json:"method"`
	Tool   *toolJSON `json:"tool"` // null where the rack has none
	Size   *mm       `json:"size_wanted_mm,omitempty"`
	Count  int       `json:"count"`
	Length rounded   `json:"lines_mm"`
	Times  int       `json:"times"`
	Travel rounded   `json:"travel_mm"`
	Hours  rounded   `json:"hours"`
}

type missingJSON struct {
	Kind    string    `json:"kind"`
	Size    mm        `json:"size_mm"`
	Outline string    `json:"outline_mm,omitempty"`
	Count   int       `json:"count"`
	Motif   int       `json:"motif"`
	Nearest *toolJSON `json:"nearest"`
	Strain  rounded   `json:"strain_pct"`
}

type strainJSON struct {
	Tool  toolJSON `json:"tool"`
	Size  mm       `json:"drawn_mm"`
	Off   mm       `json:"off_mm"`
	Pct   rounded  `json:"off_pct"`
	Count int      `json:"count"`
}

type benchSheetJSON struct {
	Sheet    int           `json:"sheet"`
	CutOuts  int           `json:"cut_outs"`
	Stars    int           `json:"stars"`
	Pile     int           `json:"pile"`
	PileMost int           `json:"pile_most"`
	Saleable int           `json:"saleable"`
	Hours    rounded       `json:"hours"`
	Days     rounded       `json:"days"`
	Length   rounded       `json:"lines_mm"`
	Travel   rounded       `json:"travel_mm"`
	Passes   []passJSON    `json:"passes"`
	Strained []strainJSON  `json:"strained"`
	Missing  []missingJSON `json:"missing"`
}

type rateJSON struct {
	Method  string  `json:"method"`
	Cut     rounded `json:"minutes_per_cut_out"`
	MM      rounded `json:"minutes_per_mm"`
	Jobs    int     `json:"jobs"`
	Scatter rounded `json:"scatter_pct"`
}

type benchJSON struct {
	Schema   int              `json:"schema"`
	DayHours rounded          `json:"day_hours"`
	Hours    rounded          `json:"hours"`
	Days     rounded          `json:"days"`
	Sheets   []benchSheetJSON `json:"sheets"`
	Rates    []rateJSON       `json:"rates"`
	Findings []findingJSON    `json:"findings"`
}

func benchDocument(b repeat.Bench) benchJSON {
	doc := benchJSON{
		Schema: schema, DayHours: rounded(b.Sheets[0].Plan.DayHours), Hours: rounded(b.Hours()), Days: rounded(b.Days()),
		Rates: []rateJSON{}, Findings: []findingJSON{},
	}
	for _, s := range b.Sheets {
		doc.Sheets = append(doc.Sheets, benchSheetDocument(s))
	}
	for _, m := range bench.Methods() {
		r := b.Rates.Rate(m)
		doc.Rates = append(doc.Rates, rateJSON{string(m), rounded(r.CutMin), rounded(r.MMMin), r.Jobs, rounded(100 * r.Scatter)})
	}
	for _, f := range benchFindings(b) {
		doc.Findings = append(doc.Findings, findingJSON{f.Code, string(f.Severity), string(f.Domain), at(f.At), f.Text, f.Remedy})
	}
	return doc
}

func benchSheetDocument(s repeat.BenchSheet) benchSheetJSON {
	p, rack := s.Plan, s.Assignment.Rack
	doc := benchSheetJSON{
		Sheet: s.Number, CutOuts: p.CutOuts, Stars: p.StarHoles, Pile: p.Pile, PileMost: p.PileMost, Saleable: p.Saleable,
		Hours: rounded(p.Hours), Days: rounded(p.Days), Length: rounded(p.LengthMM), Travel: rounded(p.TravelMM),
		Passes: []passJSON{}, Strained: []strainJSON{}, Missing: []missingJSON{},
	}
	for _, pass := range p.Passes {
		row := passJSON{
			Stage: string(pass.Stage), Method: string(pass.Method), Tool: toolDocument(rack, pass.Tool), Count: pass.Count,
			Length: rounded(pass.LengthMM), Times: pass.Times, Travel: rounded(pass.TravelMM), Hours: rounded(pass.Hours),
		}
		if pass.Size > 0 {
			size := mm(pass.Size)
			row.Size = &size
		}
		doc.Passes = append(doc.Passes, row)
	}
	for _, x := range s.Assignment.Strained() {
		doc.Strained = append(doc.Strained, strainJSON{
			*toolDocument(rack, x.Tool), mm(x.Size), mm(x.Strain.By), rounded(x.Strain.Pct), x.Count,
		})
	}
	for _, m := range s.Assignment.Missing {
		doc.Missing = append(doc.Missing, missingJSON{
			string(m.Kind), mm(m.Size), string(m.Outline.AppendPathData(nil, 4)), m.Count, int(m.Motif), toolDocument(rack, m.Nearest), rounded(m.Strain.Pct),
		})
	}
	return doc
}

// toolDocument returns a tool of the rack, nil for none.
func toolDocument(r bench.Rack, n int) *toolJSON {
	t, ok := r.Tool(n)
	if !ok {
		return nil
	}
	doc := &toolJSON{Kind: string(t.Kind), Number: t.Number}
	if t.Kind != bench.Punch {
		size := mm(t.Size)
		doc.Size = &size
	}
	return doc
}
