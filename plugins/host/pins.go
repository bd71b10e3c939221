package host

import (
	"crypto/sha256"
	"encoding/hex"
	"errors"
	"fmt"
	"io"
	"io/fs"
	"maps"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"unicode/utf8"

	"chainwale/engine/standard"
)

// A program's folder is small: these limits tell it from a folder of the system's,
// or of somebody's whole work, which nobody can pin.
const (
	mostFiles = 500
	mostBytes = 256 << 20
)

// check sees that the program is what was trusted, and gives its path without links.
// It is asked each time before the program is started.
func (p Program) check() (string, error) {
	path, err := filepath.Abs(p.Path)
	if err != nil || p.Unpinned {
		return path, err
	}
	if len(p.Files) == 0 {
		return "", untrusted("none of its files are pinned")
	}
	folder, err := filepath.EvalSymlinks(filepath.Dir(path))
	if err != nil {
		return "", untrusted("its folder is not there: %s", filepath.Dir(p.Path))
	}
	if err := onlyOurs(folder); err != nil {
		return "", err
	}
	have, err := sumsOf(folder)
	if err != nil {
		return "", err
	}
	if p.Files[filepath.Base(path)] == "" {
		return "", untrusted("its program %s is not among its pinned files", filepath.Base(path))
	}
	return filepath.Join(folder, filepath.Base(path)), compare(p.Files, have)
}

// untrusted is a fault of files that are not as they were trusted.
func untrusted(format string, args ...any) error {
	return &standard.Fault{Message: fmt.Sprintf(format, args...), Side: standard.TrustAnew}
}

// compare names the first file that is not as it was pinned.
func compare(pinned, have map[string]string) error {
	all := slices.Sorted(maps.Keys(pinned))
	for _, name := range all {
		switch have[name] {
		case pinned[name]:
		case "":
			return untrusted("its file %s is gone", name)
		default:
			return untrusted("its file %s is not what was trusted", name)
		}
	}
	for _, name := range slices.Sorted(maps.Keys(have)) {
		if pinned[name] == "" {
			return untrusted("its folder has a file that was not trusted, %s", name)
		}
	}
	return nil
}

// sumsOf sums all files of a folder and of those below it. It refuses what is
// neither file nor folder: a link can change what it leads to and keep its sum.
func sumsOf(folder string) (map[string]string, error) {
	sums := map[string]string{}
	total := int64(0)
	err := filepath.WalkDir(folder, func(name string, d fs.DirEntry, err error) error {
		if err != nil {
			return err
		}
		info, err := d.Info()
		if err != nil {
			return err
		}
		below, _ := filepath.Rel(folder, name)
		below = filepath.ToSlash(below)
		if err := suitsPin(below, info); err != nil || d.IsDir() {
			return err
		}
		if total += info.Size(); total > mostBytes || len(sums) == mostFiles {
			return untrusted("its folder holds more than %d files or %d MB: put the program in a folder of its own", mostFiles, mostBytes>>20)
		}
		sums[below], err = sumOf(name)
		return err
	})
	var fault *standard.Fault
	if err != nil && !errors.As(err, &fault) {
		err = untrusted("its files can't be read: %v", err)
	}
	return sums, err
}

// suitsPin tells why something in a folder can't be pinned.
func suitsPin(name string, info fs.FileInfo) error {
	switch {
	case !utf8.ValidString(name) || standard.CheckText("path", name) != nil:
		return untrusted("its folder has a file whose name can't be written down, %q", printable(name))
	case info.Mode().Type() == fs.ModeSymlink:
		return untrusted("its folder has a link, %s, and only files can be pinned", name)
	case !info.Mode().IsRegular() && !info.IsDir():
		return untrusted("its folder has something that is no file, %s", name)
	}
	return writableByOthers(name, info)
}

// sumOf is the sum of one file, "sha256:" and 64 digits.
func sumOf(name string) (string, error) {
	f, err := os.Open(name)
	if err != nil {
		return "", err
	}
	defer func() { _ = f.Close() }()
	h := sha256.New()
	if _, err := io.Copy(h, f); err != nil {
		return "", err
	}
	return "sha256:" + hex.EncodeToString(h.Sum(nil)), nil
}

// Sum is one sum over all that is trusted of a program: its name, its arguments,
// whether it shows certificates, and the paths and sums of all its files.
func (p Program) Sum() string {
	h := sha256.New()
	write := func(text string) { fmt.Fprintf(h, "%d:%s", len(text), text) }
	write(filepath.Base(p.Path))
	write(fmt.Sprint(len(p.Args)))
	for _, a := range p.Args {
		write(a)
	}
	write(fmt.Sprint(p.TLS))
	for _, name := range slices.Sorted(maps.Keys(p.Files)) {
		write(name)
		write(strings.TrimPrefix(p.Files[name], "sha256:"))
	}
	return "sha256:" + hex.EncodeToString(h.Sum(nil))
}
