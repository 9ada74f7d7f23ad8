package pdf

import (
	"bufio"
	"compress/zlib"
	"crypto/sha256"
	"fmt"
	"hash"
	"io"
)

// A file is what is being written: objects, each at an offset that the table at
// the end tells. Its writer keeps the first error, which finish gives back.
type file struct {
	out     *bufio.Writer
	sum     hash.Hash // of all bytes so far: the file's identifier
	at      int64
	offsets []int64 // by object number; zero is not written yet
	squeeze *zlib.Writer
}

// An object is the number of one.
type object int

func (o object) String() string { return fmt.Sprintf("%d 0 R", int(o)) }

func newFile(w io.Writer) *file {
	f := &file{out: bufio.NewWriterSize(w, 1<<16), sum: sha256.New(), offsets: make([]int64, 1)}
	// Four bytes above 127 tell carriers that the file is not text (7.5.2).
	f.text("%PDF-1.6\n%\xe2\xe3\xcf\xd3\n")
	return f
}

// Write counts and hashes what goes out; it is where streams end up.
func (f *file) Write(b []byte) (int, error) {
	f.sum.Write(b)
	f.at += int64(len(b))
	return f.out.Write(b)
}

func (f *file) text(s string) { io.WriteString(f, s) }

func (f *file) textf(format string, args ...any) { fmt.Fprintf(f, format, args...) }

// reserve returns the number of an object to be written later.
func (f *file) reserve() object {
	f.offsets = append(f.offsets, 0)
	return object(len(f.offsets) - 1)
}

// put writes an object.
func (f *file) put(o object, format string, args ...any) {
	f.begin(o)
	f.textf(format, args...)
	f.text("\nendobj\n")
}

func (f *file) begin(o object) {
	f.offsets[o] = f.at
	f.textf("%d 0 obj\n", int(o))
}

// stream writes an object that is a stream, compressed as it comes; dict is what
// its dictionary holds besides the length, which follows as an object since it
// is known only then.
func (f *file) stream(o object, dict string, fill func(io.Writer)) {
	length := f.reserve()
	f.begin(o)
	f.textf("<< %s/Filter /FlateDecode /Length %v >>\nstream\n", dict, length)
	start := f.at
	if f.squeeze == nil {
		f.squeeze = zlib.NewWriter(f)
	} else {
		f.squeeze.Reset(f)
	}
	fill(f.squeeze)
	f.squeeze.Close()
	n := f.at - start
	f.text("\nendstream\nendobj\n")
	f.put(length, "%d", n)
}

// finish writes the table of objects and the trailer.
func (f *file) finish(root, info object) error {
	start := f.at
	id := f.sum.Sum(nil)[:16]
	f.textf("xref\n0 %d\n0000000000 65535 f \n", len(f.offsets))
	for _, at := range f.offsets[1:] {
		f.textf("%010d 00000 n \n", at)
	}
	f.textf("trailer\n<< /Size %d /Root %v /Info %v /ID [<%x> <%x>] >>\nstartxref\n%d\n%%%%EOF\n",
		len(f.offsets), root, info, id, id, start)
	return f.out.Flush()
}
