package plan

import (
	"bytes"
	"errors"
	"io"
	"io/fs"
	"os"
	"path/filepath"
	"strings"
	"syscall"

	"chainwale/engine/finding"
	"chainwale/engine/plan/document"
)

// files is where the files of a plan are read from: the disk, or what Options.Open
// gives. Nobody's file may make it wait, fill the memory or lead it astray.
type files struct {
	open func(name string) (io.ReadCloser, error)
	// rootName is the folder under which templates must lie, as it is called in
	// messages, and root its path with links resolved.
	rootName, root string
	// kept are templates that other plans have read; nil where none are kept.
	kept *Templates
}

// refusal is why a file is not read, and what would be.
type refusal struct{ message, expected string }

func (r refusal) at(place finding.Place) *finding.Problem {
	return &finding.Problem{At: place, Message: r.message, Expected: r.expected}
}

// top is the place of what is wrong with a file as a whole.
func top(file string) finding.Place { return finding.Place{File: file, Line: 1, Column: 1} }

// newFiles makes ready to read a plan and what it names.
func newFiles(plan string, o Options) (*files, *finding.Problem) {
	f := &files{open: o.Open, rootName: o.Root, kept: o.Templates}
	if o.Root == "" {
		f.rootName = filepath.Dir(plan)
	}
	real, err := f.resolve(f.rootName)
	if f.root = real; o.Root == "" || f.open != nil {
		return f, nil
	}
	if err == nil && !isFolder(real) {
		err = fs.ErrNotExist
	}
	if err != nil {
		return nil, refusal{"there is no folder of this name", "the folder under which the plan and its templates lie"}.at(top(o.Root))
	}
	return f, nil
}

func isFolder(name string) bool {
	info, err := os.Stat(name)
	return err == nil && info.IsDir()
}

// resolve gives a file's one path: absolute and without links. Beside an error it
// is as far without links as there is something. What Options.Open opens has none.
func (f *files) resolve(name string) (string, error) {
	if f.open != nil {
		return filepath.Clean(name), nil
	}
	path, err := filepath.Abs(name)
	if err != nil {
		return name, err
	}
	real, err := filepath.EvalSymlinks(path)
	if err != nil {
		return resolvedSoFar(path), err
	}
	return real, nil
}

// resolvedSoFar takes the links out of a path of which the end is not there.
func resolvedSoFar(path string) string {
	parent := filepath.Dir(path)
	if parent == path {
		return path
	}
	real, err := filepath.EvalSymlinks(parent)
	if err != nil {
		real = resolvedSoFar(parent)
	}
	return filepath.Join(real, filepath.Base(path))
}

// within gives the path of a file from the root on; ok is false if it lies outside.
func (f *files) within(real string) (rel string, ok bool) {
	rel, err := filepath.Rel(f.root, real)
	return rel, err == nil && filepath.IsLocal(rel)
}

// read gives the bytes of the file that was asked for by name.
func (f *files) read(name string) ([]byte, *refusal) {
	if f.open != nil {
		file, err := f.open(name)
		return taken(file, err)
	}
	return f.readIn(name, os.Stat, func(name string, flag int) (*os.File, error) { return os.OpenFile(name, flag, 0) })
}

// readUnder gives the bytes of a file by its resolved path, which must lie under
// the root. The folder is held while the file is opened, so that a link put in its
// way meanwhile leads nowhere.
func (f *files) readUnder(real string) ([]byte, *refusal) {
	rel, ok := f.within(real)
	if !ok {
		return nil, f.outside()
	}
	if f.open != nil {
		return f.read(real)
	}
	root, err := os.OpenRoot(f.root)
	if err != nil {
		return nil, unreadable(err)
	}
	defer root.Close()
	return f.readIn(rel, root.Stat, func(name string, flag int) (*os.File, error) { return root.OpenFile(name, flag, 0) })
}

func (f *files) outside() *refusal {
	return &refusal{"it lies outside the folder " + shown(f.rootName), "a file under that folder; --root DIR sets a folder further up"}
}

// readIn looks at a file before it opens it: a pipe would make us wait for a
// writer, and to open a device can already do something. Opened without waiting,
// a pipe put there in between is no trap either.
func (f *files) readIn(name string, stat func(string) (fs.FileInfo, error), open func(string, int) (*os.File, error)) ([]byte, *refusal) {
	info, err := stat(name)
	if err != nil {
		return nil, unreadable(err)
	}
	if bad := noFile(info.Mode()); bad != nil {
		return nil, bad
	}
	file, err := open(name, os.O_RDONLY|syscall.O_NONBLOCK)
	if err != nil {
		return nil, unreadable(err)
	}
	return taken(file, nil)
}

// taken reads and closes what was opened. It never takes in more than a plan can have.
func taken(file io.ReadCloser, err error) ([]byte, *refusal) {
	if err != nil {
		return nil, unreadable(err)
	}
	defer file.Close()
	size := int64(0)
	if s, ok := file.(fs.File); ok {
		if info, err := s.Stat(); err == nil {
			if bad := noFile(info.Mode()); bad != nil {
				return nil, bad
			}
			size = info.Size()
		}
	}
	src, err := allOf(io.LimitReader(file, document.MostBytes+1), size)
	if err != nil {
		return nil, unreadable(err)
	}
	if len(src) > document.MostBytes {
		large := document.TooLarge("")
		return nil, &refusal{large.Message, large.Expected}
	}
	return src, nil
}

// allOf reads all that there is, which takes no second piece of memory where the size
// is known. A file may have grown or shrunk since somebody looked.
func allOf(r io.Reader, size int64) ([]byte, error) {
	var all bytes.Buffer
	all.Grow(int(min(size, document.MostBytes)) + bytes.MinRead)
	_, err := all.ReadFrom(r)
	return all.Bytes(), err
}

// noFile says what something is that is no ordinary file, nil if it is one.
func noFile(mode fs.FileMode) *refusal {
	what := ""
	switch {
	case mode.IsRegular():
		return nil
	case mode.IsDir():
		what = "a folder"
	case mode&fs.ModeNamedPipe != 0:
		what = "a pipe"
	case mode&fs.ModeDevice != 0:
		what = "a device"
	case mode&fs.ModeSocket != 0:
		what = "a socket"
	default:
		what = "no ordinary file"
	}
	return &refusal{"this is " + what, "an ordinary file with a plan in it"}
}

func unreadable(err error) *refusal {
	var detail *fs.PathError
	switch {
	case errors.Is(err, fs.ErrNotExist):
		return &refusal{"there is no such file", "the name of a file that is there"}
	case errors.Is(err, fs.ErrPermission):
		return &refusal{"the file may not be read", "a file that you are allowed to read"}
	case errors.As(err, &detail):
		err = detail.Err
	}
	return &refusal{"the file can't be read: " + strings.TrimPrefix(err.Error(), "EvalSymlinks: "), "a file that can be read"}
}

// shown is a name as a message repeats it, no longer than it should.
func shown(name string) string {
	const most = 100
	if runes := []rune(name); len(runes) > most {
		return string(runes[:most]) + "…"
	}
	return name
}
