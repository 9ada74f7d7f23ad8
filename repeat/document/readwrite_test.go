package document_test

import (
	"bytes"
	"encoding/json"
	"errors"
	"io"
	"reflect"
	"strings"
	"testing"
	"testing/iotest"

	"tsugime/assets"
	"tsugime/repeat/document"
	"tsugime/repeat/geom"
)

func TestAnOrderComesBackFromItsFile(t *testing.T) {
	orders := map[string]document.Order{"full": full(t), "defaults": document.Defaults(), "ground": ground(t, 300)}
	for _, s := range assets.Starters() {
		orders[s.Name] = starter(t, s.Name)
	}
	for name, want := range orders {
		text := written(t, want)
		if got := read(t, text); !reflect.DeepEqual(got, want) {
			t.Errorf("%s: got\n%+v\nwant\n%+v\nfrom\n%s", name, got, want, text)
		}
		if again := written(t, read(t, text)); again != text {
			t.Errorf("%s: written again it is\n%s\nit was\n%s", name, again, text)
		}
	}
}

// The reader of the Go library takes what Write writes, and finds the same keys.
func TestTheFileIsJSONForOthersToo(t *testing.T) {
	var file struct {
		Format  string
		Version int
		Sheet   struct {
			Step json.Number `json:"step_mm"`
		}
		Unit struct {
			Motifs []struct {
				ID int
				At []json.Number `json:"at_mm"`
			}
		}
	}
	text := written(t, full(t))
	if err := json.Unmarshal([]byte(text), &file); err != nil {
		t.Fatal(err)
	}
	if file.Format != "tsugime order" || file.Version != 1 || file.Sheet.Step != "181.818182" || file.Unit.Motifs[0].At[0] != "1.000001" {
		t.Errorf("got %+v from\n%s", file, text)
	}
}

func TestOneEditChangesFewLines(t *testing.T) {
	o := starter(t, "leaf")
	before := written(t, o)
	moved, err := document.MoveMotif(o, 2, geom.PtMM(0.5, 0))
	if err != nil {
		t.Fatal(err)
	}
	if lines := changedLines(before, written(t, moved)); len(lines) != 1 {
		t.Errorf("moving a motif changes %v, want one line", lines)
	}
	stepped, err := document.SetStep(o, geom.MM(180))
	if err != nil {
		t.Fatal(err)
	}
	if lines := changedLines(before, written(t, stepped)); len(lines) != 1 {
		t.Errorf("setting the step changes %v, want one line", lines)
	}
}

// edited returns the file of full with one text in place of another.
func edited(t testing.TB, old, new string) string {
	t.Helper()
	text := written(t, full(t))
	if strings.Count(text, old) != 1 {
		t.Fatalf("%q stands %d times in\n%s", old, strings.Count(text, old), text)
	}
	return strings.Replace(text, old, new, 1)
}

func TestKeysOfOthersAreKept(t *testing.T) {
	text := edited(t, `"step_mm": 181.818182,`, `"step_mm": 181.818182, "ours": {"b": [1, 2.50, null], "a": "x  y"},`)
	text = strings.Replace(text, `"version": 1,`, `"version": 1, "maker": "shop \u00e9", "empty": {},`, 1)
	text = strings.Replace(text, `{"id": 3,`, `{"id": 3, "colour": "red",`, 1)
	text = strings.Replace(text, `"diameter_mm": 0.5}, "at_mm"`, `"diameter_mm": 0.5, "wear": 1e-3}, "at_mm"`, 1)
	text = strings.Replace(text, `{"name": "awl",`, `{"name": "awl", "drawer": 4,`, 1)
	text = strings.Replace(text, `"path": `, `"hand": true, "path": `, 1)
	text = strings.Replace(text, `{"name": "dot", "disc": {"diameter_mm": 1.25`, `{"name": "dot", "box": 2, "disc": {"old": true, "diameter_mm": 1.25`, 1)
	text = strings.Replace(text, `"pile": 6`, `"pile": 6, "mill": "old"`, 1)
	o := read(t, text)
	out := written(t, o)
	for _, kept := range []string{
		`"ours": {"b":[1,2.50,null],"a":"x  y"}`, `"maker": "shop \u00e9"`, `"empty": {}`, `"colour": "red"}`,
		`{"diameter_mm": 0.5, "wear": 1e-3}`, `"drawer": 4}`, `"hand": true}`, `{"diameter_mm": 1.25, "old": true}, "box": 2}`, `"mill": "old"`,
	} {
		if !strings.Contains(out, kept) {
			t.Errorf("%s is lost in\n%s", kept, out)
		}
	}
	if again := written(t, read(t, out)); again != out {
		t.Errorf("written again it is\n%s\nit was\n%s", again, out)
	}
	o, err := document.DeleteMotifs(o, 3)
	if err != nil {
		t.Fatal(err)
	}
	out = written(t, o)
	if strings.Contains(out, "colour") || !strings.Contains(out, "maker") {
		t.Errorf("without motif 3 its own keys should go and the rest stay:\n%s", out)
	}
}

func TestWhatAFileLeavesOutIsTheDefault(t *testing.T) {
	o := read(t, `{"format": "tsugime order", "version": 1, "sheet": {"step_mm": 150},
		"unit": {"lattice": {"a_mm": [3, 0], "b_mm": [0, 3]}, "motifs": [{"id": 4, "disc": {"diameter_mm": 1}, "at_mm": [0, 0]}]}}`)
	want := document.Defaults()
	want.Sheet.Step = geom.MM(150)
	want.Unit, want.NextID = o.Unit, 5
	if !reflect.DeepEqual(o, want) {
		t.Errorf("got  %+v\nwant %+v", o, want)
	}
	marked := "\ufeff" + written(t, o)
	if got := read(t, marked); !reflect.DeepEqual(got, o) {
		t.Errorf("a byte order mark changes the order to %+v", got)
	}
}

func TestABadOrderIsNotWritten(t *testing.T) {
	o := full(t)
	o.Sheet.Step = 0
	var b bytes.Buffer
	if err := document.Write(&b, o); err == nil || b.Len() > 0 {
		t.Errorf("error %v, %d bytes written", err, b.Len())
	}
}

func TestErrorsOfReaderAndWriterAreTold(t *testing.T) {
	lost := errors.New("the disk is gone")
	if _, err := document.Read(iotest.ErrReader(lost)); !errors.Is(err, lost) {
		t.Errorf("reading: got %v", err)
	}
	r, w := io.Pipe()
	r.CloseWithError(lost)
	if err := document.Write(w, full(t)); !errors.Is(err, lost) {
		t.Errorf("writing: got %v", err)
	}
}
