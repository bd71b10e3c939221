package main

import (
	_ "embed"
	"errors"
	"fmt"
	"io/fs"
	"os"
)

//go:embed starters/masthead-sloop.yaml
var mastheadSloop []byte

type newVerb struct {
	File string `arg:"" help:"The plan file to write."`
}

// Run writes the starter. It opens the file for itself alone, so that a file
// which is already there is never written over.
func (v newVerb) Run(s streams) error {
	f, err := os.OpenFile(v.File, os.O_WRONLY|os.O_CREATE|os.O_EXCL, 0o644)
	if errors.Is(err, fs.ErrExist) {
		fmt.Fprintf(s.err, "chainwale: %s is already there and was left alone; give another name\n", v.File)
		return ended(statusInput)
	}
	if err != nil {
		fmt.Fprintf(s.err, "chainwale: %v\n", err)
		return ended(statusInput)
	}
	_, err = f.Write(mastheadSloop)
	if err := errors.Join(err, f.Close()); err != nil {
		return errors.Join(err, os.Remove(v.File))
	}
	fmt.Fprintf(s.out, "%s is written. Fill it in at the boat, then: chainwale check %s\n", v.File, v.File)
	return nil
}
