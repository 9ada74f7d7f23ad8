package document

import (
	"encoding/json"
	"fmt"
	"strconv"
)

// A migration takes an order file of one version to the next: it changes the
// members of the file's top object. It need not touch "version".
type migration func(top map[string]json.RawMessage) error

// migrations are the ways from version 1 to 2, from 2 to 3 and so on. There is
// only version 1 yet.
var migrations []migration

// migrate looks at format and version and returns data as the present version,
// which is one more than there are steps, and whether it had to be changed.
func migrate(data []byte, steps []migration) (present []byte, changed bool, err error) {
	version, fault := header(data)
	if fault != nil {
		return nil, false, fault
	}
	newest := len(steps) + 1
	if version > newest {
		return nil, false, faultf("version", "the file is version %d of the order format, this program knows up to %d; open it with a newer Tsugime",
			version, newest)
	}
	if version == newest {
		return data, false, nil
	}
	var top map[string]json.RawMessage
	if err := json.Unmarshal(data, &top); err != nil {
		return nil, false, fmt.Errorf("bring the order from version %d to %d: %w", version, newest, err)
	}
	for v := version; v < newest; v++ {
		if err := steps[v-1](top); err != nil {
			return nil, false, fmt.Errorf("bring the order from version %d to %d: %w", v, v+1, err)
		}
	}
	top["version"] = strconv.AppendInt(nil, int64(newest), 10)
	present, err = json.Marshal(top)
	return present, true, err
}

// header reads "format" and "version" and no further.
func header(data []byte) (version int, fault *Fault) {
	r := reader{scan: scan{data: data}}
	if r.peek() != '{' {
		r.failf(r.at, "this is no order file: it should start with {, not %s", r.next())
		return 0, r.fault
	}
	at, seen := r.at, uint64(0)
	r.object(func(key []byte) {
		switch string(key) {
		case "format":
			r.once(&seen, 0)
			from := r.at
			if format := string(r.text()); r.fault == nil && format != formatName {
				r.failf(from, "this is a %.40q, not a %q; open another file", format, formatName)
			}
		case "version":
			r.once(&seen, 1)
			from := r.at
			if version = r.integer(); r.fault == nil && version < 1 {
				r.failf(from, "there is no version %d; the first is 1", version)
			}
		default:
			r.skip()
		}
		r.done = seen == 3
	})
	if seen&1 == 0 {
		r.missing(at, "format")
	}
	if seen&2 == 0 {
		r.missing(at, "version")
	}
	return version, r.fault
}
