//go:build unix

package host

import (
	"fmt"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"chainwale/engine/standard"
)

// script puts a program into a folder of its own: a script that becomes one of the
// programs of these tests. It lies below the folder for trusted.yaml.
func script(t *testing.T, name string, args ...string) (home, file string) {
	t.Helper()
	home = t.TempDir()
	folder := filepath.Join(home, "rule")
	file = filepath.Join(folder, "standard")
	if err := os.MkdirAll(filepath.Join(folder, "pack"), 0o755); err != nil {
		t.Fatal(err)
	}
	p := started(t, name, args...)
	text := fmt.Sprintf("#!/bin/sh\nexec '%s' '%s' \"$@\"\n", p.Path, strings.Join(p.Args, "' '"))
	write(t, file, text, 0o755)
	write(t, filepath.Join(folder, "pack", "pack.yaml"), "id: test\n", 0o644)
	return home, file
}

func write(t *testing.T, name, text string, mode os.FileMode) {
	t.Helper()
	if err := os.WriteFile(name, []byte(text), mode); err != nil {
		t.Fatal(err)
	}
}

// pinned declares a program and pins it in a trusted.yaml beside its folder.
func pinned(t *testing.T, home, file string) string {
	t.Helper()
	d, err := Declare(t.Context(), file, nil, false, patient(Limits{}))
	if err != nil {
		t.Fatal(err)
	}
	if d.Description.ID != "test-rule" || len(d.Program.Files) != 2 || !strings.HasPrefix(d.Sum, "sha256:") {
		t.Errorf("declared were %+v", d)
	}
	trusted := filepath.Join(home, TrustedName)
	if err := Pin(trusted, d.Program); err != nil {
		t.Fatal(err)
	}
	return trusted
}

// trustedProgram reads a program out of a trusted.yaml.
func trustedProgram(t *testing.T, trusted string) Program {
	t.Helper()
	list, problems, err := ReadTrusted(trusted)
	if err != nil || len(problems) > 0 {
		t.Fatal(err, problems)
	}
	p, ok := list.Program("test-rule")
	if !ok {
		t.Fatal("it is not listed")
	}
	return p
}

// TestFromNothingToAnswers declares, pins, starts and asks.
func TestFromNothingToAnswers(t *testing.T) {
	t.Parallel()
	home, file := script(t, "sound")
	r := begun(t, trustedProgram(t, pinned(t, home, file)), Limits{})
	a, err := r.Derive(t.Context(), question())
	right(t, a, err)
}

// TestPins changes one thing at a time about a pinned program: none is started.
func TestPins(t *testing.T) {
	t.Parallel()
	home, file := script(t, "sound")
	p := trustedProgram(t, pinned(t, home, file))
	folder := filepath.Dir(file)
	pack := filepath.Join(folder, "pack", "pack.yaml")
	for _, c := range []struct {
		name         string
		spoil, mend  func()
		side         standard.Side
		says         string
		otherProgram func(*Program)
	}{
		{name: "changed", spoil: func() { write(t, pack, "id: other\n", 0o644) }, mend: func() { write(t, pack, "id: test\n", 0o644) }, says: "its file pack/pack.yaml is not what was trusted"},
		{name: "gone", spoil: func() { _ = os.Remove(pack) }, mend: func() { write(t, pack, "id: test\n", 0o644) }, says: "its file pack/pack.yaml is gone"},
		{name: "more", spoil: func() { write(t, folder+"/os.py", "", 0o644) }, mend: func() { _ = os.Remove(folder + "/os.py") }, says: "a file that was not trusted, os.py"},
		{name: "link", spoil: func() { _ = os.Symlink(pack, folder+"/link") }, mend: func() { _ = os.Remove(folder + "/link") }, says: "has a link, link"},
		{name: "link in its place", spoil: func() { _ = os.Rename(pack, home+"/p"); _ = os.Symlink(home+"/p", pack) }, mend: func() { _ = os.Rename(home+"/p", pack) }, says: "has a link, pack/pack.yaml"},
		{name: "writable file", spoil: func() { _ = os.Chmod(pack, 0o666) }, mend: func() { _ = os.Chmod(pack, 0o644) }, says: "others may write to pack/pack.yaml"},
		{name: "file of a group", spoil: func() { _ = os.Chmod(pack, 0o664) }, mend: func() { _ = os.Chmod(pack, 0o644) }, says: "others may write to pack/pack.yaml (take that away: chmod go-w)"},
		{name: "writable folder", spoil: func() { _ = os.Chmod(folder, 0o777) }, mend: func() { _ = os.Chmod(folder, 0o755) }, says: "others may write to ."},
		{name: "folder of a group", spoil: func() { _ = os.Chmod(folder, 0o775) }, mend: func() { _ = os.Chmod(folder, 0o755) }, says: "others may write to ."},
		{name: "writable above", spoil: func() { _ = os.Chmod(home, 0o777) }, mend: func() { _ = os.Chmod(home, 0o755) }, says: "above the program"},
		{name: "group's above", spoil: func() { _ = os.Chmod(home, 0o775) }, mend: func() { _ = os.Chmod(home, 0o755) }, says: "above the program"},
		{name: "no pins", otherProgram: func(p *Program) { p.Files = nil }, says: "none of its files are pinned"},
		{name: "no folder", otherProgram: func(p *Program) { p.Path = filepath.Join(home, "gone", "standard") }, says: "its folder is not there"},
		{name: "another program of the folder", otherProgram: func(p *Program) { p.Path = filepath.Join(folder, "other") }, says: "its program other is not among its pinned files"},
	} {
		program := p
		if c.otherProgram != nil {
			c.otherProgram(&program)
		} else {
			c.spoil()
		}
		r, err := Start(t.Context(), program, patient(Limits{}))
		if err == nil {
			_ = r.Close()
			t.Errorf("%s: it was started", c.name)
			continue
		}
		faulty(t, err, standard.TrustAnew, c.says)
		if c.mend != nil {
			c.mend()
		}
	}
	begun(t, p, Limits{})
}

