package main

import (
	"bytes"
	"crypto/sha256"
	"encoding/hex"
	"errors"
	"fmt"
	"io/fs"
	"os"
	"path/filepath"
	"slices"
	"strings"
)

// madeList is the file of a folder that says what this program wrote there last: a
// line a file, its sha256 and its name.
const madeList = ".chainwale"

// outFile is a file that was written. beside tells that it stands under another name
// than the wanted one, because what has that name was changed by hand.
type outFile struct {
	wanted, name string
	beside       bool
}

// writeOut writes a file into a folder, which is made if need be. A file of the name
// that is not byte-equal to what the list says was written last is left alone, and the
// new one goes beside it as NAME.new.
func writeOut(dir, name string, content []byte) (outFile, error) {
	if err := os.MkdirAll(dir, 0o755); err != nil {
		return outFile{}, err
	}
	made, err := readMade(dir)
	if err != nil {
		return outFile{}, err
	}
	f := outFile{wanted: filepath.Join(dir, name)}
	f.name = f.wanted
	before, err := os.ReadFile(f.wanted)
	switch {
	case errors.Is(err, fs.ErrNotExist):
	case err != nil:
		return f, err
	case bytes.Equal(before, content):
		made[name] = sum(content)
		return f, writeMade(dir, made)
	case made[name] != sum(before):
		f.name, f.beside = f.wanted+".new", true
		return f, replace(f.name, content)
	}
	if err := replace(f.name, content); err != nil {
		return f, err
	}
	made[name] = sum(content)
	return f, writeMade(dir, made)
}

func sum(content []byte) string {
	s := sha256.Sum256(content)
	return hex.EncodeToString(s[:])
}

// replace gives a file its content at once: it is written beside and renamed.
func replace(name string, content []byte) error { return writeBeside(name, content, os.Rename) }

// writeBeside writes a file under another name and then gives it its own, by a rename
// or by a link, which leaves alone what is there already.
func writeBeside(name string, content []byte, give func(from, to string) error) error {
	beside, err := os.CreateTemp(filepath.Dir(name), ".chainwale-*")
	if err != nil {
		return err
	}
	defer os.Remove(beside.Name())
	_, err = beside.Write(content)
	if err := errors.Join(err, beside.Chmod(0o644), beside.Close()); err != nil {
		return err
	}
	return give(beside.Name(), name)
}

// readMade reads the list; a folder without one has nothing of ours.
func readMade(dir string) (map[string]string, error) {
	made := map[string]string{}
	text, err := os.ReadFile(filepath.Join(dir, madeList))
	if errors.Is(err, fs.ErrNotExist) {
		return made, nil
	}
	for line := range strings.Lines(string(text)) {
		if hash, name, ok := strings.Cut(strings.TrimSuffix(line, "\n"), "  "); ok {
			made[name] = hash
		}
	}
	return made, err
}

func writeMade(dir string, made map[string]string) error {
	var lines []string
	for name, hash := range made {
		lines = append(lines, fmt.Sprintf("%s  %s\n", hash, name))
	}
	slices.Sort(lines)
	return replace(filepath.Join(dir, madeList), []byte(strings.Join(lines, "")))
}
