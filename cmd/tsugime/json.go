package main

import (
	"encoding/json"
	"fmt"

	"tsugime/repeat/geom"
)

// schema is the version of every JSON document; it changes when a key does.
const schema = 1

// mm is a length as JSON has it: a number of millimetres, exact.
type mm geom.Length

func (l mm) MarshalJSON() ([]byte, error) { return geom.Length(l).AppendMM(nil, 6), nil }

// at is a place as JSON has it: [x, y] in millimetres.
func at(p geom.Point) [2]mm { return [2]mm{mm(p.X), mm(p.Y)} }

// rounded is a number as JSON has it: to six decimals, so that the last bits of
// a float64 don't make two machines differ.
type rounded float64

func (r rounded) MarshalJSON() ([]byte, error) {
	return json.Marshal(json.Number(fmt.Sprintf("%.6g", float64(r)+0)))
}

// printJSON writes one document to standard output.
func (p program) printJSON(v any) error {
	text, err := json.MarshalIndent(v, "", "  ")
	if err != nil {
		return err
	}
	if _, err := fmt.Fprintf(p.out, "%s\n", text); err != nil {
		return fmt.Errorf("write to standard output: %w", err)
	}
	return nil
}
