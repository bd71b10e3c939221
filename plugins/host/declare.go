package host

import (
	"context"
	"maps"
	"path/filepath"

	"chainwale/engine/standard"
)

// Declared is what a program said of itself when it was run once, and the files that
// it was run from.
type Declared struct {
	Description standard.Description
	// Program is the program with all its files pinned as they were.
	Program Program
	// Sum is one sum over all that is to be trusted.
	Sum string
}

// Declare runs a program once, in an empty folder and with a clean environment, and
// gives what it declares and the sums of its files. It pins nothing: somebody has to
// look at it first. A program that changes its own folder can't be pinned.
func Declare(ctx context.Context, file string, args []string, tls bool, l Limits) (Declared, error) {
	p := Program{Path: file, Args: args, TLS: tls}
	path, err := filepath.Abs(file)
	if err != nil {
		return Declared{}, err
	}
	folder, err := filepath.EvalSymlinks(filepath.Dir(path))
	if err != nil {
		return Declared{}, named(p, untrusted("its folder is not there: %s", filepath.Dir(file)))
	}
	if p.Files, err = sumsOf(folder); err != nil {
		return Declared{}, named(p, err)
	}
	running, err := Start(ctx, p, l)
	if err != nil {
		return Declared{}, err
	}
	declared := running.declared
	_ = running.Close()
	after, err := sumsOf(folder)
	if err != nil {
		return Declared{}, named(p, err)
	}
	if !maps.Equal(p.Files, after) {
		return Declared{}, named(p, &standard.Fault{Message: "it changes files in its own folder when it runs, so they can't be pinned", Side: standard.ChangeStandard})
	}
	p.ID, p.Edition = declared.ID, declared.Edition
	return Declared{Description: declared, Program: p, Sum: p.Sum()}, nil
}

// named makes a fault name a program that has not said what it is.
func named(p Program, err error) error { return (&Running{program: p}).faultOf(err) }
