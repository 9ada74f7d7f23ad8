package pdf

import (
	"bytes"
	"compress/zlib"
	"fmt"
	"io"
	"math"
	"regexp"
	"strconv"
	"strings"
	"testing"

	"tsugime/export"
	"tsugime/export/exporttest"
	"tsugime/repeat/geom"
	"tsugime/repeat/repeattest"
)

func write(tb testing.TB, b export.Book) []byte {
	tb.Helper()
	var out bytes.Buffer
	if err := WriteBook(&out, b); err != nil {
		tb.Fatal(err)
	}
	return out.Bytes()
}

func single(d export.Drawing) export.Book { return export.Single(&d) }

// paged is Tiny on four pages of 60 × 40 mm, each with a frame and a name of its
// own.
func paged() export.Book {
	tiny := exporttest.Tiny()
	b := export.Book{Title: "Marking sheets 型紙", Subject: "four pages"}
	for i := range 4 {
		corner := geom.PtMM(50*float64(i%2), 30*float64(i/2))
		size := geom.PtMM(50, 30)
		page := export.Drawing{Title: "page", Width: geom.MM(60), Height: geom.MM(40), Layers: []export.Layer{{
			Name:  "page",
			Pen:   export.Pen{Colour: export.Black, Stroke: geom.MM(0.2)},
			Lines: []export.Line{{Points: []geom.Point{geom.PtMM(5, 5), geom.PtMM(55, 5), geom.PtMM(55, 35), geom.PtMM(5, 35)}, Closed: true}},
			Texts: []export.Text{{At: geom.PtMM(30, 4), Height: geom.MM(3), Text: "page " + strconv.Itoa(i+1), Anchor: export.Middle}},
		}}}
		b.Pages = append(b.Pages, export.Page{Drawing: page, Views: []export.View{{
			Of: &tiny, Window: geom.BoxOf(corner, corner.Add(size)), At: geom.PtMM(5, 5),
		}}})
	}
	return b
}

func TestBookIsWrittenLikeThis(t *testing.T) {
	repeattest.Golden(t, "book.pdf.txt", plain(t, write(t, paged())))
}

// plain returns a file as it can be read: streams are inflated, and what depends
// on how well they were deflated is left out: their lengths, the table of
// objects, the identifier.
func plain(t *testing.T, file []byte) []byte {
	t.Helper()
	body, _, _ := bytes.Cut(file, []byte("\nxref\n"))
	body = regexp.MustCompile(`(?m)^(\d+ 0 obj\n)\d+$`).ReplaceAll(body, []byte("${1}LENGTH"))
	var out []byte
	for {
		before, rest, found := bytes.Cut(body, []byte("\nstream\n"))
		out = append(out, before...)
		if !found {
			return append(out, '\n')
		}
		stream, after, _ := bytes.Cut(rest, []byte("\nendstream\n"))
		z, err := zlib.NewReader(bytes.NewReader(stream))
		if err != nil {
			t.Fatal(err)
		}
		content, err := io.ReadAll(z)
		if err != nil {
			t.Fatal(err)
		}
		if bytes.HasPrefix(content, []byte{0, 1, 0, 0}) {
			content = fmt.Appendf(nil, "A FONT OF %d BYTES\n", len(content))
		}
		out = append(append(out, "\nstream\n"...), content...)
		out = append(out, "endstream\n"...)
		body = after
	}
}

func TestSameBookGivesSameBytes(t *testing.T) {
	if a, b := write(t, paged()), write(t, paged()); !bytes.Equal(a, b) {
		t.Error("two files of one book differ")
	}
}

func TestAnotherReaderFindsNoFault(t *testing.T) {
	for name, b := range map[string]export.Book{"single": single(exporttest.Tiny()), "paged": paged(), "field": single(exporttest.Field(500))} {
		said := repeattest.Tool(t, "qpdf", "qpdf", "--check", repeattest.Put(t, name+".pdf", write(t, b)))
		if !strings.Contains(said, "No syntax or stream encoding errors found") {
			t.Errorf("%s: %s", name, said)
		}
	}
}

