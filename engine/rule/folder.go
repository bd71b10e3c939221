package rule

import (
	"errors"
	"fmt"
	"io/fs"
	"os"
)

// mostBytes is how much of a pack is read: ten thousand rules fit, and a folder of
// large files is said and not read.
const mostBytes = 64 << 20

// Folder is the folder of a pack as Load wants it. It follows no link that leads out
// of the folder, waits for no pipe or device, and gives no more than 64 MB. It is for
// one reading; Close it after that.
type Folder struct {
	root *os.Root
	fs   fs.FS
	left int64
}

// OpenFolder opens the folder of a pack. The error says in plain words what is there
// instead.
func OpenFolder(dir string) (*Folder, error) {
	info, err := os.Stat(dir)
	switch {
	case errors.Is(err, fs.ErrNotExist):
		return nil, errors.New("there is no folder of this name")
	case err != nil:
		return nil, errors.New(plainError(err))
	case !info.IsDir():
		return nil, errors.New("this is no folder")
	}
	root, err := os.OpenRoot(dir)
	if err != nil {
		return nil, errors.New(plainError(err))
	}
	return &Folder{root: root, fs: root.FS(), left: mostBytes}, nil
}

// Close lets go of the folder.
func (f *Folder) Close() error { return f.root.Close() }

// ReadDir lists a folder.
func (f *Folder) ReadDir(name string) ([]fs.DirEntry, error) { return fs.ReadDir(f.fs, name) }

// Stat tells of a file within the folder.
func (f *Folder) Stat(name string) (fs.FileInfo, error) {
	info, err := f.root.Stat(name)
	if err == nil {
		return info, nil
	}
	if link, of := f.root.Lstat(name); of == nil && link.Mode()&fs.ModeSymlink != 0 {
		err = errors.New("this is a link that leads out of the pack's folder")
		if _, nowhere := fs.Stat(f.fs, name); errors.Is(nowhere, fs.ErrNotExist) {
			err = errors.New("this is a link that leads nowhere")
		}
		return nil, &fs.PathError{Op: "open", Path: name, Err: err}
	}
	return nil, err
}

// Open opens a file within the folder.
func (f *Folder) Open(name string) (fs.File, error) {
	info, err := f.Stat(name)
	if err != nil {
		return nil, err
	}
	if m := info.Mode(); !m.IsRegular() && !m.IsDir() {
		return nil, &fs.PathError{Op: "open", Path: name, Err: errors.New("this is no file but " + sortOf(m))}
	}
	if !info.IsDir() {
		if f.left -= min(info.Size(), maxFile); f.left < 0 {
			return nil, &fs.PathError{Op: "open", Path: name, Err: fmt.Errorf("the pack holds more than %d MB", mostBytes>>20)}
		}
	}
	return f.fs.Open(name)
}

// sortOf names what is no file.
func sortOf(m fs.FileMode) string {
	switch {
	case m&fs.ModeNamedPipe != 0:
		return "a pipe"
	case m&fs.ModeDevice != 0:
		return "a device"
	case m&fs.ModeSocket != 0:
		return "a socket"
	}
	return "something else"
}
