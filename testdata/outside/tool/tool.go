// Package tool lets a test lean on a program that no one here wrote.
//
// On a machine without the program the test is skipped and says so; where the
// environment variable CI is set a missing program is a failure, so that a check
// which did not run can't look green. `go run ./testdata/outside` lists them all.
package tool

import (
	"cmp"
	"os"
	"os/exec"
	"strings"
	"testing"
)

// Tool is an outside program that some test uses.
type Tool struct {
	Name string
	// Program is what is started, if it isn't the name: a library is asked by way of one.
	Program string
	// For says what it checks, Version the arguments that make it print its version.
	For     string
	Version []string
	// Package is what Debian calls the package that brings it.
	Package string
}

// All lists every outside program that a test may ask for.
func All() []Tool {
	return []Tool{
		{Name: "units", For: "unit conversions (GNU units)", Version: []string{"--version"}, Package: "units"},
		{Name: "git", For: "the walk through a class's repository", Version: []string{"--version"}, Package: "git"},
		{Name: "protoc", For: "that plugins/wire follows from contract.proto", Version: []string{"--version"}, Package: "protobuf-compiler"},
		{Name: "pdftoppm", For: "sizes on paper: it renders the PDFs", Version: []string{"-v"}, Package: "poppler-utils"},
		{Name: "pdftotext", For: "words on the drawings, and the widths of their letters", Version: []string{"-v"}, Package: "poppler-utils"},
		{Name: "rsvg-convert", For: "sizes of the SVG pictures", Version: []string{"--version"}, Package: "librsvg2-bin"},
		{Name: "ezdxf", Program: "/usr/bin/python3", For: "cutting files, with its auditor", Version: []string{"-c", "import ezdxf; print('ezdxf', ezdxf.__version__)"}, Package: "python3-ezdxf"},
		{Name: "dxflib", Program: "/bin/sh", For: "cutting files, by a reader in C++", Version: []string{"-c", `v=$(echo DL_VERSION | g++ -x c++ -E -P -include dxflib/dl_dxf.h -) && echo "dxflib $v" | tail -n 1`}, Package: "libdxflib-dev, g++"},
		{Name: "/usr/bin/python3", For: "the standard in Python", Version: []string{"-c", "import grpc, google.protobuf as p; print('grpcio', grpc.__version__, 'protobuf', p.__version__)"}, Package: "python3-grpcio, python3-protobuf"},
	}
}

// find gives the tool of that name.
func find(name string) (Tool, bool) {
	for _, t := range All() {
		if t.Name == name {
			return t, true
		}
	}
	return Tool{}, false
}

// Path finds the program on this machine, "" if it isn't here.
func (t Tool) Path() string {
	path, err := exec.LookPath(cmp.Or(t.Program, t.Name))
	if err != nil {
		return ""
	}
	return path
}

// Said is the first line that the program prints of its own version.
func (t Tool) Said() (string, error) {
	out, err := exec.Command(t.Path(), t.Version...).CombinedOutput()
	line, _, _ := strings.Cut(string(out), "\n")
	return strings.TrimSpace(line), err
}

// Here tells whether the program is on this machine, with what it needs.
func (t Tool) Here() bool { return t.Path() != "" && t.runs() }

// runs tells whether the program can print its version, or that of what it needs.
func (t Tool) runs() bool {
	_, err := t.Said()
	return err == nil
}

// Need gives the program's path. Without the program the test is skipped, or
// fails where CI is set.
func Need(t testing.TB, name string) string {
	t.Helper()
	wanted, listed := find(name)
	if !listed {
		t.Fatalf("the outside tool %q is not in the list of testdata/outside/tool", name)
	}
	path := wanted.Path()
	if path != "" && !wanted.runs() {
		path = ""
	}
	switch {
	case path != "":
	case os.Getenv("CI") != "":
		t.Fatalf("%s is not on this machine, and under CI nothing may be done without it (Debian package %s)", name, wanted.Package)
	default:
		t.Skipf("did without %s (Debian package %s): %s not checked", name, wanted.Package, wanted.For)
	}
	return path
}