// TestDeclareRefuses what can't be pinned.
func TestDeclareRefuses(t *testing.T) {
	t.Parallel()
	_, file := script(t, "sound")
	folder := filepath.Dir(file)
	_, err := Declare(t.Context(), file, nil, false, patient(Limits{}))
	if err != nil {
		t.Fatal(err)
	}
	write(t, filepath.Join(folder, "a\x1bb"), "", 0o644)
	_, err = Declare(t.Context(), file, nil, false, patient(Limits{}))
	faulty(t, err, standard.TrustAnew, "whose name can't be written down")
	_ = os.Remove(filepath.Join(folder, "a\x1bb"))

	for i := range mostFiles {
		write(t, filepath.Join(folder, fmt.Sprint(i)), "", 0o644)
	}
	_, err = Declare(t.Context(), file, nil, false, patient(Limits{}))
	faulty(t, err, standard.TrustAnew, "put the program in a folder of its own")

	dir := t.TempDir()
	own := filepath.Join(dir, "standard")
	p := started(t, "writes beside itself", dir)
	write(t, own, fmt.Sprintf("#!/bin/sh\nexec '%s' '%s'\n", p.Path, strings.Join(p.Args, "' '")), 0o755)
	_, err = Declare(t.Context(), own, nil, false, patient(Limits{}))
	faulty(t, err, standard.ChangeStandard, "it changes files in its own folder")

	_, err = Declare(t.Context(), filepath.Join(dir, "gone", "standard"), nil, false, patient(Limits{}))
	faulty(t, err, standard.TrustAnew, "its folder is not there")
}

// TestSum: whatever is trusted of a program changes its sum.
func TestSum(t *testing.T) {
	p := func() Program {
		return Program{Path: "a/standard", Args: []string{"x", "y"}, Files: map[string]string{"standard": "sha256:1", "b": "sha256:2"}}
	}
	seen := map[string]string{p().Sum(): "itself"}
	for name, change := range map[string]func(*Program){
		"program":  func(p *Program) { p.Path = "a/other" },
		"args":     func(p *Program) { p.Args = []string{"xy"} },
		"no args":  func(p *Program) { p.Args = nil },
		"tls":      func(p *Program) { p.TLS = true },
		"a file":   func(p *Program) { p.Files["b"] = "sha256:3" },
		"its name": func(p *Program) { delete(p.Files, "b"); p.Files["c"] = "sha256:2" },
		"fewer":    func(p *Program) { delete(p.Files, "b") },
	} {
		q := p()
		change(&q)
		if other, taken := seen[q.Sum()]; taken {
			t.Errorf("with another %s the sum is that with another %s", name, other)
		}
		seen[q.Sum()] = name
	}
	if p().Sum() != p().Sum() {
		t.Error("the sum is not the same each time")
	}
}
