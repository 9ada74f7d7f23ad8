package document

import (
	"bytes"
	"encoding/json"
	"errors"
	"reflect"
	"strings"
	"testing"
)

// older returns Defaults as a file in which step and bolt stand as an older
// version might have had them.
func older(t *testing.T) []byte {
	t.Helper()
	var b bytes.Buffer
	if err := Write(&b, Defaults()); err != nil {
		t.Fatal(err)
	}
	return bytes.Replace(b.Bytes(), []byte(`"sheet": {`), []byte(`"paper_sheet": {`), 1)
}

// Two steps, each of which needs the one before.
var renamed = []migration{
	func(top map[string]json.RawMessage) error {
		top["stencil"] = top["paper_sheet"]
		delete(top, "paper_sheet")
		return nil
	},
	func(top map[string]json.RawMessage) error {
		if top["stencil"] == nil {
			return errors.New("stencil: it is missing; add it")
		}
		top["sheet"] = top["stencil"]
		delete(top, "stencil")
		return nil
	},
}

func TestOlderFilesAreBroughtForwardStepByStep(t *testing.T) {
	got, err := decode(older(t), renamed)
	if err != nil {
		t.Fatal(err)
	}
	if want := Defaults(); !reflect.DeepEqual(got, want) {
		t.Errorf("got  %+v\nwant %+v", got, want)
	}
}

func TestAFailedStepNamesTheVersions(t *testing.T) {
	text := bytes.Replace(older(t), []byte(`"version": 1`), []byte(`"version": 2`), 1)
	_, err := decode(text, renamed)
	want := "bring the order from version 2 to 3: stencil: it is missing; add it"
	if err == nil || err.Error() != want {
		t.Errorf("got  %v\nwant %s", err, want)
	}
}

func TestTheNewestVersionIsOneMoreThanTheSteps(t *testing.T) {
	for version, want := range map[string]string{
		"3": `"sheet" is missing`, // no step is left to make it
		"4": "version 4 of the order format, this program knows up to 3",
	} {
		text := bytes.Replace(older(t), []byte(`"version": 1`), []byte(`"version": `+version), 1)
		if _, err := decode(text, renamed); err == nil || !strings.Contains(err.Error(), want) {
			t.Errorf("version %s: got %v, want …%s…", version, err, want)
		}
	}
}

// What is wrong in a file that was brought forward is named by its path; a line
// would be one of a text that nobody has.
func TestABroughtForwardFaultHasNoLine(t *testing.T) {
	text := bytes.Replace(older(t), []byte(`"pile": 7`), []byte(`"pile": 700`), 1)
	_, err := decode(text, renamed)
	var fault *Fault
	if !errors.As(err, &fault) || fault.Line != 0 || fault.Path != "sheet.paper.pile" {
		t.Errorf("got %#v, want a fault at sheet.paper.pile without a line", err)
	}
}
