package bench_test

import (
	"bytes"
	"encoding/json"
	"io"
	"math/rand/v2"
	"reflect"
	"strconv"
	"strings"
	"testing"

	"tsugime/repeat/bench"
	"tsugime/repeat/geom"
	"tsugime/repeat/repeattest"
)

func fullRack(t testing.TB) bench.Rack {
	return bench.Rack{
		Tools: []bench.Tool{
			{Kind: bench.Awl, Number: "7", Size: geom.MM(0.45), Condition: bench.Sharp, Note: "thin, \"hard\" steel"},
			{Kind: bench.Punch, Number: "plum 2", Outline: outline(t, shapes[2]), Condition: bench.Worn},
			{Kind: bench.Knife, Number: "k1", Size: geom.MM(1.2)},
			{Kind: bench.Pair, Number: "縞 3", Size: 495_001, Condition: bench.Broken},
		},
		Limits: []bench.Limit{{Method: bench.Kiribori, Hole: geom.MM(0.35), Web: geom.MM(0.3), Pile: 8, Source: bench.Own}},
	}
}

func written(t testing.TB, r bench.Rack) []byte {
	t.Helper()
	var b bytes.Buffer
	if err := bench.WriteRack(&b, r); err != nil {
		t.Fatal(err)
	}
	return b.Bytes()
}

func TestARackComesBackFromItsFile(t *testing.T) {
	want := fullRack(t)
	got, err := bench.ReadRack(bytes.NewReader(written(t, want)))
	if err != nil {
		t.Fatal(err)
	}
	// An outline's arcs may come back in other pieces; what it covers may not.
	if l, ok := bench.LikenessOf(got.Tools[1].Outline, want.Tools[1].Outline, 20); !ok {
		t.Errorf("the punch's outline is off by %s mm", l.Off)
	}
	got.Tools[1].Outline = want.Tools[1].Outline
	if !reflect.DeepEqual(got, want) {
		t.Errorf("got %+v\nwant %+v", got, want)
	}
}

func TestTheSameRackGivesTheSameBytes(t *testing.T) {
	if a, b := written(t, fullRack(t)), written(t, fullRack(t)); !bytes.Equal(a, b) {
		t.Error("two files of one rack differ")
	}
	read, err := bench.ReadRack(bytes.NewReader(written(t, fullRack(t))))
	if err != nil || !bytes.Equal(written(t, read), written(t, fullRack(t))) {
		t.Error("a rack read and written again is another file")
	}
}

// Python's csv module reads what is written, value by value.
func TestAnotherReaderFindsTheWholeRack(t *testing.T) {
	path := repeattest.Put(t, "rack.csv", written(t, fullRack(t)))
	said := repeattest.Tool(t, "python3", "/usr/bin/python3", "-c",
		"import csv,json,sys; print(json.dumps(list(csv.DictReader(open(sys.argv[1],encoding='utf-8',newline='')))))", path)
	var rows []map[string]string
	if err := json.Unmarshal([]byte(said), &rows); err != nil {
		t.Fatal(err)
	}
	if len(rows) != 5 || rows[0]["size_mm"] != "0.45" || rows[0]["note"] != `thin, "hard" steel` ||
		rows[3]["number"] != "縞 3" || rows[3]["size_mm"] != "0.495001" || rows[4]["kind"] != "kiribori" || rows[4]["pile"] != "8" {
		t.Errorf("it reads %v", rows)
	}
}

