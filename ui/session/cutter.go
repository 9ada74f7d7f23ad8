package session

import (
	"bytes"
	"encoding/json"
	"errors"
	"fmt"
	"io"
	"io/fs"
	"os"

	"tsugime/repeat/bench"
)

// The files of the cutter: one rack and one list of finished jobs for all orders.
const (
	rackFile = "rack.csv"
	jobsFile = "jobs.csv"
	dayFile  = "day.json"
)

// A Cutter is what outlives any order: the tools, the finished jobs and the hours of a
// day at the bench.
type Cutter struct {
	Rack     bench.Rack
	Jobs     []bench.Job
	DayHours float64 // 0 for the usual ones
}

// Rates returns the rates that the jobs teach.
func (c Cutter) Rates() bench.Rates {
	r := bench.Learn(c.Jobs)
	r.DayHours = c.DayHours
	return r
}

// Cutter reads what is kept of the cutter; what isn't there is left empty. Each file
// that can't be read is told in the error by its name and place, the others count.
func (s Store) Cutter() (Cutter, error) {
	var c Cutter
	if s.folder == "" {
		return c, nil
	}
	var faults []error
	read := func(name string, from func(io.Reader) error) {
		f, err := os.Open(s.file(name))
		if errors.Is(err, fs.ErrNotExist) {
			return
		}
		if err == nil {
			err = from(f)
			f.Close()
		}
		if err != nil {
			faults = append(faults, fmt.Errorf("%s: %w; mend the file or bring in another", s.file(name), err))
		}
	}
	read(rackFile, func(in io.Reader) (err error) { c.Rack, err = bench.ReadRack(in); return err })
	read(jobsFile, func(in io.Reader) (err error) { c.Jobs, err = bench.ReadJobs(in); return err })
	read(dayFile, func(in io.Reader) error {
		var day struct {
			Hours float64 `json:"day_hours"`
		}
		if err := json.NewDecoder(io.LimitReader(in, 1<<10)).Decode(&day); err != nil {
			return err
		}
		if !(day.Hours > 0 && day.Hours <= 24) {
			return fmt.Errorf("day_hours: %v hours make no day", day.Hours)
		}
		c.DayHours = day.Hours
		return nil
	})
	return c, errors.Join(faults...)
}

// CutterState tells whether the cutter's files were written since: it is another text
// then.
func (s Store) CutterState() string {
	var state string
	for _, name := range []string{rackFile, jobsFile, dayFile} {
		if info, err := os.Stat(s.file(name)); err == nil {
			state += fmt.Sprintf("%s %d %d\n", name, info.ModTime().UnixNano(), info.Size())
		}
	}
	return state
}

// KeepRack writes the rack whole or not at all. A file that can't be read as a rack is
// put aside first, never lost.
func (s Store) KeepRack(r bench.Rack) error {
	var b bytes.Buffer
	if err := bench.WriteRack(&b, r); err != nil {
		return err
	}
	return s.keepTable(rackFile, b.Bytes(), func(in io.Reader) error { _, err := bench.ReadRack(in); return err })
}

// KeepJobs writes the finished jobs as KeepRack writes the rack.
func (s Store) KeepJobs(jobs []bench.Job) error {
	var b bytes.Buffer
	if err := bench.WriteJobs(&b, jobs); err != nil {
		return err
	}
	return s.keepTable(jobsFile, b.Bytes(), func(in io.Reader) error { _, err := bench.ReadJobs(in); return err })
}

// KeepDay writes the hours of a day at the bench.
func (s Store) KeepDay(hours float64) error {
	if !(hours > 0 && hours <= 24) {
		return fmt.Errorf("%v hours make no day; give more than 0 and at most 24", hours)
	}
	if s.folder == "" {
		return nil
	}
	return s.write(dayFile, fmt.Appendf(nil, "{\"day_hours\": %g}\n", hours))
}

func (s Store) keepTable(name string, data []byte, readable func(io.Reader) error) error {
	if s.folder == "" {
		return nil
	}
	if old, err := os.ReadFile(s.file(name)); err == nil && readable(bytes.NewReader(old)) != nil {
		if err := os.Rename(s.file(name), s.file("unread-"+name)); err != nil {
			return fmt.Errorf("keep %s: %w", name, err)
		}
	}
	return s.write(name, data)
}