// Sizes in points come with three decimals: 0.2 µm.
func TestPagesAreOfTheirTrueSize(t *testing.T) {
	var b export.Book
	var want []export.PageSize
	for _, p := range export.Pages() {
		want = append(want, p, p.Turned())
	}
	want = append(want, export.PageSize{Width: MaxPage, Height: geom.MM(123.4567)})
	for _, p := range want {
		b.Pages = append(b.Pages, export.Page{Drawing: export.Drawing{Width: p.Width, Height: p.Height}})
	}
	path := repeattest.Put(t, "sizes.pdf", write(t, b))
	said := repeattest.Tool(t, "poppler-utils", "pdfinfo", "-f", "1", "-l", "99", path)
	sizes := regexp.MustCompile(`Page +\d+ size: +([\d.]+) x ([\d.]+) pts`).FindAllStringSubmatch(said, -1)
	if len(sizes) != len(want) {
		t.Fatalf("%d pages, want %d: %s", len(sizes), len(want), said)
	}
	for i, s := range sizes {
		w, h := number(t, s[1])*25.4/72, number(t, s[2])*25.4/72
		// Six digits are all that is shown, so a long side shows fewer decimals.
		if !near(w, want[i].Width.MM(), math.Max(1e-3, w*5e-6)) || !near(h, want[i].Height.MM(), 1e-3) {
			t.Errorf("page %d is %.4f × %.4f mm, want %s × %s", i+1, w, h, want[i].Width, want[i].Height)
		}
	}
}

func number(t *testing.T, s string) float64 {
	t.Helper()
	v, err := strconv.ParseFloat(s, 64)
	if err != nil {
		t.Fatal(err)
	}
	return v
}

func near(got, want, off float64) bool { return math.Abs(got-want) <= off }

func TestBookTellsWhatItIs(t *testing.T) {
	path := repeattest.Put(t, "book.pdf", write(t, paged()))
	said := repeattest.Tool(t, "poppler-utils", "pdfinfo", path)
	for _, want := range []string{`Title: +Marking sheets 型紙`, `Subject: +four pages`, `Creator: +Tsugime`, `Pages: +4`} {
		if !regexp.MustCompile(want).MatchString(said) {
			t.Errorf("no %q in\n%s", want, said)
		}
	}
	if strings.Contains(said, "Date") {
		t.Errorf("the file carries a date:\n%s", said)
	}
}

func TestViewerIsAskedNotToScale(t *testing.T) {
	if !bytes.Contains(write(t, paged()), []byte("/PrintScaling /None")) {
		t.Error("a viewer is free to shrink the page")
	}
}

func TestEveryWordIsFound(t *testing.T) {
	d := exporttest.Tiny()
	d.Layers[2].Texts = append(d.Layers[2].Texts,
		export.Text{At: geom.PtMM(5, 40), Height: geom.MM(4), Text: "送り (181.8 mm) \\ €½"},
		export.Text{At: geom.PtMM(5, 55), Height: geom.MM(4), Text: "kujira shaku", Bold: true})
	path := repeattest.Put(t, "words.pdf", write(t, single(d)))
	said := repeattest.Tool(t, "poppler-utils", "pdftotext", "-layout", path, "-")
	for _, text := range d.Layers[2].Texts {
		for _, word := range strings.Fields(text.Text) {
			if !strings.Contains(said, word) {
				t.Errorf("%q is not found in %q", word, said)
			}
		}
	}
}

