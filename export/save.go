package export

import (
	"bufio"
	"errors"
	"fmt"
	"io"
	"io/fs"
	"os"
	"path/filepath"
	"syscall"
)

// Save writes a file that is either whole or not there: it prepares it and keeps
// it.
func Save(path string, force bool, write func(io.Writer) error) error {
	d, err := Prepare(path, force, write)
	if err != nil {
		return err
	}
	defer d.Drop()
	return d.Keep()
}

// A Pending file is whole on the disk and waits for its name. Until it is
// kept, a file of that name stays as it is.
type Pending struct {
	path      string // as asked for
	target    string // the file that is written, behind a link
	temporary string
	force     bool
}

// Prepare writes what write gives to a temporary file in the folder of path, down
// to the disk; where anything fails, nothing of it is left. An existing file will
// be replaced only with force and keeps its mode; a link stays a link. write's own
// errors come back wrapped.
func Prepare(path string, force bool, write func(io.Writer) error) (Pending, error) {
	target, mode, err := place(path, force)
	if err != nil {
		return Pending{}, saveError(path, err)
	}
	temporary, err := temporaryBeside(target)
	if err != nil {
		return Pending{}, saveError(path, err)
	}
	d, whole := Pending{path, target, temporary.Name(), force}, false
	defer func() { // after a panic too
		if !whole {
			d.Drop()
		}
	}()
	if err := fill(temporary, mode, write); err != nil {
		return Pending{}, saveError(path, nameless(err, temporary.Name()))
	}
	whole = true
	return d, nil
}

// Keep gives the file its name.
func (d Pending) Keep() error {
	return saveError(d.path, cause(rename(d.temporary, d.target, d.force)))
}

// Drop takes the file away. One that was kept stays.
func (d Pending) Drop() { os.Remove(d.temporary) }

// errExists is what Save refuses to overwrite.
var errExists = errors.New("there is a file of that name; give another name, or allow it to be replaced (--force)")

// place returns the file that is to be written, behind a link the one it leads
// to, and the mode of what is there now, zero where nothing is.
func place(path string, force bool) (target string, mode fs.FileMode, err error) {
	if _, err := os.Lstat(path); errors.Is(err, fs.ErrNotExist) {
		return path, 0, nil
	} else if err != nil {
		return "", 0, cause(err)
	}
	target, err = filepath.EvalSymlinks(path)
	if err != nil {
		return "", 0, errors.New("a link of that name leads nowhere; remove it or give another name")
	}
	info, err := os.Stat(target)
	switch {
	case err != nil:
		return "", 0, cause(err)
	case info.IsDir():
		return "", 0, errors.New("a folder has that name; give a file's name")
	case !info.Mode().IsRegular():
		return "", 0, errors.New("that is no ordinary file; give a file's name")
	case !force:
		return "", 0, errExists
	}
	return target, info.Mode().Perm(), nil
}

// temporaryBeside opens a new file next to target, so that the rename stays on
// one disk. It is made like any new file, with the mode that the user's mask
// leaves.
func temporaryBeside(target string) (*os.File, error) {
	folder, name := filepath.Split(target)
	for n := range 1000 {
		f, err := os.OpenFile(filepath.Join(folder, fmt.Sprintf(".%s.%d.part", name, n)), os.O_WRONLY|os.O_CREATE|os.O_EXCL, 0o666)
		if !errors.Is(err, fs.ErrExist) {
			return f, cause(err)
		}
	}
	return nil, errors.New("a thousand unfinished files of that name lie in the folder; remove them")
}

// fill writes f, sees it onto the disk and closes it, whatever happens.
func fill(f *os.File, mode fs.FileMode, write func(io.Writer) error) (err error) {
	defer func() {
		if closed := f.Close(); err == nil {
			err = closed
		}
	}()
	buffer := bufio.NewWriterSize(f, 1<<16)
	if err := write(buffer); err != nil {
		return err
	}
	if err := buffer.Flush(); err != nil {
		return err
	}
	if mode != 0 {
		if err := f.Chmod(mode); err != nil {
			return err
		}
	}
	return f.Sync()
}

// rename gives the finished file its name. Without force it is linked, which
// fails where a file of that name has come up meanwhile; on a disk that knows no
// links it is renamed after one more look.
func rename(from, to string, force bool) error {
	if force {
		return os.Rename(from, to)
	}
	err := os.Link(from, to)
	if err == nil {
		return nil
	}
	if _, there := os.Lstat(to); there == nil {
		return errExists
	}
	return os.Rename(from, to)
}

// saveError says what could not be saved and what to do about it, in one line.
func saveError(path string, err error) error {
	if err == nil {
		return nil
	}
	remedy := ""
	switch {
	case errors.Is(err, fs.ErrNotExist):
		remedy = "; make the folder first"
	case errors.Is(err, fs.ErrPermission), errors.Is(err, syscall.EROFS):
		remedy = "; choose a folder that you may write to"
	case errors.Is(err, syscall.ENOTDIR):
		remedy = "; choose a folder, not a file, to save in"
	case errors.Is(err, syscall.ENOSPC), errors.Is(err, syscall.EDQUOT):
		remedy = "; make room on the disk and save again"
	case errors.Is(err, syscall.EFBIG):
		remedy = "; the disk or the system allows no file of that size: choose another folder"
	}
	return fmt.Errorf("save %s: %w%s", path, err, remedy)
}

// cause drops the file's name from an error of the system: Save says the name
// itself, and that of the temporary file tells the reader nothing.
func cause(err error) error {
	switch e := err.(type) {
	case *fs.PathError:
		return e.Err
	case *os.LinkError:
		return e.Err
	}
	return err
}

// nameless returns the cause of an error of the temporary file; other errors are
// write's own and stay.
func nameless(err error, temporary string) error {
	var p *fs.PathError
	if errors.As(err, &p) && p.Path == temporary {
		return p.Err
	}
	return err
}
