package main

import (
	"bytes"
	"embed"
	"errors"
	"fmt"
	"io/fs"
	"os"
	"path/filepath"
	"regexp"
	"strings"
	"unicode"
)

//go:embed packstarter/*.yaml
var packStarter embed.FS

type packNewVerb struct {
	Dir string `arg:"" help:"The folder to make. It must not be there yet, or be empty."`
}

// Run writes the starter. A file that is already there is left alone, and where one
// file can't be written none is left.
func (v packNewVerb) Run(s streams) error {
	if strings.TrimSpace(v.Dir) == "" {
		fmt.Fprintln(s.err, "chainwale: name the folder to make")
		return ended(statusInput)
	}
	dir := filepath.Clean(v.Dir)
	if err := free(dir); err != nil {
		fmt.Fprintf(s.err, "chainwale: %v\n", err)
		return ended(statusInput)
	}
	if err := writePack(dir, packID(dir)); err != nil {
		fmt.Fprintf(s.err, "chainwale: %s can't be written: %v\n", dir, err)
		return ended(statusInput)
	}
	fmt.Fprintf(s.out, `%s is written: pack.yaml, and one worked rule in plate-not-thin.yaml.

Change the rule, or copy it and start another. After each change:
  chainwale pack prove %[2]s
To see what a rule may read, of all kinds of things or of one:
  chainwale pack facts
  chainwale pack facts fitting
To judge a boat by it as well:
  chainwale check --pack %[2]s my-boat.yaml
`, dir, asWord(dir))
	return nil
}

// asWord is a name as one word of a command line.
func asWord(name string) string {
	if !strings.ContainsFunc(name, func(r rune) bool {
		return !unicode.IsLetter(r) && !unicode.IsDigit(r) && !strings.ContainsRune("./_-", r)
	}) {
		return name
	}
	return "'" + strings.ReplaceAll(name, "'", `'\''`) + "'"
}

// free tells whether a pack can be written in a place: nothing is there, or an empty
// folder.
func free(dir string) error {
	entries, err := os.ReadDir(dir)
	switch {
	case errors.Is(err, fs.ErrNotExist):
		return nil
	case err != nil:
		return fmt.Errorf("%s is already there, is no folder that can be read, and was left alone; give another name", dir)
	case len(entries) > 0:
		return fmt.Errorf("%s is already there and was left alone: it holds %s; give another name", dir, entries[0].Name())
	}
	return nil
}

// writePack writes the starter under the id, all of it or nothing.
func writePack(dir, id string) (err error) {
	if err := os.MkdirAll(dir, 0o755); err != nil {
		return err
	}
	files, err := fs.Glob(packStarter, "packstarter/*.yaml")
	if err != nil {
		return err
	}
	var written []string
	defer func() {
		if err != nil {
			for _, name := range written {
				os.Remove(name)
			}
		}
	}()
	for _, file := range files {
		text, err := packStarter.ReadFile(file)
		if err != nil {
			return err
		}
		name := filepath.Join(dir, filepath.Base(file))
		if err := writeNew(name, bytes.ReplaceAll(text, []byte("{{id}}"), []byte(id))); err != nil {
			return err
		}
		written = append(written, name)
	}
	return nil
}

// noID is what no id holds.
var noID = regexp.MustCompile(`[^a-z0-9]+`)

// packID makes a pack's id of its folder's name, where its letters allow it.
func packID(dir string) string {
	name := filepath.Base(dir)
	if full, err := filepath.Abs(dir); err == nil {
		name = filepath.Base(full)
	}
	id := strings.Trim(noID.ReplaceAllString(strings.ToLower(name), "-"), "-")
	if id == "" || strings.ContainsFunc(name, func(r rune) bool { return r > unicode.MaxASCII }) {
		return "my-rules"
	}
	return id
}