func TestFaultsOfARackNameLineValueAndRemedy(t *testing.T) {
	head := "kind,number,size_mm,web_mm,pile,outline_mm,condition,note\n"
	for _, c := range []struct{ text, want string }{
		{"", "the file is empty; its first line names the columns"},
		{"kind,number,size\n", `line 1: there is no column "size"; the first line names columns of kind,number,size_mm`},
		{"kind,kind\n", "line 1, kind: the column comes twice"},
		{"number\n", "line 1, kind: the column is missing"},
		{head + "drill,1,0.4,,,,,\n", `line 2, kind: there is no kind "drill"`},
		{head + "awl,,0.4,,,,,\n", "line 2, number: a tool without a number"},
		{head + "awl,1,0.4,,,,,\n\nawl,1,0.5,,,,,\n", `line 4, number: "1" is the tool of line 2 already`},
		{head + "awl,1,wide,,,,,\n", "line 2, size_mm:"},
		{head + "awl,1,0.01,,,,,\n", "line 2, size_mm: a size of 0.01 mm is out of bounds"},
		{head + "punch,1,,,,,,\n", "line 2, outline_mm: a punch needs the outline"},
		{head + "punch,1,,,,M0 0L,,\n", "line 2, outline_mm: path data"},
		{head + "awl,1,0.4,,,,rusty,\n", `line 2, condition: there is no condition "rusty"`},
		{head + "kiribori,,0.4,,seven,,,\n", `line 2, pile: "seven" is no whole number up to 50`},
		{head + "awl,1,0.4,,,,,,extra\n", "line 2: 9 values under 8 columns"},
		{head + "awl,\"1,0.4\n", "quote"},
		{head + "awl,1,0.4,,,,,a\x07b\n", "line 2, note:"},
	} {
		_, err := bench.ReadRack(strings.NewReader(c.text))
		if err == nil || !strings.Contains(err.Error(), c.want) {
			t.Errorf("%q: %v, want %q", c.text, err, c.want)
		}
	}
}

func TestColumnsMayStandInAnyOrderAndWithAMark(t *testing.T) {
	r, err := bench.ReadRack(strings.NewReader("\ufeffSize_mm,kind,number\r\n1.5 bu,awl,9\r\n"))
	if err != nil || len(r.Tools) != 1 || r.Tools[0].Size != 4_545_455 && r.Tools[0].Size != 4_545_454 {
		t.Errorf("%+v, %v; want an awl of 1.5 kane bu", r, err)
	}
}

func TestARackOfThousandsIsReadAndOneTooLargeRefused(t *testing.T) {
	var many bench.Rack
	rnd := rand.New(rand.NewPCG(1, 9))
	for i := range 10_000 {
		many.Tools = append(many.Tools, awl(strconv.Itoa(i), 0.3+rnd.Float64()))
	}
	got, err := bench.ReadRack(bytes.NewReader(written(t, many)))
	if err != nil || len(got.Tools) != 10_000 {
		t.Errorf("%d tools read, %v", len(got.Tools), err)
	}
	many.Tools = append(many.Tools, awl("one more", 1))
	if _, err := bench.ReadRack(bytes.NewReader(written(t, many))); err == nil || !strings.Contains(err.Error(), "more than 10000 tools") {
		t.Errorf("one more: %v", err)
	}
	if _, err := bench.ReadRack(io.MultiReader(strings.NewReader("kind\n"), endless{})); err == nil || !strings.Contains(err.Error(), "larger than") {
		t.Errorf("a file without end: %v", err)
	}
}

// endless is a file of empty lines that never ends.
type endless struct{}

func (endless) Read(b []byte) (int, error) {
	for i := range b {
		b[i] = '\n'
	}
	return len(b), nil
}

func TestAnOrdersOwnToolsJoinTheRack(t *testing.T) {
	r := bench.Rack{Tools: []bench.Tool{awl("7", 0.45), awl("8", 0.5)}}
	joined := r.With(awl("7", 0.45), awl("7", 0.46), awl("9", 0.6))
	if len(joined.Tools) != 4 || len(r.Tools) != 2 {
		t.Errorf("%d tools joined (%d before), want 4: the one that is there already is not taken twice", len(joined.Tools), len(r.Tools))
	}
}

func FuzzReadRack(f *testing.F) {
	f.Add(string(written(f, fullRack(f))))
	f.Add("kind,number,size_mm\nawl,1,0.4\n")
	f.Fuzz(func(t *testing.T, text string) {
		r, err := bench.ReadRack(strings.NewReader(text))
		if err != nil {
			return
		}
		again, err := bench.ReadRack(bytes.NewReader(written(t, r)))
		if err != nil || len(again.Tools) != len(r.Tools) || len(again.Limits) != len(r.Limits) {
			t.Errorf("a rack that was read comes back as %+v, %v", again, err)
		}
	})
}
