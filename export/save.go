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

// Save writes a file that is either whole or not there. What write gives goes to
// a temporary file in the same folder, which takes the name only after all of it
// is on the disk; where anything fails, a file that was there before stays as it
// was. An existing file is replaced only with force and keeps its mode; a link
// stays a link. write's own errors come back wrapped.
func Save(path string, force bool, write func(io.Writer) error) error {
	target, mode, err := place(path, force)
	if err != nil {
		return saveError(path, err)
	}
	temporary, err := temporaryBeside(target)
	if err != nil {
		return saveError(path, err)
	}
	// After a rename this finds nothing to remove; after an error or a panic it
	// takes the half file away.
	defer os.Remove(temporary.Name())
	if err := fill(temporary, mode, write); err != nil {
		return saveError(path, err)
	}
	return saveError(path, rename(temporary.Name(), target, force))
}

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
	case errors.Is(err, syscall.ENOSPC):
		remedy = "; make room on the disk and save again"
	}
	return fmt.Errorf("save %s: %w%s", path, err, remedy)
}

// cause drops the file's name from an error of the system: Save says the name
// itself, and that of the temporary file tells the reader nothing.
func cause(err error) error {
	if p, ok := err.(*fs.PathError); ok {
		return p.Err
	}
	return err
}