// A reader marks a word where the lettering stands.
func TestWordsStandOverTheirLettering(t *testing.T) {
	d := exporttest.Tiny()
	d.Layers = d.Layers[2:]
	d.Layers[0].Texts = []export.Text{{At: geom.PtMM(50, 45), Height: geom.MM(10), Text: "HHHHHH", Anchor: export.Middle}}
	path := repeattest.Put(t, "word.pdf", write(t, single(d)))
	said := repeattest.Tool(t, "poppler-utils", "pdftotext", "-bbox", path, "-")
	box := regexp.MustCompile(`xMin="([\d.]+)" yMin="[\d.]+" xMax="([\d.]+)"`).FindStringSubmatch(said)
	if box == nil {
		t.Fatalf("no word in %s", said)
	}
	from, to := number(t, box[1])*25.4/72, number(t, box[2])*25.4/72
	half := d.Layers[0].Texts[0].Width().MM() / 2
	if !near(from, 50-half, 1e-3) || !near(to, 50+half, 1e-3) {
		t.Errorf("the word runs from %.3f to %.3f mm, want %.3f to %.3f", from, to, 50-half, 50+half)
	}
}

// Layers are groups that a viewer can hide, one for each name in the book.
func TestLayersCanBeHidden(t *testing.T) {
	path := repeattest.Put(t, "book.pdf", write(t, paged()))
	said := repeattest.Tool(t, "mupdf-tools", "mutool", "show", path, "grep")
	var names []string
	for _, m := range regexp.MustCompile(`/Type/OCG/Name\(([^)]*)\)|/Name\(([^)]*)\)/Type/OCG`).FindAllStringSubmatch(said, -1) {
		names = append(names, m[1]+m[2])
	}
	if got, want := strings.Join(names, " "), "cut joint-line words page"; got != want {
		t.Errorf("groups %q, want %q in\n%s", got, want, said)
	}
}

func TestASharedDrawingIsWrittenOnce(t *testing.T) {
	d := exporttest.Field(20_000)
	window := geom.BoxOf(geom.Point{}, geom.PtMM(40, 40))
	var b export.Book
	for range 30 {
		b.Pages = append(b.Pages, export.Page{
			Drawing: export.Drawing{Width: geom.MM(50), Height: geom.MM(50)},
			Views:   []export.View{{Of: &d, Window: window}},
		})
	}
	all := len(write(t, b))
	b.Pages = b.Pages[:1]
	one := len(write(t, b))
	if more := (all - one) / 29; more > 600 {
		t.Errorf("each further page takes %d bytes, want 600 at most", more)
	}
}

func TestWhatCanNotBePrintedIsRefused(t *testing.T) {
	tiny := exporttest.Tiny()
	page := func(w, h float64, views ...export.View) export.Book {
		return export.Book{Title: "b", Pages: []export.Page{{Drawing: export.Drawing{Width: geom.MM(w), Height: geom.MM(h)}, Views: views}}}
	}
	for _, c := range []struct {
		name string
		book export.Book
		want string
	}{
		{"no pages", export.Book{}, "no pages"},
		{"no size", page(0, 100), "width and a height"},
		{"a bolt", page(100, 12_600), "cut it into more pages"},
		{"a crumb", page(1, 100), "make it larger"},
		{"no drawing", page(100, 100, export.View{}), "shows no drawing"},
		{"no window", page(100, 100, export.View{Of: &tiny}), "empty window"},
	} {
		var b bytes.Buffer
		err := WriteBook(&b, c.book)
		if err == nil || !strings.Contains(err.Error(), c.want) {
			t.Errorf("%s: %v, want %q", c.name, err, c.want)
		}
		if b.Len() > 0 {
			t.Errorf("%s: %d bytes were written", c.name, b.Len())
		}
	}
}

func TestAFullDiskIsTold(t *testing.T) {
	b := paged()
	exporttest.TellsAFullDisk(t, len(write(t, b)), func(f *exporttest.FullDisk) error { return WriteBook(f, b) })
}

// A whole field, 63,500 holes, stays a file that can be sent by mail.
func TestAWholeFieldIsSmall(t *testing.T) {
	if n := len(write(t, single(exporttest.Field(63_500)))); n > 1_000_000 {
		t.Errorf("%d bytes, want a megabyte at most", n)
	}
}

func BenchmarkWriteField(b *testing.B) {
	d := exporttest.Field(63_500)
	for b.Loop() {
		if err := (Format{}).Write(io.Discard, d); err != nil {
			b.Fatal(err)
		}
	}
}
